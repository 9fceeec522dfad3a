"""What looks wrong with a batch, from its entries: signs for a person to look into, never a diagnosis."""

from collections.abc import Iterator
from dataclasses import dataclass

from journalbot.journal.fold import order_of
from journalbot.model import Entry
from journalbot.vocabulary import care as table
from journalbot.vocabulary.descriptors import FAULTS
from journalbot.winemaking.bottling import bottling_risk, dryness_of
from journalbot.winemaking.plans import acts_of, due_of
from journalbot.winemaking.record import Record, in_litres, last_day, notes_of, record_of, value_of
from journalbot.winemaking.said import clauses_with
from journalbot.winemaking.sulfite import free_so2_needed
from journalbot.winemaking.units import convert
from journalbot.winemaking.volumes import head_space

_RECENT_TEMPERATURE = 7  # days
_ONE_PACE = 7  # days: over more of them the mean says little of the pace now
_BOTTLES_WATCHED = 365  # days after a bottling in which sugar left in the bottle is still spoken of


@dataclass(frozen=True)
class Worry:
    """What looks wrong, why, the notes it rests on, and the first thing to try."""

    batch: int
    what: str
    reason: str
    notes: tuple[int, ...]
    first_step: str


def worries(record: Record) -> list[Worry]:
    """What looks wrong with a batch today; nothing for one that has ended or been drunk up."""
    return [worry for rule in _RULES.get(record.phase, ()) for worry in rule(record)]


def _worry(record: Record, what: str, reason: str, *notes: Entry | None) -> Worry:
    step, _ = table.FIRST_STEPS.get(what, table.ANY_FAULT)
    return Worry(record.batch.number, what, reason, notes_of(*notes), step)


# ---- fermenting


def _no_start(record: Record) -> Iterator[Worry]:
    pitched = record.begun
    if pitched is None or pitched.kind != "pitch" or record.days_since(pitched.date) < table.START_DAYS:
        return
    signs = [e for e in record.kind("fermentation", "punch_down", "press", "rack", "taste") if e.date >= pitched.date]
    if signs or record.settled:
        return
    days = record.days_since(pitched.date)
    sgs = [value_of(e) or 0 for e in record.gravities]
    before = record.original_sg if record.original_sg is not None else sgs[0] if len(sgs) > 1 else None
    if sgs and before is not None and before - sgs[-1] < table.SLUGGISH:
        reason = f"gravity {sgs[-1]:.3f} {days} days after the pitch, {before:.3f} before it"
        yield _worry(record, "no start", reason, pitched, record.gravities[-1])
    elif not sgs:
        yield _worry(record, "no start", f"no sign of fermentation noted in the {days} days since the pitch", pitched)


def _pace(record: Record) -> Iterator[Worry]:
    """Sluggish or stuck, by the last two gravities days apart, or because the last note on it says stuck."""
    stage = record.last("fermentation")
    called = stage is not None and stage.get("stage") == "stuck"
    if called and not any(order_of(e) > order_of(stage) for e in record.gravities if stage):
        yield _worry(record, "stuck", f"noted as stuck on {stage.date}" if stage else "", stage)
        return
    gravities = [e for e in record.gravities if len(e.date) == 10]
    if not gravities or record.settled or not _under_way(record):
        return
    last = gravities[-1]
    earlier = [e for e in gravities if e.date < last.date]
    if not earlier:
        return
    before = earlier[-1]
    days = (last_day(last.date) - last_day(before.date)).days
    sg, fall = value_of(last) or 0, (value_of(before) or 0) - (value_of(last) or 0)
    said = f"gravity {value_of(before):.3f} on {before.date} and {sg:.3f} on {last.date}"
    if abs(fall) <= table.SAME_SG + 1e-9:
        if days >= table.STUCK_DAYS and dryness_of(record, last) == "sugar left":
            yield _worry(record, "stuck", said, before, last)
    elif days <= _ONE_PACE and 0 < fall / days < table.SLUGGISH - 1e-9 and sg > table.SLUGGISH_ABOVE:
        yield _worry(record, "sluggish", f"{said}: {fall / days:.4f} a day", before, last)


