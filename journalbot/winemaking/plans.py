"""Plans: which of them are due, and which were kept or overtaken."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from functools import cache

from journalbot.journal.fold import order_of
from journalbot.model import Batch, Entry
from journalbot.vocabulary.care import BEFORE_BOTTLES, PLAN_ACTS, PLAN_EARLY, SULFITES
from journalbot.vocabulary.materials import MATERIALS
from journalbot.winemaking.record import last_day, notes_of
from journalbot.winemaking.said import phrases

_IDLE = frozenset(("buy", "order", "some", "more", "a", "an", "the", "new", "of", "for", "to", "and", "get"))


@dataclass(frozen=True)
class Due:
    """Work that is due: since when, for how many days, the usual days (low, high; None for a plan), and why."""

    batch: int | None
    what: str
    since: str
    days: int
    usual: tuple[int, int] | None
    reason: str
    overdue: bool
    notes: tuple[int, ...]
    key: str = "plan"  # the interval it rests on; what a person's own interval replaces
    own: bool = False  # whether the days are the person's own


def plans_due(entries: Iterable[Entry], today: date, batch: Batch | None = None) -> list[Due]:
    """The plans among entries that are due by today and neither kept nor overtaken, the oldest first.

    `batch` says whether the wine is past what was planned. A plan for a month is due in it, and overdue after it. One
    without a day is never due. It is kept by the same act dated from PLAN_EARLY days before it was due, after the note
    that planned it; and overtaken by a later plan of the same.
    """
    known = sorted((e for e in entries if e.date <= today.isoformat()[: len(e.date)]), key=order_of)
    plans = [e for e in known if due_of(e)]
    live = [p for p in plans if not _over(p, batch) and not _kept(p, known) and not _planned_again(p, plans)]
    due = [_due(p, today) for p in live if today.isoformat() >= due_of(p)]
    return sorted(due, key=lambda d: d.since)


def acts_of(plan: Entry) -> frozenset[str]:
    """What a plan's words ask for: kinds of entry, `reading:sg`, `addition:bentonite`; empty where they name none."""
    said = phrases(str(plan.get("what") or ""), _words())
    acts = frozenset(_words()[phrase] for phrase in said)
    # Who plans to buy yeast plans no pitch.
    return frozenset(("purchase",)) if "purchase" in acts else acts


def due_of(plan: Entry) -> str:
    """The date that a plan is due, as precise as it says; empty where it is no plan, or has no date of the calendar."""
    due = plan.get("due") if plan.kind == "plan" else None
    try:
        return due if isinstance(due, str) and last_day(due) else ""
    except ValueError:
        return ""


def _due(plan: Entry, today: date) -> Due:
    since = due_of(plan)
    days = max(0, (today - last_day(since)).days)
    overdue = today > last_day(since)
    late = f", {days} day{'s' if days != 1 else ''} ago" if overdue else ""
    return Due(plan.batch, str(plan.get("what") or ""), since, days, None, f"planned for {since}{late}", overdue,
               notes_of(plan))


def _over(plan: Entry, batch: Batch | None) -> bool:
    if batch is None:
        return False
    if batch.ended:
        return True
    kinds = {act.partition(":")[0] for act in acts_of(plan)}
    return not batch.under_way and bool(kinds) and kinds <= BEFORE_BOTTLES


def _kept(plan: Entry, entries: Sequence[Entry]) -> bool:
    acts = acts_of(plan)
    from_day = (_first_day(due_of(plan)) - timedelta(days=PLAN_EARLY)).isoformat()
    later = [e for e in entries if order_of(e) > order_of(plan) and last_day(e.date).isoformat() >= from_day]
    return bool(acts) and all(any(_does(e, act, plan) for e in later) for act in acts)


def _planned_again(plan: Entry, plans: Sequence[Entry]) -> bool:
    acts = acts_of(plan)
    later = [p for p in plans if p.date > plan.date and p.batch == plan.batch]
    return bool(acts) and any(acts_of(p) == acts for p in later)


def _does(entry: Entry, act: str, plan: Entry) -> bool:
    """Whether an entry is the act that a plan asks for."""
    kind, _, detail = act.partition(":")
    if entry.kind != kind or (plan.batch is not None and entry.batch != plan.batch and kind != "purchase"):
        return False
    if kind == "purchase":
        wanted, bought = (_stems(str(e.get(f) or "")) for e, f in ((plan, "what"), (entry, "item")))
        return bool(wanted & bought)
    if kind == "reading":
        return bool(entry.get("quantity") == detail)
    if kind == "addition":
        given = entry.get("material")
        return bool(given == detail) or (given in SULFITES and detail in SULFITES)
    return True


def _stems(text: str) -> frozenset[str]:
    return frozenset(w.rstrip("s") for w in text.lower().split() if w not in _IDLE)


def _first_day(iso: str) -> date:
    year, month, day = (*map(int, iso.split("-")), 1, 1)[:3]
    return date(year, month, day)


@cache
def _words() -> dict[str, str]:
    materials = {s: f"addition:{name}" for name, spellings in MATERIALS.items() for s in spellings}
    return {**materials, **PLAN_ACTS}
