"""Corrections and undo: what a line puts right, done and told. Nothing is erased; each change can be undone in turn."""

import datetime
from collections.abc import Callable, Iterator
from typing import TYPE_CHECKING

from journalbot import replies
from journalbot.journal.store import Journal
from journalbot.model import Ask, Entry, Note, Reply
from journalbot.turns import sayings

if TYPE_CHECKING:
    from journalbot.assistant import Assistant
    from journalbot.notes.corrections import Change

# Kept beside a note's answers, as distances so that they hold in another journal too: how many notes later its question
# was answered, and how many notes back stands what an undo undoes.
ANSWERED = "answered"
_UNDOES = "undoes"
_NOTHING = "There is nothing to undo."


def put_right(assistant: "Assistant", text: str, on: datetime.date, revert: Callable[[], str] | None) -> Reply | None:
    """Do what a correction says; None where the line is none. `revert` takes back a setting changed just before."""
    if sayings.plain(text) in sayings.REDO:
        return _put_back(assistant, text, on)
    change = read(assistant, text, on)
    if change is None:
        return None
    if change.ask:
        return _unclear(assistant, text, on, change.ask)
    if change.undo is not None:
        if change.undo == 0 and revert:
            return Reply(f"Undone. {revert()}")
        return _undo(assistant, text, on, change.undo)
    return _change(assistant, text, on, change)


def read(assistant: "Assistant", text: str, on: datetime.date) -> "Change | None":
    """What a line corrects, if it corrects anything."""
    from journalbot.notes.corrections import read_correction

    journal = assistant.journal
    return read_correction(text, on, journal.settings, assistant.words.names(), journal.cellar(), journal.entries)


def _unclear(assistant: "Assistant", text: str, on: datetime.date, ask: Ask) -> Reply:
    """A correction that could be meant in several ways is kept as typed, and nothing is changed on a guess."""
    note = assistant.journal.add_note(on.isoformat(), text, "correction")
    if ask.what != "batch" or not ask.about:
        return Reply(replies.UNMATCHED, note, ask=ask)

    def named(batch: int) -> Reply | None:
        return put_right(assistant, text.replace(ask.about, f"batch {batch}", 1), on, None)

    assistant.hold(ask, named)
    return Reply(replies.asked(ask, assistant.journal.cellar()), note, ask=ask)


def _change(assistant: "Assistant", text: str, on: datetime.date, change: "Change") -> Reply:
    journal = assistant.journal
    with journal.turn():
        note = journal.add_note(on.isoformat(), text, "correction")
        pairs = [(old, journal.replace(old.id, new, note.number)) for old, new in change.replace]
        gone = journal.withdraw([e.id for e in change.withdraw], note.number)
        added = journal.file(note.number, [*change.add, *_told_beside(assistant, note, change)], origin="corrected")
        withdrawn, entries = [*(old for old, _ in pairs), *gone], [*(new for _, new in pairs), *added]
        assistant.words.take_in([*withdrawn, *entries])
    said = replies.corrected(gone, added, pairs, journal.cellar(), note.on)
    return Reply(said, note, tuple(entries), tuple(withdrawn))


def _told_beside(assistant: "Assistant", note: Note, change: "Change") -> list[Entry]:
    """What a correction's line tells besides, in sentences after it: doses and measurements, since the rest mostly
    explains the mistake. Where something must be asked, nothing.
    """
    first, last = change.rest
    if last <= first:
        return []
    # Blanks keep what is told in its place among the line's characters.
    reading = assistant.reading(note._replace(text=" " * first + note.text[first:last]), {})
    return [] if reading.ask else [e for e in reading.entries if e.get("unit") or e.get("material")]


def _undo(assistant: "Assistant", text: str, on: datetime.date, number: int) -> Reply:
    """Undo what a note did, or (0) what the latest did that has not been undone, so that undo after undo goes back."""
    journal = assistant.journal
    said = journal.note(number) if number else _latest(journal)
    target = _filed_by(journal, said) if said else None
    if said is None or target is None:
        return Reply(f"There is no note {number}." if number else _NOTHING)
    with journal.turn():
        note = journal.add_note(on.isoformat(), text, "correction")
        journal.answer_ask(note.number, {_UNDOES: note.number - said.number})
        journal.drop_ask(target.number)
        gone, back = _take_back(journal, target, note.number)
        assistant.words.take_in([*gone, *back])
        again = assistant.reading(target, {}).ask if said.kind == "answer" else None
        if again:  # what was answered is to be asked as before
            journal.put_ask(again)
    undone = replies.undone(target, gone, back, journal.cellar(), note.on)
    return Reply(f"{undone} {assistant.put(again)}" if again else undone, note, tuple(back), tuple(gone), again)


def _put_back(assistant: "Assistant", text: str, on: datetime.date) -> Reply:
    """Undo the last undo."""
    journal = assistant.journal
    for note, target, _ in _backwards(journal):
        if target and not _undone_by(journal, target):
            return _undo(assistant, text, on, note.number)
    return Reply("There is nothing to put back.")


def _take_back(journal: Journal, target: Note, by: int) -> tuple[list[Entry], list[Entry]]:
    """Take back what a note filed and what became of it, bring back what it took away: (withdrawn, standing again)."""
    withdrawn, new = journal.changes_by(target.number)
    theirs = {e.id: e for e in (*new, *journal.entries(seat=target.number))}
    makers = {journal.history(entry=e.id)[-1].note for e in withdrawn if not _standing(journal, e)}
    gone = journal.withdraw([i for i, e in theirs.items() if _standing(journal, e)], by)
    # What this note took away may have come back with an undo and gone again when that was undone.
    restored = [journal.restore(m, by)[1] for m in sorted(makers) if m == target.number or _undone_by(journal, m)]
    return gone, [entry for entries in restored for entry in entries]


def _latest(journal: Journal) -> Note | None:
    """The latest note whose effect stands."""
    waiting = {ask.note for ask in journal.open_asks()}
    for note, target, undone in _backwards(journal):
        filed = None if target else _filed_by(journal, note)
        if filed and (filed.number in waiting or _stands(journal, filed.number, undone)):
            return note
    return None


def _backwards(journal: Journal) -> Iterator[tuple[Note, int, set[int]]]:
    """The notes that have not been undone, the latest first: each with the number of the note that it undoes (else 0),
    and the numbers of the later ones' targets."""
    undone: set[int] = set()
    for number in range(journal.count_notes(), 0, -1):
        note = journal.note(number)
        if note is None or number in undone:
            continue
        target = _undone_by(journal, number) if note.kind == "correction" else 0
        if target:
            undone.add(target)
        yield note, target, undone


def _undone_by(journal: Journal, number: int) -> int:
    """The number of the note that an undo undoes; 0 for any other note."""
    back = journal.answers(number).get(_UNDOES)
    return number - back if isinstance(back, int) else 0


def _filed_by(journal: Journal, note: Note) -> Note | None:
    """For an answer, the note that it let file; any other note as it is."""
    if note.kind != "answer":
        return note
    before = (n for k in range(note.number - 1, 0, -1) if (n := journal.note(k)))
    return next((n for n in before if journal.answers(n.number).get(ANSWERED) == note.number - n.number), None)


def _stands(journal: Journal, number: int, undone: set[int]) -> bool:
    """Whether anything that a note changed is still as it made it."""
    withdrawn, new = journal.changes_by(number)
    return any(_standing(journal, e) for e in new) or any(
        e.note not in undone and not _standing(journal, e) for e in withdrawn
    )


def _standing(journal: Journal, entry: Entry) -> bool:
    return any(e.id == entry.id for e in journal.entries(note=entry.note))
