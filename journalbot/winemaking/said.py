"""Which known phrases a note states, and which it only denies."""

import re
from collections.abc import Collection
from functools import lru_cache

_PAUSE = re.compile(r"[.,;:!?()\n]+(?!\d)|\bbut\b|\balthough\b|\bthough\b")
_WORD = re.compile(r"[^\W_]+(?:['.-][^\W_]+)*")
_LONGEST = 4  # words in a phrase
# Words that deny what comes within three words after them ("no hint of vinegar"); "not sure" denies nothing.
_DENIALS = frozenset((
    "no", "not", "without", "never", "none", "zero", "hardly", "isn't", "wasn't", "don't", "didn't", "doesn't",
    "hasn't", "haven't"))  # fmt: skip
_REACH = 3


def phrases(text: str, known: Collection[str], undone: Collection[str] = ()) -> frozenset[str]:
    """The phrases of `known` (lower case, one to four words) that a text states: the longest at each place, so that
    "egg whites" is never "egg"; those that it denies left out.

    After a word of `undone` in the same clause, what came before is there no more ("the egg smell has gone").
    """
    return frozenset(phrase for clause in clauses_with(text, known, undone) for phrase in clause)


def clauses_with(text: str, known: Collection[str], undone: Collection[str] = ()) -> list[frozenset[str]]:
    """As phrases(), clause by clause; clauses that state none left out."""
    found = (frozenset(_in_clause(clause, known, undone)) for clause in _clauses(text))
    return [clause for clause in found if clause]


@lru_cache(maxsize=256)
def _clauses(text: str) -> tuple[tuple[str, ...], ...]:
    low = text.lower().replace("’", "'")
    return tuple(tuple(_WORD.findall(part)) for part in _PAUSE.split(low))


def _in_clause(words: tuple[str, ...], known: Collection[str], undone: Collection[str]) -> list[str]:
    out = []
    at = 0
    while at < len(words):
        size = next((n for n in range(_LONGEST, 0, -1) if " ".join(words[at : at + n]) in known), 0)
        if size and not _denied(words, at) and not any(w in undone for w in words[at + size :]):
            out.append(" ".join(words[at : at + size]))
        at += size or 1
    return out


def _denied(words: tuple[str, ...], first: int) -> bool:
    before = words[max(0, first - _REACH) : first]
    return any(w in _DENIALS and (w != "not" or before[i + 1 : i + 2] != ("sure",)) for i, w in enumerate(before))
