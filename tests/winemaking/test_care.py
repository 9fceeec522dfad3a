"""What is due and what looks wrong, on invented batches. Each interval's source stands beside it in vocabulary/care.py;
here the rows say it again: where none is named, common practice, no source."""

from datetime import date, timedelta
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journalbot.journal.fold import fold
from journalbot.model import Entry
from journalbot.vocabulary.care import BANDS, MOST_RACKINGS, STUCK_DAYS
from journalbot.winemaking.care import Due, ahead, care, interval, plans_due
from journalbot.winemaking.record import Record, last_day, record_of
from journalbot.winemaking.worries import worries

Row = tuple[str, str, dict[str, Any]]
CARBOYS = {"carboy 1": 23.0, "carboy 2": 19.0, "oak barrel": 225.0, "little barrel": 20.0}


def entries(*rows: Row, batch: int | None = 1) -> list[Entry]:
    return [Entry(kind, batch, day, fields, note=n, place=(n, 0)) for n, (kind, day, fields) in enumerate(rows, 1)]


def record(today: str, *rows: Row) -> Record:
    found = entries(*rows)
    until = [e for e in found if e.date <= today[: len(e.date)]]
    batch = fold(1, until)
    batch.vessels = {held.name: held.date for held in batch.held.values()} if batch.under_way else {}
    return record_of(batch, until, date.fromisoformat(today), CARBOYS)


def reading(day: str, quantity: str, value: float, unit: str = "") -> Row:
    return ("reading", day, {"quantity": quantity, "value": value, "unit": unit})


def started(colour: str = "red", vessel: str = "bucket 1", day: str = "2025-09-01") -> Row:
    return ("start", day, {"colour": colour, "volume": 23, "unit": "L", "vessel": vessel})


RED: tuple[Row, ...] = (
    started(), ("crush", "2025-09-01", {}), reading("2025-09-01", "sg", 1.092), ("pitch", "2025-09-02", {}),
)  # fmt: skip
FERMENTING: tuple[Row, ...] = (
    *RED, ("fermentation", "2025-09-03", {"stage": "started"}), ("punch_down", "2025-09-06", {}),
)  # fmt: skip
DRY: tuple[Row, ...] = (
    *FERMENTING, ("press", "2025-09-10", {}), ("rack", "2025-09-10", {"to": "carboy 1"}),
    ("fermentation", "2025-09-20", {"stage": "finished"}), reading("2025-09-20", "sg", 0.994),
)  # fmt: skip
RACKED = (*DRY, ("rack", "2025-10-01", {"to": "carboy 1"}))
SULFITE = ("addition", "2025-10-01", {"material": "potassium metabisulfite", "amount": 2, "unit": "g"})
BOTTLED = (*RACKED, SULFITE, ("bottle", "2026-07-01", {"count": 28}))
WHITE: tuple[Row, ...] = (started("white"), ("pitch", "2025-09-02", {}), reading("2025-09-02", "sg", 1.085))
BARREL = (*DRY, ("rack", "2025-10-01", {"to": "oak barrel"}))
LITTLE = (*DRY, ("rack", "2025-10-01", {"to": "little barrel"}), ("oak", "2025-10-01", {"form": "barrel"}))
MALO = (*RACKED, ("malolactic", "2025-10-02", {"stage": "started"}))


def oak(form: str) -> tuple[Row, ...]:
    return (*RACKED, ("oak", "2025-10-05", {"form": form}))


def fined(material: str) -> tuple[Row, ...]:
    return (*RACKED, ("addition", "2025-10-05", {"material": material, "amount": 5, "unit": "g"}))


