"""Questions and their answers. Each row: the question, what the answer must say, and what it must not."""

import subprocess
import sys
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from tests.questions.conftest import Cellar

ANSWERED: tuple[tuple[str, tuple[str, ...], tuple[str, ...]], ...] = (
    # what was used
    ("what yeast did the 2022 syrah get", ("ZT-12", "10 g"), ("44R",)),
    ("which yeasts went into the mead, both times?", ("44R", "BX204"), ("ZT-12",)),
    ("which malolactic culture did I use in batch 1", ("LM-2",), ()),
    ("what kind of oak went in batch 1", ("cubes", "French"), ()),
    ("what have I added to the mead", ("honey", "sorbate"), ("tartaric",)),
    ("how much meta has batch 1 had in total", ("5 g",), ()),
    ("what closure did I use on the mead", ("swing tops",), ()),
    # when and how often
    ("when did I press batch 3", ("19 Sep 2023",), ("20 Sep 2022",)),
    ("when was batch 1 last racked", ("30 Oct 2022",), ("20 Sep",)),
    ("how many times was batch 1 racked", ("2 times",), ()),
    ("when did the mead get stuck", ("20 Jul 2023",), ()),
    ("when did I take the oak out of batch 1", ("7 Feb 2023",), ("30 Oct",)),
    ("has batch 1 been through malolactic", ("Yes", "30 Oct 2022"), ()),
    # readings
    ("og and fg of batch 1", ("1.094", "0.996"), ("1.050",)),
    ("what temperature was the riesling pitched at", ("14 °C",), ()),
    ("gravity of the mead when it stuck", ("1.040",), ("1.100",)),
    ("pH and TA of batch 1", ("3.60", "5.9 g/L"), ()),
    ("highest temperature of batch 1", ("28 °C", "14 Sep 2022"), ("19 °C",)),
    ("what was the temperature of batch 3 in september 2023", ("31 °C",), ()),
    # how long
    ("how long did the mead ferment", ("61 days",), ()),
    ("how long was the 2022 syrah on oak", ("100 days",), ()),
    ("days from crush to bottle for batch 1", ("233 days",), ()),
    ("how long did malo take on the first syrah", ("38 days",), ()),
    ("how long was batch 1 in demijohn 2", ("183 days",), ()),
    ("how long was the mead stuck", ("4 days",), ()),
    ("how long since batch 3 was racked", ("428 days",), ()),
    # vessels
    ("what is in demijohn 2", ("batch 3",), ("batch 1",)),
    ("is the tub free?", ("Yes", "empty"), ()),
    ("where is batch 3", ("demijohn 2", "shed"), ()),
    ("which vessels are empty", ("tub",), ("demijohn 1", "demijohn 2")),
    ("what was in demijohn 1 before", ("batch 1", "batch 2"), ()),
    ("how big is the tub", ("60 L",), ()),
    # bottles and money
    ("how many bottles of the 2022 syrah are left", ("22 bottles", "28 filled"), ()),
    ("how many bottles have I filled in all", ("41 bottles",), ()),
    ("who did I give syrah to", ("Tamsin", "Berek"), ()),
    ("how many bottles did Tamsin get", ("3 bottles",), ()),
    ("what did the mead cost per bottle", ("3.23 €",), ()),
    ("total spent on the two syrahs", ("280.00 €",), ()),
    ("what did I spend in 2023", ("187.00 €",), ()),
    ("how much did I pay for grapes in 2022", ("150.00 €",), ("130",)),
    ("when did I last buy corks", ("4 Nov 2023",), ()),
    # figures
    ("what alcohol did the 2022 syrah reach", ("12.9", "131.25"), ()),
    ("alcohol of the mead", ("12.9",), ("11.",)),
    ("apparent attenuation of batch 3", ("10",), ()),
    # lists by condition, ranks, means
    ("which wines did I add acid to", ("batch 1",), ("batch 2", "batch 3", "batch 4")),
    ("reds that I racked more than once", ("batch 1",), ("batch 3",)),
    ("which wines did I pitch under 15 C", ("batch 4",), ("batch 1", "batch 2")),
    ("batches without oak", ("batch 2", "batch 3", "batch 4"), ("batch 1 ",)),
    ("wines that scored over 15", ("batch 2",), ("batch 1 ",)),
    ("which wine has the lowest pH", ("batch 1", "3.60"), ("batch 3",)),
    ("which ferment ran hottest", ("batch 3", "31 °C"), ("batch 1",)),
    ("which wine got my best mark", ("batch 2", "16/20"), ("batch 1",)),
    ("average score of the 2022 syrah", ("14/20",), ()),
    ("wines that took more than 40 days to ferment", ("batch 2",), ("batch 1", "batch 4")),
    ("which wines were sweetened", ("batch 2", "300 g"), ("batch 1",)),
    ("how many batches have I started", ("4 batches",), ()),
    ("which batches are still under way", ("batch 3", "batch 4"), ("batch 1", "batch 2")),
    # comparisons and stories
    ("took longer to ferment: batch 1 or batch 3?", ("Batch 3",), ()),
    ("compare starting pH, 2022 syrah vs 2023 syrah", ("3.60", "3.75"), ()),
    ("compare batches 1 and 3", ("ZT-12", "1.094", "1.090"), ()),
    ("tell me the whole story of the mead", ("1 Jul 2023", "20 Jul 2023", "21 Oct 2023"), ()),
    ("the story of batch 1 from crush to bottle", ("10 Sep 2022", "1 May 2023"), ()),
    ("how did I make batch 1", ("10 Sep 2022", "(= 1 g/L)"), ()),
    ("how has the 2022 syrah changed over the years", ("smoke", "leather"), ()),
    ("what did I do in july 2023", ("2 Jul 2023", "24 Jul 2023"), ("7 Oct",)),
    ("what was I doing the week I bottled the mead", ("21 Oct 2023",), ("7 Oct 2023",)),
    # searches and plans
    ("which one tasted of leather", ("batch 1", "24 Dec 2023"), ("batch 2",)),
    ("which one smelt of wet wool", ("batch 4",), ("batch 1",)),
    ("any notes that mention swing tops", ("batch 2",), ()),
    ("what's coming up", ("7 Dec 2024", "30 Nov 2024"), ()),
    ("when am I meant to bottle the riesling?", ("7 Dec 2024",), ()),
    ("any notes not understood?", ("riesling pH 33",), ()),
    # how things stand
    ("how is the riesling doing", ("0.994", "bottle, due 7 Dec 2024"), ("syrah",)),
    ("batch 2?", ("44R", "BX204"), ("syrah",)),
    ("what's fermenting right now", ("None",), ("batch 1",)),
    ("which yeast did I use most often", ("ZT-12, 2 times",), ("44R",)),
    ("how many different yeasts have I used", ("3: ZT-12, 44R and BX204",), ()),
    ("did I give anyone the mead", ("No bottles given away",), ("honey",)),
    ("how many bottles have gone in total", ("6 bottles",), ("41",)),
    ("which wines are bottled", ("batch 1", "batch 2"), ("batch 3", "batch 4")),
    ("how much honey did I buy", ("3 kg",), ()),
    ("what's in my demijohns", ("batch 4", "batch 3"), ()),
    ("what was batch 1 at when I pressed it", ("0.998",), ("1.050",)),
    ("how sweet is the mead now", ("1.012",), ("1.002",)),
    ("average number of rackings per batch", ("1.5 times",), ()),
)


