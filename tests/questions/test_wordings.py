"""Which calculation a sentence asks for: the wordings of common speech, and questions of the record that are none.

Batches 1 to 6 stand for wines of the journal; what each measure then answers is checked elsewhere.
"""

from datetime import date

import pytest

from journalbot.journal.cellar import Cellar
from journalbot.language.names import Names
from journalbot.model import Batch, Settings
from journalbot.questions.calculator import read_calculation
from journalbot.questions.signs import read_text
from journalbot.questions.whom import references

TODAY = date(2024, 11, 20)
FRUIT = ("merlot", "apple", "mead", "chardonnay juice", "riesling", "zinfandel")

WORDINGS: dict[str, tuple[str, ...]] = {
    "scales": (
        "what's 1.088?",
        "what is SG 1.088 in brix",
        "what is 24 brix as SG",
        "how many g/L sugar is 1.090",
        "what is the density of 1.075",
        "what is 0.996",
        "what's .994 in brix",
        "what is -1.2 brix in sg",
        "what does 1.250 mean",
        "what is batch 4's gravity in brix",
        "1.088",
        "1.088?",
        "convert 1.088 to brix",
        "23 plato in sg",
        "how sweet is 1.010 in g/L",
        "what would 19.5 brix be in SG",
        "1,078 in brix?",
        "what's the SG of 21 °Bx",
        "how many grams of sugar per litre at 1.085",
        "1.004 in Brix",
    ),
    "potential alcohol": (
        "potential alcohol of 1.085",
        "potential alcohol of 22 brix",
        "how much alcohol could 1.090 give",
        "what is the potential alcohol of batch 4",
        "potential alcohol of batch 3",
        "if a grape must reads 1.090 what alcohol will it make",
        "what's the potential alcohol at 1.078",
        "how much alcohol would a must of 1.082 give?",
        "potential alcohol for batch 3",
    ),
    "corrected gravity": (
        "1.085 at 85F, corrected?",
        "what is 1.010 at 50F really",
        "correct 1.085 read at 85F",
        "my hydrometer read 1.050 at 30C, what is it really",
        "hydrometer correction for 1.020 at 95F",
        "correct 1.050 at 150F",
        "what is the corrected gravity of batch 1 at 78F",
        "the reading was 1.045 at 28 C, corrected please?",
        "what does 0.994 at 12C come to corrected",
        "correct 1.072 taken at 25 °C",
        "what should 1.012 at 30C really be",
    ),
    "alcohol at the end": (
        "what will batch 3 finish at",
        "how strong will batch 3 be at the end",
        "final alcohol of batch 3 if it goes dry",
        "what strength will batch 2 reach",
        "how strong would batch 2 end up if it ferments dry",
    ),
    "dryness": (
        "is batch 1 dry",
        "is batch 2 dry yet",
        "is the mead dry?",
        "is batch 5 dry",
    ),
    "strength from gravities": (
        "alcohol from 1.200 to 1.000",
        "alcohol from 1.090 to 0.995",
        "abv if it goes from 1.085 to 1.000",
        "alcohol from 1.130 to 1.010",
        "what would 1.092 to .996 make",
        "og 1.085 fg 0.996 abv?",
        "alcohol of 1.078 down to 0.994",
        "what abv from OG 1.085 FG 0.996",
    ),
    "sulfite needed": (
        "how much kmeta for batch 1",
        "how much sulfite does batch 1 need",
        "how much sulfite should I add to batch 5",
        "how much sulfite for batch 4",
        "how much kmeta does batch 3 need",
        "I need to add sulfite to batch 2, how much?",
        "does batch 1 need sulfite",
        "should I sulfite batch 5",
        "how much sulfite does batch 4 need",
        "how much sulfite does batch 3 need",
        "how much kmeta does batch 2 need",
        "what free so2 does batch 1 need",
        "how much sulphite do I need for batch 5",
        "how much sulphite does batch 1 need",
        "should I sulphite batch 2",
    ),
    "sulfite dose": (
        "how much kmeta to add 50 ppm to batch 1",
        "how much kmeta to bring batch 1 to 30 ppm",
        "how much kmeta to get batch 5 to 30 ppm free",
        "how many campden tablets to add 50 ppm to batch 1",
        "how many teaspoons of kmeta for 30 ppm in 6 gallons",
        "how much sodium metabisulfite for 40 ppm in 5 gallons",
        "how much kmeta for batch 4 for 30 ppm",
        "how much kmeta for 500 ppm in 5 gal",
        "how much kmeta for -3 gallons",
        "how many grams metabisulphite for 40 L at 50 mg/l",
        "how much K-meta to lift batch 1 by 20 mg/L",
        "how much meta for batch 1 to reach 30 mg/l free",
        "what dose of campden for 10 L",
    ),
    "free SO2 needed": (
        "how much SO2 do I need at pH 3.6",
        "what free so2 do I need for 0.8 molecular at pH 3.4",
        "how much free SO2 for pH 3.15",
    ),
    "molecular SO2": (
        "molecular so2 of batch 1",
        "what's the molecular SO2 of batch 5",
        "molecular so2 of 30 ppm at pH 3.5 and 13% alcohol at 20C",
        "what is the molecular so2 at 25 mg/L free and pH 3.3",
    ),
    "free SO2 now": ("what is the free SO2 of batch 5 now",),
    "sulfite for molecular": ("how much kmeta for 0.8 molecular in batch 1",),
    "sulfite given": (
        "how many ppm is 1/4 tsp of kmeta in 5 gallons",
        "how much so2 will 2 g of kmeta add to 23 L",
        "what does 1 campden tablet per gallon give",
        "2 g of kmeta in 20 L is how many ppm",
    ),
    "acid advice": (
        "is batch 5 too acidic",
        "is batch 1 too acidic",
    ),
    "acid dose": (
        "how much tartaric to raise batch 1 by 1 g/L",
        "how much tartaric acid for +1.5 g/L in 23 L",
        "how much tartaric to raise batch 1 from 6.1 to 7 g/L",
        "how much tartaric to get batch 1 to 7 g/L TA",
        "how much acid blend to raise 5 gallons by 0.1%",
        "how much citric acid to add 1 g/L to 5 gal",
        "how much malic acid for 20 L to go up 2 g/L",
        "how much chalk to lower batch 5 by 1 g/L",
        "how much potassium bicarbonate to lower TA by 1 g/L in 5 gallons",
        "how much potassium carbonate to drop 23 litres by 2 g/L",
        "how much tartaric for batch 4 to go up 1 g/L",
        "raise TA by 20 g/L in 5 gallons, how much tartaric",
        "how much tartaric for batch 3 to get to 8 g/l",
        "how much chalk to bring batch 1 from 9.2 to 8 g/L",
        "how much potassium bicarbonate for 23 L to drop 1.5 g/L",
    ),
    "TA in other units": (
        "what is TA 0.65% in g/L",
        "what is 6 g/L TA as sulfuric",
        "convert TA 4.5 g/L sulfuric to tartaric",
        "what's 9.2 g/L tartaric in sulphuric",
    ),
    "malolactic change": (
        "how much will malolactic lower the acid with 3 g/L malic",
        "what does malolactic do to the TA of batch 1",
        "will malolactic lower the TA of batch 3",
        "how far will malo drop the acidity of batch 3",
    ),
    "pH not promised": (
        "how much will pH drop if I add 1 g/L tartaric to batch 1",
        "how much tartaric to lower the pH of batch 1 to 3.4",
        "what would 1 g/L of tartaric do to the pH",
    ),
    "sugar needed": (
        "how much sugar to raise 5 gallons from 1.070 to 1.090",
        "how much sugar for batch 4 to reach 24 brix",
        "how much sugar to get 20 L from 18 to 22 brix",
        "how much sugar to reach 1.090 in 6 gallons of 1.080 must",
        "how much sugar to get batch 4 to 13% alcohol",
        "how much sugar for 12% in 5 gallons from 1.050",
        "how much honey to get 5 gallons to 1.100",
        "how much honey for 3 gallons of mead at 1.110",
        "how much water to bring 23 L from 1.110 to 1.095",
        "how much water to take batch 4 from 22 to 20 brix",
        "how much grape concentrate at 68 brix to bring 20 L from 18 to 22 brix",
        "how much sugar to bring 40 L from 1.078 to 1.085",
        "how much sugar would take batch 2 to 14% alcohol",
        "how much honey for 10 L at 1.095",
        "how much water to bring 10 L from 24 to 22 Brix",
    ),
    "sweetening": (
        "how much sugar to sweeten batch 1 to 1.010",
        "how much sugar to back-sweeten 5 gallons from 0.996 to 1.008",
        "how much sugar to backsweeten batch 5 to 1.005",
        "how much sugar to sweeten 20 litres by 20 g/L",
        "how much sugar to sweeten batch 5 to 1.004",
    ),
    "sorbate dose": (
        "how much sorbate for batch 1",
        "how much sorbate for 5 gallons at 12% and pH 3.3",
        "how much sorbate for batch 5",
        "sorbate for 20 L at 11% and pH 3.2, how much",
    ),
    "nitrogen need": (
        "how much nutrient does batch 4 need",
        "how much nitrogen does a 24 brix must need",
        "how much DAP for batch 4",
        "how much YAN does 23 brix need",
        "how much nutrient for batch 2",
        "what YAN does a must of 1.090 need",
    ),
    "nitrogen dose": (
        "how much DAP to raise YAN by 80 mg/L in 23 L",
        "how much DAP for 20 L to add 100 mg/L YAN",
    ),
    "nitrogen given": ("how much nitrogen does 5 g DAP give in 23 L",),
    "usual dose": (
        "how much bentonite for batch 5",
        "how much bentonite for 6 gallons",
        "how much gelatin for 23 L",
        "how much oak for batch 1",
        "how many oak cubes for 5 gallons",
        "how much oak chips for batch 1",
        "how many grams of oak cubes for 23 L",
        "bentonite for 36 L, how much",
        "how much bentonite should I give batch 1",
        "oak cubes for 20 L?",
    ),
    "blend shares": (
        "pearson square 14% and 11% to get 12.5%",
        "how much 14% wine and 11% wine to make 12.5%",
        "what ratio of 10% and 14% wine gives 12%",
        "how do I blend TA 8 and TA 6 to get 6.5",
        "blend pH 3.2 and pH 3.8 to get 3.5",
        "in what proportion do I mix 13.5% and 11% for 12%",
    ),
    "blend of batches": (
        "if I blend batch 1 and batch 2 half and half what alcohol",
        "blend 3 gallons of batch 1 with 2 gallons of batch 2, what would the alcohol be",
        "what would batch 1 and batch 3 come to blended half and half",
        "if I mix batch 1 with batch 3 what will the TA be",
        "what pH would I get blending batch 1 and batch 3",
    ),
    "blend of lots": (
        "what would 3 gal of 12% and 2 gal of 14% come to",
        "what is the alcohol of 10 L at 12%, 5 L at 14% and 3 L at 9% mixed",
        "20 L at TA 9 and 10 L at TA 6, what TA",
    ),
    "blend to reach": ("how much of batch 5 to add to batch 1 to get 11.5%",),
    "primary size": (
        "how big a bucket for 6 gallons of red must",
        "how big a fermenter do I need for 20 L of red must",
    ),
    "room for foam": (
        "is 6 gallons of must too much for an 8 gallon bucket",
        "will 6 gallons of red fit in a 7.9 gallon bucket with room for foam",
        "how much headspace for 5 gallons of red in a 6.5 gallon bucket",
        "can I ferment 20 L in a 25 L bucket",
        "is a 25 L bin big enough for 20 L of red",
    ),
    "racking loss": (
        "how much will I lose racking batch 1",
        "how much does racking leave behind in 6 gallons",
        "what do I lose when racking 20 L",
    ),
    "top-up needed": (
        "how much top up will batch 1 need in a 6 gallon carboy",
        "how much do I need to top up batch 1 if I rack to carboy A",
        "how much wine to top up a 23 L demijohn with 21 L in it",
    ),
    "vessels that fit": (
        "which carboys would batch 1 fit in",
        "which vessels fit 5 gallons",
        "what can I rack batch 3 into",
        "what will 36 L fit into",
        "where can I put 15 litres",
    ),
    "bottles needed": (
        "how many bottles for batch 1",
        "how many bottles will batch 1 fill",
        "how many bottles do I need for 5 gallons",
        "how many corks do I need for batch 1",
        "how many corks for 23 litres",
        "how many 375 ml bottles for 5 gallons",
        "how many bottles for batch 4",
        "how many half bottles from 20 L",
        "how many bottles for 36 L",
        "how many bottles will batch 5 make",
        "how many corks for batch 1",
    ),
    "gas of a wine": (
        "how much CO2 does 23 L of wine at 12% give off",
        "how much CO2 comes off 20 L at 12%",
    ),
    "bottle pressure": (
        "how much pressure if 10 g/L of sugar ferments in the bottle",
        "what pressure would 4 g/L sugar make at 20C",
        "what if 1.002 refermented in the bottle",
        "if it drops from 1.002 to 0.998 in the bottle what pressure",
        "if 6 g/l sugar ferments in the bottle what's the pressure",
        "pressure at 25C if 8 g/L of sugar refermented",
    ),
    "when due": (
        "should I rack batch 1",
        "when should I rack batch 1",
        "when should I bottle batch 1",
        "when is batch 6 ready to drink",
        "when should I drink batch 6",
        "do I need to top up",
        "when is the next racking of batch 1 due",
        "is it time to punch down",
        "when should I taste batch 1",
        "when should I check the airlock",
        "when do I rack batch 5 next",
    ),
    "one worry": (
        "is batch 3 stuck",
        "is batch 3 too cold",
        "is batch 1 too warm",
        "is batch 2 stuck?",
        "is batch 2 too warm",
    ),
    "attenuation from gravities": ("attenuation from 1.085 to 1.010",),
    "sugar of a reading": ("how much sugar is left at 1.010 with 11% alcohol",),
    "sugar for alcohol": ("how much sugar for another 1% alcohol in 20 L",),
    "sugar given": ("if I add 500 g of sugar to 10 L at 1.070 what does it become",),
    "blend to add": ("how much 9% wine do I add to 20 L of 13% wine to get 12%",),
    "swelling": ("how much does 20 L expand from 12C to 25C",),
    "overdue": ("what's overdue for batch 1",),
}