# key, entries, the day its clock starts, least and most days, whose they are.
CLOCKS = [
    ("punch down", FERMENTING, "2025-09-06", 1, 1, "USDA, Canning, Freezing, Storing Garden Produce: twice a day"),
    ("press red", RED, "2025-09-02", 5, 14, "common practice"),
    ("rack from primary", WHITE, "2025-09-02", 5, 14, "common practice"),
    ("rack gross lees", DRY, "2025-09-20", 7, 21, "common practice: one to three weeks after dryness"),
    ("rack again", RACKED, "2025-10-01", 42, 84, "common practice: every 6 to 12 weeks"),
    ("top up glass", RACKED, "2025-10-01", 30, 45, "common practice: look monthly"),
    ("top up barrel", BARREL, "2025-10-01", 30, 60, "Penn State Extension: about every other month"),
    ("top up small barrel", LITTLE, "2025-10-01", 7, 28, "common practice: every 1 to 4 weeks"),
    ("airlock", RACKED, "2025-10-01", 14, 28, "common practice"),
    ("check sulfite", (*RACKED, SULFITE), "2025-10-01", 28, 56, "common practice: every 4 to 8 weeks"),
    ("taste", (*RACKED, ("taste", "2025-10-02", {"words": ["cherry"]})), "2025-10-02", 30, 90, "common practice"),
    ("oak powder", oak("powder"), "2025-10-05", 3, 10, "common practice"),
    ("oak chips", oak("chips"), "2025-10-05", 7, 42, "common practice: 1 to 6 weeks"),
    ("oak cubes", oak("cubes"), "2025-10-05", 42, 84, "common practice: 6 to 12 weeks"),
    ("oak spiral", oak("spiral"), "2025-10-05", 28, 56, "common practice: 4 to 8 weeks"),
    ("oak staves", oak("staves"), "2025-10-05", 90, 270, "common practice: 3 to 9 months"),
    ("oak small barrel", LITTLE, "2025-10-01", 14, 56, "common practice: new, small, 2 to 8 weeks"),
    ("malolactic", MALO, "2025-10-02", 7, 14, "common practice: every 1 to 2 weeks"),
    ("settle bentonite", fined("bentonite"), "2025-10-05", 3, 10, "common practice"),
    ("settle isinglass", fined("isinglass"), "2025-10-05", 7, 14, "common practice: 1 to 2 weeks"),
    ("settle egg white", fined("egg white"), "2025-10-05", 7, 21, "common practice: 1 to 3 weeks"),
    ("chill", (*RACKED, ("chill", "2025-12-01", {})), "2025-12-01", 14, 28, "common practice: 2 to 4 weeks"),
    ("bottle red", RACKED, "2025-09-01", 270, 540, "common practice: 9 to 18 months"),
    ("drink red", BOTTLED, "2025-09-01", 365, 1825, "common practice: light to medium red, 1 to 5 years"),
]  # fmt: skip


def due(rec: Record, key: str) -> Due | None:
    return next((d for d in care(rec) if d.key == key), None)


@pytest.mark.parametrize(("key", "rows", "since", "low", "high", "source"), CLOCKS, ids=[c[0] for c in CLOCKS])
def test_due_from_the_least_day_and_overdue_after_the_most(
    key: str, rows: tuple[Row, ...], since: str, low: int, high: int, source: str
) -> None:
    def on(days: int) -> Due | None:
        return due(record((date.fromisoformat(since) + timedelta(days)).isoformat(), *rows), key)

    first, last, after = on(low), on(high), on(high + 1)
    assert on(low - 1) is None
    assert first is not None
    assert not first.overdue
    assert (first.days, first.usual) == (low, (low, high))
    assert last is not None
    assert not last.overdue
    assert after is not None
    assert after.overdue
    assert after.notes
    assert first.since == since


def test_the_reason_names_days_and_the_usual() -> None:
    found = due(record("2025-12-02", *RACKED), "rack again")
    assert found is not None
    assert found.reason == "62 days since the last racking; usual is 42 to 84"


def test_a_persons_own_interval_replaces_the_usual() -> None:
    rec = record("2025-10-21", *RACKED)
    assert due(rec, "rack again") is None
    assert [d.usual for d in care(rec, {"rack again": (10, 20)}) if d.key == "rack again"] == [(10, 20)]
    with pytest.raises(ValueError, match="'rack again' must be 0 or more, the least before the most, not 9 to 3"):
        interval("rack again", {"rack again": (9, 3)})


