"""Which batches a question speaks of: by reference, as a group, by colour or year; and when that must be asked."""

from collections.abc import Sequence
from itertools import pairwise

from journalbot.journal.cellar import Cellar
from journalbot.language.batch_index import BatchRef
from journalbot.language.lexicon import Mention
from journalbot.language.names import Names
from journalbot.language.text import Text
from journalbot.model import Batch
from journalbot.vocabulary.questions import EVERY, SUPERLATIVES, words

_COLOURS = ("red", "white", "rosé", "fruit", "mead", "cider")
COLOUR_WORDS = frozenset((*_COLOURS, "rose", "pink"))
_DETERMINERS = words("the this that my our last new old first second")
_COUNTS = words("two three four five six 2 3 4 5 6")
_JOIN = frozenset(("and", "or", "vs", "versus", "against", "with", ",", "&", "the", "to", "from", "my", "than"))
_TASTING = words("described describe taste tastes tasted tasting smell smelled smelt like note notes flavour flavor")
_PART_OF = words("from of in ( the that is went into go goes gone put was")  # "the marquette that went into batch 1"
_EVERY = frozenset(w for w in EVERY if w not in ("my", "ever"))
# Fruit that says nothing by itself of which wine is meant.
_PLAIN_FRUIT = words("juice must grapes grape fruit berries")


class Whom:
    """The batches that a stretch of a question refers to."""

    one: bool = False  # several fit where one was meant
    every: bool = False
    unknown: str = ""  # a reference that fits no batch, as typed
    said: str = ""  # the reference as typed
    bare: bool = False  # no article before it: "given mead"

    def __init__(self, numbers: tuple[int, ...] = (), tokens: set[int] | None = None) -> None:
        self.numbers = numbers
        self.tokens = set[int]() if tokens is None else tokens  # those that it takes


def label_of(batch: Batch) -> str:
    """How a batch is called in an answer: `batch 2 (2022 riesling juice)`."""
    name = batch.name or ", ".join(batch.fruit)
    if not batch.name and set(name.lower().split()) <= _PLAIN_FRUIT and batch.colour:
        name = f"{batch.colour} {name}".strip()
    name = name or batch.colour or ""
    year = str(batch.year) if batch.year and str(batch.year) not in name else ""
    inner = f"{year} {name}".strip()
    return f"batch {batch.number} ({inner})" if inner else f"batch {batch.number}"


def colour_of(batch: Batch, names: Names) -> str:
    """The batch's colour: as noted, by its fruit, or red where it was pressed after the pitch, off its skins."""
    if batch.colour:
        return batch.colour
    known = [c for c in _COLOURS if c in names.batches.terms.get(batch.number, ())]
    if len(known) == 1:
        return known[0]
    return "red" if batch.pitched and batch.pressed and batch.pressed > batch.pitched else ""


def references(text: Text) -> list[Mention]:
    """The mentions that refer to batches; a lone letter is none, nor is part of a person's name (`church supper`) or of
    a taste (`green apples`).
    """
    people = text.of("person", "descriptor")
    return [
        m
        for m in text.of("batch", "stranger")
        if m.value.terms != ("grape",)
        and not any(p.first <= m.first and m.last <= p.last and p.last - p.first > m.last - m.first for p in people)
        and not (m.last - m.first == 1 and len(text.words[m.first]) == 1 and not text.words[m.first].isdigit())
    ]


def contested(m: Mention, text: Text) -> bool:
    """Whether a reference by name could be something else: a material, a taste, something bought."""
    if m.value.how == "number" or m.value.vintage:
        return False
    lead = m.first - (text.words[max(0, m.first - 1)] in ("the", "my", "our")) - 1
    after = text.words[m.last] if m.last < len(text.words) else ""
    than = (lead >= 0 and text.words[lead] == "than") or (after in SUPERLATIVES and "than" in text.words)
    if m.value.fits and than:
        return False  # "is the cherry stronger than the plum"
    told = set(text.words) & _TASTING or (m.first and text.words[m.first - 1] == "with")
    if not m.value.fits and m.value.new is None and told:
        return True  # "any wine described with strawberry", "anything with apricot"
    return any(o.kind in ("material", "descriptor") and o.first < m.last and m.first < o.last for o in text.mentions)


def whom(text: Text, mentions: Sequence[Mention], names: Names, cellar: Cellar) -> Whom:
    """Resolve references to batches."""
    out = Whom()
    groups: list[tuple[int, ...]] = []
    last: Mention | None = None
    numbered = {n for m in mentions if m.value.how == "number" for n in m.value.fits}
    for m in mentions:
        ref: BatchRef = m.value
        fits = _by_colour(ref, names, cellar)
        if ref.how != "number" and len(numbered) > 1 and numbered <= set(fits):
            out.tokens.update(range(m.first, m.last))
            continue  # "which riesling …, batch 4 or batch 9"
        out.tokens.update(range(m.first, m.last))
        typed = text.text[m.start : m.end]
        if not fits:
            out.unknown = out.unknown or typed
            continue
        plural = _plural(text, m, ref, names)
        before = text.words[m.first - 1] if m.first else ""
        out.bare = out.bare or before not in _DETERMINERS
        fits, more = _by_years(text, m, ref, fits, names)
        out.tokens.update(more)
        if before in _COUNTS:
            out.tokens.add(m.first - 1)  # "the three zins"
        if len(fits) > 1 and (plural or more or _any_of(text.words, m.first)):
            out.every = True
        elif len(fits) > 1:
            out.one = True
        out.said = out.said or typed
        if (
            groups
            and last is not None
            and _of_the_last(text.words[last.last : m.first])
            and set(fits) & set(groups[-1])
        ):
            fits = tuple(n for n in groups.pop() if n in fits)  # "the shiraz from batch 2"
            out.one, out.every = len(fits) > 1, out.every and len(fits) > 1
        groups.append(fits)
        last = m
    out.numbers = tuple(dict.fromkeys(n for g in groups for n in g))
    if len(groups) > 1:
        out.every = True
        out.one = False if all(len(g) == 1 for g in groups) else out.one
    return out


