"""Questions that compute from their own numbers or from a batch's readings: the figure, and what it came from.

Expected figures: SO2 by the molar mass of potassium metabisulfite (57.6 % SO2), a Campden tablet at 0.44 g (common
practice, no source); units by their definitions (NIST Handbook 44); SG and Brix by the table of Bubnik et al. 1995.
"""

import re
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from tests.questions.conftest import Cellar

COMPUTED: tuple[tuple[str, float, float, str], ...] = (  # question, figure, within, what the working names
    ("how many grams of meta for 30 ppm in 20 litres", 30 * 20 / 0.576 / 1000, 0.01, "20 L"),
    ("how much potassium metabisulphite for 50 mg/L in 6 gallons", 50 * 22.712 / 0.576 / 1000, 0.02, "6 gal"),
    ("how many campden tablets for 50 ppm in 20 litres", 50 * 20 / (440 * 0.576), 0.1, "tablet"),
    ("tartaric needed to raise 30 litres by 0.5 g/L", 15, 0.1, "30 L"),
    ("how much meta to add 30 ppm to the riesling", 30 * 20 / 0.576 / 1000, 0.02, "batch 4"),
    ("what's 1.088?", 21.1, 0.2, "Brix"),
    ("22 brix in sg", 1.092, 0.0015, "SG"),
    ("6 gallons in litres", 22.71, 0.01, "6 gal"),
    ("what is 68F in celsius", 20, 0.01, "68"),
    ("how many grams is 2 oz of sugar", 56.7, 0.1, "2 oz"),
    ("alcohol from 1.090 to 0.996", 131.25 * 0.094, 0.05, "131.25"),
    ("how many bottles will 22.5 litres fill", 30, 0, "22.5 L"),
    ("molecular so2 of 30 ppm free at ph 3.5", 30 / (1 + 10 ** (3.5 - 1.81)), 0.01, "pK 1.81"),
)


def figures(text: str) -> list[float]:
    """Every number in a text."""
    return [float(x) for x in re.findall(r"(?<![\w.])\d*\.?\d+", text)]


@pytest.mark.parametrize("question, value, within, named", COMPUTED, ids=[row[0] for row in COMPUTED])
def test_figures(cellar: "Cellar", question: str, value: float, within: float, named: str) -> None:
    answer = cellar.ask(question)
    assert answer.found, answer
    assert any(abs(x - value) <= within + 1e-9 for x in figures(answer.answer)), answer
    assert named in answer.answer


@pytest.mark.parametrize(
    "question, missing",
    [
        ("how much meta to get the riesling to 40 ppm", "free SO2"),
        ("how many grams of meta for 5000 ppm in 20 litres", "outside"),
    ],
)
def test_what_cannot_be_worked_out_says_why(cellar: "Cellar", question: str, missing: str) -> None:
    answer = cellar.ask(question)
    assert not answer.found
    assert missing in answer.answer


@pytest.mark.parametrize(
    "question", ["how much sorbate did the mead get", "how much meta has batch 1 had", "did batch 1 get tartaric"]
)
def test_what_was_done_is_looked_up_and_not_computed(cellar: "Cellar", question: str) -> None:
    answer = cellar.ask(question)
    assert answer.notes
