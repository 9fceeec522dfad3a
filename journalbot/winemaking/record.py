"""One batch as a practitioner looks at it: its entries in order, its state, and the day on which one looks."""

import calendar
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import date
from functools import cached_property

from journalbot.journal.fold import order_of
from journalbot.journal.vessel_names import vessel_key
from journalbot.model import Batch, Entry
from journalbot.vocabulary.care import DRY_SG, GLASS, OPEN, PRIMARY_DAYS
from journalbot.vocabulary.fruits import FRUITS
from journalbot.vocabulary.varieties import VARIETIES
from journalbot.winemaking.gravity import BRIX_HIGH, BRIX_LOW, sg_from_brix
from journalbot.winemaking.said import phrases

WOOD = frozenset(("barrel", "barrique", "cask", "puncheon", "hogshead"))
_NEW_MUST = 10  # days: a batch started longer ago, with no pitch on record, is not taken for must any more
_STILL_READ = 21  # days: a gravity above dry read within them shows a ferment still on, however old


def last_day(iso: str) -> date:
    """The latest day that a date as precise as `2024-10-05`, `2024-10` or `2024` can mean."""
    year, month, day = (*map(int, iso.split("-")), 0, 0)[:3]
    month = month or 12
    return date(year, month, day or calendar.monthrange(year, month)[1])


def notes_of(*entries: Entry | None) -> tuple[int, ...]:
    """The notes that entries stand in, each once, in order."""
    return tuple(dict.fromkeys(e.note for e in entries if e is not None and e.note))


def value_of(entry: Entry) -> float | None:
    """The figure of a reading; None where it holds none."""
    value = entry.get("value")
    return float(value) if isinstance(value, int | float) else None


def in_litres(litres: float) -> str:
    """A volume with no more digits than a cellar's measure bears: `23 L`, `4.5 L`."""
    return f"{litres:.3g} L"


