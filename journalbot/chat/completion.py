"""Completion from the journal's own names, and from the ways in which the person's own notes begin."""

from collections import Counter
from collections.abc import Iterable, Iterator

from prompt_toolkit.completion import CompleteEvent, Completer, Completion
from prompt_toolkit.document import Document

from journalbot.journal.cellar import Cellar
from journalbot.journal.store import Journal
from journalbot.phrases import label
from journalbot.screen import harmless

_RECENT = 400  # notes whose beginnings are learnt
_BEGINNING = 3  # words
_MOST = 40  # completions offered at once


class Completions(Completer):
    """Offers names of batches, vessels, yeasts, people … for the words before the cursor; beginnings at the start."""

    def __init__(self, journal: Journal) -> None:
        self._journal = journal
        self._of: Cellar | None = None
        self._last = -1
        self._names: list[str] = []
        self._starters: list[str] = []

    def get_completions(self, document: Document, complete_event: CompleteEvent) -> Iterator[Completion]:
        """What the text before the cursor may be the beginning of."""
        self._renew()
        before = document.text_before_cursor
        yield from _offers(before, self._names, self._starters)

    def _renew(self) -> None:
        cellar, last = self._journal.cellar(), self._journal.count_notes()
        if cellar is not self._of or last != self._last:
            self._of, self._last = cellar, last
            self._names = names_of(cellar)
            recent = self._journal.notes(max(1, last - _RECENT + 1))
            self._starters = starters(note.text for note in recent if note.kind == "note")


def names_of(cellar: Cellar) -> list[str]:
    """Every name that a note may hold, those of wine under way first."""
    batches = sorted(cellar.batches.values(), key=lambda b: (not b.under_way, -b.number))
    called = [name for b in batches for name in (f"batch {b.number}", b.name or label(b)) if name]
    vessels = [v.name for v in cellar.vessels.values()]
    words = [*called, *vessels, *cellar.yeasts, *cellar.cultures, *cellar.people, *cellar.places, *cellar.materials]
    return list(dict.fromkeys(w for w in words if w == harmless(w) and "\n" not in w))


def starters(texts: Iterable[str]) -> list[str]:
    """The first words of notes that begin alike, the commonest first."""
    counts: Counter[str] = Counter()
    for text in texts:
        words = text.split()[: _BEGINNING + 1]
        for n in range(1, min(len(words), _BEGINNING + 1)):
            beginning = " ".join(words[:n])
            if all(w.strip(",.:").isalpha() for w in words[:n]) and beginning == harmless(beginning):
                counts[beginning] += 1
    return [b for b, n in counts.most_common(200) if n > 1]


def _offers(before: str, names: Iterable[str], beginnings: Iterable[str]) -> Iterator[Completion]:
    low = before.lower()
    found: dict[tuple[str, int], None] = {}
    if low.strip():
        for beginning in beginnings:
            if beginning.lower().startswith(low.lstrip()) and beginning.lower() != low.strip():
                found[(f"{beginning} ", -len(low.lstrip()))] = None
    words = low.split(" ")
    for count in range(min(4, len(words)), 0, -1):  # the longest run of words that a name may begin with
        typed = " ".join(words[-count:])
        if typed.strip():
            for name in names:
                if name.lower().startswith(typed) and name.lower() != typed:
                    found[(name, -len(typed))] = None
    for text, start in list(found)[:_MOST]:
        yield Completion(text, start_position=start)
