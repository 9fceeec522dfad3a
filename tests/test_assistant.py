"""One turn after another: talks over a real journal, each line with what its reply says and what is then filed."""

import datetime
from collections.abc import Iterator
from pathlib import Path

import pytest

from journalbot.assistant import Assistant
from journalbot.journal.store import Journal
from journalbot.model import Entry

TODAY = datetime.date(2025, 10, 4)
TWO_BATCHES = (
    "started batch 1, 6 gal of merlot juice in bucket 1",
    "started batch 2, 5 gal of riesling juice in carboy 1",
)


@pytest.fixture
def journal(tmp_path: Path) -> Iterator[Journal]:
    with Journal.open(tmp_path / "journal.db") as journal:
        yield journal


@pytest.fixture
def assistant(journal: Journal) -> Assistant:
    return Assistant(journal)


def say(assistant: Assistant, *lines: str, on: datetime.date = TODAY) -> str:
    """The reply to the last of several lines."""
    return [assistant.turn(line, on).text for line in lines][-1]


def readings(journal: Journal, quantity: str = "sg") -> list[tuple[int | None, float, str]]:
    return [(e.batch, e.get("value"), e.date) for e in journal.entries(quantity=quantity)]


# ---- notes


def test_a_note_is_read_back_per_batch(assistant: Assistant) -> None:
    say(assistant, *TWO_BATCHES)
    said = say(assistant, "racked batch 1 to carboy 2, SG 0.996, 68F")
    assert said == "Batch 1, merlot juice: racked to carboy 2; gravity 0.996; 68 °F."


def test_the_date_is_told_where_it_is_not_the_day_of_the_note(assistant: Assistant) -> None:
    said = say(assistant, *TWO_BATCHES, "batch 2 was 1.080 yesterday")
    assert said.startswith("Batch 2, riesling juice, 3 Oct: gravity 1.080")


def test_what_is_not_understood_is_kept_and_said(assistant: Assistant, journal: Journal) -> None:
    assert "Kept as a note" in say(assistant, "what a lovely autumn we have")
    assert [n.text for n in journal.notes()] == ["what a lovely autumn we have"]


def test_an_empty_line_is_nothing(assistant: Assistant, journal: Journal) -> None:
    assert assistant.turn("  \t ", TODAY).text == ""
    assert journal.count_notes() == 0


def test_the_same_note_twice_on_a_day_is_noticed(assistant: Assistant, journal: Journal) -> None:
    say(assistant, *TWO_BATCHES)
    assert "same as note" not in say(assistant, "punched down batch 1")
    assert "same as note 3" in say(assistant, "punched  down batch 1")
    assert "same as note" not in say(assistant, "punched down batch 1", on=TODAY + datetime.timedelta(days=1))
    assert len(journal.entries(kinds=["punch_down"])) == 3


def test_names_met_are_known_to_the_next_note(assistant: Assistant) -> None:
    say(assistant, *TWO_BATCHES, "pitched 5 g GX1040 into batch 1")
    assert "GX1040" in assistant.journal.cellar().yeasts
    assert "batch 1" in say(assistant, "the merlot is at 1.050").lower()


def test_another_process_writing_is_noticed(assistant: Assistant, journal: Journal) -> None:
    say(assistant, *TWO_BATCHES)
    with Journal.open(journal.path) as other:
        Assistant(other).turn("started batch 3, 1 gal of elderberry juice in jug A", TODAY)
    assert say(assistant, "the elderberry is at 1.090").startswith("Batch 3")


def test_a_caution_is_said_once_a_day_and_a_danger_always(assistant: Assistant) -> None:
    say(assistant, *TWO_BATCHES)
    dose = "added 1/4 tsp kmeta to batch {}"
    first = assistant.turn(dose.format(1), TODAY)
    assert len(first.cautions) == 1
    assert first.text.splitlines()[1:] == list(first.cautions)
    assert assistant.turn(dose.format(2), TODAY).cautions == ()
    dangers = [assistant.turn(f"climbed into vat {n} to scrub it", TODAY).cautions for n in (1, 2)]
    assert all(dangers), dangers


# ---- questions put to the person, and the answer in any wording

