"""Every kind of entry: notes as people write them, and what they tell. Read as documentation, kind by kind.

Unless a row says otherwise a note was typed on Saturday 4 October 2025 over the cellar `solo`: batch 1, a riesling, and
batch 2, a merlot, are in bottles; batch 3, a zinfandel, ferments in bucket 1; carboys 1 and 2 are empty. Nothing here
comes from the labelled notebooks. Rows marked "format" are the examples of the data format.
"""

from typing import Any

import pytest

from .telling import FRIDAY, Cellars, Json, add, check, e, gap, read, sg, temp

Row = Any  # a note and its entries, or a gap of the same

START: list[Row] = [
    (
        "started batch 5, 6 gal of merlot juice in bucket 1",  # format
        [e("start", 5, volume=6, unit="gal", from_=["merlot juice"], vessel="bucket 1")],
    ),
    (
        "Started batch 4: 3 gallons of elderberry wine in bucket 2",
        [e("start", 4, volume=3, unit="gal", from_=["elderberry"], vessel="bucket 2")],
    ),
    (
        "new batch today, 5 gal cider from fresh apple juice, in carboy 1",
        [e("start", 4, volume=5, unit="gal", colour="cider", from_=["apple juice"], vessel="carboy 1")],
    ),
    (
        "starting a mead: 1 gallon with 3 lb clover honey in jug A",
        [
            e(
                "start",
                4,
                volume=1,
                unit="gal",
                colour="mead",
                from_=["clover honey"],
                vessel="jug A",
                weight=3,
                weight_unit="lb",
            )
        ],
    ),
    ("began batch 9 with 60 lb of syrah grapes", [e("start", 9, from_=["syrah grapes"], weight=60, weight_unit="lb")]),
    (
        "started batch 6 yesterday, chardonnay juice, 5 gal",
        [e("start", 6, FRIDAY, from_=["chardonnay juice"], volume=5, unit="gal")],
    ),
    (
        "started a 2025 cabernet, 6 gal, call it Hillside Red",
        [e("start", 4, volume=6, unit="gal", name="Hillside Red", vintage=2025, from_=["cabernet"])],
    ),
    (
        "Batch 4 = 5 gal blackberry, started today in bucket 2",
        [e("start", 4, volume=5, unit="gal", from_=["blackberry"], vessel="bucket 2")],
    ),
    (
        "started a peach wine kit, 6 gal, SG 1.085 at 72F",
        [e("start", 4, volume=6, unit="gal", from_=["peach kit"]), sg(1.085, 4), temp(72, batch=4)],
    ),
]

READING: list[Row] = [
    ("SG 1.088 at 70F", [sg(1.088), temp(70)]),  # format
    ("racked batch 3, SG 0.996, 68F", [e("rack"), sg(0.996), temp(68)]),  # format
    ("SG 0.996", [sg(0.996)]),  # format, as are the next twenty
    ("gravity .996", [sg(0.996)]),
    ("1.088", [sg(1.088)]),
    ("OG 1090", [sg(1.09)]),
    ("sg: 1,012", [sg(1.012)]),
    ("23.5 Brix", [read("brix", 23.5, "Brix")]),
    ("23.5 B", [read("brix", 23.5, "Brix")]),
    ("23.5 °Bx", [read("brix", 23.5, "Brix")]),
    ("23.5 bricks", [read("brix", 23.5, "Brix")]),
    ("potential alcohol 12%", [read("potential_alcohol", 12, "% vol")]),
    ("PA 12", [read("potential_alcohol", 12, "% vol")]),
    ("pH 3.45", [read("ph", 3.45, "pH")]),
    ("ph=3,45", [read("ph", 3.45, "pH")]),
    ("TA 6.5 g/L", [read("ta", 6.5, "g/L")]),
    ("0.65% acid", [read("ta", 0.65, "%")]),
    ("68F", [temp(68)]),
    ("20 C", [temp(20, "C")]),
    ("70 degrees", [temp(70)]),
    ("temp 68", [temp(68)]),
    ("free SO2 28 ppm", [read("free_so2", 28, "mg/L")]),
    ("28 mg/l free", [read("free_so2", 28, "mg/L")]),
    ("13.1% ABV", [read("alcohol", 13.1, "% vol")]),
    ("YAN 140", [read("yan", 140, "mg/L")]),
    ("5.5 gal left", [read("volume", 5.5, "gal")]),
    ("batch 3 sg 1042 @ 71", [sg(1.042), temp(71)]),
    ("SG 1.010 this morning at 7:30", [sg(1.01, time="07:30")]),
    ("zin at 1.030 yesterday and 1.022 today", [sg(1.03, on=FRIDAY), sg(1.022)]),
    ("one point oh four two at seventy", [sg(1.042), temp(70)]),
    ("point nine nine six", [sg(0.996)]),
    ("hydrometer says 1.015", [sg(1.015)]),
    ("gravity is down to 1.004", [sg(1.004)]),
    ("~68F in the must", [temp(68, approx=True)]),
    ("gravity about 1.020", [sg(1.02, approx=True)]),
    ("pH 3.6, TA 7 g/l, Brix 24", [read("ph", 3.6, "pH"), read("ta", 7, "g/L"), read("brix", 24, "Brix")]),
    ("total SO2 90 ppm, free 25", [read("total_so2", 90, "mg/L"), read("free_so2", 25, "mg/L")]),
    ("residual sugar 4 g/L", [read("residual_sugar", 4, "g/L")]),
    ("malic 0.3 g/L", [read("malic", 0.3, "g/L")]),
    ("volatile acidity 0.5 g/L", [read("volatile_acidity", 0.5, "g/L")]),
    ("VA 0.45 g/l", [read("volatile_acidity", 0.45, "g/L")]),
    ("lab says pH 3.52", [read("ph", 3.52, "pH")]),
    ("abv 12.5", [read("alcohol", 12.5, "% vol")]),
    ("cellar is 58F", [temp(58, batch=None)]),
    ("room temp 64", [temp(64, batch=None)]),
    ("must temp 75 F", [temp(75)]),
]

