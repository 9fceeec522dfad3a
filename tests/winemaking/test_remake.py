"""How a batch was made, and a plan for making it again, on an invented batch."""

from datetime import date, timedelta
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journalbot.journal.fold import fold
from journalbot.model import Entry
from journalbot.vocabulary.descriptors import FAULTS
from journalbot.vocabulary.remake import CHANGES, FAULT_CHANGES
from journalbot.winemaking.care import plans_due
from journalbot.winemaking.plans import acts_of
from journalbot.winemaking.remake import Change, Recipe, how_made, plans, said, scaled

Row = tuple[str, str, dict[str, Any]]


def entries(*rows: Row, batch: int = 4) -> list[Entry]:
    return [Entry(kind, batch, day, fields, note=n, place=(n, 0)) for n, (kind, day, fields) in enumerate(rows, 1)]


PLUM: tuple[Row, ...] = (
    ("start", "2024-08-10", {"from": ["plums"], "volume": 20, "unit": "L", "weight": 8, "weight_unit": "kg"}),
    ("addition", "2024-08-10", {"material": "sugar", "amount": 3, "unit": "kg"}),
    ("addition", "2024-08-10", {"material": "sulfur dioxide", "amount": 50, "unit": "mg/L"}),
    ("reading", "2024-08-10", {"quantity": "sg", "value": 1.085, "unit": "SG"}),
    ("pitch", "2024-08-11", {"yeast": "Q-9", "amount": 10, "unit": "g"}),
    ("punch_down", "2024-08-12", {"times": 2}),
    ("punch_down", "2024-08-15", {"times": 2}),
    ("press", "2024-08-16", {}),
    ("reading", "2024-08-16", {"quantity": "sg", "value": 1.02, "unit": "SG"}),
    ("fermentation", "2024-08-20", {"stage": "stuck"}),
    ("rack", "2024-10-05", {"to": "demijohn 2"}),
    ("reading", "2025-01-15", {"quantity": "sg", "value": 0.996, "unit": "SG"}),
    ("taste", "2025-01-20", {"words": ["harsh"]}),
    ("bottle", "2025-02-10", {"count": 25, "size": 750, "unit": "ml", "closure": "cork"}),
    ("taste", "2025-05-20", {"words": ["plum", "thin", "eggy"]}),
    ("taste", "2025-08-20", {"words": ["thin"]}),
)


def recipe() -> Recipe:
    return how_made(4, entries(*PLUM))


def test_steps_in_order_with_amounts_for_a_litre() -> None:
    found = [(s.day, said(s), s.per_litre, s.lasted) for s in recipe().steps]
    assert found == [
        (0, "start 8 kg plums", 0.4, 0),
        (0, "add 3 kg sugar", 0.15, 0),
        (0, "add 50 mg/L sulfur dioxide", None, 0),
        (1, "pitch 10 g Q-9", 0.5, 0),
        (2, "punch down", None, 3),
        (6, "press", None, 0),
        (56, "rack", None, 0),
        (184, "bottle about 25 of 750 ml under cork", 1.25, 0),
    ]


def test_at_another_volume_amounts_change_and_rates_do_not() -> None:
    assert [said(s) for s in scaled(recipe(), 5).steps][:4] == [
        "start 2 kg plums", "add 0.75 kg sugar", "add 50 mg/L sulfur dioxide", "pitch 2.5 g Q-9"]  # fmt: skip


def test_dates_are_laid_out_from_the_new_start() -> None:
    made = plans(scaled(recipe(), 5), 9, date(2025, 9, 1), date(2025, 8, 20))
    assert [(e.get("due"), e.get("what")) for e in made][2:5] == [
        ("2025-09-02", "pitch 2.5 g Q-9"), ("2025-09-03", "punch down"), ("2025-09-07", "press")]  # fmt: skip
    assert {(e.kind, e.batch, e.date) for e in made} == {("plan", 9, "2025-08-20")}


def test_care_follows_the_plans() -> None:
    made = plans(recipe(), 9, date(2025, 9, 1), date(2025, 8, 20))
    assert all(acts_of(p) for p in made)
    today = date(2025, 9, 8)
    pressed = Entry("press", 9, "2025-09-07", {}, note=99, place=(99, 0))
    before = {d.what for d in plans_due(made, today, fold(9, made))}
    after = {d.what for d in plans_due([*made, pressed], today, fold(9, made))}
    assert before - after == {"press"}


def test_readings_to_watch_for() -> None:
    assert [(w.day, w.value, w.at) for w in recipe().watches] == [
        (0, 1.085, "start"), (6, 1.02, "press"), (158, 0.996, "before bottling")]  # fmt: skip


def test_what_the_tastings_of_the_bottled_wine_suggest() -> None:
    found = list(recipe().changes)
    assert found[0] == Change("more fruit for the volume, and no more water", ("thin",), (15, 16))
    assert [c.words for c in found] == [("thin",), ("eggy",), ("stuck",)]


def test_a_date_no_more_exact_than_a_month_is_laid_out_from_its_middle() -> None:
    found = how_made(4, entries(PLUM[0], ("rack", "2024-10", {})))
    assert [(s.day, s.approx) for s in found.steps] == [
        (0, False),
        ((date(2024, 10, 15) - date(2024, 8, 10)).days, True),
    ]


def test_what_is_missing_is_said() -> None:
    with pytest.raises(ValueError, match="batch 4 has no start on record"):
        how_made(4, entries(*PLUM[1:]))
    with pytest.raises(ValueError, match="the volume that batch 4 was started with is not known"):
        how_made(4, entries(("start", "2024-08-10", {"from": ["plums"]})))
    assert how_made(4, entries(("start", "2024-08-10", {"from": ["plums"]})), 20).litres == 20


@given(st.floats(0.5, 500))
def test_there_and_back(volume: float) -> None:
    back = scaled(scaled(recipe(), volume), recipe().litres)
    assert [s.amount for s in back.steps] == pytest.approx([s.amount for s in recipe().steps])
    assert [s.day for s in back.steps] == [s.day for s in recipe().steps]


@given(st.floats(0.5, 500))
def test_amounts_for_a_litre_hold_at_any_volume(volume: float) -> None:
    for step in scaled(recipe(), volume).steps:
        if step.per_litre is not None:
            assert step.amount == pytest.approx(step.per_litre * volume)


@given(st.dates(date(2000, 1, 1), date(2100, 1, 1)))
def test_days_between_steps_are_kept(started: date) -> None:
    due = [date.fromisoformat(str(e.get("due"))) for e in plans(recipe(), 9, started, started)]
    assert due == [started + timedelta(s.day) for s in recipe().steps if s.kind != "start"]


def test_every_fault_with_advice_is_a_fault_and_no_word_says_two_things() -> None:
    words = [w for group in CHANGES.values() for w in group]
    assert set(FAULT_CHANGES) <= set(FAULTS.values())
    assert len(words) == len(set(words))
