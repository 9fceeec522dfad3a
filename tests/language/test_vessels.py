"""References to vessels: a noun of the trade with its label, size or looks, or a name that the journal knows."""

import datetime

import pytest

from journalbot.language.names import Names
from journalbot.language.text import understand
from journalbot.model import Settings

ON = datetime.date(2025, 10, 4)
NAMES = Names()
for name in ("carboy 2", "big blue bin", "Old Bess"):
    NAMES.learn("vessel", name)
NAMES.vessels.add("pig", "vessel", "15 gallon barrel")  # as taught

# What is written, and the vessels as they are written in it.
VESSELS: list[tuple[str, list[str]]] = [
    ("racked into carboy 2", ["carboy 2"]),
    ("into Carboy 2", ["Carboy 2"]),
    ("carboy #2", ["carboy #2"]),
    ("in carboy two", ["carboy two"]),
    ("to DJ 5", ["DJ 5"]),
    ("to dj5", ["dj5"]),
    ("demijohn A", ["demijohn A"]),
    ("the 6 gal carboy", ["6 gal carboy"]),
    ("into a 5 gallon bucket", ["5 gallon bucket"]),
    ("into the big blue bin", ["big blue bin"]),
    ("the steel tank is full", ["steel tank"]),
    ("from the bucket to the barrel", ["bucket", "barrel"]),
    ("from carboy 1 to carboy 2", ["carboy 1", "carboy 2"]),
    ("carboys 1 and 2", ["carboy 1", "carboy 2"]),
    ("DJ 1, DJ 2 and DJ 3", ["DJ 1", "DJ 2", "DJ 3"]),
    ("carboys 1, 2 and 3", ["carboy 1", "carboy 2", "carboy 3"]),
    ("racked to Old Bess", ["old bess"]),
    ("into the fermenter", ["fermenter"]),
    ("into an oak barrel", ["oak barrel"]),
    ("carboy 2 → carboy 3", ["carboy 2", "carboy 3"]),
    ("from carboy a to carboy b", ["carboy a", "carboy b"]),
    ("in the carboy a bit of foam", ["carboy"]),
    ("RACKED TO CARBOY A FROM BUCKET 1", ["carboy a", "bucket 1"]),
    ("into the pig", ["15 gallon barrel"]),
]


@pytest.mark.parametrize(("text", "names"), VESSELS)
def test_vessels(text: str, names: list[str]) -> None:
    found = understand(text, NAMES, ON, Settings()).of("vessel")
    assert [m.value.name.casefold() for m in found] == [n.casefold() for n in names]


# Words that are a vessel elsewhere, and figures that are no label.
@pytest.mark.parametrize(
    "text",
    ["2 oz oak cubes", "SG 1.010", "batch 2", "a bag of sugar", "pot of coffee", "heat belt", "barrel tasting day"],
)
def test_none(text: str) -> None:
    assert understand(text, NAMES, ON, Settings()).of("vessel") == []
