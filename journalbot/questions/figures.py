"""The figures that a question gives to reckon with: each number with what it is of and the part it plays.

`from 18 to 22 brix` gives two of Brix, one to start from and one to reach. Ranges are told apart here, since a question
that says "from 6.1 to 7" means both, where a note that says "10 to 12 g" means something between.
"""

from collections.abc import Callable, Iterator, Sequence
from typing import NamedTuple

from journalbot.language.amounts import as_rate, unit_at
from journalbot.language.lexicon import Mention
from journalbot.language.numerals import Number, find_numbers
from journalbot.language.text import Text
from journalbot.vocabulary.calculation_words import (
    AFTER_UNITS,
    LENGTHS,
    NAMED,
    OWN_UNITS,
    ROLE_OF_NAME,
    ROLES,
    SMALL_VOLUMES,
    STEPS_OVER,
)
from journalbot.vocabulary.units import UNITS

SCALES = {"f": "F", "fahrenheit": "F", "c": "C", "celsius": "C", "centigrade": "C", "°f": "F", "°c": "C"}
_DEGREES = frozenset(("°", "º", "deg", "degrees", "degree"))
_MINUS = frozenset(("-", "−", "minus"))
_SHARED = ("g/L", "ta", "percent", "sg", "brix", "ph")
_GRAVITY = (0.9, 1.3)  # what three decimals between them are meant as, possible or not


class Figure(NamedTuple):
    """A number of the question: `sort` says of what (sg, brix, volume, mg/L …), `role` the small word before it."""

    sort: str
    value: float
    unit: str
    role: str
    first: int
    last: int

    @property
    def said(self) -> str:
        """As a Query holds it: `30 mg/L`."""
        return f"{self.value:g} {self.unit}".strip()


def find_figures(text: Text, refs: Sequence[Mention]) -> list[Figure]:
    """The figures of a question in order; not those in a batch's number, a date or a bottle count."""
    taken = {i for m in (*refs, *text.of("date", "time", "money")) for i in range(m.first, m.last)}
    vessels = {i for m in text.of("vessel") for i in range(m.first, m.last)}
    numbers = [
        n
        for n in _apart(find_numbers(text.tokens, text.text))
        if n.style != "suffix" and not any(i in taken for i in range(n.first, n.last))
    ]
    at = {n.first: n for n in numbers}
    found = [f for n in numbers if (f := _figure(text, n, at, vessels))]
    return _alike(_sides(found))


def _apart(numbers: Sequence[Number]) -> Iterator[Number]:
    for n in numbers:
        yield from n.parts if n.style == "range" and n.parts else (n,)


def _figure(text: Text, n: Number, at: dict[int, Number], vessels: set[int]) -> Figure | None:
    words = text.words
    comma = n.decimal_comma_value
    # "1,250 L" is twelve hundred, "1,078" alone a gravity.
    value, first = float(n.value if comma is None or n.style == "grouped" else comma), n.first
    if first and words[first - 1] in _MINUS and value > 0 and (first == 1 or words[first - 2] in ROLES):
        value, first = -value, first - 1
    name, start = _name_before(words, first)
    role = ROLE_OF_NAME.get(words[start]) or (ROLES.get(words[start - 1], "") if start else "")

    def figure(sort: str, unit: str, last: int) -> Figure:
        return Figure(sort, value, unit, role, start, last)

    j = n.last
    j += j < len(words) and words[j] == "-"
    nxt = words[j] if j < len(words) else ""
    after = words[j + 1] if j + 1 < len(words) else ""
    if words[n.first] == "half" and nxt in ("bottle", "bottles"):
        return Figure("size", 375, "ml", "", n.first, n.last)
    if nxt in _DEGREES:
        j, nxt = j + 1, after
        if nxt in SCALES:
            return figure("temperature", SCALES[nxt], j + 1)
    if nxt in SCALES and (
        len(nxt) > 1 or text.tokens[j].text.isupper() or text.tokens[j].start == text.tokens[j - 1].end
    ):
        return figure("temperature", SCALES[nxt], j + 1)
    gravity = value if comma is None else float(comma)
    as_gravity = _GRAVITY[0] <= gravity <= _GRAVITY[1] and _decimals(text, n) >= 3
    if name == "sg" and as_gravity:
        return Figure("sg", gravity, "SG", role, start, n.last)
    if nxt in OWN_UNITS:
        return figure(*OWN_UNITS[nxt], j + 1)
    if nxt in LENGTHS:
        return figure("length", LENGTHS[nxt], j + 1)
    if nxt in ("%", "percent"):
        sort = "ta" if name == "ta" or _acid_after(words, j + 1) else "percent"
        return figure(sort, "%", j + 1)
    unit = _unit(words, j, at) or _tablets(text, j, at)
    if unit:
        return _of_unit(figure, unit, name, words, set(range(n.first, unit[1])) <= vessels)
    if nxt in AFTER_UNITS:
        return figure(AFTER_UNITS[nxt], "mg/L", j + 1)
    if as_gravity:
        return Figure("sg", gravity, "SG", role, start, n.last)
    if 975 <= value <= 1200 and float(value).is_integer() and name in ("", "sg"):
        return Figure("sg", value / 1000, "SG", role, start, n.last)
    if name:
        return figure(name, NAMED_UNITS.get(name, ""), n.last)
    if "refractometer" in words[max(0, start - 4) : n.last + 4]:
        return figure("brix", "Brix", n.last)
    return figure("bare", "", n.last)


