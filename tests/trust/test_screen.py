"""Hostile text, shown: whatever is stored, what reaches a terminal holds nothing that a terminal obeys."""

import datetime
import json
import unicodedata
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from journalbot.assistant import Assistant
from journalbot.cli import main
from journalbot.journal.store import Journal
from journalbot.screen import escaped, harmless, json_line, one_line

TODAY = datetime.date(2025, 10, 4)
HOSTILE = [
    "\x1b[2J\x1b[H", "\x1b]0;owned\x07", "\x1b[31mred\x1b[0m", "\x9b31m", "\x1bP$q\x1b\\", "\x07\x08\x7f", "a\rb",
    "\x00", "\x0b\x0c", "\u202egnilaer\u202c", "\u2066x\u2069", "a\u2028b", "\ufeffx", "\x1b]8;;http://x\x07link\x1b]8;;\x07",
    "\x1b[6n", "\x85",
]  # fmt: skip


def commands(text: str) -> list[str]:
    """The characters that a terminal could obey, or that change the direction of writing."""
    return [
        c
        for c in text
        if c != "\n"
        and (
            unicodedata.category(c) == "Cc"
            or unicodedata.bidirectional(c) in ("LRE", "RLE", "LRO", "RLO", "PDF", "LRI", "RLI", "FSI", "PDI")
        )
    ]


@given(st.text(st.characters(exclude_categories=["Cs"])))
def test_harmless_text_holds_no_command(text: str) -> None:
    assert commands(harmless(text)) == []
    assert len(harmless(text)) == len(text)


@given(st.text(st.characters(exclude_categories=["Cc", "Cf", "Zl", "Zp", "Cs"])))
def test_harmless_leaves_other_text_alone(text: str) -> None:
    assert harmless(text) == text


@given(st.text(), st.integers(min_value=5, max_value=90))
def test_one_line_is_one_line_of_its_width(text: str, width: int) -> None:
    line = one_line(text, width)
    assert len(line) <= width
    assert "\n" not in line


@given(st.dictionaries(st.text(), st.text(st.characters(exclude_categories=["Cs"]))))
def test_json_says_the_same_and_holds_no_command(data: dict[str, str]) -> None:
    data = {k.encode(errors="replace").decode(): v for k, v in data.items()}
    assert commands(json_line(data)) == []
    assert json.loads(json_line(data)) == data
    assert escaped(json_line(data)) == json_line(data)


@pytest.mark.parametrize("text", HOSTILE, ids=ascii)
@pytest.mark.parametrize("command", ["note", "ask", "json", "export", "import"])
def test_no_command_shows_hostile_text_raw(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], text: str, command: str
) -> None:
    journal, notebook = tmp_path / "journal.db", tmp_path / "notes.jsonl"
    row = {"on": "2025-10-04", "text": f"started batch 1, call it {text}, 6 gal of merlot juice in bucket {text}"}
    notebook.write_text(json.dumps(row) + "\n", encoding="utf-8")
    assert main(["--journal", str(journal), "import", str(notebook)]) == 0
    words = {
        "note": ["note", "--on", "2025-10-04", f"batch 1 smells of {text}"],
        "ask": ["ask", f"what yeast did I use for {text}?"],
        "json": ["note", "--json", f"batch 1 smells of {text}"],
        "export": ["export"],
        "import": ["import", str(notebook)],
    }[command]
    assert main(["--journal", str(journal), *words]) == 0
    shown = capsys.readouterr()
    assert commands(shown.out) == []
    assert commands(shown.err) == []


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(text=st.text(st.characters(exclude_categories=["Cs"]), min_size=1, max_size=60))
def test_any_line_whatever_is_a_turn_that_loses_nothing(tmp_path: Path, text: str) -> None:
    with Journal.open(tmp_path / "journal.db") as journal:
        before = journal.count_notes()
        reply = Assistant(journal).turn(text, TODAY)
        if reply.note and journal.count_notes() > before:
            last = journal.last_note()
            assert last is not None
            assert last.text == text


LARGE = {
    "100 kB of words": "racked batch 1 to carboy 2. " * 3700,
    "100 kB without a space": "x" * 100_000,
    "100 kB of figures": "1.010 " * 17_000,
}


@pytest.mark.parametrize("text", LARGE.values(), ids=LARGE.keys())
def test_a_very_long_note_is_kept_whole_and_told_in_short(tmp_path: Path, text: str) -> None:
    with Journal.open(tmp_path / "journal.db") as journal:
        assistant = Assistant(journal)
        assistant.turn("started batch 1, 6 gal of merlot juice", TODAY)
        reply = assistant.turn(text, TODAY)
        note = journal.note(2)
        assert note is not None
        assert note.text == text
        assert len(reply.text) < 2000
