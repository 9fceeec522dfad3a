"""The person's own days for what care reminds of, said in plain words, and how care then goes by them."""

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from journalbot.assistant import Assistant
from journalbot.journal.store import Journal
from journalbot.turns.care import due
from journalbot.turns.intervals import read_intervals
from journalbot.vocabulary.care import INTERVALS, OWN_DAYS

TODAY = date(2024, 11, 20)

SET: tuple[tuple[str, str, tuple[int, int]], ...] = (  # line, a key it sets, days
    ("remind me to rack every 60 days", "rack again", (60, 60)),
    ("Rack every 2 to 3 months.", "rack again", (60, 90)),
    ("I'd like to rack every 10 weeks", "rack again", (70, 70)),
    ("set racking to every 10 weeks", "rack again", (70, 70)),
    ("remind me every 60 days to rack", "rack again", (60, 60)),
    ("top up every 3 weeks", "top up glass", (21, 21)),
    ("top up the barrel every two weeks", "top up barrel", (14, 14)),
    ("remind me to check the airlock every 10 days", "airlock", (10, 10)),
    ("tell me to check so2 every 4-6 weeks", "check sulfite", (28, 42)),
    ("we taste monthly", "taste", (30, 30)),
    ("taste once a month", "taste", (30, 30)),
    ("punch down daily", "punch down", (1, 1)),
)


@pytest.mark.parametrize(("line", "key", "days"), SET, ids=[row[0] for row in SET])
def test_sets_days(line: str, key: str, days: tuple[int, int]) -> None:
    changes = read_intervals(line, {"airlock": (5, 5)})
    assert isinstance(changes, dict)
    assert changes["intervals"][key] == days
    if key != "airlock":
        assert changes["intervals"]["airlock"] == (5, 5)  # what was set before stays


@pytest.mark.parametrize(
    "line",
    [
        "racked batch 1",
        "rack batch 1 in 60 days",
        "remind me to rack batch 3 next week",
        "buy corks every year",
        "it rains every day",
        "punched down twice, every time a thick cap",
        "tasted every bottle",
        "rack",
        "",
        "every 60 days",
        "x" * 5000 + " every day",
    ],
)
def test_sets_nothing(line: str) -> None:
    assert read_intervals(line, {}) is None


def test_the_usual_days_come_back() -> None:
    own = {"rack again": (60, 60), "airlock": (5, 5)}
    assert read_intervals("use the usual intervals", own) == {"intervals": {}}
    assert read_intervals("use the usual racking intervals", own) == {"intervals": {"airlock": (5, 5)}}
    assert read_intervals("go back to the usual days for airlocks", own) == {"intervals": {"rack again": (60, 60)}}


@pytest.mark.parametrize("line", ["rack every 0 days", "rack every 90 to 60 days", "rack every 900 years"])
def test_days_that_cannot_be(line: str) -> None:
    said = read_intervals(line, {})
    assert isinstance(said, str)
    assert "1 to 3650" in said


def test_every_name_is_of_a_known_interval() -> None:
    assert {key for keys in OWN_DAYS.values() for key in keys} <= INTERVALS.keys()


@pytest.fixture
def assistant(tmp_path: Path) -> Iterator[Assistant]:
    with Journal.open(tmp_path / "journal.db") as journal:
        assistant = Assistant(journal)
        for day, text in (
            ("2024-08-01", "started batch 1, 20 L of riesling juice in demijohn 1, SG 1.080"),
            ("2024-08-02", "pitched batch 1"),
            ("2024-08-25", "batch 1 SG 0.994, fermentation finished"),
            ("2024-10-01", "racked batch 1 to demijohn 2"),
        ):
            assistant.turn(text, date.fromisoformat(day))
        yield assistant


def racking(assistant: Assistant) -> list[str]:
    return [d.reason for d in due(assistant.journal, TODAY) if d.what == "rack"]


def test_care_goes_by_the_own_days_until_they_are_undone(assistant: Assistant) -> None:
    assert racking(assistant) == ["50 days since the last racking; usual is 42 to 84"]
    assert "rack every 60 days" in assistant.turn("remind me to rack every 60 days", TODAY).text
    assert racking(assistant) == []
    assert "not yet: 30 Nov 2024" in assistant.turn("when should I rack batch 1", TODAY).text
    assistant.turn("rack every 30 days", TODAY)
    assert racking(assistant) == ["50 days since the last racking; you set 30"]
    assert "overdue" in assistant.turn("should I rack batch 1?", TODAY).text
    assistant.turn("use the usual intervals", TODAY)
    assert racking(assistant) == ["50 days since the last racking; usual is 42 to 84"]


def test_own_days_survive_closing_the_journal(assistant: Assistant, tmp_path: Path) -> None:
    assistant.turn("check the airlock every 10 days", TODAY)
    with Journal.open(tmp_path / "journal.db") as again:
        assert tuple(again.settings.intervals["airlock"]) == (10, 10)
