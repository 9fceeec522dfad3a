"""Cautions around answers: a sentence once a day a kind, dangers every time, the longer text on request."""

from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest

from journalbot.assistant import Assistant
from journalbot.journal.store import Journal
from journalbot.questions.cautioned import caution_asked
from journalbot.vocabulary.cautions import CAUTIONS

TODAY = date(2024, 11, 20)
SULFITE, GAS = "Sulfite powder", "carbon dioxide"


@pytest.fixture
def assistant(tmp_path: Path) -> Iterator[Assistant]:
    with Journal.open(tmp_path / "journal.db") as journal:
        yield Assistant(journal)


def test_a_routine_caution_is_told_once(assistant: Assistant) -> None:
    first = assistant.turn("how much kmeta for 30 ppm in 6 gallons", TODAY)
    again = assistant.turn("how much kmeta for 40 ppm in 6 gallons", TODAY)
    assert SULFITE in first.text
    assert SULFITE not in again.text
    later = TODAY + timedelta(days=CAUTIONS["sulfite"].again)
    assert SULFITE in assistant.turn("how much kmeta for 40 ppm in 6 gallons", later).text


def test_a_danger_is_never_silenced(assistant: Assistant) -> None:
    for _ in range(3):
        assert GAS in assistant.turn("how much CO2 does 23 L at 12% give off", TODAY).text
        assert "burst them" in assistant.turn("how much sugar to sweeten 10 L by 20 g/L", TODAY).text


def test_asking_alone_writes_nothing(assistant: Assistant) -> None:
    for _ in range(2):
        assert SULFITE in assistant.ask("how much kmeta for 30 ppm in 6 gallons", TODAY).answer


ASKED: tuple[tuple[str, str], ...] = (  # question, the caution it brings up
    ("what are the dangers of carbon dioxide", "carbon dioxide"),
    ("is it dangerous to breathe the co2", "carbon dioxide"),
    ("can I keep the ferment in my bedroom", "carbon dioxide"),
    ("what precautions should I take with sulfite", "sulfite"),
    ("how do I handle kmeta safely", "sulfite"),
    ("can I mix bleach and vinegar", "mixing chemicals"),
    ("can I mix citric acid and kmeta to sanitize", "mixing chemicals"),
    ("what are the risks of bottling too early", "bottle pressure"),
    ("how do I distil batch 1", "distilling"),
    ("is it legal to sell my wine", "selling"),
    ("can I use elderberries with the stems", "wild plants"),
    ("is it ok to use a copper pot", "containers"),
)


@pytest.mark.parametrize(("question", "key"), ASKED, ids=[row[0] for row in ASKED])
def test_the_longer_text(assistant: Assistant, question: str, key: str) -> None:
    """All of it, with whom it gives way to and who says so; where the question is of a danger, it is the answer."""
    text = assistant.turn(question, TODAY).text
    row = CAUTIONS[key]
    assert row.longer in text
    assert row.defers_to in text
    assert all(source in text for source in row.sources)


def test_what_was_told_last_can_be_asked_after(assistant: Assistant) -> None:
    assistant.turn("how much kmeta for 30 ppm in 6 gallons", TODAY)
    assert CAUTIONS["sulfite"].longer in assistant.turn("tell me more about that caution", TODAY).text


@pytest.mark.parametrize(
    "question",
    [
        "how much kmeta for 30 ppm in 6 gallons",
        "can I bottle batch 1",
        "should I rack batch 1",
        "is batch 1 ready to bottle",
        "what yeast did batch 1 get",
        "did I note any danger",
        "how do I add sulfite",
    ],
)
def test_what_asks_for_no_caution(question: str) -> None:
    assert caution_asked(question) is None
