"""Words that a person teaches the journal: `tbl = tablet`, `'the pig' is the 15 gallon barrel`, `when I say bubbly I mean batch 6`."""

import re
from dataclasses import dataclass

from journalbot.language.names import Names
from journalbot.language.tokens import tokenize

_QUOTED = r"['\"“‘]([^'\"”’]{2,40})['\"”’]"
_FORMS = (
    re.compile(rf"^\s*{_QUOTED}\s+(?:is|means|stands for|=)\s+(?:the\s+|my\s+|our\s+)?(.{{2,60}}?)\s*[.!]?\s*$", re.IGNORECASE),
    re.compile(r"^\s*(?:when|if) i (?:say|write|type)\s+['\"“‘]?(.{2,40}?)['\"”’]?,?\s+i mean\s+(?:the\s+|my\s+|our\s+)?(.{2,60}?)\s*[.!]?\s*$", re.IGNORECASE),
    re.compile(rf"^\s*by\s+{_QUOTED}\s+i mean\s+(?:the\s+|my\s+)?(.{{2,60}}?)\s*[.!]?\s*$", re.IGNORECASE),
)
_EQUALS = re.compile(r"(?:^|[\s,;:.(])([^\W\d_]{2,8})\s*=\s*([^\W\d_]{3,20}(?: [^\W\d_]{2,12})?)(?=\s*(?:[,;.)\n]|$))")


@dataclass(frozen=True, slots=True)
class Teaching:
    """A word or phrase, and what the person means by it."""

    word: str
    meaning: str


def read_teachings(text: str, names: Names) -> list[Teaching]:
    """What a text teaches: a sentence that is a definition, or shorthand set equal to a word the vocabulary knows."""
    for form in _FORMS:
        if m := form.match(text):
            return [Teaching(m[1].strip().lower(), m[2].strip())]
    return [Teaching(m[1].lower(), m[2].lower()) for m in _EQUALS.finditer(text) if _is_known(m[2], names) and not _is_known(m[1], names)]


def _is_known(phrase: str, names: Names) -> bool:
    return all(names.knows(t.low) for t in tokenize(phrase))
