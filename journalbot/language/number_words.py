"""The words and marks that numbers are made of, as tables."""

from journalbot.vocabulary.units import UNITS


def words(text: str) -> frozenset[str]:
    """The words of a table row."""
    return frozenset(text.split())


ONES: dict[str, int] = {
    "zero": 0, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9,
    "ten": 10, "eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15, "sixteen": 16,
    "seventeen": 17, "eighteen": 18, "nineteen": 19,
}
TENS: dict[str, int] = {
    "twenty": 20, "thirty": 30, "forty": 40, "fourty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80,
    "ninety": 90,
}
SIMPLE: dict[str, int] = ONES | TENS | {f"{t}-{o}": TENS[t] + n for t in TENS for o, n in ONES.items() if 0 < n < 10}
MULTIPLES: dict[str, int] = {"dozen": 12, "doz": 12, "hundred": 100, "thousand": 1000}
PAIRS: dict[str, int] = {"couple": 2, "cople": 2, "coupla": 2, "pair": 2}
PARTS: dict[str, int] = {
    "half": 2, "third": 3, "thirds": 3, "quarter": 4, "quarters": 4, "fourth": 4, "fourths": 4, "fifth": 5, "fifths": 5,
    "sixth": 6, "sixths": 6, "eighth": 8, "eighths": 8, "tenth": 10, "tenths": 10, "sixteenth": 16, "sixteenths": 16,
}
VULGAR: dict[str, float] = {
    "½": 1 / 2,
    "¼": 1 / 4,
    "¾": 3 / 4,
    "⅓": 1 / 3,
    "⅔": 2 / 3,
    "⅕": 1 / 5,
    "⅛": 1 / 8,
    "⅜": 3 / 8,
    "⅝": 5 / 8,
    "⅞": 7 / 8,
    "⅙": 1 / 6,
}
DIGITS: dict[str, str] = {w: str(n) for w, n in ONES.items()} | {"oh": "0", "o": "0", "nought": "0", "naught": "0"}
POINT = frozenset({"point", "dot"})
ARTICLES = frozenset({"a", "an"})

KITCHEN_DENOMINATORS = frozenset({2, 3, 4, 5, 6, 8, 16, 32})
SCORE_DENOMINATORS = frozenset({10, 20, 100})
SPOKEN_GRAVITY = frozenset(
    {"nine", "ten", "eleven"}
)  # "ten ninety" is 1090, "nine ninety eight" 998; no other pair is said so

# "the pink one", "this one", "one more time": a pronoun, and "at this point two of them": no decimal point.
NOT_ONE_AFTER = words(
    "this that the which each every any no another last other same first next new old red white pink rose rosé "
    "dark little big good bad only"
)
NOT_POINT_AFTER = frozenset({"this", "that", "the", "which", "some", "a", "one", "at", "any", "no", "to", "what", "my"})

APPROX_BEFORE = words(
    "~ ≈ about abt around roughly approx approximately approximatly aprox circa ca c almost nearly bout maybe "
    "probably somewhere estimated est"
)
APPROX_PHRASES: dict[str, frozenset[str]] = {  # last word: the words before it
    "over": frozenset({"just", "little", "bit", "slightly"}),
    "under": frozenset({"just", "little", "bit", "slightly"}),
    "below": frozenset({"just"}),
    "above": frozenset({"just"}),
    "to": frozenset({"close", "closer"}),
    "of": frozenset({"shy", "short"}),
}
APPROX_AFTER = frozenset({"ish", "ish."})
RANGE_GAPS = frozenset({"-", "–", "—", "to", "or"})
UNIT_WORDS = frozenset(s for unit in UNITS.values() for s in unit.spellings if " " not in s)
# What a figure below zero is read on: a temperature, or a sugar scale once the alcohol outweighs the sugar.
SUGAR_SCALES = frozenset({"bx", "brix", "balling", "plato"})
DEGREES = frozenset({"c", "f", "°", "º", "deg", "degrees", "degree", "celsius", "fahrenheit"})
MERIDIEM = frozenset({"am", "pm", "a.m", "p.m", "o'clock", "oclock"})
ORDINAL_ENDS = frozenset({"st", "nd", "rd", "th"})
STARTERS = (
    frozenset(SIMPLE)
    | frozenset(MULTIPLES)
    | frozenset(PAIRS)
    | frozenset(PARTS)
    | ARTICLES
    | POINT
    | {"oh", "nought", "naught", "and"}
)
MOST_DIGITS = 15
