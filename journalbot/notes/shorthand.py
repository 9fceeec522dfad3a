"""Shorthand that a note sets equal to a word the vocabulary knows: `tbl = tablet`, `pd = punched down`."""

import re

from journalbot.language.names import Names
from journalbot.language.tokens import tokenize

_EQUALS = re.compile(r"(?:^|[\s,;:.(])([^\W\d_]{2,8})\s*=\s*([^\W\d_]{3,20}(?: [^\W\d_]{2,12})?)(?=\s*(?:[,;.)\n]|$))")


def read_shorthand(text: str, names: Names) -> list[tuple[str, str]]:
    """Each new word of shorthand in a note, with the known word or phrase that it stands for."""
    found = ((m[1].lower(), m[2].lower()) for m in _EQUALS.finditer(text))
    return [(word, meaning) for word, meaning in found if _known(meaning, names) and not _known(word, names)]


def _known(phrase: str, names: Names) -> bool:
    return all(names.knows(t.low) for t in tokenize(phrase))
