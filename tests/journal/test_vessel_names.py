"""Which names are one vessel, and which names hold several. How people name vessels is common practice, no source."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journalbot.journal.vessel_names import split_vessels, vessel_key

ONE_VESSEL = [
    ["demijohn 5", "DJ 5", "dj5", "the demijohn five", "Demijohn no. 5", "dj #5", "demijohn 05"],
    ["carboy 2", "Carboy #2", "no. 2 carboy", "carboy two", "the carboy 2", "carboy no 2"],
    ["big blue bin", "the big blue bin", "blue big bin"],
    ["6 gal carboy", "6-gallon carboy", "six gallon carboy", "6gal carboy"],
    ["gallon jug", "one-gallon jug", "1 gal jug", "the gallon jug"],
    ["demijohn A", "DJ a", "demijohn a"],
    ["5 l demijohn", "5L DJ", "five litre demijohn", "5-liter demijohn"],
    ["barrel", "the barrel", "our barrel"],
]


@pytest.mark.parametrize("names", ONE_VESSEL, ids=lambda names: names[0])
def test_spellings_of_one_vessel_share_a_key(names: list[str]) -> None:
    assert {vessel_key(name) for name in names} == {vessel_key(names[0])}


def test_different_vessels_have_different_keys() -> None:
    firsts = [names[0] for names in ONE_VESSEL] + [
        "carboy 6",
        "carboy 12",
        "6 carboys",
        "2 carboys",
        "demijohn B",
        "jug",
    ]
    assert len({vessel_key(name) for name in firsts}) == len(firsts)


@pytest.mark.parametrize(
    ("name", "vessels"),
    [
        ("carboy 1", ["carboy 1"]),
        ("carboy 1 and carboy 2", ["carboy 1", "carboy 2"]),
        ("carboys 1 and 2", ["carboy 1", "carboy 2"]),
        ("DJ 4, 5 & 6", ["DJ 4", "demijohn 5", "demijohn 6"]),
        ("demijohns A and B", ["demijohn A", "demijohn B"]),
        ("the steel tank + a jug", ["the steel tank", "a jug"]),
        ("black and white bucket", ["black and white bucket"]),  # a colour has no noun of its own
        ("bucket", ["bucket"]),
        ("", []),
    ],
)
def test_a_name_may_hold_several_vessels(name: str, vessels: list[str]) -> None:
    assert split_vessels(name) == vessels


@given(st.text())
def test_any_text_has_a_key_and_splits(text: str) -> None:
    assert isinstance(vessel_key(text), str)
    assert all(isinstance(vessel_key(part), str) for part in split_vessels(text))
