"""Bad input to the command line: one clear line on standard error, the exit status, no traceback, a sound journal."""

import os
import signal
import subprocess
import sys
import time
from collections.abc import Sequence
from pathlib import Path

import pytest

from journalbot.journal.store import Journal

NOTE = '{"on": "2024-10-01", "text": "started batch 1, 6 gal of merlot juice"}\n'


def run(*words: str, input: bytes | None = None, **environment: str) -> "subprocess.CompletedProcess[bytes]":
    return subprocess.run(
        [sys.executable, "-m", "journalbot", *words],
        capture_output=True,
        input=input,
        timeout=60,
        env={**os.environ, **environment},
        check=False,
    )


def complaint(done: "subprocess.CompletedProcess[bytes]", status: int) -> str:
    """The one line on standard error."""
    said = done.stderr.decode()
    assert done.returncode == status, said
    assert len(said.splitlines()) == 1, said
    assert said.startswith("journalbot")
    assert "Traceback" not in said
    return said


@pytest.fixture
def journal(tmp_path: Path) -> Path:
    path = tmp_path / "journal.db"
    with Journal.open(path):
        pass
    return path


USAGE: list[tuple[Sequence[str], str]] = [
    (["note"], "TEXT"),
    (["ask"], "QUESTION"),
    (["import"], "FILE"),
    (["backup"], "FILE"),
    (["rack"], "rack"),
    (["note", "--on", "3/10", "racked it"], "2025-10-04"),
    (["note", "--on", "2025-02-30", "racked it"], "2025-02-30"),
    (["ask", "--today", "yesterday", "why?"], "2025-10-04"),
    (["--frob"], "--frob"),
    (["export", "--frob\x1b[2J"], "--frob␛[2J"),
]


@pytest.mark.parametrize(("words", "hint"), USAGE, ids=[" ".join(w) for w, _ in USAGE])
def test_a_wrong_command_line(journal: Path, words: Sequence[str], hint: str) -> None:
    assert hint in complaint(run("--journal", str(journal), *words), 2)


FILES: list[tuple[str, bytes, str]] = [
    ("not JSON", NOTE.encode() + b"{oops\n", "line 2"),
    ("no day", b'{"text": "racked it"}\n', '"on"'),
    ("a day that is none", b'{"on": "2024-13-01", "text": "x"}\n', "2024-13-01"),
    ("an unknown setting", b'{"settings": {"colour": "red"}}\n', "colour"),
    ("not UTF-8", NOTE.encode() + b'{"on": "2024-10-01", "text": "ros\xe9"}\n', "UTF-8"),
    (
        "a huge number",
        b'{"on": "2024-10-01", "text": "x", "entries": [{"kind": "press", "date": "2024", "batch": 1e999}]}\n',
        "line 1",
    ),
]


@pytest.mark.parametrize(("content", "hint"), [(c, h) for _, c, h in FILES], ids=[n for n, _, _ in FILES])
def test_a_notebook_that_cannot_be_read(journal: Path, tmp_path: Path, content: bytes, hint: str) -> None:
    notebook = tmp_path / "notes.jsonl"
    notebook.write_bytes(content)
    said = complaint(run("--journal", str(journal), "import", str(notebook)), 1)
    assert hint in said
    assert "notes.jsonl" in said
    with Journal.open(journal) as opened:
        assert opened.check() == []


def test_files_that_are_not_there_or_are_already(journal: Path, tmp_path: Path) -> None:
    assert "no such file" in complaint(run("--journal", str(journal), "import", str(tmp_path / "none.jsonl")), 1)
    assert "directory" in complaint(run("--journal", str(journal), "import", str(tmp_path)), 1)
    assert "exists already" in complaint(run("--journal", str(journal), "export", str(journal)), 1)
    assert "exists already" in complaint(run("--journal", str(journal), "backup", str(journal)), 1)
    assert "cannot be" in complaint(run("--journal", str(journal), "export", str(tmp_path / "no" / "x")), 1)
    with Journal.open(journal) as opened:
        assert opened.check() == []


def test_journals_that_are_none(tmp_path: Path) -> None:
    text = tmp_path / "letter.txt"
    text.write_text("Dear Maud,\n" * 100)
    assert "not a journal" in complaint(run("--journal", str(text), "note", "racked it"), 1)
    assert text.read_text().startswith("Dear Maud")
    assert "no journal" in complaint(run("--journal", str(tmp_path / "none.db"), "ask", "why?"), 1)
    assert not (tmp_path / "none.db").exists()
    assert "does not exist" in complaint(run("--journal", str(tmp_path / "no" / "x.db"), "note", "racked it"), 1)


def test_bytes_that_are_no_text(journal: Path) -> None:
    done = run("--journal", str(journal), input=b"ros\xe9 is at 1.010\nstarted batch 1, 6 gal of merlot juice\n")
    assert done.returncode == 1
    first, second = done.stdout.decode().splitlines()
    assert first.startswith("Not kept: ")
    assert second.startswith("Batch 1")


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="needs the device that is always full")
def test_output_that_cannot_be_written(journal: Path, tmp_path: Path) -> None:
    with open("/dev/full", "wb") as full:
        done = subprocess.run(
            [sys.executable, "-m", "journalbot", "--journal", str(journal), "export"],
            stdout=full,
            stderr=subprocess.PIPE,
            timeout=60,
            check=False,
        )
    assert done.returncode == 1
    assert len(done.stderr.splitlines()) == 1
    assert b"Traceback" not in done.stderr


def test_a_reader_that_leaves_early_is_no_fault(journal: Path) -> None:
    with Journal.open(journal) as opened:
        for n in range(3000):
            opened.add_note("2024-10-01", f"note {n} " + "x" * 100)
    with subprocess.Popen(
        [sys.executable, "-m", "journalbot", "--journal", str(journal), "export"],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
    ) as export:
        assert export.stdout is not None
        assert export.stderr is not None
        export.stdout.readline()
        export.stdout.close()
        assert export.stderr.read() == b""
    assert export.returncode == 1


def test_ctrl_c_in_an_import_keeps_the_journal_sound(journal: Path) -> None:
    command = [sys.executable, "-m", "journalbot", "--journal", str(journal), "import", "-", "--json"]
    with subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.PIPE) as running:
        assert running.stdin is not None
        assert running.stdout is not None
        assert running.stderr is not None
        for n in range(1000):
            running.stdin.write(b'{"on": "2024-10-01", "text": "note %d"}\n' % n)
        running.stdin.flush()
        running.stdout.readline()  # the first stride has been acknowledged
        time.sleep(0.05)
        running.send_signal(signal.SIGINT)
        shown, said = running.communicate(timeout=30)
    assert running.returncode == 130
    assert b"Traceback" not in said, said.decode()
    with Journal.open(journal) as opened:
        assert opened.check() == []
        assert opened.count_notes() >= shown.count(b"\n") + 1
