"""The vocabulary's tables: whole, without contradiction, and spelt so that a note's words can meet them."""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping

import pytest
from rapidfuzz.distance import OSA

from journalbot.language.tokens import tokenize
from journalbot.vocabulary import (
    closures,
    descriptors,
    everyday,
    fruits,
    items,
    materials,
    oak,
    people,
    varieties,
    vessels,
)
from journalbot.vocabulary.english import english

Spellings = Mapping[str, tuple[str, ...]]

# Every table of canonical name to spellings. Materials in and out of the format's list are one namespace.
TABLES: dict[str, Spellings] = {
    "materials": {**materials.MATERIALS, **materials.OTHER_MATERIALS},
    "varieties": {name: v.spellings for name, v in varieties.VARIETIES.items()},
    "fruits": {name: f.spellings for name, f in fruits.FRUITS.items()},
    "forms of base": fruits.FORMS_OF_BASE,
    "oak forms": oak.FORMS,
    "oak toasts": oak.TOASTS,
    "oak origins": oak.ORIGINS,
    "vessels": vessels.VESSEL_NOUNS,
    "places": vessels.PLACES,
    "closures": closures.CLOSURES,
    "items": items.ITEMS,
}
WORDS: dict[str, frozenset[str]] = {
    "descriptors": descriptors.DESCRIPTORS,
    "intensifiers": descriptors.INTENSIFIERS,
    "faults": frozenset(descriptors.FAULTS),
    "vessel adjectives": vessels.VESSEL_ADJECTIVES,
    "people": people.PEOPLE,
    "occasions": people.OCCASIONS,
    "everyday": everyday.EVERYDAY,
}
WEAK: dict[str, frozenset[str]] = {
    "materials": materials.WEAK_MATERIALS,
    "varieties": varieties.WEAK_VARIETIES,
    "fruits": fruits.WEAK_FRUITS,
    "vessels": vessels.WEAK_VESSELS,
}
each_table = pytest.mark.parametrize("table", TABLES.values(), ids=TABLES)


def spellings(table: Spellings) -> Iterator[str]:
    for row in table.values():
        yield from row


def canonical(table: Spellings, words: str) -> str | None:
    return next((name for name, row in table.items() if words in row), None)


# --- every table


@each_table
def test_a_spelling_means_one_thing(table: Spellings) -> None:
    assert [s for s, n in Counter(spellings(table)).items() if n > 1] == []


@each_table
def test_a_canonical_name_is_one_of_its_own_spellings(table: Spellings) -> None:
    assert [name for name, row in table.items() if name.lower() not in row] == []


@pytest.mark.parametrize("words", [*map(list, map(spellings, TABLES.values())), *WORDS.values()], ids=[*TABLES, *WORDS])
def test_a_spelling_is_what_the_tokenizer_makes_of_it(words: Iterable[str]) -> None:
    """Lower case, not empty, single spaces; and no sign that a note's own tokens would part or join otherwise."""
    assert [w for w in words if not w or w != " ".join(t.low for t in tokenize(w))] == []


@pytest.mark.parametrize("name", WEAK)
def test_weak_words_are_spellings_of_their_table(name: str) -> None:
    assert WEAK[name] - set(spellings(TABLES[name])) == set()


# --- what the data model names (source: the project's own format of entries)

FORMAT_MATERIALS = (
    "potassium metabisulfite", "sodium metabisulfite", "campden tablet", "sulfur dioxide", "tartaric acid",
    "malic acid", "citric acid", "acid blend", "potassium bicarbonate", "calcium carbonate", "sugar", "honey", "water",
    "yeast nutrient", "diammonium phosphate", "yeast energizer", "pectic enzyme", "bentonite", "gelatin", "isinglass",
    "egg white", "kieselsol", "chitosan", "potassium sorbate", "tannin", "glycerin",
)  # fmt: skip


def test_materials_are_the_formats() -> None:
    assert set(materials.MATERIALS) == set(FORMAT_MATERIALS)


def test_oak_is_the_formats() -> None:
    assert set(oak.FORMS) == {"chips", "cubes", "spiral", "staves", "barrel", "powder"}
    assert set(oak.TOASTS) == {"light", "medium", "medium plus", "heavy"}
    assert {"French", "American", "Hungarian"} <= set(oak.ORIGINS)


def test_colours_are_the_formats() -> None:
    assert {v.colour for v in varieties.VARIETIES.values()} <= {"red", "white", None}
    colours = {"red", "white", "rosé", "fruit", "mead", "cider", "other", None}
    assert {f.colour for f in fruits.FRUITS.values()} <= colours


# --- how people write it (common practice, no source)