# What is not due, and why.
NOT_DUE = [
    ("press red", (*FERMENTING, reading("2025-09-12", "sg", 1.040)), "2025-09-12", "gravity is far from dry"),
    ("press red", DRY, "2025-09-25", "it was pressed"),
    ("punch down", (*FERMENTING, ("punch_down", "2025-09-09", {})), "2025-09-09", "done today"),
    ("rack gross lees", RACKED, "2025-10-30", "racked since it went dry"),
    ("rack again", (*RACKED, ("filter", "2025-11-01", {})), "2026-01-15", "filtered"),
    ("rack again", (*RACKED, ("stir", "2025-12-10", {})), "2025-12-20", "kept on its lees"),
    ("check sulfite", RACKED, "2026-03-01", "never given sulfite: that is a worry, not a round"),
    ("oak chips", (*oak("chips"), ("oak_out", "2025-10-20", {})), "2025-11-30", "taken out"),
    ("oak chips", (*oak("chips"), ("rack", "2025-10-20", {"to": "carboy 2"})), "2025-11-30", "racked off it"),
    ("settle bentonite", (started(), ("addition", "2025-09-01", {"material": "bentonite"}), *RACKED[3:]), "2025-10-20",
     "went out with the lees of the ferment"),
    ("malolactic", (*MALO, ("malolactic", "2025-11-01", {"stage": "finished"})), "2025-12-01", "finished"),
    ("drink red", BOTTLED, "2026-07-10", "resting in the bottle"),
]  # fmt: skip


@pytest.mark.parametrize(("key", "rows", "today", "why"), NOT_DUE)
def test_not_due(key: str, rows: tuple[Row, ...], today: str, why: str) -> None:
    assert due(record(today, *rows), key) is None


def test_press_by_gravity() -> None:
    """At 1.010 or less; most sweetness gone (USDA), the number common practice."""
    found = due(record("2025-09-08", *FERMENTING, reading("2025-09-08", "sg", 1.008)), "press red")
    assert found is not None
    assert "gravity 1.008" in found.reason


def test_malic_read_low_ends_the_malolactic() -> None:
    found = due(record("2025-11-02", *MALO, reading("2025-11-02", "malic", 0.2, "g/L")), "malolactic")
    assert found is not None
    assert found.what == "end the malolactic"


def test_a_cold_check_before_a_planned_bottling() -> None:
    plan = ("plan", "2026-05-01", {"what": "bottle", "due": "2026-06-01"})
    assert due(record("2026-05-20", *RACKED, plan), "cold check")
    assert due(record("2026-05-20", *RACKED, ("chill", "2026-01-05", {}), plan), "cold check") is None


# ---- plans

# plan (what, due), what was done (kind, day, fields), today, reported: None, "due" or "overdue".
PLANS = [
    (("rack", "2025-11-20"), None, "2025-11-19", None),
    (("rack", "2025-11-20"), None, "2025-11-20", "due"),
    (("rack", "2025-11-20"), None, "2025-11-23", "overdue"),
    (("rack", "2025-11-20"), ("rack", "2025-11-21", {}), "2025-11-23", None),
    (("rack", "2025-11-20"), ("rack", "2025-11-14", {}), "2025-11-23", None),
    (("rack", "2025-11-20"), ("rack", "2025-11-04", {}), "2025-11-23", "overdue"),
    (("rack", "2025-11-20"), ("top_up", "2025-11-20", {}), "2025-11-23", "overdue"),
    (("bottle", "2025-12"), None, "2025-12-05", "due"),
    (("bottle", "2025-12"), None, "2026-01-01", "overdue"),
    (("rack and add k-meta", "2025-11-20"), ("rack", "2025-11-20", {}), "2025-11-23", "overdue"),
    (("add bentonite", "2025-11-20"), ("addition", "2025-11-20", {"material": "bentonite"}), "2025-11-23", None),
    (("add bentonite", "2025-11-20"), ("addition", "2025-11-20", {"material": "gelatin"}), "2025-11-23", "overdue"),
    (("rack", "2025-11-20"), ("plan", "2025-11-18", {"what": "racking", "due": "2025-12-20"}), "2025-11-23", None),
    (("rack", "2025-11-20"), ("bottle", "2025-11-10", {"count": 20}), "2025-11-23", None),
    (("rack", "2025-11-20"), ("end", "2025-11-10", {}), "2025-11-23", None),
    (("ring the farm", "2025-11-20"), ("rack", "2025-11-20", {}), "2025-11-23", "overdue"),
]