ASKS = [
    # (note, answer, quantity, what is then filed)
    ("1.022 today", "batch 2", "sg", (2, 1.022)),
    ("1.022 today", "2", "sg", (2, 1.022)),
    ("1.022 today", "b2", "sg", (2, 1.022)),
    ("1.022 today", "the riesling", "sg", (2, 1.022)),
    ("1.022 today", "it was the riesling, sorry", "sg", (2, 1.022)),
    ("1.022 today", "Riesling", "sg", (2, 1.022)),
    ("1.022 today", "the reisling", "sg", (2, 1.022)),
    ("1.022 today", "the second one", "sg", (2, 1.022)),
    ("1.022 today", "the first", "sg", (1, 1.022)),
    ("1.022 today", "the one in carboy 1", "sg", (2, 1.022)),
    ("1.022 today", "the white", "sg", (2, 1.022)),
    ("batch 1 pH 34", "3.4", "ph", (1, 3.4)),
    ("batch 1 pH 34", "I meant 3.4", "ph", (1, 3.4)),
    ("batch 1 pH 34", "sorry, pH 3.40", "ph", (1, 3.4)),
    ("batch 1 SG 9.96", "I meant 0.996", "sg", (1, 0.996)),
    ("batch 1 got 24", "brix", "brix", (1, 24)),
    ("batch 1 got 24", "that was Brix", "brix", (1, 24)),
    ("batch 1 got 24", "1", "brix", (1, 24)),
    ("batch 1 got 24", "24 brix", "brix", (1, 24)),
]


@pytest.mark.parametrize(("note", "answer", "quantity", "filed"), ASKS, ids=[f"{n} / {a}" for n, a, _, _ in ASKS])
def test_an_answer_completes_the_note(
    assistant: Assistant, journal: Journal, note: str, answer: str, quantity: str, filed: tuple[int, float]
) -> None:
    say(assistant, *TWO_BATCHES, "batch 2 is white wine, moved it to the cellar")
    asked = assistant.turn(note, TODAY)
    assert asked.ask is not None
    assert not asked.entries
    assert asked.text.endswith("?")
    reply = assistant.turn(answer, TODAY)
    assert reply.ask is None, reply.text
    assert readings(journal, quantity) == [(*filed, "2025-10-04")]
    assert journal.open_asks() == []
    assert journal.last_note() is not None
    assert journal.last_note().kind == "answer"  # type: ignore[union-attr]


@pytest.mark.parametrize(
    ("answer", "date"),
    [("sept 30", "2025-09-30"), ("yesterday", "2025-10-03"), ("it was the 1st of October", "2025-10-01")],
)
def test_a_day_that_is_none_is_asked_for(assistant: Assistant, journal: Journal, answer: str, date: str) -> None:
    say(assistant, *TWO_BATCHES)
    assert "31" in say(assistant, "racked batch 1 to carboy 2 on sept 31")
    say(assistant, answer)
    assert [e.date for e in journal.entries(kinds=["rack"])] == [date]


def test_an_answer_that_settles_nothing_asks_again(assistant: Assistant, journal: Journal) -> None:
    say(assistant, *TWO_BATCHES, "1.022 today")
    assert say(assistant, "batch 9").startswith("There is no batch 9 yet. Which batch")
    assert say(assistant, "batch 2").startswith("Batch 2")


def test_choices_are_named(assistant: Assistant) -> None:
    said = say(assistant, *TWO_BATCHES, "1.022 today")
    assert "1 (merlot juice)" in said
    assert "2 (riesling juice)" in said


def test_something_else_leaves_the_question_open(assistant: Assistant, journal: Journal) -> None:
    say(assistant, *TWO_BATCHES, "1.022 today")
    assert say(assistant, "racked batch 1 to carboy 3").startswith("Batch 1")
    assert [a.note for a in journal.open_asks()] == [3]
    assert "1.022 today" in say(assistant, "what is waiting?")
    assert say(assistant, "the riesling").startswith("Batch 2")
    assert say(assistant, "anything open?") == "Nothing is waiting for an answer."


def test_a_question_of_some_turns_ago_can_still_be_answered(assistant: Assistant, journal: Journal) -> None:
    say(assistant, *TWO_BATCHES, "1.022 today", "bought 100 corks for $12")
    assert say(assistant, "batch 2").startswith("Batch 2, riesling juice: gravity 1.022")


def test_a_bare_figure_later_is_a_note_and_no_answer(assistant: Assistant, journal: Journal) -> None:
    say(assistant, TWO_BATCHES[0], "batch 1 SG 9.96", "bought 100 corks for $12")
    say(assistant, "1.010")
    assert readings(journal) == [(1, 1.01, "2025-10-04")]
    assert len(journal.open_asks()) == 1


def test_what_waits_is_gone_through_one_by_one(assistant: Assistant, journal: Journal) -> None:
    say(assistant, *TWO_BATCHES, "1.022 today", "1.018 now", "bought 100 corks for $12")
    assert "After that 1 more" in say(assistant, "what's waiting?")
    assert "Note 4" in say(assistant, "the merlot")
    say(assistant, "the riesling")
    assert readings(journal) == [(1, 1.022, "2025-10-04"), (2, 1.018, "2025-10-04")]


