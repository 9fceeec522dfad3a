"""Numbers with what follows them: amounts, rates, temperatures, money, scores, how many times, bottles of a size."""

from collections.abc import Callable
from typing import NamedTuple

from journalbot.language.lexicon import Mention
from journalbot.language.numerals import Number
from journalbot.language.tokens import Token
from journalbot.model import Settings
from journalbot.vocabulary.units import UNITS

_UNIT_OF: dict[str, str] = {spelling: unit for unit, row in UNITS.items() for spelling in row.spellings}
_UNIT_HEADS = {phrase.split()[0] for phrase in _UNIT_OF if " " in phrase}
_OR_SO = {("or", "so"), ("or", "thereabouts")}
_BOTTLES = {"bottles", "halves", "half-bottles", "magnums", "splits"}
_SINGLE = {"a", "an", "another", "one", "1"}
_DEGREES = {"°", "º", "˚", "deg", "degs", "degree", "degrees", "deg."}
_SCALES = {"f": "F", "fahrenheit": "F", "c": "C", "celsius": "C", "centigrade": "C", "°f": "F", "°c": "C"}
_CURRENCIES = {
    "$": "", "€": "EUR", "£": "GBP", "usd": "USD", "eur": "EUR", "gbp": "GBP", "aud": "AUD", "cad": "CAD", "nzd": "NZD",
    "chf": "CHF", "dollar": "", "dollars": "", "buck": "", "bucks": "", "euro": "EUR", "euros": "EUR", "quid": "GBP",
    "sterling": "GBP", "zar": "ZAR", "rand": "ZAR", "rands": "ZAR", "bob": "", "kr": "", "kroner": "", "kronor": "",
    "francs": "CHF", "loonies": "CAD",
}
_PREFIXES = {"ZAR": "R", "BRL": "R", "NOK": "kr", "SEK": "kr", "DKK": "kr", "CHF": "Fr", "INR": "Rs"}
_PRICED = {"at", "for", "was", "were", "cost", "costs", "paid"}
_TIMES = {"x", "×", "times", "time"}
_PER = {"/", "per", "a", "to", "each", "every"}
_RATE_VOLUMES = {
    "l": ("L", 1.0),
    "liter": ("L", 1.0),
    "litre": ("L", 1.0),
    "hl": ("L", 100.0),
    "hectolitre": ("L", 100.0),
    "hectoliter": ("L", 100.0),
}
_MULTIPLIERS = {"once": 1.0, "twice": 2.0, "thrice": 3.0}
_MORE = {"more", "level", "heaped", "full", "small", "large", "heaping", "scant", "extra", "good", "big", "generous"}
_UNITS_ALONE = {"cup", "packet", "teaspoon", "tsp", "tbsp", "tablespoon", "sachet", "pint", "quart"}
_HEAPED = {"level", "heaped", "heaping", "scant", "rounded"}
_OUT_OF = (5, 10, 20, 100)
_SIZES_OZ = {7, 11, 12, 16, 22, 25, 32, 64}
_SIZES_ML = {187, 200, 330, 375, 500, 700, 720, 750, 1000, 1500, 3000}
_SIZES_L = {0.187, 0.2, 0.33, 0.375, 0.5, 0.7, 0.75, 1.0, 1.5, 3.0}

Put = Callable[[str, object, int, int], None]


class Amount(NamedTuple):
    """A value with its unit as entries store it (`g`, `tsp/gal`, `F`, `%`, an ISO currency …)."""

    value: float
    unit: str
    approx: bool = False


class Bottles(NamedTuple):
    """So many bottles of one size."""

    count: float  # type: ignore[assignment]  # in place of the tuple's own method
    size: float
    unit: str


class Score(NamedTuple):
    """A mark, and what it is out of."""

    score: float
    out_of: float


def unit_at(words: list[str], i: int) -> tuple[str, int] | None:
    """The unit written at token `i`, with the index after it."""
    if i >= len(words):
        return None
    if words[i] in _UNIT_HEADS and i + 1 < len(words):
        k = i + 1 + (words[i + 1] == ".")  # "fl. oz"
        joined = f"{words[i]} {words[k]}" if k < len(words) else ""
        if joined in _UNIT_OF:
            return _UNIT_OF[joined], k + 1
    unit = _UNIT_OF.get(words[i])
    return (unit, i + 1) if unit else None


def tidy(value: float) -> float:
    """The value without the dust of binary fractions; a whole number as an int."""
    value = round(value, 9)
    return int(value) if value == int(value) else value


