"""Measurements: a value with the name of what was measured, its unit, or a form that leaves no doubt."""

from collections.abc import Sequence
from typing import NamedTuple

from journalbot.language.amounts import Amount, tidy
from journalbot.language.lexicon import Mention
from journalbot.language.numerals import Number
from journalbot.language.tokens import Token
from journalbot.model import Settings
from journalbot.vocabulary.quantities import QUANTITIES

_BREAKS = {".", ";", "!", "?", "\n", "$", "£", "€"}
_REACH = 9  # tokens between a quantity's name and its value
_AT = {"@", "at", "a"}
# Names that are everyday words too: they count only beside a unit of theirs.
_WEAK = {
    "free", "total", "acid", "potential", "nitrogen", "volume", "vol", "density", "acidity", "alcohol", "malic",
    "hydro", "temp", "pa", "grav",
}
_LAB = {"ph", "ta"}  # beside these, "free 30" is of SO2
_BARE_OK = {"density", "alcohol", "malic", "temp", "hydro", "grav", "pa", "acidity"}
_WARM = {"F": (28.0, 120.0), "C": (-2.0, 45.0)}
_RATES = {"g/L": ("ta", "residual_sugar", "malic", "volatile_acidity"), "mg/L": ("free_so2", "total_so2", "yan")}
_GOES_ON = {"ph", "brix"}  # quantities whose figure may follow without its name
_READS = {"reads", "read", "reading", "it's", "is", "now", "was"}
_PUT_IN = {"with", "of", "to", "added", "add", "by"}  # beside a figure of sulfite that is a dose
_NOT_BEFORE_GRAVITY = {"#", "$", "€", "£", "batch", "no", "number", "lot", "x"}


class Reading(NamedTuple):
    """One quantity as read: value and unit as entries store them."""

    quantity: str
    value: float
    unit: str
    approx: bool = False
    possible: bool = True  # False where no must or wine can show this value
    named: bool = True  # False for a bare gravity or a bare `at 60`


def as_gravity(n: Number, tokens: Sequence[Token], named: bool) -> float | None:
    """The specific gravity that a number stands for (`1.012`, `1,012`, `1012`, `.998`), or None."""
    text = "".join(t.text for t in tokens[n.first : n.last]) if n.style != "dictated" else ""
    value = n.decimal_comma_value if n.decimal_comma_value is not None else n.value
    low, high = 0.975, 1.18
    if low <= value <= high:
        decimals = len(text.replace(",", ".").partition(".")[2]) if text else 3
        return tidy(value) if decimals >= 3 or (decimals == 2 and value != 1) or named else None
    whole = n.value
    if float(whole).is_integer() and (
        (1000 <= whole <= 1180 and not n.approx) or ((named or n.style == "dictated") and 975 <= whole < 1000)
    ):
        return tidy(whole / 1000)
    return None


def find_readings(
    tokens: list[Token],
    words: list[str],
    names: Sequence[Mention],
    values: Sequence[Mention],
    settings: Settings,
    taken: set[int],
    dosed: set[int],
) -> list[Mention]:
    """Readings in the text. `names` are mentions of quantities, `values` of numbers and amounts; `taken` are the tokens
    that belong to something else (a date, a batch's number, a vessel's), `dosed` those that name a material."""
    names = [m for m in names if words[m.first] != "t" or tokens[m.first].text == "T"]
    best = _most_specific(values, taken)
    named = _pair(tokens, words, names, best, dosed)
    out: list[Mention] = []
    previous: Mention | None = None
    for v in best:
        name = named.get(v.first)
        thing = words[v.last : v.last + 1] in (["buffer"], ["solution"], ["strips"], ["paper"])  # "pH 7.01 buffer"
        reading = _named_reading(v, name, tokens, settings) if name and not thing else None
        if reading is None and v.kind == "temperature":
            amount: Amount = v.value
            low, high = _WARM[amount.unit]
            if low - 30 <= amount.value <= high + 15 or amount.value > 300:
                reading = Reading("temperature", amount.value, amount.unit, amount.approx, amount.value < 300)
        if reading is None and v.kind == "amount" and v.value.unit == "mg/L" and previous and v.first not in dosed:
            beside = {*words[v.first - 1 : v.first], *words[v.last : v.last + 1]}
            near = dosed.isdisjoint(range(v.first - 2, v.last + 3)) and beside.isdisjoint(_PUT_IN)
            one_sentence = not _BREAKS.intersection(words[previous.last : v.first])
            if previous.value.quantity in ("free_so2", "total_so2") and near and one_sentence:
                reading = Reading(previous.value.quantity, v.value.value, "mg/L", bool(v.value.approx))
        of_alcohol = v.kind == "percent" and previous is not None and previous.value.quantity == "alcohol"
        if reading is None and of_alcohol and words[v.first - 1] in _READS | {"to"}:
            reading = Reading("alcohol", _plain(v), "% vol", bool(v.value.approx))
        if reading is None and v.kind == "amount" and v.value.unit == "g/L" and previous and v.first not in dosed:
            told = previous.value.quantity in ("malic", "residual_sugar", "volatile_acidity")
            near = dosed.isdisjoint(range(v.first - 2, v.last + 3))
            if told and near and not _BREAKS.intersection(words[previous.last : v.first]):
                reading = Reading(previous.value.quantity, v.value.value, "g/L", bool(v.value.approx))
        if reading is None and v.kind == "number":
            reading = _bare(v, words, tokens, previous, settings)
        if reading is not None:
            previous = Mention("reading", reading, v.first, v.last, v.start, v.end)
            out.append(previous)
    return out


