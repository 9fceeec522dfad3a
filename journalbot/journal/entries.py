"""Entries as rows of the journal's file, and how they are found again: always through an index."""

import json
from collections.abc import Iterator, Sequence
from types import EllipsisType
from typing import Any

from journalbot.errors import JournalError
from journalbot.journal.file import JournalFile
from journalbot.model import Entry

COLUMNS = "id, note, seat, position, kind, batch, date, time, fields, start, stop, doubt"
E_COLUMNS = ", ".join(f"e.{column}" for column in COLUMNS.split(", "))


class Entries(JournalFile):
    """The part of a journal that finds entries."""

    def entry(self, id: int) -> Entry | None:
        """The entry of that number, standing or withdrawn."""
        row = self.sql(f"SELECT {COLUMNS} FROM entries WHERE id = ?", (id,)).fetchone()
        return as_entry(row) if row else None

    def entries(
        self, *, batch: int | Sequence[int] | EllipsisType | None = ..., kinds: Sequence[str] | None = None,
        since: str | None = None, until: str | None = None, note: int | None = None, seat: int | None = None,
        quantity: str | None = None, include_withdrawn: bool = False,
    ) -> list[Entry]:
        """Entries in order of date, note and position; every filter may be left out.

        `batch` None means those of no one batch. `until` takes in the whole of a month or year. `note` is the one that
        filed them; `seat` the one in whose place they stand, so that what became of a note's entries is found.
        """
        conditions: list[tuple[str, str, Sequence[Any]]] = []  # column, comparison, values; the most telling first
        if seat is not None:
            conditions.append(("seat", "= ?", [seat]))
        if note is not None:
            conditions.append(("note", "= ?", [note]))
        if batch is None:
            conditions.append(("batch", "IS NULL", []))
        elif not isinstance(batch, EllipsisType):
            numbers = [batch] if isinstance(batch, int) else list(batch)
            conditions.append(("batch", _among(numbers), numbers))
        if quantity is not None:
            conditions.append(("quantity", "= ?", [quantity]))
        if kinds is not None:
            conditions.append(("kind", _among(kinds), kinds))
        # SQLite, not knowing how many rows each leaves, might take the wrong index: a plus sign keeps it from others.
        where = [f"{'+' if i else ''}{column} {test}" for i, (column, test, _) in enumerate(conditions)]
        values = [value for _, _, given in conditions for value in given]
        for comparison, date in (("date >= ?", since), ("date < ?", until and until + "~")):
            if date is not None:
                where.append(comparison)
                values.append(date)
        if not include_withdrawn:
            where.append("withdrawn_by IS NULL")
        condition = f" WHERE {' AND '.join(where)}" if where else ""
        rows = self.sql(f"SELECT {COLUMNS} FROM entries{condition} ORDER BY date, seat, position, id", values)
        return [as_entry(row) for row in self.rows(rows)]

    def all_entries(self) -> Iterator[tuple[Entry, bool]]:
        """Every entry in the order filed, with whether it stands."""
        rows = self.sql(f"SELECT withdrawn_by IS NULL, {COLUMNS} FROM entries ORDER BY id")
        return ((as_entry(row), bool(stands)) for stands, *row in self.rows(rows))

    def batch_numbers(self) -> list[int]:
        """The numbers of all batches that any entry speaks of."""
        rows = self.sql("SELECT DISTINCT batch FROM entries WHERE batch IS NOT NULL ORDER BY batch")
        return [number for (number,) in self.rows(rows)]

    def count_entries(self) -> int:
        """How many entries have been filed, withdrawn ones included."""
        return int(self.sql("SELECT count(*) FROM entries").fetchone()[0])

    def filed_by(self, note: int) -> list[Entry]:
        """What a note filed, whether it stands or not, in the order filed."""
        return [as_entry(row) for row in self.rows(
            self.sql(f"SELECT {COLUMNS} FROM entries WHERE note = ? ORDER BY id", (note,)))]

    def existing(self, id: int) -> Entry:
        """The entry of that number; JournalError where there is none."""
        entry = self.entry(id)
        if entry is None:
            raise JournalError(f"there is no entry {id}.")
        return entry


def as_entry(row: Sequence[Any]) -> Entry:
    """An entry from a row of COLUMNS."""
    id, note, seat, position, kind, batch, date, time, fields, start, stop, doubt = row
    return Entry(kind, batch, date, json.loads(fields), time, (start, stop), doubt, note, id, (seat, position))


def _among(values: Sequence[object]) -> str:
    return f"IN ({', '.join('?' * len(values))})"
