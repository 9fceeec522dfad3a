"""Which cautions a note calls for, on invented notes. What each rests on stands in vocabulary/cautions.py."""

from datetime import date, timedelta
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from molmass import Formula

from journalbot.journal.fold import fold
from journalbot.model import Entry
from journalbot.vocabulary.cautions import CAUTIONS
from journalbot.vocabulary.hazards import HAZARDS
from journalbot.winemaking.cautions import called_for, sentence, silenceable, to_show
from journalbot.winemaking.record import Record, record_of

Row = tuple[str, str, dict[str, Any]]
DAY = "2025-09-10"


def entries(*rows: Row) -> list[Entry]:
    return [Entry(kind, 1, day, fields, note=n, place=(n, 0)) for n, (kind, day, fields) in enumerate(rows, 1)]


def record(*rows: Row) -> Record:
    found = entries(*rows)
    batch = fold(1, found)
    batch.vessels = {held.name: held.date for held in batch.held.values()}
    return record_of(batch, found, date.fromisoformat(DAY), {"steel tank": 200.0, "carboy 1": 23.0})


def called(text: str, *rows: Row, before: tuple[Row, ...] = ()) -> tuple[str, ...]:
    return called_for(
        text, entries(*before, *rows)[len(before) :], {1: record(*before, *rows)} if before or rows else {}
    )


START: Row = ("start", "2025-09-01", {"volume": 23, "unit": "L", "vessel": "carboy 1", "from": ["pears"]})
PITCH: Row = ("pitch", "2025-09-02", {"yeast": "Q-9"})
ACTIVE = (START, PITCH, ("fermentation", "2025-09-03", {"stage": "started"}))


def sg(day: str, value: float) -> Row:
    return ("reading", day, {"quantity": "sg", "value": value, "unit": "SG"})


def added(material: str) -> Row:
    return ("addition", DAY, {"material": material, "amount": 5, "unit": "g"})


# By words alone, as of a question.
TEXTS = [
    ("she passed out next to the fermenter", "emergency"),
    ("got meta dust in my eye", "emergency"),
    ("does sulfite set off asthma?", "sulfite"),
    ("can I mix bleach and vinegar to clean the press", "mixing chemicals"),
    ("rinsed the carboy with citric acid and k-meta", "mixing chemicals"),
    ("headache every time I go into the cellar", "carbon dioxide"),
    ("can I keep a fermenting bucket in the bedroom", "carbon dioxide"),
    ("climbed into the vat to scrub it", "entering a vat"),
    ("lugged the carboy up the stairs", "lifting"),
    ("poured boiling water into the demijohn", "glass"),
    ("still bubbling but I put a solid bung in", "sealed ferment"),
    ("the airlock was full of foam again", "blocked airlock"),
    ("two bottles burst in the night", "bottle pressure"),
    ("will sorbate stop it?", "sorbate"),
    ("soaked it all in caustic soda", "cleaners"),
    ("is a galvanized tub ok for the must", "containers"),
    ("crushed the plums, stones and all", "wild plants"),
    ("can I make wine from elderflowers", "wild plants"),
    ("there is fuzzy stuff and mould on the cap", "mould"),
    ("is it ok to drink wine while pregnant", "drinking"),
    ("could we sell a few bottles at the market", "selling"),
    ("run it through the still", "distilling"),
    ("put the heat belt on it", "heating"),
    ("will a penny fix the egg smell", "copper and test chemicals"),
]

# What the words or the work only seem to call for.
NOTHING = [
    "racked batch 3 into carboy 2, SG 0.996",
    "gave it 1/4 tsp k-meta and 30 g tartaric acid",
    "rotten egg smell is back",
    "added 2 L distilled water",
    "no mould anywhere",
    "it has dropped clear in the carboy",
    "cracked open a bottle of the red",
    "the must is fermenting nicely in the cellar",
    "bottled 28 under cork",
    "racked the elderberry off its lees",
    "the cap collapsed overnight",
    "never mix bleach with acid",
]


@pytest.mark.parametrize(("text", "key"), TEXTS)
def test_by_words(text: str, key: str) -> None:
    assert key in called(text)


@pytest.mark.parametrize("text", NOTHING)
def test_ordinary_work_calls_for_none(text: str) -> None:
    assert called(text) == ()