@pytest.mark.parametrize(("plan", "done", "today", "reported"), PLANS)
def test_plans(plan: tuple[str, str], done: Row | None, today: str, reported: str | None) -> None:
    rows = [*RACKED, ("plan", "2025-11-01", {"what": plan[0], "due": plan[1]}), *([done] if done else [])]
    found = [d for d in care(record(today, *rows)) if d.key == "plan" and d.what == plan[0]]
    assert [("overdue" if d.overdue else "due") for d in found] == ([reported] if reported else [])


def test_what_was_done_before_the_plan_does_not_keep_it() -> None:
    plan: Row = ("plan", "2025-11-05", {"what": "rack", "due": "2025-11-08"})
    rows = (*RACKED, ("rack", "2025-11-05", {}), plan)
    assert [d.what for d in care(record("2025-11-09", *rows)) if d.key == "plan"] == ["rack"]


@pytest.mark.parametrize("when", ["soon", "2025-13-01", "2025-02-30", "20251101", 7, None, ""])
def test_a_plan_without_a_day_of_the_calendar_is_never_due(when: object) -> None:
    plan: Row = ("plan", "2025-11-01", {"what": "bottle", "due": when})
    rec = record("2026-01-05", *RACKED, plan)
    assert [d for d in care(rec) if d.key == "plan"] == []
    assert "sugar at bottling" not in {w.what for w in worries(rec)}


def test_a_plan_of_no_batch_is_kept_by_the_purchase() -> None:
    plan = ("plan", "2025-12-15", {"what": "order corks", "due": "2026-01-04"})
    bought = ("purchase", "2026-01-05", {"item": "natural corks", "price": 20})
    labels = ("purchase", "2026-01-05", {"item": "labels", "price": 20})
    today = date(2026, 1, 6)
    assert plans_due(entries(plan, bought, batch=None), today) == []
    assert [d.batch for d in plans_due(entries(plan, labels, batch=None), today)] == [None]


# ---- worries

PITCHED: tuple[Row, ...] = (
    started("white", "carboy 1"),
    reading("2025-09-01", "sg", 1.090),
    ("pitch", "2025-09-02", {}),
)
GOING = (*PITCHED, ("fermentation", "2025-09-03", {"stage": "started"}))
STILL = (*GOING, reading("2025-09-25", "sg", 0.993),
         ("rack", "2025-09-28", {"to": "carboy 1", "volume": 23, "unit": "L"}),
         SULFITE)  # fmt: skip

# what, entries, today. Thresholds: common practice or this program's, as vocabulary/care.py says.
WRONG = [
    ("no start", PITCHED, "2025-09-05"),
    ("no start", (*PITCHED, reading("2025-09-05", "sg", 1.089)), "2025-09-05"),
    ("sluggish", (*GOING, reading("2025-09-10", "sg", 1.050), reading("2025-09-14", "sg", 1.042)), "2025-09-14"),
    ("stuck", (*GOING, reading("2025-09-10", "sg", 1.030), reading("2025-09-13", "sg", 1.030)), "2025-09-13"),
    ("stuck", (*GOING, ("fermentation", "2025-09-12", {"stage": "stuck"})), "2025-09-12"),
    ("too warm", (*GOING, reading("2025-09-06", "temperature", 75, "F")), "2025-09-06"),
    ("too cold", (*GOING, reading("2025-09-06", "temperature", 6, "C")), "2025-09-06"),
    ("gravity rising", (*GOING, reading("2025-09-08", "sg", 1.040), reading("2025-09-09", "sg", 1.046)), "2025-09-09"),
    ("head space", (*STILL, reading("2025-10-10", "volume", 19, "L")), "2025-10-10"),
    ("airlock", STILL, "2025-12-10"),
    ("sulfite low", (*STILL, reading("2025-10-20", "free_so2", 8, "mg/L")), "2025-10-20"),
    ("sulfite never measured", STILL[:-1], "2025-12-10"),
    ("volatile acidity", (*STILL, ("remark", "2025-10-20", {"text": "smells of vinegar, I think"})), "2025-10-20"),
    ("hydrogen sulfide", (*GOING, ("remark", "2025-09-06", {"text": "a bit of rotten egg"})), "2025-09-06"),
    ("oxidation", (*STILL, ("taste", "2025-10-20", {"words": ["sherry", "nutty"]})), "2025-10-21"),
    ("sugar at bottling", (*GOING, reading("2025-10-20", "sg", 1.006),
        ("plan", "2025-10-21", {"what": "bottle", "due": "2025-11-01"})), "2025-10-25"),
    ("bottled with sugar", (*GOING, reading("2025-10-20", "sg", 1.006), ("bottle", "2025-11-01", {"count": 20})),
     "2025-11-10"),
    ("bottled with sugar", (*STILL, ("addition", "2025-11-01", {"material": "honey", "amount": 300, "unit": "g"}),
        ("bottle", "2025-11-20", {"count": 20})), "2025-11-21"),
]  # fmt: skip

