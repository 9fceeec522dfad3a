"""The questions of the labelled notebooks, answered from the notes as read, and from the labels in their place."""

from pathlib import Path

import pytest

from journalbot.journal.store import Journal

from .scoring import names, score_questions

# Notebook; of its 60 questions the least answered right and the most answered wrongly: from the notes, then from the
# labels.
FLOORS: list[tuple[str, tuple[int, int], tuple[int, int]]] = [
    ("allotment", (50, 4), (52, 3)),
    ("bodega", (46, 8), (46, 8)),
    ("crofter", (46, 5), (46, 5)),
    ("fjord", (39, 13), (44, 9)),
    ("hazel", (47, 4), (49, 4)),
    ("karoo", (48, 8), (51, 5)),
    ("nonno", (44, 10), (49, 7)),
    ("orchard", (58, 2), (58, 2)),
    ("prairie", (50, 6), (52, 4)),
    ("quinta", (45, 7), (48, 5)),
    ("skyline", (50, 4), (50, 4)),
    ("terrace", (58, 2), (58, 2)),
    ("vicar", (49, 6), (52, 3)),
]


def test_every_notebook_has_a_floor() -> None:
    assert [name for name, _, _ in FLOORS] == names()


@pytest.mark.parametrize("labels", [False, True], ids=["from the notes", "from the labels"])
@pytest.mark.parametrize(("name", "notes", "labelled"), FLOORS)
def test_questions(name: str, notes: tuple[int, int], labelled: tuple[int, int], labels: bool, tmp_path: Path) -> None:
    least, most_wrong = labelled if labels else notes
    with Journal.open(tmp_path / "journal.db") as journal:
        marks = score_questions(name, journal, labels=labels)
    print(f"{name}: {marks.right} of {marks.questions} right, {marks.wrong} answered wrongly")
    shown = "\n".join(marks.misses)
    assert marks.right >= least, shown
    assert marks.wrong <= most_wrong, shown
