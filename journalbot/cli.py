"""The command line. Each command imports what it needs, when it needs it, so that one question is answered quickly.

Exit status: 0 done (an answer that says no is an answer); 1 it could not be done, and one line on standard error says
why; 2 the command line itself was wrong; 130 stopped by Ctrl-C.
"""

import datetime
import gc
import os
import sys
from collections.abc import Callable, Iterable, Iterator, Sequence
from pathlib import Path
from typing import IO, TYPE_CHECKING, NoReturn

from journalbot.arguments import Command, Given, Option, UsageError, help_on, read_arguments
from journalbot.errors import ImportFileError, JournalbotError
from journalbot.journal.where import VARIABLE, journal_path
from journalbot.model import Reply
from journalbot.screen import escaped, harmless, json_line, one_line

if TYPE_CHECKING:
    from journalbot.assistant import Assistant
    from journalbot.journal.store import Journal

_PROGRAM = "journalbot"
_ABOUT = f"""journalbot: the journal a home winemaker talks to. Without a command it opens the chat.

The journal is the file given, else that named by {VARIABLE}, else one in your own data folder."""
_ATTENTION = 5  # notes named at the end of an import
_TICK = 200  # notes between two signs of progress

_EVERYWHERE = (Option("journal", "FILE", "the journal to use"), Option("help", "", "tell what a command takes"))
_ON = Option("on", "DAY", "the day it was typed, as 2025-10-04; today, if not given")
_TODAY = Option("today", "DAY", "the day to count from, as 2025-10-04; today, if not given")


def _json(help: str) -> Option:
    return Option("json", "", help)


COMMANDS: dict[str, Command] = {
    "note": Command("TEXT...", "file one note, or do what a correction says", (_ON, _json("print what was filed"))),
    "ask": Command("QUESTION...", "answer one question", (_TODAY, _json("print the answer as JSON"))),
    "import": Command(
        "FILE", "file a notebook: JSON lines, or plain text under dates; - reads standard input",
        (_json("print one line of JSON a note"),)),
    "export": Command("[FILE]", "write the journal as JSON lines, to a new file or standard output"),
    "backup": Command("FILE", "copy the journal, as of now, to a new file"),
    "reread": Command(
        "", "read every note again; what you corrected or answered stays", (_json("print what changed"),)),
    "demo": Command("", "open the chat on a throw-away journal of an invented cellar"),
}


def main(argv: Sequence[str] | None = None) -> int:
    """Run one command; the exit status."""
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):  # a terminal that lacks a character is shown its number instead
            stream.reconfigure(errors="backslashreplace")
    try:
        given = read_arguments(sys.argv[1:] if argv is None else argv, COMMANDS, _EVERYWHERE)
        status = _run(given)
        sys.stdout.flush()
        return status
    except UsageError as error:
        return _complain(f"{error} (see {_PROGRAM} --help)", 2)
    except JournalbotError as error:
        return _complain(str(error), 1)
    except BrokenPipeError:
        # Whoever read our output has left; what was asked for has been done as far as it was wanted.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 1
    except OSError as error:  # of our own output: files and the journal tell theirs as JournalbotError
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return _complain(f"the output cannot be written: {(error.strerror or str(error)).lower()}.", 1)
    except KeyboardInterrupt:
        print(file=sys.stderr)
        return 130


def run() -> NoReturn:
    """The program: `main`, then out, without first taking apart what ends with the process (a tenth of an answer)."""
    gc.set_threshold(50_000, 20, 100)  # what is loaded at the start stays; looking through it again costs 8 ms
    status = main()
    sys.stderr.flush()
    os._exit(status)


def _run(given: Given) -> int:
    if "help" in given.options:
        about = "" if given.command else f"{_ABOUT}\n\n"
        print(f"{about}{help_on(given.command, COMMANDS, _EVERYWHERE)}")
        return 0
    return _COMMANDS[given.command](given)


def _complain(problem: str, status: int) -> int:
    print(f"{_PROGRAM}: {one_line(harmless(problem), 500)}", file=sys.stderr)
    return status


def _day(given: Given, option: str) -> datetime.date:
    text = given.options.get(option)
    if text is None:
        return datetime.date.today()
    try:
        return datetime.date.fromisoformat(text)
    except ValueError:
        raise UsageError(f"a day is written like 2025-10-04, not {text!r}.") from None


# ---- the commands


def _open(given: Given, *, create: bool = True) -> "Journal":
    from journalbot.journal.store import Journal

    return Journal.open(journal_path(given.options.get("journal")), create=create)


def _assistant(journal: "Journal") -> "Assistant":
    from journalbot.assistant import Assistant

    return Assistant(journal)


def _say(text: str) -> None:
    print(harmless(text))


def _chat(given: Given) -> int:
    from journalbot.chat import talk

    with _open(given) as journal:
        return talk(journal)


def _note(given: Given) -> int:
    on = _day(given, "on")
    with _open(given) as journal:
        reply = _assistant(journal).note(" ".join(given.words), on)
    if "json" in given.options:
        from journalbot.turns.output import note_json

        print(json_line(note_json(reply)))
    else:
        _say(reply.text)
    return 0


