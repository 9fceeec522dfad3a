"""Purchases shared out to batches, on invented batches and prices."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journalbot.model import Entry
from journalbot.winemaking.cost import costs, part_of, savings, spent_by_year

Row = tuple[int | None, str, str, dict[str, Any]]


def entries(*rows: Row) -> list[Entry]:
    return [
        Entry(kind, batch, day, fields, note=n, place=(n, 0)) for n, (batch, kind, day, fields) in enumerate(rows, 1)
    ]


def bought(day: str, item: str, price: float, count: float | None = None, batch: int | None = None, **more: Any) -> Row:
    return (batch, "purchase", day, {"item": item, "price": price, **({"count": count} if count else {}), **more})


def start(batch: int, day: str, *made_from: str) -> Row:
    return (batch, "start", day, {"from": list(made_from), "volume": 23, "unit": "L"})


def bottled(batch: int, day: str, count: int, closure: str = "natural cork", size: float = 750) -> Row:
    return (batch, "bottle", day, {"count": count, "size": size, "unit": "ml", "closure": closure})


@pytest.mark.parametrize(
    ("item", "part"),
    [
        ("zin grapes", "base"), ("merlot juice pail", "base"), ("kit", "base"), ("honey", "base"), ("malbec", "base"),
        ("juice press", "lasting"), ("carboy", "lasting"), ("floor corker", "lasting"), ("starter kit", "lasting"),
        ("natural corks", "piece"), ("empty bottles", "piece"), ("screw caps", "piece"), ("labels", "piece"),
        ("wine yeast", "stuff"), ("potassium metabisulfite", "stuff"), ("tartaric acid", "stuff"),
        ("something odd", "lasting"),
    ],
)  # fmt: skip
def test_what_a_purchase_is(item: str, part: str) -> None:
    assert part_of(item) == part


def test_a_batch_named_bears_it_whole_and_a_base_finds_its_batch() -> None:
    found = costs(entries(
        bought("2025-09-01", "merlot juice", 90), start(1, "2025-09-02", "merlot juice"),
        bought("2025-09-05", "oak cubes", 6, batch=1), start(2, "2025-09-06", "plums"),
        bottled(1, "2026-06-01", 24)))  # fmt: skip
    one = found.batches[1]
    assert one.totals == {"USD": 96}
    assert one.per_bottle == pytest.approx(4.0)
    assert one.notes == (1, 3)
    assert found.batches[2].missing == ("what it was made from",)


def test_what_fits_two_batches_is_shared_to_neither_and_said() -> None:
    found = costs(entries(
        bought("2025-09-01", "merlot juice", 90), start(1, "2025-09-02", "merlot juice"),
        start(2, "2025-09-03", "merlot juice")))  # fmt: skip
    assert [u.why for u in found.unshared] == ["fits batches 1, 2"]
    assert found.batches[1].totals == {}


def test_corks_and_bottles_go_by_bottle_first_bought_first_used() -> None:
    found = costs(entries(
        bought("2025-01-01", "corks", 10, 20), bought("2025-02-01", "corks", 30, 30),
        bought("2025-02-01", "empty bottles", 24, 24),
        start(1, "2024-09-01", "pears"), bottled(1, "2025-03-01", 25),
        bottled(1, "2025-03-01", 3, "screw caps")))  # fmt: skip
    one = found.batches[1]
    # 20 corks at 0.50 and 5 at 1.00; 24 bottles at 1.00. Reckoned by hand.
    assert one.totals["USD"] == pytest.approx(20 * 0.5 + 5 * 1.0 + 24 * 1.0)
    assert one.missing == ("what it was made from", "bottles for 1 of 25", "bottles", "caps")
    assert [(u.item, u.why) for u in found.unshared] == [("corks", "not used yet")]
    assert found.unshared[0].amount == pytest.approx(25.0)


def test_what_was_bought_after_the_bottling_was_not_used_for_it() -> None:
    found = costs(
        entries(start(1, "2024-09-01", "pears"), bottled(1, "2025-03-01", 10), bought("2025-04-01", "corks", 10, 20))
    )
    assert found.batches[1].totals == {}
    assert "corks" in found.batches[1].missing


def test_chemicals_by_what_was_used_of_them_and_yeast_by_packet() -> None:
    found = costs(entries(
        bought("2025-01-01", "tartaric acid", 10, 500, unit="g"),
        bought("2025-01-01", "wine yeast", 8, 4, unit="packet"),
        bought("2025-01-01", "yeast, nutrient and enzymes", 46),
        start(1, "2025-09-01", "pears"),
        (1, "addition", "2025-09-01", {"material": "tartaric acid", "amount": 25, "unit": "g"}),
        (1, "pitch", "2025-09-01", {"yeast": "Q-9", "amount": 1, "unit": "packet"})))  # fmt: skip
    assert {s.item: pytest.approx(s.amount) for s in found.batches[1].shares} == {
        "tartaric acid": 0.5,
        "wine yeast": 2.0,
    }
    why = {u.item: u.why for u in found.unshared}
    assert why["yeast, nutrient and enzymes"] == "how much was bought or used is not known by weight or packet"


def test_what_was_bought_for_the_batch_is_not_charged_again_from_stock() -> None:
    found = costs(entries(bought("2025-01-01", "corks", 10, 100), start(1, "2025-02-01", "pears"),
                          bought("2025-03-01", "corks", 8, 20, batch=1), bottled(1, "2025-06-01", 20)))  # fmt: skip
    assert found.batches[1].totals == {"USD": 8}


def test_equipment_is_in_no_bottle_but_in_its_year() -> None:
    rows = entries(bought("2024-12-01", "carboy", 40), bought("2025-01-01", "corks", 12, 100),
                   start(1, "2025-01-02", "pears"),
                   bought("2025-03-01", "corks", 5, 10, currency="EUR"))  # fmt: skip
    assert next(u.why for u in costs(rows).unshared) == "serves for years"
    assert spent_by_year(rows) == {"2024": {"USD": 40}, "2025": {"USD": 12, "EUR": 5}}


def test_two_currencies_are_never_added_up() -> None:
    found = costs(
        entries(
            start(1, "2025-09-01", "pears"),
            bought("2025-09-01", "pears", 20, batch=1),
            bought("2025-09-02", "sugar", 3, batch=1, currency="EUR"),
            bottled(1, "2026-01-01", 10),
        )
    )
    one = found.batches[1]
    assert one.totals == {"USD": 20, "EUR": 3}
    assert one.per_bottle is None
    assert savings(one, 9.0) is None


def test_savings_count_wine_in_bottles_of_75_cl() -> None:
    """20 of 750 ml and 4 of 375 ml are 22 bottles of wine: at 9.00 each, 198 less the 44 that they cost."""
    found = costs(
        entries(
            start(1, "2025-09-01", "pears"),
            bought("2025-09-01", "pears", 44, batch=1),
            bottled(1, "2026-01-01", 20),
            bottled(1, "2026-01-01", 4, size=375),
        )
    )
    one = found.batches[1]
    assert (one.bottles, one.full) == (24, 22.0)
    assert savings(one, 9.0) == pytest.approx(154.0)
    with pytest.raises(ValueError, match="0 or more"):
        savings(one, -1)


def test_a_blend_brings_costs_that_are_not_in_the_sum() -> None:
    found = costs(
        entries(
            start(1, "2025-09-01", "pears"),
            bought("2025-09-01", "pears", 44, batch=1),
            (1, "blend", "2025-12-01", {"with": [{"batch": 4, "amount": 1, "unit": "gal"}]}),
        )
    )
    assert found.batches[1].missing == ("wine of batch 4 blended in",)


PURCHASES = st.lists(st.tuples(
    st.sampled_from(["corks", "empty bottles", "sugar", "wine yeast", "carboy", "pears", "plums", "screw caps"]),
    st.integers(0, 300), st.integers(1, 500), st.none() | st.integers(1, 200),
    st.none() | st.sampled_from([1, 2])), max_size=10)  # fmt: skip
BOTTLINGS = st.lists(
    st.tuples(st.sampled_from([1, 2]), st.integers(1, 40), st.sampled_from(["corks", "screw caps"])), max_size=4
)


@given(PURCHASES, BOTTLINGS)
def test_nothing_paid_is_lost_or_made_up(
    purchases: list[tuple[str, int, int, int | None, int | None]], bottlings: list[tuple[int, int, str]]
) -> None:
    rows = [
        bought(f"2025-{1 + day // 28 % 12:02}-{1 + day % 28:02}", item, price, count, batch)
        for item, day, price, count, batch in purchases
    ]
    rows += [
        start(1, "2025-05-01", "pears"),
        start(2, "2025-06-01", "plums"),
        *(bottled(batch, "2025-11-01", count, closure) for batch, count, closure in bottlings),
        (1, "addition", "2025-07-01", {"material": "sugar", "amount": 3, "unit": "kg"}),
    ]
    found = costs(entries(*rows))
    shared = sum(b.totals.get("USD", 0) for b in found.batches.values())
    assert shared + sum(u.amount for u in found.unshared) == pytest.approx(sum(p[2] for p in purchases), abs=0.1)
    assert all(s.amount >= 0 for b in found.batches.values() for s in b.shares)
