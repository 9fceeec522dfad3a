"""What is to be done: plans, and which of them are overdue."""

from journalbot.model import Entry
from journalbot.questions.measures.base import Case, Fact, Measure
from journalbot.questions.says import day_said
from journalbot.vocabulary.question_signs import SIGNS

_ACTS = (
    "rack",
    "press",
    "bottle",
    "filter",
    "stir",
    "top_up",
    "taste",
    "blend",
    "degas",
    "chill",
    "crush",
    "airlock",
    "pitch",
    "oak",
    "addition",
    "malolactic",
    "move",
    "buy",
    "given",
)


def _acts_in(text: str) -> set[str]:
    low = f" {text.casefold()} "
    return {a for a in _ACTS for phrase in SIGNS.get(a, ()) if f" {phrase} " in low and len(phrase) > 2}


def _done(case: Case, plan: Entry) -> bool:
    what = str(plan.get("what") or "").casefold()
    acts = _acts_in(what) - {"addition"} | ({"pitch"} if "yeast" in what else set())
    if plan.batch is None:
        return True  # of no one batch: nothing in the journal can tell
    if not acts:
        return True  # something that entries cannot show
    return bool(case.source.entries(batch=plan.batch, kinds=sorted(acts), since=plan.date))


def _plans(case: Case) -> list[Fact]:
    """Plans by the day they are due. Of past ones, those that were never done."""
    wanted, out = case.of.get("act", ""), []
    for e in case.kind("plan"):
        due, what = str(e.get("due") or ""), str(e.get("what") or "")
        if wanted and wanted not in _acts_in(what):
            continue
        past = bool(due) and due < case.today[: len(due)]
        done = (past or not due) and _done(case, e)
        if done and case.of.get("all") != "yes":
            continue
        known = e.batch is not None and bool(_acts_in(what) - {"addition"})
        late = " (done since)" if done and known else " (overdue)" if past and not done else ""
        if case.of.get("all") == "yes":  # what was planned at some time: from the note of it to the day it was due
            said = f"{what}{late}{f', due {day_said(due)}' if due else ''}, noted"
            out.append(Fact(e.batch, e.date, what, "", said, (e.note,), until=due, order=e.place))
        else:
            out.append(Fact(e.batch, due, what, "due", f"{what}{late}", (e.note,), order=e.place))
    return sorted(out, key=lambda f: (f.date or "9999", f.order))


def _unread(case: Case) -> list[Fact]:
    """Notes that wait for an answer before they can be filed."""
    asks = case.source.open_asks()
    notes = [(a, case.source.note(a.note)) for a in asks]
    return [Fact(None, n.on, a.what, "", f"“{n.text}” (which {a.what}?)", (n.number,)) for a, n in notes if n]


MEASURES: tuple[Measure, ...] = (
    Measure(
        "plans",
        "what is planned[: {act}]",
        ("plan",),
        _plans,
        (("plan",), ("when", "plan"), ("plan", "did"), ("when", "due"), ("plan", "due")),
        ("doing", "is", "addition", "made", "to", "what", "left", "last", "due", "advise", "who"),
        sort="words",
        narrows=("act",),
        scope="any",
    ),
    Measure(
        "unread",
        "the notes not understood yet",
        (),
        _unread,
        (("unread",), ("unread", "mention"), ("unread", "note")),
        ("mention", "note", "is", "did"),
        sort="words",
        scope="none",
    ),
)
