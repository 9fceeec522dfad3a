"""Which entries tell how a fermentation began and ended: the pitch, the end, and the gravities that go with them."""

from journalbot.journal.fold import order_of
from journalbot.model import Entry
from journalbot.questions.measures.base import Case
from journalbot.winemaking.gravity import sg_from_brix

_DRY_BY_READING = 1.000  # an SG at or below this shows a dry wine where no note says so; common practice, no source
_DRY_BRIX = 0.0  # the same on a Brix hydrometer; a refractometer never reads so low in wine


def readings(case: Case, *quantities: str) -> list[Entry]:
    """The readings of these quantities, in order."""
    return [
        e
        for e in case.entries
        if e.kind == "reading" and e.get("quantity") in quantities and isinstance(e.get("value"), int | float)
    ]


def gravity_of(entry: Entry) -> float:
    """The SG of a reading of gravity or of Brix."""
    return float(entry.get("value")) if entry.get("quantity") == "sg" else sg_from_brix(float(entry.get("value")))


def ended_by(case: Case) -> list[Entry]:
    """Readings that may tell how a fermentation ended: SG, and Brix at or below 0."""
    return [e for e in readings(case, "sg", "brix") if e.get("quantity") == "sg" or float(e.get("value")) <= _DRY_BRIX]


def pitch_of(case: Case) -> Entry | None:
    """The first pitch, or else the first sign of fermentation."""
    pitches = case.kind("pitch")
    started = [e for e in case.kind("fermentation") if e.get("stage") == "started"]
    return pitches[0] if pitches else started[0] if started else None


def finish_of(case: Case) -> Entry | None:
    """The entry that calls the fermentation finished, or else the first reading that shows it."""
    finished = [e for e in case.kind("fermentation") if e.get("stage") == "finished"]
    if finished:
        return finished[-1]
    begun = pitch_of(case)
    dry = [
        e
        for e in ended_by(case)
        if gravity_of(e) <= _DRY_BY_READING and (begun is None or order_of(e) >= order_of(begun))
    ]
    return dry[0] if dry else None


def original_gravity(case: Case) -> Entry | None:
    """The gravity that fermentation began from: the last SG or Brix up to the pitch; the first without one."""
    begun = pitch_of(case)
    for quantity in ("sg", "brix"):
        found = readings(case, quantity)
        before = [
            e
            for e in found
            if begun is None or e.date < begun.date or (e.date == begun.date and (e.place[0] <= begun.place[0]))
        ]
        if before:
            return before[-1] if begun is not None else before[0]
    later = readings(case, "sg", "brix")
    return later[0] if later and begun is not None and later[0].date == begun.date else None


SWEETENERS = ("sugar", "honey", "concentrate", "syrup", "glycerin", "juice")


def sweetenings(case: Case) -> list[Entry]:
    """Additions of what tastes sweet, after the fermentation was over."""
    over = finish_of(case)
    return [
        e
        for e in case.kind("addition")
        if over is not None and order_of(e) > order_of(over) and any(s in str(e.get("material")) for s in SWEETENERS)
    ]


def final_gravity(case: Case) -> Entry | None:
    """The gravity at which fermentation ended: the last reading before any sweetening, once it was over."""
    over = finish_of(case)
    if over is None:
        return None
    sweet = sweetenings(case)
    stop = order_of(sweet[0]) if sweet else ("9999", 0, 0)
    found = [e for e in ended_by(case) if order_of(e) < stop]
    settled = [e for e in found if e.date >= over.date] or [e for e in found if gravity_of(e) <= _DRY_BY_READING]
    return settled[-1] if settled else None
