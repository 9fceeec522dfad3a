"""What makes a line a correction: where the words stand that say so, how far what it puts right reaches, and which of
its figures no longer hold.
"""

import re
from collections.abc import Sequence
from typing import NamedTuple

from journalbot.language.lexicon import Mention
from journalbot.language.text import Text
from journalbot.language.tokens import tokenize
from journalbot.notes.corrected import number_of
from journalbot.vocabulary.corrections import (
    FIRM,
    MARKERS,
    NEGATED,
    OPENING_WORDS,
    SAYING_NO,
    TAKE_BACK,
    WRITTEN,
)

VALUES = ("reading", "amount", "number", "temperature", "bottles", "code", "score", "money", "percent", "times")
_COUNTABLE = ("reading", "amount", "number", "temperature", "score", "money", "bottles")
_PAUSES = frozenset((",", ":", "-", "—", "."))
_ENDS = frozenset((".", "!", "?", ";", "—", "\n"))
_GOING_ON = frozenset(("not", "and", "instead", "that", "which", "of", "for", "on", "in", "to", "it", "was"))
_SAID = frozenset(("was", "were", "is", "cost", "came", "went", "gave"))
_SHORT = 4  # tokens after a "no," that only put one thing right
_LATE = 6  # tokens between "was" and an "actually" that goes with it
_OPENINGS = frozenset(p for p in MARKERS if p.split()[0] in OPENING_WORDS) | {"make it"}
_MARKERS = tuple((phrase, phrase.split()) for phrase in MARKERS)
_TAKE_BACK = sorted((p.split() for p in TAKE_BACK), key=len, reverse=True)
_UNSAID = frozenset(("delete", "scratch", "undo", "strike", "remove", "disregard", "ignore", "cancel", "scrap", "bin"))
_TOLD = frozenset(("note", "one"))


class Scope(NamedTuple):
    """Where a correction stands in its line: the words that make it one, and the tokens that it is said in."""

    first: int
    last: int  # index after the last of the words that make it one
    end: int  # index after the last token that it is said in; what follows explains, or tells something else
    firm: bool = False  # the figures before its words are old ones: `I wrote 1.022, make that 1.024`

    def of(self, read: Text, *kinds: str) -> list[Mention]:
        """The mentions of these kinds that the correction is said with."""
        return [m for m in read.of(*kinds) if m.first < self.end]


def takes_back(text: str) -> bool:
    """Whether a line undoes what was done last: `delete that last note, it never happened`."""
    words = [t.low for t in tokenize(text)]
    spoken = [w for w in words if re.search(r"\w", w)]
    for phrase in _TAKE_BACK:
        if spoken == phrase:
            return True
        if words[: len(phrase)] != phrase or not _UNSAID & set(phrase):
            continue
        rest = words[len(phrase) :]
        if phrase[-1] in _TOLD:
            return True
        # "scratch that, make it 1.012" puts a figure right instead
        return bool(rest) and rest[0] in _PAUSES | _ENDS and not any(c.isdigit() for w in rest for c in w)
    return False


def may_correct(words: Sequence[str]) -> bool:
    """Whether a line of these words could be a correction; most notes could not."""
    joined = f" {' '.join(words)} "
    return bool(any(f" {p} " in joined for p in FIRM) or _marker(words) or _late(words) or _contrast(words))


def scope_of(words: Sequence[str], read: Text) -> Scope | None:
    """Where a line says that it puts something right; None where it does not. `words` are those typed."""
    found = _firm(words, read) or _marker(words) or _late(words) or _contrast(words)
    if found is None:
        return None
    first, last = found
    firm = " ".join(words[first:last]) in FIRM and gives(read, last)
    return Scope(first, last, _end(words, read, first, last), firm)


