"""The journal's file as others use it: notes, entries and their history, what is asked, search."""

import sqlite3
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journalbot.errors import JournalError
from journalbot.journal.search import match_expression
from journalbot.journal.store import Journal
from journalbot.model import Ask, Entry, Settings


def sg(value: float, batch: int | None = 1, date: str = "2024-10-01") -> Entry:
    return Entry("reading", batch, date, {"quantity": "sg", "value": value, "unit": "SG"}, span=(3, 8))


def rack(to: str, batch: int = 1, date: str = "2024-10-01") -> Entry:
    return Entry("rack", batch, date, {"to": to})


def jot(
    journal: Journal, *entries: Entry, on: str = "2024-10-01", text: str = "noted", origin: str = "read"
) -> list[Entry]:
    """A note with its entries, as one turn."""
    with journal.turn():
        return journal.file(journal.add_note(on, text).number, entries, origin=origin)


# ---- notes and settings


def test_notes_are_kept_verbatim_and_numbered(journal: Journal) -> None:
    texts = [
        "  racked it \n",
        "Rosé 🍷 \u202e",
        "nul \0 inside",
        "'; DROP TABLE notes; --",
        "x" * 100_000,
        "",
        "\x1b[2J",
    ]
    for number, text in enumerate(texts, 1):
        assert journal.add_note("2024-10-01", text, "note").number == number
    assert [n.text for n in journal.notes()] == texts
    assert [n.number for n in journal.notes(2, 4)] == [2, 3, 4]
    assert journal.count_notes() == len(texts)
    last = journal.last_note()
    assert last
    assert last.text == texts[-1]
    assert journal.note(99) is None


def test_notes_are_never_changed_or_taken_out(journal: Journal) -> None:
    journal.add_note("2024-10-01", "racked")
    for statement in ("UPDATE notes SET text = ''", "DELETE FROM notes"):
        with pytest.raises(JournalError):
            journal.sql(statement)
    note = journal.note(1)
    assert note
    assert note.text == "racked"


def test_text_that_is_not_unicode_is_refused_with_a_reason(journal: Journal) -> None:
    with pytest.raises(JournalError, match="not valid Unicode"):
        journal.add_note("2024-10-01", "half \ud83d")
    assert journal.count_notes() == 0


def test_a_kind_of_note_that_does_not_exist_is_refused(journal: Journal) -> None:
    with pytest.raises(ValueError, match="no kind of note"):
        journal.add_note("2024-10-01", "x", "memo")


def test_settings_are_kept(journal: Journal) -> None:
    assert journal.settings == Settings()
    journal.change_settings(units="metric", day_first=True, bottle_price=7.5)
    with Journal.open(journal.path) as again:
        assert again.settings == Settings(units="metric", day_first=True, bottle_price=7.5)
    with pytest.raises(TypeError):
        journal.change_settings(colour="blue")


# ---- turns


def test_a_turn_is_kept_whole_or_not_at_all(journal: Journal) -> None:
    jot(journal, sg(1.09))
    with pytest.raises(RuntimeError), journal.turn():  # noqa: PT012
        jot(journal, sg(1.05), rack("carboy 1"))
        assert journal.cellar().batches[1].gravity == 1.05
        raise RuntimeError
    assert journal.count_notes() == 1
    assert journal.cellar().batches[1].gravity == 1.09
    assert journal.cellar().vessels == {}


def test_half_of_an_inner_turn_is_never_kept(journal: Journal) -> None:
    with pytest.raises(JournalError, match="not kept"), journal.turn():  # noqa: PT012
        journal.add_note("2024-10-01", "outer")
        with pytest.raises(RuntimeError), journal.turn():  # noqa: PT012
            journal.add_note("2024-10-01", "inner")
            raise RuntimeError
    assert journal.count_notes() == 0


def test_an_inner_turn_that_failed_before_it_wrote_harms_nothing(journal: Journal) -> None:
    with journal.turn():
        with pytest.raises(JournalError):
            journal.add_note("2024-10-01", "\ud83d")
        journal.add_note("2024-10-01", "fine")
    assert [n.text for n in journal.notes()] == ["fine"]


# ---- entries


def test_an_entry_comes_back_as_it_was_filed(journal: Journal) -> None:
    entry = Entry(
        "rack", 3, "2024-10", {"to": "carboy 1", "volume": 5.5, "unit": "gal", "approx": True}, "18:30", (0, 9), "why"
    )
    (filed,) = jot(journal, entry)
    assert journal.entry(filed.id) == filed
    assert filed.to_json() == entry.to_json()
    assert (filed.note, filed.span, filed.doubt) == (1, (0, 9), "why")


