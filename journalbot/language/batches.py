"""References to batches: by number, name, fruit, colour, vintage, age, or any mix of these."""

from collections.abc import Sequence

from journalbot.language.amounts import unit_at
from journalbot.language.batch_index import COLOURS, HEADS, BatchIndex, BatchRef
from journalbot.language.lexicon import Mention
from journalbot.language.numerals import Number
from journalbot.language.tokens import Token
from journalbot.vocabulary.everyday import EVERYDAY
from journalbot.vocabulary.fruits import WEAK_FRUITS
from journalbot.vocabulary.people import OCCASIONS
from journalbot.vocabulary.varieties import WEAK_VARIETIES

_MISSPELT = {"bach", "bath"}  # words of their own, but before a number "batch" with a slip
_BATHS = (["water"], ["ice"], ["hot"], ["cold"])
_DOUBTFUL = {"no", "wine", *_MISSPELT}  # before a number that is a batch's, or the next free one
_NUMBER_WORDS = {*_MISSPELT, "batch", "batches", "#", "no", "no.", "number", "numbers", "nr", "lot", "wine", "nos", "b"}
_GENERIC = {
    "wine", "wines", "batch", "one", "ones", "stuff", "juice", "must", "grapes", "grape", "fruit", "kit", "pail",
    "berries", "honey",
}

_OF_FRUIT = {
    "store", "tree", "trees", "orchard", "loft", "bush", "bushes", "vine", "vines", "patch", "pie", "crates", "skin",
    "skins", "peel", "jam", "blossom", "leaf", "drops", "pudding",
}
OTHER_KITS = {"test", "testing", "lab", "acid", "so2", "sulfite", "sulphite", "ph", "starter", "chemistry", "tool"}
_ABSORBED = {"wine", "wines", "batch", "one", "ones", "stuff", "must", "bottle", "bottles"}
_AGES = {
    "new": "newest", "newest": "newest", "latest": "newest", "newer": "newest", "current": "newest", "old": "older",
    "older": "older", "oldest": "first", "first": "first", "second": "second", "third": "third", "original": "first",
}

_WHICH = {"i", "i've", "ive", "we", "we've", "that", "ever", "this", "which", "to", "having"}
_DEFINITE = ("the", "my", "our", "'s")  # "the old one", where "an old one" is of anything
_ORDER = {"first": 0, "second": 1, "third": 2}
_SIZED = {"cork", "corks", "stopper", "stoppers", "bung", "bungs", "needle", "size", "straw"}  # "cork #9"
_NOT_AFTER_NUMBER = {"corks", "cork", "pads", "pad", "bung", "stopper", "bungs", "stoppers", "straw", "filter"}


def find_batches(
    tokens: list[Token],
    words: list[str],
    known: Sequence[Mention],
    numbers: Sequence[Number],
    index: BatchIndex,
    year: int,
    taken: set[int],
) -> list[Mention]:
    """References to batches. `known` are mentions from the lexicon, `year` that of the note; `taken` are tokens that
    belong
    to something that cannot be part of a batch's name (a vessel, a quantity)."""
    out = [*_by_number(tokens, words, numbers, index), *_bare_numbers(tokens, words, known, numbers, index)]
    used = {i for m in out for i in range(m.first, m.last)} | taken
    heads: dict[int, Mention] = {}
    longer = [m for m in known if m.kind in ("material", "closure") and m.last - m.first > 1]
    for m in known:
        if any(o.first <= m.first and m.last <= o.last and o.last - o.first > m.last - m.first for o in longer):
            continue
        if words[m.first] == "kit" and m.first and words[m.first - 1] in OTHER_KITS:
            continue
        if words[m.last : m.last + 1] and words[m.last] in _OF_FRUIT:
            continue  # "in the apple store"
        free = m.kind in HEADS and not used.intersection(range(m.first, m.last)) and not _weak_head(m, words, index)
        if free and (m.first not in heads or heads[m.first].last < m.last):
            heads[m.first] = m
    for m in index.names.find(words, tokens):
        if not used.intersection(range(m.first, m.last)):
            heads[m.first] = m
    for i, word in enumerate(words):
        if (
            i not in heads
            and i not in used
            and word in index.by_term
            and word not in _GENERIC - {"kit"}
            and (word not in EVERYDAY or word == "kit")
            and word not in OCCASIONS  # "Christmas" alone is the day, not "Christmas Gold"
            and not (word == "kit" and i and words[i - 1] in OTHER_KITS)
        ):
            heads[i] = Mention("word", word, i, i + 1, tokens[i].start, tokens[i].end)
        elif i not in heads and i not in used and tokens[i].kind == "word" and (full := index.shortened(word)):
            heads[i] = Mention("word", full, i, i + 1, tokens[i].start, tokens[i].end)
    i = 0
    spoken: tuple[str, ...] = ()
    at = {n.first: n for n in numbers}
    while i < len(words):
        found = _described(tokens, words, i, heads, at, index, year, used, spoken)
        if found:
            out.append(found)
            spoken = found.value.terms or spoken
            i = found.last
        else:
            i += 1
    return out


