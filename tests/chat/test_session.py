"""The session without a terminal: the terminal library's own pipe for input, a list for output."""

import datetime
from collections.abc import Iterator
from pathlib import Path

import pytest
from prompt_toolkit.completion import CompleteEvent
from prompt_toolkit.document import Document
from prompt_toolkit.input import create_pipe_input
from prompt_toolkit.output import DummyOutput

from journalbot.assistant import Assistant
from journalbot.chat.completion import Completions, starters
from journalbot.chat.greeting import greeting
from journalbot.chat.session import converse
from journalbot.journal.store import Journal
from journalbot.turns import sayings
from journalbot.turns.help import help_text

TODAY = datetime.date(2025, 10, 4)
CELLAR = (
    "started batch 1, call it Hillside Red, 6 gal of merlot juice in bucket 1",
    "started batch 2, 5 gal of riesling juice in carboy 1",
    "pitched 5 g GX1040 into batch 1",
    "punched down batch 1 twice",
    "punched down batch 1 three times",
)


@pytest.fixture
def assistant(tmp_path: Path) -> Iterator[Assistant]:
    with Journal.open(tmp_path / "journal.db") as journal:
        assistant = Assistant(journal)
        for line in CELLAR:
            assistant.turn(line, TODAY)
        yield assistant


def talk(assistant: Assistant, keys: str) -> list[str]:
    said: list[str] = []
    with create_pipe_input() as keyboard:
        keyboard.send_text(keys)
        assert converse(assistant, lambda: TODAY, input=keyboard, output=DummyOutput(), say=said.append) == 0
    return said


def offered(assistant: Assistant, text: str) -> list[str]:
    found = Completions(assistant.journal).get_completions(Document(text), CompleteEvent())
    return [text[: len(text) + c.start_position] + c.text for c in found]


def test_every_line_gets_its_reply(assistant: Assistant) -> None:
    said = talk(assistant, "batch 2 at 1.070\r\r   \rbatch 2 at 1.060\r\x04")
    assert said[1:] == [
        "Batch 2, riesling juice: gravity 1.070.",
        "Batch 2, riesling juice: gravity 1.060.",
        "Goodbye.",
    ]


@pytest.mark.parametrize("word", sorted(sayings.GOODBYE))
def test_goodbyes(assistant: Assistant, word: str) -> None:
    assert talk(assistant, f"{word.capitalize()}.\rnot read\r")[1:] == ["Goodbye."]


def test_a_line_that_cannot_be_kept_does_not_end_the_talk(assistant: Assistant) -> None:
    assistant.journal.sql("PRAGMA query_only = ON")  # as on a medium that has become read-only
    said = talk(assistant, "batch 2 at 1.070\rhelp\r\x04")
    assert said[1].startswith("Not kept: ")
    assert said[2].startswith("Jot down")


def test_history_falls_back_to_memory(assistant: Assistant, capsys: pytest.CaptureFixture[str]) -> None:
    history = assistant.journal.path.with_name(assistant.journal.path.name + ".history")
    history.mkdir()
    assert talk(assistant, "batch 2 at 1.070\r\x04")[-1] == "Goodbye."
    assert "not remembered" in capsys.readouterr().err


COMPLETIONS = [
    ("racked hill", "racked Hillside Red"),
    ("racked Hillside R", "racked Hillside Red"),
    ("batch 2 to car", "batch 2 to carboy 1"),
    ("pitched 5 g GX", "pitched 5 g GX1040"),
    ("punch", "punched down batch "),
    ("moved bat", "moved batch 1"),
]


@pytest.mark.parametrize(("typed", "completed"), COMPLETIONS, ids=[t for t, _ in COMPLETIONS])
def test_completion_from_the_journals_own_names(assistant: Assistant, typed: str, completed: str) -> None:
    assert completed in offered(assistant, typed)


def test_nothing_is_offered_for_nothing(assistant: Assistant) -> None:
    assert offered(assistant, "") == []
    assert offered(assistant, "racked ") == []


def test_names_first_met_are_offered_at_once(assistant: Assistant) -> None:
    assert offered(assistant, "in demi") == []
    assistant.turn("racked batch 1 to demijohn 7", TODAY)
    assert offered(assistant, "in demi") == ["in demijohn 7"]


def test_starters_are_beginnings_used_more_than_once() -> None:
    assert starters(["racked batch 1", "racked batch 2", "tasted it"]) == ["racked", "racked batch"]


def test_greeting_says_what_is_there_and_what_waits(assistant: Assistant) -> None:
    assert greeting(assistant, TODAY) == "5 notes, 2 batches, 2 under way. “help” shows what to say."
    assistant.turn("1.022 today", TODAY)
    assert greeting(assistant, TODAY).splitlines()[1] == "1 note waits for an answer: say “what is waiting?”"


def test_greeting_says_what_is_due(assistant: Assistant) -> None:
    assistant.turn("need to rack batch 2 on Oct 10", TODAY)
    assert "Due" not in greeting(assistant, TODAY)
    said = greeting(assistant, datetime.date(2025, 10, 12)).splitlines()[-1]
    assert said.startswith("Due: rack")
    assert "(batch 2): planned for 2025-10-10" in said


def test_help_teaches_by_the_persons_own_batches(assistant: Assistant) -> None:
    said = help_text(assistant.journal)
    assert "the Hillside Red" in said
    assert "batch 2" in said


def test_what_help_shows_is_understood(assistant: Assistant) -> None:
    """Every example of help, typed as it stands, does what help says it does; none is kept as a mere remark."""
    examples = [line.strip() for line in help_text(assistant.journal).splitlines() if line.startswith("  ")]
    assert len(examples) > 10
    for example in examples:
        reply = assistant.turn(example, TODAY)
        assert reply.text, example
        assert "Kept as a note" not in reply.text, example
        if example.endswith("?") and example != "what is waiting?":
            assert reply.answer is not None, example
            assert reply.answer.understood_as, example
