"""Whatever is filed, corrected, undone or read again, in whatever order: the tables say what the entries say."""

import tempfile
from contextlib import suppress
from pathlib import Path
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from journalbot.journal import projections
from journalbot.journal.exchange import Opening, Row, export, file_row, open_with, read_notebook
from journalbot.journal.store import Journal
from journalbot.model import Ask, Entry

DATE = st.sampled_from(["2024", "2024-03", "2024-03-01", "2024-05-09", "2025-01-01"])
VESSEL = st.sampled_from(["bucket", "carboy 1", "Carboy #1", "carboys 1 and 2", "big bin", "old big bin"])
FIELDS: dict[str, st.SearchStrategy[dict[str, Any]]] = {
    "start": st.fixed_dictionaries(
        {"vessel": VESSEL, "volume": st.floats(0.5, 60, allow_nan=False), "unit": st.just("L")}
    ),
    "rack": st.fixed_dictionaries({"to": VESSEL}, optional={"from": VESSEL}),
    "reading": st.fixed_dictionaries(
        {"quantity": st.sampled_from(["sg", "ph"]), "value": st.floats(0.9, 4), "unit": st.just("SG")}
    ),
    "blend": st.fixed_dictionaries(
        {
            "with": st.lists(
                st.fixed_dictionaries(
                    {"batch": st.integers(1, 3), "amount": st.integers(1, 4), "unit": st.just("gal")}
                ),
                min_size=1,
                max_size=2,
            )
        }
    ),
    "bottle": st.fixed_dictionaries({"count": st.integers(1, 30)}),
    "pitch": st.fixed_dictionaries({"yeast": st.sampled_from(["K-17", "k-17", "ZR-40"])}),
    "vessel": st.fixed_dictionaries({"name": VESSEL, "capacity": st.integers(1, 60), "unit": st.just("L")}),
    "remark": st.fixed_dictionaries({"text": st.text(max_size=8)}),
}
ENTRY = st.one_of([
    st.tuples(
        st.just(kind),
        st.none() if kind == "vessel" else st.integers(1, 3),
        DATE,
        fields,
        st.sampled_from([None, "18:30"]),
        st.tuples(st.just(0), st.integers(0, 9)),
        st.sampled_from([None, "perhaps"]),
    )
    for kind, fields in FIELDS.items()
]).map(lambda parts: Entry(*parts))
PICK = st.integers(0, 1000)  # which of what is there, taken modulo how many there are
ACT = st.one_of(
    st.tuples(st.just("note"), st.text(max_size=20), st.lists(ENTRY, max_size=3), st.sampled_from(["read", "given"])),
    st.tuples(st.just("replace"), PICK, ENTRY),
    st.tuples(st.just("withdraw"), PICK),
    st.tuples(st.just("restore"), PICK),
    st.tuples(st.just("slip"), ENTRY),
    st.tuples(st.just("refile"), PICK, st.lists(ENTRY, max_size=2)),
    st.tuples(st.just("ask"), st.text(max_size=9)),
    st.tuples(st.just("answer"), PICK),
    st.tuples(st.just("abandon"), ENTRY),
)


def act(journal: Journal, deed: tuple[Any, ...]) -> None:
    """One turn."""
    with journal.turn():
        standing = [e.id for e in journal.entries()]
        match deed:
            case ("note", text, entries, origin):
                journal.file(journal.add_note("2024-06-01", text).number, entries, origin=origin)
            case ("replace", pick, entry) if standing:
                journal.replace(
                    standing[pick % len(standing)], entry, journal.add_note("2024-06-02", "no", "correction").number
                )
            case ("withdraw", pick) if standing:
                journal.withdraw(
                    [standing[pick % len(standing)]], journal.add_note("2024-06-03", "not", "correction").number
                )
            case ("restore", pick) if journal.count_notes():
                of = pick % journal.count_notes() + 1
                journal.restore(of, journal.add_note("2024-06-04", "undo", "correction").number)
            case ("slip", entry):
                note = journal.add_note("2024-06-05", "this, no").number
                journal.withdraw([e.id for e in journal.file(note, [entry])], note)
            case ("refile", pick, entries) if journal.count_notes():
                journal.refile(pick % journal.count_notes() + 1, entries)
            case ("ask", text):
                journal.put_ask(Ask("batch", ("batch 1", text), text, journal.add_note("2024-06-06", text).number))
            case ("answer", pick) if asks := journal.open_asks():
                journal.answer_ask(asks[pick % len(asks)].note, {"batch": pick})
            case ("abandon", entry):
                raise _GivenUp(journal.file(journal.add_note("2024-06-07", "lost").number, [entry]))


class _GivenUp(Exception):
    pass


def do(journal: Journal, deeds: list[tuple[Any, ...]]) -> None:
    for deed in deeds:
        with suppress(_GivenUp):
            act(journal, deed)


@settings(max_examples=60, deadline=None)
@given(st.lists(ACT, max_size=14))
def test_tables_and_memory_always_agree_with_the_entries(deeds: list[tuple[Any, ...]]) -> None:
    with tempfile.TemporaryDirectory() as folder, Journal.open(Path(folder) / "j.db") as journal:
        do(journal, deeds)
        assert journal.check() == []
        assert projections.differences(journal.cellar(), projections.compute(journal)) == []
        assert journal.cellar().last_spoken == projections.compute(journal).last_spoken
        before = journal.sql("SELECT * FROM batches ORDER BY 1").fetchall()
        journal.rebuild_projections()
        assert journal.sql("SELECT * FROM batches ORDER BY 1").fetchall() == before


@settings(max_examples=60, deadline=None)
@given(st.lists(ACT, max_size=14))
def test_export_and_import_round_trip(deeds: list[tuple[Any, ...]]) -> None:
    with tempfile.TemporaryDirectory() as folder:
        with Journal.open(Path(folder) / "a.db") as journal:
            do(journal, deeds)
            journal.change_settings(units="metric", bottle_price=4)
            journal.teach("gloop", {"material": "bentonite"})
            lines = list(export(journal))
            standing = [(e.to_json(), e.span, e.doubt) for e in journal.entries() if e.note == e.place[0]]
        with Journal.open(Path(folder) / "b.db") as copy:
            for row in read_notebook(lines):
                if isinstance(row, Opening):
                    open_with(copy, row)
                else:
                    assert isinstance(row, Row)
                    file_row(copy, row)
            assert list(export(copy)) == lines
            assert copy.check() == []
            again = [e.to_json() for e in copy.entries()]
            assert all(json in again for json, _, _ in standing)


def test_an_older_fold_is_made_anew(tmp_path: Path) -> None:
    with Journal.open(tmp_path / "j.db") as journal:
        journal.file(journal.add_note("2024-06-01", "x").number, [Entry("pitch", 1, "2024-06-01", {"yeast": "K-17"})])
        journal.sql("UPDATE settings SET value = '[0]' WHERE key = 'fold'")
        journal.sql("UPDATE batches SET state = '[]'")
    with Journal.open(tmp_path / "j.db") as journal:
        journal.file(journal.add_note("2024-06-02", "y").number, [Entry("pitch", 1, "2024-06-02", {"yeast": "K-17"})])
        assert journal.cellar().batches[1].pitched == "2024-06-01"
        assert journal.check() == []
