"""A small invented cellar, filed as given entries, and a way to ask it."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from journalbot.journal.store import Journal
from journalbot.language.names import Names
from journalbot.model import Answer, Ask, Entry
from journalbot.questions import ask
from journalbot.questions.query import Query

TODAY = date(2024, 11, 20)

Row = tuple[str, int | None, str, dict[str, Any]]  # kind, batch, date, fields


def _reading(batch: int | None, day: str, quantity: str, value: float, unit: str) -> Row:
    return ("reading", batch, day, {"quantity": quantity, "value": value, "unit": unit})


def _addition(batch: int, day: str, material: str, amount: float, unit: str) -> Row:
    return ("addition", batch, day, {"material": material, "amount": amount, "unit": unit})


# The note's day, its text, and its entries.
NOTES: tuple[tuple[str, str, tuple[Row, ...]], ...] = (
    (
        "2022-09-03",
        "demijohns 1 and 2 hold 23 L, the tub 60 L",
        (
            ("vessel", None, "2022-09-03", {"name": "demijohn 1", "capacity": 23, "unit": "L"}),
            ("vessel", None, "2022-09-03", {"name": "demijohn 2", "capacity": 23, "unit": "L"}),
            ("vessel", None, "2022-09-03", {"name": "tub", "capacity": 60, "unit": "L"}),
        ),
    ),
    (
        "2022-09-10",
        "batch 1, 40 L of syrah crushed into the tub; grapes 150",
        (
            ("start", 1, "2022-09-10", {"volume": 40, "unit": "L", "from": ["syrah"], "vessel": "tub"}),
            ("crush", 1, "2022-09-10", {}),
            (
                "purchase",
                1,
                "2022-09-10",
                {"item": "syrah grapes", "count": 60, "unit": "kg", "price": 150, "currency": "EUR"},
            ),
            _reading(1, "2022-09-10", "sg", 1.094, "SG"),
            _reading(1, "2022-09-10", "ph", 3.6, "pH"),
            _reading(1, "2022-09-10", "ta", 5.9, "g/L"),
            _addition(1, "2022-09-10", "potassium metabisulfite", 3, "g"),
            _addition(1, "2022-09-10", "tartaric acid", 40, "g"),
        ),
    ),
    (
        "2022-09-11",
        "ZT-12 on the syrah, 10 g, must at 19",
        (
            ("pitch", 1, "2022-09-11", {"yeast": "ZT-12", "amount": 10, "unit": "g"}),
            _reading(1, "2022-09-11", "temperature", 19, "C"),
        ),
    ),
    (
        "2022-09-14",
        "syrah 28 degrees, 1.050, cap down three times",
        (
            ("fermentation", 1, "2022-09-12", {"stage": "started"}),
            _reading(1, "2022-09-14", "temperature", 28, "C"),
            _reading(1, "2022-09-14", "sg", 1.05, "SG"),
            ("punch_down", 1, "2022-09-14", {"times": 3}),
        ),
    ),
    (
        "2022-09-20",
        "pressed the syrah into demijohn 1, 22 L, 0.998",
        (
            ("press", 1, "2022-09-20", {}),
            ("rack", 1, "2022-09-20", {"to": "demijohn 1", "volume": 22, "unit": "L"}),
            _reading(1, "2022-09-20", "sg", 0.998, "SG"),
        ),
    ),
    (
        "2022-09-22",
        "syrah done at 0.996, LM-2 for the malolactic",
        (
            ("fermentation", 1, "2022-09-22", {"stage": "finished"}),
            _reading(1, "2022-09-22", "sg", 0.996, "SG"),
            ("malolactic", 1, "2022-09-22", {"stage": "started", "culture": "LM-2"}),
        ),
    ),
    (
        "2022-10-30",
        "syrah through malolactic, off the lees to demijohn 2, 2 g meta and 30 g French cubes",
        (
            ("malolactic", 1, "2022-10-30", {"stage": "finished"}),
            ("rack", 1, "2022-10-30", {"from": "demijohn 1", "to": "demijohn 2"}),
            _addition(1, "2022-10-30", "potassium metabisulfite", 2, "g"),
            (
                "oak",
                1,
                "2022-10-30",
                {"form": "cubes", "amount": 30, "unit": "g", "origin": "French", "toast": "medium"},
            ),
        ),
    ),
    (
        "2023-01-15",
        "syrah: plum, smoke, 13/20",
        (("taste", 1, "2023-01-15", {"words": ["plum", "smoke"], "score": 13, "out_of": 20}),),
    ),
    ("2023-02-07", "took the cubes out of the syrah", (("oak_out", 1, "2023-02-07", {}),)),
    (
        "2023-05-01",
        "bottled the syrah, 28 under natural cork",
        (("bottle", 1, "2023-05-01", {"count": 28, "size": 750, "unit": "ml", "closure": "natural cork"}),),
    ),
    (
        "2023-06-03",
        "3 syrah to Tamsin, 1 to Berek",
        (
            ("give", 1, "2023-06-03", {"count": 3, "to": "Tamsin"}),
            ("give", 1, "2023-06-03", {"count": 1, "to": "Berek"}),
        ),
    ),
    (
        "2023-07-01",
        "batch 2 is a mead, 10 L, 3 kg of lime honey for 42",
        (
            (
                "start",
                2,
                "2023-07-01",
                {
                    "name": "mead",
                    "colour": "mead",
                    "volume": 10,
                    "unit": "L",
                    "from": ["lime honey"],
                    "vessel": "demijohn 1",
                },
            ),
            ("purchase", 2, "2023-07-01", {"item": "honey", "count": 3, "unit": "kg", "price": 42, "currency": "EUR"}),
            _reading(2, "2023-07-01", "sg", 1.1, "SG"),
        ),
    ),
    (
        "2023-07-02",
        "44R on the mead at 21 C",
        (
            ("pitch", 2, "2023-07-02", {"yeast": "44R", "amount": 1, "unit": "packet"}),
            _reading(2, "2023-07-02", "temperature", 21, "C"),
        ),
    ),
    (
        "2023-07-20",
        "mead stuck at 1.040",
        (("fermentation", 2, "2023-07-20", {"stage": "stuck"}), _reading(2, "2023-07-20", "sg", 1.04, "SG")),
    ),
    (
        "2023-07-24",
        "BX204 got the mead going again",
        (("pitch", 2, "2023-07-24", {"yeast": "BX204"}), ("fermentation", 2, "2023-07-24", {"stage": "restarted"})),
    ),
    (
        "2023-09-01",
        "mead finished, 1.002",
        (("fermentation", 2, "2023-09-01", {"stage": "finished"}), _reading(2, "2023-09-01", "sg", 1.002, "SG")),
    ),
    (
        "2023-09-09",
        "batch 3, syrah again, 35 L in the tub, 130",
        (
            ("start", 3, "2023-09-09", {"volume": 35, "unit": "L", "from": ["syrah"], "vessel": "tub"}),
            ("purchase", 3, "2023-09-09", {"item": "syrah grapes", "price": 130, "currency": "EUR"}),
            _reading(3, "2023-09-09", "sg", 1.09, "SG"),
            _reading(3, "2023-09-09", "ph", 3.75, "pH"),
        ),
    ),
    (
        "2023-09-10",
        "ZT-12 for the new syrah, no sulfite this time",
        (
            ("pitch", 3, "2023-09-10", {"yeast": "ZT-12", "amount": 8, "unit": "g"}),
            ("remark", 3, "2023-09-10", {"text": "no sulfite added this time"}),
        ),
    ),
    ("2023-09-16", "new syrah 31 C, hot", (_reading(3, "2023-09-16", "temperature", 31, "C"),)),
    (
        "2023-09-19",
        "pressed it, 1.000, into demijohn 2",
        (
            ("press", 3, "2023-09-19", {}),
            ("rack", 3, "2023-09-19", {"to": "demijohn 2"}),
            _reading(3, "2023-09-19", "sg", 1.0, "SG"),
        ),
    ),
    (
        "2023-09-28",
        "syrah 2023 finished 0.995",
        (("fermentation", 3, "2023-09-28", {"stage": "finished"}), _reading(3, "2023-09-28", "sg", 0.995, "SG")),
    ),
    (
        "2023-10-07",
        "sweetened the mead with 300 g honey, 2 g sorbate, now 1.012",
        (
            _addition(2, "2023-10-07", "honey", 300, "g"),
            _addition(2, "2023-10-07", "potassium sorbate", 2, "g"),
            _reading(2, "2023-10-07", "sg", 1.012, "SG"),
        ),
    ),
    (
        "2023-10-21",
        "mead bottled, 13, swing tops. wax, lime flower, 16/20",
        (
            ("bottle", 2, "2023-10-21", {"count": 13, "size": 750, "unit": "ml", "closure": "swing tops"}),
            ("taste", 2, "2023-10-21", {"words": ["wax", "lime flower"], "score": 16, "out_of": 20}),
        ),
    ),
    (
        "2023-11-04",
        "100 corks for 15",
        (("purchase", None, "2023-11-04", {"item": "corks", "count": 100, "price": 15, "currency": "EUR"}),),
    ),
    (
        "2023-12-24",
        "drank 2 of the 2022 syrah: leather, plum, 15/20",
        (
            ("drink", 1, "2023-12-24", {"count": 2}),
            ("taste", 1, "2023-12-24", {"words": ["leather", "plum"], "score": 15, "out_of": 20}),
        ),
    ),
    ("2024-03-01", "moved demijohn 2 to the shed", (("move", 3, "2024-03-01", {"to": "shed"}),)),
    (
        "2024-04-06",
        "riesling juice, batch 4, 20 L in demijohn 1, 60. 1.080, smells of wet wool",
        (
            ("start", 4, "2024-04-06", {"volume": 20, "unit": "L", "from": ["riesling juice"], "vessel": "demijohn 1"}),
            ("purchase", 4, "2024-04-06", {"item": "riesling juice", "price": 60, "currency": "EUR"}),
            _reading(4, "2024-04-06", "sg", 1.08, "SG"),
        ),
    ),
    (
        "2024-04-07",
        "riesling pitched at 14 C",
        (("pitch", 4, "2024-04-07", {}), _reading(4, "2024-04-07", "temperature", 14, "C")),
    ),
    (
        "2024-05-12",
        "riesling 0.994, finished",
        (("fermentation", 4, "2024-05-12", {"stage": "finished"}), _reading(4, "2024-05-12", "sg", 0.994, "SG")),
    ),
    ("2024-10-01", "riesling pH 33", ()),
    (
        "2024-11-10",
        "bottle the riesling on 7 December, order labels by the 30th",
        (
            ("plan", 4, "2024-11-10", {"what": "bottle", "due": "2024-12-07"}),
            ("plan", None, "2024-11-10", {"what": "order labels", "due": "2024-11-30"}),
        ),
    ),
)


def names_of(journal: Journal) -> Names:
    """The names that a journal has met, as the assistant hands them to the reader."""
    names, cellar = Names(), journal.cellar()
    for sort in ("yeast", "culture", "material", "person", "place"):
        for known in cellar.names.get(sort, {}).values():
            names.learn(sort, known.name)
    for known in cellar.known_vessels.values():
        names.learn("vessel", known.name)
    names.update_batches(cellar.batches.values())
    return names


@dataclass
class Cellar:
    """The journal with a question-and-answer on top."""

    journal: Journal
    names: Names
    before: Query | None = None

    def ask(self, question: str, *, follow: bool = False, today: date = TODAY) -> Answer:
        """The answer; with `follow`, the question may lean on the one before."""
        answer, query = ask(question, today, self.journal, self.names, self.before if follow else None)
        self.before = query
        return answer

    def query(self, question: str) -> Query | None:
        """How a question is read."""
        return ask(question, TODAY, self.journal, self.names)[1]


def filed(path: Path) -> Journal:
    """A new journal that holds NOTES."""
    journal = Journal.open(path)
    with journal.turn():
        journal.change_settings(units="metric", day_first=True, currency="EUR")
        for on, text, rows in NOTES:
            note = journal.add_note(on, text)
            journal.file(
                note.number, [Entry(kind, batch, day, fields) for kind, batch, day, fields in rows], origin="given"
            )
            if not rows:
                journal.put_ask(Ask("value", (), text, note.number))
    return journal


@pytest.fixture(scope="module")
def cellar(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Cellar]:
    """The invented cellar; tests only read it."""
    with filed(tmp_path_factory.mktemp("cellar") / "journal.db") as journal:
        yield Cellar(journal, names_of(journal))