def _under_way(record: Record) -> bool:
    """Whether fermentation shows at all: a sign noted, or gravity well below where it began."""
    signs = any(e.get("stage") in ("started", "restarted") for e in record.kind("fermentation"))
    og = record.original_sg
    return signs or (og is not None and og - (value_of(record.gravities[-1]) or 9) >= table.SLUGGISH)


def _temperature(record: Record) -> Iterator[Worry]:
    begun, band = record.begun, table.BANDS.get(record.colour or "")
    read = [e for e in record.readings("temperature") if begun and e.date >= begun.date and e.get("unit") in ("F", "C")]
    if not read or band is None or record.days_since(read[-1].date) > _RECENT_TEMPERATURE:
        return
    last = read[-1]
    celsius = convert(value_of(last) or 0, str(last.get("unit")), "C")
    low, high, _ = band
    if not low - 0.5 <= celsius <= high + 0.5:
        usual = " to ".join(f"{convert(c, 'C', str(last.get('unit'))):.0f}" for c in (low, high))
        unit = last.get("unit")
        reason = f"{value_of(last):g} {unit} on {last.date}; usual for {record.colour} is {usual} {unit}"
        yield _worry(record, "too cold" if celsius < low else "too warm", reason, last)


# ---- at any time


def _rising(record: Record) -> Iterator[Worry]:
    if len(record.gravities) < 2:
        return
    before, last = record.gravities[-2:]
    rise = (value_of(last) or 0) - (value_of(before) or 0)
    between = [e for e in record.kind("blend", "top_up", "addition", "start") if before.date <= e.date <= last.date]
    if rise > table.RISE_SG + 1e-9 and not between:
        reason = f"gravity rose from {value_of(before):.3f} to {value_of(last):.3f}, and nothing was added between"
        yield _worry(record, "gravity rising", reason, before, last)


def _faults(record: Record) -> Iterator[Worry]:
    """Faults by the latest tasting and by remarks since; what only an earlier tasting had is past."""
    tasted = record.last("taste")
    entries = [tasted] if tasted else []
    entries += [e for e in record.kind("remark") if tasted is None or order_of(e) > order_of(tasted)]
    fermenting = record.phase == "fermenting"
    seen: set[str] = set()
    for entry in reversed([e for e in entries if record.days_since(e.date) <= table.FAULT_DAYS]):
        for word, fault in _signs(entry):
            if fault not in seen and not (fermenting and fault in table.NORMAL_IN_FERMENT):
                seen.add(fault)
                yield _worry(record, fault, f'"{word}" noted on {entry.date}', entry)


_SIGNS = {**FAULTS, **table.REMARK_FAULTS}
_HEARD = frozenset(_SIGNS) | table.SMELLING | {"egg white", "egg whites", "noble rot"}


def _signs(entry: Entry) -> Iterator[tuple[str, str]]:
    """The words of a tasting or remark that point to a fault, each with the fault."""
    tasting = entry.kind == "taste"
    text = ", ".join(map(str, entry.get("words") or ())) if tasting else str(entry.get("text") or "")
    for clause in clauses_with(text, _HEARD, table.FADED):
        smelt = tasting or bool(clause & table.SMELLING)
        for word in sorted(clause & _SIGNS.keys()):
            if smelt or word not in table.ONLY_SMELT:
                yield word, _SIGNS[word]


# ---- resting


def _head_space(record: Record) -> Iterator[Worry]:
    for name, sort, litres, capacity in record.vessels:
        if sort != "glass" or litres is None or capacity is None or not 0.05 <= litres <= capacity <= 10000:
            continue
        empty = head_space(litres, capacity)
        if empty > table.HEAD_SPACE:
            reason = f"{in_litres(litres)} in {name}, which holds {in_litres(capacity)}: {empty:.0%} of it is air"
            yield _worry(record, "head space", reason, record.last("rack", "start"))


