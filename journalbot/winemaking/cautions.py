"""Which cautions a note calls for, from what it says, what it was filed as, and the state of the wine it speaks of."""

from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from datetime import date
from functools import cache

from journalbot.model import Entry
from journalbot.vocabulary.care import SULFITES
from journalbot.vocabulary.cautions import CAUTIONS
from journalbot.vocabulary.hazards import CLOSED_PLACES, HARMLESS, HAZARDS, ROOTS, SEALED, WILD
from journalbot.winemaking.alcohol import alcohol_at_end
from journalbot.winemaking.bottling import bottling_risk
from journalbot.winemaking.gravity import OTHER_SG
from journalbot.winemaking.plans import acts_of
from journalbot.winemaking.record import Record, sort_of, value_of
from journalbot.winemaking.said import phrases
from journalbot.winemaking.units import litres
from journalbot.winemaking.volumes import co2_litres

_ENTERED = 100.0  # litres from which a vessel can be leaned into; this program's threshold
_HEAVY_GLASS = 11.0  # litres; this program's threshold
_LOW_ACID = 4.5  # pH; this program's threshold, under the usual food-safety line of 4.6
_EMPTY_GLASS = 6.0  # kg of a big carboy, 5 to 7; from memory
_USUAL_ALCOHOL = 12.0  # % vol, where no original gravity is known
_LIVELY = 1.020  # SG above which what is thrown in may foam over; this program's threshold
_ALLERGENS = frozenset(("egg white", "casein", "milk", "milk powder", "isinglass", "toasted almonds", *SULFITES))


def called_for(text: str, entries: Sequence[Entry] = (),
               records: Mapping[int, Record] | None = None) -> tuple[str, ...]:
    """The keys of CAUTIONS that a note or question calls for, dangers first.

    `entries` are what the note was filed as; `records` the batches that it speaks of, by number, these entries already
    in them. What the text only denies calls for nothing.
    """
    known = records or {}
    found = {*_by_text(text, entries), *(key for rule in _RULES for key in rule(text, entries, known))}
    return tuple(key for key in sorted(CAUTIONS, key=lambda k: not CAUTIONS[k].danger) if key in found)


def silenceable(key: str) -> bool:
    """Whether a caution may be kept back because it was shown lately. Never a danger."""
    return not CAUTIONS[key].danger


def to_show(keys: Collection[str], shown: Mapping[str, date], today: date) -> tuple[str, ...]:
    """Those of the keys to show today: every danger; another where its days have passed since it was last shown."""
    return tuple(k for k in keys if not silenceable(k) or k not in shown
                 or (today - shown[k]).days >= CAUTIONS[k].again)


def sentence(key: str, record: Record | None = None) -> str:
    """The caution in one sentence, with the figure of the batch where one can be worked out."""
    text = CAUTIONS[key].sentence
    head, bracket, rest = text.partition(" [")
    if not bracket:
        return text
    inside, _, tail = rest.partition("]")
    figure = _FIGURES[key](record) if record else None
    return f"{head}{inside.format(figure=figure)}{tail}" if figure else f"{head}{tail}"


# ---- by words


@cache
def _phrases() -> frozenset[str]:
    return frozenset(p for hazard in HAZARDS for group in hazard.groups for p in group) | HARMLESS


def _by_text(text: str, entries: Sequence[Entry]) -> Iterator[str]:
    said = phrases(text, _phrases())
    dose = any(e.kind == "addition" and e.batch is not None and e.get("material") in SULFITES for e in entries)
    for hazard in HAZARDS:
        if all(said.intersection(group) for group in hazard.groups) and (hazard.dosed or not dose):
            yield hazard.key


# ---- by what was done


Records = Mapping[int, Record]


def _sulfite(text: str, entries: Sequence[Entry], records: Records) -> Iterator[str]:
    for e in entries:
        item = str(e.get("item") or "").lower()
        if (e.kind == "addition" and e.get("material") in SULFITES) or (
                e.kind == "purchase" and any(w in item for w in ("sulfite", "sulphite", "campden", "kmeta", "k-meta"))):
            yield "sulfite"


def _gas(text: str, entries: Sequence[Entry], records: Records) -> Iterator[str]:
    """A ferment begun in, or brought to, a place where gas gathers."""
    for e in entries:
        record = records.get(e.batch) if e.batch is not None else None
        if record is None or record.phase not in ("must", "fermenting"):
            continue
        begins = e.kind in ("start", "pitch") or (e.kind == "fermentation" and e.get("stage") != "finished")
        place = f"{e.get('to') if e.kind == 'move' else record.batch.place or ''}, {text}"
        if (begins or e.kind == "move") and phrases(place, CLOSED_PLACES):
            yield "carbon dioxide"


