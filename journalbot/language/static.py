"""The vocabulary as one lexicon: every table's phrases with what they mean, and the inflections of its verbs."""

from collections.abc import Iterator, Mapping
from functools import cache
from typing import Any

from journalbot.language import date_words as dates
from journalbot.language import number_words as numbers
from journalbot.language.lexicon import Lexicon
from journalbot.vocabulary import actions, cues
from journalbot.vocabulary.actions import Cue
from journalbot.vocabulary.closures import CLOSURES
from journalbot.vocabulary.descriptors import DESCRIPTORS, INTENSIFIERS
from journalbot.vocabulary.fruits import FORMS_OF_BASE, FRUITS
from journalbot.vocabulary.items import ITEMS
from journalbot.vocabulary.materials import MATERIALS, OTHER_MATERIALS
from journalbot.vocabulary.oak import FORMS, ORIGINS, TOASTS
from journalbot.vocabulary.people import OCCASIONS, PEOPLE
from journalbot.vocabulary.quantities import QUANTITIES
from journalbot.vocabulary.units import UNITS
from journalbot.vocabulary.varieties import VARIETIES
from journalbot.vocabulary.vessels import PLACES, VESSEL_ADJECTIVES, VESSEL_NOUNS

Row = tuple[str, str, Any]

COLOURS: dict[str, tuple[str, ...]] = {
    "red": ("red", "reds"),
    "white": ("white", "whites"),
    "rosé": ("rosé", "rose", "pink", "blush", "rosés", "roses", "rosado", "rosato"),
}
_VOWELS = "aeiou"


def inflect(verb: str) -> dict[str, str]:
    """The forms of a verb and what each is: `rack` base, `racked` done, `racking` ing."""
    if verb in actions.IRREGULAR:
        forms = actions.IRREGULAR[verb]
        return {verb: "base", **{f: "ing" if f.endswith("ing") else "done" for f in forms}}
    if verb.endswith("e"):
        past, ing = verb + "d", verb[:-1] + "ing"
    elif verb.endswith("y") and verb[-2] not in _VOWELS:
        past, ing = verb[:-1] + "ied", verb + "ing"
    else:
        past, ing = verb + "ed", verb + "ing"
    return {verb: "base", past: "done", ing: "ing"}


@cache
def lemma(word: str) -> str:
    """The base form of a verb of the tables (`racking` is of `rack`); any other word as it is."""
    for _, _, verbs in actions.VERBS:
        for verb in verbs:
            if word in inflect(verb):
                return verb
    return word


def _action_rows() -> Iterator[Row]:
    for kind, detail, verbs in actions.VERBS:
        for verb in verbs:
            for form, how in inflect(verb).items():
                yield form, "cue", Cue(kind, detail, how)
    for kind, detail, phrases in actions.PHRASES:
        for phrase in phrases:
            yield phrase, "cue", Cue(kind, detail)


def _tables() -> Iterator[Row]:
    for quantity, row in QUANTITIES.items():
        yield from ((s, "quantity", quantity) for s in row.spellings)
    for material, spellings in MATERIALS.items():
        yield from ((s, "material", material) for s in spellings)
    for spellings in OTHER_MATERIALS.values():
        yield from ((s, "material", s) for s in spellings)  # kept as the note has it
    for name, variety in VARIETIES.items():
        yield from ((s, "variety", (name, variety.colour)) for s in variety.spellings)
        yield from ((f"{s}s", "variety", (name, variety.colour)) for s in variety.spellings if not s.endswith("s"))
    for name, base in FRUITS.items():
        yield from ((s, "fruit", (name, base.colour)) for s in base.spellings)
    for colour, spellings in COLOURS.items():
        yield from ((s, "colour", (colour, colour)) for s in spellings)
    for kind, table in (
        ("oak_form", FORMS),
        ("oak_toast", TOASTS),
        ("oak_origin", ORIGINS),
        ("closure", CLOSURES),
        ("place", PLACES),
    ):
        for name, spellings in table.items():
            yield from ((s, kind, name) for s in spellings)
    yield from ((d, "descriptor", d) for d in DESCRIPTORS)
    yield from ((s, "airlock", s) for s in actions.AIRLOCK_NOUNS)
    yield from ((s, "lees", s) for s in actions.LEES_NOUNS)
    for kind in ("planned", "denied", "supposed", "hearsay", "still", "left", "pronouns", "both"):
        yield from ((s, kind, s) for s in getattr(cues, kind.upper()))