PITCH: list[Row] = [
    ("pitched 5g K-17", [e("pitch", yeast="K-17", amount=5, unit="g")]),  # format
    ("pitched K-17", [e("pitch", yeast="K-17")]),
    ("yeast went in, one packet of K-17", [e("pitch", yeast="K-17", amount=1, unit="packet")]),
    ("sprinkled 2 packets of ZT-12 on top", [e("pitch", yeast="ZT-12", amount=2, unit="packet")]),
    ("inoculated with QB1120, 7.5 g", [e("pitch", yeast="QB1120", amount=7.5, unit="g")]),
    ("added yeast", [e("pitch")]),
    ("pitched the yeast yesterday", [e("pitch", on=FRIDAY)]),
    ("pitched half a packet of K-17 at 72F", [e("pitch", yeast="K-17", amount=0.5, unit="packet"), temp(72)]),
    ("yeast: K-17, 5 g", [e("pitch", yeast="K-17", amount=5, unit="g")]),
    ("rehydrated 5 g of K-17 and pitched it", [e("pitch", yeast="K-17", amount=5, unit="g")]),
]

ADDITION: list[Row] = [
    ("1/4 tsp kmeta", [add("potassium metabisulfite", 0.25, "tsp")]),  # format
    ("added 1/4 tsp kmeta per 5 gal", [add("potassium metabisulfite", 0.05, "tsp/gal")]),
    ("30 ppm SO2 added", [add("sulfur dioxide", 30, "mg/L")]),  # format
    ("dosed 50 ppm SO2", [add("sulfur dioxide", 50, "mg/L")]),
    ("2 campden tablets", [add("campden tablet", 2, "tablet")]),
    ("crushed in a campden tablet", [add("campden tablet", 1, "tablet")]),
    ("hit it with 3 g DAP", [add("diammonium phosphate", 3, "g")]),
    ("stirred in 10 g bentonite", [add("bentonite", 10, "g")]),
    ("added tartaric acid, 12 g", [add("tartaric acid", 12, "g")]),
    ("added 1 1/2 tsp acid blend", [add("acid blend", 1.5, "tsp")]),
    ("half a tsp of tannin went in", [add("tannin", 0.5, "tsp")]),
    ("two tsp yeast nutrient and 1 tsp energizer",
     [add("yeast nutrient", 2, "tsp"), add("yeast energizer", 1, "tsp")]),
    ("fined with gelatin, 1 tsp", [add("gelatin", 1, "tsp")]),
    ("fined with two egg whites", [add("egg white", 2, "piece")]),
    ("added sugar, 2 lb", [add("sugar", 2, "lb")]),
    ("back sweetened with 1 cup of sugar and added 2.5 tsp sorbate",
     [add("sugar", 1, "cup"), add("potassium sorbate", 2.5, "tsp")]),
    ("sulfited it, 1/4 tsp", [add("potassium metabisulfite", 0.25, "tsp")]),
    ("pectic enzyme 3 tsp", [add("pectic enzyme", 3, "tsp")]),
    gap("pinch of kmeta", [add("potassium metabisulfite", 1, "pinch")], why="“pinch of” without “a”"),
    ("kieselsol then chitosan, 50 ml of each", [add("kieselsol", 50, "ml"), add("chitosan", 50, "ml")]),
    ("added 0.5 g/L tartaric", [add("tartaric acid", 0.5, "g/L")]),
    ("added 100 g raisins", [add("raisins", 100, "g")]),
    ("about 2 tsp of nutrient added", [add("yeast nutrient", 2, "tsp", approx=True)]),
]  # fmt: skip

