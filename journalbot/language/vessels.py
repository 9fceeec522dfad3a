"""References to vessels: a noun of the trade with what stands before and after it, or a name the journal knows."""

import re
from collections.abc import Sequence
from typing import NamedTuple

from journalbot.language.amounts import unit_at
from journalbot.language.lexicon import Lexicon, Mention
from journalbot.language.numerals import Number
from journalbot.language.tokens import Token, as_meant
from journalbot.vocabulary.units import UNITS
from journalbot.vocabulary.vessels import VESSEL_ADJECTIVES, VESSEL_NOUNS, WEAK_VESSELS

_NOUN: dict[str, str] = {s: noun for noun, spellings in VESSEL_NOUNS.items() for s in spellings}
_FIRST = {phrase.split()[0] for phrase in _NOUN if " " in phrase}
_LED = {"into", "to", "in", "from", "->", "→", "out", "onto", "inside", ">", "=>"}
_ARTICLES = {"a", "an", "the", "my", "our", "another", "clean", "his", "her", "its"}
_HASH = {"#", "no", "no.", "number", "nr"}
_NO_LABELS = set("filnrstuwxy")  # short for other things: "carboy w 2 gal", "bucket n spoon"
_AFTER_LABEL = {
    "and", "to", "into", "holds", "hold", "is", "was", "has", "at", "with", "w", "today", "now", "on", "from",
}
_JOIN = {"and", "&", "+", ","}
_OAK = {"oak", "french", "american", "hungarian", "medium", "light", "dark"}
_SHAPES = {"cube", "cubes", "bag", "bags", "pot", "jar", "jars", "flask", "primary", "secondary"}
_MOST_LABELS = 15  # "the steel tank 50": more is what it holds
_SPOKEN_OF = (["holds"], ["takes"], ["is"], ["hold"], ["sample"], ["tastes"], ["smells"])
_QUANTITIES = {"sg", "og", "fg", "ta", "ph", "va", "so2", "yan", "abv", "brix", "mlf", "kmbs", "dap"}
_DECLARED = 14  # tokens from a vessel's name to the "hold" that tells its size
_SHORTEST = 3  # letters of a noun that is not known
_COUNTABLE = {  # nouns that have numbers and are no vessels
    "about",
    "only",
    "just",
    "over",
    "under",
    "day",
    "days",
    "week",
    "weeks",
    "month",
    "months",
    "year",
    "years",
    "hour",
    "hours",
    "batch",
    "batches",
    "number",
    "lot",
    "page",
    "step",
    "note",
    "part",
    "case",
    "box",
    "row",
    "round",
    "stage",
    "phase",
    "room",
    "shelf",
    "least",
    "most",
    "exactly",
    "around",
    "nearly",
    "almost",
    "roughly",
    "like",
    "approx",
    "jan",
    "january",
    "feb",
    "february",
    "mar",
    "march",
    "apr",
    "april",
    "may",
    "jun",
    "june",
    "jul",
    "july",
    "aug",
    "august",
    "sep",
    "sept",
    "september",
    "oct",
    "october",
    "nov",
    "november",
    "dec",
    "december",
}
_CONTENTS = {"of", "wine", "juice", "corks", "chips", "day", "belt", "wrap"}


class VesselRef(NamedTuple):
    """A vessel as written, and whether anything but the bare noun tells that a vessel is meant."""

    name: str
    weak: bool = False


def find_vessels(
    tokens: list[Token], words: list[str], text: str, numbers: Sequence[Number], known: Lexicon, vocabulary: Lexicon
) -> list[Mention]:
    """Every vessel spoken of, in order. `known` holds the names of the journal's own vessels, and those taught with the
    vessel that each means; a word that is not in the `vocabulary` may be a vessel's noun too, where it has a number and
    wine goes into it (`in tub 2`).
    """
    at = {n.first: n for n in numbers}
    found: list[Mention] = []
    for m in known.find(words, tokens):
        taught = m.value != " ".join(words[m.first : m.last])
        name = m.value if taught else as_meant(text, tokens, words, m.first, m.last)
        found.append(Mention("vessel", VesselRef(name), m.first, m.last, m.start, m.end))
    i = 0
    while i < len(words):
        last = _noun_at(words, i) or _unknown_noun(tokens, words, i, at, vocabulary)
        if last:
            found.extend(_around(tokens, words, text, i, last, at))
            i = last
        elif _counted(words, i):
            found.append(_mention(tokens, text[tokens[i].start : tokens[i + 2].end], i, i + 3, False))
            i += 3
        elif (
            _coded(words, i, at)
            or (_CODE.match(words[i]) and any(f.last == i - 1 for f in found) and words[i - 1] in _JOIN)
            or _compact(words[i]) is not None
        ):
            found.append(Mention("vessel", VesselRef(tokens[i].text), i, i + 1, tokens[i].start, tokens[i].end))
            i += 1
        else:
            i += 1
    return _longest(found)


