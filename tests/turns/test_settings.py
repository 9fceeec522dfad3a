"""Settings in plain words: what each line sets, and lines that look like it and set nothing."""

import pytest

from journalbot.turns.settings import read_setting

SETS = [
    ("use metric", {"units": "metric"}),
    ("metric please", {"units": "metric"}),
    ("Switch to metric units.", {"units": "metric"}),
    ("show everything in litres and celsius", {"units": "metric"}),
    ("use celsius", {"units": "metric"}),
    ("use US units", {"units": "us"}),
    ("I'd like gallons and fahrenheit", {"units": "us"}),
    ("dates are day first", {"day_first": True}),
    ("day first", {"day_first": True}),
    ("I write the day before the month", {"day_first": True}),
    ("european dates please", {"day_first": True}),
    ("month first", {"day_first": False}),
    ("use american dates", {"day_first": False}),
    ("currency euro", {"currency": "EUR"}),
    ("my currency is GBP", {"currency": "GBP"}),
    ("prices are in Swiss francs", {"currency": "CHF"}),
    ("the currency is €", {"currency": "EUR"}),
    ("my hydrometer is true at 20 C", {"hydrometer": "20C"}),
    ("hydrometer calibrated at 60F", {"hydrometer": "60F"}),
    ("My hydrometer is right at 15.6 °C.", {"hydrometer": "60F"}),
    ("hydrometer set to 68 degrees fahrenheit", {"hydrometer": "20C"}),
    ("a shop bottle costs me about $14", {"bottle_price": 14.0}),
    ("a bought bottle would cost 9.50 euros", {"bottle_price": 9.5}),
]


@pytest.mark.parametrize(("line", "sets"), SETS, ids=[line for line, _ in SETS])
def test_what_a_line_sets(line: str, sets: dict[str, object]) -> None:
    assert read_setting(line) == sets


@pytest.mark.parametrize("line", ["my hydrometer is true at 25 C", "currency doubloons"])
def test_what_cannot_be_set_is_said(line: str) -> None:
    assert isinstance(read_setting(line), str)


NOTES = [
    "racked batch 3, 20 litres",
    "68 fahrenheit in the closet today",
    "checked the hydrometer in water at 20 C, it reads 1.002",
    "bought a hydrometer for 20 euro",
    "used the metric scales, 5 kg of plums",
    "first day of crush, month of mud",
    "a bottle of batch 2 went to Maudrey",
    "20 litres",
    "celsius 20 in the cellar",
]


@pytest.mark.parametrize("line", NOTES)
def test_what_is_a_note(line: str) -> None:
    assert read_setting(line) is None
