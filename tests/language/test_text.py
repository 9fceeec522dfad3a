"""A text as a whole: capitals that say nothing, people known in small letters, and what is no strain's code."""

import datetime

import pytest

from journalbot.language.names import Names
from journalbot.language.text import Text, understand
from journalbot.model import Settings

NAMES = Names()
for person in ("Maren", "Baz"):
    NAMES.learn("person", person)


def read(text: str, currency: str = "USD") -> Text:
    return understand(text, NAMES, datetime.date(2025, 10, 4), Settings(currency=currency))


# All in capitals, and as others write it.
SHOUTED = [
    ("PUNCHED DOWN X2, 70F", "Punched down X2, 70F"),
    ("GAVE UP ON BATCH 3. DUMPED IT.", "Gave up on batch 3. Dumped it."),
    ("PITCHED K-17, 5 G, INTO CARBOY B", "Pitched K-17, 5 G, into carboy B"),
    ("ADDED 1/4 TSP. WILL RACK", "Added 1/4 tsp. Will rack"),
    ("3 OZ. OF OAK", "3 oz. of oak"),
]


@pytest.mark.parametrize(("text", "calm"), SHOUTED)
def test_a_text_in_capitals_is_read_as_others_write(text: str, calm: str) -> None:
    assert read(text).text == calm
    assert read(text).mentions == read(calm).mentions


@pytest.mark.parametrize("text", ["Racked to CARBOY 2", "SG 1.010 today", "bottled it, FINALLY"])
def test_other_texts_stay_as_typed(text: str) -> None:
    assert read(text).text == text


@pytest.mark.parametrize(("text", "names"), [("gave maren 2 bottles", ["Maren"]), ("GAVE BAZ ONE", ["Baz"])])
def test_people_met_have_their_capitals(text: str, names: list[str]) -> None:
    assert [t.text for t in read(text).tokens[1:] if t.text.istitle()] == names


@pytest.mark.parametrize(
    ("text", "currency", "kinds"),
    [
        ("bought 1 kg at r7", "USD", []),
        ("bought 1 kg at r7", "ZAR", ["money"]),
        ("120 corks R264", "ZAR", ["money"]),
        ("pitched r7", "USD", ["code"]),
        ("pitched r7", "ZAR", ["code"]),
    ],
)
def test_a_price_is_no_strain(text: str, currency: str, kinds: list[str]) -> None:
    assert [m.kind for m in read(text, currency).of("code", "money")] == kinds
