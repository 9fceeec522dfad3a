"""What is worked out by SQL where there are very many batches is what working out each batch gives."""

import re
from collections import Counter
from importlib import import_module
from typing import TYPE_CHECKING

import pytest

from journalbot.questions import leaders, scene, tallies
from journalbot.questions.measures import FAMILIES, MEASURES, WORKED_OUT

if TYPE_CHECKING:
    from tests.questions.conftest import Cellar

QUESTIONS = (
    "how many bottles have I filled in all",
    "how many bottles are left in all",
    "how many bottles have I drunk in all",
    "how many bottles have I given away in all",
    "average score",
    "average temperature",
    "average pH",
    "highest temperature",
    "lowest temperature",
    "lowest pH",
    "highest TA",
    "strongest wine",
    "driest wine",
    "highest original gravity",
    "which wine has the most bottles left",
    "longest fermentation",
    "shortest fermentation",
    "average fermentation time",
)
LISTS = (
    "which wines were oaked",
    "batches without oak",
    "which wines have been racked",
    "wines that I never topped up",
    "which wines scored over 7",
    "wines that scored at least 7",
)


def _figure(answer: str) -> str:
    """The first figure that an answer gives after the name of a batch."""
    text = re.sub(r"batch \d+ \([^)]*\)", "", answer, flags=re.IGNORECASE)
    found = re.search(r"\d[\d,.]*", text)
    return found.group().rstrip(".,") if found else ""


def _batches(answer: str) -> set[str]:
    return set(re.findall(r"Batch \d+", answer))


@pytest.mark.parametrize("question", QUESTIONS)
def test_figures(cellar: "Cellar", question: str, monkeypatch: pytest.MonkeyPatch) -> None:
    each = cellar.ask(question)
    monkeypatch.setattr(leaders, "FEW", 0)
    monkeypatch.setattr(tallies, "FEW", 0)
    at_once = cellar.ask(question)
    assert each.found
    assert at_once.found
    assert _figure(at_once.answer) == _figure(each.answer) != ""


@pytest.mark.parametrize("question", LISTS)
def test_lists(cellar: "Cellar", question: str, monkeypatch: pytest.MonkeyPatch) -> None:
    each = cellar.ask(question)
    monkeypatch.setattr(scene, "SHOWN", 1)
    assert _batches(cellar.ask(question).answer) == _batches(each.answer) != set()


def test_every_measure_has_a_name_of_its_own() -> None:
    families = [*FAMILIES, *(import_module(f"journalbot.questions.measures.{name}") for name in WORKED_OUT)]
    names = Counter(m.name for family in families for m in family.MEASURES)
    assert [name for name, count in names.items() if count > 1] == []
    assert all(MEASURES[name].name == name for name in names)
    with pytest.raises(KeyError):
        MEASURES["colour of the label"]
