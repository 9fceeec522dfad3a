"""Corrections in plain words: lines typed one after another, and what stands afterwards.

Each talk is a cellar of `telling`, lines typed on Saturday 4 October 2025, and the entries that they leave behind.
"""

from datetime import date
from pathlib import Path
from typing import Any

import pytest

from journalbot.journal.store import Journal
from journalbot.notes.reader import Reading

from .telling import CELLARS, DAY, FRIDAY, Json, add, check, e, furnish, read, sg, temp

Talk = Any  # a cellar, the lines and what stands, or a gap of the same

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

# What is put right is found from what the line names: an old figure, a material, a person, a day, or the nearest note
# that holds such a thing. What explains the mistake says nothing.
FOUND: list[Talk] = [
    ("solo", ["free SO2 of the zin 22 ppm", "make that 28 ppm"], [read("free_so2", 28, "mg/L")]),
    ("solo", ["free SO2 of the zin 22 ppm", "misread that, make it 21 ppm"], [read("free_so2", 21, "mg/L")]),
    ("solo", ["SG 1.010 at 70F", "misread the hydrometer, make that 1.014"], [sg(1.014), temp(70)]),
    ("solo", ["SG 1.010", "I wrote 1.010 for the zin but it was dark. make that 1.014"], [sg(1.014)]),
    (
        "solo",
        ["SG 1.020 yesterday", "Kim wrote 1.020 for the zin yesterday. I looked again, make that 1.024. Look twice"],
        [sg(1.024, on=FRIDAY)],
    ),
    (
        "solo",
        ["added 1/4 tsp kmeta and 1/2 tsp sorbate", "make that 1 tsp sorbate"],
        [add("potassium metabisulfite", 0.25, "tsp"), add("potassium sorbate", 1, "tsp")],
    ),
    ("solo", ["added 1 tsp DAP", "oops, that dap was 1/2 tsp"], [add("diammonium phosphate", 0.5, "tsp")]),
    ("solo", ["pitched 5 g K-17", "the K-17 was 7 g not 5"], [e("pitch", yeast="K-17", amount=7, unit="g")]),
    (
        "solo",
        ["pitched 5 g K-17", "correction: it was 7 g of K-17, not 5"],
        [e("pitch", yeast="K-17", amount=7, unit="g")],
    ),
    ("solo", ["pitched 5 g K-17", "the yeast was ZT-12 actually"], [e("pitch", yeast="ZT-12", amount=5, unit="g")]),
    (
        "solo",
        ["bottled 15 bottles of the zin", "I counted again and it was 14 bottles of zin, not 15"],
        [e("bottle", count=14)],
    ),
    ("solo", ["bottled 15 bottles of the zin", "make that 16 for the zin; one was a sample"], [e("bottle", count=16)]),
    (
        "solo",
        ["gave 2 bottles of batch 2 to Anna", "no, the two merlot went to my brother, not Anna"],
        [e("give", 2, count=2, to="my brother")],
    ),
    (
        "solo",
        ["gave 2 bottles of batch 2 to Sunil", "No, Sunil's two were batch 1; misread the label"],
        [e("give", 1, count=2, to="Sunil")],
    ),
    (
        "pair",
        ["1/4 tsp kmeta into batch 3", "no, the sulphite went into batch 4, not 3"],
        [add("potassium metabisulfite", 0.25, "tsp", batch=4)],
    ),
    ("solo", ["SG 1.010", "punched down twice", "make that 1.014"], [sg(1.014), e("punch_down", times=2)]),
    (
        "solo",
        ["put 2 oz of oak chips in the zin", "I wrote 2 oz. It was 1 oz"],
        [e("oak", form="chips", amount=1, unit="oz")],
    ),
    (
        "solo",
        ["SG 1.010", "the zin was 1.012, not 1.010. Added 1 tsp DAP"],
        [sg(1.012), add("diammonium phosphate", 1, "tsp")],
    ),
    (
        "solo",
        ["pitched 5 g K-17", "correction, that was ZT-12, not K-17. They look alike under a red lamp"],
        [e("pitch", yeast="ZT-12", amount=5, unit="g")],
    ),
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
    ("solo", ["SG 1.010", "Delete that last note, I never looked at it."], []),
    ("solo", ["SG 1.010", "delete that last note I only dreamt it"], []),
    ("solo", ["SG 1.010", "Scratch that. Wrong wine, wrong cellar."], []),
    ("solo", ["SG 1.010", "scratch that, make it 1.012"], [sg(1.012)]),
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
    ("solo", ["SG 1.010", "I meant to check the airlocks but forgot"], [sg(1.01)]),
    ("solo", ["SG 1.010", "free SO2 only 18 ppm, should be 30"], [sg(1.01), read("free_so2", 18, "mg/L")]),
    ("solo", ["SG 1.010", "make the labels one day, I counted 3"], [sg(1.01)]),
    # It fits nothing that was filed: nothing is changed.
    ("solo", ["SG 1.010", "make that 28 ppm"], [sg(1.01)]),
    ("solo", ["SG 1.010", "make that 1/2 tsp of sorbate"], [sg(1.01)]),
    ("solo", ["SG 1.010", "oops, 1.014 not 1.012"], [sg(1.01)]),
    # Of another day than anything filed, and whole by itself: a note.
    ("solo", ["SG 1.010", "I mean the zin was at 1.020 yesterday"], [sg(1.01), sg(1.02, on=FRIDAY)]),
    ("solo", ["SG 1.010", "not sure about the smell"], [sg(1.01)]),
]

TALKS = [*VALUES, *FOUND, *DAYS, *BATCHES, *UNDONE, *SEVERAL, *NONE]


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
