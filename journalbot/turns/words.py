"""The names that the reader knows, kept in step with the journal."""

from collections.abc import Iterable
from operator import attrgetter
from typing import TYPE_CHECKING

from journalbot.journal.cellar import Cellar
from journalbot.journal.fold import names_in, touched, vessels_in
from journalbot.journal.store import Journal
from journalbot.model import BATCH_FIELDS, Batch, Entry, Json

if TYPE_CHECKING:
    from journalbot.language.names import Names

SORTS = ("yeast", "culture", "material", "person", "place")


class Words:
    """`names()` as of now: made when first asked for, added to as entries are filed, made anew where others wrote."""

    def __init__(self, journal: Journal) -> None:
        self._journal = journal
        self._names: Names | None = None
        self._of: Cellar | None = None  # the cellar that the names were taken from

    def names(self) -> "Names":
        """Every name known to the reader now."""
        cellar = self._journal.cellar()
        if self._names is None or self._of is not cellar:
            self._names, self._of = names_of(cellar, self._journal.taught()), cellar
        return self._names

    def take_in(self, entries: Iterable[Entry]) -> None:
        """Learn what entries just filed or withdrawn have changed."""
        if self._names is not None and self._of is self._journal.cellar():
            learn(self._names, entries, self._of)

    def forget(self) -> None:
        """Take the names anew when they are next asked for."""
        self._names = None

    def teach(self, word: str, meaning: Json) -> Json | None:
        """Remember a word taught, for good; what it was taught to mean before."""
        earlier = self._journal.taught().get(word)
        self._journal.teach(word, meaning)
        self.forget()
        return earlier

    def unteach(self, word: str) -> None:
        """Forget a word taught."""
        with self._journal.turn():
            self._journal.sql("DELETE FROM taught WHERE word = ?", (word,))
        self.forget()


def names_of(cellar: Cellar, taught: dict[str, Json]) -> "Names":
    """The vocabulary's names with those of this cellar and the words taught."""
    from journalbot.language.names import Names

    names = Names()
    names.update_batches(b for b in cellar.batches.values() if _begun(b))
    for sort in SORTS:
        for known in cellar.names.get(sort, {}).values():
            if known.uses > 0:
                names.learn(sort, known.name)
    for vessel in cellar.known_vessels.values():
        if vessel.uses > 0:
            names.learn("vessel", vessel.name)
    for word, meaning in taught.items():
        give_meaning(names, word, meaning)
    return names


def learn(names: "Names", entries: Iterable[Entry], cellar: Cellar) -> None:
    """Take in the batches that entries have changed, and the names that they hold."""
    entries = list(entries)
    changed = {number for entry in entries for number in touched(entry)}
    batches = (cellar.batches[n] for n in sorted(changed) if n in cellar.batches)
    names.update_batches(b for b in batches if _begun(b))
    for entry in entries:
        for sort, name in names_in(entry):
            names.learn(sort, name)
        for name in vessels_in(entry):
            names.learn("vessel", name)


_content = attrgetter(*(name for name in BATCH_FIELDS if name not in ("number", "last_note", "last_id", "latest")))
_NOTHING = _content(Batch(0))


def _begun(batch: Batch) -> bool:
    """Whether more is known of a batch than plans: one laid out ahead keeps its number for the note that starts it."""
    return bool(_content(batch) != _NOTHING)


def give_meaning(names: "Names", word: str, meaning: Json) -> None:
    """Let the reader take a word for what it was taught to mean: {"batch": 6}, {"vessel": "15 gallon barrel"},
    {"word": "tablet"} …"""
    ((sort, target),) = meaning.items()
    if sort == "batch":
        names.batches.names.add(word, "name", word)
        for part in word.split():
            names.batches.by_term.setdefault(part, set()).add(int(target))
    elif sort == "word":
        names.teach(word, target)
    elif sort == "vessel":
        names.vessels.add(word, "vessel", target)
    else:
        names.own.add(word, sort, target)