@pytest.fixture
def some(journal: Journal) -> Journal:
    jot(journal, sg(1.09, 1, "2024-09-01"), rack("carboy 1", 1, "2024-09-01"))
    jot(journal, sg(1.08, 2, "2024-09"), sg(1.07, 2, "2024-08-15"))
    jot(journal, Entry("reading", None, "2024-10-01", {"quantity": "temperature", "value": 61, "unit": "F"}))
    jot(journal, sg(1.06, 1, "2024-09-01"), sg(1.05, 3, "2025"))
    return journal


@pytest.mark.parametrize(
    ("filters", "found"),
    [
        ({}, [1.07, 1.08, 1.09, "carboy 1", 1.06, 61, 1.05]),
        ({"batch": 1}, [1.09, "carboy 1", 1.06]),
        ({"batch": None}, [61]),
        ({"batch": (2, 3)}, [1.07, 1.08, 1.05]),
        ({"batch": ()}, []),
        ({"kinds": ["rack"]}, ["carboy 1"]),
        ({"kinds": ["rack", "reading"], "batch": 1}, [1.09, "carboy 1", 1.06]),
        ({"quantity": "sg", "batch": 1}, [1.09, 1.06]),
        ({"since": "2024-09"}, [1.08, 1.09, "carboy 1", 1.06, 61, 1.05]),
        ({"until": "2024-09"}, [1.07, 1.08, 1.09, "carboy 1", 1.06]),
        ({"since": "2024-09-01", "until": "2024-10-01", "quantity": "sg"}, [1.09, 1.06]),
        ({"note": 2}, [1.07, 1.08]),
        ({"note": 4, "batch": 3}, [1.05]),
    ],
)
def test_entries_are_found_in_order_of_date_note_and_position(
    some: Journal, filters: dict[str, Any], found: list[Any]
) -> None:
    assert [e.get("value") or e.get("to") for e in some.entries(**filters)] == found


@pytest.mark.parametrize(
    ("filters", "index"),
    [
        ({"batch": 1}, "entries_by_batch"),
        ({"batch": 1, "quantity": "sg"}, "entries_by_batch"),
        ({"batch": 1, "kinds": ["rack"], "since": "2024"}, "entries_by_batch"),
        ({"batch": None}, "entries_by_batch"),
        ({"batch": (1, 2)}, "entries_by_batch"),
        ({"quantity": "sg"}, "entries_by_quantity"),
        ({"quantity": "sg", "kinds": ["reading"]}, "entries_by_quantity"),
        ({"kinds": ["rack"]}, "entries_by_kind"),
        ({"kinds": ["rack", "bottle"], "until": "2025"}, "entries_by_kind"),
        ({"since": "2024", "until": "2025"}, "entries_by_date"),
        ({"note": 1}, "entries_by_note"),
        ({"seat": 1, "batch": 1}, "entries_by_seat"),
        ({}, "entries_by_date"),
    ],
)
def test_every_way_of_finding_entries_goes_through_an_index(some: Journal, filters: dict[str, Any], index: str) -> None:
    seen: list[str] = []
    some._conn.set_trace_callback(seen.append)
    some.entries(**filters)
    some._conn.set_trace_callback(None)
    plan = " ".join(row[3] for row in some.sql(f"EXPLAIN QUERY PLAN {seen[-1]}"))
    assert f"INDEX {index}" in plan


# ---- corrections


def test_a_replaced_entry_stands_where_the_old_one_stood(journal: Journal) -> None:
    old, _ = jot(journal, sg(1.09), sg(1.08))
    correction = journal.add_note("2024-10-02", "make that 1.095", "correction")
    new = journal.replace(old.id, sg(1.095), correction.number)
    assert [e.get("value") for e in journal.entries(batch=1)] == [1.095, 1.08]
    assert journal.cellar().batches[1].gravity == 1.08
    assert journal.changes_by(2) == ([old], [new])
    assert [(c.on, c.note, c.what, c.entry.get("value")) for c in journal.history(entry=new.id)] == [
        ("2024-10-01", 1, "filed", 1.09),
        ("2024-10-02", 2, "withdrawn", 1.09),
        ("2024-10-02", 2, "replaced", 1.095),
    ]
    assert [e.id for e in journal.entries(seat=1)] == [new.id, old.id + 1]
    assert len(journal.entries(batch=1, include_withdrawn=True)) == 3


