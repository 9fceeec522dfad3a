"""From a person's sentence to the figure: a small invented cellar typed in as a winemaker would, asked in plain words,
in the chat and through `ask --json`; the readings used are named.

Each expected figure is worked out here from its formula, whose source stands beside it; independent of the program's
own functions except where a table of another test is pointed to.
"""

import json
import re
from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest
from molmass import Formula

from journalbot.assistant import Assistant
from journalbot.cli import main
from journalbot.journal.store import Journal

TODAY = date(2024, 11, 20)
GALLON = 3.785411784  # NIST Handbook 44
SHARE = 2 * Formula("SO2").mass / Formula("K2S2O5").mass  # SO2 in potassium metabisulfite
NOTES = (
    ("2024-08-30", "carboy A holds 6 gal, carboy B holds 5 gal, jug C holds 1 gal, bucket 1 is 7.9 gallons"),
    ("2024-09-01", "Started batch 1: 6 gal of merlot, crushed into bucket 1, SG 1.092, pH 3.62, TA 6.1 g/L"),
    ("2024-09-01", "bought merlot grapes for batch 1, $110"),
    ("2024-09-02", "pitched K7 yeast on batch 1"),
    ("2024-09-20", "racked batch 1 to carboy B, 5 gal, SG 0.995"),
    ("2024-09-20", "batch 1 finished fermenting"),
    ("2024-10-01", "batch 1 free SO2 18 ppm"),
    ("2024-09-05", "Started batch 2: 5 gallons of apple, SG 1.048, pH 3.4"),
    ("2024-09-06", "pitched apple batch 2 with EC7"),
    ("2024-09-08", "added 3 lb of sugar to batch 2"),
    ("2024-10-05", "batch 2 SG 0.998"),
    ("2024-10-20", "Started batch 3, chardonnay juice"),
    ("2024-10-20", "batch 3 at 22 brix"),
    ("2024-03-01", "started batch 4, 10 gal riesling split between carboy E and carboy F, SG 1.085, pH 3.2, TA 7.5"),
    ("2024-03-02", "pitched batch 4"),
    ("2024-03-25", "batch 4 SG .994"),
    ("2024-03-25", "batch 4 free so2 10 ppm"),
    ("2024-04-10", "added 1/4 tsp kmeta to batch 4"),
    ("2023-09-01", "started batch 5, 6 gal of zinfandel, SG 1.095, pH 3.5, TA 6.0"),
    ("2023-09-02", "pitched batch 5 with K7"),
    ("2023-09-15", "pressed batch 5, SG .998"),
    ("2024-06-01", "bottled batch 5, 24 bottles under cork"),
    ("2024-06-01", "bought 48 corks for $12"),
)

