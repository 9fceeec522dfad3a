"""The tables of a journal, as numbered upgrades. Only this module needs sqlite_utils, and only where it changes a file.

    notes                    what was typed; only ever added to
    entries, shares          what was read from notes; `shares` names the other batches that a blend draws on
    changes                  each withdrawal and each restoring of an entry, with the note that asked for it
    asks, answers            what must be known before a note can be filed, and what was answered
    taught, marks, settings  words taught, when a thing was last said, the journal's settings
    batches, vessels, names  projections of entries: what they come to (see projections.py)
    notes_fts, notes_terms   full-text search over notes, and the words it knows
"""

import sqlite3
from pathlib import Path
from typing import TYPE_CHECKING

from journalbot.errors import JournalError

if TYPE_CHECKING:
    from sqlite_utils import Database, Migrations
    from sqlite_utils.db import Table

APPLICATION_ID = 0x57494E4A  # "WINJ": marks an SQLite file as a journal
VERSION = 2


def version_of(conn: sqlite3.Connection, path: Path) -> int:
    """The schema number of an open file, 0 for an empty one; JournalError where it is no journal, or a newer one."""
    (application,) = conn.execute("PRAGMA application_id").fetchone()
    (version,) = conn.execute("PRAGMA user_version").fetchone()
    if application == 0 and version == 0 and not conn.execute("SELECT 1 FROM sqlite_schema LIMIT 1").fetchone():
        return 0
    if application != APPLICATION_ID:
        raise JournalError(f"{path} is an SQLite file, but not a journal; nothing in it was changed.")
    if version > VERSION:
        raise JournalError(
            f"{path} was written by a newer journalbot (format {version}; this one knows up to {VERSION}); "
            "install the newer version to open it."
        )
    return int(version)


def upgrade(conn: sqlite3.Connection) -> None:
    """Bring a new or older file to VERSION, in one transaction together with the record of each upgrade run.

    The caller has taken a copy of an existing journal. Safe where another process does the same at the same time.
    """
    from sqlite_utils import Database

    conn.execute("BEGIN IMMEDIATE")
    try:
        if conn.execute("PRAGMA user_version").fetchone()[0] < VERSION:
            _upgrades().apply(Database(conn, recursive_triggers=False, execute_plugins=False))
            conn.execute(f"PRAGMA application_id = {APPLICATION_ID}")
            conn.execute(f"PRAGMA user_version = {VERSION}")
        conn.execute("COMMIT")
    except BaseException:
        if conn.in_transaction:
            conn.execute("ROLLBACK")
        raise