@pytest.mark.parametrize("question, holds, lacks", ANSWERED, ids=[row[0] for row in ANSWERED])
def test_answers(cellar: "Cellar", question: str, holds: tuple[str, ...], lacks: tuple[str, ...]) -> None:
    answer = cellar.ask(question)
    assert answer.found, answer
    assert answer.understood_as
    low = answer.answer.casefold()
    assert [h for h in holds if h.casefold() not in low] == [], answer
    assert [x for x in lacks if x.casefold() in low] == [], answer


@pytest.mark.parametrize("question", [row[0] for row in ANSWERED[:12]])
def test_answers_name_the_notes_they_rest_on(cellar: "Cellar", question: str) -> None:
    answer = cellar.ask(question)
    assert answer.notes
    assert all(cellar.journal.note(number) for number in answer.notes)


# Nothing of the kind is in the journal, and no other figure may be given instead.
NOT_FOUND = (
    "what was the pH of the mead",
    "free SO2 of the riesling?",
    "what strain was the riesling yeast",
    "when did I bottle the merlot",
    "what did the French cubes cost",
    "how much did I pay for the demijohns",
    "what score did I give batch 3",
    "how many days did the riesling spend on oak",
    "when did I bottle batch 3",
    "how heavy was the harvest",
    "should I rack batch 2",
    "how do I rack wine",
    "how many bottles per gallon did I get from the mead",
    "what colour is the label of the mead",
    "who helped me crush",
)


@pytest.mark.parametrize("question", NOT_FOUND)
def test_what_the_journal_does_not_hold(cellar: "Cellar", question: str) -> None:
    answer = cellar.ask(question)
    assert not answer.found, answer
    assert answer.answer


def test_the_batch_that_was_taken_is_named(cellar: "Cellar") -> None:
    """A question about a batch says which batch it took, by number and name."""
    assert "batch 1 (2022 syrah)" in (cellar.ask("yeast of the 2022 syrah").understood_as or "")


def test_asking_loads_nothing_heavy(cellar: "Cellar") -> None:
    """The libraries that take long to load stay out of the way of a question."""
    code = (
        "import sys, datetime; from pathlib import Path; from journalbot.journal.store import Journal; "
        "from journalbot.language.names import Names; from journalbot.questions import ask\n"
        f"with Journal.open(Path({str(cellar.journal.path)!r})) as journal:\n"
        "    names = Names(); names.update_batches(journal.cellar().batches.values())\n"
        "    answer, _ = ask('when did I press batch 3', datetime.date(2024, 11, 20), journal, names)\n"
        "assert '19 Sep 2023' in answer.answer, answer\n"
        "print(sorted({'sqlite_utils', 'dateparser', 'rapidfuzz', 'prompt_toolkit'} & set(sys.modules)))"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert done.stdout.strip() == "[]", done.stderr


def test_one_batch_is_answered_without_reading_others(cellar: "Cellar") -> None:
    """Whatever is asked of one batch, only its own entries are fetched."""
    fetched: list[object] = []
    journal = cellar.journal
    entries = journal.entries

    def watched(**filters: object) -> object:
        fetched.append(filters.get("batch", ...))
        return entries(**filters)  # type: ignore[arg-type]

    journal.entries = watched  # type: ignore[method-assign, assignment]
    try:
        for question in (
            "yeast of batch 1",
            "how long did batch 1 ferment",
            "story of batch 1",
            "alcohol of batch 1",
            "bottles of batch 1 left",
        ):
            assert cellar.ask(question).found
    finally:
        del journal.entries  # type: ignore[method-assign]
    assert fetched
    assert all(batch == [1] for batch in fetched)