def _ask(given: Given) -> int:
    today = _day(given, "today")
    with _open(given, create=False) as journal:
        answer = _assistant(journal).ask(" ".join(given.words), today)
    if "json" in given.options:
        print(json_line(answer.to_json()))
    else:
        from journalbot.replies import answered

        _say(answered(answer))
    return 0


def _import(given: Given) -> int:
    from journalbot.turns.output import Attention, note_json

    attention = Attention()
    with _open(given) as journal, _lines(given.words[0]) as lines:
        before = journal.count_notes()
        try:
            for reply in _counted(_assistant(journal).import_lines(lines)):
                attention.add(reply)
                if "json" in given.options:
                    print(json_line(note_json(reply)))
        except ImportFileError as error:
            kept = journal.count_notes() - before
            also = f" {kept} notes before it were filed; mend it and import again." if kept else ""
            raise ImportFileError(f"{given.words[0]}, {error}{also}") from error
        if "json" not in given.options:
            _say(attention.told(_ATTENTION))
    return 0


def _export(given: Given) -> int:
    from journalbot.journal.exchange import export

    with _open(given, create=False) as journal:
        lines = (f"{escaped(line)}\n" for line in export(journal))
        if given.words in ((), ("-",)):
            sys.stdout.writelines(lines)
        else:
            _write_new(Path(given.words[0]), lines)
    return 0


def _backup(given: Given) -> int:
    with _open(given, create=False) as journal:
        _say(f"The journal has been copied to {journal.backup(Path(given.words[0]))}.")
    return 0


def _reread(given: Given) -> int:
    from journalbot.turns.output import reread_json, reread_told

    with _open(given, create=False) as journal:
        done = _assistant(journal).reread(_progress if sys.stderr.isatty() else None)
    _clear()
    if "json" in given.options:
        for line in reread_json(done):
            print(json_line(line))
    else:
        _say(reread_told(done))
    return 0


def _demo(given: Given) -> int:
    from journalbot.chat import talk
    from journalbot.turns.demo import demo_journal

    with demo_journal() as journal:
        return talk(journal)


_COMMANDS: dict[str, Callable[[Given], int]] = {
    "": _chat, "note": _note, "ask": _ask, "import": _import, "export": _export, "backup": _backup, "reread": _reread,
    "demo": _demo,
}


# ---- files and progress


class _lines:
    """The lines of a notebook: a file, or standard input for `-`. ImportFileError where it cannot be read."""

    def __init__(self, name: str) -> None:
        self._name = name
        self._file: IO[str] | None = None

    def __enter__(self) -> Iterator[str]:
        if self._name == "-":
            return self._read(sys.stdin)
        try:
            self._file = open(self._name, encoding="utf-8-sig")
        except (OSError, ValueError) as error:
            raise ImportFileError(
                f"{self._name} cannot be read: {(getattr(error, 'strerror', None) or str(error)).lower()}."
            ) from error
        return self._read(self._file)

    def __exit__(self, *_: object) -> None:
        if self._file:
            self._file.close()

    def _read(self, file: IO[str]) -> Iterator[str]:
        try:
            yield from file
        except UnicodeDecodeError as error:
            raise ImportFileError(
                f"not UTF-8 text ({error.reason} at byte {error.start}); save it as UTF-8 first."
            ) from error
        except OSError as error:
            raise ImportFileError(f"cannot be read: {(error.strerror or str(error)).lower()}.") from error


def _write_new(path: Path, lines: Iterable[str]) -> None:
    """Write lines to a new file that only its owner can read; none is left behind where that fails."""
    try:
        handle = os.open(path, os.O_CREAT | os.O_EXCL | os.O_WRONLY, 0o600)
    except FileExistsError:
        raise JournalbotError(f"{path} exists already; an export never overwrites. Give another name.") from None
    except (OSError, ValueError) as error:
        raise JournalbotError(
            f"{path} cannot be written: {(getattr(error, 'strerror', None) or str(error)).lower()}."
        ) from error
    try:
        with open(handle, "w", encoding="utf-8", newline="\n") as file:
            file.writelines(lines)
            file.flush()
            os.fsync(file.fileno())
    except BaseException as error:
        path.unlink(missing_ok=True)
        if isinstance(error, OSError):
            raise JournalbotError(f"{path} cannot be written: {(error.strerror or str(error)).lower()}.") from error
        raise


def _counted(items: Iterable[Reply]) -> Iterator[Reply]:
    """The items, with a sign of progress on a terminal."""
    shown = sys.stderr.isatty()
    for n, item in enumerate(items, 1):
        if shown and n % _TICK == 0:
            _progress(n)
        yield item
    if shown:
        _clear()


def _progress(done: int, total: int = 0) -> None:
    print(f"\r{done:,}{f' of {total:,}' if total else ''} notes ", end="", file=sys.stderr, flush=True)


def _clear() -> None:
    if sys.stderr.isatty():
        print("\r" + " " * 40 + "\r", end="", file=sys.stderr, flush=True)
