"""What this journal calls things: its batches, vessels, yeasts, cultures, people and places, and taught words."""

from collections.abc import Iterable

from journalbot.language.batch_index import BatchIndex
from journalbot.language.lexicon import Lexicon
from journalbot.language.spelling import Speller
from journalbot.language.static import fits, lexicon, meanings, plain_words, terms
from journalbot.language.tokens import Token, tokenize
from journalbot.model import Batch

_SORTS = {"yeast", "culture", "material", "person", "place", "vessel"}


class Names:
    """The names known to the reader: the vocabulary's, and those first met in this journal."""

    def __init__(self) -> None:
        self.lexicon = lexicon()
        self.own = Lexicon()
        self.vessels = Lexicon()
        self.batches = BatchIndex(self.lexicon)
        self._plain = plain_words()
        self._speller = Speller(terms(), meanings, fits)
        self._learned: set[tuple[str, str]] = set()
        self._shorthand: dict[str, str] = {}

    def learn(self, sort: str, name: str) -> None:
        """Take in a name of a sort (`yeast`, `culture`, `vessel`, `person` …) met in the journal or taught."""
        low = " ".join(t.low for t in tokenize(name))
        if not low or (sort, low) in self._learned or sort not in _SORTS:
            return
        self._learned.add((sort, low))
        if sort == "vessel":
            self.vessels.add(low, "vessel", low)
        elif sort == "material" and low in self.lexicon:
            return
        else:
            self.own.add(low, sort, name)
        if sort != "person":  # "Karen" is not "Maren" misspelt
            for word in low.split():
                self._speller.add(word)

    def update_batches(self, batches: Iterable[Batch]) -> None:
        """Take in batches that are new or have changed."""
        batches = list(batches)
        self.batches.update(batches)
        for batch in batches:
            for term in self.batches.terms[batch.number]:
                for word in term.split():
                    self._speller.add(word)

    def teach(self, word: str, meaning: str) -> None:
        """Take in shorthand for a word or phrase that the vocabulary knows (`tbl` for `tablet`, `pd` for `punched
        down`).
        """
        tokens = tokenize(meaning.lower())
        if len(tokens) == 1:
            self._shorthand[word.lower()] = tokens[0].low
            return
        for m in self.lexicon.find([t.low for t in tokens], tokens):
            if m.first == 0 and m.last == len(tokens):
                self.own.add(word.lower(), m.kind, m.value)

    def teach_batch(self, word: str, number: int) -> None:
        """Take in a name by which the person calls a batch."""
        self.batches.names.add(word.lower(), "name", word.lower())
        self.batches.named.setdefault(word.lower(), set()).add(number)

    def knows(self, word: str) -> bool:
        """Whether a word is in the vocabulary or among the journal's names."""
        return self._known(word)

    def mend(self, tokens: list[Token]) -> list[Token]:
        """The tokens with shorthand written out and misspellings mended (see `language.spelling`) in their `low`."""
        words = [t.low for t in tokens]
        meant = [self._shorthand.get(w, w) for w in words] if self._shorthand else words
        meant = self._speller.mend(meant, self._known)
        if meant is words:
            return tokens
        return [t if t.low == w else t._replace(low=w) for t, w in zip(tokens, meant, strict=True)]

    def may_name_a_batch(self, word: str) -> bool:
        """Whether a word is a misspelling that could be meant for a batch's name, and for something else as well."""
        near = self._speller.near(word)
        return any(self.batches.by_term.get(w) for w in near) and not self._known(word)

    def _known(self, word: str) -> bool:
        return (
            word in self._plain
            or word in self.lexicon
            or word in self.own
            or word in self.vessels
            or word in self.batches.by_term
            or (word.endswith("s") and word[:-1] in self.lexicon.words)
        )
