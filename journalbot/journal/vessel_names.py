"""Names of vessels: which spellings are one vessel, and which names hold several."""

import re

from journalbot.vocabulary.units import UNITS
from journalbot.vocabulary.vessels import VESSEL_NOUNS

# Only single words: the others in the table ("gallon jug", "glass jug") say something that tells two vessels apart.
_NOUN = {s: noun for noun, spellings in VESSEL_NOUNS.items() for s in spellings if s.isalpha()}
_PLURALS = frozenset(s for s in _NOUN if s.endswith("s"))
_NUMBERS = {word: str(n) for n, word in enumerate(
    ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"), 1)}
_EMPTY = frozenset(("the", "my", "a", "an", "our", "this", "that", "no", "nr", "number", "num", "s", "of"))
_SIZES = {s: name for name, unit in UNITS.items() if unit.dimension == "volume" for s in unit.spellings}
_WORD = re.compile(r"\d+(?:[.,]\d+)?|[^\W\d_]+")
_CODE = re.compile(r"[^\W\d_]{1,2}\d{1,2}")  # a vessel called by a letter and a number
_CODES = re.compile(r"([^\W\d_]{1,2})(\d{1,2}) ?(?:to|-|–) ?(?:\1)(\d{1,2})", re.IGNORECASE)  # "D1 to D4"
_RANGE = re.compile(r"(\D+?)s? (\d{1,2}) ?(?:to|through|thru|-|–) ?(\d{1,2})", re.IGNORECASE)  # "demijohns 1 to 6"
_AND = re.compile(r"\s*(?:[,&+]|\band\b)\s*", re.IGNORECASE)


def vessel_key(name: str) -> str:
    """The normal form under which all spellings of one vessel's name meet: `DJ 5` and `the demijohn five` alike."""
    words = [_NUMBERS.get(w, w) for w in _WORD.findall(name.lower()) if w not in _EMPTY]
    marks: list[str] = []
    nouns: list[str] = []
    labels: list[str] = []
    for i, word in enumerate(words):
        after = words[i + 1] if i + 1 < len(words) else ""
        before = words[i - 1] if i else ""
        if word[0].isdigit():
            if after in _SIZES:  # "6 gal carboy" is a size, "carboy 6" a name
                marks.append(word.replace(",", ".") + _SIZES[after])
            elif after in _PLURALS:  # "2 carboys" are two, not the second
                marks.append(word + "x")
            else:
                labels.append(word.lstrip("0") or "0")
        elif word in _SIZES and before[:1].isdigit():
            continue
        elif word in _SIZES and len(word) > 3:  # "the gallon jug"
            marks.append("1" + _SIZES[word])
        elif word in _NOUN:
            nouns.append(_NOUN[word])
        else:
            (labels if len(word) == 1 else marks).append(word)
    return " ".join((*sorted(marks), *nouns, *labels)) or name.strip().lower()


def is_bare(key: str) -> bool:
    """Whether a key says only what sort of vessel it is: `carboy`, `barrel`."""
    return " " not in key


def split_vessels(name: str) -> list[str]:
    """The vessels that one name holds: `carboys 1 and 2` gives `carboy 1`, `carboy 2`; most names hold one."""
    if counted := _RANGE.fullmatch(name.strip()):
        noun = _NOUN.get(counted[1].lower().split()[-1], counted[1])
        return [f"{noun} {n}" for n in range(int(counted[2]), int(counted[3]) + 1)]
    if counted := _CODES.fullmatch(name.strip()):
        return [f"{counted[1]}{n}" for n in range(int(counted[2]), int(counted[3]) + 1)]
    parts = [p for p in _AND.split(name.strip()) if p]
    if len(parts) < 2:
        return [name.strip()] if name.strip() else []
    if all(_CODE.fullmatch(p) or (p.isalpha() and p[0].isupper() and p.lower() not in _NOUN) for p in parts):
        return parts  # "c4 and j1", "Pip and Squeak"
    out: list[str] = []
    noun = ""
    for part in parts:
        words = [w for w in _WORD.findall(part.lower()) if w not in _EMPTY]
        heads = [w for w in words if w in _NOUN]
        if heads:
            noun = _NOUN[heads[-1]]
            plural = heads[-1] in _PLURALS and not words[0][0].isdigit()
            out.append(re.sub(rf"\b{heads[-1]}\b", noun, part, flags=re.IGNORECASE) if plural else part)
        elif noun and len(words) == 1 and (words[0][0].isdigit() or len(words[0]) == 1 or words[0] in _NUMBERS):
            out.append(f"{noun} {part}")
        else:  # "the black and white bucket" is one
            return [name.strip()]
    return out
