"""The demo's journal as different people ask about it; each answer was checked against its notes by eye."""

from collections.abc import Iterator
from datetime import date
from importlib.resources import files
from pathlib import Path

import pytest

from journalbot.assistant import Assistant
from journalbot.journal.store import Journal
from journalbot.model import Answer

TODAY = date(2026, 11, 15)

# question, what the answer holds; a word with a "-" before it is one that it must not hold
ANSWERED: tuple[tuple[str, tuple[str, ...]], ...] = (
    # someone who asks in passing
    ("which merlot had the higher OG, batch 1 or batch 8?", ("1.098",)),
    ("did I use more sugar in batch 3 or batch 5?", ("batch 5", "5 lb", "-Yes")),
    ("what went into the rosé", ("grenache juice", "0.25 tsp potassium metabisulfite")),
    ("what vessel was batch 8 in on 1 March 2026", ("barrel 1", "-demijohn")),
    ("what pH did batch 8 start at?", ("3.58",)),
    ("last time I gave Odell a bottle", ("19 Sep 2026",)),
    ("who all got a bottle of the malbec", ("3 bottles to Tess",)),
    ("days between bottling batch 1 and opening the first one", ("92 days",)),
    ("what do I have to do in december", ("bottle", "Tess", "-corks")),
    ("percentage alcohol of batch 1", ("12.9",)),
    ("batch 2, how many bottles still?", ("23 bottles",)),
    ("total of everything I've bought so far", ("$1,031",)),
    ("which wines did I score a 9", ("batch 1", "-batch 4")),
    ("pH on the day I crushed batch 8", ("3.58",)),
    ("how much sugar went into the plum when I started it", ("5 lb",)),
    ("what should I do next with batch 8", ("planned", "12 Dec 2026")),
    ("how many bottles have Tess and Odell had", ("7 bottles",)),
    ("when did I last punch anything down", ("8 Oct 2025",)),
    ("which batches were under way on 1 January 2026", ("batch 8", "-batch 9")),
    # someone who wants to know how things stand
    ("how's the riesling doing", ("1.022", "21 Nov 2026")),
    ("is the riesling still fermenting?", ("yes", "1.022")),
    ("is the mead under way", ("no", "10 bottles left")),
    ("is batch 7 gone?", ("yes", "vinegar")),
    ("is batch 8 due for racking", ("rack", "12 Sep 2026")),
    ("what do I need to buy", ("corks", "28 Nov 2026", "-rack")),
    ("what plans are open", ("corks", "Tess", "-plum")),
    ("what's planned for december", ("bottle", "Tess", "-corks")),
    ("what's in barrel 1", ("empty",)),
    ("which carboys are empty?", ("carboy 1", "carboy 7", "-carboy 2", "-carboy 4")),
    ("how much is in carboy 2", ("batch 9", "5.5 gal")),
    ("what's the sulfite level in batch 8", ("28 mg/L", "-tsp")),
    ("when did I last check sulfite on batch 8", ("13 Jun 2026",)),
    # someone who counts bottles
    ("how many rainy hill reds are left", ("23 bottles",)),
    ("how many bottles of chardonnay are left", ("23 bottles", "1 used for topping up")),
    ("what do I still have to drink of the rosé", ("22 bottles",)),
    ("how much mead is left", ("10 bottles",)),
    ("how much wine did Odell get from me", ("4 bottles",)),
    ("who has had my malbec", ("3 bottles to Tess",)),
    ("who got the most bottles", ("Odell", "4 bottles")),
    ("which reds have I given away", ("batch 1", "batch 4", "-batch 2")),
    ("which wines have more than 20 bottles left", ("batch 1", "batch 2", "batch 6", "-batch 3")),
    ("how many bottles did I fill in 2025", ("52 bottles",)),
    ("bottles filled per year", ("2024: 83 bottles", "2025: 52 bottles")),
    ("last wine I bottled", ("batch 5", "-batch 6")),
    # someone who tastes
    ("which merlot turned out better", ("batch 1", "9/10")),
    ("which wine did I like least", ("batch 1", "4/10")),
    ("which wine scored 9/10", ("batch 1", "9/10", "-4/10")),
    ("anything with watermelon", ("batch 6",)),
    ("which one was velvety", ("batch 1", "7 Sep 2026")),
    ("rank the reds by score", ("1. batch 8", "2. batch 1", "3. batch 4")),
    ("average score of wines that were oaked", ("6.57/10",)),
    ("which wines were never tasted", ("batch 7", "batch 9", "-batch 2")),
    ("notes that mention Marnie", ("chardonnay", "cookout", "silky")),
    # someone who makes it again
    ("what yeast is the plum on?", ("M-8",)),
    ("which batches used R-40", ("batch 1", "batch 8", "-batch 2")),
    ("how long was batch 8 in the barrel", ("98 days",)),
    ("how long on oak did batch 8 have", ("98 days",)),
    ("when did batch 8 come off the oak", ("18 Apr 2026",)),
    ("how many gallons came off the press for batch 8", ("6 gal", "0.5 gal")),
    ("what did the mead get stuck at", ("1.042",)),
    ("how long was the mead stuck", ("9 days",)),
    ("what did I put in batch 8 in its first month", ("tartaric acid", "R-40", "-22 Nov 2025")),
    ("what did I do differently from last year with the merlot", ("R-40, 8 g", "R-40, 10 g")),
    ("which batches got more than one racking", ("batch 1", "batch 5", "-batch 3", "-batch 7")),
    ("which batch started at 1.098", ("batch 8", "-batch 1")),
    ("where did I get the riesling juice", ("Tamsett Hollow",)),
    # someone who minds the money
    ("what did I pay in 2025", ("$422",)),
    ("total spend 2023", ("$269",)),
    ("total cost of the 2024 wines", ("$261",)),
    ("how many corks have I bought", ("160",)),
    # someone in a hurry, or far from a keyboard
    ("wen did i last rak the plum", ("24 Nov 2024",)),
    ("do you remember when I bottled the mead?", ("9 Feb 2025",)),
    ("hottest ferment", ("82 °F", "batch 8")),
    ("slowest ferment", ("batch 3", "57 days")),
    ("biggest batch", ("6 gal",)),
    ("has anything gone to vinegar", ("vinegar", "Batch 7")),
    ("how cold was the basement", ("56 °F",)),
    ("what changed between april and june 2026", ("racked from barrel 1", "free SO2 28")),
    ("which batches did I start this year", ("batch 9", "-batch 8")),
    ("what was I planning in october 2024", ("rack", "November 2024")),
    ("what happened after I pressed batch 8", ("malolactic started", "racked to carboy 2", "-pitched")),
    ("is any wine stuck right now", ("Nothing is noted as stuck",)),
    ("what's been in carboy 1", ("batch 2", "batch 6", "-empty")),
    ('notes that say "gone dry"', ("batch 1", "batch 8", "-batch 2")),
    ("notes about green apples", ("Smells like green apples",)),
    ("which wine had black cherry", ("batch 1", "-batch 5")),
    ("slowest malolactic", ("46 days",)),
    ("temperature range of batch 1 in primary", ("68 °F to 80 °F",)),
    ("how many bottles of red do I have", ("43 bottles",)),
    ("what did I do yesterday", ("Nothing is recorded",)),
)