def _weak_head(m: Mention, words: list[str], index: BatchIndex) -> bool:
    """Whether a word that is as often something else (`date`, `sb`) names no wine of this journal."""
    spelling = " ".join(words[m.first : m.last])
    return (spelling in WEAK_FRUITS or spelling in WEAK_VARIETIES) and not index.by_term.get(m.value[0])


def _by_number(tokens: list[Token], words: list[str], numbers: Sequence[Number], index: BatchIndex) -> list[Mention]:
    out = []
    at = {n.first: n for n in numbers if n.style != "suffix"}
    for i, word in enumerate(words):
        if word[:1] == "b" and word[1:].isdigit() and len(word) <= 5:
            if word == "b4" and words[i + 1 : i + 2] and words[i + 1] in _AFTER_BEFORE:
                continue
            out.append(_numbered(tokens, int(word[1:]), i, i + 1, index))
        elif word in _NUMBER_WORDS and not (word in ("#", "no", "no.") and i and words[i - 1] in _SIZED):
            j = i + 1
            if words[j : j + 1] and words[j] in ("#", "no", "number", "no.") and words[j] != word:
                j += 1
            j += word in ("no", "nr") and words[j : j + 1] == ["."]
            if word == "b" and not (j in at and j == i + 1):
                continue
            while j in at:
                n = at[j]
                if (
                    not float(n.value).is_integer()
                    or n.value <= 0
                    or n.style not in ("figure", "words")
                    or n.last - n.first > 1
                    or "." in tokens[j].text
                ):
                    break
                if word in ("#", "no", "no.", "wine") and (
                    words[n.last : n.last + 1] and words[n.last] in _NOT_AFTER_NUMBER
                ):
                    break
                if word in _DOUBTFUL and not (
                    int(n.value) in index.batches or int(n.value) == max(index.batches, default=0) + 1
                ):
                    break
                if word in _MISSPELT and (unit_at(words, n.last) or words[i - 1 : i] in _BATHS):
                    break
                out.append(_numbered(tokens, int(n.value), i if not out or out[-1].last <= i else j, n.last, index))
                j = n.last
                if (
                    words[j : j + 1] in (["and"], [","], ["&"], ["+"])
                    and j + 1 in at
                    and word in ("batches", "numbers", "nos", "batch")
                    and at[j + 1].style in ("figure", "words")
                    and "." not in tokens[j + 1].text
                    and (word != "batch" or words[j] in ("and", "&"))
                    and words[j + 2 : j + 3] not in (["of"], ["bottle"], ["bottles"], ["more"], ["from"])
                    and at[j + 1].value in index.batches
                ):
                    j += 1
                else:
                    break
    return out


_AFTER_BEFORE = {
    "the",
    "i",
    "we",
    "it",
    "they",
    "my",
    "he",
    "she",
    "dinner",
    "yeast",
    "bottling",
    "bed",
    "that",
    "racking",
    "pressing",
    "work",
}  # "b4" is then "before"

_SAID_OF = {
    ":", "'s", "is", "has", "was", "went", "still", "now", "down", "at", "got", "gets", "looks", "tastes", "bubbling",
    "fizzing",
}

