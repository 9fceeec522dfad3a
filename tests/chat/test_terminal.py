"""The real chat in a pseudo-terminal: a process of its own, typed to key by key, read off the screen."""

import os
import re
import select
import signal
import stat
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

pty = pytest.importorskip("pty", reason="pseudo-terminals are a Unix thing")

PATIENCE = 20.0  # seconds to wait for a reply
# Control sequences as in ECMA-48: CSI ... final byte, OSC ... BEL, and two-byte escapes.
_CONTROL = re.compile(r"\x1b\[[0-?]*[ -/]*[@-~]|\x1b\][^\x07]*\x07|\x1b[@-_]|[\x00-\x08\x0b-\x1f]")


class Terminal:
    """A person at a terminal: types lines, waits for words to appear."""

    def __init__(self, *command: str) -> None:
        self.master, slave = pty.openpty()
        environment = {**os.environ, "TERM": "xterm", "PROMPT_TOOLKIT_NO_CPR": "1", "COLUMNS": "200", "LINES": "40"}
        self.process = subprocess.Popen(
            command, stdin=slave, stdout=slave, stderr=slave, env=environment, close_fds=True, start_new_session=True
        )
        os.close(slave)
        self.raw = ""
        self._seen = 0

    def type(self, keys: str) -> None:
        os.write(self.master, keys.encode())

    def see(self, words: str) -> str:
        """Wait for words on the screen; what has been shown since the last wait, up to them."""
        until = time.monotonic() + PATIENCE
        while words not in (shown := _CONTROL.sub("", self.raw)[self._seen :]):
            if time.monotonic() > until or not self._read(0.2):
                pytest.fail(f"{words!r} did not appear; shown since: {shown!r}")
        end = shown.index(words) + len(words)
        self._seen += end
        return shown[:end]

    def leave(self) -> None:
        """Ctrl-D at the next prompt."""
        self.see(">")
        self.type("\x04")
        self.see("Goodbye")

    def ends(self) -> int:
        """Wait for the process to end by itself; its exit status."""
        until = time.monotonic() + PATIENCE
        while self.process.poll() is None and time.monotonic() < until:
            self._read(0.05)
        return self.process.wait(timeout=1)

    def _read(self, seconds: float) -> bool:
        if select.select([self.master], [], [], seconds)[0]:
            try:
                got = os.read(self.master, 65536)
            except OSError:  # the other side is gone
                return False
            self.raw += got.decode(errors="replace")
            return bool(got)
        return self.process.poll() is None

    def close(self) -> None:
        if self.process.poll() is None:
            self.process.send_signal(signal.SIGKILL)
            self.process.wait()
        os.close(self.master)


@pytest.fixture
def terminal(tmp_path: Path) -> Iterator[Terminal]:
    terminal = Terminal(sys.executable, "-m", "journalbot", "--journal", str(tmp_path / "journal.db"))
    yield terminal
    terminal.close()


def test_a_talk_from_the_first_note_to_leaving(terminal: Terminal, tmp_path: Path) -> None:
    terminal.see("An empty journal")
    terminal.see(">")
    terminal.type("started batch 1, 6 gal of merlot juice in bucket 1\r")
    terminal.see("Batch 1, merlot juice: started with 6 gal")
    terminal.type("pitched 5 g K-17 into batch 1, SG 1.090\r")
    terminal.see("gravity 1.090")
    terminal.type("what yeast did I use for batch 1?\r")
    assert "K-17" in terminal.see("note 2")
    terminal.type("batch 1 at 0.996\r")
    terminal.see("gravity 0.996")
    terminal.type("make that 0.998\r")
    terminal.see("gravity 0.996 → gravity 0.998")
    terminal.type("undo\r")
    terminal.see("Stands again: Batch 1, merlot juice: gravity 0.996")
    terminal.leave()
    assert terminal.ends() == 0
    history = tmp_path / "journal.db.history"
    assert stat.S_IMODE(history.stat().st_mode) == 0o600
    assert "+make that 0.998" in history.read_text(encoding="utf-8")


def test_a_word_takes_leave_too(terminal: Terminal) -> None:
    terminal.see(">")
    terminal.type("Good night!\r")
    terminal.see("Goodbye")
    assert terminal.ends() == 0


def test_ctrl_c_drops_the_line_and_keeps_talking(terminal: Terminal) -> None:
    terminal.see(">")
    terminal.type("started batch 9, a slip of the pen\x03")
    terminal.see(">")
    terminal.type("started batch 1, 6 gal of merlot juice\r")
    terminal.see("Batch 1, merlot juice")
    terminal.leave()


def test_tab_completes_a_name_of_the_journal(terminal: Terminal) -> None:
    terminal.see(">")
    terminal.type("started batch 1, call it Hillside Red, 6 gal of merlot juice\r")
    terminal.see("Batch 1")
    terminal.type("racked Hills\t")
    terminal.see("Hillside Red")
    terminal.type(" to carboy 4\r")
    terminal.see("racked to carboy 4")


def test_what_is_shown_cannot_command_the_terminal(terminal: Terminal, tmp_path: Path) -> None:
    from journalbot.journal.store import Journal
    from journalbot.model import Entry

    terminal.see(">")
    with Journal.open(tmp_path / "journal.db") as other:  # written by someone else, while the talk goes on
        note = other.add_note("2025-10-04", "started \x1b[31mred\x1b]0;title\x07 wine")
        named = {"name": "\x1b[2J\x1b[31mEvil\x9b5m", "volume": 6, "unit": "gal"}
        other.file(note.number, [Entry("start", 1, "2025-10-04", named)])
    terminal.type("batch 1 at 1.090\r")
    terminal.see("Evil")
    assert "\x1b[2J\x1b[31mEvil" not in terminal.raw
    assert "\x9b5m" not in terminal.raw
    assert "␛[2J␛[31mEvil" in terminal.raw