# Each name of a substance, and the canonical one (the format's list).
MATERIALS: list[Any] = [
    ("meta", "potassium metabisulfite"),
    ("k-meta", "potassium metabisulfite"),
    ("KMBS", "potassium metabisulfite"),
    ("sulfite", "potassium metabisulfite"),
    ("sulphite", "potassium metabisulfite"),
    ("potassium metabisulphite", "potassium metabisulfite"),
    ("sodium metabisulfite", "sodium metabisulfite"),
    ("tartaric", "tartaric acid"),
    ("malic acid", "malic acid"),
    ("citric acid", "citric acid"),
    ("acid blend", "acid blend"),
    ("potassium bicarbonate", "potassium bicarbonate"),
    ("calcium carbonate", "calcium carbonate"),
    ("chalk", "calcium carbonate"),
    ("sugar", "sugar"),
    ("honey", "honey"),
    ("yeast nutrient", "yeast nutrient"),
    ("nutrient", "yeast nutrient"),
    ("DAP", "diammonium phosphate"),
    ("diammonium phosphate", "diammonium phosphate"),
    ("yeast energizer", "yeast energizer"),
    ("pectic enzyme", "pectic enzyme"),
    ("bentonite", "bentonite"),
    ("gelatin", "gelatin"),
    ("gelatine", "gelatin"),
    ("isinglass", "isinglass"),
    ("kieselsol", "kieselsol"),
    ("chitosan", "chitosan"),
    ("sorbate", "potassium sorbate"),
    ("potassium sorbate", "potassium sorbate"),
    ("tannin", "tannin"),
    ("glycerin", "glycerin"),
    ("glycerine", "glycerin"),
]

FERMENTATION: list[Row] = [
    ("it's bubbling away at last", [e("fermentation", stage="started")]),  # format
    ("fermented out", [e("fermentation", stage="finished")]),  # format
    ("gone dry", [e("fermentation", stage="finished")]),  # format
    ("fermentation finished, 0.994", [e("fermentation", stage="finished"), sg(0.994)]),
    ("zin stuck at 1.020", [e("fermentation", stage="stuck"), sg(1.02)]),
    ("fermentation has stalled", [e("fermentation", stage="stuck")]),
    ("it's going again", [e("fermentation", stage="restarted")]),
    ("primary is done", [e("fermentation", stage="finished")]),
]

ACTS: list[Row] = [
    ("pressed off the skins", [e("press")]),  # format
    ("pressed the zin yesterday", [e("press", on=FRIDAY)]),
    ("pressed into carboy 2", [e("press"), e("rack", to="carboy 2")]),  # format: press and rack
    ("crushed and destemmed the zin", [e("crush")]),
    ("crushed the grapes this morning", [e("crush")]),
    ("degassed it", [e("degas")]),
    ("degassed with the drill for five minutes", [e("degas")]),
    ("filtered the zin through coarse pads", [e("filter")]),
    ("stirred the lees", [e("stir")]),
    ("batonnage today", [e("stir")]),
    ("cold stabilizing in the garage fridge", [e("chill")]),
    ("refilled the airlock", [e("airlock")]),
    ("topped off the airlock with vodka", [e("airlock")]),
    ("cleaned the airlock", [e("airlock")]),
    ("punched down 3x", [e("punch_down", times=3)]),  # format
    ("punched the cap", [e("punch_down")]),
    ("punched down twice", [e("punch_down", times=2)]),
    ("pd 2x", [e("punch_down", times=2)]),
    ("pumped over", [e("punch_down")]),
    ("pumpover once", [e("punch_down", times=1)]),
]