@pytest.mark.parametrize(
    ("table", "words", "name"),
    [
        ("materials", "k-meta", "potassium metabisulfite"),
        ("materials", "kmeta", "potassium metabisulfite"),
        ("materials", "sulphite", "potassium metabisulfite"),
        ("materials", "sodium meta", "sodium metabisulfite"),
        ("materials", "sodium sulphite", "sodium metabisulfite"),  # the longer phrase wins over the bare "sulphite"
        ("materials", "campdens", "campden tablet"),
        ("materials", "so2", "sulfur dioxide"),
        ("materials", "sulfur", "sulfur"),  # dusted on vines or burnt in barrels as often as it is sulfur dioxide
        ("materials", "dap", "diammonium phosphate"),
        ("materials", "chalk", "calcium carbonate"),
        ("materials", "baking soda", "baking soda"),  # sodium, not potassium
        ("materials", "cream of tartar", "cream of tartar"),  # the salt, not tartaric acid
        ("materials", "brown sugar", "brown sugar"),
        ("materials", "enzyme", "enzyme"),  # which one is not said
        ("materials", "oak chips", None),  # oak has a kind of its own
        ("varieties", "zin", "zinfandel"),
        ("varieties", "cab franc", "cabernet franc"),
        ("varieties", "cab", "cabernet"),
        ("varieties", "sauv blanc", "sauvignon blanc"),
        ("varieties", "shiraz", "syrah"),
        ("varieties", "petite syrah", "petite sirah"),
        ("varieties", "pinot grigio", "pinot gris"),
        ("varieties", "temp", None),  # a temperature
        ("fruits", "blackcurrants", "blackcurrant"),
        ("fruits", "fresh cider", "cider"),
        ("vessels", "dj", "demijohn"),
        ("vessels", "fermentor", "fermenter"),
        ("vessels", "bottle", None),  # bottles are counted, not filled as a vessel
        ("oak toasts", "med + toast", "medium plus"),
        ("closures", "real corks", "natural cork"),
    ],
)
def test_a_word_as_written(table: str, words: str, name: str | None) -> None:
    assert canonical(TABLES[table], words) == name


@pytest.mark.parametrize(
    ("name", "colour"),
    [
        ("pinot", None),  # noir is red, gris and blanc are white
        ("sauvignon", None),
        ("pinot noir", "red"),
        ("pinot gris", "white"),
        ("cabernet", "red"),
        ("cabernet blanc", "white"),
        ("frontenac", "red"),
        ("frontenac gris", "white"),
        ("solaris", "white"),
        ("regent", "red"),
        ("concord", "red"),
        ("niagara", "white"),
    ],
)
def test_colour_of_a_variety(name: str, colour: str | None) -> None:
    assert varieties.VARIETIES[name].colour == colour


def test_a_family_name_is_a_word_of_its_members() -> None:
    """So that "the cabernet" finds a batch made from cabernet franc."""
    members = set(varieties.VARIETIES)
    for family in ("cabernet", "pinot", "sauvignon", "muscat", "frontenac", "baco"):
        assert [m for m in members if m != family and family in m.split()], family


# --- tasting words


def test_every_fault_is_a_descriptor() -> None:
    assert set(descriptors.FAULTS) <= descriptors.DESCRIPTORS


def test_what_is_dropped_is_not_a_descriptor() -> None:
    assert set() == descriptors.INTENSIFIERS & descriptors.DESCRIPTORS


@pytest.mark.parametrize("words", ["less", "hardly any", "not much", "no", "not", "barely", "never"])
def test_what_takes_back_is_not_dropped(words: str) -> None:
    assert words not in descriptors.INTENSIFIERS


# --- everyday words


@pytest.mark.parametrize(
    ("word", "term"),
    [
        ("bucked", "bucket"), ("patched", "pitched"), ("rocked", "racked"), ("tasked", "tasted"), ("corny", "corky"),
        ("peace", "peach"), ("battle", "bottle"), ("barely", "barley"), ("fitter", "filter"), ("stared", "started"),
    ],
)  # fmt: skip
def test_a_real_word_is_never_mended_into_a_term(word: str, term: str) -> None:
    """Each is near enough to the term for `language.spelling` to take it for a slip."""
    assert word[0] == term[0]
    assert OSA.distance(word, term) == 1
    assert word in everyday.EVERYDAY | english()


@pytest.mark.parametrize(
    "word", ["reisling", "bentinite", "tartric", "demijon", "malback", "carbouy", "vinigar", "botled", "pichted"]
)
def test_a_misspelling_is_no_everyday_word(word: str) -> None:
    assert word not in everyday.EVERYDAY | english()


def test_no_everyday_word_names_what_a_wine_is_made_from() -> None:
    bases = {*spellings(TABLES["varieties"]), *spellings(TABLES["fruits"])}
    assert everyday.EVERYDAY & bases == set()
