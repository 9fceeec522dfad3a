"""Absence told apart: never recorded, recorded as not done, in a note not understood; and questions not understood."""

from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from tests.questions.conftest import Cellar


def test_a_question_whether_something_was_done_is_answered_by_absence(cellar: "Cellar") -> None:
    answer = cellar.ask("did I ever oak the mead?")
    assert answer.found
    assert answer.answer == "No oak recorded for batch 2 (2023 mead)."


def test_a_value_never_recorded_is_not_found(cellar: "Cellar") -> None:
    answer = cellar.ask("what was the TA of batch 3")
    assert not answer.found
    assert "No TA recorded" in answer.answer


def test_recorded_as_not_done_shows_the_words(cellar: "Cellar") -> None:
    answer = cellar.ask("did batch 3 get any sulfite?")
    assert answer.found
    assert "no sulfite added this time" in answer.answer
    assert answer.notes


def test_a_note_that_waits_is_shown(cellar: "Cellar") -> None:
    answer = cellar.ask("what is the pH of the riesling")
    assert not answer.found
    assert "riesling pH 33" in answer.answer


def test_a_note_that_waits_for_another_batch_is_not(cellar: "Cellar") -> None:
    assert "riesling" not in cellar.ask("what is the pH of the mead").answer


def test_an_act_that_names_nothing_is_told(cellar: "Cellar") -> None:
    answer = cellar.ask("what yeast did the riesling get")
    assert not answer.found
    assert "7 Apr 2024" in answer.answer


def test_an_unknown_batch_is_named(cellar: "Cellar") -> None:
    answer = cellar.ask("how long did the merlot ferment")
    assert not answer.found
    assert "merlot" in answer.answer
    assert "batch 4" in answer.answer


@pytest.mark.parametrize(
    "question, stopped_by",
    [
        ("how muddy was the harvest", "muddy"),
        ("what colour is the label of the mead", "label"),
        ("what did the riesling rhyme with", "rhyme"),
    ],
)
def test_what_is_not_understood_names_the_words_and_offers_others(
    cellar: "Cellar", question: str, stopped_by: str
) -> None:
    answer = cellar.ask(question)
    assert answer.understood_as is None
    assert not answer.found
    assert f"“{stopped_by}”" in answer.answer


def test_a_word_passed_over_is_said(cellar: "Cellar") -> None:
    answer = cellar.ask("what yeast did the humble 2022 syrah get")
    assert "ZT-12" in answer.answer
    assert "passed over “humble”" in answer.answer


@pytest.mark.parametrize(
    "question",
    [
        "when did I press the syrah",
        "how long was the syrah fermenting",
        "what was the pH of the syrah must",
        "the syrah, what gravity did it start at",
    ],
)
def test_which_batch_is_asked_where_it_matters(cellar: "Cellar", question: str) -> None:
    answer = cellar.ask(question)
    assert answer.ask
    assert answer.ask.what == "batch"
    assert answer.ask.choices == ("batch 1 (2022 syrah)", "batch 3 (2023 syrah)")
    assert not answer.found


def test_it_is_not_asked_where_only_one_has_anything_to_say(cellar: "Cellar") -> None:
    answer = cellar.ask("when was the syrah bottled")
    assert not answer.ask
    assert "1 May 2023" in answer.answer
    assert "Batch 1" in answer.answer


@pytest.mark.parametrize(
    "question",
    [
        "",
        "?",
        "the",
        "42",
        "🍇🍇🍇",
        "what",
        "x" * 5000,
        "when did I \x00 rack 'batch 1'; DROP TABLE notes",
        "why why why",
    ],
)
def test_nonsense_gets_an_honest_reply(cellar: "Cellar", question: str) -> None:
    answer = cellar.ask(question)
    assert answer.answer
    if not answer.understood_as:
        assert not answer.found