_MOVED = {"off", "to", "into", "from", "onto", "with", "out", "again", "over", "and"}


def _bare_numbers(
    tokens: list[Token], words: list[str], known: Sequence[Mention], numbers: Sequence[Number], index: BatchIndex
) -> list[Mention]:
    """A number that can only be a batch's: it opens a clause as its subject (`5: 1.036`, `4's fizzing`), follows a verb
    (`racked 5 off the chips`) or an amount (`0.6 gal of 8 into …`)."""
    out = []
    verbs = {
        m.last
        for m in known
        if m.kind == "cue"
        and m.value.form == "done"
        and m.value.kind in ("rack", "bottle", "top_up", "press", "taste", "degas", "filter", "punch_down")
    }
    for n in numbers:
        i = n.first
        if (
            n.style != "figure"
            or n.last != i + 1
            or int(n.value) not in index.batches
            or n.value != int(n.value)
            or n.approx
        ):
            continue
        before, after = (words[i - 1] if i else ""), words[i + 1 : i + 3]
        opens = i == 0 or before in (".", ";", "\n", "!", "?") or (before == "," and after[:1] == [":"])
        subject = opens and (
            (after[:1] and after[0] in _SAID_OF - {"to"})
            or after == ["'", "s"]
            or (after[:1] and tokens[i + 1].kind == "number" and "." in tokens[i + 1].text)
        )
        moved = i in verbs and after[:1] and after[0] in _MOVED
        drawn = (
            before == "of"
            and i > 2
            and words[i - 2] in ("gal", "l", "litres", "liters", "%", "gallons", "gallon", "litre", "liter")
            and (not after or after[0] in ("into", "to", "and", "with", "in", ",", "."))
        )
        if subject or moved or drawn:
            out.append(_numbered(tokens, int(n.value), i, i + 1, index))
    return out


def _numbered(tokens: list[Token], number: int, first: int, last: int, index: BatchIndex) -> Mention:
    known = number in index.batches
    ref = BatchRef((number,) if known else (), "number", new=None if known else number)
    return Mention("batch", ref, first, last, tokens[first].start, tokens[last - 1].end)


def _year_at(words: list[str], i: int, at: dict[int, Number], tokens: list[Token]) -> tuple[int, int] | None:
    """A vintage at token `i` (`2022`, `'22`), with the index after it."""
    if words[i] == "'" and i + 1 in at and tokens[i + 1].text.isdigit() and len(tokens[i + 1].text) == 2:
        return 2000 + int(tokens[i + 1].text), i + 2
    if i in at and tokens[i].text.isdigit() and len(tokens[i].text) == 4 and 1990 <= int(tokens[i].text) <= 2099:
        return int(tokens[i].text), i + 1
    if words[i][0] == "'" and words[i][1:].isdigit() and len(words[i]) == 3:
        return 2000 + int(words[i][1:]), i + 1
    return None


def _relative_year(words: list[str], i: int, year: int) -> tuple[int, int] | None:
    """`last year's`, `this season's` at token `i`: the year meant, and the index after it."""
    if (
        words[i] in ("last", "this")
        and i + 1 < len(words)
        and words[i + 1]
        in ("year's", "years", "season's", "seasons", "year", "vintage's", "vintage", "autumn's", "fall's")
    ):
        if words[i + 1] in ("year", "vintage") and i + 2 < len(words) and words[i + 2] == "'s":
            return (year - (words[i] == "last"), i + 3)
        if words[i + 1] in ("year", "vintage"):
            return None
        return year - (words[i] == "last"), i + 2
    return None