@dataclass(frozen=True)
class Record:
    """A batch, its entries up to `today` in order, and what its vessels hold, in litres by name; see record_of()."""

    batch: Batch
    entries: tuple[Entry, ...]
    today: date
    capacities: Mapping[str, float] = field(default_factory=dict)

    def kind(self, *kinds: str) -> list[Entry]:
        """Its entries of these kinds, in order."""
        return [e for e in self.entries if e.kind in kinds]

    def last(self, *kinds: str) -> Entry | None:
        """The latest of its entries of these kinds."""
        return next((e for e in reversed(self.entries) if e.kind in kinds), None)

    def after(self, entry: Entry, *kinds: str) -> bool:
        """Whether an entry of these kinds comes after that one."""
        return any(order_of(e) > order_of(entry) for e in self.kind(*kinds))

    def days_since(self, iso: str) -> int:
        """Whole days from a date to today; from the last day that it can mean, never below 0."""
        return max(0, (self.today - last_day(iso)).days)

    def readings(self, quantity: str) -> list[Entry]:
        """Its readings of a quantity, in order, those without a figure left out."""
        return [e for e in self.kind("reading") if e.get("quantity") == quantity and value_of(e) is not None]

    def additions(self, materials: Iterable[str]) -> list[Entry]:
        """What was put in of these materials, in order."""
        wanted = frozenset(materials)
        return [e for e in self.kind("addition") if e.get("material") in wanted]

    @cached_property
    def begun(self) -> Entry | None:
        """The first pitch, or else the first sign of fermentation."""
        signs = [e for e in self.kind("fermentation") if e.get("stage") == "started"]
        return next(iter(self.kind("pitch") or signs), None)

    @cached_property
    def settled(self) -> Entry | None:
        """What shows that fermentation is over: the note that calls it finished, or the first dry reading, after the
        last start or restart."""
        going = [e for e in self.kind("fermentation") if e.get("stage") in ("started", "restarted")]
        since = max(map(order_of, [*going, *([self.begun] if self.begun else [])]), default=("", 0, 0))
        finished = [e for e in self.kind("fermentation") if e.get("stage") == "finished"]
        dry = [e for e in self.readings("sg") if (value_of(e) or 9) <= DRY_SG] if self.begun else []
        return min((e for e in (*finished, *dry) if order_of(e) > since), key=order_of, default=None)

    @cached_property
    def phase(self) -> str:
        """"must", "fermenting", "resting", "bottled" or "over" (ended, or the last bottle gone)."""
        if self.batch.ended or (self.batch.filled and not self.batch.under_way and not self.batch.bottles):
            return "over"
        if not self.batch.under_way:
            return "bottled"
        if self.settled:
            return "resting"
        if self.begun is None:
            return "must" if self.days_since(self.batch.started or self.today.isoformat()) <= _NEW_MUST else "resting"
        if self.days_since(self.begun.date) <= PRIMARY_DAYS:
            return "fermenting"
        last = self.gravities[-1] if self.gravities else None
        wet = last is not None and (value_of(last) or 0) > 1.000 and self.days_since(last.date) <= _STILL_READ
        return "fermenting" if wet else "resting"

    @cached_property
    def gravities(self) -> list[Entry]:
        """Readings of SG since fermentation began, in order. Brix is left out: a refractometer's is no gravity then."""
        start = order_of(self.begun) if self.begun else ("9999", 0, 0)
        return [e for e in self.readings("sg") if order_of(e) > start]

    @cached_property
    def original(self) -> Entry | None:
        """The reading that fermentation began from: the last SG, or else the last Brix, up to the day of the pitch."""
        day = self.begun.date if self.begun else "9999"
        for quantity in ("sg", "brix"):
            if found := [e for e in self.readings(quantity) if e.date <= day]:
                return found[-1]
        return None

    @cached_property
    def original_sg(self) -> float | None:
        """The original gravity as SG; None where not read, or where the Brix lies outside what can be converted."""
        value = value_of(self.original) if self.original else None
        if self.original is None or value is None or self.original.get("quantity") == "sg":
            return value
        return sg_from_brix(value) if BRIX_LOW <= value <= BRIX_HIGH else None

    @cached_property
    def colour(self) -> str | None:
        """Its colour as noted, or else that which its fruit all agree on; None where neither tells."""
        if self.batch.colour:
            return self.batch.colour
        colours = {_colours()[p] for p in phrases(", ".join(self.batch.fruit), _colours())} - {None}
        return colours.pop() if len(colours) == 1 else None

    @cached_property
    def malolactic(self) -> Entry | None:
        """The start of a malolactic fermentation that has not been called finished."""
        last = self.last("malolactic")
        return last if last is not None and last.get("stage") != "finished" else None

    @cached_property
    def vessels(self) -> list[tuple[str, str, float | None, float | None]]:
        """Where it is now: each vessel's name, what sort it is (see sort_of), litres in it, and litres it can hold."""
        litres = {vessel_key(held.name): held.litres for held in self.batch.held.values()}
        alone = self.batch.volume if len(self.batch.vessels) == 1 else None
        return [(name, sort_of(name), alone if alone is not None else litres.get(vessel_key(name)),
                 self.capacities.get(name)) for name in self.batch.vessels]


def record_of(batch: Batch, entries: Iterable[Entry], today: date,
              capacities: Mapping[str, float] | None = None) -> Record:
    """A record of the batch from these entries: its own alone, none later than today, in order."""
    until = today.isoformat()
    own = [e for e in entries if e.batch == batch.number and e.date <= until[: len(e.date)]]
    return Record(batch, tuple(sorted(own, key=order_of)), today, capacities or {})


def sort_of(vessel: str) -> str:
    """"wood", "glass", "open" (a bucket, a bin) or "other", by the noun in a vessel's name."""
    words = set(vessel_key(vessel).split())
    return "wood" if words & WOOD else "open" if words & OPEN else "glass" if words & GLASS else "other"


def _colours() -> dict[str, str | None]:
    if not _COLOURS:
        for table in (FRUITS, VARIETIES):
            for base in table.values():
                _COLOURS.update((spelling, base.colour) for spelling in base.spellings)
        _COLOURS.update((colour, colour) for colour in ("red", "white", "rosé", "mead", "cider"))
    return _COLOURS


_COLOURS: dict[str, str | None] = {}