# text, what the note was filed as, entries before it, the key, whether it is called for.
WORK = [
    ("5 g of meta in", (added("potassium metabisulfite"),), (START,), "sulfite", True),
    ("mixed meta and tartaric acid into it", (added("potassium metabisulfite"), added("tartaric acid")), (START,),
     "mixing chemicals", False),
    ("mixed meta into it, then rinsed the press with citric and sulfite solution", (added("potassium metabisulfite"),),
     (START,), "mixing chemicals", True),
    ("pitched it, bucket is in the closet", (PITCH,), (START,), "carbon dioxide", True),
    ("pitched it", (PITCH,), (START,), "carbon dioxide", False),
    ("moved it", (("move", DAY, {"to": "the lower cellar"}),), ACTIVE, "carbon dioxide", True),
    ("moved it", (("move", DAY, {"to": "the cellar"}),), (*ACTIVE, sg("2025-09-09", 0.994)), "carbon dioxide", False),
    ("punched down", (("punch_down", DAY, {}),), (("start", "2025-09-01", {"vessel": "steel tank"}),),
     "entering a vat", True),
    ("punched down", (("punch_down", DAY, {}),), (START,), "entering a vat", False),
    ("it's shut with a solid bung now", (("remark", DAY, {"text": "solid bung"}),), ACTIVE, "sealed ferment", True),
    ("it's shut with a solid bung now", (("remark", DAY, {"text": "solid bung"}),), (*ACTIVE, sg("2025-09-09", 0.994)),
     "sealed ferment", False),
    ("nutrient", (added("yeast nutrient"),), (*ACTIVE, sg("2025-09-09", 1.060)), "blocked airlock", True),
    ("nutrient", (added("yeast nutrient"),), (*ACTIVE, sg("2025-09-09", 1.005)), "blocked airlock", False),
    ("bottled 20", (("bottle", DAY, {"count": 20}),), (*ACTIVE, sg("2025-09-09", 1.006)), "bottle pressure", True),
    ("bottled 20", (("bottle", DAY, {"count": 20}),), (*ACTIVE, sg("2025-09-09", 0.994)), "bottle pressure", False),
    ("bottle it on Sunday", (("plan", DAY, {"what": "bottle", "due": "2025-09-14"}),),
     (*ACTIVE, sg("2025-09-09", 1.006)), "bottle pressure", True),
    ("sorbate", (added("potassium sorbate"),), ACTIVE, "sorbate", True),
    ("sorbate", (added("potassium metabisulfite"), added("potassium sorbate")), (*ACTIVE, sg("2025-09-09", 0.994)),
     "sorbate", False),
    ("started one from potatoes", (("start", DAY, {"from": ["potatoes", "raisins"]}),), (), "roots", True),
    ("pH 4.7", (("reading", DAY, {"quantity": "ph", "value": 4.7, "unit": "pH"}),), (START,), "roots", True),
    ("elderberries", (("start", DAY, {"from": ["elderberries"]}),), (), "wild plants", True),
    ("carboy 9", (("vessel", DAY, {"name": "carboy 9", "capacity": 6, "unit": "gal"}),), (), "lifting", True),
    ("jug 9", (("vessel", DAY, {"name": "jug 9", "capacity": 1, "unit": "gal"}),), (), "lifting", False),
    ("gave 2 away", (("give", DAY, {"count": 2}),), (START, added("egg white")), "allergens", True),
    ("gave 2 away", (("give", DAY, {"count": 2}),), (START,), "allergens", False),
    ("drank one", (("drink", DAY, {"count": 1}),), (START,), "drinking", True),
]  # fmt: skip


@pytest.mark.parametrize(("text", "rows", "before", "key", "expected"), WORK)
def test_by_work(text: str, rows: tuple[Row, ...], before: tuple[Row, ...], key: str, expected: bool) -> None:
    assert (key in called(text, *rows, before=before)) is expected


def test_a_question_about_bottling_a_wine_with_sugar_left() -> None:
    assert called_for("can I bottle it?", (), {1: record(*ACTIVE, sg("2025-09-09", 1.006))}) == ("bottle pressure",)
    assert called_for("can I bottle it?", (), {1: record(*ACTIVE, sg("2025-09-09", 0.994))}) == ()


DANGERS = {"emergency", "mixing chemicals", "carbon dioxide", "entering a vat", "sealed ferment", "bottle pressure",
           "wild plants", "roots", "distilling"}  # fmt: skip


def test_the_dangers_are_never_silenced() -> None:
    assert {key for key in CAUTIONS if not silenceable(key)} == DANGERS


@given(st.sampled_from(sorted(CAUTIONS)), st.integers(0, 800))
def test_shown_again(key: str, days: int) -> None:
    today = date.fromisoformat(DAY)
    shows = bool(to_show([key], {key: today - timedelta(days)}, today))
    assert shows or silenceable(key)
    assert not (silenceable(key) and shows and days == 0)
    assert to_show([key], {}, today) == (key,)


@given(st.text(max_size=80))
def test_any_text_is_read(text: str) -> None:
    assert set(called_for(text)) <= set(CAUTIONS)


def test_gas_of_a_batch() -> None:
    """Molar masses (molmass), one CO2 for each ethanol, at 20 °C: 23 L at 12 % vol are some 1,100 L."""
    moles = 23 * 0.12 * 789.24 / Formula("C2H6O").mass
    expected = moles * 8.314462618 * 293.15 / 101.325
    text = sentence("carbon dioxide", record(*ACTIVE))
    assert "some 1,100 litres of it from this one" in text
    assert expected == pytest.approx(1100, rel=0.05)


def test_weight_of_a_full_carboy() -> None:
    """23 L of wine at some 1 kg/L and 5 to 7 kg of glass (from memory)."""
    assert "some 29 kg" in sentence("lifting", record(START))


def test_a_sentence_without_its_figure() -> None:
    for key in CAUTIONS:
        text = sentence(key)
        assert "{" not in text
        assert "[" not in text
        assert " ]" not in text
        assert "  " not in text


def test_the_tables_are_whole() -> None:
    assert {h.key for h in HAZARDS} <= set(CAUTIONS)
    for caution in CAUTIONS.values():
        assert caution.sources
        assert caution.defers_to
        assert caution.longer
        assert caution.sentence.count(". ") == 0, "one sentence"
        assert caution.danger or caution.again >= 1
        assert " safe to " not in caution.sentence + caution.longer