def _noun_at(words: list[str], i: int) -> int:
    """The index after a vessel's noun at token `i`; 0 where there is none."""
    if words[i] in _FIRST and i + 1 < len(words) and f"{words[i]} {words[i + 1]}" in _NOUN:
        return i + 2
    return i + 1 if words[i] in _NOUN else 0


def _unknown_noun(tokens: list[Token], words: list[str], i: int, at: dict[int, Number], vocabulary: Lexicon) -> int:
    """The index after a word that can only be a vessel's noun here; 0 where it need not be one."""
    led, noun = i > 0 and words[i - 1] in _LED, words[i]
    if not noun.isalpha() or len(noun) < _SHORTEST or noun in _COUNTABLE:
        return 0
    shouted = tokens[i].text.isupper() and noun not in _QUANTITIES  # "PET 1"
    declared = shouted and bool({"hold", "holds"}.intersection(words[i : i + _DECLARED]))
    if not (led or declared) or (noun in vocabulary and not shouted):
        return 0
    label = _label(tokens, words, i + 1, at)
    return i + 1 if label and tokens[i + 1].kind == "number" else 0


_CODE = re.compile(r"^(?!b\d)[a-z]{1,2}\d{1,2}$")  # "c1", "j2"; "b3" is a batch


def _counted(words: list[str], i: int) -> bool:
    """Whether a range of vessels is told what it holds: `D1 to D4 hold 5 L`."""
    joined = words[i + 1 : i + 2] in (["to"], ["-"], ["–"]) and words[i + 3 : i + 4] in (["hold"], ["holds"])
    return joined and bool(_CODE.match(words[i])) and bool(_CODE.match(words[i + 2]))


def _coded(words: list[str], i: int, at: dict[int, Number]) -> bool:
    """Whether a letter and a number stand where only a vessel can: `racked to c2`, `c1 -> c3`, `c1 + c2 hold 6 gal`."""
    if not _CODE.match(words[i]):
        return False
    after = words[i + 1 : i + 2]
    led = i > 0 and words[i - 1] in _LED - {"out", "to", "in"}
    to = i > 0 and words[i - 1] == "to" and not {"yeast", "switched", "changed"}.intersection(words[max(0, i - 3) : i])
    holds = after in (["->"], ["→"], ["=>"], ["holds"], ["hold"], ["airlock"])
    joined = after and after[0] in _JOIN and bool(_CODE.match((words[i + 2 : i + 3] or [""])[0]))
    return (
        led or to or holds or bool(joined and words[i + 3 : i + 4] in (["hold"], ["->"], ["→"], ["racked"], ["hold"]))
    )


def _compact(word: str) -> str | None:
    """The noun of a name written in one, as `dj5`."""
    stem = word.rstrip("0123456789")
    return _NOUN.get(stem.rstrip("-")) if stem != word and len(word) - len(stem) <= 2 and len(stem) > 1 else None


def _around(
    tokens: list[Token], words: list[str], text: str, first: int, last: int, at: dict[int, Number]
) -> list[Mention]:
    noun_first, begin = first, first
    while begin and (words[begin - 1] in VESSEL_ADJECTIVES or _size_before(words, begin, at)):
        begin = _size_before(words, begin, at) or begin - 1
    if words[last : last + 1] and words[last] in ("belt", "wrap", "day", "washer", "bung", "brush"):
        return []
    label = _label(tokens, words, last, at)
    plural = words[last - 1].endswith("s") and label is not None
    if label is None:
        led = (begin > 0 and words[begin - 1] in _LED) or (
            begin > 1 and words[begin - 1] in _ARTICLES and words[begin - 2] in _LED
        )
        described = (begin < noun_first and not _OAK.intersection(words[begin:noun_first])) or (
            begin > 0 and words[begin - 1] in _ARTICLES and words[noun_first] not in _SHAPES
        )
        described = described or words[last : last + 1] in _SPOKEN_OF or _sized(words, last, at)
        weak = " ".join(words[noun_first:last]) in WEAK_VESSELS and not led and not described
        if words[last : last + 1] and words[last] in _CONTENTS:
            weak = True
        return [_mention(tokens, as_meant(text, tokens, words, begin, last), begin, last, weak)]
    out: list[Mention] = []
    noun = as_meant(text, tokens, words, noun_first, last)
    singular = noun[:-1] if plural and noun.lower().endswith("s") else noun
    k = last
    start = begin
    while label is not None:
        name, k = label
        written = as_meant(text, tokens, words, start, k) if not out and not plural else f"{singular} {name}"
        out.append(_mention(tokens, written, start, k, False))
        label = None
        if plural and not out[1:] and _range_end(tokens, words, k, name):
            name = as_meant(text, tokens, words, start, k + 2)
            out = [_mention(tokens, name, start, k + 2, False)]
            k += 2
        if plural and words[k : k + 1] and words[k] in _JOIN:
            j = k + 1 + (words[k] == "," and words[k + 1 : k + 2] == ["and"])
            label = _label(tokens, words, j, at)
            start = j
    return out