# Questions of what has been, and notes: nothing is to be worked out.
NO_CALCULATION: tuple[str, ...] = (
    "how much meta has batch 1 had",
    "how much sugar did batch 2 get",
    "how much tartaric went in batch 1",
    "when did I add tartaric to batch 1",
    "how much kmeta did I add to batch 5 in March",
    "how many bottles of batch 6 are left",
    "how many bottles did batch 6 make",
    "how long did batch 1 ferment",
    "when was batch 1 racked",
    "what yeast did batch 1 get",
    "how much did batch 1 cost",
    "what was the pH of batch 1 in March",
    "where is batch 1",
    "which batches reached 13% alcohol",
    "which wines had SG over 1.090",
    "how often did I rack batch 1",
    "who drank batch 6",
    "what did batch 1 taste like",
    "what is in carboy B",
    "how much honey did I buy",
    "what did I rack into carboy A",
    "how many corks did I use for batch 6",
)


@pytest.fixture(scope="module")
def cellar() -> Cellar:
    cellar = Cellar()
    for number, fruit in enumerate(FRUIT, 1):
        cellar.batches[number] = Batch(number, started="2024-09-01", fruit=(fruit,))
    return cellar


def measure_of(question: str, cellar: Cellar) -> str:
    """The calculation that a question is read as; empty where it is none."""
    names = Names()
    names.update_batches(cellar.batches.values())
    text = read_text(question, names, TODAY, Settings())
    query = read_calculation(text, references(text), cellar)
    return query.whats[0].measure if query else ""


@pytest.mark.parametrize(
    ("measure", "question"), [(measure, question) for measure, questions in WORDINGS.items() for question in questions]
)
def test_wordings(measure: str, question: str, cellar: Cellar) -> None:
    assert measure_of(question, cellar) == measure


@pytest.mark.parametrize("question", NO_CALCULATION)
def test_what_is_no_calculation(question: str, cellar: Cellar) -> None:
    assert measure_of(question, cellar) == ""
