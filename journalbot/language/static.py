"""The vocabulary as one lexicon: every table's phrases with what they mean, and the inflections of its verbs."""

from collections.abc import Iterator
from functools import cache
from typing import Any

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


@cache
def plain_words() -> frozenset[str]:
    """Words of the tables that other recognisers read, which are nobody's misspelling either; vessels' nouns among
    them.
    """
    phrases = [s for table in (VESSEL_NOUNS, ITEMS, FORMS_OF_BASE) for spellings in table.values() for s in spellings]
    phrases += [s for unit in UNITS.values() for s in unit.spellings]
    return frozenset(
        w for phrase in (*phrases, *PEOPLE, *OCCASIONS, *INTENSIFIERS, *VESSEL_ADJECTIVES) for w in phrase.split()
    )


@cache
def lexicon() -> Lexicon:
    """The whole vocabulary, built once a process."""
    return Lexicon((*_action_rows(), *_tables()))
