"""Full-text search over notes: endings forgiven, the last word may be unfinished, any text is safe to look for."""

import re
from typing import NamedTuple

from journalbot.journal.file import JournalFile

_PART = re.compile(r'"([^"]*)"|([^\s"]+)')


class Found(NamedTuple):
    """A note that a search found."""

    note: int
    snippet: str  # the words around what was found
    rank: float  # lower is better


class Search(JournalFile):
    """The part of a journal that finds words in notes."""

    def search(self, words: str, *, limit: int = 20, any_word: bool = False, prefix: bool = True) -> list[Found]:
        """The notes that hold all of the words (or any), the best first; words in double quotes must be neighbours."""
        expression = match_expression(words, any_word=any_word, prefix=prefix)
        if not expression:
            return []
        rows = self.sql(
            "SELECT rowid, snippet(notes_fts, 0, '', '', '…', 16), rank FROM notes_fts WHERE notes_fts MATCH ? "
            "ORDER BY rank, rowid LIMIT ?", (expression, limit))
        return [Found(*row) for row in self.rows(rows)]

    def search_terms(self, prefix: str) -> list[str]:
        """The word stems that notes hold and that begin so, for mending a misspelt word."""
        low = prefix.lower()
        rows = self.sql("SELECT term FROM notes_terms WHERE term >= ? AND term < ?", (low, low + "\U0010ffff"))
        return [term for (term,) in self.rows(rows)]


def match_expression(words: str, *, any_word: bool = False, prefix: bool = True) -> str:
    """The words as an FTS5 expression in which nothing typed has a meaning of its own; "" where there is no word."""
    # https://www.sqlite.org/fts5.html, section 3: a string is in double quotes, a star after it asks for a prefix.
    parts = [(quoted or word, bool(word)) for quoted, word in _PART.findall(words.replace("\0", " "))]
    parts = [(text, single) for text, single in parts if any(c.isalnum() for c in text)]
    if not parts:
        return ""
    strings = [f'"{text}"' for text, _ in parts]
    if prefix and parts[-1][1] and words[-1:].isalnum():
        strings[-1] += " *"
    return (" OR " if any_word else " ").join(strings)
