"""Bottles counted: `3 bottles`, `4 sauv blancs`, `a dozen of the kit red`."""

from journalbot.language.amounts import tidy
from journalbot.language.lexicon import Mention
from journalbot.notes.clauses import Clause

_SKIP = {"the", "a", "an", "of", "my", "our", "his", "her", "last", "old", "more", "other", "remaining"}


def bottle_amounts(clause: Clause) -> list[Mention]:
    return [m for m in clause.of("amount") if m.value.unit == "bottle"]


def counted_batches(clause: Clause) -> list[tuple[float, Mention]]:
    """Counts that stand right before a batch (`4 sauv blancs`, `a dozen of the kit red`)."""
    out: list[tuple[float, Mention]] = []
    words = clause.text.words
    for ref in clause.of("batch"):
        if any(v.first in (ref.last, ref.last - 1) for v in clause.of("vessel")):
            continue  # the vessels are counted: `the three elderberry demijohns`
        i = ref.first - 1
        while i >= clause.first and words[i] in _SKIP:
            i -= 1
        if words[i] == "bottle" and words[i - 1] in ("first", "last") and i > clause.first:
            out.append((1, ref))  # "first bottle of the solaris"
            continue
        n = next((m for m in clause.of("number") if m.last == i + 1 and m.value.style in ("figure", "words")), None)
        b = next((m for m in bottle_amounts(clause) if m.last == i + 1), None)
        if b is not None:
            out.append((b.value.value, ref))
        elif n is not None and n.value.value <= 200:
            out.append((tidy(n.value.value), ref))
        elif {"a", "an", "last", "another", "first"}.intersection(words[max(clause.first, i) : ref.first + 1]):
            out.append((1, ref))
    return out