RACK: list[Row] = [
    ("racked into carboy 2", [e("rack", to="carboy 2")]),  # format
    ("racked from bucket 1 to carboy 2", [e("rack", from_="bucket 1", to="carboy 2")]),
    ("racked", [e("rack")]),
    ("siphoned it into carboy 2, 5 gal", [e("rack", to="carboy 2", volume=5, unit="gal")]),
    ("transferred 5.5 gal to carboy 2", [e("rack", to="carboy 2", volume=5.5, unit="gal")]),
    ("took it off the lees", [e("rack")]),
    ("second racking done today", [e("rack")]),
    ("racked the zin off its gross lees last night", [e("rack", on=FRIDAY)]),
    ("moved to secondary, carboy 2", [e("rack", to="carboy 2")]),
    ("racked to carboys 1 and 2", [e("rack", to="carboys 1 and 2")]),  # format: as written
    ("racked to demijohn a, 5 gal", [e("rack", to="demijohn a", volume=5, unit="gal")]),
    ("racked into DJ 5", [e("rack", to="DJ 5")]),  # format
    ("b3 -> carboy 2", [e("rack", to="carboy 2")]),
    ("racked into the oak barrel", [e("rack", to="oak barrel")]),  # format: `oak` only where it is there for the oak
]  # fmt: skip

MOVE: list[Row] = [
    ("moved it to the cold room", [e("move", to="cold room")]),  # format
    ("moved the zin to the garage", [e("move", to="garage")]),
    ("carried it down to the basement", [e("move", to="basement")]),
    ("put it in the fridge", [e("move", to="fridge")]),
]

TOP_UP: list[Row] = [
    ("topped up with 500 ml of the merlot", [e("top_up", with_="merlot", amount=500, unit="ml")]),  # format
    ("topped up", [e("top_up")]),
    ("topped it off with a bottle of batch 2", [e("top_up", with_="batch 2", amount=1, unit="bottle")]),
    ("topped up with water, 1 pint", [e("top_up", with_="water", amount=1, unit="pt")]),
]

OAK: list[Row] = [
    (
        "2 oz medium toast French oak cubes",  # format
        [e("oak", form="cubes", amount=2, unit="oz", toast="medium", origin="French")],
    ),
    ("added 30 g oak chips", [e("oak", form="chips", amount=30, unit="g")]),
    (
        "two spirals in, medium plus American",
        [e("oak", form="spiral", amount=2, unit="piece", toast="medium plus", origin="American")],
    ),
    ("1 oak stave, heavy toast", [e("oak", form="staves", amount=1, unit="piece", toast="heavy")]),
    ("oak powder, 20 g", [e("oak", form="powder", amount=20, unit="g")]),
    ("50 g Hungarian oak cubes went in", [e("oak", form="cubes", amount=50, unit="g", origin="Hungarian")]),
    ("pulled the oak", [e("oak_out")]),  # format
    ("took the cubes out", [e("oak_out")]),
    ("racked off the oak", [e("rack"), e("oak_out")]),  # format
]

MALOLACTIC: list[Row] = [
    ("added ML culture", [e("malolactic", stage="started")]),  # format
    ("MLF complete", [e("malolactic", stage="finished")]),  # format
    ("ML done", [e("malolactic", stage="finished")]),
    ("malolactic finished according to the paper strip", [e("malolactic", stage="finished")]),
    ("pitched malolactic bacteria MC-9", [e("malolactic", stage="started", culture="MC-9")]),
    ("inoculated for MLF with LM-2", [e("malolactic", stage="started", culture="LM-2")]),
]

BOTTLE: list[Row] = [
    (
        "bottled 28 x 750 ml under natural cork",  # format
        [e("bottle", count=28, size=750, unit="ml", closure="natural cork")],
    ),
    ("bottled batch 3: 30 bottles", [e("bottle", count=30)]),
    ("bottled the zin", [e("bottle")]),
    (
        "bottled the zin, 12 x 375 ml and 20 x 750 ml",  # format: one entry a size
        [e("bottle", count=12, size=375, unit="ml"), e("bottle", count=20, size=750, unit="ml")],
    ),
    (
        "got 12 x 375 and 20 x 750 ml out of the zin, bottled today",
        [e("bottle", count=12, size=375, unit="ml"), e("bottle", count=20, size=750, unit="ml")],
    ),
    ("bottled two dozen with screw caps", [e("bottle", count=24, closure="screw caps")]),
    ("bottled yesterday, 29 bottles, synthetic corks", [e("bottle", on=FRIDAY, count=29, closure="synthetic corks")]),
    ("bottled 25 x 75 cl", [e("bottle", count=25, size=75, unit="cl")]),
]