_HANDS_ON = ("airlock", "rack", "top_up", "reading", "addition", "taste", "oak", "oak_out", "stir", "degas", "filter")


def _airlock(record: Record) -> Iterator[Worry]:
    """Nobody at the vessel for long: whoever reads, doses or tastes the wine sees its airlock."""
    last = record.last(*_HANDS_ON)
    sealed = any(sort in ("glass", "other") for _, sort, _, _ in record.vessels)
    if last is not None and sealed and record.days_since(last.date) > table.AIRLOCK_LONG:
        yield _worry(record, "airlock", f"nothing done to it for {record.days_since(last.date)} days", last)


def _sulfite(record: Record) -> Iterator[Worry]:
    if record.malolactic is not None:
        return
    added, read = record.additions(table.SULFITES), record.readings("free_so2")
    if not added and not read:
        over = record.settled
        if over is not None and record.days_since(over.date) > table.INTERVALS["check sulfite"].high:
            reason = f"none on record, {record.days_since(over.date)} days after fermentation ended"
            yield _worry(record, "sulfite never measured", reason, over)
        return
    if not read or (added and order_of(added[-1]) > order_of(read[-1])):
        return  # what an addition left free is not known until it is measured
    free, (needed, ph) = value_of(read[-1]) or 0, _free_needed(record)
    if free < needed:
        by = f" at pH {value_of(ph):g}" if ph else ""
        reason = f"free SO2 {free:g} mg/L on {read[-1].date}; at least {needed:.0f} is usual{by}"
        yield _worry(record, "sulfite low", reason, read[-1], ph)


def _free_needed(record: Record) -> tuple[float, Entry | None]:
    """Free SO2, mg/L, by the last pH where there is one that the reckoning is valid for."""
    ph = next(reversed(record.readings("ph")), None)
    value = value_of(ph) if ph else None
    if value is None or not 2.8 <= value <= 4.2:
        return table.SULFITE_FREE, None
    return free_so2_needed(table.SULFITE_MOLECULAR, value), ph


# ---- around the bottling


def _bottling(record: Record) -> Iterator[Worry]:
    """A bottling planned soon, or overdue, of a wine that the record does not show to be done."""
    plans = [e for e in record.kind("plan") if "bottle" in acts_of(e) and due_of(e)]
    soon = [p for p in plans if (last_day(due_of(p)) - record.today).days <= table.BOTTLING_SOON]
    kept = bool(soon) and record.after(soon[-1], "bottle")
    risk = bottling_risk(record) if soon and not kept else None
    if risk:
        reason = f"to be bottled {due_of(soon[-1])}: {risk.reason}"
        step, _ = table.FIRST_STEPS["sugar at bottling"]
        notes = tuple(dict.fromkeys((*risk.notes, *notes_of(soon[-1]))))
        yield Worry(record.batch.number, "sugar at bottling", reason, notes, step)


def _bottled(record: Record) -> Iterator[Worry]:
    bottled = record.last("bottle")
    if bottled is None or record.days_since(bottled.date) > _BOTTLES_WATCHED:
        return
    # As it stood on the day: readings after it are of the bottled wine.
    then = [e for e in record.entries if order_of(e) <= order_of(bottled)]
    risk = bottling_risk(record_of(record.batch, then, last_day(bottled.date)))
    if risk:
        step, _ = table.FIRST_STEPS["bottled with sugar"]
        notes = tuple(dict.fromkeys((*risk.notes, *notes_of(bottled))))
        yield Worry(record.batch.number, "bottled with sugar", f"bottled on {bottled.date}: {risk.reason}", notes, step)


_RULES = {
    "fermenting": (_no_start, _pace, _temperature, _rising, _faults, _bottling),
    "resting": (_pace, _rising, _faults, _head_space, _airlock, _sulfite, _bottling),
    "bottled": (_faults, _bottled),
}