def _described(
    tokens: list[Token],
    words: list[str],
    i: int,
    heads: dict[int, Mention],
    at: dict[int, Number],
    index: BatchIndex,
    year: int,
    used: set[int],
    spoken: tuple[str, ...],
) -> Mention | None:
    """The longest description of a batch that begins at token `i`. `spoken` are the terms of the reference before it,
    which
    "a new one" and "the 2021" go on from."""
    first, vintage, age = i, None, ""
    terms: list[str] = []
    ends: list[int] = []
    j = i
    while j < len(words) and j not in used:
        if (found := _relative_year(words, j, year)) or (found := _year_at(words, j, at, tokens)):
            if terms or vintage:
                break
            vintage, j = found
        elif words[j] in _AGES and not terms and j not in heads:
            age, j = _AGES[words[j]], j + 1
        elif (
            j in at
            and not terms
            and not vintage
            and tokens[j].text.isdigit()
            and len(tokens[j].text) == 2
            and j + 1 in heads
            and not words[j + 1].endswith("s")
        ):
            short = 2000 + int(tokens[j].text)
            if any(index.vintage(n) == short for n in index.batches):
                vintage, j = short, j + 1
            else:
                break
        elif j in heads:
            head = heads[j]
            terms.append(head.value[0] if head.kind in HEADS else head.value)
            j = head.last
            ends.append(j)
        elif terms and words[j] in _ABSORBED and words[j] not in ("bottle", "bottles"):
            j += 1
        else:
            break
    if not terms:
        one = j < len(words) and words[j] in ("one", "batch", "wine")
        bare = (
            vintage
            and spoken
            and i
            and words[i - 1] == "the"
            and (j == len(words) or tokens[j].kind == "mark" or words[j] in ("is", "was", "has", "had"))
        )
        known = spoken or not i or words[i - 1] in _DEFINITE or tokens[i - 1].kind == "mark"
        told = words[j + one : j + one + 1] and words[j + one] in _WHICH  # "first one I've poured out"
        if told or not ((vintage or (age and known)) and (one or bare)):
            return None
        j += one
        terms = list(spoken)
    if terms and vintage is None:
        if j < len(words) and (found := _year_at(words, j, at, tokens)):
            vintage, j = found
        elif (
            j in at
            and tokens[j].text.isdigit()
            and len(tokens[j].text) == 2
            and words[j + 1 : j + 2] in ([], [":"], [","], ["."])
            and any(index.vintage(n) == 2000 + int(tokens[j].text) for n in index.having(terms))
        ):
            vintage, j = 2000 + int(tokens[j].text), j + 1
        elif j + 2 < len(words) and words[j] in ("of", "from"):
            if words[j + 1 : j + 3] == ["last", "year"]:
                vintage, j = year - 1, j + 3
            elif words[j + 1 : j + 3] == ["this", "year"]:
                vintage, j = year, j + 3
            elif found := _year_at(words, j + 1, at, tokens):
                vintage, j = found
    opens = i > 0 and words[i - 1] in ("a", "another") and (i == 1 or tokens[i - 2].kind == "mark")
    if opens and terms and set(terms) <= set(COLOURS) and vintage is None:
        return None  # "a red, Elin's request": what sort a wine is, not which
    ref = _resolve(terms, vintage, age, index)
    if len(ref.fits) > 1 and words[j - 1].endswith("s") and "all" in words[max(0, i - 3) : i]:
        return None  # "all three reds": told one by one, or not at all
    while not ref.fits and len(ends) > 1 and j == ends[-1]:
        # "Purple Toes cherry and earthy": the name, and then what it tastes of
        ends.pop()
        shorter = _resolve(terms[: len(ends)], vintage, age, index)
        if shorter.fits:
            ref, j = shorter, ends[-1]
    return Mention("batch" if ref.fits else "stranger", ref, first, j, tokens[first].start, tokens[j - 1].end)


def _resolve(terms: list[str], vintage: int | None, age: str, index: BatchIndex) -> BatchRef:
    fits = index.having(terms) if terms else set(index.batches)
    if len(fits) > 1 and "rosé" not in terms:
        # "the shiraz" is the red, where a rosé was run off it
        fits = {n for n in fits if index.batches[n].colour != "rosé"} or fits
    if vintage is not None:
        fits = {n for n in fits if index.vintage(n) == vintage}
    if age and fits:
        ordered = sorted(fits, key=lambda n: (index.batches[n].started, n))
        if age == "newest":
            fits = {ordered[-1]}
        elif age == "older":
            fits = set(ordered[:-1]) or fits
        elif _ORDER[age] < len(ordered):
            fits = {ordered[_ORDER[age]]}
    return BatchRef(tuple(sorted(fits)), "name" if terms else "age", tuple(dict.fromkeys(terms)), vintage)
