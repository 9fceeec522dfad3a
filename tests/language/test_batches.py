"""References to batches: number, name, fruit, colour, vintage, age, and any mix of these, in a small cellar."""

import datetime

import pytest

from journalbot.language.names import Names
from journalbot.language.text import understand
from journalbot.model import Batch, Settings

ON = datetime.date(2025, 10, 4)
BATCHES = (
    Batch(1, started="2023-09-16", colour="red", vintage=2023, fruit=("zinfandel grapes",), bottled="2024-06-01"),
    Batch(2, started="2024-09-20", colour="red", vintage=2024, fruit=("zinfandel grapes",), bottled="2025-06-01"),
    Batch(3, started="2025-09-20", colour="red", vintage=2025, fruit=("zinfandel grapes",)),
    Batch(4, started="2025-09-25", colour="white", vintage=2025, fruit=("chardonnay juice",)),
    Batch(5, started="2025-08-12", colour="fruit", fruit=("blackberries",), name="Hedge Runner"),
    Batch(6, started="2024-05-02", colour="mead", fruit=("clover honey",), name="mead", bottled="2025-02-01"),
)
NAMES = Names()
NAMES.update_batches(BATCHES)

# What is written, and the batches that it fits.
FITS: list[tuple[str, tuple[int, ...]]] = [
    ("batch 3 is at 1.010", (3,)),
    ("Batch #3", (3,)),
    ("b3 1.010", (3,)),
    ("#3 1.010", (3,)),
    ("BATCH 3", (3,)),
    ("batch three is at 1.010", (3,)),
    ("the chardonnay", (4,)),
    ("the chard", (4,)),
    ("the chardonay", (4,)),
    ("the hardonnay", (4,)),
    ("bacth 3", (3,)),
    ("bach 3", (3,)),
    ("bath 3 is at 1.010", (3,)),
    ("hedge runer", (5,)),
    ("the chardonnay juice", (4,)),
    ("my blackberry wine", (5,)),
    ("the blackberries", (5,)),
    ("hedge runner", (5,)),
    ("Hedge Runner", (5,)),
    ("the mead", (6,)),
    ("the white", (4,)),
    ("the white wine", (4,)),
    ("the zin", (1, 2, 3)),
    ("the 2024 zin", (2,)),
    ("the '24 zin", (2,)),
    ("zin 2023", (1,)),
    ("last year's zin", (2,)),
    ("this year's zin", (3,)),
    ("last year's red", (2,)),
    ("the new zin", (3,)),
]


@pytest.mark.parametrize(("text", "fits"), FITS)
def test_fits(text: str, fits: tuple[int, ...]) -> None:
    found = understand(text, NAMES, ON, Settings()).of("batch")
    assert [tuple(sorted(m.value.fits)) for m in found] == [fits]


# A number that no batch has yet is kept as one that may be starting.
@pytest.mark.parametrize(
    ("text", "new"), [("batch 7", 7), ("batch 12", 12), ("b7 1.090", 7), ("#7", 7), ("No 7: elderflower", 7)]
)
def test_a_new_number(text: str, new: int) -> None:
    (found,) = understand(text, NAMES, ON, Settings()).of("batch")
    assert (found.value.new, found.value.fits) == (new, ())


def test_the_next_number_follows_the_highest() -> None:
    """“No 8: …” after a batch 7 that was the first: a number is free only behind all others."""
    names = Names()
    names.update_batches([Batch(7, started="2025-09-20", fruit=("syrah juice",))])
    (found,) = understand("No 8: elderflower", names, ON, Settings()).of("batch")
    assert found.value.new == 8
    assert understand("No 2: elderflower", names, ON, Settings()).of("batch") == []


@pytest.mark.parametrize(
    ("text", "fits"),
    [
        ("batch 3 1.010 and batch 4 1.022", [(3,), (4,)]),
        ("b3 1.010, b4 1.022", [(3,), (4,)]),
        ("topped the chardonnay with the mead", [(4,), (6,)]),
    ],
)
def test_several(text: str, fits: list[tuple[int, ...]]) -> None:
    assert [m.value.fits for m in understand(text, NAMES, ON, Settings()).of("batch")] == fits


# No batch: a figure, a unit, a vessel, a day, a yeast.
@pytest.mark.parametrize(
    "text",
    [
        "3 g", "in an ice bath 3 days", "bath 3 cups", "carboy 3", "SG 1.010", "3 bottles", "Oct 3", "K-17", "3x",
        "70F", "at 3 pm",
    ],
)  # fmt: skip
def test_none(text: str) -> None:
    assert understand(text, NAMES, ON, Settings()).of("batch") == []