def _range_end(tokens: list[Token], words: list[str], k: int, first: str) -> bool:
    """Whether a label and token `k` open a range: `demijohns 1 to 6`."""
    if (
        words[k : k + 1] not in (["to"], ["-"], ["–"], ["through"], ["thru"])
        or not first.isdigit()
        or k + 1 >= len(words)
    ):
        return False
    last = tokens[k + 1].text
    return last.isdigit() and int(first) < int(last) <= _MOST_LABELS


def _mention(tokens: list[Token], name: str, first: int, last: int, weak: bool) -> Mention:
    return Mention("vessel", VesselRef(name, weak), first, last, tokens[first].start, tokens[last - 1].end)


def _sized(words: list[str], i: int, at: dict[int, Number]) -> bool:
    """Whether a size and nothing more follows at token `i` (`oak barrel 28 L, pail 30 L`)."""
    found = unit_at(words, i + 1) if i in at else None
    if found is None or UNITS[found[0]].dimension != "volume":
        return False
    return words[found[1] : found[1] + 1] in ([], [","], ["."], [";"], ["and"], ["\n"])


def _size_before(words: list[str], i: int, at: dict[int, Number]) -> int:
    """Where a size before a vessel's noun begins (`6 gal carboy`, `54 l demijohn`); 0 where there is none."""
    if i < 2:
        return 0
    j = i - 2 - (words[i - 2] == "-")
    if j < 0 or j not in at:
        return 0
    found = unit_at(words, i - 1)
    if at[j].style == "words" and words[i].endswith("s"):
        return 0  # "four gallon jugs" are four
    return j if found and found[1] == i and UNITS[found[0]].dimension == "volume" and j > 0 else 0


def _label(tokens: list[Token], words: list[str], i: int, at: dict[int, Number]) -> tuple[str, int] | None:
    """A vessel's number or letter at token `i` (`2`, `A`, `#2`), with the index after it."""
    if i >= len(words):
        return None
    if words[i] in _HASH and i + 1 in at:
        return _label(tokens, words, i + 1, at)
    token = tokens[i]
    if len(token.text) == 1 and token.text.isalpha() and token.text.isupper() and token.text != "I":
        return token.text, i + 1
    if _letter(words, i) and words[i - 1] not in _ARTICLES and (i < 1 or words[i - 1] in _NOUN):
        return token.text, i + 1
    n = at.get(i)
    if (
        n is None
        or n.last != i + 1
        or not ((token.text.isdigit() and int(token.text) <= _MOST_LABELS) or (n.style == "words" and n.value <= 20))
    ):
        return None
    nxt = words[i + 1] if i + 1 < len(words) else ""
    if (
        unit_at(words, i + 1)
        or nxt in ("%", "°", "/", "degrees", "x", "×", "bottles", "corks", "deg", "brix", "f")
        or n.approx
    ):
        return None
    return token.text, i + 1


def _letter(words: list[str], i: int) -> bool:
    """Whether a small letter at token `i` labels the vessel before it: "a" is one only where no noun follows it."""
    word = words[i]
    if len(word) != 1 or not word.isalpha() or word in _NO_LABELS:
        return False
    return word != "a" or not words[i + 1 : i + 2] or words[i + 1] in _AFTER_LABEL or not words[i + 1].isalpha()


def _longest(found: list[Mention]) -> list[Mention]:
    out: list[Mention] = []
    for m in sorted(found, key=lambda m: (m.first - m.last, m.first)):
        if not any(m.first < o.last and o.first < m.last for o in out):
            out.append(m)
    return sorted(out, key=lambda m: m.first)
