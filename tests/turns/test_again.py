"""A wine made again: from the sentence to plans of a new batch, which care then follows."""

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from journalbot.assistant import Assistant
from journalbot.journal.store import Journal

TODAY = date(2024, 11, 20)
NOTES = (
    ("2023-09-01", "started batch 1, 6 gal of zinfandel, SG 1.095, pH 3.5"),
    ("2023-09-02", "pitched batch 1 with K7"),
    ("2023-09-03", "added 12 g tartaric acid to batch 1"),
    ("2023-09-15", "pressed batch 1, SG .998"),
    ("2023-10-15", "racked batch 1 to carboy B, 5 gal"),
    ("2024-06-01", "bottled batch 1, 24 bottles under cork"),
    ("2024-09-01", "tasted batch 1: thin, jammy, 6/10"),
    ("2024-10-20", "Started batch 2, chardonnay juice"),
)


@pytest.fixture
def assistant(tmp_path: Path) -> Iterator[Assistant]:
    with Journal.open(tmp_path / "journal.db") as journal:
        assistant = Assistant(journal)
        for day, text in NOTES:
            assert assistant.turn(text, date.fromisoformat(day)).ask is None
        yield assistant


def plans(assistant: Assistant, batch: int = 3) -> list[tuple[str, str]]:
    return [(str(e.get("due")), str(e.get("what"))) for e in assistant.journal.entries(batch=batch, kinds=["plan"])]


@pytest.mark.parametrize(
    "line",
    [
        "make batch 1 again, 3 gallons starting December 5",
        "make the zinfandel again, 3 gal from December 5",
        "let's do the zinfandel again at 3 gal starting Dec 5",
        "I want to make batch 1 again, 3 gallons, starting December 5",
        "repeat batch 1 with 3 gal from Dec 5",
    ],
)
def test_the_plan_at_half_the_volume(assistant: Assistant, line: str) -> None:
    """Amounts by the volume at the start (6 gal), not by the 5 gal that the racking left; days as they were."""
    text = assistant.turn(line, TODAY).text
    assert plans(assistant) == [
        ("2024-12-05", "start 3 gal zinfandel"),
        ("2024-12-06", "pitch K7"),
        ("2024-12-07", "add 6 g tartaric acid"),
        ("2024-12-19", "press"),
        ("2025-01-18", "rack"),
        ("2025-09-05", "bottle about 12 under cork"),
    ]
    assert "watch gravity: it was 1.095 at the start" in text
    assert "more fruit for the volume, and no more water (tasted: thin)" in text


def test_care_follows_the_plan_and_the_batch_begun_keeps_its_number(assistant: Assistant) -> None:
    assistant.turn("make batch 1 again, 3 gal from December 5", TODAY)
    reply = assistant.turn("what is due", date(2024, 12, 5))
    assert "Batch 3: start 3 gal zinfandel: planned for 5 Dec 2024" in reply.text
    filed = assistant.turn("started batch 3, 3 gal of zinfandel, SG 1.090", date(2024, 12, 5))
    assert {(e.kind, e.batch) for e in filed.entries} >= {("start", 3)}
    assistant.turn("pitched batch 3 with K7", date(2024, 12, 6))
    reply = assistant.turn("what is due for batch 3", date(2024, 12, 9))
    assert "add 6 g tartaric acid (overdue): planned for 7 Dec 2024" in reply.text
    assert "pitch" not in reply.text
    assistant.turn("added 6 g tartaric acid to batch 3", date(2024, 12, 9))
    assert "tartaric" not in assistant.turn("what is due for batch 3", date(2024, 12, 10)).text


def test_undo_takes_the_plans_back(assistant: Assistant) -> None:
    assistant.turn("make batch 1 again", TODAY)
    assert plans(assistant)
    assistant.turn("undo", TODAY)
    assert plans(assistant) == []


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("make batch 2 again", "volume that batch 2 was started with is not known"),
        ("make batch 99 again", "no batch 99 to make again"),
        ("make batch 1 again, 90000 gal", "0.05 to 5000 L"),
        ("make batch 1 again next month", "From which day"),
    ],
)
def test_what_cannot_be_planned_says_why(assistant: Assistant, line: str, said: str) -> None:
    assert said in assistant.turn(line, TODAY).text
    assert plans(assistant) == []


@pytest.mark.parametrize(
    "line", ["make sure to rack batch 1 again next week", "did I make batch 1 again?", "racked batch 1 again"]
)
def test_what_is_no_making_again(assistant: Assistant, line: str) -> None:
    assistant.turn(line, TODAY)
    assert plans(assistant) == []