def _most_specific(values: Sequence[Mention], taken: set[int]) -> list[Mention]:
    """One mention a value: the longest at each place, none that overlaps a token taken by something else."""
    out: list[Mention] = []
    end = -1
    for v in sorted(values, key=lambda m: (m.first, -m.last, m.kind == "number")):
        if v.first < end or any(i in taken for i in range(v.first, v.last)):
            continue
        out.append(v)
        end = v.last
    return out


def _pair(
    tokens: list[Token], words: list[str], names: Sequence[Mention], values: list[Mention], dosed: set[int]
) -> dict[int, Mention]:
    """Which quantity's name each value belongs to (by the value's first token)."""
    out: dict[int, Mention] = _tabled(words, names, values)
    starts = sorted(m.first for m in names)
    for name in names:
        if name in out.values():
            continue
        key = name.value
        behind = next((v for v in values if v.last == name.first or _joined(words, v.last, name.first)), None)
        ahead = any(
            v.first in (name.last, name.last + 1) and _fits(v, key, words, name, strict=False)
            for v in best_after(values, name, words)
        )
        if behind and not ahead and behind.first not in out and _fits(behind, key, words, name, strict=True):
            out[behind.first] = name
            twin = next((v for v in values if v.last == behind.first - 1 and words[v.last] == "and"), None)
            if twin and twin.kind == "number" and key == "brix" and twin.first not in out:
                out[twin.first] = name  # "9.8 and 10.6 Brix"
            continue
        limit = min((s for s in starts if s >= name.last), default=len(tokens))
        for v in values:
            if v.first < name.last or v.first in out:
                continue
            if (
                (v.first >= limit and v.first != limit)
                or v.first - name.last > _REACH
                or _BREAKS.intersection(words[name.last : v.first])
                or dosed.intersection(range(name.last, v.first))
            ):
                break
            if _fits(v, key, words, name, strict=False):
                out[v.first] = name
                if words[v.first - 1] == "from" and words[v.last : v.last + 1] == ["to"]:
                    out.update((w.first, name) for w in values if w.first == v.last + 1)
                break
            if v.kind != "number" or v.first - name.last <= 1:
                break
    return out


def _tabled(words: list[str], names: Sequence[Mention], values: list[Mention]) -> dict[int, Mention]:
    """Names and figures as a table has them: `Brix/pH/TA: 23.4/3.58/5.4`."""
    out: dict[int, Mention] = {}
    for k, name in enumerate(names):
        if k and words[names[k - 1].last : name.first] == ["/"]:
            continue
        row = [name]
        while len(row) + k < len(names) and words[row[-1].last : names[k + len(row)].first] == ["/"]:
            row.append(names[k + len(row)])
        at = row[-1].last + (words[row[-1].last : row[-1].last + 1] in ([":"], ["="], ["-"]))
        figures: list[Mention] = []
        for v in values:
            if v.first == (figures[-1].last + 1 if figures else at) and (not figures or words[v.first - 1] == "/"):
                figures.append(v)
        if len(row) > 1 and len(figures) == len(row):
            out.update((v.first, n) for v, n in zip(figures, row, strict=True))
    return out


def best_after(values: list[Mention], name: Mention, words: list[str]) -> list[Mention]:
    """Values right behind a quantity's name, with at most a mark or a small word between."""
    return [
        v
        for v in values
        if v.first == name.last
        or (v.first == name.last + 1 and words[name.last] in (":", "=", "is", "at", "of", "-", "was", "reads"))
    ]


def _joined(words: list[str], end: int, start: int) -> bool:
    return end < start <= end + 2 and all(
        w in ("°", "%", "deg", "degrees", "º", "of", "vol", "by") for w in words[end:start]
    )


