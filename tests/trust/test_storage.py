"""Faults of the machine and of other programs: nothing acknowledged is lost, each error is one clear line."""

import multiprocessing
import os
import random
import shutil
import signal
import sqlite3
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from sqlite_utils import Migrations

from journalbot.errors import JournalError
from journalbot.journal import file as journal_file
from journalbot.journal import schema
from journalbot.journal.store import Journal
from journalbot.model import Entry

ENTRY = Entry("rack", 1, "2024-10-01", {"to": "carboy 1"})


def _jot_many(path: Path, name: str, count: int) -> None:
    with Journal.open(path) as journal:
        for i in range(count):
            with journal.turn():
                note = journal.add_note("2024-10-01", f"{name} {i}").number
                journal.file(note, [ENTRY, Entry("drink", 1, "2024-10-01", {"count": 1})])


def test_two_processes_writing_at_once_lose_nothing(tmp_path: Path) -> None:
    path = tmp_path / "j.db"  # not there yet: they make it at the same time, too
    context = multiprocessing.get_context("spawn")
    workers = [context.Process(target=_jot_many, args=(path, name, 100)) for name in ("ada", "bo")]
    for worker in workers:
        worker.start()
    for worker in workers:
        worker.join()
    assert [w.exitcode for w in workers] == [0, 0]
    with Journal.open(path) as journal:
        texts = [n.text for n in journal.notes()]
        assert len(texts) == 200
        for name in ("ada", "bo"):
            assert [t for t in texts if t.startswith(name)] == [f"{name} {i}" for i in range(100)]
        assert journal.cellar().batches[1].taken == 200
        assert journal.check() == []


WRITER = """
import sys
from pathlib import Path
from journalbot.journal.store import Journal
from journalbot.model import Entry
with Journal.open(Path(sys.argv[1])) as journal:
    while True:
        with journal.turn():
            note = journal.add_note("2024-10-01", "racked " * 40)
            journal.file(note.number, [Entry("drink", 1, "2024-10-01", {"count": 1})])
        print(note.number, flush=True)
"""


def test_killed_at_any_moment_no_acknowledged_note_is_lost(tmp_path: Path) -> None:
    path = tmp_path / "j.db"
    rnd = random.Random(7)
    acknowledged = 0
    for round_ in range(12):
        with subprocess.Popen([sys.executable, "-c", WRITER, str(path)], stdout=subprocess.PIPE, text=True) as child:
            assert child.stdout
            if round_ % 3:  # the other rounds may strike while the file is being made or opened
                acknowledged = int(child.stdout.readline())
            time.sleep(rnd.uniform(0, 0.15))
            os.kill(child.pid, signal.SIGKILL)
            for line in child.stdout:
                if line.endswith("\n"):
                    acknowledged = int(line)
        with Journal.open(path) as journal:
            count = journal.count_notes()
            assert count >= acknowledged
            assert journal.sql("PRAGMA integrity_check").fetchone() == ("ok",)
            assert len(journal.entries(kinds=["drink"])) == count  # a note and its entries come together or not at all
    assert acknowledged > 20
    with Journal.open(path) as journal:
        assert journal.check() == []


def test_killed_while_the_journal_is_made_it_can_be_made_again(tmp_path: Path) -> None:
    rnd = random.Random(3)
    for round_ in range(8):
        path = tmp_path / f"{round_}.db"
        with subprocess.Popen([sys.executable, "-c", WRITER, str(path)], stdout=subprocess.DEVNULL) as child:
            until = time.monotonic() + 5
            while not path.exists() and time.monotonic() < until:
                time.sleep(0.0005)
            time.sleep(rnd.uniform(0, 0.2))  # importing what makes the tables takes most of that
            os.kill(child.pid, signal.SIGKILL)
        _jot_many(path, "after", 1)
        with Journal.open(path) as journal:
            assert journal.check() == []


LIMITED = """
import resource, sys
from pathlib import Path
from journalbot.errors import JournalError
from journalbot.journal.store import Journal
path, limit = Path(sys.argv[1]), int(sys.argv[2])
resource.setrlimit(resource.RLIMIT_FSIZE, (limit, limit))
kept = 0
try:
    with Journal.open(path) as journal:
        while True:
            journal.add_note("2024-10-01", "racked " * 2000)
            kept += 1
except JournalError as error:
    print(kept)
    print(error)
"""


@pytest.mark.parametrize("limit", [0, 20_000, 300_000])
def test_a_full_disk_is_told_and_what_was_acknowledged_is_kept(tmp_path: Path, limit: int) -> None:
    # A limit on the size of a file fails a write as a full disk does, for the superuser too.
    path = tmp_path / "j.db"
    done = subprocess.run(
        [sys.executable, "-c", LIMITED, str(path), str(limit)], capture_output=True, text=True, check=True
    )
    kept, said = done.stdout.splitlines()
    assert "disk" in said
    assert str(path) in said
    assert (int(kept) > 0) == (limit == 300_000)
    with Journal.open(path) as journal:
        assert journal.count_notes() == int(kept)
        assert journal.check() == []
        journal.add_note("2024-10-02", "there is room again")


