"""Misspellings: what is put right, what only its neighbours settle, what stays as typed, and what is no misspelling."""

import datetime
import random
from collections import Counter

import pytest

from journalbot.language.names import Names
from journalbot.language.static import meanings
from journalbot.language.text import Text, understand
from journalbot.model import Batch, Settings
from journalbot.vocabulary.fruits import FRUITS
from journalbot.vocabulary.materials import MATERIALS
from journalbot.vocabulary.units import UNITS
from journalbot.vocabulary.varieties import VARIETIES
from journalbot.vocabulary.vessels import VESSEL_NOUNS

from ..notes.test_misspelling import slip

ON = datetime.date(2025, 10, 4)
NAMES = Names()
NAMES.update_batches(
    [
        Batch(1, started="2025-09-20", colour="red", vintage=2025, fruit=("merlot grapes",)),
        Batch(2, started="2025-09-25", colour="white", vintage=2025, fruit=("apple juice",)),
        Batch(3, started="2025-08-12", colour="fruit", fruit=("blackberries",), name="Hedge Runner"),
    ]
)
for vessel in ("Petunia", "carboy 2"):
    NAMES.learn("vessel", vessel)
NAMES.learn("yeast", "Velvet Nine")
NAMES.learn("person", "Maren")


def read(text: str) -> Text:
    return understand(text, NAMES, ON, Settings())


MENDED: list[tuple[str, str]] = [
    # a letter left out, put in, wrong, or swapped with its neighbour, the first among them
    ("yeterday", "yesterday"), ("yesterrday", "yesterday"), ("yedterday", "yesterday"), ("yesetrday", "yesterday"),
    ("esterday", "yesterday"), ("gyesterday", "yesterday"), ("tomrrow", "tomorrow"), ("tody", "today"),
    ("wedensday", "wednesday"), ("saturdy", "saturday"), ("octobr", "october"), ("janaury", "january"),
    ("btach", "batch"), ("batc", "batch"), ("gallns", "gallons"), ("litrse", "litres"), ("teaspon", "teaspoon"),
    ("twicw", "twice"), ("dozn", "dozen"), ("twelv", "twelve"), ("carbyo", "carboy"), ("arboy", "carboy"),
    ("bucekt", "bucket"), ("barrell", "barrell"), ("demijonh", "demijohn"), ("temperatur", "temperature"),
    ("degress", "degrees"), ("aple", "apple"), ("chardonnya", "chardonnay"), ("empranillo", "tempranillo"),
    # a letter not doubled, or a vowel left out before the ending
    ("stired", "stirred"), ("rackd", "racked"), ("opend", "opened"), ("botled", "bottled"),
    # no vowels at all
    ("eldrflwr", "elderflower"),
    # names of this journal
    ("blackberies", "blackberries"), ("runer", "runner"), ("petuna", "petunia"), ("velvt", "velvet"),
    ("merlto's", "merlot's"),
]  # fmt: skip


@pytest.mark.parametrize(("typed", "meant"), MENDED)
def test_mended(typed: str, meant: str) -> None:
    assert read(typed).words == [meant]


# Of several words as near, the one that its neighbours fit.
IN_PLACE: list[tuple[str, str]] = [
    ("crawn cap", "crown cap"), ("20 grasm", "20 grams"), ("3 temes", "3 times"), ("28 bottlep", "28 bottles"),
    ("potassium metabisulfyte", "potassium metabisulfite"), ("carroy 2", "carboy 2"),
    ("one piont oh one oh", "one point oh one oh"),
]  # fmt: skip


@pytest.mark.parametrize(("typed", "meant"), IN_PLACE)
def test_mended_by_its_place(typed: str, meant: str) -> None:
    assert " ".join(read(typed).words) == meant


# Two things, a person of another name, or nothing known: as typed.
AS_TYPED = [
    "piont",
    "crawn",
    "toipped",
    "bleand",
    "melot",
    "wite",
    "tursday",
    "karen",
    "narvik",
    "zorbing",
    "quillfeather",
    "k-meta",
]


@pytest.mark.parametrize("typed", AS_TYPED)
def test_left_as_typed(typed: str) -> None:
    assert read(typed).words == [typed]


@pytest.mark.parametrize("text", ["racked the melot", "the wite is dry", "melot 1.010"])
def test_a_misspelling_that_may_be_a_batch_or_not_is_told(text: str) -> None:
    """So that the reader asks, instead of filing on the batch spoken of last."""
    assert [(m.value.how, m.value.fits) for m in read(text).of("stranger")] == [("unclear", ())]


@pytest.mark.parametrize(
    ("text", "vessel"),
    [
        ("into carbyo 2", "carboy 2"), ("to Petuna", "Petunia"), ("the big bucekt", "big bucket"),
        ("in Dmijohn B", "Demijohn B"),
    ],
)  # fmt: skip
def test_a_vessel_is_named_as_meant(text: str, vessel: str) -> None:
    assert [m.value.name for m in read(text).of("vessel")] == [vessel]


@pytest.mark.parametrize(
    ("text", "iso"), [("yeterday", "2025-10-03"), ("on thrusdy", "2025-10-02"), ("Spetember 9", "2025-09-09")]
)
def test_a_day_is_read_as_meant(text: str, iso: str) -> None:
    assert [m.value.iso for m in read(text).of("date")] == [iso]


@pytest.mark.parametrize(
    ("text", "amount"), [("5 galons", (5, "gal")), ("tweve grams", (12, "g")), ("half a teapsoon", (0.5, "tsp"))]
)
def test_an_amount_is_read_as_meant(text: str, amount: tuple[float, str]) -> None:
    assert [(m.value.value, m.value.unit) for m in read(text).of("amount")] == [amount]


TERMS = {
    word
    for table in (
        (s for spellings in (*VESSEL_NOUNS.values(), *MATERIALS.values()) for s in spellings),
        (s for unit in UNITS.values() for s in unit.spellings),
        VARIETIES, FRUITS, ("yesterday", "today", "tonight", "tomorrow", "twice", "dozen", "batch"),
        ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"),
        ("january", "february", "april", "august", "september", "october", "november", "december"),
    )
    for word in table
    if len(word) >= 5 and word.isalpha()
}  # fmt: skip


def test_slips_in_the_trades_words() -> None:
    """Nine in ten are put right; one in five hundred is taken for another word."""
    chance = random.Random(7)
    made = [(word, slip(word, chance)) for word in sorted(TERMS) for _ in range(8)]
    fate: Counter[str] = Counter()
    for word, wrong in made:
        if wrong == word:
            continue
        (meant,) = read(wrong).words
        right = meant == word or meant.removesuffix("s") == word.removesuffix("s") or meanings(meant) & meanings(word)
        fate["right" if right else "left" if meant == wrong else "wrong"] += 1
    assert fate["right"] > 0.93 * fate.total()
    assert fate["wrong"] < 0.002 * fate.total()