def _of_the_last(between: Sequence[str]) -> bool:
    """Whether the words between two references make the second one tell of the first: `the shiraz from batch 2`."""
    return bool(between) and set(between) <= _PART_OF and between[-1] != "the"


def _either(text: Text, years: dict[int, int]) -> set[int]:
    """Years put as a choice: `which bacchus had the higher TA, 2022 or 2023`."""
    spots = sorted(years)
    pairs = [(a, b) for a, b in pairwise(spots) if text.words[a + 1 : b] in (["or"], ["vs"], ["v"])]
    return {i for pair in pairs for i in pair}


def _any_of(words: Sequence[str], first: int) -> bool:
    """Whether the words before a reference say that any or all are meant: `one of the`, `all my`, `every`."""
    i = first - 1
    while i >= 0 and words[i] in ("the", "my", "our", "of", "these", "those"):
        i -= 1
    phrase = words[i:first] if i >= 0 else []
    if (phrase and phrase[0].isdigit()) or (phrase and phrase[0] in ("two", "three", "four", "five", "six")):
        i -= 1
        phrase = ["all"]
    if phrase and phrase[0] in SUPERLATIVES:
        return True  # "my favourite red": the best of them all
    if phrase and phrase[0] in ("a", "an") and i > 0 and words[i - 1] in ("for", "of"):
        return True
    return bool(phrase) and (phrase[0] in _EVERY or (phrase[0] == "one" and "of" in phrase))


def _by_colour(ref: BatchRef, names: Names, cellar: Cellar) -> tuple[int, ...]:
    """What a reference fits; by the colour that a batch must have, where the names know of none."""
    if not ref.fits and ref.new is not None and int(ref.new) in cellar.batches:
        return (int(ref.new),)  # planned, and not begun yet
    if ref.fits or ref.new is not None or not ref.terms:
        return ref.fits
    colours = [t for t in ref.terms if t in _COLOURS]
    if len(colours) == len(ref.terms):
        return tuple(
            n
            for n, b in sorted(cellar.batches.items())
            if colour_of(b, names) in colours and (ref.vintage is None or b.year == ref.vintage)
        )
    words = [w for t in ref.terms for w in t.split() if w not in ("wine", "wines")]
    found = names.batches.having(words) if words else set()
    return tuple(sorted(n for n in found if ref.vintage is None or names.batches.vintage(n) == ref.vintage))


def _plural(text: Text, m: Mention, ref: BatchRef, names: Names) -> bool:
    for i in range(m.first, m.last):
        word = text.tokens[i].low
        if word in ("wines", "ones", "batches"):
            return True
        if word.endswith("s") and len(word) > 3 and word[:-1] in names.lexicon and word not in ref.terms:
            return True
    return False


def _by_years(
    text: Text, m: Mention, ref: BatchRef, fits: tuple[int, ...], names: Names
) -> tuple[tuple[int, ...], set[int]]:
    """Years beside a reference that say which batches: `the 2021 or the 2023 solaris`, `the pinot in 2021 and 2022`."""
    all_of = (
        names.batches.having([w for t in ref.terms for w in t.split() if w in names.batches.by_term])
        if ref.terms
        else set()
    )
    if len(all_of) < 2:
        return fits, set()
    years: dict[int, int] = {}
    for i, token in enumerate(text.tokens):
        if (
            (i < m.first or i >= m.last)
            and token.text.isdigit()
            and len(token.text) == 4
            and 1990 <= int(token.text) <= 2099
        ):
            years[i] = int(token.text)
        elif i in (m.first - 1, m.last) and len(token.text) == 2 and token.text.isdigit():
            year = 2000 + int(token.text)  # "hanepoot 23", where one of those wines is of that year
            if any(names.batches.vintage(n) == year for n in all_of):
                years[i] = year
    near: set[int] = set()
    i = m.first - 1
    while i >= 0 and (text.words[i] in _JOIN or i in years):
        near |= {i} if i in years else set()
        i -= 1
    i = m.last
    while i < len(text.words) and (text.words[i] in _JOIN | {"in", "of", "from", "and"} or i in years):
        near |= {i} if i in years else set()
        i += 1
    near |= _either(text, years) if not near else set()
    wanted = {years[i] for i in near}
    found = tuple(sorted(n for n in all_of if names.batches.vintage(n) in wanted))
    if not found:
        return fits, set()
    if ref.vintage is not None:
        return tuple(dict.fromkeys((*found, *fits))), near
    return found, near