def _firm(words: Sequence[str], read: Text) -> tuple[int, int] | None:
    """Words before a figure that leave no doubt, wherever they stand; and `I wrote 2 oz. It was 1 oz`."""
    for i in range(len(words)):
        for phrase in FIRM:
            parts = phrase.split()
            if list(words[i : i + len(parts)]) == parts and gives(read, i + len(parts)):
                wrote = bool(WRITTEN & set(words[:i]))
                if phrase != "it was" or (wrote and words[i - 1] in _ENDS | _PAUSES):
                    return i, i + len(parts)
    return None


def _marker(words: Sequence[str]) -> tuple[int, int] | None:
    """Where the words that make a line a correction stand among its tokens."""
    if (
        words[0] in SAYING_NO
        and words[1:2]
        and words[1] in _PAUSES
        and ({"not", "was", "were"} & set(words) or len(words) - 2 <= _SHORT)
    ):
        return 0, 1
    if list(words[:2]) in (["it", "was"], ["that", "was"], ["that's"], ["it's"]) and "not" in words:
        return 0, 2
    for i in range(len(words)):
        for phrase, parts in _MARKERS:
            last = i + len(parts)
            inside = phrase in _OPENINGS and i > 0 and words[i - 1] not in _ENDS
            intended = parts[-1] in ("meant", "mean") and words[last : last + 1] == ["to"]  # "I meant to check it"
            if list(words[i:last]) == parts and not (inside or intended):
                return i, last
    return None


def _late(words: Sequence[str]) -> tuple[int, int] | None:
    """`the yeast was KV-7 actually`."""
    for i, word in enumerate(words):
        if word in _ENDS:
            return None
        if word == "actually" and i > 1 and {"was", "were"} & set(words[max(0, i - _LATE) : i]):
            return i, i + 1
    return None


def _contrast(words: Sequence[str]) -> tuple[int, int] | None:
    """Where a line sets what was against what was not (`the zin was 1.012, not 1.010`)."""
    said = _SAID & set(words)
    return next(((i, i + 1) for i, w in enumerate(words) if w in NEGATED and i > 1 and said), None)


def gives(read: Text, first: int) -> bool:
    """Whether something that a field can hold stands at token `first`, or after an article there."""
    first += read.words[first : first + 1] in (["the"], ["a"], ["about"])
    return any(m.first == first for m in read.of(*VALUES, "batch", "vessel", "date"))


def _end(words: Sequence[str], read: Text, first: int, last: int) -> int:
    """The token after which a correction is said: the first pause behind what it gives, unless the sentence goes on
    with what was not so (`87 bottles, not 88`).
    """
    begin = 0 if words[first] in NEGATED or words[first] == "actually" else last
    given = min((m.last for m in read.of(*VALUES, "batch", "person", "vessel") if m.last > begin), default=len(words))
    for i in range(max(last, given), len(words)):
        after = words[i + 1 : i + 2]
        if after and (words[i] in _ENDS or (words[i] in (",", "(", "-") and after[0] not in _GOING_ON)):
            return i
    return len(words)


def new_and_old(read: Text, scope: Scope, kinds: Sequence[str]) -> tuple[list[Mention], list[Mention]]:
    """Mentions of these kinds, those said to hold and those said not to: after "not" or "instead of", or before "should
    be" and the like.
    """
    words = read.words
    new: list[Mention] = []
    old: list[Mention] = []
    for m in scope.of(read, *kinds):
        lead = words[max(0, m.first - 3) : m.first]
        denied = any(w in NEGATED for w in lead[-2:]) or lead[-2:] in (["instead", "of"], ["rather", "than"])
        corrected = any(words[m.last + k : m.last + k + 2] == ["should", "be"] for k in range(4))
        corrected = corrected or (words[m.last : m.last + 1] == ["to"] and "change" in words[: m.first])
        before = scope.firm and m.last <= scope.first and m.kind in VALUES
        (old if denied or corrected or before else new).append(m)
    return new, old


def old_figures(read: Text, scope: Scope) -> set[float]:
    """The figures that are said not to hold."""
    _, old = new_and_old(read, scope, _COUNTABLE)
    return {v for m in old if (v := number_of(m)) is not None}