# Words that the recognisers of numbers, dates, amounts and batches read, with the value by which two spellings of one
# thing are known.
_VALUES: tuple[Mapping[str, object], ...] = (
    dates.WEEKDAYS, dates.MONTHS, dates.RELATIVE_DAYS, dates.SEASONS, dates.ORDINALS, dates.UNITS_OF_TIME,
    numbers.SIMPLE, numbers.MULTIPLES, numbers.PAIRS, numbers.PARTS,
)  # fmt: skip
_FEASTS = (*dates.FIXED_FEASTS, *dates.EASTER_FEASTS, *dates.NTH_FEASTS)
_OTHERS = (
    *dates.DAY_PARTS, *dates.MEALS, *dates.MODIFIERS, *dates.PARTS_OF_PERIOD, *_FEASTS, *numbers.DIGITS, *numbers.POINT,
    *numbers.APPROX_BEFORE, *numbers.SUGAR_SCALES, *numbers.DEGREES, *PEOPLE, *OCCASIONS, *INTENSIFIERS,
    *VESSEL_ADJECTIVES, "batch", "batches", "number", "numbers", "twice", "thrice", "times", "finished", "degree",
)  # fmt: skip


@cache
def _plain() -> dict[str, set[object]]:
    """Words of the tables that other recognisers read, with what they mean where that is one thing."""
    out: dict[str, set[object]] = {}
    for n, table in enumerate(_VALUES):
        for word, value in table.items():
            out.setdefault(word, set()).add((n, value))
    named = {name: row.spellings for name, row in UNITS.items()} | VESSEL_NOUNS
    for name, spellings in (*named.items(), *ITEMS.items(), *FORMS_OF_BASE.items()):
        for spelling in spellings:
            for word in spelling.split():
                out.setdefault(word, set()).update([name] if word == spelling else ())
    for phrase in _OTHERS:
        for word in phrase.split():
            out.setdefault(word, set())
    return out


@cache
def plain_words() -> frozenset[str]:
    """Words of the tables that other recognisers read, which are nobody's misspelling either."""
    return frozenset(_plain())


def meanings(word: str) -> set[object]:
    """What a single word of the tables means; nothing where it is no table's, or means no one thing."""
    return {*lexicon().meanings(word), *_plain().get(word, ())}


# What stands behind a figure, and what before one.
_COUNTED = frozenset(s for unit in UNITS.values() for s in unit.spellings) | {*dates.UNITS_OF_TIME, "times", "degrees"}
_NUMBERED = frozenset(s for spellings in VESSEL_NOUNS.values() for s in spellings) | {"batch", "batches"}

_LABELS = frozenset("bcdefgh")  # "carboy B"; "a" is an article first


def fits(word: str, before: str, after: str) -> bool:
    """Whether a word of the tables goes with its neighbours: in a phrase, as what a figure counts or numbers."""
    if (word in _COUNTED and (before in numbers.SIMPLE or before[:1].isdecimal())) or (
        word in _NUMBERED and (after[:1].isdecimal() or after in _LABELS)
    ):
        return True
    if word in numbers.POINT and before in numbers.SIMPLE and after in numbers.DIGITS:
        return True
    pairs = lexicon().pairs()
    return (word, after) in pairs or (before, word) in pairs


@cache
def terms() -> frozenset[str]:
    """The words of all the tables, that misspellings may be mended to."""
    return plain_words() | lexicon().words


@cache
def lexicon() -> Lexicon:
    """The whole vocabulary, built once a process."""
    return Lexicon((*_action_rows(), *_tables()))
