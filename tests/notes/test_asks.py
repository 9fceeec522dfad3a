"""What must be asked rather than guessed, with the choices seen; and what must be filed without asking.

The cellars are those of `telling`: in `solo` batch 3, the zinfandel, is under way and batches 1 and 2, a riesling and
a merlot, are in bottles; in `pair` batch 4, the plum, is under way too; in `twins` last year's zinfandel is in bottles
and this year's under way.
"""


from typing import Any

import pytest

from .telling import Cellars, Json, check, check_ask, e, gap, read, sg, temp

Choices = tuple[str, ...] | None

ZIN, PLUM = "batch 3 (2025 zinfandel grapes)", "batch 4 (2025 plums)"
RIESLING, MERLOT = "batch 1 (2024 riesling juice)", "batch 2 (2024 merlot grapes)"

# The cellar, a note, what must be asked.
BATCH: list[Any] = [
    ("pair", "SG 1.010", (ZIN, PLUM)),
    ("pair", "SG 1.010 at 70F", (ZIN, PLUM)),
    ("pair", "racked into carboy 2", (ZIN, PLUM)),
    ("pair", "added 1/4 tsp kmeta", (ZIN, PLUM)),
    ("pair", "punched down 3x", (ZIN, PLUM)),
    ("pair", "pressed", (ZIN, PLUM)),
    gap("pair", "gone dry", (ZIN, PLUM), why="a stage of fermentation that names no wine is a remark"),
    ("pair", "racked batch 9 into carboy 2", None),
    ("solo", "batch 7 is at 1.010", None),
    ("solo", "opened a bottle last night", None),
    ("solo", "gave a bottle to Maren", None),
    ("solo", "tasted blind: cherry, 7/10", None),
    ("solo", "tasted: plum, cedar, 8/10", None),
    ("twins", "tasted the zin: plum, 8/10", None),
    # A wine that the journal does not know is not the one under way.
    ("solo", "elderflower SG 1.084", None),
    ("solo", "the chardonnay is at 1.040", None),
    ("pair", "racked the mead", None),
    ("pair", "1.010", (ZIN, PLUM)),
    ("bare", "SG 1.010", ()),
    ("bare", "racked into carboy 2", ()),
]

VALUE: list[Any] = [
    "SG 9.96",  # format
    "pH 34",  # format
    "700 F in the must",
    "SG 2.010",
    "pH 0.3",
    "Brix 99",
    "gravity 0.5",
    "TA 65 g/L",
    "temp 400",
    "13.1 pH",
    "SG 10.10",
    "abv 95%",
    "free SO2 9000 ppm",
]

QUANTITY: list[str] = ["the zin is at 24", "zin 24", "batch 3: 24", "zin at 3.4"]

DATE: list[Any] = [
    "racked the zin on Feb 30",
    "SG 1.010 on 31 April",
    "racked on November 31",
    "pressed it on 32 October",
]

# Said clearly enough: asking would be a nuisance.
CLEAR: list[tuple[str, str, list[Json]]] = [
    ("solo", "SG 1.010", [sg(1.01)]),
    ("solo", "racked into carboy 2", [e("rack", to="carboy 2")]),
    ("pair", "the zin is at 1.010", [sg(1.01)]),
    ("pair", "plum wine 1.010", [sg(1.01, 4)]),
    ("pair", "1.010 in bucket 2", [sg(1.01, 4)]),
    ("pair", "red one at 1.010", [sg(1.01)]),
    ("twins", "pressed the zin", [e("press")]),  # format: the one under way
    ("twins", "racked the zin into carboy 2", [e("rack", to="carboy 2")]),
    ("twins", "pitched K-17 into the zin", [e("pitch", yeast="K-17")]),
    ("twins", "tasted the 2024 zin: plum, 8/10", [e("taste", 1, words=["plum"], score=8, out_of=10)]),
    ("twins", "opened last year's zin", [e("drink", 1, count=1)]),
    ("twins", "opened a bottle", [e("drink", 1, count=1)]),
    ("solo", "34 F in the garage", [temp(34, batch=None)]),
    ("solo", "must is at 99F", [temp(99)]),
    ("solo", "pH 2.9", [read("ph", 2.9, "pH")]),
    ("bare", "bought 100 corks for $12", [e("purchase", None, item="corks", count=100, price=12)]),
    ("solo", "racked on Feb 28", [e("rack", on="2025-02-28")]),
]


@pytest.mark.parametrize(("cellar", "note", "choices"), BATCH)
def test_batch(cellar: str, note: str, choices: Choices, cellars: Cellars) -> None:
    check_ask(cellars.reading(cellar, note), "batch", choices)


@pytest.mark.parametrize("note", VALUE)
def test_value(note: str, cellars: Cellars) -> None:
    check_ask(cellars.reading("solo", note), "value")


@pytest.mark.parametrize("note", QUANTITY)
def test_quantity(note: str, cellars: Cellars) -> None:
    assert len(check_ask(cellars.reading("solo", note), "quantity").choices) > 1


@pytest.mark.parametrize("note", DATE)
def test_date(note: str, cellars: Cellars) -> None:
    check_ask(cellars.reading("solo", note), "date")


@pytest.mark.parametrize(("cellar", "note", "entries"), CLEAR)
def test_no_need_to_ask(cellar: str, note: str, entries: list[Json], cellars: Cellars) -> None:
    check(cellars.reading(cellar, note), entries)
