"""The scorer itself: it lets pass what means the same, and nothing else; and the labels are well formed."""

import re
from typing import Any

import pytest

from journalbot.model import Answer

from .scoring import Json, agrees, answers, names, paired, rows

HEAD: Json = {"batch": 3, "date": "2025-10-04"}
RACK: Json = {**HEAD, "kind": "rack", "to": "carboy 2", "volume": 5, "unit": "gal"}
TASTE: Json = {**HEAD, "kind": "taste", "words": ["black cherry", "tannic", "smoke"]}
START: Json = {**HEAD, "kind": "start", "volume": 6, "unit": "gal"}

# A label, an entry, and whether the entry is right.
PAIRS: list[tuple[Json, Json, bool]] = [
    (RACK, RACK, True),
    (RACK, RACK | {"to": "Carboy-2"}, True),
    (RACK, RACK | {"to": "glass carboy 2"}, True),
    (RACK, RACK | {"to": "bucket 1"}, False),
    (RACK, RACK | {"volume": 5.002}, True),
    (RACK, RACK | {"volume": 5.01}, False),
    (RACK, RACK | {"unit": "L"}, False),
    (RACK, RACK | {"approx": True}, True),
    (RACK, RACK | {"from": "bucket 1"}, False),
    (RACK | {"from": "bucket 1"}, RACK, False),
    (RACK, RACK | {"batch": 4}, False),
    (RACK, RACK | {"batch": None}, False),
    (RACK, RACK | {"date": "2025-10-03"}, False),
    (RACK, RACK | {"kind": "top_up"}, False),
    (TASTE, TASTE | {"words": ["black cherry", "tannic"]}, True),
    (TASTE, TASTE | {"words": ["plum", "smoke"]}, False),
    (TASTE, TASTE | {"words": []}, False),
    (START, START | {"name": "Hillside", "from": ["merlot"]}, True),
    (START, START | {"vessel": "bucket 1"}, False),
    (START | {"name": "Hillside"}, START, False),
    (START | {"name": "Hillside"}, START | {"name": "Ridge"}, False),
]


@pytest.mark.parametrize(("label", "entry", "right"), PAIRS)
def test_entries(label: Json, entry: Json, right: bool) -> None:
    assert agrees(label, entry) is right


@pytest.mark.parametrize(
    ("labels", "entries", "hits"),
    [([RACK], [], 0), ([RACK], [RACK, RACK], 1), ([RACK, RACK], [RACK], 1), ([RACK, TASTE], [TASTE, RACK], 2)],
)
def test_each_entry_serves_one_label(labels: list[Json], entries: list[Json], hits: int) -> None:
    assert paired(labels, entries) == hits


# What is expected, what must not be said, an answer's text, and whether that will do.
REPLIES: list[tuple[list[Json], list[str], str, bool]] = [
    ([{"text": "K-17"}], [], "Yeast k 17, pitched 2 Oct 2025.", True),
    ([{"text": ["carboy 2", "demijohn"]}], [], "It is in Carboy 2.", True),
    ([{"text": "carboy 2"}], ["bucket"], "carboy 2, before that bucket 1", False),
    ([{"number": 13.1, "within": 0.2}], [], "about 13 % vol", True),
    ([{"number": 13.1, "within": 0.2}], [], "about 14 % vol", False),
    ([{"number": 3}], [], "batch 13", False),
    ([{"number": 1200}], [], "1,200 g in all", True),
    ([{"date": "2025-10-04"}], [], "on 4 Oct 2025", True),
    ([{"date": "2025-10-04"}], [], "on October 4th", True),
    ([{"date": "2025-10-04"}], [], "on 14 Oct 2025", False),
    ([{"found": True}], [], "yes", True),
    ([{"found": False}], [], "yes", False),
    ([{"ask": "batch"}], [], "yes", False),
]


@pytest.mark.parametrize(("expect", "reject", "said", "right"), REPLIES)
def test_answers(expect: list[Json], reject: list[str], said: str, right: bool) -> None:
    reply = Answer("?", "as asked", True, said)
    assert answers({"expect": expect, "reject": reject}, reply) is right


def _fields(name: str) -> list[tuple[str, dict[str, Any]]]:
    return [(row["text"], entry) for row in rows(name, "notes") for entry in row.get("gold", ())]


KINDS = {
    "start", "reading", "pitch", "addition", "fermentation", "crush", "press", "degas", "filter", "stir", "chill",
    "airlock", "punch_down", "rack", "move", "top_up", "oak", "oak_out", "malolactic", "blend", "bottle", "taste",
    "drink", "give", "purchase", "vessel", "plan", "end",
}  # fmt: skip


@pytest.mark.parametrize("name", names())
def test_labels_are_well_formed(name: str) -> None:
    for text, entry in _fields(name):
        assert entry["kind"] in KINDS, text
        assert re.fullmatch(r"\d{4}(-\d\d(-\d\d)?)?", entry["date"]), text
        assert entry["batch"] is None or entry["batch"] > 0, text
        assert agrees(entry, entry), text
        for field, value in entry.items():
            if field not in ("kind", "batch", "date"):
                assert value is not None, text


@pytest.mark.parametrize("name", names())
def test_a_spoiled_figure_is_noticed(name: str) -> None:
    """Each figure in each label, made a hundredth larger, no longer agrees."""
    for text, entry in _fields(name):
        for field, value in entry.items():
            if isinstance(value, int | float) and not isinstance(value, bool) and value and field != "batch":

                assert not agrees(entry, entry | {field: value * 1.01}), text
