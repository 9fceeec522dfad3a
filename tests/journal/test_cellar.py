"""What entries come to: a few entries and the facts that follow. Rules of the trade: common practice, no source."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journalbot.journal.cellar import Cellar
from journalbot.journal.fold import fold
from journalbot.model import Entry

GAL = 3.785411784  # litres: 231 cubic inches, NIST Handbook 44, Appendix C


def entries(*rows: tuple[str, int | None, str, dict[str, Any]], notes: list[int] | None = None) -> list[Entry]:
    """Entries in the order of their notes, one note each unless told."""
    return [
        Entry(kind, batch, date, fields, note=note, id=i, place=(note, i))
        for i, ((kind, batch, date, fields), note) in enumerate(zip(rows, notes or range(1, 99), strict=False), 1)
    ]


START = ("start", 1, "2024-09-01", {"volume": 6, "unit": "gal", "vessel": "bucket 1", "from": ["merlot juice"]})
START_2 = ("start", 2, "2024-09-02", {"vessel": "bucket 2"})

WHERE: list[tuple[str, list[Entry], dict[int, dict[str, str]]]] = [
    ("a start", entries(START), {1: {"bucket 1": "2024-09-01"}}),
    (
        "a racking moves it",
        entries(START, ("rack", 1, "2024-09-20", {"to": "carboy 1"})),
        {1: {"carboy 1": "2024-09-20"}},
    ),
    ("racked without a word where to", entries(START, ("rack", 1, "2024-09-20", {})), {1: {"bucket 1": "2024-09-01"}}),
    ("racked out of it, no word where to", entries(START, ("rack", 1, "2024-09-20", {"from": "bucket 1"})), {1: {}}),
    (
        "back into the same after a wash",
        entries(START, ("rack", 1, "2024-09-20", {"from": "bucket 1", "to": "bucket 1"})),
        {1: {"bucket 1": "2024-09-20"}},
    ),
    (
        "split by one entry",
        entries(START, ("rack", 1, "2024-09-20", {"to": "carboys 1 and 2"})),
        {1: {"carboy 1": "2024-09-20", "carboy 2": "2024-09-20"}},
    ),
    (
        "split by two entries of a note",
        entries(
            START,
            ("rack", 1, "2024-09-20", {"to": "carboy 1", "volume": 5, "unit": "gal"}),
            ("rack", 1, "2024-09-20", {"to": "jug", "volume": 1, "unit": "gal"}),
            notes=[1, 2, 2],
        ),
        {1: {"carboy 1": "2024-09-20", "jug": "2024-09-20"}},
    ),
    (
        "one of two vessels is racked on",
        entries(
            START,
            ("rack", 1, "2024-09-20", {"to": "carboy 1 and jug"}),
            ("rack", 1, "2024-10-20", {"from": "carboy 1", "to": "carboy 2"}),
        ),
        {1: {"jug": "2024-09-20", "carboy 2": "2024-10-20"}},
    ),
    (
        "a small part is racked off",
        entries(START, ("rack", 1, "2024-09-20", {"from": "bucket 1", "to": "jug", "volume": 1, "unit": "gal"})),
        {1: {"bucket 1": "2024-09-01", "jug": "2024-09-20"}},
    ),
    (
        "from a vessel that was never noted",
        entries(START, ("rack", 1, "2024-10-20", {"from": "carboy 7", "to": "carboy 8"})),
        {1: {"carboy 8": "2024-10-20"}},
    ),
    (
        "the vessel is given to another batch",
        entries(START, ("start", 2, "2024-10-01", {"vessel": "the bucket #1"})),
        {1: {}, 2: {"bucket 1": "2024-10-01"}},
    ),
    (
        "two racked into one by the same note",
        entries(
            START,
            START_2,
            ("rack", 1, "2024-10-01", {"to": "tank"}),
            ("rack", 2, "2024-10-01", {"to": "tank"}),
            notes=[1, 2, 3, 3],
        ),
        {1: {"tank": "2024-10-01"}, 2: {"tank": "2024-10-01"}},
    ),
    ("bottled", entries(START, ("bottle", 1, "2025-03-01", {"count": 28})), {1: {}}),
    (
        "bottled in part, the rest measured",
        entries(
            START,
            ("bottle", 1, "2025-03-01", {"count": 10}),
            ("reading", 1, "2025-03-01", {"quantity": "volume", "value": 3, "unit": "gal"}),
        ),
        {1: {"bucket 1": "2024-09-01"}},
    ),
    (
        "bottled in part, the rest racked",
        entries(START, ("bottle", 1, "2025-03-01", {"count": 10}), ("rack", 1, "2025-03-02", {"to": "jug"})),
        {1: {"jug": "2025-03-02"}},
    ),
    (
        "bottled by way of the bottling bucket",
        entries(
            START, ("bottle", 1, "2025-03-01", {"count": 28}), ("rack", 1, "2025-03-01", {"to": "bottling bucket"})
        ),
        {1: {}},
    ),
    ("dumped", entries(START, ("end", 1, "2025-01-01", {"reason": "vinegar"})), {1: {}}),
    (
        "a shorter name of the vessel",
        entries(
            ("vessel", None, "2024-08-01", {"name": "big blue bin", "capacity": 20, "unit": "gal"}),
            ("start", 1, "2024-09-01", {"vessel": "blue bin"}),
        ),
        {1: {"big blue bin": "2024-09-01"}},
    ),
    (
        "a shorter name that fits two",
        entries(
            ("vessel", None, "2024-08-01", {"name": "big blue bin"}),
            ("vessel", None, "2024-08-01", {"name": "old blue bin"}),
            ("start", 1, "2024-09-01", {"vessel": "blue bin"}),
        ),
        {1: {"blue bin": "2024-09-01"}},
    ),
]


@pytest.mark.parametrize(("said", "given_entries", "vessels"), WHERE, ids=[row[0] for row in WHERE])
def test_where_the_wine_is(said: str, given_entries: list[Entry], vessels: dict[int, dict[str, str]]) -> None:
    cellar = Cellar.of(given_entries)
    assert {n: b.vessels for n, b in cellar.batches.items()} == vessels
    for number, inside in vessels.items():
        for vessel in inside:
            assert number in [b.number for b in cellar.in_vessel(vessel)]


FACTS: list[tuple[str, list[Entry], dict[str, Any]]] = [
    (
        "a start",
        entries(START),
        {"volume": 6 * GAL, "fruit": ("merlot juice",), "vintage": None, "year": 2024, "under_way": True},
    ),
    ("a vintage given", entries(("start", 1, "2024-01-05", {"vintage": 2023})), {"vintage": 2023, "year": 2023}),
    (
        "the latest gravity by date",
        entries(
            START,
            ("reading", 1, "2024-09-20", {"quantity": "sg", "value": 0.998, "unit": "SG"}),
            ("reading", 1, "2024-09-10", {"quantity": "sg", "value": 1.050, "unit": "SG"}),
        ),
        {"gravity": 0.998, "gravity_on": "2024-09-20"},
    ),
    (
        "the first pitch",
        entries(START, ("pitch", 1, "2024-09-05", {}), ("pitch", 1, "2024-09-03", {})),
        {"pitched": "2024-09-03"},
    ),
    ("finished", entries(START, ("fermentation", 1, "2024-09-20", {"stage": "finished"})), {"finished": "2024-09-20"}),
    (
        "finished, but went on",
        entries(
            START,
            ("fermentation", 1, "2024-09-20", {"stage": "finished"}),
            ("fermentation", 1, "2024-09-25", {"stage": "restarted"}),
        ),
        {"finished": None},
    ),
    (
        "pressed, moved",
        entries(START, ("press", 1, "2024-09-15", {}), ("move", 1, "2024-09-16", {"to": "cold room"})),
        {"pressed": "2024-09-15", "place": "cold room"},
    ),
    (
        "what a racking moved is what there is",
        entries(START, ("rack", 1, "2024-09-20", {"to": "carboy 1", "volume": 5.5, "unit": "gal"})),
        {"volume": 5.5 * GAL},
    ),
    (
        "split volumes add up",
        entries(
            START,
            ("rack", 1, "2024-09-20", {"to": "carboy 1", "volume": 5, "unit": "gal"}),
            ("rack", 1, "2024-09-20", {"to": "jug", "volume": 3, "unit": "L"}),
            notes=[1, 2, 2],
        ),
        {"volume": 5 * GAL + 3},
    ),
    (
        "blended into another",
        entries(START, START_2, ("blend", 2, "2024-12-01", {"with": [{"batch": 1, "amount": 2, "unit": "gal"}]})),
        {"volume": 4 * GAL, "under_way": True},
    ),
    (
        "all blended away",
        entries(START, START_2, ("blend", 2, "2024-12-01", {"with": [{"batch": 1, "amount": 6, "unit": "gal"}]})),
        {"volume": 0.0, "under_way": True, "vessels": {}},
    ),
    (
        "some of it blended away",
        entries(START, START_2, ("blend", 2, "2024-12-01", {"with": [{"batch": 1}]})),
        {"volume": None},
    ),
    (
        "blended into, on the way",
        entries(START, START_2, ("blend", 1, "2024-12-01", {"with": [{"batch": 2, "amount": 1, "unit": "L"}]})),
        {"volume": 6 * GAL + 1},
    ),
    (
        "a start that is a blend",
        entries(START, ("blend", 1, "2024-09-01", {"with": [{"batch": 2, "amount": 3, "unit": "gal"}]})),
        {"volume": 6 * GAL},
    ),
    (
        "bottles left",
        entries(
            START,
            ("bottle", 1, "2025-03-01", {"count": 24}),
            ("bottle", 1, "2025-03-01", {"count": 2}),
            ("drink", 1, "2025-04-01", {"count": 1}),
            ("give", 1, "2025-04-01", {"count": 6, "to": "Ennik"}),
        ),
        {"filled": 26, "taken": 7, "bottles": 19, "bottled": "2025-03-01", "under_way": False},
    ),
    (
        "more drunk than were filled",
        entries(START, ("bottle", 1, "2025-03-01", {"count": 2}), ("drink", 1, "2025-04-01", {"count": 3})),
        {"bottles": 0},
    ),
    (
        "nothing left of a part bottled",
        entries(
            START,
            ("bottle", 1, "2025-03-01", {"count": 10}),
            ("reading", 1, "2025-03-01", {"quantity": "volume", "value": 0, "unit": "gal"}),
        ),
        {"under_way": False},
    ),
    (
        "the second bottling takes the rest",
        entries(
            START,
            ("bottle", 1, "2025-03-01", {"count": 10}),
            ("rack", 1, "2025-03-01", {"to": "jug"}),
            ("bottle", 1, "2025-05-01", {"count": 5}),
        ),
        {"under_way": False, "bottles": 15, "vessels": {}},
    ),
    ("ended", entries(START, ("end", 1, "2025-01-01", {})), {"ended": "2025-01-01", "under_way": False}),
    (
        "fields of the wrong sort say nothing",
        entries(
            START,
            ("rack", 1, "2024-09-05", {"to": 5, "from": ["x"], "volume": "much"}),
            ("blend", 1, "2024-09-06", {"with": 4}),
            ("bottle", 1, "2024-09-07", {"count": "some"}),
            ("reading", 1, "2024-09-08", {"quantity": "sg", "value": "low"}),
        ),
        {"gravity": None, "bottles": 0},
    ),
]


@pytest.mark.parametrize(("said", "given_entries", "facts"), FACTS, ids=[row[0] for row in FACTS])
def test_what_is_known_of_a_batch(said: str, given_entries: list[Entry], facts: dict[str, Any]) -> None:
    batch = Cellar.of(given_entries).batches[1]
    assert {name: _round(getattr(batch, name)) for name in facts} == {
        name: _round(value) for name, value in facts.items()
    }


def _round(value: object) -> object:
    return round(value, 9) if isinstance(value, float) else value


def test_vessels_are_found_where_only_one_fits() -> None:
    cellar = Cellar.of(
        entries(
            ("vessel", None, "2024-01-01", {"name": "big blue bin", "capacity": 20, "unit": "gal"}),
            ("vessel", None, "2024-01-01", {"name": "carboy 1", "capacity": 6, "unit": "gal"}),
            ("vessel", None, "2024-01-01", {"name": "carboy 2", "capacity": 6, "unit": "gal"}),
            ("vessel", None, "2024-02-01", {"name": "carboy 2", "capacity": 5, "unit": "gal"}),
        )
    )

    def found(name: str) -> str | None:
        vessel = cellar.find_vessel(name)
        return vessel.name if vessel else None

    assert found("the blue bin") == found("bin") == found("big old blue bin") == "big blue bin"
    assert found("carboy #1") == "carboy 1"
    assert found("carboy") is None  # two fit
    assert found("carboy 3") is None
    vessel = cellar.find_vessel("carboy two")
    assert vessel
    assert vessel.capacity == pytest.approx(5 * GAL)


def test_names_are_known_in_the_order_met() -> None:
    cellar = Cellar.of(
        entries(
            ("pitch", 1, "2024-01-01", {"yeast": "ZR-40"}),
            ("pitch", 2, "2024-01-02", {"yeast": "K-17"}),
            ("pitch", 3, "2024-01-03", {"yeast": "zr-40"}),
            ("give", 1, "2024-01-04", {"to": "Ennik", "count": 1}),
            ("addition", 1, "2024-01-04", {"material": "bentonite"}),
            ("move", 1, "2024-01-04", {"to": "shed"}),
            ("malolactic", 1, "2024-01-04", {"stage": "started", "culture": "MC-9"}),
            ("purchase", None, "2024-01-04", {"item": "corks"}),
        )
    )
    assert cellar.yeasts == ["ZR-40", "K-17"]
    assert (cellar.people, cellar.materials, cellar.places) == (["Ennik"], ["bentonite"], ["shed"])
    assert (cellar.cultures, cellar.items) == (["MC-9"], ["corks"])


def test_numbers_and_the_batch_last_spoken_of() -> None:
    empty = Cellar.of([])
    assert (empty.next_number(), empty.last_spoken, empty.under_way()) == (1, None, [])
    cellar = Cellar.of(
        entries(START, START_2, ("rack", 1, "2024-08-20", {"to": "carboy 1"}))
    )  # back-dated, but said last
    assert (cellar.next_number(), cellar.last_spoken) == (3, 1)
    assert [b.number for b in cellar.under_way()] == [1, 2]


# ---- what must always hold

DATES = st.sampled_from(
    ["2024", "2024-03", "2024-03-01", "2024-03-02", "2024-05-09", "2024-07-30", "2025-01-01", "2025-02"]
)
VESSELS = st.sampled_from(
    ["bucket", "carboy 1", "Carboy #1", "carboys 1 and 2", "big bin", "bin", "old big bin", "bottling bucket"]
)
AMOUNT = st.integers(0, 6)


VOLUME = {"volume": AMOUNT, "unit": st.just("gal")}
FIELDS: dict[str, st.SearchStrategy[dict[str, Any]]] = {
    "start": st.fixed_dictionaries(
        {}, optional={**VOLUME, "vessel": VESSELS, "name": st.sampled_from(["Dusk", "Field"])}
    ),
    "rack": st.fixed_dictionaries({}, optional={**VOLUME, "to": VESSELS, "from": VESSELS}),
    "reading": st.one_of(
        st.fixed_dictionaries(
            {"quantity": st.just("sg"), "value": st.sampled_from([1.09, 1.0, 0.995]), "unit": st.just("SG")}
        ),
        st.fixed_dictionaries({"quantity": st.just("volume"), "value": AMOUNT, "unit": st.just("gal")}),
    ),
    "blend": st.fixed_dictionaries(
        {
            "with": st.lists(
                st.fixed_dictionaries({"batch": st.integers(1, 4), "amount": AMOUNT, "unit": st.just("gal")}),
                max_size=2,
            )
        }
    ),
    "bottle": st.fixed_dictionaries({}, optional={"count": AMOUNT}),
    "drink": st.fixed_dictionaries({}, optional={"count": AMOUNT}),
    "pitch": st.fixed_dictionaries({}, optional={"yeast": st.sampled_from(["K-17", "k-17", "ZR-40"])}),
    "vessel": st.fixed_dictionaries({"name": VESSELS}, optional={"capacity": AMOUNT, "unit": st.just("gal")}),
    "fermentation": st.fixed_dictionaries({"stage": st.sampled_from(["started", "finished", "restarted"])}),
    "end": st.just({}),
}
ENTRY = st.one_of([
    st.tuples(st.just(kind), st.none() if kind == "vessel" else st.integers(1, 4), DATES, fields)
    for kind, fields in FIELDS.items()
]).map(lambda parts: Entry(*parts))


def _placed(found: list[Entry]) -> list[Entry]:
    return [Entry(e.kind, e.batch, e.date, e.fields, note=i, id=i, place=(i, 0)) for i, e in enumerate(found, 1)]


@given(st.lists(ENTRY, max_size=12), st.randoms())
def test_the_order_of_filing_does_not_matter(found: list[Entry], random: Any) -> None:
    placed = _placed(found)
    shuffled = random.sample(placed, len(placed))
    assert Cellar.of(placed).batches == Cellar.of(shuffled).batches


@given(st.lists(ENTRY, max_size=12))
def test_taken_in_one_by_one_or_all_at_once_it_is_the_same_cellar(found: list[Entry]) -> None:
    placed = _placed(found)
    cellar = Cellar()
    for i, entry in enumerate(placed, 1):
        for number in cellar.apply(entry):
            said = [
                e
                for e in placed[:i]
                if e.batch == number
                or number
                in {part["batch"] for part in (e.get("with") or []) if e.kind == "blend" and e.batch != number}
            ]
            if any(e.batch == number for e in said):
                cellar.put(fold(number, said))
    whole = Cellar.of(placed)
    assert cellar.batches == whole.batches
    assert cellar.vessels == whole.vessels
    assert cellar.under_way() == whole.under_way()
    assert cellar.last_spoken == whole.last_spoken
