"""Spelling forgiven, within bounds that can never turn one known word into another.

A misspelling is a word of five letters or more, or of four with one left out, in no table and no list of English
words, that lies within one edit of one known word (two from eight letters, if the first three agree; a swap of
neighbours is one edit), or is that word with its vowels left out. The trade's terms and the journal's names come before
the commonest words of the language. A misspelling of several words of different meaning stays as typed, unless its
neighbours fit only one of them ("crawn cap", "20 grasm"), or all are names of wines and the journal has only one.
"""

from collections.abc import Callable, Iterable, Sequence, Set
from functools import lru_cache

from journalbot.vocabulary.english import english
from journalbot.vocabulary.everyday import EVERYDAY

_SHORTEST = 5  # letters of a word that is mended to
_LONG = 8  # letters from which two edits are forgiven


def skeleton(word: str) -> str:
    """A word without its vowels and doubled letters, as thumbs write it: `eldrflwr` and `elderflower` are one."""
    bare = [c for c in word if c not in "aeiou"]
    return "".join(c for i, c in enumerate(bare) if i == 0 or bare[i - 1] != c)


@lru_cache(maxsize=4)
def _by_length(terms: frozenset[str]) -> dict[int, tuple[str, ...]]:
    """The terms and the commonest words of English by their length; made when first needed, since most notes have no
    misspelling.
    """
    out: dict[int, list[str]] = {}
    for word in sorted(terms | EVERYDAY):
        if word.isalpha():
            out.setdefault(len(word), []).append(word)
    return {length: tuple(words) for length, words in out.items()}


class Speller:
    """Mends words to the terms given, or to a journal's own names; remembers what it has looked up. `meanings` tells
    spellings of one term, `fits` whether a word goes with the one before it and the one behind.
    """

    def __init__(
        self,
        terms: Iterable[str],
        meanings: Callable[[str], Set[object]] | None = None,
        fits: Callable[[str, str, str], bool] | None = None,
    ) -> None:
        self._meanings = meanings or (lambda word: set())
        self._fits = fits or (lambda word, before, after: False)
        self._terms = frozenset(terms)
        self._own: set[str] = set()
        self._cache: dict[str, tuple[str, ...]] = {}

    def add(self, word: str) -> None:
        """Add a name of the journal's own that misspellings may be mended to."""
        if word not in self._own:
            self._own.add(word)
            self._cache.clear()

    def mend(self, words: list[str], known: Callable[[str], bool]) -> list[str]:
        """The words, with those that are nobody's word replaced by the one they must be meant for."""
        out = words
        for i, word in enumerate(words):
            base, mark, ending = word.partition("'")
            if len(base) < _SHORTEST - 1 or not base.isalpha() or self._is_word(word, known):
                continue
            if mark and (ending != "s" or self._is_word(base, known)):
                continue
            near = self._cache.get(base)
            if near is None:
                near = self._cache[base] = self._near(base)
            if not near:
                continue
            before, after = words[i - 1] if i else "", words[i + 1] if i + 1 < len(words) else ""
            fitting = [w for w in near if self._fits(w, before, after)] if len(near) > 1 else ()
            meant = self._one(near) or self._one(fitting) or self._one(self._called(near))
            if meant:
                if out is words:
                    out = list(words)
                out[i] = meant + mark + ending
        return out

    def near(self, word: str) -> tuple[str, ...]:
        """What a word left as typed may be meant for, as found when it was last looked at."""
        return self._cache.get(word, ())

    def _is_word(self, word: str, known: Callable[[str], bool]) -> bool:
        return word in EVERYDAY or word in self._terms or word in self._own or known(word)

    def _near(self, word: str) -> tuple[str, ...]:
        """The words of the first rank that a misspelling may be meant for."""
        from rapidfuzz.distance import OSA
        from rapidfuzz.process import extract

        limit = 1 if len(word) < _LONG else 2
        low = len(word) + 1 if len(word) < _SHORTEST else max(len(word) - limit, _SHORTEST)
        lengths = range(low, len(word) + limit + 1)
        pool = [w for n in lengths for w in _by_length(self._terms).get(n, ())]
        pool += [w for w in self._own if len(w) in lengths and w not in self._terms]
        found = extract(word, pool, scorer=OSA.distance, score_cutoff=limit, limit=None)
        found = [f for f in found if f[1] < 2 or f[0][:3] == word[:3]]
        best = min((f[1] for f in found), default=0)
        near = [f[0] for f in found if f[1] == best] or self._unvowelled(word)
        near = [w for w in near if _thumbed(w) == _thumbed(word)] or near
        first = [w for w in near if w in self._own or w in self._terms] or near
        if first and (word in english() or (word.endswith("s") and (word[:-1] in english() or word[:-1] in EVERYDAY))):
            return ()
        return tuple(sorted(first))

    def _called(self, near: Sequence[str]) -> list[str]:
        """Those by which the journal calls something, where the others are but names of other wines."""
        others = (self._meanings(w) for w in near if w not in self._own)
        name = {"variety", "fruit", "colour"}
        names = all(of and all(isinstance(m, tuple) and m[0] in name for m in of) for of in others)
        return [w for w in near if w in self._own] if names else []

    def _one(self, near: Sequence[str]) -> str:
        """The one word that all of these are spellings or forms of, a term's own name before its other spellings; ""
        where they differ in meaning.
        """
        alike = len({w.removesuffix("s") for w in near}) == 1
        if near and (alike or set.intersection(*(set(self._meanings(w)) for w in near))):
            return max(near, key=lambda w: ({w, w.removesuffix("s")} & set(self._meanings(w)) != set(), len(w)))
        return ""

    def _unvowelled(self, word: str) -> list[str]:
        """The known words that this is with its vowels left out."""
        bare = skeleton(word)
        if len(bare) < 4 or sum(c in "aeiou" for c in word) > 1:
            return []
        pool = (w for w in {*self._terms, *self._own} if len(w) >= _SHORTEST and w[0] == word[0])
        return [w for w in pool if skeleton(w) == bare]


def _thumbed(word: str) -> str:
    """A word as a hurried thumb leaves it: no letter doubled, `-d` for `-ed`."""
    word = f"{word[:-2]}d" if word.endswith("ed") and not word.endswith("eed") else word
    return "".join(c for i, c in enumerate(word) if i == 0 or word[i - 1] != c)
