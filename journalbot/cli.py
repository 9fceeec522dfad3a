"""The command line. Each command imports what it needs, when it needs it, so that one question is answered quickly.

Exit status: 0 done (an answer that says no is an answer); 1 it could not be done, and one line on standard error says
why; 2 the command line itself was wrong; 130 stopped by Ctrl-C.
"""

import argparse
import datetime
import os
import sys
from collections.abc import Callable, Iterable, Iterator, Sequence
from pathlib import Path
from typing import IO, NoReturn

from journalbot.assistant import Assistant
from journalbot.errors import ImportFileError, JournalbotError
from journalbot.journal.store import Journal
from journalbot.journal.where import VARIABLE, journal_path
from journalbot.model import Reply
from journalbot.screen import escaped, harmless, json_line, one_line

_PROGRAM = "journalbot"
_ATTENTION = 5  # notes named at the end of an import
_TICK = 200  # notes between two signs of progress


def main(argv: Sequence[str] | None = None) -> int:
    """Run one command; the exit status."""
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):  # a terminal that lacks a character is shown its number instead
            stream.reconfigure(errors="backslashreplace")
    try:
        args = _parser().parse_args(argv)
        status: int = args.run(args)
        sys.stdout.flush()
        return status
    except JournalbotError as error:
        return _complain(str(error))
    except BrokenPipeError:
        # Whoever read our output has left; what was asked for has been done as far as it was wanted.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 1
    except OSError as error:  # of our own output: files and the journal tell theirs as JournalbotError
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return _complain(f"the output cannot be written: {(error.strerror or str(error)).lower()}.")
    except KeyboardInterrupt:
        print(file=sys.stderr)
        return 130


def _complain(problem: str) -> int:
    print(f"{_PROGRAM}: {one_line(harmless(problem), 500)}", file=sys.stderr)
    return 1


# ---- the words of the command line


class _Parser(argparse.ArgumentParser):
    """A parser that complains in one line."""

    def error(self, message: str) -> NoReturn:
        print(
            f"{self.prog}: {one_line(harmless(message), 300)} ({self.prog} --help tells what it takes)", file=sys.stderr
        )
        raise SystemExit(2)


def _parser() -> argparse.ArgumentParser:
    parser = _Parser(
        prog=_PROGRAM,
        description="The journal a home winemaker talks to. Without a command it opens the chat.",
        epilog=f"The journal is the file given, else that named by {VARIABLE}, else one in your own data folder.",
    )
    parser.add_argument("--journal", metavar="FILE", help="the journal to use")
    parser.set_defaults(run=_chat, json=False)
    commands = parser.add_subparsers(title="commands", metavar="COMMAND")

    def command(
        name: str, run: Callable[[argparse.Namespace], int], help: str, *, json: str = ""
    ) -> argparse.ArgumentParser:
        sub = commands.add_parser(name, help=help, description=help)
        sub.set_defaults(run=run)
        if json:
            sub.add_argument("--json", action="store_true", help=json)
        return sub

    note = command("note", _note, "file one note, or do what a correction says", json="print what was filed as JSON")
    note.add_argument("text", nargs="+", metavar="TEXT", help="the note, in your own words")
    note.add_argument("--on", type=_day, metavar="DAY", help="the day it was made, as 2025-10-04 (default: today)")
    ask = command("ask", _ask, "answer one question", json="print the answer as JSON")
    ask.add_argument("text", nargs="+", metavar="QUESTION", help="the question, in your own words")
    ask.add_argument("--today", type=_day, metavar="DAY", help="the day to count from, as 2025-10-04 (default: today)")
    import_ = command(
        "import",
        _import,
        "file a whole notebook: JSON lines, or plain text with dated paragraphs; - reads standard input",
        json="print one line of JSON a note",
    )
    import_.add_argument("file", metavar="FILE")
    export = command("export", _export, "write the whole journal as JSON lines, which import takes back without loss")
    export.add_argument("file", nargs="?", metavar="FILE", help="a new file (default: standard output)")
    backup = command("backup", _backup, "copy the journal, as of now, to a new file")
    backup.add_argument("file", metavar="FILE")
    command(
        "reread",
        _reread,
        "read every note again; what you corrected or answered stays",
        json="print what changed as JSON lines",
    )
    command("demo", _demo, "open the chat on a throw-away journal of an invented cellar")
    return parser


def _day(text: str) -> datetime.date:
    try:
        return datetime.date.fromisoformat(text)
    except ValueError:
        raise argparse.ArgumentTypeError(
            f"a day is written like 2025-10-04, not {one_line(harmless(text), 30)!r}"
        ) from None


# ---- the commands


def _open(args: argparse.Namespace, *, create: bool = True) -> Journal:
    return Journal.open(journal_path(args.journal), create=create)


def _say(text: str) -> None:
    print(harmless(text))


def _chat(args: argparse.Namespace) -> int:
    from journalbot.chat import talk

    with _open(args) as journal:
        return talk(journal)


def _note(args: argparse.Namespace) -> int:
    with _open(args) as journal:
        reply = Assistant(journal).note(" ".join(args.text), args.on or datetime.date.today())
    if args.json:
        from journalbot.turns.output import note_json

        print(json_line(note_json(reply)))
    else:
        _say(reply.text)
    return 0


def _ask(args: argparse.Namespace) -> int:
    with _open(args, create=False) as journal:
        answer = Assistant(journal).ask(" ".join(args.text), args.today or datetime.date.today())
    if args.json:
        print(json_line(answer.to_json()))
    else:
        from journalbot.replies import answered

        _say(answered(answer))
    return 0


def _import(args: argparse.Namespace) -> int:
    from journalbot.turns.output import Attention, note_json

    attention = Attention()
    with _open(args) as journal, _lines(args.file) as lines:
        before = journal.count_notes()
        try:
            for reply in _counted(Assistant(journal).import_lines(lines)):
                attention.add(reply)
                if args.json:
                    print(json_line(note_json(reply)))
        except ImportFileError as error:
            kept = journal.count_notes() - before
            also = f" {kept} notes before it were filed; mend it and import again." if kept else ""
            raise ImportFileError(f"{args.file}, {error}{also}") from error
        if not args.json:
            _say(attention.told(_ATTENTION))
    return 0


def _export(args: argparse.Namespace) -> int:
    from journalbot.journal.exchange import export

    with _open(args, create=False) as journal:
        lines = (f"{escaped(line)}\n" for line in export(journal))
        if args.file in (None, "-"):
            sys.stdout.writelines(lines)
        else:
            _write_new(Path(args.file), lines)
    return 0


def _backup(args: argparse.Namespace) -> int:
    with _open(args, create=False) as journal:
        _say(f"The journal has been copied to {journal.backup(Path(args.file))}.")
    return 0


def _reread(args: argparse.Namespace) -> int:
    from journalbot.turns.output import reread_json, reread_told

    with _open(args, create=False) as journal:
        done = Assistant(journal).reread(_progress if sys.stderr.isatty() else None)
    _clear()
    if args.json:
        for line in reread_json(done):
            print(json_line(line))
    else:
        _say(reread_told(done))
    return 0


def _demo(args: argparse.Namespace) -> int:
    from journalbot.chat import talk
    from journalbot.turns.demo import demo_journal

    with demo_journal() as journal:
        return talk(journal)


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