def find_amounts(tokens: list[Token], words: list[str], numbers: list[Number], settings: Settings) -> list[Mention]:
    """Amounts, temperatures, percentages, money, scores, counts of times and of bottles, and bare numbers."""
    out: list[Mention] = []

    def put(kind: str, value: object, first: int, last: int) -> None:
        if isinstance(value, Amount) and tuple(words[last : last + 2]) in _OR_SO:
            value, last = value._replace(approx=True), last + 2
        out.append(Mention(kind, value, first, last, tokens[first].start, tokens[last - 1].end))

    number_at = {n.first: n for n in numbers}
    number_ends = {n.last - 1 for n in numbers}
    for n in numbers:
        if n.style == "suffix":
            continue
        put("number", n, n.first, n.last)
        _measured(tokens, words, n, number_at, settings, put)
    for i, word in enumerate(words):
        if (word in _SINGLE and i not in number_at) or word in ("a", "an", "another"):
            _single_unit(words, i, number_at, put)
        elif word in _HEAPED and i - 1 not in number_ends and (found := unit_at(words, i + 1)):
            put("amount", Amount(1, found[0]), i, found[1])
        elif (
            word in _UNITS_ALONE
            and words[i + 1 : i + 2] == ["of"]
            and i - 1 not in number_ends
            and words[i - 1 : i] not in (["a"], ["an"], ["the"], ["per"], ["/"], ["another"])
        ):
            put("amount", Amount(1, _UNIT_OF[word]), i, i + 1)
        elif word == "x" and i + 1 in number_at and i not in number_ends and number_at[i + 1].value <= 12:
            put("times", Amount(number_at[i + 1].value, "times"), i, number_at[i + 1].last)
        elif word in _MULTIPLIERS:
            put("times", Amount(_MULTIPLIERS[word], "times"), i, i + 1)
        elif (price := _prefixed(tokens[i].text, words[i - 1] if i else "", settings.currency)) is not None:
            put("money", Amount(tidy(price), settings.currency), i, i + 1)
        elif word in ("$", "€", "£") and i + 1 in number_at:
            n = number_at[i + 1]
            put("money", Amount(tidy(n.value), _CURRENCIES[word] or settings.currency, n.approx), i, n.last)
    return out


def _prefixed(text: str, before: str, currency: str) -> float | None:
    """A price with its currency's letters run into it (`R630`, `at r7`, where the journal is kept in rand)."""
    prefix = _PREFIXES.get(currency)
    if prefix is None or not (text.startswith(prefix) or (before in _PRICED and text.startswith(prefix.lower()))):
        return None
    figure = text[len(prefix) :].replace(",", ".")
    return float(figure) if figure.replace(".", "", 1).isdigit() else None


def _single_unit(words: list[str], i: int, number_at: dict[int, Number], put: Put) -> None:
    """`a tsp`, `another gram`, `a cup and a half`."""
    found = unit_at(words, i + 1)
    if found and words[i + 1] not in ("l", "c", "t", "g"):
        unit, last = found
        if words[last : last + 3] == ["and", "a", "half"]:
            put("amount", Amount(1.5, unit), i, last + 3)
            return
        value, unit, last = as_rate(1.0, unit, words, last, number_at)
        put("amount", Amount(tidy(value), unit), i, last)


def _measured(
    tokens: list[Token], words: list[str], n: Number, number_at: dict[int, Number], settings: Settings, put: Put
) -> None:
    j, value = n.last, n.value
    nxt = words[j] if j < len(words) else ""
    glued = j < len(tokens) and tokens[j].start == tokens[j - 1].end
    if nxt in _MORE and unit_at(words, j + 1):
        j, nxt = j + 1, words[j + 1]
    if nxt == "-" and j + 1 < len(words) and unit_at(words, j + 1):
        j, nxt = j + 1, words[j + 1]
    degrees = nxt in _DEGREES
    after = j + 1 if degrees else j
    scale = words[after] if after < len(words) else ""
    if (
        scale in _SCALES
        and (degrees or glued or scale in ("f", "fahrenheit", "celsius", "centigrade", "c"))
        and (value < 45 or _SCALES[scale] == "F")
    ):
        put("temperature", Amount(tidy(value), _SCALES[scale], n.approx), n.first, after + 1)
        return
    if degrees and not (scale in ("bx", "brix", "balling", "b") or scale.startswith("oe")):
        put("temperature", Amount(tidy(value), "F" if settings.units == "us" else "C", n.approx), n.first, j + 1)
        return
    if nxt == "%" or nxt == "percent":
        put("percent", Amount(tidy(value), "%", n.approx), n.first, j + 1)
        return
    if nxt in _CURRENCIES and nxt != "$":
        put("money", Amount(tidy(value), _CURRENCIES[nxt] or settings.currency, n.approx), n.first, j + 1)
        return
    if nxt in ("cents", "cent") and n.style in ("figure", "words"):
        put("money", Amount(tidy(value / 100), settings.currency, n.approx), n.first, j + 1)
        return
    if nxt in ("p", "pence") and settings.currency == "GBP" and n.style in ("figure", "words"):
        put("money", Amount(tidy(value / 100), "GBP", n.approx), n.first, j + 1)
        return
    if nxt == "pounds" and settings.currency == "GBP":
        sterling = words[j + 1 : j + 2] == ["sterling"]
        if sterling or (words[n.first - 1 : n.first] == ["for"] and words[j + 1 : j + 2] != ["of"]):
            put("money", Amount(tidy(value), "GBP", n.approx), n.first, j + 1 + sterling)
            return
    if _score(words, n, number_at, put) or _bottles(words, n, number_at, put):
        return
    if nxt == "ppm" or nxt == "ppms":
        put("amount", Amount(tidy(value), "mg/L", n.approx), n.first, j + 1)
        return
    if nxt in _TIMES and not (j + 1 in number_at and nxt in ("x", "×")):
        put("times", Amount(value, "times"), n.first, j + 1)
        return
    part = n.style == "fraction" and nxt == "of" and words[j + 1 : j + 2] in (["a"], ["an"])
    found = unit_at(words, j + 2 if part else j)
    if glued and nxt == "t":  # "1/2t" is of teaspoons, "1T" of tablespoons, as recipes have it
        found = ("tbsp" if tokens[j].text == "T" else "tsp"), j + 1
    if found:
        unit, last = found
        if words[last : last + 3] == ["and", "a", "half"]:
            value, last = value + 0.5, last + 3
        smaller = number_at.get(last)
        if (
            smaller
            and unit in ("lb", "kg", "gal")
            and (second := unit_at(words, smaller.last))
            and second[0] in _PARTS[unit]
        ):
            value, last = value + smaller.value * UNITS[second[0]].factor / UNITS[unit].factor, second[1]
        value, unit, last = as_rate(value, unit, words, last, number_at)
        put("amount", Amount(tidy(value), unit, n.approx), n.first, last)


