"""Many notes at once: a notebook imported, and every note read again."""

import datetime
from collections import Counter
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field, replace
from itertools import chain, islice
from typing import TYPE_CHECKING

from journalbot.journal.cellar import Cellar
from journalbot.journal.exchange import Opening, Row, file_row, open_with, read_notebook
from journalbot.journal.fold import fold, touched
from journalbot.journal.store import Journal
from journalbot.model import Entry, Note, Reply
from journalbot.turns import changes
from journalbot.turns.words import learn, names_of

if TYPE_CHECKING:
    from journalbot.assistant import Assistant
    from journalbot.language.names import Names

_STRIDE = 300  # notes filed in one transaction


# ---- import


def import_lines(assistant: "Assistant", lines: Iterable[str]) -> Iterator[Reply]:
    """File a notebook's notes, some hundreds to a transaction, each reply given once its note is on the disk.

    A note that the journal held before, word for word under the same day, is not filed twice: a notebook that has grown
    can be imported again.
    """
    journal = assistant.journal
    held = Counter(_key(note.on, note.text) for note in journal.notes())
    items = rows_of(lines, day_first=journal.settings.day_first)
    while True:
        with journal.turn():
            replies = [reply for item in islice(items, _STRIDE) if (reply := _file(assistant, item, held)) is not None]
            last = next(items, None)
            if last is not None and (reply := _file(assistant, last, held)) is not None:
                replies.append(reply)
        yield from replies
        if last is None:
            return


def rows_of(lines: Iterable[str], *, day_first: bool = False) -> Iterator[Opening | Row]:
    """The notes of a notebook in either form, as they come; ImportFileError for a line that cannot be read."""
    lines = iter(lines)
    first: list[str] = []
    for line in lines:
        first.append(line)
        if line.strip("\ufeff \t\r\n"):
            break
    whole = chain(first, lines)
    if first and first[-1].lstrip("\ufeff \t").startswith("{"):
        yield from read_notebook(whole)
        return
    from journalbot.notes.notebooks import read_notebook as read_plain

    for on, text in read_plain(whole, day_first=day_first):
        yield Row(0, on, text)


def _file(assistant: "Assistant", item: Opening | Row, held: Counter[int]) -> Reply | None:
    journal = assistant.journal
    if isinstance(item, Opening):
        open_with(journal, item)
        assistant.words.forget()
        return None
    key = _key(item.on, item.text)
    if held[key] > 0:
        held[key] -= 1
        return Reply("", Note(0, item.on, item.text, item.kind))
    if item.entries is None:
        return assistant.keep(item.text, datetime.date.fromisoformat(item.on))
    if item.kind == "note" and not item.withdrawn:
        item = replace(item, withdrawn=_put_right(assistant, item))
    note, filed = file_row(journal, item)
    assistant.words.take_in([*item.withdrawn, *filed])
    return Reply("", note, tuple(filed), item.withdrawn)


def _put_right(assistant: "Assistant", row: Row) -> tuple[Entry, ...]:
    """What a note given with its entries takes back, where its words correct an earlier one."""
    change = changes.read(assistant, row.text, datetime.date.fromisoformat(row.on))
    if change is None:
        return ()
    if change.undo == 0:
        last = assistant.journal.last_note()
        return tuple(assistant.journal.entries(note=last.number)) if last and not row.entries else ()
    kinds = {entry.kind for entry in row.entries or ()}
    return tuple(e for e in (*(old for old, _ in change.replace), *change.withdraw) if e.kind in kinds)


def _key(on: str, text: str) -> int:
    return hash((on, text))


# ---- every note again


@dataclass(slots=True)
class Reread:
    """What reading everything again came to."""

    notes: int = 0
    changed: list[tuple[Note, list[Entry], list[Entry]]] = field(
        default_factory=list
    )  # note, entries before, entries now
    asking: list[Note] = field(default_factory=list)  # notes that now wait for an answer and did not before
    kept: int = 0  # notes that were corrected, answered or given with their entries


def reread(assistant: "Assistant", progress: Callable[[int, int], None] | None = None) -> Reread:
    """Read every note again, each against the cellar as the notes before it describe it; all in one transaction."""
    journal = assistant.journal
    out = Reread()
    total = journal.count_notes()
    then = _Then(journal)
    with journal.turn():
        waiting = {ask.note for ask in journal.open_asks()}
        for note in journal.notes():
            out.notes += 1
            _again(journal, note, then, note.number in waiting, out)
            then.take_in(note.number)
            if progress and note.number % 100 == 0:
                progress(note.number, total)
        journal.rebuild_projections()
    assistant.words.forget()
    return out


def _again(journal: Journal, note: Note, then: "_Then", waits: bool, out: Reread) -> None:
    from journalbot.notes.reader import read_note

    before = journal.entries(note=note.number)
    if note.kind != "note" or journal.answers(note.number) or (not before and not waits):
        out.kept += note.kind == "note"
        return
    on = datetime.date.fromisoformat(note.on)
    reading = read_note(note.text, on, journal.settings, then.names, then.cellar, {})
    if reading.ask:
        # Entries that stand are better than a question that nobody had: a later reader asks only of what it never read.
        if waits:
            journal.put_ask(reading.ask._replace(note=note.number))
        elif before:
            out.asking.append(note)
        return
    filed = journal.refile(note.number, reading.entries) if not waits else journal.file(note.number, reading.entries)
    if filed is None:
        out.kept += 1
        return
    if waits:
        journal.drop_ask(note.number)
    if [e.to_json() for e in before] != [e.to_json() for e in filed]:
        out.changed.append((note, before, filed))


class _Then:
    """The cellar and the names as the notes up to one describe them."""

    def __init__(self, journal: Journal) -> None:
        self._journal = journal
        self.cellar = Cellar()
        self.names: Names = names_of(self.cellar, journal.taught())

    def take_in(self, number: int) -> None:
        """Take in what now stands in the place of a note."""
        entries = self._journal.entries(seat=number)
        again: set[int] = set()
        for entry in sorted(entries, key=lambda e: e.place):
            again |= self.cellar.apply(entry)
        for batch in again:
            self.cellar.put(fold(batch, self._until(batch, number)))
        learn(self.names, entries, self.cellar)

    def _until(self, batch: int, number: int) -> Iterator[Entry]:
        own = self._journal.entries(batch=batch)
        shared = [e for e in self._journal.entries(kinds=["blend"]) if e.batch != batch and batch in touched(e)]
        return (e for e in chain(own, shared) if e.place[0] <= number)