def test_undo_goes_both_ways_and_can_itself_be_undone(journal: Journal) -> None:
    (old,) = jot(journal, sg(1.09))
    new = journal.replace(
        old.id, sg(1.095, batch=2), journal.add_note("2024-10-02", "that was batch 2", "correction").number
    )
    assert list(journal.cellar().batches) == [2]

    undo = journal.add_note("2024-10-02", "undo", "correction").number
    assert journal.restore(2, undo) == ([new], [old])
    assert [e.id for e in journal.entries()] == [old.id]
    assert list(journal.cellar().batches) == [1]
    assert journal.changes_by(undo) == ([new], [old])

    again = journal.add_note("2024-10-02", "no, undo that", "correction").number
    assert journal.restore(undo, again) == ([old], [new])
    assert [e.id for e in journal.entries()] == [new.id]
    assert [c.what for c in journal.history(note=1)] == [
        "filed",
        "withdrawn",
        "replaced",
        "restored",
        "withdrawn",
        "withdrawn",
        "restored",
    ]


def test_undo_leaves_alone_what_was_changed_since(journal: Journal) -> None:
    first, second = jot(journal, sg(1.09), rack("carboy 1"))
    new = journal.replace(first.id, sg(1.1), journal.add_note("2024-10-02", "1.1", "correction").number)
    assert journal.restore(1, journal.add_note("2024-10-03", "delete the first note", "correction").number) == (
        [second],
        [],
    )
    assert [e.id for e in journal.entries()] == [new.id]


def test_withdrawn_entries_leave_the_cellar(journal: Journal) -> None:
    filed = jot(
        journal,
        Entry("start", 1, "2024-09-01", {"vessel": "tub"}),
        Entry("pitch", 1, "2024-09-02", {"yeast": "K-17"}),
        Entry("vessel", None, "2024-09-02", {"name": "tub", "capacity": 30, "unit": "L"}),
    )
    by = journal.add_note("2024-10-02", "scrap that", "correction").number
    assert journal.withdraw([e.id for e in filed], by) == filed
    assert journal.withdraw([e.id for e in filed], by) == []  # gone already
    cellar = journal.cellar()
    assert (cellar.batches, cellar.vessels, cellar.yeasts, cellar.next_number()) == ({}, {}, [], 1)
    assert journal.entries() == []


def test_a_note_read_again_keeps_what_a_person_corrected(journal: Journal) -> None:
    (old,) = jot(journal, sg(1.09))
    assert journal.refile(1, [sg(1.09)]) == [old]  # nothing new: nothing written
    better = journal.refile(1, [sg(1.091), rack("carboy 1")])
    assert better
    assert [e.get("value") for e in journal.entries(quantity="sg")] == [1.091]
    assert journal.cellar().batches[1].vessels == {"carboy 1": "2024-10-01"}
    journal.replace(better[0].id, sg(1.1), journal.add_note("2024-10-02", "1.1", "correction").number)
    assert journal.refile(1, [sg(1.2)]) is None
    jot(journal, sg(1.0), origin="given")
    assert journal.refile(3, []) is None
    assert [e.get("value") for e in journal.entries(quantity="sg")] == [1.1, 1.0]


def test_a_name_goes_with_the_reading_that_first_had_it(journal: Journal) -> None:
    jot(journal, rack("carboy 1"))
    journal.refile(1, [rack("Carboy #1")])
    assert [v.name for v in journal.cellar().vessels.values()] == ["Carboy #1"]


def test_an_entry_that_is_not_there_is_an_error(journal: Journal) -> None:
    note = journal.add_note("2024-10-01", "x").number
    for act in (lambda: journal.withdraw([7], note), lambda: journal.replace(7, sg(1.0), note)):
        with pytest.raises(JournalError, match="no entry 7"):
            act()


# ---- what is asked, taught and marked


def test_what_was_answered_is_kept_for_reading_again(journal: Journal) -> None:
    note = journal.add_note("2024-10-01", "SG 1.010").number
    ask = Ask("batch", ("batch 1", "batch 2"), "SG 1.010", note)
    journal.put_ask(ask)
    assert journal.open_asks() == [ask]
    assert journal.answer_ask(note, {"batch": 2}) == {"batch": 2}
    assert journal.open_asks() == []
    journal.put_ask(Ask("date", note=note))
    assert journal.answer_ask(note, {"date": "2024-09-30"}) == {"batch": 2, "date": "2024-09-30"}
    assert journal.answers(note) == {"batch": 2, "date": "2024-09-30"}
    journal.put_ask(ask)
    journal.drop_ask(note)
    assert (journal.open_asks(), journal.answers(99)) == ([], {})


def test_words_taught_and_marks(journal: Journal) -> None:
    journal.teach("gloop", {"material": "bentonite"})
    journal.mark("caution: sulfite", "2024-10-01")
    journal.mark("caution: sulfite", "2024-10-02")
    assert journal.taught() == {"gloop": {"material": "bentonite"}}
    assert (journal.marked("caution: sulfite"), journal.marked("other")) == ("2024-10-02", None)


# ---- search


