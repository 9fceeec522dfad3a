"""Bottles: made and left."""

from journalbot.questions.measures.base import Case, Fact, Measure, fact_of, notes_of
from journalbot.questions.measures.said import said
from journalbot.questions.says import number_said


def _made(case: Case) -> list[Fact]:
    return [
        fact_of(e, float(e.get("count")), "bottles", said(e))
        for e in case.kind("bottle")
        if isinstance(e.get("count"), int | float)
    ]


def _left(case: Case) -> list[Fact]:
    filled = [e for e in case.kind("bottle") if e.get("count")]
    gone = [e for e in case.kind("drink", "give") if e.get("count")]
    if not filled:
        return []
    made = sum(float(e.get("count")) for e in filled)
    parts = {kind: sum(float(e.get("count")) for e in gone if e.kind == kind) for kind in ("drink", "give")}
    left = max(0.0, made - sum(parts.values()))
    working = f"{number_said(made)} filled" + "".join(
        f" − {number_said(parts[kind])} {word}"
        for kind, word in (("drink", "drunk"), ("give", "given away"))
        if parts[kind]
    )
    return [
        Fact(
            case.number,
            max(e.date for e in (*filled, *gone)),
            left,
            "bottles",
            f"{number_said(left)} bottle{'' if left == 1 else 's'}",
            notes_of(*filled, *gone),
            working,
            order=filled[-1].place,
        )
    ]


MEASURES: tuple[Measure, ...] = (
    Measure(
        "bottles made",
        "bottles filled",
        ("bottle",),
        _made,
        (
            ("how many", "bottles", "made"),
            ("how many", "made"),
            ("how many", "bottles", "bottle"),
            ("how many", "bottle"),
            ("bottles", "made"),
            ("how many", "bottles"),
            ("sum", "bottles", "made"),
            ("bottles", "period"),
        ),
        ("begin", "bottle", "addition"),
        sort="figure",
        usual="sum",
        by_entry=True,
    ),
    Measure(
        "bottles left",
        "bottles left",
        ("bottle", "drink", "give"),
        _left,
        (
            ("bottles", "left"),
            ("bottles", "sum"),
            ("bottles", "place"),
            ("how many", "bottles", "place"),
            ("how many", "bottles", "left"),
            ("how many", "left"),
            ("how much", "left"),
            ("how much", "left", "bottles"),
            ("what", "left"),
            ("did", "left"),
            ("left",),
            ("did", "bottles", "left"),
        ),
        ("is", "in vessel", "made", "addition", "drunk", "begin", "place", "sum"),
        sort="figure",
        usual="sum",
    ),
)
