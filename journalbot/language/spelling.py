"""Spelling forgiven, within bounds that can never turn one known word into another.

A misspelling is a whole word of five letters or more, in no table and no everyday word, that begins with the same
letter as
one known word and lies within one edit of it (two from eight letters if the first three agree; a swap of neighbours is
one
edit), or is that word with its vowels left out. Two known words equally near, of different meaning: it stays as typed.
"""

from collections.abc import Callable, Iterable, Set

from journalbot.vocabulary.everyday import EVERYDAY


def skeleton(word: str) -> str:
    """A word without its vowels and doubled letters, as thumbs write it: `eldrflwr` and `elderflower` are one."""
    bare = [c for c in word if c not in "aeiou"]
    return "".join(c for i, c in enumerate(bare) if i == 0 or bare[i - 1] != c)


def _mendable(word: str) -> bool:
    return len(word) >= 5 and word.isalpha()


class Speller:
    """Mends words against a vocabulary; remembers what it has looked up. `meanings` tells spellings of one term."""

    def __init__(self, words: Iterable[str], meanings: Callable[[str], Set[object]] | None = None) -> None:
        self._meanings = meanings or (lambda word: set())
        self._known: set[str] = set(words)
        self._by_letter: dict[str, list[str]] = {}  # made when first needed: most notes have no misspelling
        self._cache: dict[str, str] = {}

    def add(self, word: str) -> None:
        """Add a word that misspellings may be mended to."""
        if word in self._known:
            return
        self._known.add(word)
        if self._by_letter and _mendable(word):
            self._by_letter.setdefault(word[0], []).append(word)
        self._cache.clear()

    def mend(self, words: list[str], known: Callable[[str], bool]) -> list[str]:
        """The words, with those that are nobody's word replaced by the one they must be meant for."""
        out = words
        for i, word in enumerate(words):
            if len(word) < 5 or not word.isalpha() or word in EVERYDAY or word in self._known or known(word):
                continue
            mended = self._cache.get(word)
            if mended is None:
                mended = self._cache[word] = self._nearest(word)
            if mended != word:
                if out is words:
                    out = list(words)
                out[i] = mended
        return out

    def _pool(self, letter: str) -> list[str]:
        if not self._by_letter:
            for word in filter(_mendable, sorted(self._known)):
                self._by_letter.setdefault(word[0], []).append(word)
        return self._by_letter.get(letter, [])

    def _nearest(self, word: str) -> str:
        from rapidfuzz import process
        from rapidfuzz.distance import OSA

        limit = 1 if len(word) < 8 else 2
        pool = self._pool(word[0])
        found = process.extract(word, pool, scorer=OSA.distance, score_cutoff=limit, limit=3)
        found = [f for f in found if f[1] < 2 or f[0][:3] == word[:3]]
        if not found:
            short = len(skeleton(word)) > 3 and sum(c in "aeiou" for c in word) <= 1
            same = [w for w in pool if skeleton(w) == skeleton(word)] if short else []
            return same[0] if len(same) == 1 else word
        best = min(f[1] for f in found)
        nearest = [f[0] for f in found if f[1] == best]
        stem = {w[:-1] if w.endswith("s") else w for w in nearest}
        alike = len(stem) == 1 or bool(set.intersection(*(set(self._meanings(w)) for w in nearest)))
        return str(nearest[0]) if alike else word