TASTE: list[Row] = [
    (
        "tasted batch 2: black cherry, a bit tannic, 7/10",  # format
        [e("taste", 2, words=["black cherry", "tannic"], score=7, out_of=10)],
    ),
    ("tasted the merlot: plum, smoke", [e("taste", 2, words=["plum", "smoke"])]),
    ("tried batch 1 tonight, lime and petrol, 15/20", [e("taste", 1, words=["lime", "petrol"], score=15, out_of=20)]),
    ("batch 2 tastes thin and sour", [e("taste", 2, words=["thin", "sour"])]),
    ("riesling is crisp, lemony, 8 out of 10", [e("taste", 1, words=["crisp", "lemony"], score=8, out_of=10)]),
]

DRINK: list[Row] = [
    ("opened a bottle of batch 2", [e("drink", 2, count=1)]),  # format
    ("drank two bottles of the riesling", [e("drink", 1, count=2)]),
    ("opened the last riesling last night", [e("drink", 1, FRIDAY, count=1)]),
    ("gave 2 bottles of batch 2 to Maren", [e("give", 2, count=2, to="Maren")]),
    ("gave Maren a bottle of the riesling", [e("give", 1, count=1, to="Maren")]),
    ("6 bottles of the merlot to my sister", [e("give", 2, count=6, to="my sister")]),
]

PURCHASE: list[Row] = [
    ("100 corks for $12", [e("purchase", None, item="corks", count=100, price=12, currency="USD")]),  # format
    (
        "bought 3 carboys at $4 each",  # format: the total
        [e("purchase", None, item="carboys", count=3, price=12, currency="USD")],
    ),
    ("bought a hydrometer, $15", [e("purchase", None, item="hydrometer", price=15, currency="USD")]),
    ("spent $30 on bottles", [e("purchase", None, item="bottles", price=30, currency="USD")]),
    (
        "a pound of DAP cost me $9.50",
        [e("purchase", None, item="DAP", count=1, unit="lb", price=9.5, currency="USD")],
    ),
    ("paid 20 euros for 50 corks", [e("purchase", None, item="corks", count=50, price=20, currency="EUR")]),
    (
        "picked up 2 packets of K-17 at the shop, $8",
        [e("purchase", None, item="K-17", count=2, unit="packet", price=8, currency="USD")],
    ),
]

VESSEL: list[Row] = [
    ("carboy 2 holds 5 gal", [e("vessel", None, name="carboy 2", capacity=5, unit="gal")]),  # format
    ("the new barrel is 15 gallons", [e("vessel", None, name="new barrel", capacity=15, unit="gal")]),
    ("jug B takes 1 gal", [e("vessel", None, name="jug B", capacity=1, unit="gal")]),
]

PLAN: list[Row] = [
    ("need to rack it in 3 weeks", [e("plan", what="rack", due="2025-10-25")]),  # format
    ("rack the zin next Friday", [e("plan", what="rack", due="2025-10-10")]),  # format: the first one after today
    ("should bottle in March", [e("plan", what="bottle", due="2026-03")]),  # format: due in that month
    ("must remember to top up tomorrow", [e("plan", what="top up", due="2025-10-05")]),
    ("remind me to check the gravity in 2 days", [e("plan", what="check the gravity", due="2025-10-06")]),
    ("planning to add oak next week", [e("plan", what="add oak", due="2025-10")]),
    ("will press on Monday", [e("plan", what="press", due="2025-10-06")]),
    ("need to order more corks", [e("plan", None, what="order more corks")]),
]

END: list[Row] = [
    ("dumped batch 3, vinegar", [e("end", reason="vinegar")]),  # format
    ("poured the zin down the drain", [e("end")]),
    ("threw out batch 3, smelled of rotten eggs", [e("end", reason="smelled of rotten eggs")]),
]