@pytest.mark.parametrize("word", ["later", "not now", "I don't know"])
def test_a_question_can_be_put_off(assistant: Assistant, journal: Journal, word: str) -> None:
    say(assistant, *TWO_BATCHES, "1.022 today")
    notes = journal.count_notes()
    assert "what is waiting?" in say(assistant, word)
    assert (journal.count_notes(), len(journal.open_asks())) == (notes, 1)


def test_a_note_can_be_left_unfiled(assistant: Assistant, journal: Journal) -> None:
    say(assistant, *TWO_BATCHES, "1.022 today", "never mind")
    assert journal.open_asks() == []
    assert [e.get("text") for e in journal.entries(kinds=["remark"], note=3)] == ["1.022 today"]


def test_it_means_the_batch_spoken_of_before_the_note_even_when_answered_later(
    assistant: Assistant, journal: Journal
) -> None:
    say(
        assistant,
        *TWO_BATCHES,
        "batch 1 smells good, pH 3.5",
        "it is at pH 34",
        "batch 2 is at 1.070",
        "bought 10 corks",
    )
    say(assistant, "what is waiting?", "3.4")
    assert readings(journal, "ph") == [(1, 3.5, "2025-10-04"), (1, 3.4, "2025-10-04")]


# ---- corrections and undo


def test_a_correction_shows_was_and_now(assistant: Assistant, journal: Journal) -> None:
    say(assistant, *TWO_BATCHES, "batch 1 at 0.996")
    reply = assistant.turn("make that 0.998", TODAY)
    assert reply.text == "Batch 1, merlot juice: gravity 0.996 → gravity 0.998."
    assert [e.get("value") for e in reply.withdrawn] == [0.996]
    assert readings(journal) == [(1, 0.998, "2025-10-04")]


def test_a_note_on_the_wrong_batch_is_moved(assistant: Assistant, journal: Journal) -> None:
    say(assistant, *TWO_BATCHES, "batch 1 at 0.996")
    assert say(assistant, "no, that was batch 2") == "Batch 1, merlot juice → batch 2, riesling juice: gravity 0.996."
    assert readings(journal) == [(2, 0.996, "2025-10-04")]


def test_undo_goes_back_step_by_step(assistant: Assistant, journal: Journal) -> None:
    say(assistant, *TWO_BATCHES, "batch 1 at 0.996", "make that 0.998")
    assert "gravity 0.998" in say(assistant, "undo")
    assert readings(journal) == [(1, 0.996, "2025-10-04")]
    assert "gravity 0.996" in say(assistant, "undo")
    assert readings(journal) == []
    assert "Note 2" in say(assistant, "undo")
    assert sorted(journal.cellar().batches) == [1]


def test_an_undo_can_be_put_back(assistant: Assistant, journal: Journal) -> None:
    say(assistant, *TWO_BATCHES, "batch 1 at 0.996", "undo")
    assert readings(journal) == []
    assert "gravity 0.996" in say(assistant, "put it back")
    assert readings(journal) == [(1, 0.996, "2025-10-04")]
    say(assistant, "undo")
    assert readings(journal) == []


def test_undo_of_an_answer_asks_again(assistant: Assistant, journal: Journal) -> None:
    say(assistant, *TWO_BATCHES, "1.022 today", "the riesling")
    assert "Which batch" in say(assistant, "undo")
    assert readings(journal) == []
    say(assistant, "the merlot")
    assert readings(journal) == [(1, 1.022, "2025-10-04")]


def test_undo_of_a_note_that_waits_ends_the_waiting(assistant: Assistant, journal: Journal) -> None:
    say(assistant, *TWO_BATCHES, "1.022 today", "undo")
    assert journal.open_asks() == []
    assert journal.count_notes() == 4  # nothing typed is lost


def test_undo_with_nothing_to_undo(assistant: Assistant) -> None:
    assert say(assistant, "undo") == "There is nothing to undo."


def test_undo_takes_back_a_setting_just_made_and_no_note(assistant: Assistant, journal: Journal) -> None:
    say(assistant, *TWO_BATCHES, "use metric")
    assert "Units: US" in say(assistant, "undo")
    assert sorted(journal.cellar().batches) == [1, 2]


# ---- questions


