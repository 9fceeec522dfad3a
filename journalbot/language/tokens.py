"""Text to tokens: one pass, one compiled pattern; every token keeps its span in the untouched text."""

import re
from collections.abc import Sequence
from typing import NamedTuple


class Token(NamedTuple):
    """A word, a number or a mark of punctuation."""

    kind: str  # "word", "number" or "mark"
    text: str  # as typed
    low: str  # lower case, typographic quotes made plain; as meant, where it is misspelt
    start: int
    end: int


# A number keeps its decimal part (point or comma) and an attached fraction is told from a date later on; a word may
# hold
# digits, inner hyphens, apostrophes and dots between letters ("k-meta", "B3", "TQ-55", "don't", "s.g.").
_TOKEN = re.compile(
    r"(?P<number>(?<![\w.,])(?:\d{1,3}(?:,\d{3})+(?!\d)(?:\.\d+)?|\d+[.,]\d+|[.,]\d+(?!\w)|\d+))"
    r"|(?P<word>[xX](?=\d)|[^\W\d_](?:[\w'’]|[-.](?=\w))*|[^\W_]+(?:[-'’](?=\w)[\w'’]*)*)"
    r"|(?P<mark>->|=>|→|\n|[^\w\s]|_)"
)


def tokenize(text: str) -> list[Token]:
    """The tokens of `text` in order; white space other than line breaks gives none."""
    out = []
    for m in _TOKEN.finditer(text):
        kind = m.lastgroup or "mark"
        word = m.group()
        out.append(Token(kind, word, word.lower().replace("’", "'"), m.start(), m.end()))
    return out


def as_meant(text: str, tokens: Sequence[Token], words: Sequence[str], first: int, last: int) -> str:
    """The text of a range of tokens, with misspelt words put right in the letter case that they have. `words` are the
    words meant.
    """
    out, end = "", tokens[first].start
    for token, word in zip(tokens[first:last], words[first:last], strict=True):
        typed = token.text
        if word != typed and word != typed.lower().replace("’", "'"):
            typed = word.upper() if typed.isupper() else word.capitalize() if typed[0].isupper() else word
        out, end = f"{out}{text[end : token.start]}{typed}", token.end
    return out
