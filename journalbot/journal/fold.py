"""Entries of one batch, in order, to what they say about it. No SQL, and nothing of how a note is worded.

Entries count by date, whatever the order in which they were filed; within a date, by note and position.
"""

from collections.abc import Callable, Iterable, Iterator

from journalbot.journal.vessel_names import split_vessels, vessel_key
from journalbot.model import Batch, Entry, Held
from journalbot.vocabulary.units import UNITS

FOLD = 2  # raised whenever a fold of the same entries gives something else: projections are then made anew

_PART = 0.5  # what moves less than this share of a vessel leaves the rest in it (lees never take half: common practice)
_EMPTY = 0.05  # litres: a batch blended away to less is in no vessel any more

# Which fields hold a name worth knowing again, and what it is the name of.
NAMES: dict[tuple[str, str], str] = {
    ("pitch", "yeast"): "yeast",
    ("malolactic", "culture"): "culture",
    ("addition", "material"): "material",
    ("give", "to"): "person",
    ("move", "to"): "place",
    ("purchase", "item"): "item",
}
_NAMED: dict[str, tuple[tuple[str, str], ...]] = {}
for (_kind, _field), _sort in NAMES.items():
    _NAMED[_kind] = (*_NAMED.get(_kind, ()), (_field, _sort))
_VESSEL_FIELDS = ("vessel", "from", "to")
_VESSEL_KINDS = frozenset(("start", "rack", "reading", "press", "pitch", "addition", "bottle"))

Order = tuple[str, int, int]


def order_of(entry: Entry) -> Order:
    """Where an entry stands among all others."""
    return (entry.date, *entry.place)


def litres(value: object, unit: object) -> float | None:
    """A volume in litres; None where either is missing or the unit is no volume."""
    size = UNITS.get(unit) if isinstance(unit, str) else None
    if size is None or size.dimension != "volume" or not isinstance(value, int | float):
        return None
    return value * size.factor


def blended(entry: Entry) -> Iterator[tuple[int, float | None]]:
    """The batches that a blend draws on, and how many litres from each (None where not known)."""
    parts = entry.get("with")
    if entry.kind != "blend" or not isinstance(parts, list | tuple):
        return
    for part in parts:
        if isinstance(part, dict) and isinstance(part.get("batch"), int) and part["batch"] != entry.batch:
            yield part["batch"], litres(part.get("amount"), part.get("unit"))


def touched(entry: Entry) -> set[int]:
    """The batches of which an entry says something."""
    return {n for n, _ in blended(entry)} | ({entry.batch} if entry.batch is not None else set())


def names_in(entry: Entry) -> Iterator[tuple[str, str]]:
    """The names in an entry, each with what it is the name of (`yeast`, `person` …)."""
    for name, sort in _NAMED.get(entry.kind, ()):
        value = entry.get(name)
        if isinstance(value, str) and value.strip():
            yield sort, value.strip()


def vessels_in(entry: Entry) -> Iterator[str]:
    """The vessels that an entry names, as written."""
    if entry.kind == "vessel":
        fields: tuple[str, ...] = ("name",)
    elif entry.kind in _VESSEL_KINDS:
        fields = _VESSEL_FIELDS
    else:
        return
    for name in fields:
        value = entry.get(name)
        if isinstance(value, str):
            yield from split_vessels(value)


def fold(number: int, entries: Iterable[Entry]) -> Batch:
    """The batch of that number as these entries describe it: its own, and blends that drew on it."""
    batch = Batch(number)
    for entry in sorted(entries, key=order_of):
        step(batch, entry)
    return batch


def step(batch: Batch, entry: Entry) -> None:
    """Let the batch take in an entry that is not earlier than any before it."""
    batch.latest = order_of(entry)
    if entry.batch != batch.number:
        _drawn(batch, entry)
        return
    batch.last_note, batch.last_id = max((batch.last_note, batch.last_id), (entry.note, entry.id))
    act = _STEPS.get(entry.kind)
    if act:
        act(batch, entry)


def _start(batch: Batch, entry: Entry) -> None:
    batch.started = batch.started or entry.date
    batch.name = _text(entry, "name") or batch.name
    batch.colour = _text(entry, "colour") or batch.colour
    vintage = entry.get("vintage")
    batch.vintage = vintage if isinstance(vintage, int) else batch.vintage
    made_from = entry.get("from")
    if isinstance(made_from, list | tuple):
        batch.fruit = tuple(dict.fromkeys((*batch.fruit, *map(str, made_from))))
    volume = litres(entry.get("volume"), entry.get("unit"))
    batch.volume = batch.volume if volume is None else volume
    if names := split_vessels(_text(entry, "vessel") or ""):
        batch.held = {}
        _arrive(batch, entry, names, volume)


def _reading(batch: Batch, entry: Entry) -> None:
    quantity, value = entry.get("quantity"), entry.get("value")
    if not isinstance(value, int | float):
        return
    if quantity == "sg":
        batch.gravity, batch.gravity_on = float(value), entry.date
    elif quantity == "volume" and (volume := litres(value, entry.get("unit"))) is not None:
        batch.volume = volume
        batch.left = bool(batch.bottled) and volume > 0
        if len(batch.held) == 1:
            key, held = next(iter(batch.held.items()))
            batch.held[key] = held._replace(litres=volume)


