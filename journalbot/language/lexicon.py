"""Mentions, and the finding of known phrases: a dictionary by first word, the longest phrase wins."""

import itertools
from collections.abc import Iterable, Sequence
from typing import Any, NamedTuple

from journalbot.language.tokens import Token


class Mention(NamedTuple):
    """Something the text speaks of, with its place in the text and among the tokens."""

    kind: str
    value: Any
    first: int  # index of its first token
    last: int  # index after its last token
    start: int  # character offsets in the text
    end: int


_Row = tuple[tuple[str, ...], str, Any]  # the words of a phrase, its kind, what it means


def _longest_first(row: _Row) -> int:
    return -len(row[0])


class Lexicon:
    """Phrases and what they mean. A phrase may mean several things, of different kinds."""

    def __init__(self, rows: Iterable[tuple[str, str, Any]] = ()) -> None:
        self._by_first: dict[str, list[_Row]] = {}
        self.words: set[str] = set()
        self._pairs: set[tuple[str, str]] = set()
        for row in rows:
            self._insert(*row)
        for first, bucket in self._by_first.items():
            if len(bucket) > 1:
                self._by_first[first] = sorted(dict.fromkeys(bucket), key=_longest_first)

    def add(self, phrase: str, kind: str, value: Any) -> None:
        """Add a phrase of one or more words, lower case; a phrase with spaces is known with hyphens too."""
        for first in self._insert(phrase, kind, value):
            self._by_first[first] = sorted(dict.fromkeys(self._by_first[first]), key=_longest_first)

    def _insert(self, phrase: str, kind: str, value: Any) -> tuple[str, ...]:
        """The first words under which the phrase now stands, out of order."""
        words = tuple(phrase.split())
        self._by_first.setdefault(words[0], []).append((words, kind, value))
        if len(words) == 1:
            self.words.add(words[0])
            return words
        self.words.update(words)
        joined = "-".join(words)
        self._by_first.setdefault(joined, []).append(((joined,), kind, value))
        return words[0], joined

    def __contains__(self, word: str) -> bool:
        return word in self.words or word in self._by_first

    def meanings(self, word: str) -> set[tuple[str, str]]:
        """What a single word means, as kinds with their values; all forms of a verb mean the same."""
        found = ((kind, value) for phrase, kind, value in self._by_first.get(word, ()) if len(phrase) == 1)
        return {(kind, str(value[:2] if kind == "cue" else value)) for kind, value in found}

    def pairs(self) -> set[tuple[str, str]]:
        """Words that stand side by side in a phrase; gathered when first needed."""
        if not self._pairs:
            rows = (phrase for bucket in self._by_first.values() for phrase, _, _ in bucket if len(phrase) > 1)
            self._pairs.update(pair for phrase in rows for pair in itertools.pairwise(phrase))
        return self._pairs

    def find(self, words: Sequence[str], tokens: Sequence[Token]) -> list[Mention]:
        """Every phrase found; of those of one kind that start at one word, the longest only."""
        out: list[Mention] = []
        by_first = self._by_first
        for i, word in enumerate(words):
            bucket = by_first.get(word)
            if bucket is None:
                continue
            seen: dict[str, int] = {}
            for phrase, kind, value in bucket:
                n = len(phrase)
                if seen.get(kind, n) > n:
                    continue
                if n == 1 or tuple(words[i : i + n]) == phrase:
                    seen[kind] = n
                    out.append(Mention(kind, value, i, i + n, tokens[i].start, tokens[i + n - 1].end))
        return out
