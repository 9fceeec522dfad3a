"""Words taught: what they mean from then on, in notes and in questions; and lines that teach nothing."""

import datetime
from collections.abc import Iterator
from pathlib import Path

import pytest

from journalbot.assistant import Assistant
from journalbot.journal.store import Journal

TODAY = datetime.date(2025, 10, 4)
CELLAR = (
    "started batch 1, 6 gal of merlot juice in bucket 1",
    "started batch 2, 5 gal of riesling juice in carboy 1",
    "pitched 5 g GX1040 into batch 1",
    "racked batch 1 to the 15 gallon barrel",
)


@pytest.fixture
def assistant(tmp_path: Path) -> Iterator[Assistant]:
    with Journal.open(tmp_path / "journal.db") as journal:
        assistant = Assistant(journal)
        for line in CELLAR:
            assistant.turn(line, TODAY)
        yield assistant


LESSONS = [
    ("Hank is the 15 gallon barrel", {"hank": {"vessel": "15 gallon barrel"}}),
    ("the 15 gallon barrel is called Hank", {"hank": {"vessel": "15 gallon barrel"}}),
    ("when I say bubbly I mean batch 2", {"bubbly": {"batch": 2}}),
    ("When I say 'the beast', I mean the merlot.", {"beast": {"batch": 1}}),
    ("“bubbly” is the riesling", {"bubbly": {"batch": 2}}),
    ("bubbly means batch 2", {"bubbly": {"batch": 2}}),
    ("by bubbly I mean batch 2", {"bubbly": {"batch": 2}}),
    ("I call batch 2 'bubbly'", {"bubbly": {"batch": 2}}),
    ("'the pig' is the 15 gallon barrel", {"pig": {"vessel": "15 gallon barrel"}}),
    ("when I say the usual I mean GX1040", {"usual": {"yeast": "GX1040"}}),
    ("by stardust we mean kmeta", {"stardust": {"material": "potassium metabisulfite"}}),
]


@pytest.mark.parametrize(("line", "taught"), LESSONS, ids=[line for line, _ in LESSONS])
def test_what_a_line_teaches(assistant: Assistant, line: str, taught: dict[str, dict[str, object]]) -> None:
    notes = assistant.journal.count_notes()
    reply = assistant.turn(line, TODAY)
    assert reply.text.startswith("From now on")
    assert assistant.journal.taught() == taught
    assert assistant.journal.count_notes() == notes
    assert next(iter(taught)) in assistant.turn("what words have I taught you?", TODAY).text


def test_a_word_for_a_batch_is_read_in_notes_now_and_after_a_restart(assistant: Assistant) -> None:
    assistant.turn("when I say bubbly I mean batch 2", TODAY)
    assert assistant.turn("bubbly at 1.060", TODAY).text.startswith("Batch 2")
    assert Assistant(assistant.journal).turn("bubbly at 1.050", TODAY).text.startswith("Batch 2")


def test_a_word_for_a_yeast_and_a_material_is_read(assistant: Assistant) -> None:
    assistant.turn("by stardust I mean kmeta", TODAY)
    (entry,) = assistant.turn("added 5 g stardust to batch 2", TODAY).entries
    assert (entry.kind, entry.get("material")) == ("addition", "potassium metabisulfite")


def test_a_word_for_a_vessel_is_that_vessel(assistant: Assistant) -> None:
    assistant.turn("'the pig' is the 15 gallon barrel", TODAY)
    assistant.turn("racked batch 2 to the pig", TODAY)
    assert [b.number for b in assistant.journal.cellar().in_vessel("15 gallon barrel")] == [2]


def test_teaching_can_be_undone_at_once(assistant: Assistant) -> None:
    assistant.turn("when I say bubbly I mean batch 2", TODAY)
    assistant.turn("when I say bubbly I mean batch 1", TODAY)
    assert "batch 2" in assistant.turn("undo", TODAY).text
    assert assistant.journal.taught() == {"bubbly": {"batch": 2}}
    assert sorted(assistant.journal.cellar().batches) == [1, 2]
    assistant.turn("when I say fizzy I mean batch 1", TODAY)
    assert "means nothing" in assistant.turn("undo", TODAY).text
    assert list(assistant.journal.taught()) == ["bubbly"]


@pytest.mark.parametrize(
    "line", ["when I say racked I mean batch 2", "when I say blob I mean the flubber", "'zog' is batch 9"]
)
def test_what_cannot_be_taught_is_said(assistant: Assistant, line: str) -> None:
    assert not assistant.turn(line, TODAY).text.startswith("From now on")
    assert assistant.journal.taught() == {}


@pytest.mark.parametrize(
    "line",
    [
        "foam means trouble",
        "batch 2 is in carboy 3",
        "the merlot is the best",
        "it means a lot of work",
        "carboy 1 is the small barrel",
        "this is the 15 gallon barrel",
        "Bess is my aunt",
        "the merlot is called Night Shift",
    ],
)
def test_what_is_a_note(assistant: Assistant, line: str) -> None:
    assistant.turn(line, TODAY)
    assert assistant.journal.taught() == {}
    assert assistant.journal.count_notes() == len(CELLAR) + 1