def _rack(batch: Batch, entry: Entry) -> None:
    to, sources = (split_vessels(_text(entry, name) or "") for name in ("to", "from"))
    volume = litres(entry.get("volume"), entry.get("unit"))
    # Wine racked into the bottling bucket is on its way into bottles, wherever the note says so.
    batch.left = batch.left or bool(batch.bottled and to and "bottling" not in to[0].lower())
    if sources:
        moved = [_leave(batch, name, volume) for name in sources]
    else:  # several rackings of one note are one wine split, so those before it stay
        here = (entry.date, entry.place[0])
        gone = [key for key, held in batch.held.items() if to and (held.date, held.note) != here]
        moved = [batch.held.pop(key).litres for key in gone]
    if to:
        known = sum(m for m in moved if m is not None) if moved and None not in moved else None
        if volume is None and len(to) == 1:
            volume = known if known is not None or batch.held else batch.volume
        _arrive(batch, entry, to, volume)
    amounts = [held.litres for held in batch.held.values()]
    if amounts and None not in amounts:
        batch.volume = sum(a for a in amounts if a is not None)
    elif volume is not None and to and batch.held.keys() == {vessel_key(name) for name in to}:
        batch.volume = volume  # all of it shared out between vessels, in parts that are not told


def _leave(batch: Batch, name: str, volume: float | None) -> float | None:
    """Take the wine out of a vessel; what it held, where known."""
    key = _held_as(batch, vessel_key(name))
    if key is None:
        return None
    held = batch.held[key]
    if volume is not None and held.litres is not None and volume < _PART * held.litres:
        batch.held[key] = held._replace(litres=held.litres - volume)
        return volume
    del batch.held[key]
    return held.litres


def _held_as(batch: Batch, key: str) -> str | None:
    """The key of the vessel meant among those that the batch is in; the only one, where it is in only one."""
    if key in batch.held:
        return key
    words = set(key.split())
    fits = [k for k in batch.held if words <= set(k.split()) or words >= set(k.split())]
    # From a vessel never noted: a move between went unrecorded, so it has left the one that was.
    fits = fits or list(batch.held)
    return fits[0] if len(fits) == 1 else None


def _arrive(batch: Batch, entry: Entry, names: list[str], volume: float | None) -> None:
    share = volume if len(names) == 1 else None
    for name in names:
        batch.held[vessel_key(name)] = Held(entry.date, entry.place[0], share, name)


def _blend(batch: Batch, entry: Entry) -> None:
    if batch.volume is None or batch.started == entry.date:
        return  # a start says what the blend comes to
    amounts = [amount for _, amount in blended(entry)]
    batch.volume = None if None in amounts else batch.volume + sum(a for a in amounts if a is not None)
    _sole(batch, batch.volume)


def _drawn(batch: Batch, entry: Entry) -> None:
    """Another batch's blend took some of this one."""
    for number, amount in blended(entry):
        if number == batch.number and batch.volume is not None:
            batch.volume = None if amount is None else max(0.0, batch.volume - amount)
            _sole(batch, batch.volume)
            if batch.volume is not None and batch.volume < _EMPTY:
                batch.held = {}


def _sole(batch: Batch, volume: float | None) -> None:
    """What each vessel holds, now that the whole has changed by an amount from no vessel in particular."""
    sole = volume if len(batch.held) == 1 else None
    batch.held = {key: held._replace(litres=sole) for key, held in batch.held.items()}


def _bottle(batch: Batch, entry: Entry) -> None:
    batch.bottled, batch.left = entry.date, False
    batch.filled += _count(entry)


def _taken(batch: Batch, entry: Entry) -> None:
    batch.taken += _count(entry)


def _end(batch: Batch, entry: Entry) -> None:
    batch.ended, batch.held = entry.date, {}


def _pitch(batch: Batch, entry: Entry) -> None:
    batch.pitched = batch.pitched or entry.date


def _press(batch: Batch, entry: Entry) -> None:
    batch.pressed = entry.date


def _move(batch: Batch, entry: Entry) -> None:
    batch.place = _text(entry, "to") or batch.place


def _malolactic(batch: Batch, entry: Entry) -> None:
    batch.malolactic = _text(entry, "stage")


def _fermentation(batch: Batch, entry: Entry) -> None:
    stage = entry.get("stage")
    if stage == "finished":
        batch.finished = entry.date
    elif stage in ("started", "restarted"):
        batch.finished = None


def _text(entry: Entry, name: str) -> str | None:
    value = entry.get(name)
    return value.strip() or None if isinstance(value, str) else None


def _count(entry: Entry) -> int:
    value = entry.get("count")
    return int(value) if isinstance(value, int | float) else 0


_STEPS: dict[str, Callable[[Batch, Entry], None]] = {
    "start": _start,
    "reading": _reading,
    "rack": _rack,
    "blend": _blend,
    "bottle": _bottle,
    "drink": _taken,
    "give": _taken,
    "end": _end,
    "pitch": _pitch,
    "press": _press,
    "move": _move,
    "fermentation": _fermentation,
    "malolactic": _malolactic,
}
