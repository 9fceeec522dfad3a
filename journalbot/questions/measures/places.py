"""Where a wine is or stood: its vessels, the places it was moved to, and how long it stayed there."""

from journalbot.questions.measures.base import Case, Fact, Measure, fact_of
from journalbot.questions.measures.durations import stretch
from journalbot.questions.measures.vessels import stays

GONE = "gone"  # where a wine is that was thrown away


def _where(case: Case) -> list[Fact]:
    """Where a batch is: its vessels, and the place it was moved to last."""
    batch = case.batch
    out = [
        Fact(
            batch.number,
            date,
            name,
            "",
            f"in {name}",
            (next((h.note for h in batch.held.values() if h.name == name), 0) or batch.last_note,),
        )
        for name, date in batch.vessels.items()
    ]
    moved = case.kind("move")
    over = batch.bottled if batch.bottled and not batch.vessels else ""
    if moved and moved[-1].get("to") and moved[-1].date >= over:
        out.append(
            fact_of(
                moved[-1], str(moved[-1].get("to")), "", f"moved to the {str(moved[-1].get('to')).removeprefix('the ')}"
            )
        )
    if not batch.vessels and (ended := [e for e in case.entries if e.kind in ("bottle", "end")]):
        last = ended[-1]
        out.insert(
            0,
            fact_of(
                last,
                "in bottles" if last.kind == "bottle" else GONE,
                "",
                "in bottles"
                if last.kind == "bottle"
                else f"gone{': ' + str(last.get('reason')) if last.get('reason') else ''}",
            ),
        )
    return out


def _places(case: Case) -> list[Fact]:
    """Where it stood at some time: each move and each vessel it went to."""
    out = [
        fact_of(e, str(e.get("to")), "", f"moved to the {str(e.get('to')).removeprefix('the ')}")
        for e in case.kind("move")
        if e.get("to")
    ]
    out += [
        fact_of(s.since, s.name, "", f"in {s.name}", until=s.until.date if s.until else case.today)
        for s in stays(case)
    ]
    return sorted(out, key=lambda f: (f.date, f.order))


def _time_in_place(case: Case) -> list[Fact]:
    """Days from a move to the place asked for to the next move, or else to the bottling or the end, or today."""
    wanted, out = case.of.get("place", "").casefold(), []
    steps = [e for e in case.entries if e.kind in ("move", "bottle", "end")]
    for k, e in enumerate(steps):
        if e.kind == "move" and wanted in str(e.get("to") or "").casefold():
            after = next(iter(steps[k + 1 :]), None)
            how = {"move": "moving on", "bottle": "bottling", "end": "its end"}[after.kind] if after else ""
            out += stretch(case, e, after, f"moving to the {str(e.get('to')).removeprefix('the ')}", how)
    return out


def _provenance(case: Case) -> list[Fact]:
    """Where the makings came from, as far as the notes of the start and of what was bought for it tell: these notes."""
    entries = [*case.kind("start")[:1], *case.kind("purchase")]
    notes = {e.note: e for e in entries if case.source.note(e.note)}
    return [
        fact_of(e, "", "", f"“{note.text}”") for n, e in sorted(notes.items()) if (note := case.source.note(n))
    ]


MEASURES: tuple[Measure, ...] = (
    Measure(
        "provenance",
        "where it came from",
        ("start", "purchase"),
        _provenance,
        (("provenance",), ("provenance", "grapes"), ("provenance", "juice"), ("where", "made of")),
        ("grapes", "juice", "buy", "made of"),
        sort="words",
    ),
    Measure(
        "where",
        "where it is",
        ("move", "bottle", "end"),
        _where,
        (("where",), ("where", "is")),
        ("is", "in vessel", "bottles", "last"),
        sort="words",
    ),
    Measure(
        "places",
        "where it stood",
        ("move", "start", "rack", "bottle", "end", "press"),
        _places,
        (("where", "is", "at"), ("where", "at"), ("where", "move")),
        ("in vessel", "is", "addition"),
        sort="words",
    ),
    Measure(
        "time in place",
        "time in the {place}",
        ("move", "bottle", "end"),
        _time_in_place,
        (("how long", "place"), ("how long", "place", "is"), ("how long", "move", "place")),
        ("is", "in vessel", "oak out", "chill", "age"),
        sort="days",
        narrows=("place",),
    ),
)
