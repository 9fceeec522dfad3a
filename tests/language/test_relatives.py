"""Days that are told of a thing in passing, and those that date the act or the reading."""

import datetime

import pytest

from journalbot.language.names import Names
from journalbot.language.text import understand
from journalbot.model import Batch, Settings

ON = datetime.date(2025, 10, 4)  # a Saturday
NAMES = Names()
NAMES.update_batches([Batch(3, started="2025-09-20", colour="red", fruit=("zinfandel grapes",))])

IN_PASSING = [
    "added the kmeta I weighed out yesterday",
    "the zin we started in September is at 1.010",
    "added 5 g of the nutrient bought on Monday",
    "pitched the packet that came on Tuesday",
    "pressed the grapes picked on Tuesday",
    "racked into the carboy I cleaned yesterday",
    "topped up with the zin bottled in March",
    "bottled the zin that I racked last week",
    "added the honey we bought last fall",
]


@pytest.mark.parametrize("text", IN_PASSING)
def test_in_passing(text: str) -> None:
    assert understand(text, NAMES, ON, Settings()).of("date") == []


ITS_OWN = [
    ("racked the zin yesterday", ["2025-10-03"]),
    ("the zin racked on Monday", ["2025-09-29"]),
    ("zin pressed on Monday", ["2025-09-29"]),
    ("racked the zin I pressed on Monday", ["2025-09-29"]),
    ("pressed the zin into the carboy yesterday", ["2025-10-03"]),
    ("I bought the corks on Friday", ["2025-10-03"]),
    ("the zin was racked on Monday and is at 1.010", ["2025-09-29"]),
    ("the corks came on Tuesday", ["2025-09-30"]),
    ("the yeast I bought went in on Tuesday", ["2025-09-30"]),
]


@pytest.mark.parametrize(("text", "days"), ITS_OWN)
def test_its_own(text: str, days: list[str]) -> None:
    assert [m.value.iso for m in understand(text, NAMES, ON, Settings()).of("date")] == days