NAMED_UNITS = {
    "sg": "SG",
    "ph": "pH",
    "ta": "g/L",
    "brix": "Brix",
    "alcohol": "%",
    "free_so2": "mg/L",
    "yan": "mg/L",
    "malic": "g/L",
    "residual_sugar": "g/L",
    "molecular": "mg/L",
    "total_so2": "mg/L",
}


def _of_unit(
    figure: Callable[[str, str, int], Figure], unit: tuple[str, int], name: str, words: Sequence[str], in_vessel: bool
) -> Figure:
    """The figure of a rate, a volume, a mass or a count, by what stands around it."""
    said, last = unit
    top, _, bottom = said.partition("/")
    if bottom:
        sort = name if name in NAMED_UNITS else NAMED.get(words[last] if last < len(words) else "", "")
        if sort == "molecular" and figure(sort, said, last).value > 3:
            sort = ""  # "the molecular SO2 of 30 ppm": the figure is the free
        if top in ("mg", "g") and bottom == "L":
            return figure(sort or said, said, last)
        return figure("rate", said, last)
    if UNITS[top].dimension == "volume":
        bottles = last < len(words) and words[last] in ("bottle", "bottles")
        small = top in SMALL_VOLUMES
        sort = "size" if bottles else "capacity" if in_vessel else "spoon" if small else "volume"
        return figure(sort, said, last)
    return figure("mass" if UNITS[top].dimension == "mass" else top, said, last)


def _unit(words: Sequence[str], j: int, at: dict[int, Number]) -> tuple[str, int] | None:
    """The unit at a token, rates too: `g/L`, `tablets per gallon`, `ppm`."""
    if j < len(words) and words[j] in ("ppm", "ppms"):
        return "mg/L", j + 1
    found = unit_at(list(words), j)
    if found is None or (UNITS[found[0]].dimension == "count" and found[0] not in ("tablet", "bottle")):
        return None
    size, unit, last = as_rate(1.0, found[0], list(words), found[1], at)
    return (unit, last) if abs(size - 1) < 1e-9 else found


def _tablets(text: Text, j: int, at: dict[int, Number]) -> tuple[str, int] | None:
    """Tablets counted by their name: `2 campden tablets per gallon`."""
    named = next((m for m in text.of("material") if m.first == j and m.value == "campden tablet"), None)
    if named is None:
        return None
    size, unit, last = as_rate(1.0, "tablet", list(text.words), named.last, at)
    return (unit, last) if abs(size - 1) < 1e-9 else ("tablet", named.last)


def _name_before(words: Sequence[str], first: int) -> tuple[str, int]:
    """The quantity named right before a number, and where that name starts: `pH 3.4`, `a TA of 8`."""
    i = first
    while i > 0 and words[i - 1] in STEPS_OVER:
        i -= 1
    for size in (2, 1):
        phrase = " ".join(words[max(0, i - size) : i])
        if i >= size and phrase in NAMED:
            at = i - size
            while at > 0 and words[at - 1] in ("a", "an", "the"):
                at -= 1
            return NAMED[phrase], at
    at = first
    while at > 0 and words[at - 1] in ("a", "an", "about", "around", "the", "roughly"):
        at -= 1
    return "", at


def _acid_after(words: Sequence[str], j: int) -> bool:
    return j < len(words) and words[j] in ("ta", "acid", "acidity")


def _decimals(text: Text, n: Number) -> int:
    said = "".join(t.text for t in text.tokens[n.first : n.last]).replace(",", ".")
    return len(said.partition(".")[2]) if "." in said else 0


def _sides(found: list[Figure]) -> list[Figure]:
    """A figure after "from" or before "to", where the other side of it says so: `1.090 to 0.996`, `from 6 to 7 g/L`."""
    out = list(found)
    for k in range(len(out) - 1):
        left, right = out[k], out[k + 1]
        if right.role == "to" and not left.role and right.first - 1 == left.last:
            out[k] = left._replace(role="from")
    return out


def _alike(found: list[Figure]) -> list[Figure]:
    """A bare figure is of what its neighbour is of, where small words join the two: `from 18 to 22 brix`, `pH 3.2 and
    3.8 to get 3.5`."""
    out = list(found)
    for k, figure in enumerate(out):
        if figure.sort != "bare":
            continue
        near = [n for n in (out[k - 1] if k else None, out[k + 1] if k + 1 < len(out) else None) if n is not None]
        # "10 L at 8 and 5 L at 5 g/L": what is said of one lot holds for the other.
        near += [n for n in out if n.sort in _SHARED and figure.role in ("at", "of")][:1]
        near = [
            n
            for n in near
            if n.sort not in ("bare", "volume", "mass", "temperature", "capacity", "size", "spoon", "tablet")
        ]
        joined = [n for n in near if figure.role in ("to", "from", "and", "at", "of") or n.role in ("to", "and")]
        if joined:
            out[k] = figure._replace(sort=joined[-1].sort, unit=joined[-1].unit)
    return out