FINE = [
    ("no start", (*GOING,), "2025-09-08"),
    ("no start", PITCHED, "2025-09-04"),
    ("sluggish", (*GOING, reading("2025-09-10", "sg", 1.050), reading("2025-09-12", "sg", 1.040)), "2025-09-12"),
    ("stuck", (*GOING, reading("2025-09-20", "sg", 0.993), reading("2025-09-25", "sg", 0.993)), "2025-09-25"),
    ("too warm", (*GOING, reading("2025-09-06", "temperature", 64, "F")), "2025-09-06"),
    ("gravity rising", (*GOING, reading("2025-09-08", "sg", 1.040), ("addition", "2025-09-08", {"material": "sugar"}),
        reading("2025-09-09", "sg", 1.046)), "2025-09-09"),
    ("head space", STILL, "2025-10-10"),
    ("airlock", (*STILL, ("taste", "2025-12-01", {"words": ["pear"]})), "2025-12-10"),
    ("sulfite low", (*STILL, reading("2025-10-20", "free_so2", 8, "mg/L"),
        ("addition", "2025-10-21", {"material": "campden tablet", "amount": 2, "unit": "tablet"})), "2025-10-25"),
    ("volatile acidity", (*STILL, ("remark", "2025-10-20", {"text": "no vinegar smell at all"})), "2025-10-20"),
    ("hydrogen sulfide", (*STILL, ("remark", "2025-10-20", {"text": "fined with two egg whites"})), "2025-10-20"),
    ("hydrogen sulfide", (*STILL, ("remark", "2025-10-20", {"text": "the rotten egg smell has gone"})), "2025-10-20"),
    ("oxidation", (*STILL, ("taste", "2025-10-20", {"words": ["sherry"]}),
        ("taste", "2025-11-05", {"words": ["apple"]})), "2025-11-06"),
    ("brettanomyces", (*STILL, ("remark", "2025-10-20", {"text": "gravity stable for weeks"})), "2025-10-20"),
    ("sugar at bottling", (*STILL, ("plan", "2025-11-21", {"what": "bottle", "due": "2025-12-01"})), "2025-11-25"),
    ("bottled with sugar", (*STILL, ("bottle", "2025-11-20", {"count": 20})), "2025-11-21"),
    ("bottled with sugar", (*STILL, ("addition", "2025-11-01", {"material": "honey"}),
        ("addition", "2025-11-01", {"material": "potassium sorbate"}), ("bottle", "2025-11-20", {"count": 20})),
     "2025-11-21"),
]  # fmt: skip


@pytest.mark.parametrize(("what", "rows", "today"), WRONG)
def test_what_looks_wrong(what: str, rows: tuple[Row, ...], today: str) -> None:
    found = [w for w in worries(record(today, *rows)) if w.what == what]
    assert len(found) == 1
    assert found[0].reason
    assert found[0].first_step
    assert found[0].notes


@pytest.mark.parametrize(("what", "rows", "today"), FINE)
def test_what_is_no_worry(what: str, rows: tuple[Row, ...], today: str) -> None:
    assert what not in {w.what for w in worries(record(today, *rows))}


def test_free_sulfite_is_judged_by_ph() -> None:
    """25 mg/L: 0.94 mg/L molecular at pH 3.2 and 0.25 at pH 3.8 (pK 1.81): computed by the usual relation."""
    rows = (*STILL, reading("2025-10-20", "free_so2", 25, "mg/L"))
    assert 25 / (1 + 10 ** (3.8 - 1.81)) < 0.5 < 25 / (1 + 10 ** (3.2 - 1.81))
    by_ph = {
        ph: {w.what for w in worries(record("2025-10-21", *rows, reading("2025-10-20", "ph", ph)))} for ph in (3.2, 3.8)
    }
    assert "sulfite low" not in by_ph[3.2]
    assert "sulfite low" in by_ph[3.8]