def test_a_database_at_its_largest_is_told_as_a_full_disk(tmp_path: Path) -> None:
    with Journal.open(tmp_path / "j.db") as journal:
        pages = journal.sql("PRAGMA page_count").fetchone()[0]
        journal.sql(f"PRAGMA max_page_count = {pages + 2}")
        with pytest.raises(JournalError, match="disk is full"):  # noqa: PT012
            for _ in range(9):
                journal.add_note("2024-10-01", "racked " * 2000)
        journal.sql("PRAGMA max_page_count = 1000000")
        journal.add_note("2024-10-01", "after that")
        assert journal.check() == []


def _one_line(error: pytest.ExceptionInfo[JournalError], path: Path) -> None:
    assert "\n" not in str(error.value)
    assert str(path) in str(error.value)


def test_a_folder_that_is_not_there(tmp_path: Path) -> None:
    with pytest.raises(JournalError, match=r"folder .* does not exist") as error:
        Journal.open(tmp_path / "nowhere" / "j.db")
    _one_line(error, tmp_path)


def test_a_journal_that_is_not_there_and_is_not_to_be_made(tmp_path: Path) -> None:
    with pytest.raises(JournalError, match="no journal at") as error:
        Journal.open(tmp_path / "j.db", create=False)
    _one_line(error, tmp_path)
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize(
    "path", ["/proc/journal.db", "/proc/self/status", "{}/file/j.db", "{}", "{}/nul\0.db", "{}/" + "x" * 300]
)
def test_places_that_hold_no_journal(tmp_path: Path, path: str) -> None:
    (tmp_path / "file").write_text("in the way")
    with pytest.raises(JournalError) as error:
        Journal.open(Path(path.format(tmp_path)))
    assert "\n" not in str(error.value)


def test_a_journal_that_may_not_be_written_is_told_and_still_read(tmp_path: Path) -> None:
    # Whoever runs the tests may be the superuser, to whom no file's mode says no: so SQLite is made to.
    with Journal.open(tmp_path / "j.db") as journal:
        journal.file(journal.add_note("2024-10-01", "racked").number, [ENTRY])
        journal.sql("PRAGMA query_only = ON")
        with pytest.raises(JournalError, match="cannot be written"):
            journal.add_note("2024-10-02", "lost")
        assert journal.count_notes() == 1
        assert journal.cellar().batches[1].vessels == {"carboy 1": "2024-10-01"}


@contextmanager
def as_nobody() -> Iterator[None]:
    """Without the superuser's rights, to whom no file's mode says no."""
    superuser = os.geteuid() == 0
    if superuser:
        os.seteuid(65534)
    try:
        yield
    finally:
        if superuser:
            os.seteuid(0)


@pytest.fixture
def locked() -> Iterator[Path]:
    """A folder with a journal in it that anyone may read and nobody write."""
    folder = Path(tempfile.mkdtemp(prefix="cellar"))
    with Journal.open(folder / "j.db") as journal:
        journal.add_note("2024-10-01", "racked")
    (folder / "j.db").chmod(0o444)
    folder.chmod(0o555)
    yield folder
    folder.chmod(0o755)
    shutil.rmtree(folder)


@pytest.mark.skipif(not hasattr(os, "geteuid"), reason="only where files have an owner and a mode")
@pytest.mark.parametrize("name", ["new.db", "j.db"])
def test_a_place_that_may_not_be_written(locked: Path, name: str) -> None:
    before = (locked / "j.db").read_bytes()
    with as_nobody(), pytest.raises(JournalError) as error, Journal.open(locked / name) as journal:
        journal.add_note("2024-10-02", "lost")
    _one_line(error, locked)
    assert (locked / "j.db").read_bytes() == before
    assert [p.name for p in locked.iterdir()] == ["j.db"]


@pytest.mark.parametrize("content", [b"my wine notes\n" * 200, b"SQLite format 3\0" + b"\xff" * 4096, b"x"])
def test_a_file_that_is_not_a_journal_is_left_as_it_was(tmp_path: Path, content: bytes) -> None:
    path = tmp_path / "notes.txt"
    path.write_bytes(content)
    with pytest.raises(JournalError, match="not a journal") as error:
        Journal.open(path)
    _one_line(error, path)
    assert path.read_bytes() == content
    assert list(tmp_path.iterdir()) == [path]


