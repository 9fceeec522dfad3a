"""What must hold of every reading: on any text, on the labelled notebooks' notes, and on sentences put together."""

import itertools
import json
import os
import re
import subprocess
import sys
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Any

import pint
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from journalbot.model import Entry
from journalbot.notes.reader import Reading
from journalbot.vocabulary.everyday import EVERYDAY

from ..corpus.scoring import names as notebooks
from ..corpus.scoring import rows
from .telling import Cellars, Json, told
from .walking import Page, facts, walk

QUICK = settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
NOTES = [row["text"] for name in notebooks() for row in rows(name, "notes") if "text" in row]
WORDS = sorted({word for note in NOTES for word in note.split()})

# Notes cut from words that notebooks are made of, which get further into the reader than any text does.
JUMBLES = st.lists(st.sampled_from(WORDS), max_size=30).map(" ".join)
TEXTS = st.one_of(st.text(max_size=200), JUMBLES, st.builds(str.__add__, JUMBLES, st.text(max_size=20)))


# ---- any text


@QUICK
@given(TEXTS)
def test_reading_never_raises(cellars: Cellars, text: str) -> None:
    """And every entry has its kind, its span within the text, and a date of the calendar."""
    for cellar in ("bare", "solo", "pair"):
        reading = cellars.reading(cellar, text)
        assert not (reading.ask and reading.entries)
        for entry in reading.entries:
            first, last = entry.span
            assert 0 <= first <= last <= len(text)
            assert json.loads(json.dumps(entry.to_json())) == entry.to_json()
            date.fromisoformat(f"{entry.date}-01-01"[:10] if len(entry.date) < 10 else entry.date)


@QUICK
@given(TEXTS)
def test_reading_twice_gives_the_same(cellars: Cellars, text: str) -> None:
    assert cellars.reading("pair", text) == cellars.reading("pair", text)


@QUICK
@given(JUMBLES, st.sampled_from([" ", "   ", "\t"]))
def test_trailing_space_changes_nothing(cellars: Cellars, text: str, space: str) -> None:
    assert cellars.reading("pair", text.strip() + space) == cellars.reading("pair", text.strip())


_PRINT_ALL = """
import sys
from pathlib import Path
from journalbot.assistant import Assistant
from journalbot.journal.store import Journal
with Journal.open(Path(sys.argv[2])) as journal, open(sys.argv[1], encoding="utf-8") as notebook:
    for reply in Assistant(journal).import_lines(notebook):
        print([e.to_json() for e in reply.entries], reply.ask)
"""


