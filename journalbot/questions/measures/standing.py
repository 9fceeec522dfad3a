"""What state a batch is in: fermenting, under way, gone; and whether it is in the state that a question names."""

from collections.abc import Callable

from journalbot.model import Batch, Entry
from journalbot.questions.measures.base import Case, Fact, Measure, fact_of, notes_of
from journalbot.questions.measures.gravities import ended_by, finish_of
from journalbot.questions.measures.readings import reading_fact
from journalbot.questions.says import day_said

STATES: dict[str, Callable[[Batch], bool]] = {
    "bottled": lambda b: bool(b.bottled) and not b.ended,
    "under way": lambda b: b.under_way,
    "fermenting": lambda b: (
        b.under_way and bool(b.pitched) and not b.finished and (b.gravity is None or b.gravity > 1.0)
    ),
    "gone": lambda b: bool(b.ended or (b.bottled and b.filled and not b.bottles)),
    "ended": lambda b: bool(b.ended),
}


def as_of(batch: Batch, day: str) -> Batch:
    """The batch as far as its bottling, end and fermentation went by a day; its gravity of that day is not known."""
    later = {name: None for name in ("bottled", "ended", "finished", "pitched") if (getattr(batch, name) or "") > day}
    return batch.changed(**later, gravity=None)


def _standing(case: Case) -> list[Fact]:
    """Whether the batch is in the state asked for, with the latest entry that tells."""
    state = case.of.get("state", "")
    if case.batch.number not in case.cellar.batches or not case.entries:
        return []
    holds = STATES[state](case.batch)
    shown = _telling(case)
    said = f": {_said(shown, case)}, {day_said(shown.date)}" if shown else ""
    answer = f"{'yes' if holds else 'no'}{said}"
    return [Fact(case.number, "", answer, "", answer, notes_of(shown or case.entries[-1]))]


def _telling(case: Case) -> Entry | None:
    """The entry that tells most plainly how the batch stands: its end, bottling, end of fermentation, last gravity."""
    for found in (case.kind("end"), case.kind("bottle")):
        if found:
            return found[-1]
    return finish_of(case) or next(reversed(ended_by(case)), None) or next(reversed(case.kind("pitch", "start")), None)


def _said(entry: Entry, case: Case) -> str:
    if entry.kind == "end":
        return f"thrown away{', ' + str(entry.get('reason')) if entry.get('reason') else ''}"
    if entry.kind == "bottle":
        return f"{case.batch.bottles} bottles left, bottled"
    if entry.kind == "reading":
        return f"gravity {reading_fact(entry).text}"
    if entry.kind == "fermentation":
        return "finished fermenting"
    return "pitched" if entry.kind == "pitch" else "started"


def _stuck_now(case: Case) -> list[Fact]:
    """A fermentation last noted as stuck, of a wine that is still under way."""
    stages = case.kind("fermentation")
    if not stages or stages[-1].get("stage") != "stuck" or not case.batch.under_way:
        return []
    return [fact_of(stages[-1], "stuck", "", "noted as stuck")]


MEASURES: tuple[Measure, ...] = (
    Measure(
        "stuck now",
        "a fermentation that is stuck",
        ("fermentation",),
        _stuck_now,
        (),
        done="stuck",
    ),
    Measure(
        "standing",
        "whether it is {state}",
        ("start", "pitch", "fermentation", "reading", "bottle", "end"),
        _standing,
        (),
        sort="words",
        narrows=("state",),
    ),
)