# Each upgrade is a list of tables (columns, then what else `create` is told) and a list of statements. One that has
# been released is never changed: add the next.
_TABLES_1: tuple[tuple[str, dict[str, type], dict[str, object]], ...] = (
    ("settings", {"key": str, "value": str}, {"pk": "key"}),
    ("notes", {"number": int, "day": str, "text": str, "kind": str},
     {"pk": "number", "not_null": {"day", "text", "kind"}}),
    (
        "entries",
        {
            "id": int, "note": int, "seat": int, "position": int, "kind": str, "batch": int, "date": str, "time": str,
            "quantity": str, "fields": str, "start": int, "stop": int, "doubt": str, "origin": str, "replaces": int,
            "withdrawn_by": int,
        },
        {
            "pk": "id",
            "not_null": {"note", "seat", "position", "kind", "date", "fields", "start", "stop", "origin"},
            "foreign_keys": [("note", "notes", "number"), ("seat", "notes", "number"), ("replaces", "entries", "id"),
                             ("withdrawn_by", "notes", "number")],
        },
    ),
    ("shares", {"batch": int, "entry": int}, {"pk": ("batch", "entry"), "foreign_keys": [("entry", "entries", "id")]}),
    (
        "changes",
        {"id": int, "entry": int, "note": int, "what": str},
        {"pk": "id", "not_null": {"entry", "note", "what"},
         "foreign_keys": [("entry", "entries", "id"), ("note", "notes", "number")]},
    ),
    (
        "asks",
        {"note": int, "what": str, "choices": str, "about": str},
        {"pk": "note", "not_null": {"what", "choices", "about"}, "foreign_keys": [("note", "notes", "number")]},
    ),
    ("answers", {"note": int, "given": str}, {"pk": "note", "not_null": {"given"},
                                              "foreign_keys": [("note", "notes", "number")]}),
    ("taught", {"word": str, "meaning": str}, {"pk": "word", "not_null": {"meaning"}}),
    ("marks", {"key": str, "day": str}, {"pk": "key", "not_null": {"day"}}),
    ("batches", {"number": int, "state": str}, {"pk": "number", "not_null": {"state"}}),
    ("vessels", {"key": str, "name": str, "uses": int, "first": int, "litres": float, "said": str},
     {"pk": "key", "not_null": {"name", "uses", "first"}}),
    ("names", {"sort": str, "key": str, "name": str, "uses": int, "first": int},
     {"pk": ("sort", "key"), "not_null": {"name", "uses", "first"}}),
)
_SQL_1 = (
    "CREATE INDEX entries_by_batch ON entries (batch, date, seat, position)",
    "CREATE INDEX entries_by_kind ON entries (kind, date, seat, position)",
    "CREATE INDEX entries_by_quantity ON entries (quantity, date, seat, position) WHERE quantity IS NOT NULL",
    "CREATE INDEX entries_by_date ON entries (date, seat, position)",
    "CREATE INDEX entries_by_seat ON entries (seat, position)",
    "CREATE INDEX entries_by_note ON entries (note)",
    "CREATE INDEX entries_replaced ON entries (replaces) WHERE replaces IS NOT NULL",
    "CREATE INDEX changes_by_entry ON changes (entry)",
    "CREATE INDEX changes_by_note ON changes (note)",
    "CREATE TRIGGER notes_stay_the_same BEFORE UPDATE ON notes BEGIN SELECT RAISE(ABORT, 'notes stay as typed'); END",
    "CREATE TRIGGER notes_stay BEFORE DELETE ON notes BEGIN SELECT RAISE(ABORT, 'notes are kept for good'); END",
    """CREATE VIRTUAL TABLE notes_fts
       USING fts5 (text, content='notes', content_rowid='number', tokenize='porter unicode61 remove_diacritics 2')""",
    """CREATE TRIGGER notes_found AFTER INSERT ON notes BEGIN
       INSERT INTO notes_fts (rowid, text) VALUES (new.number, new.text); END""",
    "CREATE VIRTUAL TABLE notes_terms USING fts5vocab (notes_fts, 'row')",
)


# Readings by their values, so that the highest and lowest of every batch are found without opening an entry; and the
# few toppings up with whole bottles, which are taken off the stock of another batch.
_SQL_2 = (
    """CREATE INDEX entries_by_value ON entries (quantity, batch, fields ->> 'unit', fields ->> 'value')
       WHERE quantity IS NOT NULL AND withdrawn_by IS NULL""",
    """CREATE INDEX entries_poured ON entries (note)
       WHERE kind = 'top_up' AND fields ->> 'unit' = 'bottle' AND withdrawn_by IS NULL""",
)


def _upgrades() -> "Migrations":
    from sqlite_utils import Migrations

    upgrades = Migrations("journalbot")

    @upgrades(name="0001 notes, entries and what follows from them")
    def first(db: "Database") -> None:
        for name, columns, also in _TABLES_1:
            table: Table = db.table(name)
            table.create(columns, strict=True, **also)  # type: ignore[arg-type]
        for statement in _SQL_1:
            db.execute(statement)

    @upgrades(name="0002 readings by value, bottles poured")
    def second(db: "Database") -> None:
        for statement in _SQL_2:
            db.execute(statement)

    return upgrades