def _fits(v: Mention, quantity: str, words: list[str], name: Mention, strict: bool) -> bool:
    """Whether a value can be of a quantity; strictly, where the name stands behind it."""
    row = QUANTITIES[quantity]
    word = words[name.first] if name.last - name.first == 1 else ""
    if v.kind == "number":
        if v.value.style == "words" and words[v.first - 1] in ("all", "both", "these", "the"):
            return False  # "free SO2 of all three reds"
        if strict:
            return quantity in ("brix", "ph", "ta", "yan") and word not in _WEAK
        if word in _WEAK - _BARE_OK:
            listed = word == "free" and v.first == name.last and not _LAB.isdisjoint(words)
            return listed or "so2" in words or "fso2" in words
        if word == "t":
            low, high = _WARM["F"] if v.value.value > _WARM["C"][1] else _WARM["C"]
            return v.first - name.last <= 1 and low <= v.value.value <= high
        if quantity == "volume":
            return False
        return not (quantity == "temperature" and v.value.value > 300 and v.first - name.last > 1)
    if v.kind == "temperature":
        return quantity == "temperature" or (quantity == "brix" and words[v.last : v.last + 1] == ["bx"])
    if v.kind == "percent":
        return "%" in row.units or "% vol" in row.units
    if v.kind == "amount":
        return v.value.unit in _RATES and quantity in _RATES[v.value.unit]
    return False


def _named_reading(v: Mention, name: Mention, tokens: list[Token], settings: Settings) -> Reading | None:
    quantity: str = name.value
    row = QUANTITIES[quantity]
    approx = bool(v.value.approx)
    if quantity == "sg":
        gravity = as_gravity(v.value, tokens, named=True)
        return Reading("sg", gravity if gravity is not None else tidy(_plain(v)), "SG", approx, gravity is not None)
    value = _plain(v)
    unit = row.unit
    if quantity == "temperature":
        unit = v.value.unit if v.kind == "temperature" else "F" if settings.units == "us" else "C"
        low, high = _WARM[unit]
        if v.kind == "number" and unit == "F" and 0 < value < low - 5:
            unit, (low, high) = "C", _WARM["C"]  # no wine is that cold in the journal's own degrees
        return Reading(quantity, tidy(value), unit, approx, low - 30 <= value <= high + 60)
    if quantity == "ta":
        unit = "%" if v.kind == "percent" or (v.kind == "number" and value < 1.6) else "g/L"
        return Reading(quantity, tidy(value), unit, approx, value < 3 if unit == "%" else value < 30)
    return Reading(quantity, tidy(value), unit, approx, row.low <= value <= row.high)


def _plain(v: Mention) -> float:
    if isinstance(v.value, Number):
        return v.value.decimal_comma_value if v.value.decimal_comma_value is not None else v.value.value
    return float(v.value.value)


def _bare(
    v: Mention, words: list[str], tokens: list[Token], previous: Mention | None, settings: Settings
) -> Reading | None:
    """A gravity on its own, or the temperature it was read at (`1.064 @60`)."""
    n: Number = v.value
    before = words[v.first - 1] if v.first else ""
    after = words[v.last] if v.last < len(words) else ""
    spaced = v.last < len(tokens) and tokens[v.last].start > v.end  # "3: .998 / 64F"
    if before not in _NOT_BEFORE_GRAVITY and (
        after != "/" or spaced or (v.last + 1 < len(words) and not words[v.last + 1].isdigit())
    ):
        gravity = as_gravity(n, tokens, named=False)
        if gravity is not None and (tokens[v.last - 1].text != str(int(n.value)) or _alone(tokens, words, v)):
            return Reading("sg", gravity, "SG", n.approx, named=False)
    if after == "b" and n.style == "decimal" and 5 <= n.value <= 35 and not _numbered(tokens, v.last + 1):
        return Reading("brix", tidy(n.value), "Brix", n.approx)
    if (
        before in _AT
        and previous is not None
        and previous.value.quantity in ("sg", "brix")
        and v.first - previous.last <= 2
    ):
        unit = "F" if settings.units == "us" else "C"
        low, high = _WARM[unit]
        if low <= n.value <= high:
            return Reading("temperature", tidy(n.value), unit, n.approx, named=False)
    if previous is not None and previous.value.quantity in _GOES_ON and n.style == "decimal" and before in _READS:
        row = QUANTITIES[previous.value.quantity]  # "target is pH 3.4, reads 3.6"
        if row.low <= n.value <= row.high and not _BREAKS.intersection(words[previous.last : v.first]):
            last: Reading = previous.value
            return last._replace(value=tidy(n.value), approx=n.approx)
    return None


def _numbered(tokens: list[Token], i: int) -> bool:
    """Whether a figure stands at token `i`: "0.5 g in b 4" is of batch 4."""
    return i < len(tokens) and tokens[i].kind == "number"


def _alone(tokens: list[Token], words: list[str], v: Mention) -> bool:
    """Whether a four-figure number stands for itself: no noun or unit follows it, and it is no year."""
    if v.last >= len(words):
        return True
    nxt = words[v.last]
    return tokens[v.last].kind == "mark" or nxt in (
        "and", "at", "today", "now", "this", "by", "on", "still", "so", "with", "after", "before", "yesterday",
        "tonight", "then", "pitched",
    )
