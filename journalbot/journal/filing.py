"""Entries filed, withdrawn, replaced and brought back, with the history of each and the cellar in step."""

import json
import sqlite3
from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import Any, NamedTuple

from journalbot.journal import projections
from journalbot.journal.cellar import Cellar
from journalbot.journal.entries import E_COLUMNS, Entries, as_entry
from journalbot.journal.fold import blended, fold, names_in, touched, vessels_in
from journalbot.journal.vessel_names import vessel_key
from journalbot.model import Batch, Entry

_INSERT = (
    "INSERT INTO entries (note, seat, position, kind, batch, date, time, quantity, fields, start, stop, doubt, origin,"
    " replaces) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)"
)


class Change(NamedTuple):
    """One thing that happened to an entry."""

    on: str  # the day of the note that asked for it
    note: int
    what: str  # "filed", "replaced", "withdrawn" or "restored"
    entry: Entry


class Filing(Entries):
    """The part of a journal that changes entries, and keeps the cellar in step with them."""

    def __init__(self, path: Path, conn: sqlite3.Connection) -> None:
        super().__init__(path, conn)
        self._cellar: Cellar | None = None
        self._as_of = -1  # the data version that `_cellar` belongs to
        self._batches: set[int] = set()  # changed in this turn, to be written at its end
        self._names: set[tuple[str, str]] = set()
        self._vessels: set[str] = set()
        self._remake = False  # whether all of them must be made anew instead

    # ---- filing

    def file(self, note: int, entries: Sequence[Entry], *, origin: str = "read") -> list[Entry]:
        """File what was read from a note (`origin` "read"), given with it ("given") or put right ("corrected")."""
        if not entries:
            return []
        with self.turn():
            self.cellar()  # as it stands before them
            filed = [self._insert(entry, note, (note, position), origin)
                     for position, entry in enumerate(entries, self._next_position(note))]
            self._take_in(filed)
        return filed

    def refile(self, note: int, entries: Sequence[Entry]) -> list[Entry] | None:
        """Put a better reading in place of a note's earlier one.

        None, and nothing done, where a correction has touched what was read, where the note is itself a correction, or
        where its entries were given and not read.
        """
        with self.turn():
            old = self.entries(note=note, include_withdrawn=True)
            if self.sql(
                "SELECT 1 FROM entries e WHERE note = ?1 AND "
                "(origin <> 'read' OR EXISTS (SELECT 1 FROM changes WHERE entry = e.id)) UNION ALL "
                "SELECT 1 FROM changes WHERE note = ?1 UNION ALL "
                "SELECT 1 FROM notes WHERE number = ?1 AND kind = 'correction' LIMIT 1", (note,)).fetchone():
                return None
            if [_read(e) for e in old] == [_read(e) for e in entries]:
                return old
            self.cellar()
            for entry in old:
                self.sql("DELETE FROM shares WHERE entry = ?", (entry.id,))
                self.sql("DELETE FROM entries WHERE id = ?", (entry.id,))
            self._take_out(old)
            # A name first met in an entry that is gone for good may be spelt otherwise where it is met next.
            self._remake = self._remake or self.cellar().first_met_in({e.id for e in old})
            return self.file(note, entries)

    def withdraw(self, ids: Iterable[int], by: int) -> list[Entry]:
        """Take back entries on the word of note `by`; those that stood, and no longer do."""
        with self.turn():
            self.cellar()
            gone = []
            for entry in map(self.existing, ids):
                if self.sql("UPDATE entries SET withdrawn_by = ? WHERE id = ? AND withdrawn_by IS NULL",
                            (by, entry.id)).rowcount:
                    self._log(entry.id, by, "withdrawn")
                    gone.append(entry)
            self._take_out(gone)
        return gone

    def replace(self, id: int, entry: Entry, by: int) -> Entry:
        """Put another entry in the place of one, on the word of note `by`."""
        with self.turn():
            old = self.existing(id)
            self.withdraw([id], by)
            new = self._insert(entry, by, old.place, "corrected", replaces=id)
            self._take_in([new])
        return new

    def restore(self, note: int, by: int) -> tuple[list[Entry], list[Entry]]:
        """Undo what a note changed, on the word of note `by`: (entries withdrawn again, entries brought back).

        What a later note has changed since is left alone.
        """
        with self.turn():
            withdrawn, new = self.changes_by(note)
            gone = self.withdraw([e.id for e in new if self._last_changed_by(e) == note and self._stands(e.id)], by)
            back = [e for e in withdrawn if self._last_changed_by(e) == note and not self._stands(e.id)]
            for entry in back:
                self.sql("UPDATE entries SET withdrawn_by = NULL WHERE id = ?", (entry.id,))
                self._log(entry.id, by, "restored")
            self._take_in(back)
        return gone, back

    # ---- what became of them

    def was_read(self, note: int) -> bool:
        """Whether what a note filed was read from its text, not given with it or put right by it; False for nothing."""
        return [o for (o,) in self.sql("SELECT DISTINCT origin FROM entries WHERE note = ?", (note,))] == ["read"]

    def changes_by(self, note: int) -> tuple[list[Entry], list[Entry]]:
        """What a note changed: (entries it withdrew, entries it filed or brought back), in the order it did.

        What it filed and took back itself is in neither: see `slips`.
        """
        first, last = self._net(note)
        slips = {i for i, e in last.items() if e[1].note == note and e[0] == "withdrawn"}
        changed = [e for i, (what, e) in last.items() if e.note != note and first[i] == what]
        whats = {i: what for i, (what, _) in last.items()}
        filed = [e for e in self.filed_by(note) if e.id not in slips]
        restored = [e for e in changed if whats[e.id] == "restored"]
        return [e for e in changed if whats[e.id] == "withdrawn"], filed + restored

    def slips(self, note: int) -> list[Entry]:
        """The entries that a note filed and took back itself."""
        return [e for what, e in self._net(note)[1].values() if e.note == note and what == "withdrawn"]

    def history(self, *, entry: int | None = None, note: int | None = None) -> list[Change]:
        """What happened to an entry and to those that it replaced, or to all that stood in a note's place."""
        if entry is not None:
            ids, at = [], entry
            while at:
                ids.append(at)
                replaced = self.sql("SELECT replaces FROM entries WHERE id = ?", (self.existing(at).id,)).fetchone()
                at = replaced[0]
        else:
            ids = [i for (i,) in self.rows(self.sql("SELECT id FROM entries WHERE seat = ?", (note,)))]
        out = []
        for id in ids:
            rows = self.sql(
                "SELECT 0, e.note, CASE WHEN e.replaces IS NULL THEN 'filed' ELSE 'replaced' END, n.day "
                "FROM entries e JOIN notes n ON n.number = e.note WHERE e.id = ? UNION ALL "
                "SELECT c.id, c.note, c.what, n.day FROM changes c JOIN notes n ON n.number = c.note WHERE c.entry = ? "
                "ORDER BY 1", (id, id))
            out += [(by, id, Change(day, by, what, self.existing(id))) for _, by, what, day in self.rows(rows)]
        return [change for _, _, change in sorted(out, key=lambda c: c[:2])]

    # ---- the cellar

    def cellar(self) -> Cellar:
        """The cellar as it now stands. Kept in step with own writes, and loaded again after another process's."""
        if not self._depth and self._as_of != (version := self.data_version):
            self._cellar, self._as_of = None, version
        if self._cellar is None:
            with self.reading():
                self._cellar = projections.load(self)
        return self._cellar or self.rebuild_projections()

    def rebuild_projections(self) -> Cellar:
        """Make batches, vessels and names anew from the entries."""
        self._cellar = projections.rebuild(self)
        return self._cellar

    def _begin(self) -> None:
        if self._as_of != (version := self.data_version):
            self._cellar, self._as_of = None, version

    def _settle(self) -> None:
        if self._remake:
            self.rebuild_projections()
        elif self._batches or self._names or self._vessels:
            projections.save(self, self.cellar(), self._batches, self._names, self._vessels)
        self._clear()

    def _forget(self) -> None:
        self._cellar = None
        self._clear()

    def _clear(self) -> None:
        self._batches, self._names, self._vessels, self._remake = set(), set(), set(), False

    def _take_in(self, entries: Sequence[Entry]) -> None:
        self._mark(entries)
        cellar = self.cellar()
        again: set[int] = set()
        for entry in entries:
            again |= cellar.apply(entry)
        self._fold_again(again)

    def _take_out(self, entries: Sequence[Entry]) -> None:
        self._mark(entries)
        cellar = self.cellar()
        again: set[int] = set()
        for entry in entries:
            again |= cellar.retract(entry)
        if any(entry.kind == "vessel" for entry in entries):
            cellar.describe(self.entries(kinds=["vessel"]))
        self._fold_again(again)

    def _mark(self, entries: Iterable[Entry]) -> None:
        for entry in entries:
            self._batches |= touched(entry)
            self._names.update((sort, name.lower()) for sort, name in names_in(entry))
            self._vessels.update(map(vessel_key, vessels_in(entry)))

    def folded(self, number: int) -> Batch | None:
        """A batch made anew from its entries; None where none stands."""
        own = self.entries(batch=number)
        if not own:
            return None
        shared = self.rows(self.sql(
            f"SELECT {E_COLUMNS} FROM shares s JOIN entries e ON e.id = s.entry "
            "WHERE s.batch = ? AND e.withdrawn_by IS NULL", (number,)))
        return fold(number, own + [as_entry(row) for row in shared])

    def _fold_again(self, numbers: Iterable[int]) -> None:
        for number in numbers:
            if batch := self.folded(number):
                self.cellar().put(batch)
            else:
                self.cellar().drop(number)

    # ---- rows

    def _insert(
        self, entry: Entry, note: int, place: tuple[int, int], origin: str, replaces: int | None = None
    ) -> Entry:
        text = json.dumps(dict(entry.fields), ensure_ascii=False, separators=(",", ":"))
        id = self.sql(_INSERT, (
            note, *place, entry.kind, entry.batch, entry.date, entry.time, entry.get("quantity"), text, *entry.span,
            entry.doubt, origin, replaces)).lastrowid or 0
        filed = Entry(
            entry.kind, entry.batch, entry.date, entry.fields, entry.time, entry.span, entry.doubt, note, id, place)
        for number in {n for n, _ in blended(filed)}:
            self.sql("INSERT INTO shares VALUES (?, ?)", (number, id))
        return filed

    def _next_position(self, seat: int) -> int:
        return int(self.sql("SELECT coalesce(max(position) + 1, 0) FROM entries WHERE seat = ?", (seat,)).fetchone()[0])

    def _net(self, note: int) -> tuple[dict[int, str], dict[int, tuple[str, Entry]]]:
        """The first and the last change that a note made to each entry, by the entry's number."""
        rows = self.sql(f"SELECT what, {E_COLUMNS} FROM changes c JOIN entries e ON e.id = c.entry "
                        "WHERE c.note = ? ORDER BY c.id", (note,))
        first: dict[int, str] = {}
        last: dict[int, tuple[str, Entry]] = {}
        for what, *row in self.rows(rows):
            entry = as_entry(row)
            first.setdefault(entry.id, what)
            last[entry.id] = (what, entry)
        return first, last

    def _stands(self, id: int) -> bool:
        return bool(self.sql("SELECT withdrawn_by IS NULL FROM entries WHERE id = ?", (id,)).fetchone()[0])

    def _last_changed_by(self, entry: Entry) -> int:
        row = self.sql("SELECT note FROM changes WHERE entry = ? ORDER BY id DESC LIMIT 1", (entry.id,)).fetchone()
        return int(row[0]) if row else entry.note

    def _log(self, entry: int, note: int, what: str) -> None:
        self.sql("INSERT INTO changes (entry, note, what) VALUES (?, ?, ?)", (entry, note, what))


def _read(entry: Entry) -> tuple[Any, ...]:
    return (entry.to_json(), entry.span, entry.doubt)
