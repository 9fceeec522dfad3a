"""Corrections in plain words: lines typed one after another, and what stands afterwards.

Each talk is a cellar of `telling`, lines typed on Saturday 4 October 2025, and the entries that they leave behind.
"""

from datetime import date
from pathlib import Path
from typing import Any

import pytest

from journalbot.journal.store import Journal
from journalbot.notes.reader import Reading

from .telling import CELLARS, DAY, FRIDAY, Json, add, check, e, furnish, sg, temp

Talk = Any  # a cellar, the lines and what stands, or a gap of the same

NOT_THE_OLD = "“X was this, not that” with what it is about named: filed beside the old figure, which stands"

VALUES: list[Talk] = [
    ("solo", ["SG 1.010", "make that 1.012"], [sg(1.012)]),
    ("solo", ["SG 1.010", "no, 1.012"], [sg(1.012)]),
    ("solo", ["SG 1.010", "sorry, that was 1.012"], [sg(1.012)]),
    ("solo", ["SG 1.010", "should be 1.012"], [sg(1.012)]),
    ("solo", ["SG 1.010", "correction: 1.012"], [sg(1.012)]),
    ("solo", ["SG 1.010", "oops, 1.012 not 1.010"], [sg(1.012)]),
    ("solo", ["SG 1.010 at 70F", "the temp was 72F, not 70F"], [sg(1.01), temp(72)]),
    ("solo", ["SG 1.010 at 70F", "no, 72F"], [sg(1.01), temp(72)]),
    ("solo", ["SG 1.010 yesterday", "the 1.010 yesterday should be 1.001"], [sg(1.001, on=FRIDAY)]),
    ("solo", ["pitched 5 g K-17", "make the pitch 7 g"], [e("pitch", yeast="K-17", amount=7, unit="g")]),
    ("solo", ["pitched 5 g K-17", "it was ZT-12, not K-17"], [e("pitch", yeast="ZT-12", amount=5, unit="g")]),
    ("solo", ["added 1/4 tsp kmeta", "make that 1/2 tsp"], [add("potassium metabisulfite", 0.5, "tsp")]),
    ("solo", ["punched down 2x", "no, 3x"], [e("punch_down", times=3)]),
    ("solo", ["bottled 28 bottles", "sorry, 29 bottles"], [e("bottle", count=29)]),
    ("solo", ["racked the zin to carboy 1", "no, carboy 2"], [e("rack", to="carboy 2")]),
    ("solo", ["racked the zin to carboy 1", "that was carboy 2"], [e("rack", to="carboy 2")]),
    (
        "solo",
        ["100 corks for $12", "the corks were $14, not $12"],
        [e("purchase", None, item="corks", count=100, price=14)],
    ),
    ("solo", ["opened a bottle of batch 2", "make it 2 bottles"], [e("drink", 2, count=2)]),
    ("solo", ["tasted batch 2: plum, 7/10", "make that 8/10"], [e("taste", 2, words=["plum"], score=8, out_of=10)]),
]

DAYS: list[Talk] = [
    ("solo", ["racked the zin to carboy 2", "that was yesterday"], [e("rack", on=FRIDAY, to="carboy 2")]),
    ("solo", ["SG 1.010", "I meant yesterday"], [sg(1.01, on=FRIDAY)]),
    ("solo", ["SG 1.010", "no, that was on Thursday"], [sg(1.01, on="2025-10-02")]),
    ("solo", ["SG 1.010 and 70F", "that was Tuesday"], [sg(1.01, on="2025-09-30"), temp(70, on="2025-09-30")]),
    ("solo", ["pressed the zin yesterday", "no, today"], [e("press")]),
]

BATCHES: list[Talk] = [
    ("pair", ["batch 3 at 1.010", "it was batch 4 not 3"], [sg(1.01, 4)]),
    ("pair", ["batch 3 at 1.010", "no, that was batch 4"], [sg(1.01, 4)]),
    ("pair", ["batch 3 at 1.010", "I meant the plum"], [sg(1.01, 4)]),
    ("pair", ["zin 1.010, 70F", "sorry, that was the plum"], [sg(1.01, 4), temp(70, batch=4)]),
    ("solo", ["drank a bottle of the riesling", "no, the merlot"], [e("drink", 2, count=1)]),
]

UNDONE: list[Talk] = [
    ("solo", ["SG 1.010", "undo"], []),
    ("solo", ["SG 1.010", "scratch that"], []),
    ("solo", ["SG 1.010", "delete that last note"], []),
    ("solo", ["SG 1.010", "forget that"], []),
    ("solo", ["SG 1.010", "70F", "undo"], [sg(1.01)]),
    ("solo", ["SG 1.010", "undo", "put it back"], [sg(1.01)]),
    ("solo", ["SG 1.010", "make that 1.012", "undo"], [sg(1.01)]),
    ("solo", ["started batch 9, 5 gal of syrah", "undo"], []),
    ("solo", ["SG 1.010", "undo", "undo"], []),
]

SEVERAL: list[Talk] = [
    ("solo", ["SG 1.010", "make that 1.012", "no, 1.013"], [sg(1.013)]),
    ("solo", ["SG 1.010", "make that 1.012", "that was yesterday"], [sg(1.012, on=FRIDAY)]),
    ("pair", ["zin 1.010", "plum 1.030", "the zin was 1.012, not 1.010"], [sg(1.012), sg(1.03, 4)]),
    ("pair", ["zin 1.010", "plum 1.030", "the 1.010 should be 1.001"], [sg(1.001), sg(1.03, 4)]),
]

# Lines that only look like corrections.
NONE: list[Talk] = [
    ("solo", ["SG 1.010", "no bubbles today"], [sg(1.01)]),
    ("solo", ["SG 1.010", "no change, 1.010 again"], [sg(1.01), sg(1.01)]),
    ("solo", ["SG 1.010", "should be ready in a week"], [sg(1.01)]),
    ("solo", ["SG 1.010", "sorry state the cellar is in"], [sg(1.01)]),
    ("solo", ["SG 1.010", "punched down 2x"], [sg(1.01), e("punch_down", times=2)]),
    ("solo", ["SG 1.010", "undo what, I wonder"], [sg(1.01)]),
    ("solo", ["SG 1.010", "not sure about the smell"], [sg(1.01)]),
]

TALKS = [*VALUES, *DAYS, *BATCHES, *UNDONE, *SEVERAL, *NONE]


def after(cellar: str, lines: list[str], path: Path) -> Reading:
    """What stands after a talk, besides what was in the cellar before; every line but `undo` has been kept as typed."""
    with Journal.open(path) as journal:
        assistant = furnish(journal, CELLARS[cellar])
        before = journal.count_notes()
        for line in lines:
            assistant.turn(line, date.fromisoformat(DAY))
        typed = [note.text for note in journal.notes(before + 1)]
        assert typed[0] == lines[0]
        assert set(typed) <= set(lines)
        assert journal.check() == []
        held = {json_key(entry) for entry in CELLARS[cellar]}
        return Reading(tuple(x for x in journal.entries() if json_key(x.to_json()) not in held))


def json_key(entry: Json) -> str:
    return repr(sorted(entry.items(), key=str))


@pytest.mark.parametrize(("cellar", "lines", "entries"), TALKS)
def test_talks(cellar: str, lines: list[str], entries: list[Json], tmp_path: Path) -> None:
    check(after(cellar, lines, tmp_path / "journal.db"), entries)
