"""The journal: what was typed, what was read from it, what is still to be asked. The one class others use."""

import json
from collections.abc import Iterator, Mapping
from typing import Any

from journalbot.errors import JournalError
from journalbot.journal import projections
from journalbot.journal.filing import Change, Filing
from journalbot.journal.search import Found, Search
from journalbot.model import Ask, Json, Note, Settings

__all__ = ["Change", "Found", "Journal"]

NOTE_KINDS = ("note", "correction", "answer")
_STRIDE = 500  # notes fetched at once while all are gone through


class Journal(Filing, Search):
    """An open journal. `with Journal.open(path) as journal: …`"""

    # ---- settings

    @property
    def settings(self) -> Settings:
        """How this journal reads and shows figures."""
        rows = self.rows(self.sql("SELECT key, value FROM settings"))
        return Settings(**{key: json.loads(value) for key, value in rows if key in Settings._fields})

    def change_settings(self, **changes: Any) -> Settings:
        """Set some of the settings; TypeError for one that does not exist."""
        new = Settings(**{**self.settings._asdict(), **changes})
        with self.turn():
            for key in changes:
                self.sql("INSERT OR REPLACE INTO settings VALUES (?, ?)", (key, json.dumps(getattr(new, key))))
        return new

    # ---- notes

    def add_note(self, on: str, text: str, kind: str = "note") -> Note:
        """Keep what was typed on a day, verbatim and for good, under the next number.

        JournalError where it cannot be kept: characters that are not valid Unicode, a full disk.
        """
        if kind not in NOTE_KINDS:
            raise ValueError(f"{kind!r} is no kind of note; it is one of {', '.join(NOTE_KINDS)}")
        with self.turn():
            number = self.sql("INSERT INTO notes (day, text, kind) VALUES (?, ?, ?)", (on, text, kind)).lastrowid
        return Note(number or 0, on, text, kind)

    def note(self, number: int) -> Note | None:
        """The note of that number."""
        return next(self.notes(number, number), None)

    def notes(self, first: int = 1, last: int | None = None) -> Iterator[Note]:
        """Notes in the order typed, from one number to another; fetched as needed, so that a long journal fits."""
        while True:
            rows = self.sql(
                "SELECT number, day, text, kind FROM notes WHERE number BETWEEN ? AND ? ORDER BY number LIMIT ?",
                (first, 2**62 if last is None else last, _STRIDE)).fetchall()
            yield from (Note(*row) for row in rows)
            if len(rows) < _STRIDE:
                return
            first = rows[-1][0] + 1

    def last_note(self) -> Note | None:
        """The note typed last."""
        row = self.sql("SELECT number, day, text, kind FROM notes ORDER BY number DESC LIMIT 1").fetchone()
        return Note(*row) if row else None

    def count_notes(self) -> int:
        """How many notes there are; they are numbered from 1 without gaps."""
        return int(self.sql("SELECT coalesce(max(number), 0) FROM notes").fetchone()[0])

    # ---- what is still to be asked

    def put_ask(self, ask: Ask) -> None:
        """Remember that the note of `ask` waits for an answer; in place of an earlier question of that note."""
        with self.turn():
            self.sql("INSERT OR REPLACE INTO asks VALUES (?, ?, ?, ?)",
                     (ask.note, ask.what, json.dumps(ask.choices, ensure_ascii=False), ask.about))

    def open_asks(self) -> list[Ask]:
        """What waits for an answer, the oldest note first."""
        rows = self.rows(self.sql("SELECT what, choices, about, note FROM asks ORDER BY note"))
        return [Ask(what, tuple(json.loads(choices)), about, note) for what, choices, about, note in rows]

    def answer_ask(self, note: int, answer: Mapping[str, Any]) -> Json:
        """Keep the answer to a note's question beside those given before, and close it; all that has been answered."""
        with self.turn():
            given = {**self.answers(note), **answer}
            self.sql("INSERT OR REPLACE INTO answers VALUES (?, ?)", (note, json.dumps(given, ensure_ascii=False)))
            self.drop_ask(note)
        return given

    def answers(self, note: int) -> Json:
        """What has been answered to a note's questions; kept for when the note is read again."""
        row = self.sql("SELECT given FROM answers WHERE note = ?", (note,)).fetchone()
        return dict(json.loads(row[0])) if row else {}

    def drop_ask(self, note: int) -> None:
        """Wait no longer for an answer about that note."""
        with self.turn():
            self.sql("DELETE FROM asks WHERE note = ?", (note,))

    # ---- words taught, and things said only so often

    def teach(self, word: str, meaning: Json) -> None:
        """Remember what a word means in this journal."""
        with self.turn():
            self.sql("INSERT OR REPLACE INTO taught VALUES (?, ?)", (word, json.dumps(meaning, ensure_ascii=False)))

    def taught(self) -> dict[str, Json]:
        """The words taught, each with its meaning."""
        rows = self.rows(self.sql("SELECT word, meaning FROM taught ORDER BY word"))
        return {word: json.loads(meaning) for word, meaning in rows}

    def mark(self, key: str, on: str) -> None:
        """Note that a thing was said, or done, on a day."""
        with self.turn():
            self.sql("INSERT OR REPLACE INTO marks VALUES (?, ?)", (key, on))

    def marked(self, key: str) -> str | None:
        """The day on which that was last marked."""
        row = self.sql("SELECT day FROM marks WHERE key = ?", (key,)).fetchone()
        return str(row[0]) if row else None

    # ---- soundness

    def check(self) -> list[str]:
        """What is wrong with the file, a line each; nothing where it is sound."""
        faults = [str(row[0]) for row in self.rows(self.sql("PRAGMA integrity_check")) if row[0] != "ok"]
        faults += [f"{row[0]} {row[1]} refers to a {row[2]} that is not there"
                   for row in self.rows(self.sql("PRAGMA foreign_key_check"))]
        try:
            with self.turn():
                self.sql("INSERT INTO notes_fts (notes_fts, rank) VALUES ('integrity-check', 1)")
        except JournalError:
            faults.append("the search index does not agree with the notes")
        with self.reading():
            kept, made = projections.load(self), projections.compute(self)
        if kept:
            faults += [f"{what} differs from its entries" for what in projections.differences(kept, made)]
        return faults
