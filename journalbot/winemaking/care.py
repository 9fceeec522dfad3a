"""What is due for a batch, from its entries, its state and its plans. Reminders in the trade's usual intervals: what a
person measured, planned or set comes first."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from datetime import date, timedelta

from journalbot.journal.fold import order_of
from journalbot.model import Entry
from journalbot.vocabulary.care import (
    DRY_SG,
    INTERVALS,
    MALIC_DONE,
    MOST_RACKINGS,
    PRESS_SG,
    SMALL_BARREL,
    SULFITES,
)
from journalbot.winemaking.plans import Due, acts_of, due_of, plans_due
from journalbot.winemaking.record import Record, last_day, notes_of, value_of

__all__ = ["Due", "ahead", "care", "interval", "plans_due"]

_SMALL_OAK = frozenset(("powder", "chips", "cubes"))
_COLD_CHECK_AHEAD = 30  # days before a planned bottling
_FRESH = 3  # days in which a gravity above the mark says not yet; this program's threshold
_EARLY_RACKING = 3  # days before the end of fermentation; this program's threshold
_AHEAD = 1200  # days looked ahead for what will be due: longer than any interval but the drinking
_KEPT_ON_LEES = 42  # days: lees stirred so lately are kept on purpose; common practice, no source


def interval(key: str, own: Mapping[str, tuple[int, int]]) -> tuple[int, int]:
    """The usual least and most days of a key of INTERVALS: a person's own where set. ValueError where those are not in
    order, KeyError for a key not known."""
    usual = INTERVALS[key]
    low, high = own.get(key, (usual.low, usual.high))
    if not 0 <= low <= high:
        raise ValueError(f"the days for {key!r} must be 0 or more, the least before the most, not {low} to {high}")
    return low, high


def care(record: Record, own: Mapping[str, tuple[int, int]] | None = None) -> list[Due]:
    """What is due for a batch today, the overdue first; nothing for one that has ended or been drunk up.

    `own` sets a person's own days, (least, most), by key of INTERVALS.
    """
    if record.phase == "over":
        return []
    found = [due for rule in _RULES[record.phase] for due in rule(record, own or {})]
    found += plans_due(record.entries, record.today, record.batch)
    planned = {act for due in found if due.key == "plan" for act in _acts(record, due)}
    # Of an act that was planned, the plan is what counts.
    kept = [d for d in found if d.key == "plan" or _ACT.get(d.key.split()[0]) not in planned]
    return sorted(kept, key=lambda d: (not d.overdue, d.since))


def ahead(record: Record, act: str, own: Mapping[str, tuple[int, int]] | None = None) -> list[Due]:
    """What of an act is due or will be, as far as can be told today: plans of it, then the usual days from its clock.

    `act` as plans name acts ("rack", "top_up", "bottle" …); each Due's `since` is where its days are counted from.
    """
    if record.phase == "over":
        return []
    plans = [e for e in record.kind("plan") if act in acts_of(e) and due_of(e)]
    planned = [Due(record.batch.number, str(e.get("what")), due_of(e), 0, None, f"planned for {due_of(e)}",
                   record.today > last_day(due_of(e)), notes_of(e)) for e in plans if not record.after(e, act)]
    later = replace(record, today=record.today + timedelta(_AHEAD))
    coming = [due for rule in _RULES[record.phase] for due in rule(later, own or {})]
    return [*planned, *(due for due in coming if _ACT.get(due.key.split()[0]) == act)]


_ACT = {"rack": "rack", "press": "press", "bottle": "bottle", "top": "top_up", "airlock": "airlock", "taste": "taste",
        "oak": "oak_out", "settle": "rack", "malolactic": "malolactic", "punch": "punch_down", "drink": "drink",
        "check": "sulfite"}


def _acts(record: Record, due: Due) -> frozenset[str]:
    plans = [e for e in record.kind("plan") if e.note in due.notes and e.get("what") == due.what]
    return frozenset(act for plan in plans for act in acts_of(plan))


Own = Mapping[str, tuple[int, int]]


def _clocked(record: Record, key: str, since: str, own: Own, *notes: Entry | None, why: str = "") -> Iterator[Due]:
    """The work of that interval, if it is due by a clock that started on a day."""
    low, high = interval(key, own)
    days = record.days_since(since)
    if days < low:
        return
    row = INTERVALS[key]
    about = "" if len(since) == 10 else "about "
    usual = str(low) if low == high else f"{low} to {high}"
    whose = "you set" if key in own else "usual is"
    reason = why or f"{about}{days} day{'s' if days != 1 else ''} since {row.clock}; {whose} {usual}"
    yield Due(record.batch.number, row.what, since, days, (low, high), reason, days > high, notes_of(*notes), key,
              key in own)


# ---- while it ferments


def _punch_down(record: Record, own: Own) -> Iterator[Due]:
    last = record.last("punch_down", "crush")
    if _on_skins(record) and last is not None and record.begun is not None:
        clock = max(last, record.begun, key=order_of)
        yield from _clocked(record, "punch down", clock.date, own, clock)


def _on_skins(record: Record) -> bool:
    return record.last("crush", "punch_down") is not None and record.last("press", "rack") is None


def _press(record: Record, own: Own) -> Iterator[Due]:
    """By gravity where it is read, else by days on the skins."""
    key = f"press {record.colour}"
    if key not in INTERVALS or not _on_skins(record) or record.begun is None:
        return
    yield from _by_gravity(record, key, own, PRESS_SG, DRY_SG)


def _by_gravity(record: Record, key: str, own: Own, due_at: float, overdue_at: float) -> Iterator[Due]:
    begun = record.begun
    if begun is None:
        return
    low, high = interval(key, own)
    last = record.gravities[-1] if record.gravities else None
    days = record.days_since(begun.date)
    sg = value_of(last) if last else None
    if last is not None and sg is not None and sg <= due_at and days <= high:
        reason = f"gravity {sg:.3f} on {last.date}; usual from {due_at:.3f}"
        since = record.days_since(last.date)
        yield Due(record.batch.number, INTERVALS[key].what, last.date, since, (low, high), reason, sg <= overdue_at,
                  notes_of(last), key)
    elif last is None or days > high or record.days_since(last.date) > _FRESH:
        yield from _clocked(record, key, begun.date, own, begun)


def _rack_from_primary(record: Record, own: Own) -> Iterator[Due]:
    open_now = any(sort == "open" for _, sort, _, _ in record.vessels)
    if open_now and not _on_skins(record) and record.last("rack") is None:
        yield from _by_gravity(record, "rack from primary", own, PRESS_SG, DRY_SG)


# ---- while it rests


def _rack_gross_lees(record: Record, own: Own) -> Iterator[Due]:
    if clock := _on_gross_lees(record):
        yield from _clocked(record, "rack gross lees", clock.date, own, clock)


def _on_gross_lees(record: Record) -> Entry | None:
    """The end of fermentation, or a later pressing, where no racking has followed it; one some days before counts."""
    over, pressed = record.settled, record.last("press")
    if over is None:
        return None
    # What runs off at the press still holds its lees.
    since = max(last_day(over.date) - timedelta(_EARLY_RACKING),
                last_day(pressed.date) + timedelta(1) if pressed else date.min)
    racked = any(last_day(e.date) >= since for e in record.kind("rack", "filter"))
    return None if racked else max((e for e in (over, pressed) if e), key=order_of)


def _rack_again(record: Record, own: Own) -> Iterator[Due]:
    """Racking once more while it throws sediment; not a wine filtered, chilling, kept on its lees or racked enough."""
    last, stirred = record.last("rack"), record.last("stir")
    if last is None or len({e.date for e in record.kind("rack")}) >= MOST_RACKINGS or record.last("filter"):
        return
    on_lees = stirred is not None and record.days_since(stirred.date) <= _KEPT_ON_LEES
    if not on_lees and _on_gross_lees(record) is None and not record.after(last, "chill"):
        yield from _clocked(record, "rack again", last.date, own, last)


def _top_up(record: Record, own: Own) -> Iterator[Due]:
    last = record.last("top_up", "rack")
    if last is None:
        return
    sorts = {sort for _, sort, _, _ in record.vessels}
    sizes = [capacity for _, sort, _, capacity in record.vessels if sort == "wood" and capacity is not None]
    if "wood" in sorts:
        key = "top up small barrel" if sizes and max(sizes) < SMALL_BARREL else "top up barrel"
    elif "glass" in sorts:
        key = "top up glass"
    else:
        return
    yield from _clocked(record, key, last.date, own, last)


def _airlock(record: Record, own: Own) -> Iterator[Due]:
    last = record.last("airlock", "rack", "top_up")
    if last is not None and any(sort in ("glass", "other") for _, sort, _, _ in record.vessels):
        yield from _clocked(record, "airlock", last.date, own, last)


def _check_sulfite(record: Record, own: Own) -> Iterator[Due]:
    """Only for a wine that is given sulfite, and not while malolactic runs."""
    seen = max((*record.additions(SULFITES), *record.readings("free_so2")), key=order_of, default=None)
    clock = max((e for e in (seen, record.settled) if e), key=order_of, default=None)
    if seen is not None and clock is not None and record.malolactic is None:
        yield from _clocked(record, "check sulfite", clock.date, own, seen)


def _taste(record: Record, own: Own) -> Iterator[Due]:
    tasted, oak = record.last("taste"), _oak_in(record)
    clock = max((e for e in (tasted, oak, record.settled) if e), key=order_of, default=None)
    if clock is None:
        return
    key = "taste" if oak is None else "taste small oak" if oak.get("form") in _SMALL_OAK else "taste large oak"
    began = "the oak went in" if clock is oak else "fermentation ended"
    why = f"not tasted in the {record.days_since(clock.date)} days since {began}"
    yield from _clocked(record, key, clock.date, own, clock, why="" if clock is tasted else why)


def _oak_in(record: Record) -> Entry | None:
    """The oak that the wine is on now. A racking leaves loose oak behind, and a barrel when it goes elsewhere."""
    oak = record.last("oak")
    if oak is None or record.after(oak, "oak_out", "bottle"):
        return None
    if oak.get("form") == "barrel":
        return oak if not record.vessels or any(sort == "wood" for _, sort, _, _ in record.vessels) else None
    return None if oak.get("form") in _SMALL_OAK and record.after(oak, "rack") else oak


def _oak_out(record: Record, own: Own) -> Iterator[Due]:
    oak = _oak_in(record)
    if oak is None:
        return
    sizes = [capacity for _, sort, _, capacity in record.vessels if sort == "wood" and capacity is not None]
    small = oak.get("form") == "barrel" and bool(sizes) and max(sizes) < SMALL_BARREL
    key = "oak small barrel" if small else f"oak {oak.get('form')}"
    if key in INTERVALS:
        yield from _clocked(record, key, oak.date, own, oak)


def _malolactic(record: Record, own: Own) -> Iterator[Due]:
    going = record.malolactic
    if going is None:
        return
    malic = [e for e in record.readings("malic") if order_of(e) > order_of(going)]
    last = malic[-1] if malic else going
    value = value_of(malic[-1]) if malic else None
    if value is not None and value <= MALIC_DONE:
        reason = f"malic acid {value:g} g/L on {last.date}; done at {MALIC_DONE:g} or less"
        yield Due(record.batch.number, "end the malolactic", last.date, record.days_since(last.date),
                  interval("malolactic", own), reason, False, notes_of(last), "malolactic")
    else:
        yield from _clocked(record, "malolactic", last.date, own, last)


def _settle(record: Record, own: Own) -> Iterator[Due]:
    """Finings wait to be racked off; bentonite given to a must goes out with the first racking like all lees."""
    keys = {key.removeprefix("settle "): key for key in INTERVALS if key.startswith("settle ")}
    given = record.additions(keys)
    if not given or record.after(given[-1], "rack", "filter", "bottle"):
        return
    if record.settled is None or order_of(given[-1]) > order_of(record.settled):
        yield from _clocked(record, keys[given[-1].get("material")], given[-1].date, own, given[-1])


def _chill(record: Record, own: Own) -> Iterator[Due]:
    cold = record.last("chill")
    if cold is not None and not record.after(cold, "rack", "filter", "bottle", "move"):
        yield from _clocked(record, "chill", cold.date, own, cold)


def _cold_check(record: Record, own: Own) -> Iterator[Due]:
    """Before a bottling that is planned soon, for a wine never chilled."""
    soon = [p for p in record.kind("plan") if "bottle" in acts_of(p) and len(due_of(p)) == 10
            and abs((last_day(due_of(p)) - record.today).days) <= _COLD_CHECK_AHEAD]
    if soon and record.settled is not None and record.last("chill") is None:
        why = f"bottling is planned for {due_of(soon[-1])}, and it was never chilled"
        yield from _clocked(record, "cold check", record.settled.date, own, soon[-1], why=why)


def _bottle(record: Record, own: Own) -> Iterator[Due]:
    key = f"bottle {record.colour}"
    if key in INTERVALS and record.settled is not None and record.malolactic is None and record.batch.started:
        yield from _clocked(record, key, record.batch.started, own, record.last("start"))


# ---- in the bottle


def _drink(record: Record, own: Own) -> Iterator[Due]:
    bottled, year = record.batch.bottled, record.batch.year
    key = f"drink {record.colour}"
    if bottled is None or year is None or key not in INTERVALS or not record.batch.bottles:
        return
    if record.days_since(bottled) < interval("bottle rest", own)[0]:
        return
    if record.kind("addition") and not record.additions(SULFITES) and not record.readings("free_so2"):
        key = "drink without sulfite"
    started = record.batch.started
    vintage = started if started and started.startswith(str(year)) else str(year)
    yield from _clocked(record, key, vintage, own, record.last("bottle"))


_RULES = {
    "must": (),
    "fermenting": (_punch_down, _press, _rack_from_primary, _malolactic),
    "resting": (_rack_gross_lees, _rack_again, _top_up, _airlock, _check_sulfite, _taste, _oak_out, _malolactic,
                _settle, _chill, _cold_check, _bottle),
    "bottled": (_drink,),
}
