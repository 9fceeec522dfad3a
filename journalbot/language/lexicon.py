"""Mentions, and the finding of known phrases: a dictionary by first word, the longest phrase wins."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any

from journalbot.language.tokens import Token


@dataclass(frozen=True, slots=True)
class Mention:
    """Something the text speaks of, with its place in the text and among the tokens."""

    kind: str
    value: Any
    first: int  # index of its first token
    last: int  # index after its last token
    start: int  # character offsets in the text
    end: int


class Lexicon:
    """Phrases and what they mean. A phrase may mean several things, of different kinds."""

    def __init__(self, rows: Iterable[tuple[str, str, Any]] = ()) -> None:
        self._by_first: dict[str, list[tuple[tuple[str, ...], str, Any]]] = {}
        self.words: set[str] = set()
        for phrase, kind, value in rows:
            self.add(phrase, kind, value)

    def add(self, phrase: str, kind: str, value: Any) -> None:
        """Add a phrase of one or more words, lower case; a phrase with spaces is known with hyphens too."""
        words = tuple(phrase.split())
        self._insert(words, kind, value)
        if len(words) > 1:
            self._insert(("-".join(words),), kind, value)
        self.words.update(words)

    def _insert(self, words: tuple[str, ...], kind: str, value: Any) -> None:
        bucket = self._by_first.setdefault(words[0], [])
        row = (words, kind, value)
        if row not in bucket:
            bucket.append(row)
            bucket.sort(key=lambda r: -len(r[0]))

    def __contains__(self, word: str) -> bool:
        return word in self.words or word in self._by_first

    def meanings(self, word: str) -> set[tuple[str, str]]:
        """What a single word means, as kinds with their values."""
        return {(kind, str(value)) for phrase, kind, value in self._by_first.get(word, ()) if len(phrase) == 1}

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