SEVERAL: list[Row] = [
    ("racked the zin to carboy 2 yesterday, added 1/4 tsp kmeta, topped up with water. SG 0.998 today",
     [e("rack", on=FRIDAY, to="carboy 2"), add("potassium metabisulfite", 0.25, "tsp", on=FRIDAY),
      e("top_up", on=FRIDAY, with_="water"), sg(0.998)]),
    ("- SG 1.020\n- 72F\n- punched down 2x", [sg(1.02), temp(72), e("punch_down", times=2)]),
    ("Oct 1: 1.060. Oct 2: 1.045. Oct 3: 1.030",
     [sg(1.06, on="2025-10-01"), sg(1.045, on="2025-10-02"), sg(1.03, on=FRIDAY)]),
    ("pressed, 5 gal into carboy 2, sg 1.005, added ML culture",
     [e("press"), e("rack", to="carboy 2", volume=5, unit="gal"), sg(1.005), e("malolactic", stage="started")]),
    ("opened a bottle of the merlot: cherry, cedar, 8/10",
     [e("drink", 2, count=1), e("taste", 2, words=["cherry", "cedar"], score=8, out_of=10)]),
]  # fmt: skip

# Over `pair`, where the plum, batch 4, is under way in bucket 2 as well.
PAIR: list[Row] = [
    ("blended 1 gal of batch 4 into batch 3", [e("blend", with_=[{"batch": 4, "amount": 1, "unit": "gal"}])]),  # format
    ("blended 10% of the plum into the zin", [e("blend", with_=[{"batch": 4, "amount": 10, "unit": "%"}])]),
    ("b3 1.010, b4 1.022", [sg(1.01), sg(1.022, 4)]),
    ("batch 3: 1.010 at 70F; batch 4: 1.022 at 68F", [sg(1.01), temp(70), sg(1.022, 4), temp(68, batch=4)]),
    ("punched down both", [e("punch_down"), e("punch_down", 4)]),
    ("1/4 tsp kmeta in each of batch 3 and batch 4",
     [add("potassium metabisulfite", 0.25, "tsp"), add("potassium metabisulfite", 0.25, "tsp", 4)]),
    ("plum 1.040, zin pressed", [sg(1.04, 4), e("press")]),
    ("bucket 2 is at 1.050", [sg(1.05, 4)]),
    ("#4 smells fine, 70F", [temp(70, batch=4)]),
]  # fmt: skip

# Over `solo` kept in metric units, days first, euros.
METRIC: list[Row] = [
    ("SG 1.030 at 22 C", [sg(1.03), temp(22, "C")]),
    ("22 degrees", [temp(22, "C")]),
    ("temp 22", [temp(22, "C")]),
    ("racked 20 l on 3/10", [e("rack", on=FRIDAY, volume=20, unit="L")]),
    ("SG 1,020", [sg(1.02)]),
    ("added 0,5 g/l tartaric", [add("tartaric acid", 0.5, "g/L")]),
    ("8.6 litres left", [read("volume", 8.6, "L")]),  # format
    ("100 corks, 14 €", [e("purchase", None, item="corks", count=100, price=14, currency="EUR")]),
    ("5 g KMBS per hl", [add("potassium metabisulfite", 0.05, "g/L")]),
]

TABLES: dict[str, list[Row]] = {
    "start": START, "reading": READING, "pitch": PITCH, "addition": ADDITION, "fermentation": FERMENTATION,
    "acts": ACTS, "rack": RACK, "move": MOVE, "top up": TOP_UP, "oak": OAK, "malolactic": MALOLACTIC, "bottle": BOTTLE,
    "taste": TASTE, "drink and give": DRINK, "purchase": PURCHASE, "vessel": VESSEL, "plan": PLAN, "end": END,
    "several": SEVERAL,
}  # fmt: skip


@pytest.mark.parametrize(("note", "entries"), [row for table in TABLES.values() for row in table])
def test_kinds(note: str, entries: list[Json], cellars: Cellars) -> None:
    check(cellars.reading("solo", note), entries)


@pytest.mark.parametrize(("written", "material"), MATERIALS)
def test_materials(written: str, material: str, cellars: Cellars) -> None:
    check(cellars.reading("solo", f"added 5 g {written}"), [add(material, 5, "g")])


@pytest.mark.parametrize(("note", "entries"), PAIR)
def test_two_batches_under_way(note: str, entries: list[Json], cellars: Cellars) -> None:
    check(cellars.reading("pair", note), entries)


@pytest.mark.parametrize(("note", "entries"), METRIC)
def test_metric(note: str, entries: list[Json], cellars: Cellars) -> None:
    check(cellars.reading("solo", note, units="metric"), entries)
