"""A question that was not understood, read again with its misspelt words put right; what was changed is told.

The language layer mends what can only be meant one way. Here a word has already stopped a question (or names something
that no note holds), so shorter and commoner words are looked at too: within one edit, or two where the word is long,
of the same first letter, and of one meaning only.
"""

from collections.abc import Callable, Iterable, Set
from typing import TYPE_CHECKING

from journalbot.language.names import Names
from journalbot.language.tokens import tokenize
from journalbot.questions.measures.tastings import word_fits

if TYPE_CHECKING:
    from journalbot.questions.measures.base import Source
    from journalbot.questions.reading import Understood

_SHORTEST = 3
_LONG = 7  # letters from which two edits are forgiven
_LONGEST = 9  # and three, where the first five agree


def doubtful_words(read: "Understood", journal: "Source", names: Names) -> tuple[str, ...]:
    """The words that stopped a question, or that it looks for and no note holds; none where all is well."""
    from journalbot.questions.reading import whats_of
    from journalbot.questions.signs import question_lexicon

    def known(word: str) -> bool:
        return word in question_lexicon().words or word in names.lexicon or names.knows(word)

    if read.query is None:
        return tuple(w for w in read.stopped_by if not known(w.lower()))
    looked_for = [*read.unused, *(w.get(key) for w in whats_of(read.query) for key in ("words", "item"))]
    unknown = read.unknown if not read.query.batches.numbers else ""
    words = [w for text in (*looked_for, unknown) for w in text.lower().split()]
    return tuple(w for w in words if not names.knows(w) and not journal.search(w, limit=1))


def tasted_words(read: "Understood", journal: "Source") -> frozenset[str]:
    """The words that stopped a question, where a tasting of the journal has them: `leathery`."""
    words = {w.lower() for w in read.stopped_by} if read.query is None else set[str]()
    return frozenset(w for w in words if any(_in_tasting(w, hit.note, journal) for hit in journal.search(w, limit=5)))


def _in_tasting(word: str, note: int, journal: "Source") -> bool:
    return any(e.kind == "taste" and word_fits(e, word) for e in journal.entries(seat=note))


def respelled(question: str, doubtful: Iterable[str], names: Names) -> tuple[str, dict[str, str]]:
    """The question with doubtful words replaced by the ones they must be meant for, and which were replaced."""
    words = {w.lower() for w in doubtful}
    changed: dict[str, str] = {}
    out, last = [], 0
    for token in tokenize(question):
        near = _meant(token.low, names) if token.low in words and token.low.isalpha() else ""
        if near:
            out += [question[last : token.start], near]
            last = token.end
            changed[token.text] = near
    return "".join(out) + question[last:], changed


def _meant(word: str, names: Names) -> str:
    """The known word that a misspelt one is meant for; "" where there is none, or more than one."""
    if len(word) < _SHORTEST:
        return ""
    from journalbot.questions.signs import question_lexicon
    from journalbot.vocabulary.english import english

    own = [w for w in names.batches.by_term if " " not in w]
    # A word of English is no question word misspelt ("pray"), but it may well be a wine's name ("plumb").
    pools = [own] if word in english() else [[*own, *question_lexicon().words], names.lexicon.words]
    for pool in pools:
        near = _nearest(word, pool)
        trade = [w for w in near if w in names.lexicon or w in own]
        near = trade if len(trade) == 1 else near  # "rak" is "rack" sooner than "rank"
        if near:
            return _one(near, names.lexicon.meanings)
    return ""


def _nearest(word: str, pool: Iterable[str]) -> list[str]:
    from rapidfuzz.distance import OSA

    limit = 3 if len(word) >= _LONGEST else 2 if len(word) >= _LONG else 1
    found = [
        (OSA.distance(word, w, score_cutoff=limit), w)
        for w in pool
        if w != word
        and w[0] == word[0]
        and abs(len(w) - len(word)) <= limit
        and len(w) >= _SHORTEST - 1
        and (limit < 3 or w[:5] == word[:5])
    ]
    best = min((d for d, _ in found), default=limit + 1)
    return sorted({w for d, w in found if d == best}) if best <= limit else []


def _one(near: list[str], meanings: Callable[[str], Set[object]]) -> str:
    """The one meant, where all that are as near mean the same (`pitch` and `pitched`, spellings of one fruit)."""
    if len(near) == 1:
        return near[0]
    stems = {w.removesuffix("s").removesuffix("ed").removesuffix("e") for w in near}
    shared = set.intersection(*(set(meanings(w)) for w in near))
    return near[0] if len(stems) == 1 or shared else ""
