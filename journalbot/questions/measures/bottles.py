"""Bottles: made and left."""

from journalbot.questions.measures.base import POURED, Case, Fact, Measure, fact_of, notes_of
from journalbot.questions.measures.said import said
from journalbot.questions.measures.strength import volumes
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
    used = [e for e in case.kind("top_up") if e.batch != case.number]  # bottles poured into another wine
    if not filled:
        return []
    made = sum(float(e.get("count")) for e in filled)
    parts = {kind: sum(float(e.get("count")) for e in gone if e.kind == kind) for kind in ("drink", "give")}
    poured = sum(float(e.get("amount")) for e in used)
    left = max(0.0, made - sum(parts.values()) - poured)
    working = f"{number_said(made)} filled" + "".join(
        f" − {number_said(parts[kind])} {word}"
        for kind, word in (("drink", "drunk"), ("give", "given away"))
        if parts[kind]
    )
    working += f" − {number_said(poured)} used for topping up" if poured else ""
    gone += used
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


def _remaining(case: Case) -> list[Fact]:
    """What is left of a wine: bottles once it is in them, else the volume last known; nothing of what was ended."""
    return _left(case) or ([] if case.batch.ended else volumes(case)[-1:])


MEASURES: tuple[Measure, ...] = (
    Measure(
        "remaining",
        "wine left",
        ("bottle", "drink", "give", POURED, "reading", "start", "rack"),
        _remaining,
        (("how much", "left"), ("volume", "left"), ("how much", "left", "volume")),
        ("is", "in vessel", "made", "how many"),
        sort="reading",
        usual="last",
        narrows=("unit",),
    ),
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
        ("bottle", "drink", "give", POURED),
        _left,
        (
            ("bottles", "left"),
            ("bottles", "sum"),
            ("bottles", "place"),
            ("how many", "bottles", "place"),
            ("how many", "bottles", "left"),
            ("how many", "left"),
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