# The question; the figure and how near; what the answer must name: the reading, its day, the volume, the method.
EXAMPLES: tuple[tuple[str, float, float, tuple[str, ...]], ...] = (
    # gravity: Bubník et al. 1995, the row of 21 °Brix is SG 1.08739 and that of 1.088 21.1
    ("what's 1.088?", 21.1, 0.05, ("SG 1.088", "Brix", "potential alcohol")),
    # hydrometer at 86 °F, set at 60 °F, reading 1.090: add 0.0044 (computed from Bubník et al. and ISO 1768)
    ("1.090 at 86F, corrected?", 1.0944, 0.0006, ("60 °F",)),
    # must rule for grapes over 17 g/L (French practice): (2.66 · 92 − 30) / 17
    ("what is the potential alcohol of batch 1", (2.66 * 92 - 30) / 17, 0.06, ("1.092",)),
    # 131.25 × drop: common practice, no source
    ("how strong is batch 1", 131.25 * (1.092 - 0.995), 0.06, ("1.092 on 1 Sep 2024", "0.995 on 20 Sep 2024")),
    # 3 lb of sugar counted: (extract of 1.048 · 18.93 L + 1361 g) / (18.93 + 0.618 · 1.361) L is 188.0 g/L, SG 1.0722
    ("how strong is batch 2", 131.25 * (1.0722 - 0.998), 0.1, ("counting the sugar", "1.048 on 5 Sep 2024")),
    # apparent attenuation: Brix 21.99 to −1.30 (Bubník et al.)
    ("attenuation of batch 1", 100 * (1 + 1.30 / 21.99), 0.3, ("0.995",)),
    # molar masses
    ("how much kmeta to add 50 ppm to batch 1", 50 * 5 * GALLON / 1000 / SHARE, 0.02,
     ("batch 1, last known at 5 gal",)),
    ("how much kmeta to bring batch 1 to 30 ppm", 12 * 5 * GALLON / 1000 / SHARE, 0.01, ("18 mg/L of 1 Oct 2024",)),
    ("how many teaspoons of kmeta for 30 ppm in 6 gallons", 30 * 6 * GALLON / 1000 / SHARE, 0.02,
     ("level tsp", "6 gal")),
    # free SO2 for 0.5 mg/L molecular (usual for reds) at pH 3.62, pK 1.81: University of California Enology Briefs 1982
    ("how much sulfite does batch 1 need", (0.5 * (1 + 10 ** (3.62 - 1.81)) - 18) * 5 * GALLON / 1000 / SHARE, 0.02,
     ("pH 3.62 of 1 Sep 2024", "18 mg/L of 1 Oct 2024")),
    ("what free so2 do I need for 0.8 molecular at pH 3.4", 0.8 * (1 + 10 ** (3.4 - 1.81)), 0.5, ("pK 1.81",)),
    # 1 g/L of tartaric is 1 g/L of TA, by definition
    ("how much tartaric to get batch 1 to 7 g/L TA", 0.9 * 5 * GALLON, 0.1, ("TA 6.1 g/L of 1 Sep 2024",)),
    ("how much chalk to lower batch 4 by 1 g/L", 10 * GALLON * Formula("CaCO3").mass / Formula("C4H6O6").mass, 0.2,
     ("carboy E and carboy F",)),
    # two equivalents of malic to one of lactic: 75.04 g of TA for each 134.09 g
    ("how much will malolactic lower the acid with 3 g/L malic", 3 * 75.04 / 134.09, 0.05, ("3 g/L",)),
    # must mass · (B2 − B1) / (100 − B2), Brix of 1.070 and 1.090 by the NBS cubic: 17.06 and 21.58
    ("how much sugar to raise 5 gallons from 1.070 to 1.090", 5 * GALLON * 1.0681 * (21.58 - 17.06) / (100 - 21.58),
     0.015, ("1.070 to 1.090", "5 gal")),
    # 16 to 18 g/L for 1 % vol: Austrian and Burgundian practice
    ("how much sugar for another 1% alcohol in 5 gallons", 17 * 5 * GALLON, 10, ("17 g/L",)),
    # T. Underhill's table: 96 to 120 mg/L at 12 % and pH 3.1 to 3.3; 11.9 % and 3.2 lies by it
    ("how much sorbate for batch 4", 0.113 * 10 * GALLON, 0.25, ("pH 3.20 of 1 Mar 2024", "11.9 % vol")),
    # diammonium phosphate holds 2 · 14.007 / 132.06 of nitrogen
    ("how much DAP to raise YAN by 80 mg/L in 23 L",
     80 * 23 / 1000 / (2 * Formula("N").mass / Formula("(NH4)2HPO4").mass), 0.02, ("23 L",)),
    # Pearson square, by hand: 1.5 of 3 parts
    ("how much 14% wine and 11% wine to make 12%", 33, 0.5, ("distances",)),
    ("what would 3 gal of 12% and 2 gal of 14% come to", 12.8, 0.01, ("5 gal",)),
    ("how many bottles will batch 1 fill", int(5 * GALLON / 0.75), 0, ("5 gal",)),
    # 4.12 L of gas for a litre and a % vol, by molar masses
    ("how much CO2 does 23 L of wine at 12% give off", 4.12 * 23 * 12, 60, ("molar masses",)),
    # 3.4 g/L of sugar for a bar at 20 °C (Henry's law after IAPWS, ACS Omega 2021)
    ("how much pressure if 10 g/L of sugar ferments in the bottle", 10 / 3.4, 0.1, ("20 °C",)),
    ("how much headspace for 5 gallons of red in a 6.5 gallon bucket", 100 * 1.5 / 6.5, 0.5, ("6.5 gal",)),
    ("cost per bottle of batch 5", 24 * 0.25 / 24, 0.001, ("24 bottles", "not in it")),
)  # fmt: skip
FOUND_WITHOUT_NOTE = frozenset(question for question, *_ in EXAMPLES if not re.search(r"batch \d", question))


