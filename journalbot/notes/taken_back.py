"""What a note itself puts right: in `1.061, no sorry, 1.051` the first figure goes."""

from journalbot.language.lexicon import Mention
from journalbot.language.text import Text
from journalbot.vocabulary.cues import TAKEN_BACK

_TAKEN_BACK = sorted((tuple(p.split()) for p in TAKEN_BACK), key=len, reverse=True)


def take_back(text: Text) -> None:
    """Drop what the note itself puts right: in `1.061, no sorry, 1.051` the first figure goes."""
    words = text.words
    gone: list[tuple[int, int]] = []
    for i, word in enumerate(words):
        n = _said_at(words, i) if word in _TAKEN_FIRST else 0
        if not n:
            continue
        j = i + n
        while j < len(words) and (
            words[j] in (",", ":", "-", "—", "…", "it", "was", "is", "that", "be", "s", "(") or _said_at(words, j)
        ):
            j += 1
        before = i - 1
        while before >= 0 and words[before] in (",", "-", "—", "…", ".", "(", "!", ";"):
            before -= 1
        old = next((m for m in reversed(text.mentions) if m.last - 1 == before and m.kind in _REPLACEABLE), None)
        new = next((m for m in text.mentions if m.first == j and m.kind in _REPLACEABLE), None)
        if old and new and _alike(old, new):
            gone.append((old.first, j))
    if gone:
        text.mentions = [m for m in text.mentions if not any(a <= m.first < b for a, b in gone)]
        for a, b in gone:
            for k in range(a, b):
                words[k] = ""


def _said_at(words: list[str], i: int) -> int:
    """How many words at `i` take back what stood before them."""
    return next((len(p) for p in _TAKEN_BACK if tuple(words[i : i + len(p)]) == p), 0)


_TAKEN_FIRST = {p[0] for p in _TAKEN_BACK}
_REPLACEABLE = (
    "reading", "amount", "batch", "number", "vessel", "date", "score", "money", "code", "temperature", "bottles",
    "times",
)


def _alike(old: Mention, new: Mention) -> bool:
    if old.kind == new.kind == "reading":
        return bool(old.value.quantity == new.value.quantity)
    return old.kind == new.kind or {old.kind, new.kind} <= {"number", "amount", "reading", "temperature", "bottles"}
