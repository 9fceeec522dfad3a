"""One SQLite file, opened as a journal: its connection, its transactions, and its faults in plain words."""

import errno
import os
import sqlite3
import time
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import Any, Self

from journalbot.errors import JournalError
from journalbot.journal import schema

_MAGIC = b"SQLite format 3\0"  # https://www.sqlite.org/fileformat.html, section 1.3
_PATIENCE = 10.0  # seconds to wait for another process that is writing

# What went wrong, by SQLite's primary result code; a code not listed is told in SQLite's own words.
_FAULTS = {
    sqlite3.SQLITE_FULL: "could not be written, the disk is full; nothing of this turn was kept. Make room, repeat it.",
    sqlite3.SQLITE_IOERR: "could not be read or written (disk full or failing); nothing of this turn was kept.",
    sqlite3.SQLITE_READONLY: "cannot be written here; give another place or the right to write.",
    sqlite3.SQLITE_CANTOPEN: "cannot be opened; check that the folder is there and may be written.",
    sqlite3.SQLITE_PERM: "may not be opened; check who owns it.",
    sqlite3.SQLITE_BUSY: f"has been in use by another program for {_PATIENCE:.0f} seconds; close that one and repeat.",
    sqlite3.SQLITE_LOCKED: "is in use by another program; close that one and repeat.",
    sqlite3.SQLITE_NOTADB: "is not a journal (not an SQLite file); nothing in it was changed.",
    sqlite3.SQLITE_CORRUPT: "is damaged; go back to a backup, or export what can still be read.",
    sqlite3.SQLITE_TOOBIG: "cannot keep a text of that length.",
}


def fault(path: Path, error: sqlite3.Error | UnicodeError | OverflowError) -> JournalError:
    """The error as one line a person can act on."""
    if isinstance(error, UnicodeError):
        return JournalError("the text holds characters that are not valid Unicode and cannot be kept; type it again.")
    if isinstance(error, OverflowError):
        return JournalError("a number is too large to be kept.")
    code = getattr(error, "sqlite_errorcode", 0) & 0xFF
    return JournalError(f"{path} {_FAULTS[code]}" if code in _FAULTS else f"{path}: {error}.")


class JournalFile:
    """A journal's file. All reading goes through `sql`, all writing happens inside `turn`."""

    def __init__(self, path: Path, conn: sqlite3.Connection) -> None:
        self.path = path
        self._conn = conn
        self._depth = 0
        self._spoilt = False

    @classmethod
    def open(cls, path: Path, *, create: bool = True) -> Self:
        """Open the journal at `path`, made (mode 0600) where there is none and `create` is set.

        JournalError where it is no journal, is newer than this program, or cannot be opened.
        """
        path = Path(path)
        _find(path, create)
        try:
            conn = _connect(path)
        except sqlite3.Error as error:
            raise fault(path, error) from error
        try:
            version = schema.version_of(conn, path)
            if version == 0 and not create:
                raise JournalError(f"{path} is empty, not a journal.")
            if version < schema.VERSION:
                _make(conn, path, version)
        except (sqlite3.Error, OSError) as error:
            conn.close()
            raise _told(path, error) from error
        except BaseException:
            conn.close()
            raise
        return cls(path, conn)

    def close(self) -> None:
        """Close the file; the journal object is of no use after that."""
        self._conn.close()

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        self.close()

    def sql(self, statement: str, values: Sequence[Any] = ()) -> sqlite3.Cursor:
        """Run one statement; JournalError in plain words where it fails."""
        try:
            return self._conn.execute(statement, values)
        except (sqlite3.Error, UnicodeError, OverflowError) as error:
            raise fault(self.path, error) from error

    def rows(self, cursor: sqlite3.Cursor) -> Iterator[Any]:
        """The rows of a statement; JournalError where the file fails midway."""
        try:
            yield from cursor
        except sqlite3.Error as error:
            raise fault(self.path, error) from error

    @property
    def data_version(self) -> int:
        """A number that changes when another process (or connection) has written to the file."""
        return int(self.sql("PRAGMA data_version").fetchone()[0])

    @contextmanager
    def turn(self) -> Iterator[None]:
        """One transaction: on leaving, all is on the disk; after any exception, nothing is. An inner one joins it."""
        if self._depth:
            before = self._conn.total_changes
            self._depth += 1
            try:
                yield
            except BaseException:
                # Half of an inner turn must not be kept, even where the caller goes on after its exception.
                self._spoilt = self._spoilt or self._conn.total_changes != before
                raise
            finally:
                self._depth -= 1
            return
        self.sql("BEGIN IMMEDIATE")
        self._depth, self._spoilt = 1, False
        try:
            self._begin()
            yield
            self._settle()
            if self._spoilt:
                raise JournalError("the turn was not kept, because a part of it failed.")
            self.sql("COMMIT")
        except BaseException as error:
            self._forget()
            if self._conn.in_transaction:
                self._conn.execute("ROLLBACK")
            if isinstance(error, sqlite3.Error):
                raise fault(self.path, error) from error
            raise
        finally:
            self._depth = 0

    @contextmanager
    def reading(self) -> Iterator[None]:
        """Several readings of one state of the file, whatever another process writes meanwhile."""
        if self._conn.in_transaction:
            yield
            return
        self.sql("BEGIN")
        try:
            yield
        finally:
            self._conn.rollback()

    def _begin(self) -> None:
        """Called with the write lock just taken."""

    def _settle(self) -> None:
        """Called before the commit, to write what follows from the turn."""

    def _forget(self) -> None:
        """Called when the turn has been given up."""

    def backup(self, to: Path) -> Path:
        """Copy the journal, as of now, to a new file (mode 0600); JournalError where that file exists."""
        to = Path(to)
        try:
            copy_file(self._conn, to)
        except FileExistsError as error:
            raise JournalError(f"{to} exists already; a backup never overwrites. Give another name.") from error
        except (sqlite3.Error, OSError) as error:
            raise _told(to, error) from error
        return to