@pytest.fixture(scope="module")
def path(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The journal, typed in."""
    path = tmp_path_factory.mktemp("worked") / "journal.db"
    with Journal.open(path) as journal:
        assistant = Assistant(journal)
        for day, text in NOTES:
            reply = assistant.turn(text, date.fromisoformat(day))
            assert reply.ask is None, reply
    return path


@pytest.fixture
def assistant(path: Path) -> Iterator[Assistant]:
    with Journal.open(path) as journal:
        yield Assistant(journal)


def figures(text: str) -> list[float]:
    """Every number that an answer leads with: not those of the batch's name, nor of the working after it."""
    lead = re.sub(r"^[Bb]atch \d+ \([^)]*\)", "", text).split(" (")[0]
    return [float(x) for x in re.findall(r"(?<![\w.])-?\d*\.?\d+", lead)]


@pytest.mark.parametrize(("question", "figure", "within", "named"), EXAMPLES, ids=[row[0] for row in EXAMPLES])
def test_in_the_chat(assistant: Assistant, question: str, figure: float, within: float, named: tuple[str, ...]) -> None:
    reply = assistant.turn(question, TODAY)
    assert reply.answer is not None, reply
    assert reply.answer.found, reply
    assert any(abs(x - figure) <= within + 1e-9 for x in figures(reply.text)), reply.text
    assert all(name in reply.text for name in named), reply.text
    assert not reply.entries  # nothing was filed


@pytest.mark.parametrize(("question", "figure", "within", "named"), EXAMPLES, ids=[row[0] for row in EXAMPLES])
def test_as_json(
    path: Path,
    capsys: pytest.CaptureFixture[str],
    question: str,
    figure: float,
    within: float,
    named: tuple[str, ...],
) -> None:
    assert main(["--journal", str(path), "ask", "--json", "--today", TODAY.isoformat(), question]) == 0
    answer = json.loads(capsys.readouterr().out)
    assert answer["found"]
    assert answer["understood_as"]
    assert any(abs(x - figure) <= within + 1e-9 for x in figures(answer["answer"])), answer
    assert all(name in answer["answer"] for name in named), answer
    rests_on_notes = (
        question not in FOUND_WITHOUT_NOTE and "kmeta to add" not in question and "bottles will" not in question
    )
    assert bool(answer["notes"]) == rests_on_notes or "chalk" in question, answer


# ---- what is missing is named, and no dose is given without a volume


@pytest.mark.parametrize(
    ("question", "named"),
    [
        ("how much kmeta to add 30 ppm to batch 3", "how much there is of batch 3"),
        ("how much sulfite does batch 3 need", "how much there is of batch 3"),
        ("how much tartaric for batch 3 to go up 1 g/L", "how much there is of batch 3"),
        ("how much sugar for batch 3 to reach 24 brix", "how much there is of batch 3"),
        ("how much bentonite for batch 3", "how much there is of batch 3"),
        ("how much sorbate for batch 3", "how much there is of batch 3"),
        ("how much chalk to lower batch 3 by 1 g/L", "how much there is of batch 3"),
        ("how many bottles will batch 3 fill", "how much there is of batch 3"),
        ("how much kmeta for 30 ppm", "volume"),
        ("how much tartaric to raise TA by 1 g/L", "volume"),
        ("what does malolactic do to the TA of batch 1", "malic acid of batch 1"),
        ("how much tartaric to get batch 2 to 7 g/L", "TA of batch 2"),
    ],
)
def test_a_dose_is_never_given_without_what_it_needs(assistant: Assistant, question: str, named: str) -> None:
    reply = assistant.turn(question, TODAY)
    assert reply.answer is not None
    assert not reply.answer.found
    assert named in reply.text
    assert not re.search(r"\d (?:g|kg|tablets|level tsp)\b", reply.answer.answer), reply.text


@pytest.mark.parametrize(
    ("question", "said"),
    [
        (
            "how much sulfite does batch 2 need",
            r"No free SO2 is recorded for batch 2; with 0 mg/L it would be about [\d.]+ g",
        ),
        ("what is the molecular so2 of batch 1 at 30 ppm free", r"mg/L .*of molecular SO2"),
        ("how much sorbate for 5 gallons at 12%", r"No pH is given; with 3\.50 it would be about [\d.]+ g"),
    ],
)
def test_a_reading_that_is_missing_is_named_with_a_figure_for_a_usual_one(
    assistant: Assistant, question: str, said: str
) -> None:
    assert re.search(said, assistant.turn(question, TODAY).text)


def test_a_reading_older_than_the_last_addition_says_so(assistant: Assistant) -> None:
    reply = assistant.turn("how much kmeta to bring batch 4 to 30 ppm", TODAY)
    assert (
        "free SO2 10 mg/L of 25 Mar 2024, read before the potassium metabisulfite of 10 Apr 2024: measure again first"
        in (reply.text)
    )


def test_what_may_be_free_now_is_called_an_estimate(assistant: Assistant) -> None:
    """10 mg/L read, then 1/4 tsp (6 g a teaspoon) in 10 gal: 1.5 · 0.576 / 37.85 is 23 mg/L, 35 to 75 % of it free."""
    reply = assistant.turn("what is the free SO2 of batch 4 now", TODAY)
    assert "an estimate" in reply.text
    assert any(18 <= x <= 28 for x in figures(reply.text))


def test_a_wine_in_two_vessels_is_dosed_as_a_whole_and_says_where_it_is(assistant: Assistant) -> None:
    reply = assistant.turn("how much kmeta to add 30 ppm to batch 4", TODAY)
    assert "carboy E and carboy F" in reply.text


@pytest.mark.parametrize(
    ("question", "limits"),
    [
        ("what does 1.250 mean", "0.98 to 1.18"),
        ("correct 1.050 at 150F", "0 to 40 C"),
        ("alcohol from 1.200 to 1.000", "1.03 to 1.17"),
        ("potential alcohol of 1.150", "1.044 to 1.11"),
        ("how much kmeta for 500 ppm in 5 gal", "0 to 300 mg/L"),
        ("how much kmeta for 30 ppm in 9000 gal", "0.05 to 5000 L"),
        ("how much kmeta for -3 gallons", "0 to"),
        ("molecular so2 of 30 ppm at pH 5.5", "2.8 to 4.2"),
        ("raise TA by 20 g/L in 5 gallons, how much tartaric", "0 to 6 g/L"),
        ("how much sugar to bring 10 L from 1.080 to 1.250", "1 to 1.178"),
        ("how much sugar to sweeten 20 litres by 900 g/L", "0 to 300 g/L"),
        ("how much YAN does a 35 brix must need", "15 to 30"),
        ("pearson square 14% and 13% to get 12%", "13 to 14"),
        ("what pressure would 200 g/L of sugar make in the bottle", "0 to 100 g/L"),
        ("how much does 20 L expand from 12C to 60C", "0 to 40 C"),
    ],
)
def test_what_cannot_be_is_refused_with_its_limits(assistant: Assistant, question: str, limits: str) -> None:
    reply = assistant.turn(question, TODAY)
    assert reply.answer is not None, reply
    assert not reply.answer.found
    assert limits in reply.text


def test_ph_is_neither_blended_nor_promised(assistant: Assistant) -> None:
    assert "logarithm" in assistant.turn("blend pH 3.2 and pH 3.8 to get 3.5", TODAY).text
    assert "buffers" in assistant.turn("how much will pH drop if I add 1 g/L tartaric to batch 1", TODAY).text


def test_a_question_about_a_batch_is_carried_on_to_another(assistant: Assistant) -> None:
    assistant.turn("how much kmeta to add 50 ppm to batch 1", TODAY)
    reply = assistant.turn("and batch 4?", TODAY)
    assert any(abs(x - 50 * 10 * GALLON / 1000 / SHARE) < 0.02 for x in figures(reply.text)), reply.text


def test_which_of_two_is_asked(assistant: Assistant) -> None:
    reply = assistant.turn("how much kmeta to add 50 ppm to the red", TODAY)
    assert reply.ask is not None
    assert "batch 1" in reply.text


def test_sugar_that_was_measured_comes_before_an_estimate(tmp_path: Path) -> None:
    with Journal.open(tmp_path / "journal.db") as journal:
        assistant = Assistant(journal)
        for day, text in (*NOTES[13:16], ("2024-04-02", "lab says residual sugar 3.2 g/L for batch 4")):
            assistant.turn(text.replace("batch 4", "batch 1"), date.fromisoformat(day))
        reply = assistant.turn("is there any sugar left in batch 1", TODAY)
        assert "3.2 g/L" in reply.text
        assert "an estimate" not in reply.text
