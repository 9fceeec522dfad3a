"""Tables of notes and what they tell: the cellars that they are read against, and the short forms of entries."""

from collections.abc import Iterable
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from journalbot.assistant import Assistant
from journalbot.journal.store import Journal
from journalbot.model import Ask, Entry, Note
from journalbot.notes.reader import Reading

from ..corpus.scoring import agrees

Json = dict[str, Any]

DAY = "2025-10-04"  # a Saturday; every note of a table was typed on it unless the table says otherwise
FRIDAY = "2025-10-03"


def e(kind: str, batch: int | None = 3, on: str = DAY, **fields: Any) -> Json:
    """An entry as a table has it; `from_` and `with_` stand for the fields that Python has its own words for."""
    return {"kind": kind, "batch": batch, "date": on, **{name.rstrip("_"): value for name, value in fields.items()}}


def sg(value: float, batch: int | None = 3, on: str = DAY, **more: Any) -> Json:
    """A gravity."""
    return e("reading", batch, on, quantity="sg", value=value, unit="SG", **more)


def temp(value: float, unit: str = "F", batch: int | None = 3, on: str = DAY, **more: Any) -> Json:
    """A temperature."""
    return e("reading", batch, on, quantity="temperature", value=value, unit=unit, **more)


def read(quantity: str, value: float, unit: str, batch: int | None = 3, on: str = DAY, **more: Any) -> Json:
    """Any other reading."""
    return e("reading", batch, on, quantity=quantity, value=value, unit=unit, **more)


def add(
    material: str, amount: float | None = None, unit: str | None = None, batch: int = 3, on: str = DAY, **more: Any
) -> Json:
    """An addition."""
    given = {"amount": amount, "unit": unit}
    return e("addition", batch, on, material=material, **{k: v for k, v in given.items() if v is not None}, **more)


def gap(*row: Any, why: str) -> Any:
    """A row that the reader does not meet yet, and why; once it does, the mark must go."""
    return pytest.param(*row, marks=pytest.mark.xfail(reason=f"gap: {why}"))


# ---- cellars

_RIESLING = [
    e("start", 1, "2024-09-14", volume=5, unit="gal", from_=["riesling juice"], vessel="carboy 1"),
    e("pitch", 1, "2024-09-15", yeast="VL-4"),
    e("bottle", 1, "2025-03-15", count=24, size=750, unit="ml", closure="screw caps"),
]
_MERLOT = [
    e("start", 2, "2024-10-02", volume=6, unit="gal", from_=["merlot grapes"], vessel="tub"),
    e("rack", 2, "2024-10-20", to="carboy 3"),
    e("bottle", 2, "2025-06-01", count=28, size=750, unit="ml", closure="natural cork"),
]
_ZINFANDEL = [
    e("start", 3, "2025-09-20", volume=6, unit="gal", from_=["zinfandel grapes"], vessel="bucket 1"),
    sg(1.096, 3, "2025-09-20"),
    e("pitch", 3, "2025-09-21", yeast="K-17", amount=5, unit="g"),
    e("fermentation", 3, "2025-09-22", stage="started"),
]
_PLUM = [
    e("start", 4, "2025-09-27", volume=5, unit="gal", from_=["plums"], vessel="bucket 2"),
    e("pitch", 4, "2025-09-28", yeast="ZT-12", amount=1, unit="packet"),
]
_HARDWARE = [
    e("vessel", None, "2024-09-01", name="carboy 1", capacity=5, unit="gal"),
    e("vessel", None, "2024-09-01", name="carboy 2", capacity=5, unit="gal"),
]

_OLD_ZINFANDEL = [
    e("start", 1, "2024-09-18", volume=6, unit="gal", from_=["zinfandel grapes"], vessel="tub"),
    e("rack", 1, "2024-10-10", to="carboy 3"),
    e("bottle", 1, "2025-06-01", count=28, size=750, unit="ml", closure="natural cork"),
]

# What is in each cellar: `solo` has one batch under way, the zinfandel; `pair` the plum as well; `twins` last year's
# zinfandel, batch 1, in bottles and this year's, batch 3, under way; `bare` has nothing at all.
CELLARS: dict[str, list[Json]] = {
    "bare": [],
    "twins": [*_OLD_ZINFANDEL, *_ZINFANDEL],
    "solo": [*_HARDWARE, *_RIESLING, *_MERLOT, *_ZINFANDEL],
    "pair": [*_HARDWARE, *_RIESLING, *_MERLOT, *_ZINFANDEL, *_PLUM],
}


def furnish(journal: Journal, entries: Iterable[Json], **settings: Any) -> Assistant:
    """An assistant over a journal that holds these entries, each filed as given under its own day."""
    with journal.turn():
        if settings:
            journal.change_settings(**settings)
        for entry in sorted(entries, key=lambda entry: entry["date"]):
            note = journal.add_note(entry["date"], f"{entry['kind']}, as given")
            journal.file(note.number, [Entry.from_json(entry)], origin="given")
    return Assistant(journal)


class Cellars:
    """The cellars by name, each opened once and only read."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder
        self._open: dict[tuple[str, str], Assistant] = {}

    def reading(self, cellar: str, text: str, on: str = DAY, units: str = "us") -> Reading:
        """What a note would be read as."""
        assistant = self._open.get((cellar, units))
        if assistant is None:
            journal = Journal.open(self._folder / f"{cellar}-{units}.db")
            metric = {"units": "metric", "day_first": True, "currency": "EUR"} if units == "metric" else {}
            assistant = self._open[cellar, units] = furnish(journal, CELLARS[cellar], **metric)
        return assistant.reading(Note(assistant.journal.count_notes() + 1, on, text), {})

    def close(self) -> None:
        """Close every journal opened."""
        for assistant in self._open.values():
            assistant.journal.close()


# ---- comparing


def told(entries: Iterable[Entry]) -> list[Json]:
    """The entries but for remarks, in their JSON form."""
    return [entry.to_json() for entry in entries if entry.kind != "remark"]


def same(wanted: Json, got: Json) -> bool:
    """Whether an entry is as a table has it, as the scorer compares; `approx` too, time and currency where given."""
    exact = wanted.get("approx") == got.get("approx") and all(
        wanted[name] == got.get(name) for name in ("time", "currency") if name in wanted
    )
    return exact and agrees(wanted, got)


def check(reading: Reading, wanted: list[Json]) -> None:
    """Fail unless the reading is just these entries, in any order."""
    assert reading.ask is None, f"asks {reading.ask}"
    got = told(reading.entries)
    left = list(got)
    for entry in wanted:
        match = next((found for found in left if same(entry, found)), None)
        assert match is not None, f"missing {entry}\namong   {got}"
        left.remove(match)
    assert not left, f"not told: {left}"


def check_ask(reading: Reading, what: str, choices: tuple[str, ...] | None = None) -> Ask:
    """Fail unless the reading asks that, and files nothing."""
    assert reading.ask is not None, f"does not ask, but reads {told(reading.entries)}"
    assert reading.ask.what == what, reading.ask
    assert reading.entries == ()
    if choices is not None:
        assert reading.ask.choices == choices
    return reading.ask


def keep(assistant: Assistant, text: str, on: str = DAY) -> Reading:
    """File a note as it is filed in a talk; what was read."""
    reply = assistant.keep(text, date.fromisoformat(on))
    return Reading(reply.entries, reply.ask)
