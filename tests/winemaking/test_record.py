"""The state of a batch, and what speaks against bottling it, on invented batches."""

from datetime import date
from typing import Any

import pytest

from journalbot.journal.fold import fold
from journalbot.model import Entry
from journalbot.winemaking.bottling import bottling_risk
from journalbot.winemaking.care import care
from journalbot.winemaking.record import Record, last_day, record_of, sort_of
from journalbot.winemaking.worries import worries

Row = tuple[str, str, dict[str, Any]]


def record(today: str, *rows: Row) -> Record:
    found = [Entry(kind, 1, day, fields, note=n, place=(n, 0)) for n, (kind, day, fields) in enumerate(rows, 1)]
    return record_of(fold(1, found), found, date.fromisoformat(today))


def sg(day: str, value: float) -> Row:
    return ("reading", day, {"quantity": "sg", "value": value, "unit": "SG"})


def said(day: str, stage: str) -> Row:
    return ("fermentation", day, {"stage": stage})


def added(day: str, material: str) -> Row:
    return ("addition", day, {"material": material})


START: Row = ("start", "2025-09-01", {"from": ["pears"], "volume": 20, "unit": "L"})
GOING: tuple[Row, ...] = (START, sg("2025-09-01", 1.085), ("pitch", "2025-09-01", {}), said("2025-09-02", "started"))
DRY = (*GOING, sg("2025-09-20", 0.994))

# entries, the day, its phase.
PHASES = [
    ((START,), "2025-09-03", "must"),
    ((START,), "2025-11-03", "resting"),
    (GOING, "2025-09-10", "fermenting"),
    (DRY, "2025-09-21", "resting"),
    ((*GOING, said("2025-09-20", "finished")), "2025-09-21", "resting"),
    ((*DRY, said("2025-09-25", "restarted")), "2025-09-26", "fermenting"),
    ((*DRY, said("2025-09-25", "restarted"), sg("2025-10-01", 0.993)), "2025-10-02", "resting"),
    (GOING, "2025-12-01", "resting"),
    ((*GOING, sg("2025-11-25", 1.030)), "2025-12-01", "fermenting"),
    ((*DRY, ("bottle", "2026-03-01", {"count": 2})), "2026-03-02", "bottled"),
    ((*DRY, ("bottle", "2026-03-01", {"count": 2}), ("drink", "2026-04-01", {"count": 2})), "2026-04-02", "over"),
    ((*DRY, ("end", "2026-03-01", {})), "2026-03-02", "over"),
]  # fmt: skip

# entries, what speaks against bottling; None where nothing on record does. Steady for weeks and at 0.998 or less, and
# 2 g/L of sugar: common practice, no source.
RISKS = [
    (DRY, None),
    ((*GOING, sg("2025-09-14", 1.000), sg("2025-09-19", 0.996)), "gravity fell 0.004"),
    ((*GOING, sg("2025-09-20", 1.010)), "gravity 1.010 reads as sugar left"),
    ((*GOING, said("2025-09-20", "finished"), sg("2025-09-20", 1.010)), "gravity 1.010 reads as sugar left"),
    ((*DRY, ("malolactic", "2025-09-22", {"stage": "started"})), "malolactic started"),
    ((*DRY, ("malolactic", "2025-09-22", {"stage": "started"}), ("malolactic", "2025-10-05", {"stage": "finished"})),
     None),
    ((*DRY, added("2025-10-01", "sugar")), "sweetened with sugar"),
    ((*DRY, added("2025-10-01", "sugar"), added("2025-10-01", "potassium sorbate")), "sweetened with sugar"),
    ((*DRY, added("2025-10-01", "sugar"), added("2025-10-01", "potassium sorbate"),
      added("2025-10-01", "campden tablet")), None),
    ((*DRY, ("reading", "2025-10-01", {"quantity": "residual_sugar", "value": 6, "unit": "g/L"})),
     "residual sugar 6 g/L"),
    (GOING, "no gravity read since fermentation began"),
    ((*GOING, said("2025-09-20", "finished")), None),
]  # fmt: skip


@pytest.mark.parametrize(("rows", "today", "phase"), PHASES)
def test_phase(rows: tuple[Row, ...], today: str, phase: str) -> None:
    assert record(today, *rows).phase == phase


@pytest.mark.parametrize(("rows", "reason"), RISKS)
def test_what_speaks_against_bottling(rows: tuple[Row, ...], reason: str | None) -> None:
    found = bottling_risk(record("2025-10-10", *rows))
    if reason is None:
        assert found is None
    else:
        assert found is not None
        assert found.reason.startswith(reason)


@pytest.mark.parametrize(
    ("iso", "day"),
    [("2024", date(2024, 12, 31)), ("2024-02", date(2024, 2, 29)), ("2024-02-03", date(2024, 2, 3))],
)
def test_last_day(iso: str, day: date) -> None:
    assert last_day(iso) == day


@pytest.mark.parametrize(
    ("vessel", "sort"),
    [("carboy 2", "glass"), ("DJ 5", "glass"), ("oak barrel", "wood"), ("white bucket", "open"), ("keg 1", "other")],
)
def test_sort_of_vessel(vessel: str, sort: str) -> None:
    assert sort_of(vessel) == sort


@pytest.mark.parametrize(
    ("made_from", "colour"),
    [(["zinfandel grapes"], "red"), (["riesling juice"], "white"), (["plums"], "fruit"), (["x"], None)],
)  # fmt: skip
def test_colour_from_what_it_was_made_of(made_from: list[str], colour: str | None) -> None:
    assert record("2025-09-02", ("start", "2025-09-01", {"from": made_from})).colour == colour


def test_of_an_act_that_was_planned_the_plan_counts() -> None:
    racked = (*DRY, ("rack", "2025-09-25", {"to": "carboy 1"}))
    plan: Row = ("plan", "2025-09-25", {"what": "rack", "due": "2025-11-20"})
    assert "rack again" in {d.key for d in care(record("2025-11-20", *racked))}
    assert {d.key for d in care(record("2025-11-20", *racked, plan)) if d.what == "rack"} == {"plan"}


def test_a_fault_noted_twice_is_one_worry() -> None:
    remarks = [("remark", day, {"text": "smells of rotten egg"}) for day in ("2025-10-01", "2025-10-03")]
    found = [w for w in worries(record("2025-10-04", *DRY, *remarks)) if w.what == "hydrogen sulfide"]
    assert [w.notes for w in found] == [(7,)]