@pytest.mark.parametrize(
    ("words", "notes"),
    [
        ("crystals", [1]),
        ("crystal", [1]),
        ("CRYST", [1]),  # endings and an unfinished last word
        ("racked", [1, 2]),
        ("racking carboy", [2]),
        ('"black cherry"', [3]),
        ("cherry black", [3]),
        ('"cherry black"', []),
        ("rose", [4]),
        ("rosé", [4]),
        ("k-17", [5]),
        ("K 17", [5]),
        ("nothing", []),
        ("", []),
        ("*", []),
        ('"', []),
        ("AND OR NOT", []),
        ("NEAR(a b)", []),
        ("text:x ^y -z", []),
        ("🍷", []),
    ],
)
def test_search(journal: Journal, words: str, notes: list[int]) -> None:
    for text in ("racked off the crystals", "racked into carboy 2", "black cherry, tannic", "the Rosé", "pitched K-17"):
        journal.add_note("2024-10-01", text)
    assert sorted(f.note for f in journal.search(words)) == notes


def test_search_for_any_word_ranks_and_shows_where(journal: Journal) -> None:
    journal.add_note("2024-10-01", "smoke " + "filler " * 60 + "plum")
    journal.add_note("2024-10-01", "plum and smoke")
    found = journal.search("smoke clove plum", any_word=True)
    assert [f.note for f in found] == [2, 1]
    assert found[0].snippet == "plum and smoke"
    assert len(found[1].snippet.split()) < 20
    assert [f.note for f in journal.search("plum", limit=1)] == [2]
    assert journal.search_terms("pl") == ["plum"]


@given(st.text())
def test_any_text_is_safe_to_search_for(text: str) -> None:
    conn = sqlite3.connect(":memory:")
    conn.execute("CREATE VIRTUAL TABLE t USING fts5 (text, tokenize='porter unicode61 remove_diacritics 2')")
    for any_word in (False, True):
        expression = match_expression(text, any_word=any_word)
        if expression:
            conn.execute("SELECT rowid FROM t WHERE t MATCH ?", (expression,)).fetchall()
    conn.close()


# ---- the file


def test_a_file_that_is_up_to_date_opens_without_the_heavy_library(journal: Journal) -> None:
    jot(journal, sg(1.09))
    code = (
        "import sys; from pathlib import Path; from journalbot.journal.store import Journal\n"
        f"j = Journal.open(Path({str(journal.path)!r})); j.cellar(); j.entries(batch=1); j.search('x')\n"
        "print('sqlite_utils' in sys.modules)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, cwd=Path.cwd())
    assert done.stdout.strip() == "False"


def test_another_connection_sees_what_was_written_and_the_cellar_follows(journal: Journal) -> None:
    jot(journal, sg(1.09))
    with Journal.open(journal.path) as other:
        before = journal.data_version
        assert journal.cellar().batches[1].gravity == 1.09
        jot(other, sg(1.05, date="2024-10-02"))
        assert journal.data_version != before
        assert journal.cellar().batches[1].gravity == 1.05
        jot(journal, sg(1.01, date="2024-10-03"))
        assert other.cellar().batches[1].gravity == 1.01


def test_a_backup_is_a_journal_of_its_own_and_never_overwrites(journal: Journal, tmp_path: Path) -> None:
    jot(journal, sg(1.09))
    copy = journal.backup(tmp_path / "copy.db")
    assert copy.stat().st_mode & 0o777 == 0o600
    with Journal.open(copy) as opened:
        assert opened.entries() == journal.entries()
        assert opened.check() == []
    with pytest.raises(JournalError, match="exists already"):
        journal.backup(copy)
    with pytest.raises(JournalError):
        journal.backup(tmp_path / "nowhere" / "copy.db")


def test_only_the_owner_can_read_the_files(journal: Journal) -> None:
    jot(journal, sg(1.09))
    modes = {p.name: p.stat().st_mode & 0o777 for p in journal.path.parent.iterdir()}
    assert modes == {"cellar.db": 0o600, "cellar.db-wal": 0o600, "cellar.db-shm": 0o600}


@pytest.mark.parametrize(
    "harm",
    [
        lambda j: j.sql("UPDATE batches SET state = replace(state, '1.09', '1.99')"),
        lambda j: j.sql("INSERT INTO notes_fts (notes_fts) VALUES ('delete-all')"),
        lambda j: j.sql("DELETE FROM names"),
    ],
)
def test_check_finds_what_does_not_agree(tmp_path: Path, harm: Callable[[Journal], object]) -> None:
    with Journal.open(tmp_path / "j.db") as journal:
        jot(journal, sg(1.09), Entry("pitch", 1, "2024-10-01", {"yeast": "K-17"}))
        assert journal.check() == []
        harm(journal)
        assert len(journal.check()) == 1
        journal.rebuild_projections()