_PARTS = {"lb": ("oz",), "kg": ("g",), "gal": ("qt", "pt")}


def as_rate(value: float, unit: str, words: list[str], j: int, number_at: dict[int, Number]) -> tuple[float, str, int]:
    """A rate brought to one unit: `1/4 tsp per 5 gal` is 0.05 tsp/gal; otherwise the amount as it stands."""
    if j >= len(words) or words[j] not in _PER:
        return value, unit, j
    k, size = j + 1, 1.0
    if words[j] == "to" and words[k : k + 1] != ["the"] and k not in number_at:
        return value, unit, j
    if words[k : k + 1] in (["the"], ["each"]):
        k += 1
    if k in number_at and words[j] in ("/", "per", "to", "every"):
        size, k = number_at[k].value, number_at[k].last
    if k >= len(words) or not size:
        return value, unit, j
    if words[k] in _RATE_VOLUMES:
        name, factor = _RATE_VOLUMES[words[k]]
        return value / (size * factor), f"{unit}/{name}", k + 1
    found = unit_at(words, k)
    if found and UNITS[found[0]].dimension == "volume" and found[0] not in ("tsp", "tbsp", "cup"):
        return value / size, f"{unit}/{found[0]}", found[1]
    return value, unit, j


def _score(words: list[str], n: Number, number_at: dict[int, Number], put: Put) -> bool:
    j = n.last
    if n.style == "score" and n.figures:
        put("score", Score(tidy(n.figures[0]), tidy(n.figures[1])), n.first, n.last)
        return True
    k = j + 1 if words[j : j + 1] == ["/"] else j + 2 if words[j : j + 2] == ["out", "of"] else -1
    whole = number_at.get(k)
    if whole and whole.value in _OUT_OF and n.value <= whole.value and not unit_at(words, whole.last):
        put("score", Score(tidy(n.value), tidy(whole.value)), n.first, whole.last)
        return True
    return False


def bottle_size(value: float) -> tuple[float, str] | None:
    """The size that a number alone after a count of bottles stands for: 375 is ml, 0.75 is litres."""
    if value in _SIZES_ML:
        return value, "ml"
    return (value, "L") if value in _SIZES_L else None


def _bottles(words: list[str], n: Number, number_at: dict[int, Number], put: Put) -> bool:
    """`28 x 750 ml`, `24 x 0.75`, `two 375s`, `20 bottles of 75 cl`, `4 halves of 37.5 cl`."""
    j = n.last
    j += words[j + 1 : j + 2] == ["of"] and words[j] in _BOTTLES
    crossed = words[j : j + 1] in (["x"], ["×"], ["*"], ["@"])
    skipped = j + (words[j : j + 1] == ["of"]) + (words[j : j + 2] == ["of", "the"])
    named_size = unit_at(words, j)
    if named_size and named_size[0] in ("pt", "qt", "L") and words[named_size[1] : named_size[1] + 1] == ["bottles"]:
        put("bottles", Bottles(tidy(n.value), 1, named_size[0]), n.first, named_size[1] + 1)
        return True  # "15 pint bottles"
    size = number_at.get(j + 1) if crossed else number_at.get(skipped)
    if size is None or not float(n.value).is_integer():
        return False
    last = size.last
    unit = unit_at(words, last)
    ounces = unit and unit[0] in ("oz", "fl oz") and size.value in _SIZES_OZ and (crossed or skipped == j)
    if unit and (unit[0] in ("ml", "L", "cl") or ounces):
        named, last = (tidy(size.value), unit[0]), unit[1]
    elif (known := bottle_size(size.value)) and (crossed or words[last : last + 1] in (["s"], ["'s"])):
        named = (tidy(known[0]), known[1])
        last += words[last : last + 1] == ["s"]
    else:
        return False
    put("bottles", Bottles(tidy(n.value), *named), n.first, last)
    return True