# ---- what always holds

KINDS = ("rack", "top_up", "taste", "press", "airlock", "punch_down", "chill", "oak", "stir", "filter", "malolactic",
         "fermentation", "remark", "bottle", "crush", "plan")  # fmt: skip
ROWS = st.lists(st.tuples(st.sampled_from(KINDS), st.integers(0, 700)), max_size=12)


def story(steps: list[tuple[str, int]]) -> list[Row]:
    first = date(2024, 9, 1)
    fields: dict[str, dict[str, Any]] = {
        "plan": {"what": "rack", "due": "2024-11-01"}, "bottle": {"count": 10}, "oak": {"form": "chips"},
        "malolactic": {"stage": "started"}, "fermentation": {"stage": "started"}, "remark": {"text": "eggy"},
        "taste": {"words": ["vinegar"]}, "rack": {"to": "carboy 1"}}  # fmt: skip
    ordered = sorted(steps, key=lambda step: step[1])
    return [(kind, (first + timedelta(day)).isoformat(), fields.get(kind, {})) for kind, day in ordered]


@given(ROWS, st.integers(0, 900))
def test_nothing_is_due_for_a_batch_that_ended(steps: list[tuple[str, int]], day: int) -> None:
    today = (date(2026, 9, 1) + timedelta(day)).isoformat()
    rows = [*WHITE, *story(steps), ("end", "2026-08-30", {"reason": "vinegar"})]
    assert care(record(today, *rows)) == []
    assert worries(record(today, *rows)) == []


@given(ROWS, st.integers(0, 900))
def test_due_is_never_early_and_overdue_never_within_the_usual(steps: list[tuple[str, int]], day: int) -> None:
    today = date(2024, 9, 1) + timedelta(day)
    for found in care(record(today.isoformat(), started("red", day="2024-09-01"), *story(steps))):
        assert last_day(found.since) <= today or found.key == "plan"
        if found.usual and not found.reason.startswith(("gravity", "malic", "bottling")):
            assert found.days >= found.usual[0]
            assert found.overdue == (found.days > found.usual[1])


# ---- the practice ranges that care goes by


@pytest.mark.parametrize(
    ("row", "colour", "limit", "holds"),
    [
        # Ough and Amerine, University of California Bulletin 827 (1966): sluggish over 85 °F, very slow under 50 °F,
        # reds over 65 °F.
        ("11.10", "red", (85 - 32) / 1.8, "high under"),
        ("11.10", "red", (65 - 32) / 1.8, "low over"),
        ("11.10", "white", (50 - 32) / 1.8, "low over"),
        # Grainger and Tattersall, Wine Production: reds begin about 20 °C, may rise to 30 to 32; yeast stops about 35.
        ("11.11", "red", 20, "low over"),
        ("11.11", "red", 32, "high under"),
        ("11.11", "red", 35, "high under"),
        # Usual bands: common practice, no source.
        ("11.12", "white", 18, "high under"),
        ("11.12", "red", 29, "high under"),
    ],
)
def test_bands_keep_within_what_is_published(row: str, colour: str, limit: float, holds: str) -> None:
    low, high, _ = BANDS[colour]
    assert low >= limit - 0.1 if holds == "low over" else high <= limit + 0.1


def test_stuck_and_racking_by_common_practice() -> None:
    """11.17: the same gravity for 48 to 72 hours above dry; 11.18: every 6 to 12 weeks, 2 to 4 in all. Both common
    practice, no source."""
    assert 2 <= STUCK_DAYS <= 3
    assert interval("rack again", {}) == (6 * 7, 12 * 7)
    assert MOST_RACKINGS == 4


def test_what_is_ahead_is_told_with_its_days() -> None:
    racked = record("2025-11-20", *DRY, ("rack", "2025-10-01", {"to": "carboy 1"}))
    found = ahead(racked, "rack", {"rack again": (60, 60)})
    assert [(d.key, d.since, d.usual, d.own) for d in found] == [("rack again", "2025-10-01", (60, 60), True)]
