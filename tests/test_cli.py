"""The command line: what each command prints and leaves behind, its exit status, and what it does not import."""

import json
import os
import stat
import subprocess
import sys
from pathlib import Path

import pytest

from journalbot.cli import main
from journalbot.journal.store import Journal

HEAVY = ("sqlite_utils", "prompt_toolkit", "dateparser", "rapidfuzz")
NOTES = (
    '{"settings": {"units": "us", "day_first": false, "currency": "USD"}}',
    '{"on": "2024-10-01", "text": "started batch 1, 6 gal of merlot juice in bucket 1"}',
    '{"on": "2024-10-02", "text": "pitched 5 g K-17 into batch 1, 68F"}',
    '{"on": "2024-10-03", "text": "batch 1 pH 34"}',
    '{"on": "2024-10-04", "text": "what a lovely autumn we have"}',
)


@pytest.fixture
def notebook(tmp_path: Path) -> Path:
    path = tmp_path / "notebook.jsonl"
    path.write_text("\n".join(NOTES) + "\n", encoding="utf-8")
    return path


@pytest.fixture
def journal(tmp_path: Path) -> Path:
    return tmp_path / "journal.db"


def run(journal: Path, *words: str) -> int:
    return main(["--journal", str(journal), *words])


def lines(text: str) -> list[dict[str, object]]:
    return [json.loads(line) for line in text.splitlines()]


def python(*words: str, input: str | None = None) -> "subprocess.CompletedProcess[str]":
    return subprocess.run(
        [sys.executable, *words], capture_output=True, text=True, encoding="utf-8", input=input, timeout=60, check=False
    )


# ---- note, ask


