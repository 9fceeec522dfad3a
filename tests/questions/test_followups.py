"""A talk: each question may lean on the one before."""

from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from tests.questions.conftest import Cellar

TALKS: tuple[tuple[tuple[str, str], ...], ...] = (
    (
        ("when did I last rack batch 1?", "30 Oct 2022"),
        ("and batch 3?", "19 Sep 2023"),
        ("show me the notes", "into demijohn 2"),
    ),
    (
        ("when did I last rack batch 1?", "30 Oct 2022"),
        ("the one before", "20 Sep 2022"),
        ("the one before", "no racking before"),
    ),
    (
        ("what yeast did the mead get?", "44R"),
        ("and batch 1?", "ZT-12"),
        ("what about the mead", "BX204"),
        ("when was that?", "2 Jul 2023"),
    ),
    (("what is the og of batch 1", "1.094"), ("and the pH?", "3.60"), ("what about batch 3", "3.75")),
    (("what did I spend in 2023", "187.00"), ("and 2022?", "150.00")),
    (("what was the pH of the syrah", "Which syrah"), ("the 2023 one", "3.75")),
    (("what was the pH of the syrah", "Which syrah"), ("batch 1", "3.60")),
    (("how many bottles of the mead are left", "13 bottles"), ("why?", "mead bottled, 13")),
    (("how hot did batch 1 get", "28 °C"), ("on average", "23.5 °C")),
)


@pytest.mark.parametrize("talk", TALKS, ids=[" / ".join(q for q, _ in talk) for talk in TALKS])
def test_talks(cellar: "Cellar", talk: tuple[tuple[str, str], ...]) -> None:
    cellar.before = None
    for question, holds in talk:
        answer = cellar.ask(question, follow=True)
        assert holds.casefold() in answer.answer.casefold(), answer


def test_a_question_of_its_own_keeps_nothing(cellar: "Cellar") -> None:
    cellar.before = None
    cellar.ask("what yeast did the mead get?", follow=True)
    assert "batch 4" in cellar.ask("when did the riesling finish fermenting?", follow=True).answer.casefold()