def test_another_programs_database_is_left_as_it_was(tmp_path: Path) -> None:
    path = tmp_path / "other.db"
    with sqlite3.connect(path) as conn:
        conn.execute("CREATE TABLE notes (text)")
    conn.close()
    before = path.read_bytes()
    with pytest.raises(JournalError, match="not a journal"):
        Journal.open(path)
    assert path.read_bytes() == before


def test_a_newer_journal_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "j.db"
    with Journal.open(path) as journal:
        journal.sql(f"PRAGMA user_version = {schema.VERSION + 1}")
    with pytest.raises(JournalError, match="newer") as error:
        Journal.open(path)
    _one_line(error, path)


def test_an_older_journal_is_copied_and_then_upgraded(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "j.db"
    with Journal.open(path) as journal:
        journal.file(journal.add_note("2024-10-01", "racked").number, [ENTRY])

    older = schema._upgrades

    def newer() -> Migrations:
        upgrades = older()
        upgrades(name="9998 a cellar book")(lambda db: db.execute("CREATE TABLE cellar_book (page INTEGER)"))
        return upgrades

    monkeypatch.setattr(schema, "_upgrades", newer)
    before = schema.VERSION
    monkeypatch.setattr(schema, "VERSION", before + 1)
    with Journal.open(path) as journal:
        assert journal.sql("PRAGMA user_version").fetchone() == (before + 1,)
        assert journal.sql("SELECT count(*) FROM cellar_book").fetchone() == (0,)
        assert journal.count_notes() == 1
        assert journal.check() == []
    copy = tmp_path / f"j.db.format-{before}.backup"
    assert copy.stat().st_mode & 0o777 == 0o600
    monkeypatch.undo()
    with Journal.open(copy) as old:
        assert old.count_notes() == 1


def test_an_upgrade_that_fails_changes_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "j.db"
    with Journal.open(path) as journal:
        journal.add_note("2024-10-01", "racked")
    older = schema._upgrades

    def broken() -> Migrations:
        upgrades = older()
        upgrades(name="9998 fine")(lambda db: db.execute("CREATE TABLE cellar_book (page INTEGER)"))
        upgrades(name="9999 broken")(lambda db: db.execute("CREATE TABLE notes (x)"))
        return upgrades

    monkeypatch.setattr(schema, "_upgrades", broken)
    monkeypatch.setattr(schema, "VERSION", schema.VERSION + 2)
    for _ in range(2):
        with pytest.raises(JournalError):
            Journal.open(path)
    monkeypatch.undo()
    with Journal.open(path) as journal:
        assert journal.count_notes() == 1
        assert journal.sql("SELECT name FROM sqlite_schema WHERE name = 'cellar_book'").fetchone() is None
    assert len(list(tmp_path.glob("*.backup"))) == 2  # each taken before a try


def test_a_journal_in_use_for_long_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(journal_file, "_PATIENCE", 0.2)
    with Journal.open(tmp_path / "j.db") as one, Journal.open(tmp_path / "j.db") as other, one.turn():
        one.add_note("2024-10-01", "first")
        with pytest.raises(JournalError, match="in use by another program"):
            other.add_note("2024-10-01", "second")
        assert other.count_notes() == 0


def test_a_damaged_journal_is_told(tmp_path: Path) -> None:
    path = tmp_path / "j.db"
    with Journal.open(path) as journal:
        for i in range(200):
            journal.add_note("2024-10-01", f"racked {i} " * 20)
    content = bytearray(path.read_bytes())
    content[4096 * 2 :] = b"\x5a" * (len(content) - 4096 * 2)
    path.write_bytes(content)
    with pytest.raises(JournalError) as error, Journal.open(path) as journal:  # noqa: PT012
        list(journal.notes())
        journal.add_note("2024-10-02", "more")
    _one_line(error, path)


@pytest.mark.parametrize(
    "text",
    [
        "nul \0 in the middle",
        "x" * 100_000,
        "🍷" * 1000,
        "'\"`; DROP TABLE entries; --",
        "\x1b]0;title\x07\x1b[31mred",
        "\u202e\u200b\ufeff",
        "%s {} $1 \\",
        "\r\n\t",
        "NULL",
    ],
)
def test_hostile_text_is_kept_as_it_is(tmp_path: Path, text: str) -> None:
    with Journal.open(tmp_path / "j.db") as journal:
        note = journal.add_note("2024-10-01", text)
        fields = {"text": text, "to": text}
        journal.file(
            note.number,
            [
                Entry("remark", None, "2024-10-01", fields),
                Entry("rack", 1, "2024-10-01", {"to": text}),
                Entry("pitch", 1, "2024-10-01", {"yeast": text}),
            ],
        )
        journal.search(text)
        journal.search_terms(text)
        assert journal.note(1) == note
        assert journal.entries(kinds=["remark"])[0].fields == fields
    with Journal.open(tmp_path / "j.db") as journal:
        assert journal.cellar().yeasts == ([text.strip()] if text.strip() else [])
        assert journal.check() == []
