"""Notebooks in JSON lines: what is read, and what is said of a line that cannot be."""

import json
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journalbot.errors import ImportFileError
from journalbot.journal.exchange import Opening, Row, export, file_row, read_notebook
from journalbot.journal.store import Journal
from journalbot.model import Ask, Entry

NOTE = {"on": "2025-10-04", "text": "racked batch 3, SG 0.996"}
SG = {"kind": "reading", "batch": 3, "date": "2025-10-04", "quantity": "sg", "value": 0.996, "unit": "SG"}


def lines(*rows: object) -> list[str]:
    return [json.dumps(row) for row in rows]


def test_a_plain_notebook() -> None:
    settings = {"units": "us", "day_first": False, "currency": "USD"}
    opening, blank, given_, none = read_notebook(
        [
            "\ufeff" + json.dumps({"settings": settings}),
            json.dumps(NOTE),
            "",
            *lines({**NOTE, "entries": [SG]}, {**NOTE, "entries": []}),
        ]
    )
    assert opening == Opening(settings)
    assert blank == Row(2, "2025-10-04", "racked batch 3, SG 0.996")
    assert isinstance(given_, Row)
    assert given_.line == 4
    assert given_.entries == (Entry.from_json(SG),)
    assert isinstance(none, Row)
    assert none.entries == ()


def test_an_export_says_what_happened(journal: Journal) -> None:
    (old,) = journal.file(journal.add_note("2025-10-04", "SG 0.996").number, [Entry.from_json(SG)])
    journal.replace(
        old.id, Entry.from_json({**SG, "value": 0.998}), journal.add_note("2025-10-05", "0.998", "correction").number
    )
    journal.put_ask(
        Ask("batch", ("batch 1", "batch 2"), "topped up", journal.add_note("2025-10-06", "topped up").number)
    )
    assert [json.loads(line) for line in export(journal)] == [
        {"settings": {"units": "us", "day_first": False, "currency": "USD"}},
        {"on": "2025-10-04", "text": "SG 0.996", "entries": [SG], "read": [[0, 0]]},
        {
            "on": "2025-10-05",
            "text": "0.998",
            "kind": "correction",
            "entries": [{**SG, "value": 0.998}],
            "withdrawn": [SG],
        },
        {
            "on": "2025-10-06",
            "text": "topped up",
            "ask": "batch",
            "choices": ["batch 1", "batch 2"],
            "about": "topped up",
        },
    ]


@pytest.mark.parametrize(
    ("row", "said"),
    [
        ([1], "a line is a JSON object"),
        ({"on": "2025-10-04"}, '"text"'),
        ({"text": "x"}, '"on"'),
        ({**NOTE, "on": "4 Oct"}, "4 Oct"),
        ({**NOTE, "on": "2025-02-30"}, "2025-02-30"),
        ({**NOTE, "on": 20251004}, '"on"'),
        ({**NOTE, "kind": "memo"}, "memo"),
        ({**NOTE, "entries": {}}, "lists of objects"),
        ({**NOTE, "entries": [5]}, "an entry is an object"),
        ({**NOTE, "entries": [{**SG, "kind": None}]}, '"kind"'),
        ({**NOTE, "entries": [{**SG, "batch": "3"}]}, '"batch"'),
        ({**NOTE, "entries": [{**SG, "batch": 10**30}]}, "too large"),
        ({**NOTE, "entries": [{**SG, "batch": True}]}, '"batch"'),
        ({**NOTE, "entries": [{**SG, "date": "last week"}]}, "last week"),
        ({**NOTE, "entries": [{**SG, "date": "2025-13"}]}, "2025-13"),
        ({**NOTE, "entries": [{**SG, "time": "25:00"}]}, "25:00"),
        ({**NOTE, "entries": [{**SG, "value": "low"}]}, '"value"'),
        ({**NOTE, "entries": [{**SG, "quantity": ["sg"]}]}, '"quantity"'),
        ({**NOTE, "entries": [{"kind": "blend", "batch": 1, "date": "2025", "with": [{"batch": "x"}]}]}, '"with"'),
        ({**NOTE, "entries": [SG], "read": [[0]]}, '"read"'),
        ({**NOTE, "entries": [SG], "read": []}, '"read"'),
        ({**NOTE, "ask": 5}, '"ask"'),
        ({**NOTE, "answers": 5}, '"answers"'),
        ({"settings": {"units": "imperial"}}, "units"),
        ({"settings": {"mood": "good"}}, "mood"),
        ({"settings": {"day_first": "yes"}}, "day_first"),
        ({"settings": []}, "settings"),
        ({"settings": {}, "taught": []}, "taught"),
    ],
)
def test_a_bad_line_is_told_with_its_number(row: object, said: str) -> None:
    with pytest.raises(ImportFileError, match=r"^line 3: ") as error:
        list(read_notebook([*lines(NOTE, NOTE), json.dumps(row)]))
    assert said in str(error.value)
    assert "\n" not in str(error.value)


@pytest.mark.parametrize(
    "line",
    [
        "racked batch 3",
        "{",
        '{"on": "2025-10-04", "text": "half \\ud83d"}',
        '{"on": "2025-10-04", "text": "caf\udce9"}',  # what is left of a byte that is not UTF-8
        '{"on": "2025-10-04", "text": "x", "entries": [{"kind": "reading", "batch": 1, "date": "2025", "value": NaN}]}',
        '{"on": "2025-10-04", "text": "x", "n": 1e999}',
        "[" * 100_000,
        "1" * 5000,
    ],
    ids=lambda line: line[:40].encode("ascii", "replace").decode(),
)
def test_what_is_not_json_is_told_too(line: str) -> None:
    with pytest.raises(ImportFileError, match=r"^line 1: "):
        list(read_notebook([line]))


@given(
    st.recursive(
        st.none() | st.booleans() | st.integers() | st.floats() | st.text(),
        lambda inner: st.one_of(
            st.lists(inner, max_size=3),
            st.dictionaries(
                st.sampled_from(
                    [
                        "on",
                        "text",
                        "entries",
                        "kind",
                        "batch",
                        "date",
                        "read",
                        "ask",
                        "settings",
                        "with",
                        "value",
                        "withdrawn",
                    ]
                ),
                inner,
                max_size=5,
            ),
        ),
    )
)
def test_any_json_is_read_or_refused_in_words(data: Any) -> None:
    told = []
    try:
        list(read_notebook([json.dumps(data)]))
    except ImportFileError as error:
        told.append(str(error))
    assert all(line.startswith("line 1: ") for line in told)


def test_taking_back_what_was_never_said_is_an_error_and_keeps_nothing(journal: Journal) -> None:
    (row,) = read_notebook(lines({**NOTE, "kind": "correction", "entries": [], "withdrawn": [SG]}))
    assert isinstance(row, Row)
    with pytest.raises(ImportFileError, match="line 1"):
        file_row(journal, row)
    assert journal.count_notes() == 0


def test_two_entries_that_say_the_same_are_taken_back_both(journal: Journal, tmp_path: Path) -> None:
    drunk = Entry("drink", 1, "2025-10-04", {"count": 1})
    journal.file(journal.add_note("2025-10-04", "one, and one more").number, [drunk, drunk])
    journal.restore(1, journal.add_note("2025-10-05", "undo", "correction").number)
    lines_out = list(export(journal))
    with Journal.open(tmp_path / "copy.db") as copy:
        for row in read_notebook(lines_out):
            if isinstance(row, Row):
                file_row(copy, row)
        assert copy.entries() == []
        assert list(export(copy)) == lines_out
