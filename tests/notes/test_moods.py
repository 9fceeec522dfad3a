"""What is denied, planned, supposed, told by others, asked, taken back or mere talk is no entry of what was done.

Notes of Saturday 4 October 2025 over the cellar `solo` of `telling`.
"""

from typing import Any

import pytest

from .telling import Cellars, Json, add, check, e, read, sg, temp

Row = Any  # a note and its entries

DENIED: list[Row] = [
    ("didn't rack the zin today", []),
    ("did not punch down this morning", []),
    ("no sulfite added this time", []),
    ("haven't pitched yet", []),
    ("never added any oak to the zin", []),
    ("not bubbling yet", []),
    ("forgot to top up", []),
    ("no MLF for the zin", []),
    ("skipped the punch down today", []),
    ("no need to rack yet", []),
    ("couldn't get a reading, hydrometer broke", []),
    ("nothing added", []),
    ("still hasn't finished fermenting", []),
    ("SG 1.010, did not add nutrient", [sg(1.01)]),
    ("racked the zin without sulfite", [e("rack")]),
    ("pitched K-17, no nutrient", [e("pitch", yeast="K-17")]),
    ("punched down but didn't check the gravity", [e("punch_down")]),
]

PLANNED: list[Row] = [
    ("will rack it tomorrow", [e("plan", what="rack", due="2025-10-05")]),
    ("going to press on Monday", [e("plan", what="press", due="2025-10-06")]),
    ("need to add 1/4 tsp kmeta", [e("plan", what="add 1/4 tsp kmeta")]),
    # A span is its month (format).
    ("SG 1.010, rack it next weekend", [sg(1.01), e("plan", what="rack", due="2025-10")]),
    ("gotta top up soon", [e("plan", what="top up")]),
    ("bottle it in June", [e("plan", what="bottle", due="2026-06")]),
    ("racked the zin, will add oak in 2 weeks", [e("rack"), e("plan", what="add oak", due="2025-10-18")]),
    ("remember to order corks", [e("plan", None, what="order corks")]),
]

SUPPOSED: list[Row] = [
    ("if it's still stuck on Monday", []),
    ("might be stuck", []),
    ("maybe it has gone dry, can't tell", []),
    ("could use some oak", []),
    ("would have racked it but ran out of time", []),
    ("I think about adding oak someday", []),
    ("unless it restarts by itself", []),
    ("added 1/4 tsp kmeta, should bring it to 30 ppm", [add("potassium metabisulfite", 0.25, "tsp")]),  # format
]

TOLD: list[Row] = [
    ("the shop says 5 g of bentonite per gallon", []),
    ("recipe calls for 2 lb sugar", []),
    ("Dad says to add oak", []),
    ("instructions say rack at 1.010", []),
    ("packet says 59-86F", []),
    ("the book recommends 50 ppm SO2", []),
    ("neighbor racked his zin today", []),
    ("my brother's wine is at 1.020", []),
    ("read that egg whites take out tannin", []),
    ("the forum says to stir the lees every week", []),
]

ASKED: list[Row] = [
    ("should I rack it?", []),
    ("is 1.010 too high?", []),
    ("SG 1.020. Time to press?", [sg(1.02)]),
    ("did I add sulfite?", []),
    ("racked the zin. enough headspace?", [e("rack")]),
    ("why is it not bubbling?", []),
]

TAKEN_BACK: list[Row] = [
    ("SG 1.010, no, 1.012", [sg(1.012)]),
    ("SG 1.010 - sorry, 1.012", [sg(1.012)]),
    ("SG 1.010 (no wait, 1.012)", [sg(1.012)]),
    ("1.010, I mean 1.012", [sg(1.012)]),
    ("racked to carboy 1, sorry, carboy 2", [e("rack", to="carboy 2")]),
    ("pitched 5 g, I mean 7 g of K-17", [e("pitch", yeast="K-17", amount=7, unit="g")]),
    ("batch 2, no, batch 3 is at 1.010", [sg(1.01)]),
    ("70F, make that 68F", [temp(68)]),
    ("racked it yesterday, no, Thursday", [e("rack", on="2025-10-02")]),
    ("bottled 28, correction, 29 bottles", [e("bottle", count=29)]),
]

TOLD_AGAIN: list[Row] = [
    ("SG 1.010, was 1.030", [sg(1.01)]),  # format: an earlier figure told again
    ("down from 1.040 to 1.020", [sg(1.02)]),
    ("1.020, compared to 1.031 last time", [sg(1.02)]),
    ("aiming for 1.000, now at 1.006", [sg(1.006)]),
    ("target is pH 3.4, reads 3.6", [read("ph", 3.6, "pH")]),
]

CHATTER: list[Row] = [
    ("what a lovely autumn", []),
    ("the neighbour came by and we talked about the old days", []),
    ("grandkids loved the cellar", []),
    ("carboy brush broke", []),
    ("wine club met last night", []),
    ("reading a book on oak", []),
    ("shop was out of bentonite", []),
    ("rain all week", []),
    ("8 people at the harvest party", []),
    ("smells like bread, nice foam on top", []),  # format: smells, foam and looks are remarks
    ("fruit flies everywhere", []),
    ("the cat sat on carboy 2", []),
    ("back hurts from carrying 60 lb of grapes", []),
    ("happy birthday to me, 70 today", []),
    ("cleaned the bottles, took 3 hours", []),
    ("phone died at 15%", []),
    ("5 minutes of work", []),
    ("drove 200 miles for grapes", []),
    ("😀", []),
    ("...", []),
]

TABLES = (DENIED, PLANNED, SUPPOSED, TOLD, ASKED, TAKEN_BACK, TOLD_AGAIN, CHATTER)


@pytest.mark.parametrize(("note", "entries"), [row for table in TABLES for row in table])
def test_moods(note: str, entries: list[Json], cellars: Cellars) -> None:
    check(cellars.reading("solo", note), entries)