def copy_file(conn: sqlite3.Connection, to: Path) -> None:
    """A consistent copy of an open database in a new file; FileExistsError where there is one."""
    os.close(os.open(to, os.O_CREAT | os.O_EXCL | os.O_RDWR, 0o600))
    try:
        target = sqlite3.connect(to)
        try:
            conn.backup(target)
            # A copy in one piece, wherever it is carried to.
            target.execute("PRAGMA journal_mode = DELETE")
        finally:
            target.close()
    except BaseException:
        to.unlink(missing_ok=True)
        raise


def _find(path: Path, create: bool) -> None:
    """Make sure that there is a file, with a mode that only its owner can read; SQLite gives -wal and -shm the same."""
    try:
        if path.is_file():
            # SQLite would take a file of a few bytes for an empty one, and write over it.
            with path.open("rb") as there:
                if there.read(len(_MAGIC)) not in (b"", _MAGIC):
                    raise JournalError(f"{path} {_FAULTS[sqlite3.SQLITE_NOTADB]}")
            return
        if path.exists():
            raise JournalError(f"{path} is not a file; give the name of a journal's file.")
        if not create:
            raise JournalError(f"there is no journal at {path}.")
        os.close(os.open(path, os.O_CREAT | os.O_RDWR, 0o600))
    except FileNotFoundError as error:
        raise JournalError(f"the folder {path.parent} does not exist; make it first, or give another place.") from error
    except (OSError, ValueError) as error:
        raise _told(path, error) from error


def _connect(path: Path) -> sqlite3.Connection:
    conn = sqlite3.connect(path, timeout=_PATIENCE, isolation_level=None, cached_statements=256)
    try:
        conn.execute("PRAGMA foreign_keys = ON")
        conn.execute("PRAGMA synchronous = FULL")
        conn.execute("PRAGMA temp_store = MEMORY")
    except BaseException:
        conn.close()
        raise
    return conn


def _make(conn: sqlite3.Connection, path: Path, version: int) -> None:
    """Give a new file its tables, or an older one what it lacks, after a copy of it."""
    if version:
        _copy_before_upgrade(conn, path, version)
    _write_ahead(conn)
    schema.upgrade(conn)


def _copy_before_upgrade(conn: sqlite3.Connection, path: Path, version: int) -> Path:
    for n in range(1, 1000):
        to = path.with_name(f"{path.name}.format-{version}{'' if n == 1 else f'-{n}'}.backup")
        try:
            copy_file(conn, to)
        except FileExistsError:
            continue
        return to
    raise JournalError(f"{path.parent} holds too many copies of {path.name}; move some away.")


def _write_ahead(conn: sqlite3.Connection) -> None:
    """Switch to write-ahead logging; here SQLite does not wait for another process by itself."""
    until = time.monotonic() + _PATIENCE
    while True:
        try:
            conn.execute("PRAGMA journal_mode = WAL")
            return
        except sqlite3.OperationalError as error:
            if error.sqlite_errorcode & 0xFF != sqlite3.SQLITE_BUSY or time.monotonic() > until:
                raise
            time.sleep(0.01)


def _told(path: Path, error: Exception) -> JournalError:
    if isinstance(error, sqlite3.Error):
        return fault(path, error)
    if isinstance(error, OSError):
        if error.errno in (errno.ENOSPC, errno.EFBIG, errno.EDQUOT):
            return JournalError(f"{path} {_FAULTS[sqlite3.SQLITE_FULL]}")
        return JournalError(f"{path} cannot be opened: {(error.strerror or str(error)).lower()}.")
    return JournalError(f"{str(path)!r} is not a name that a file can have.")
