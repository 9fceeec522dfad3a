"""Old notebooks kept as plain text: the notes that a page holds, each with its day."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from journalbot.assistant import Assistant
from journalbot.errors import ImportFileError
from journalbot.journal.store import Journal
from journalbot.notes.notebooks import read_notebook

Notes = list[tuple[str, str]]

# What a page looks like, and its notes.
PAGES: dict[str, tuple[str, Notes]] = {
    "a day on a line of its own": (
        "2024-10-03\nracked batch 1\n2024-10-05\nSG 1.010",
        [("2024-10-03", "racked batch 1"), ("2024-10-05", "SG 1.010")],
    ),
    "a day that opens the line": (
        "2024-10-03 racked batch 1\n2024-10-05: SG 1.010",
        [("2024-10-03", "racked batch 1"), ("2024-10-05", "SG 1.010")],
    ),
    "a blank line parts two notes of one day": (
        "2024-10-03\nracked batch 1\n\nSG 1.010",
        [("2024-10-03", "racked batch 1"), ("2024-10-03", "SG 1.010")],
    ),
    "a line goes on with the one above": (
        "2024-10-03\nracked batch 1\ninto carboy 2",
        [("2024-10-03", "racked batch 1\ninto carboy 2")],
    ),
    "months in letters": (
        "October 3, 2024: racked\nOct 5 2024 - SG 1.010\n7 November 2024\ntopped up",
        [("2024-10-03", "racked"), ("2024-10-05", "SG 1.010"), ("2024-11-07", "topped up")],
    ),
    "the year as a heading": (
        "2024\nOct 3: racked\nOct 5: SG 1.010",
        [("2024-10-03", "racked"), ("2024-10-05", "SG 1.010")],
    ),
    "the month as a heading": (
        "October 2024\n3rd - racked\n5th - SG 1.010",
        [("2024-10-03", "racked"), ("2024-10-05", "SG 1.010")],
    ),
    "the year goes on where months would run backwards": (
        "Nov 30, 2024: racked\nDec 20: topped up\nJan 4: SG 0.998",
        [("2024-11-30", "racked"), ("2024-12-20", "topped up"), ("2025-01-04", "SG 0.998")],
    ),
    "weekdays": (
        "Thursday, October 3, 2024\nracked\nSat Oct 5: SG 1.010",
        [("2024-10-03", "racked"), ("2024-10-05", "SG 1.010")],
    ),
    "figures": ("10/3/2024 racked\n10/5/2024 SG 1.010", [("2024-10-03", "racked"), ("2024-10-05", "SG 1.010")]),
    "headings marked": (
        "# 2024-10-03\nracked\n== 2024-10-05 ==\nSG 1.010",
        [("2024-10-03", "racked"), ("2024-10-05", "SG 1.010")],
    ),
    "a batch as a heading": (
        "Batch 3:\n2024-10-03\nracked\n2024-10-05\nSG 1.010",
        [("2024-10-03", "Batch 3: racked"), ("2024-10-05", "Batch 3: SG 1.010")],
    ),
    "bullets under a day": ("2024-10-03\n- racked\n- SG 1.010", [("2024-10-03", "- racked\n- SG 1.010")]),
    "carriage returns and a mark of byte order": ("\ufeff2024-10-03\r\nracked\r\n", [("2024-10-03", "racked")]),
    "a leap day": ("2024\nFeb 29: racked", [("2024-02-29", "racked")]),
    "nothing": ("\n\n", []),
}  # fmt: skip


@pytest.mark.parametrize(("page", "notes"), PAGES.values(), ids=list(PAGES))
def test_pages(page: str, notes: Notes) -> None:
    assert list(read_notebook(page.split("\n"))) == notes


def test_days_first() -> None:
    page = ["3/10/2024 racked", "5.10.2024: SG 1.010"]
    assert list(read_notebook(page, day_first=True)) == [("2024-10-03", "racked"), ("2024-10-05", "SG 1.010")]


# What cannot be dated, and what the message must name: the line, and what is amiss.
REFUSED: list[tuple[str, str]] = [
    ("racked batch 1\nSG 1.010", "line 1: no date"),
    ("Oct 3: racked", "line 1: which year"),
    ("2024\nFeb 30: racked", "line 2: the calendar has no"),
    ("February 2024\n30th - racked", "line 2: that month has no day 30"),
]


@pytest.mark.parametrize(("page", "message"), REFUSED)
def test_refused(page: str, message: str) -> None:
    with pytest.raises(ImportFileError, match=message):
        list(read_notebook(page.split("\n")))


@pytest.fixture
def journal(tmp_path: Path) -> Iterator[Journal]:
    with Journal.open(tmp_path / "journal.db") as opened:
        yield opened


def test_a_notebook_is_filed(journal: Journal) -> None:
    page = "2024\n\nOct 3: started batch 1, 6 gal of merlot juice in bucket 1\nOct 5: SG 1.080, pitched 5 g K-17\n"
    replies = list(Assistant(journal).import_lines(page.splitlines()))
    assert [(r.note.on, r.note.text) for r in replies if r.note] == [
        ("2024-10-03", "started batch 1, 6 gal of merlot juice in bucket 1"),
        ("2024-10-05", "SG 1.080, pitched 5 g K-17"),
    ]
    assert sorted((e.date, e.kind, e.batch) for e in journal.entries()) == [
        ("2024-10-03", "start", 1),
        ("2024-10-05", "pitch", 1),
        ("2024-10-05", "reading", 1),
    ]
    assert journal.check() == []


def test_what_was_filed_before_a_line_that_cannot_be_dated_is_kept(journal: Journal) -> None:
    with pytest.raises(ImportFileError, match="line 3"):
        list(Assistant(journal).import_lines(["2024", "Oct 3: racked", "Feb 30: topped up"]))
    assert journal.check() == []
