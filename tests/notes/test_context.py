"""Notes that lean on the notes before them: pronouns, vessels that follow the wine, splits, blends, this year and last.

Each story is a cellar of `telling` and the notes typed into it, one after another, each with the entries it gives.
"""

from pathlib import Path
from typing import Any

import pytest

from journalbot.journal.store import Journal

from .telling import CELLARS, DAY, Json, add, check, e, furnish, keep, sg, temp

Story = list[tuple[str, str, list[Json]]]

THU, MON, TUE, WED = "2025-10-02", "2025-10-06", "2025-10-07", "2025-10-08"

STORIES: list[Any] = [
    ("a pronoun is the batch last spoken of", "pair", [
        (DAY, "zin at 1.030", [sg(1.03)]),
        (MON, "it's at 1.020", [sg(1.02, on=MON)]),
        (TUE, "plum smells of eggs, 70F", [temp(70, batch=4, on=TUE)]),
        (WED, "gave it 1 tsp nutrient", [add("yeast nutrient", 1, "tsp", 4, WED)]),
    ]),
    ("the same batch", "pair", [
        (DAY, "plum at 1.050", [sg(1.05, 4)]),
        (DAY, "same batch, 68F", [temp(68, batch=4)]),
        (DAY, "punched this one down too", [e("punch_down", 4)]),
    ]),
    ("a pronoun inside a note is the batch of that note", "pair", [
        (DAY, "plum at 1.050", [sg(1.05, 4)]),
        (DAY, "pressed the zin and racked it into carboy 2", [e("press"), e("rack", to="carboy 2")]),
        (DAY, "it reads 1.004", [sg(1.004)]),
    ]),
    ("a sentence goes on with the batch of the one before", "pair", [
        (DAY, "Checked the plum. SG 1.044. 71F.", [sg(1.044, 4), temp(71, batch=4)]),
        (DAY, "plum 1.040, 70F; zin 1.010, 69F", [sg(1.04, 4), temp(70, batch=4), sg(1.01), temp(69)]),
    ]),
    ("a vessel is the wine that is in it", "pair", [
        (DAY, "bucket 1 at 1.030", [sg(1.03)]),
        (DAY, "bucket 2 at 1.050", [sg(1.05, 4)]),
        (MON, "racked the zin into carboy 2", [e("rack", on=MON, to="carboy 2")]),
        (TUE, "carboy 2 reads 1.002", [sg(1.002, on=TUE)]),
        (TUE, "racked the plum into bucket 1", [e("rack", 4, TUE, to="bucket 1")]),
        (WED, "whatever is in bucket 1: 1.020", [sg(1.02, 4, WED)]),
    ]),
    ("a racking named by its vessels", "pair", [
        (DAY, "bucket 1 -> carboy 2, 5 gal", [e("rack", from_="bucket 1", to="carboy 2", volume=5, unit="gal")]),
        (MON, "racked from bucket 2 to carboy 1", [e("rack", 4, MON, from_="bucket 2", to="carboy 1")]),
        (TUE, "topped up carboy 2", [e("top_up", on=TUE)]),
        (TUE, "1/4 tsp kmeta into carboy 1", [add("potassium metabisulfite", 0.25, "tsp", 4, TUE)]),
    ]),
    ("an abbreviated vessel is the vessel", "pair", [
        (DAY, "racked the zin into demijohn 5", [e("rack", to="demijohn 5")]),
        (MON, "DJ 5 at 1.000", [sg(1.0, on=MON)]),  # format
    ]),
    ("one wine in two vessels", "pair", [
        (DAY, "racked the zin into carboys 1 and 2", [e("rack", to="carboys 1 and 2")]),  # format: as written
        (MON, "carboy 1 is at 1.000, carboy 2 at 0.998", [sg(1.0, on=MON), sg(0.998, on=MON)]),
        (TUE, "racked carboy 1 into jug A", [e("rack", on=TUE, from_="carboy 1", to="jug A")]),
        (WED, "jug A 65F", [temp(65, on=WED)]),
        (WED, "carboy 2 65F", [temp(65, on=WED)]),
        (WED, "1/8 tsp kmeta in jug A and 1/4 tsp in carboy 2",  # format: doses given per vessel are an addition each
         [add("potassium metabisulfite", 0.125, "tsp", on=WED), add("potassium metabisulfite", 0.25, "tsp", on=WED)]),
    ]),
    ("a blend is filed on the batch that takes it", "pair", [
        (DAY, "blended 2 gal of the plum into the zin", [e("blend", with_=[{"batch": 4, "amount": 2, "unit": "gal"}])]),
        (MON, "zin is at 0.998", [sg(0.998, on=MON)]),
    ]),
    ("one ends, and the other is the only one left", "pair", [
        (DAY, "bottled the zin, 28 bottles", [e("bottle", count=28)]),
        (MON, "SG 1.010", [sg(1.01, 4, MON)]),
        (TUE, "dumped the plum, vinegar", [e("end", 4, TUE, reason="vinegar")]),
    ]),
    ("this year's and last year's", "twins", [
        (DAY, "the new zin is at 1.020", [sg(1.02)]),
        (DAY, "opened last year's zin, still tannic", [e("drink", 1, count=1), e("taste", 1, words=["tannic"])]),
        (DAY, "2025 zin 70F", [temp(70)]),
        (DAY, "gave a 2024 zin to Maren", [e("give", 1, count=1, to="Maren")]),
        (DAY, "racked the zin", [e("rack")]),
        (DAY, "drank 2 of the old zin", [e("drink", 1, count=2)]),
    ]),
    ("a third of the same fruit", "twins", [
        (DAY, "started batch 4, 5 gal of zinfandel juice in bucket 2",
         [e("start", 4, volume=5, unit="gal", from_=["zinfandel juice"], vessel="bucket 2")]),
        (MON, "batch 4 at 1.080", [sg(1.08, 4, MON)]),
        (MON, "bucket 2 70F", [temp(70, batch=4, on=MON)]),
    ]),
    ("a wine is called by the name it was given", "solo", [
        (DAY, "started 5 gal of elderberry in bucket 2, calling it Night Shift",
         [e("start", 4, volume=5, unit="gal", from_=["elderberry"], vessel="bucket 2", name="Night Shift")]),
        (MON, "pitched ZT-12 into night shift", [e("pitch", 4, MON, yeast="ZT-12")]),
        (TUE, "Night Shift 1.070", [sg(1.07, 4, TUE)]),
        (WED, "elderberry 72F", [temp(72, batch=4, on=WED)]),
    ]),
    ("yeasts, people and places met are known again", "pair", [
        (DAY, "pitched Velvet Nine into the plum, 5 g of yeast",
         [e("pitch", 4, yeast="Velvet Nine", amount=5, unit="g")]),
        (MON, "zin got Velvet Nine too", [e("pitch", on=MON, yeast="Velvet Nine")]),
    ]),
    ("a person met is known in small letters too", "solo", [
        (DAY, "gave Maren a bottle of the riesling", [e("give", 1, count=1, to="Maren")]),
        (MON, "gave maren 2 bottles of batch 2", [e("give", 2, MON, count=2, to="maren")]),
    ]),
    ("a number after one that was not the first", "bare", [
        (DAY, "started batch 7, 5 gal of syrah juice in bucket 1",
         [e("start", 7, volume=5, unit="gal", from_=["syrah juice"], vessel="bucket 1")]),
        (MON, "No 8: elderflower. 2 lb sugar, 1 gal water. bucket 2",
         [e("start", 8, MON, from_=["elderflower"], vessel="bucket 2"), add("sugar", 2, "lb", 8, MON),
          add("water", 1, "gal", 8, MON)]),
    ]),
    ("the day of one wine's act is not the next wine's", "pair", [
        (DAY, "Tasted batch 2 on Thursday: plum, smoke, 7/10. Batch 3 SG 1.042 at 71F.",
         [e("taste", 2, THU, words=["plum", "smoke"], score=7, out_of=10), sg(1.042), temp(71)]),
    ]),
    ("the next batch gets the next free number", "bare", [
        (DAY, "started 6 gal of syrah in bucket 1",
         [e("start", 1, volume=6, unit="gal", from_=["syrah"], vessel="bucket 1")]),
        (DAY, "SG 1.090", [sg(1.09, 1)]),
        (MON, "started batch 7, apple cider, 1 gal",
         [e("start", 7, MON, volume=1, unit="gal", from_=["apple"], colour="cider")]),
        (TUE, "started 3 gal of peach", [e("start", 8, TUE, volume=3, unit="gal", from_=["peach"])]),
        (TUE, "syrah 1.060, peach 1.080", [sg(1.06, 1, TUE), sg(1.08, 8, TUE)]),
    ]),
    ("a note of a day before", "pair", [
        (WED, "pressed the zin on Monday, and it read 1.004 yesterday",
         [e("press", on=MON), sg(1.004, on=TUE)]),
    ]),
]  # fmt: skip


@pytest.mark.parametrize(("told", "cellar", "story"), STORIES)
def test_stories(told: str, cellar: str, story: Story, tmp_path: Path) -> None:
    with Journal.open(tmp_path / "journal.db") as journal:
        assistant = furnish(journal, CELLARS[cellar])
        for on, note, entries in story:
            try:
                check(keep(assistant, note, on), entries)
            except AssertionError as error:
                raise AssertionError(f"{told}: “{note}”: {error}") from None
        assert journal.check() == []