def test_note_files_and_reads_back(journal: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(journal, "note", "started", "batch", "1,", "6 gal of merlot juice in bucket 1") == 0
    assert capsys.readouterr().out == "Batch 1, merlot juice: started with 6 gal of merlot juice in bucket 1.\n"


def test_note_as_json(journal: Path, capsys: pytest.CaptureFixture[str]) -> None:
    run(journal, "note", "started batch 1, 6 gal of merlot juice")
    capsys.readouterr()
    assert run(journal, "note", "--on", "2025-10-04", "--json", "batch 1 at 1.010, 68F") == 0
    (said,) = lines(capsys.readouterr().out)
    assert said == {
        "on": "2025-10-04",
        "text": "batch 1 at 1.010, 68F",
        "entries": [
            {"kind": "reading", "batch": 1, "date": "2025-10-04", "quantity": "sg", "value": 1.01, "unit": "SG"},
            {"kind": "reading", "batch": 1, "date": "2025-10-04", "quantity": "temperature", "value": 68, "unit": "F"},
        ],
    }


def test_a_note_that_must_be_asked_about(journal: Path, capsys: pytest.CaptureFixture[str]) -> None:
    run(journal, "note", "started batch 1, 6 gal of merlot juice")
    capsys.readouterr()
    run(journal, "note", "--json", "--on", "2025-10-04", "batch 1 pH 34")
    (said,) = lines(capsys.readouterr().out)
    assert (said["ask"], said["text"]) == ("value", "batch 1 pH 34")
    assert "entries" not in said


def test_a_correction_as_json_holds_what_it_took_back(journal: Path, capsys: pytest.CaptureFixture[str]) -> None:
    run(journal, "note", "started batch 1, 6 gal of merlot juice")
    run(journal, "note", "--on", "2025-10-04", "batch 1 at 0.996")
    capsys.readouterr()
    run(journal, "note", "--json", "--on", "2025-10-05", "make that 0.998")
    (said,) = lines(capsys.readouterr().out)
    assert [(e["value"], e["date"]) for e in said["entries"]] == [(0.998, "2025-10-04")]  # type: ignore[attr-defined]
    assert [e["value"] for e in said["withdrawn"]] == [0.996]  # type: ignore[attr-defined]


def test_ask_as_json_is_the_answer(notebook: Path, journal: Path, capsys: pytest.CaptureFixture[str]) -> None:
    run(journal, "import", str(notebook))
    capsys.readouterr()
    assert run(journal, "ask", "--today", "2024-10-06", "--json", "what yeast did I use for batch 1?") == 0
    (answer,) = lines(capsys.readouterr().out)
    assert {"question", "understood_as", "found", "answer", "notes"} <= set(answer)
    assert answer["found"] is True
    assert "K-17" in str(answer["answer"])
    assert answer["notes"] == [2]


def test_an_answer_that_says_no_is_no_error(notebook: Path, journal: Path, capsys: pytest.CaptureFixture[str]) -> None:
    run(journal, "import", str(notebook))
    capsys.readouterr()
    assert run(journal, "ask", "--json", "zzz qqq xxx?") == 0
    assert lines(capsys.readouterr().out)[0]["found"] is False


# ---- import, export, backup, reread


def test_import_prints_one_object_a_note_in_order(
    notebook: Path, journal: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(journal, "import", str(notebook), "--json") == 0
    said = lines(capsys.readouterr().out)
    assert [row["text"] for row in said] == [json.loads(n)["text"] for n in NOTES[1:]]
    assert [("entries" in row, row.get("ask")) for row in said] == [
        (True, None),
        (True, None),
        (False, "value"),
        (True, None),
    ]


def test_import_ends_with_what_needs_attention(
    notebook: Path, journal: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    run(journal, "import", str(notebook))
    said = capsys.readouterr().out
    assert said.startswith("4 notes filed")
    assert "1 note waits for an answer" in said
    assert "note 3, 3 Oct 2024: batch 1 pH 34" in said
    assert "note 4, 4 Oct 2024: what a lovely autumn" in said


def test_import_again_files_nothing_twice(notebook: Path, journal: Path, capsys: pytest.CaptureFixture[str]) -> None:
    run(journal, "import", str(notebook))
    run(journal, "import", str(notebook))
    assert "4 notes of the notebook were in the journal already" in capsys.readouterr().out
    with Journal.open(journal) as opened:
        assert opened.count_notes() == 4


def test_export_and_import_give_the_same_journal(
    notebook: Path, journal: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    run(journal, "import", str(notebook))
    run(journal, "note", "--on", "2024-10-05", "batch 1 at 0.996")
    run(journal, "note", "--on", "2024-10-05", "make that 0.998")
    first, second = tmp_path / "first.jsonl", tmp_path / "second.jsonl"
    assert run(journal, "export", str(first)) == 0
    assert stat.S_IMODE(first.stat().st_mode) == 0o600
    assert run(tmp_path / "other.db", "import", str(first)) == 0
    assert run(tmp_path / "other.db", "export", str(second)) == 0
    assert first.read_bytes() == second.read_bytes()
    capsys.readouterr()
    run(journal, "export")
    assert capsys.readouterr().out == first.read_text(encoding="utf-8")


def test_backup_is_a_journal(notebook: Path, journal: Path, tmp_path: Path) -> None:
    run(journal, "import", str(notebook))
    assert run(journal, "backup", str(tmp_path / "copy.db")) == 0
    with Journal.open(tmp_path / "copy.db", create=False) as copy:
        assert copy.count_notes() == 4


def test_reread_tells_what_changed(notebook: Path, journal: Path, capsys: pytest.CaptureFixture[str]) -> None:
    run(journal, "import", str(notebook))
    capsys.readouterr()
    assert run(journal, "reread") == 0
    assert capsys.readouterr().out.startswith("4 notes read again; 0 read differently now")
    assert run(journal, "reread", "--json") == 0
    assert capsys.readouterr().out == ""


def test_the_environment_names_the_journal(
    journal: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setenv("JOURNALBOT_JOURNAL", str(journal))
    assert main(["note", "started batch 1, 6 gal of merlot juice"]) == 0
    assert journal.exists()


# ---- talk through a pipe


def test_a_pipe_gets_one_reply_a_line_and_nothing_else(journal: Path) -> None:
    told = "started batch 1, 6 gal of merlot juice in bucket 1\n\nbatch 1 at 1.090\nundo\nbye\nnot read\n"
    done = python("-m", "journalbot", "--journal", str(journal), input=told)
    assert (done.returncode, done.stderr) == (0, "")
    assert [line.split(":")[0] for line in done.stdout.splitlines()] == [
        "Batch 1, merlot juice",
        "Batch 1, merlot juice",
        "Undone",
    ]
    assert "\x1b" not in done.stdout


def test_each_reply_is_flushed_once_its_turn_is_durable(journal: Path) -> None:
    command = [sys.executable, "-m", "journalbot", "--journal", str(journal)]
    with subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, bufsize=1) as talk:
        assert talk.stdin is not None
        assert talk.stdout is not None
        for text in ("started batch 1, 6 gal of merlot juice", "batch 1 at 1.090"):
            talk.stdin.write(text + "\n")
            talk.stdin.flush()
            assert talk.stdout.readline().startswith("Batch 1")
            with Journal.open(journal) as seen:  # another reader sees it as soon as it is acknowledged
                last = seen.last_note()
                assert last is not None
                assert last.text == text
        talk.kill()
    with Journal.open(journal) as kept:
        assert kept.count_notes() == 2


# ---- the demo


def test_the_demo_opens_on_a_throw_away_copy(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    environment = {**os.environ, "TMPDIR": str(tmp_path), "XDG_DATA_HOME": str(tmp_path / "data")}
    done = subprocess.run(
        [sys.executable, "-m", "journalbot", "demo"],
        input="what is waiting?\nracked batch 1\nbye\n",
        text=True,
        capture_output=True,
        env=environment,
        timeout=60,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    assert len(done.stdout.splitlines()) >= 2
    assert list(tmp_path.iterdir()) == []


# ---- what is imported

QUIET = [
    ("import journalbot", ""),
    ("import journalbot.cli", ""),
    ("help", "from journalbot.cli import main\ntry: main(['--help'])\nexcept SystemExit: pass"),
]


@pytest.mark.parametrize("code", [code or name for name, code in QUIET], ids=[name for name, _ in QUIET])
def test_starting_loads_none_of_the_libraries(code: str) -> None:
    done = python("-c", f"import sys\n{code}\nprint([m for m in {HEAVY!r} if m in sys.modules])")
    assert done.stdout.splitlines()[-1] == "[]"


def test_asking_loads_none_of_the_libraries(notebook: Path, journal: Path) -> None:
    run(journal, "import", str(notebook))
    code = (
        f"import sys\nfrom journalbot.cli import main\n"
        f"main(['--journal', {str(journal)!r}, 'ask', 'what yeast did I use for batch 1?'])\n"
        f"print([m for m in {HEAVY!r} if m in sys.modules])"
    )
    done = python("-c", code)
    assert done.stdout.splitlines()[-1] == "[]", done.stdout + done.stderr