# What must be refused, and the word that stops it: an answer would leave out what it turns on.
REFUSED: tuple[tuple[str, str], ...] = (
    ("what fixed the stuck mead", "fixed"),
    ("did I use M-8 in anything besides the mead", "besides"),
    ("did Tess like the malbec", "Tess"),
    ("how much did the merlot grapes cost per pound", "pound"),
    ("how many corks do I have", "corks"),
    ("which vessel is holding the most wine", "most"),
    ("what was in carboy 2 before the riesling", "before"),
    ("how long should I age the merlot", "should i"),
    ("who helped with the corks", "who"),
    ("how long has carboy 3 been empty", "empty"),
    ("last three tastings", "three"),
    ("what did I do the day before I bottled the mead", "before"),
    ("what would you change about batch 3", "would you"),
)


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Journal]:
    path: Path = tmp_path_factory.mktemp("demo") / "journal.db"
    with Journal.open(path) as journal:
        lines = (files("journalbot") / "demo.jsonl").read_text("utf-8").splitlines(keepends=True)
        for _ in Assistant(journal).import_lines(lines):
            pass
        yield journal


def _ask(journal: Journal, question: str) -> Answer:
    return Assistant(journal).ask(question, TODAY)


@pytest.mark.parametrize("question, holds", ANSWERED, ids=[row[0] for row in ANSWERED])
def test_answered(demo: Journal, question: str, holds: tuple[str, ...]) -> None:
    answer = _ask(demo, question)
    text = answer.answer.casefold()
    assert answer.understood_as is not None
    for word in holds:
        wanted = word.removeprefix("-").casefold()
        assert (wanted in text) is not word.startswith("-"), answer.answer


@pytest.mark.parametrize("question, word", REFUSED, ids=[row[0] for row in REFUSED])
def test_refused(demo: Journal, question: str, word: str) -> None:
    answer = _ask(demo, question)
    assert answer.understood_as is None
    assert not answer.found
    assert f"“{word}”" in answer.answer


TALKS: tuple[tuple[tuple[str, str], ...], ...] = (
    (
        ("when did I last rack batch 8", "18 Apr 2026"),
        ("the one before", "10 Jan 2026"),
        ("and the one before that", "6 Dec 2025"),
        ("show me the notes", "topped it up with half a gallon"),
    ),
    (
        ("how many bottles of the chardonnay are left", "23"),
        ("and the malbec?", "20"),
        ("what about batch 3?", "10"),
        ("why?", "Bottled the mead"),
    ),
    (
        ("what was the pH of batch 8", "3.56"),
        ("and batch 1?", "3.44"),
        ("and the TA?", "7.8"),
        ("when was that", "30 Sep"),
    ),
    (("how many bottles did I give away", "9 bottles"), ("in 2026?", "3 bottles"), ("and to whom?", "Odell")),
    (("hottest ferment", "82"), ("and the coldest?", "58")),
)


@pytest.mark.parametrize("talk", TALKS, ids=[talk[0][0] for talk in TALKS])
def test_follow_ups(demo: Journal, talk: tuple[tuple[str, str], ...]) -> None:
    assistant = Assistant(demo)
    for question, holds in talk:
        answer = assistant.ask(question, TODAY)
        assert holds in answer.answer, (question, answer.answer)