def test_reading_does_not_hang_on_the_order_of_sets(tmp_path: Path) -> None:
    """Two processes that order their sets differently read a notebook the same."""
    bare = tmp_path / "all.jsonl"
    bare.write_text("\n".join(json.dumps({"on": "2024-05-01", "text": text}) for text in NOTES[:320]), encoding="utf-8")
    said = [
        subprocess.run(
            [sys.executable, "-c", _PRINT_ALL, str(bare), str(tmp_path / f"{seed}.db")],
            env={**os.environ, "PYTHONHASHSEED": seed},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed in ("1", "2")
    ]
    assert said[0].count("\n") == 320
    assert said[0] == said[1]


# ---- the notebooks' notes, each against the journal as it stood

# A batch long ended, of a name and fruit that no notebook has; numbered so that the next free number stays what it was.
STRANGER = [
    Entry("start", 0, "2019-03-02", {"name": "Zephyr Lantern", "from": ["medlars"], "vessel": "zinc churn"}),
    Entry("end", 0, "2019-03-09", {"reason": "spilt"}),
]
STRANGER_WORDS = ("zephyr", "lantern", "medlar", "churn")
SPACES = ("  \t", "\n")


@dataclass(frozen=True)
class Look:
    """A note with its reading, and what is read when it is told in another way."""

    text: str
    plain: Reading
    spaced: dict[str, Reading]
    lower: Reading
    upper: Reading
    with_stranger: Reading
    leans_on_case: bool
    lost: tuple[str, ...]  # words and figures that nothing accounts for


@pytest.fixture(scope="module")
def looks(tmp_path_factory: pytest.TempPathFactory) -> dict[str, list[Look]]:
    """Every note of every notebook, looked at once."""
    one, other = tmp_path_factory.mktemp("plain"), tmp_path_factory.mktemp("with a stranger")
    return {
        name: [_look(page, beside) for page, beside in zip(walk(name, one), walk(name, other, STRANGER), strict=True)]
        for name in notebooks()
    }


def _look(page: Page, beside: Page) -> Look:
    plain = page.read()
    return Look(
        page.text,
        plain,
        {space: page.read(page.text + space) for space in SPACES},
        page.read(page.text.lower()),
        page.read(page.text.upper()),
        beside.read(),
        _leans_on_case(page, plain),
        () if plain.ask else _lost(page, plain),
    )


_LABEL = re.compile(r"(?<![\w-])(?<!\d )(?<!° )[A-HJ-Z](?![\w-])|\bR\d")  # no unit, and not "I"
_OPENS = {".", "!", "?", "\n", "-", ":", ";", "("}
_NAMED = ("to", "name", "vessel", "from", "yeast", "culture")


def _leans_on_case(page: Page, reading: Reading) -> bool:
    """Whether capitals tell something in the note.

    That is a label of one letter (`demijohn A`), a price with a currency's letter run into it (`R630`), or a name that
    the journal does not know yet; one that opens a sentence only where the reading has it in a field.
    """
    names, text = page.assistant.words.names(), page.understood()
    fields = " ".join(str(entry.get(name, "")) for entry in reading.entries for name in _NAMED)
    dated = {i for m in text.of("date") for i in range(m.first, m.last)}
    for i, token in enumerate(text.tokens):
        name = token.kind == "word" and token.text[0].isupper() and token.text.replace("'", "").isalpha()
        if name and i not in dated and not names.knows(token.low) and token.low not in EVERYDAY:
            opens = i == 0 or text.tokens[i - 1].text in _OPENS
            if not opens or token.text in fields:
                return True
    return bool(_LABEL.search(page.text))


# Words that may be in no entry and no remark, for they say nothing of their own: they join, point or help a verb.
EMPTY = {
    "a", "an", "the", "and", "of", "to", "in", "it", "is", "was", "so", "then", "with", "on", "at", "for", "now",
    "today", "this", "that", "i", "by", "into", "from", "up", "off", "my", "w", "also", "just", "its", "are", "as",
    "there", "went", "got", "be", "has", "have", "had", "we", "but", "or", "still", "again", "more", "some", "out",
    "down", "after", "before", "today's", "s", "n", "plus", "because", "cause", "since", "while", "though", "tho",
    "although", "hence", "yet", "which", "where",
}  # fmt: skip


def _lost(page: Page, reading: Reading) -> tuple[str, ...]:
    text = page.understood()
    spans = [entry.span for entry in reading.entries] + [(m.start, m.end) for m in text.mentions]
    return tuple(
        t.text
        for t in text.tokens
        if t.kind != "mark"
        and t.low not in EMPTY
        and not any(first <= t.start and t.end <= last for first, last in spans)
    )


@pytest.mark.parametrize("space", SPACES)
def test_space_after_a_note_changes_nothing(space: str, looks: dict[str, list[Look]]) -> None:
    assert [look.text for each in looks.values() for look in each if look.spaced[space] != look.plain] == []


# Notes known to hang on case, by how they begin, and why. One that no longer does must leave the table.
CASE_GAPS: dict[str, dict[str, str]] = {
    "lower": {
        "Eggy!! Yesterday splash racked": "“15 gal. eggs gone”: a point behind a unit ends nothing in small letters",
        "b5 out of the barrel": "“14 gal. co2 refill $28”: the same; the whole note is what was bought",
    },
    "upper": {},
}


@pytest.mark.parametrize("how", ["lower", "upper"])
def test_letter_case_changes_nothing(how: str, looks: dict[str, list[Look]]) -> None:
    every = [look for each in looks.values() for look in each if not look.leans_on_case]
    hang = [look.text for look in every if facts(getattr(look, how)) != facts(look.plain)]
    assert [text for text in hang if not text.startswith(tuple(CASE_GAPS[how]))] == []
    assert [start for start in CASE_GAPS[how] if not any(text.startswith(start) for text in hang)] == []


def test_few_notes_lean_on_case(looks: dict[str, list[Look]]) -> None:
    """So that the test above says something."""
    every = [look for each in looks.values() for look in each]
    assert sum(look.leans_on_case for look in every) < len(every) / 3


@pytest.mark.parametrize("name", notebooks())
def test_every_word_is_accounted_for(name: str, looks: dict[str, list[Look]]) -> None:
    """Each word and figure is within an entry's span, a remark's among them, or in a mention, or says nothing."""
    assert [(look.lost, look.text) for look in looks[name] if look.lost] == []


BESIDE: list[Any] = [
    *notebooks(),
]


@pytest.mark.parametrize("name", BESIDE)
def test_a_batch_of_an_unlike_name_changes_nothing(name: str, looks: dict[str, list[Look]]) -> None:
    held = " ".join(NOTES).lower()
    assert not any(word in held for word in STRANGER_WORDS)
    assert [look.text for look in looks[name] if facts(look.with_stranger) != facts(look.plain)] == []


# ---- sentences put together

OF_3 = [
    "Batch 3 SG 1.010.", "Racked batch 3 into carboy 2.", "Batch 3 is at 70F.", "Added 1/4 tsp kmeta to batch 3.",
    "Pressed batch 3 yesterday.", "Punched down batch 3 twice.", "Batch 3 is stuck.", "Batch 3: pH 3.5, TA 6 g/L.",
    "Need to rack batch 3 in 3 weeks.", "Topped up batch 3 with water.", "Did not stir batch 3.",
    "Tasted batch 3 on Thursday, plum, smoke, 7/10.", "2 oz medium toast French oak cubes into batch 3.",
]
OF_4 = [
    "Batch 4 SG 1.042 at 71F.", "Racked batch 4 from bucket 2 to carboy 1 on Monday.", "Pitched 5 g K-17 into batch 4.",
    "Batch 4 smells of pears.", "MLF complete in batch 4.", "Added 2 lb sugar to batch 4.",
    "Batch 4 got 3 g DAP this morning.", "Moved batch 4 to the cold room.", "Batch 4: 12 Brix.",
    "Will bottle batch 4 in March.", "Refilled the airlock of batch 4.", "If batch 4 clears, all is well.",
]


@pytest.mark.parametrize(("a", "b"), list(itertools.product(OF_3, OF_4)))
def test_order_of_unrelated_sentences(a: str, b: str, cellars: Cellars) -> None:
    """Two sentences, each of a batch named by its number, say together what each says alone, in either order."""
    alone = sorted(facts(cellars.reading("pair", a)) + facts(cellars.reading("pair", b)))
    assert facts(cellars.reading("pair", f"{a} {b}")) == alone
    assert facts(cellars.reading("pair", f"{b} {a}")) == alone


# ---- units

QUARTERS = st.integers(1, 99).map(lambda n: n / 4)
UREG: Any = pint.UnitRegistry()
PINT = {
    "F": "degF", "C": "degC", "gal": "gallon", "L": "liter", "qt": "quart", "pt": "pint", "ml": "milliliter",
    "g": "gram", "kg": "kilogram", "oz": "ounce", "lb": "pound", "tsp": "teaspoon", "tbsp": "tablespoon",
}  # fmt: skip


def converted(value: float, unit: str, to: str) -> float:
    """A value in another unit, by pint."""
    return float(UREG.Quantity(value, PINT[unit]).to(PINT[to]).magnitude)


def only(cellars: Cellars, note: str) -> Json:
    """The one entry that a note gives."""
    (entry,) = told(cellars.reading("solo", note).entries)
    return entry


@QUICK
@given(st.integers(400, 1000).map(lambda n: n / 10))
def test_a_temperature_in_either_scale(cellars: Cellars, fahrenheit: float) -> None:
    celsius = converted(fahrenheit, "F", "C")
    one, other = only(cellars, f"zin at {fahrenheit:g}F"), only(cellars, f"zin at {celsius:.4f} C")
    assert (one["quantity"], one["unit"], other["quantity"], other["unit"]) == ("temperature", "F", "temperature", "C")
    assert converted(other["value"], "C", "F") == pytest.approx(one["value"], abs=1e-3)


@QUICK
@given(
    st.integers(1, 99).map(lambda n: n / 4), st.sampled_from(list(itertools.permutations(("gal", "L", "qt", "pt"), 2)))
)
def test_a_volume_in_any_unit(cellars: Cellars, value: float, units: tuple[str, str]) -> None:
    unit, other_unit = units
    note = "racked {} {} of the zin into carboy 2"
    one = only(cellars, note.format(f"{value:g}", unit))
    other = only(cellars, note.format(f"{converted(value, unit, other_unit):.4f}", other_unit))
    assert (one["kind"], one["unit"], one["volume"]) == ("rack", unit, value)
    assert (other["kind"], other["unit"]) == ("rack", other_unit)
    assert converted(other["volume"], other_unit, unit) == pytest.approx(value, abs=1e-3)


@QUICK
@given(
    st.integers(1, 99).map(lambda n: n / 4), st.sampled_from(list(itertools.permutations(("g", "oz", "lb", "kg"), 2)))
)
def test_a_dose_in_any_unit(cellars: Cellars, value: float, units: tuple[str, str]) -> None:
    unit, other_unit = units
    one = only(cellars, f"added {value:g} {unit} of bentonite to the zin")
    other = only(cellars, f"added {converted(value, unit, other_unit):.6f} {other_unit} of bentonite to the zin")
    assert (one["kind"], one["material"], one["unit"], one["amount"]) == ("addition", "bentonite", unit, value)
    assert (other["kind"], other["material"], other["unit"]) == ("addition", "bentonite", other_unit)
    assert converted(other["amount"], other_unit, unit) == pytest.approx(value, rel=1e-3, abs=1e-3)


@pytest.mark.parametrize("written", ["1.042", "1042", "1,042", "1.0420", "SG 1042", "sg=1.042", "gravity of 1,042"])
def test_a_gravity_with_its_point_or_without(written: str, cellars: Cellars) -> None:
    entry = only(cellars, f"zin {written}")
    assert (entry["quantity"], entry["value"], entry["unit"]) == ("sg", 1.042, "SG")


def test_notes_read_alone_leave_no_trace(cellars: Cellars) -> None:
    """Reading files nothing: a note read before another does not change how that is read."""
    before = facts(cellars.reading("pair", "it is at 1.010"))
    cellars.reading("pair", "racked batch 4 into carboy 2; pitched XY-99; started batch 9, 5 gal of syrah")
    assert facts(cellars.reading("pair", "it is at 1.010")) == before