def test_a_question_is_answered_and_not_filed(assistant: Assistant, journal: Journal) -> None:
    say(assistant, *TWO_BATCHES, "pitched 5 g K-17 into batch 1")
    reply = assistant.turn("what yeast did I use for batch 1?", TODAY)
    assert reply.answer is not None
    assert reply.answer.found
    assert "K-17" in reply.text
    assert "note 3" in reply.text
    assert journal.count_notes() == 3


# ---- notebooks


def test_import_gives_a_reply_a_note_and_keeps_what_is_given(assistant: Assistant, journal: Journal) -> None:
    lines = [
        '{"settings": {"units": "metric", "day_first": true, "currency": "EUR"}}\n',
        '{"on": "2024-10-01", "text": "started batch 1, 20 l of merlot juice in vat 1"}\n',
        '{"on": "2024-10-02", "text": "whatever", "entries": [{"kind": "press", "batch": 1, "date": "2024-10-02"}]}\n',
        '{"on": "2024-10-03", "text": "batch 1 pH 34"}\n',
    ]
    replies = list(assistant.import_lines(lines))
    assert [[e.kind for e in r.entries] for r in replies] == [["start"], ["press"], []]
    assert replies[2].ask is not None
    assert journal.settings.units == "metric"
    assert [a.what for a in journal.open_asks()] == ["value"]


def test_a_notebook_that_has_grown_can_be_imported_again(assistant: Assistant, journal: Journal) -> None:
    old = ['{"on": "2024-10-01", "text": "started batch 1, 6 gal of merlot juice"}\n'] + [
        '{"on": "2024-10-02", "text": "punched down batch 1"}\n'
    ] * 2
    new = [*old, '{"on": "2024-10-03", "text": "pressed batch 1"}\n']
    list(assistant.import_lines(old))
    replies = list(assistant.import_lines(new))
    assert [r.note.number for r in replies if r.note] == [0, 0, 0, 4]
    assert [e.kind for e in journal.entries()] == ["start", "punch_down", "punch_down", "press"]


def test_import_commits_in_strides_and_keeps_what_came_before_a_bad_line(
    assistant: Assistant, journal: Journal
) -> None:
    good = [f'{{"on": "2024-10-01", "text": "note {n}"}}\n' for n in range(700)]
    with pytest.raises(Exception, match="line 701"):
        list(assistant.import_lines([*good, "{bad\n"]))
    assert journal.count_notes() == 602
    assert journal.check() == []


def test_a_plain_notebook_is_read(assistant: Assistant, journal: Journal) -> None:
    text = "2024-10-01\nstarted batch 1, 6 gal of merlot juice\n\n2024-10-05\npressed batch 1\n"
    assert len(list(assistant.import_lines(text.splitlines(keepends=True)))) == 2
    assert [(e.kind, e.date) for e in journal.entries()] == [("start", "2024-10-01"), ("press", "2024-10-05")]


# ---- reading again


def test_reread_mends_what_an_older_reader_filed_and_keeps_the_persons_own(
    assistant: Assistant, journal: Journal
) -> None:
    say(assistant, *TWO_BATCHES, "batch 1 at 0.996", "make that 0.998", "1.022 today", "the riesling")
    note = journal.add_note("2025-10-05", "racked batch 1 to carboy 2")
    journal.file(note.number, [Entry("remark", None, "2025-10-05", {"text": note.text})])  # as a lesser reader had it
    done = assistant.reread()
    assert [n.number for n, _, _ in done.changed] == [note.number]
    assert [e.get("to") for e in journal.entries(kinds=["rack"])] == ["carboy 2"]
    assert readings(journal) == [(1, 0.998, "2025-10-04"), (2, 1.022, "2025-10-04")]
    assert journal.check() == []
    assert assistant.reread().changed == []


def test_reread_reads_each_note_against_the_cellar_of_its_day(assistant: Assistant, journal: Journal) -> None:
    say(assistant, TWO_BATCHES[0], "it is at 1.090", TWO_BATCHES[1], "it is at 1.080")
    before = readings(journal)
    assert before == [(1, 1.09, "2025-10-04"), (2, 1.08, "2025-10-04")]
    assert assistant.reread().changed == []
    assert readings(journal) == before


def test_reread_files_what_waited_and_is_clear_now(assistant: Assistant, journal: Journal) -> None:
    from journalbot.model import Ask

    say(assistant, TWO_BATCHES[0])
    note = journal.add_note("2025-10-05", "pressed it")
    journal.put_ask(Ask("batch", ("batch 1",), "pressed it", note.number))
    assistant.reread()
    assert [e.batch for e in journal.entries(kinds=["press"])] == [1]
    assert journal.open_asks() == []