def _vat(text: str, entries: Sequence[Entry], records: Records) -> Iterator[str]:
    for e in entries:
        record = records.get(e.batch) if e.batch is not None else None
        sizes = [c for _, _, _, c in record.vessels if c is not None] if record else []
        if e.kind in ("punch_down", "press", "crush") and sizes and max(sizes) >= _ENTERED:
            yield "entering a vat"


def _weight(text: str, entries: Sequence[Entry], records: Records) -> Iterator[str]:
    for e in entries:
        size, unit = e.get("capacity"), e.get("unit")
        glass = e.kind == "vessel" and sort_of(str(e.get("name"))) == "glass"
        if glass and isinstance(size, int | float) and unit in ("gal", "L") and litres(size, unit) >= _HEAVY_GLASS:
            yield "lifting"


def _sealed(text: str, entries: Sequence[Entry], records: Records) -> Iterator[str]:
    active = any(r.phase == "fermenting" for r in records.values())
    if active and phrases(text, SEALED):
        yield "sealed ferment"


def _foam(text: str, entries: Sequence[Entry], records: Records) -> Iterator[str]:
    for e in entries:
        record = records.get(e.batch) if e.batch is not None else None
        if record is None or record.phase != "fermenting" or not record.gravities:
            continue
        going = any(f.get("stage") in ("started", "restarted") for f in record.kind("fermentation"))
        thrown_in = e.kind in ("degas", "stir") or (e.kind == "addition" and e.get("material") in (
            "sugar", "yeast nutrient", "diammonium phosphate", "yeast energizer"))
        if thrown_in and going and (value_of(record.gravities[-1]) or 0) > _LIVELY:
            yield "blocked airlock"


def _bottles(text: str, entries: Sequence[Entry], records: Records) -> Iterator[str]:
    for e in entries:
        record = records.get(e.batch) if e.batch is not None else None
        bottling = e.kind == "bottle" or (e.kind == "plan" and "bottle" in acts_of(e))
        if bottling and record is not None and bottling_risk(record):
            yield "bottle pressure"
    asks = not entries and bool(phrases(text, ("bottle it", "bottle", "bottling", "ready to bottle", "bottle the")))
    if asks and any(r.batch.under_way and bottling_risk(r) for r in records.values()):
        yield "bottle pressure"


def _sorbate(text: str, entries: Sequence[Entry], records: Records) -> Iterator[str]:
    for e in entries:
        record = records.get(e.batch) if e.batch is not None else None
        if e.kind == "addition" and e.get("material") == "potassium sorbate" and record is not None:
            running = record.phase == "fermenting"
            if running or record.kind("malolactic") or not record.additions(SULFITES):
                yield "sorbate"


def _fruit(text: str, entries: Sequence[Entry], records: Records) -> Iterator[str]:
    for e in entries:
        made_of = e.get("from") if e.kind == "start" else [e.get("material")] if e.kind == "addition" else []
        named = phrases(", ".join(map(str, made_of or ())), ROOTS | WILD)
        if named & ROOTS:
            yield "roots"
        if named & WILD:
            yield "wild plants"
        ph = value_of(e) if e.kind == "reading" and e.get("quantity") == "ph" else None
        if ph is not None and ph > _LOW_ACID:
            yield "roots"


def _leaving(text: str, entries: Sequence[Entry], records: Records) -> Iterator[str]:
    for e in entries:
        record = records.get(e.batch) if e.batch is not None else None
        if e.kind == "give" and record is not None and record.additions(_ALLERGENS):
            yield "allergens"
        if e.kind == "drink":
            yield "drinking"


_RULES: tuple[Callable[[str, Sequence[Entry], Records], Iterator[str]], ...] = (
    _sulfite, _gas, _vat, _weight, _sealed, _foam, _bottles, _sorbate, _fruit, _leaving)


# ---- figures


def _gas_litres(record: Record) -> str | None:
    """Litres of gas still to come off in all, to two digits: by the original gravity, else for 12 % vol."""
    volume, og = record.batch.volume, record.original_sg
    if volume is None or not 0.05 <= volume <= 5000:
        return None
    alcohol = alcohol_at_end(og).value if og is not None and OTHER_SG[0] <= og <= OTHER_SG[1] else _USUAL_ALCOHOL
    return f"{float(f'{co2_litres(volume, alcohol).value:.2g}'):,.0f}"


def _glass_weight(record: Record) -> str | None:
    """Kilograms of wine and glass in the fullest carboy."""
    volumes = [v for _, sort, v, _ in record.vessels if sort == "glass" and v is not None and v >= _HEAVY_GLASS]
    return f"{max(volumes) + _EMPTY_GLASS:.0f}" if volumes else None


_FIGURES: dict[str, Callable[[Record], str | None]] = {"carbon dioxide": _gas_litres, "lifting": _glass_weight}
