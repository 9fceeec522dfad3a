"""Which batch answers to which words: by number, name, fruit, colour and year."""

from collections.abc import Iterable
from typing import NamedTuple

from journalbot.language.lexicon import Lexicon
from journalbot.language.tokens import Token
from journalbot.model import Batch
from journalbot.vocabulary.everyday import EVERYDAY


class BatchRef(NamedTuple):
    """What a reference says of the batch, and the batches of this journal that it fits."""

    fits: tuple[int, ...]
    how: str  # "number", "name", "age" (the new one); "unclear", a misspelling that may be a batch's name
    terms: tuple[str, ...] = ()  # canonical words it was described by
    vintage: int | None = None
    new: int | None = None  # the number given, where the journal has no such batch yet


def terms_of(batch: Batch, lexicon: Lexicon) -> frozenset[str]:
    """The words by which a batch can be called, in canonical form: fruit, variety, colour, and the words of its
    name.
    """
    out: set[str] = set()
    colours: set[str] = set()
    for phrase in (*batch.fruit, batch.name or "", batch.colour or ""):
        words = phrase.lower().replace(",", " ").split()
        tokens = [Token("word", w, w, 0, 0) for w in words]
        for m in lexicon.find(words, tokens):
            if m.kind in HEADS:
                name, colour = m.value
                if name in GENERIC:
                    continue
                out.add(name)
                out.update(w for w in name.split() if len(w) > 2 and w not in GENERIC)
                colours.add(colour or "")
                if colour and not batch.colour:
                    out.add(colour if colour in COLOURS else f"{_SORT}{colour}")
        out.update(w for w in words if len(w) > 2 and w not in _STOP)
    if batch.colour:
        out.add(batch.colour)
    if "cider" in out or "perry" in out:
        out.add(f"{_SORT}fruit")
    out.update(f"{_SORT}{drink}" for fruit, drink in _DRINK_OF.items() if fruit in out)
    if "honey" in out:
        grapes = bool(colours & set(COLOURS))
        out.add(_SORT + ("cyser" if "apple" in out else "pyment" if grapes else "melomel"))
    return frozenset(out)


HEADS = {"variety", "fruit", "colour"}
COLOURS = ("red", "white", "rosé")
_SORT = "sort:"  # what sort of drink a batch is, which counts only where no batch is called so
GENERIC = {"grape", "berry", "fruit", "juice", "must"}  # fruit of any kind, by which no wine is called
_DRINK_OF = {"apple": "cider", "pear": "perry", "honey": "mead"}
_SHORTEST = 3  # letters of a name cut short
_STOP = {
    "the", "and", "for", "with", "from", "juice", "grapes", "grape", "must", "fresh", "wine", "our", "own", "style",
    "some", "bought", "frozen", "fruit", "berries",
}


class BatchIndex:
    """Which batch answers to which words: kept in step with the journal's batches."""

    def __init__(self, lexicon: Lexicon) -> None:
        self._lexicon = lexicon
        self.terms: dict[int, frozenset[str]] = {}
        self.by_term: dict[str, set[int]] = {}
        self.names = Lexicon()
        self.named: dict[str, set[int]] = {}
        self._described: dict[int, tuple[object, ...]] = {}
        self.batches: dict[int, Batch] = {}

    def update(self, batches: Iterable[Batch]) -> None:
        """Take in batches that are new or have changed."""
        for batch in batches:
            self.batches[batch.number] = batch
            described = (batch.fruit, batch.name, batch.colour)
            if self._described.get(batch.number) == described:
                continue
            self._described[batch.number] = described
            for term in self.terms.get(batch.number, ()):
                self.by_term[term].discard(batch.number)
            self.terms[batch.number] = terms = terms_of(batch, self._lexicon)
            for term in terms:
                self.by_term.setdefault(term, set()).add(batch.number)
            if batch.name:
                self.names.add(batch.name.lower(), "name", batch.name.lower())
                self.named.setdefault(batch.name.lower(), set()).add(batch.number)

    def having(self, terms: Iterable[str]) -> set[int]:
        """The batches that answer to every one of the terms (a word of theirs, or a whole name)."""
        sets = [
            self.by_term.get(t, set()) | self.named.get(t, set()) or self.by_term.get(f"{_SORT}{t}", set())
            for t in terms
        ]
        fits = set.intersection(*sets) if sets else set()
        pure = {n for n in fits if len(self.batches[n].fruit) == 1}
        return pure or fits  # "the bacchus" is made of that alone, where a pyment has it too

    def shortened(self, word: str) -> str | None:
        """The one word of these batches that a word is the beginning of (`sang` for sangiovese), if it means nothing
        else.
        """
        if (
            len(word) < _SHORTEST
            or not word.isalpha()
            or word in EVERYDAY
            or word in self._lexicon
            or word in self.by_term
        ):
            return None
        full = {term for term in self.by_term if term.startswith(word) and " " not in term and self.by_term[term]}
        return full.pop() if len(full) == 1 else None

    def vintage(self, number: int) -> int:
        """The batch's vintage, or else the year it was started."""
        return self.batches[number].year or 0
