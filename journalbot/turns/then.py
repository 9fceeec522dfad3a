"""The cellar for a note that is read later than it was typed: "it" is the batch spoken of before that note."""

import copy

from journalbot.journal.cellar import Cellar
from journalbot.journal.store import Journal
from journalbot.model import Note

_BACK = 200  # notes to go back over for one that speaks of a batch


def cellar_for(journal: Journal, note: Note) -> Cellar:
    """The journal's cellar, in which the batch last spoken of is that of the notes before this one."""
    cellar = journal.cellar()
    last = cellar.last_spoken
    if last is None or cellar.batches[last].last_note < note.number:
        return cellar
    as_was = copy.copy(cellar)
    as_was._spoken = _spoken_before(journal, note.number)
    return as_was


def _spoken_before(journal: Journal, number: int) -> int | None:
    for earlier in range(number - 1, max(0, number - _BACK), -1):
        spoken = [e for e in journal.entries(note=earlier) if e.batch is not None]
        if spoken:
            return max(spoken, key=lambda e: e.id).batch
    return None
