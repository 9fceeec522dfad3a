"""Answers over a generated journal of some 2,000 entries, against plain SQL (sqlite3) over its exported rows."""

import json
import random
import re
import sqlite3
from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest

from journalbot.journal.exchange import export
from journalbot.journal.store import Journal
from journalbot.language.names import Names
from journalbot.model import Entry
from journalbot.questions import ask

TODAY = date(2024, 12, 1)
BATCHES = 60
FRUITS = ("merlot", "syrah", "riesling", "chardonnay", "apple juice", "plums", "malbec", "pinot grigio")
YEASTS = ("ZT-12", "BX204", "44R", "QN-7")
MATERIALS = ("potassium metabisulfite", "tartaric acid", "bentonite", "yeast nutrient", "sugar")
PEOPLE = ("Tamsin", "Berek", "Olwen")


def _batch(number: int, rng: random.Random) -> list[Entry]:
    """The entries of one batch: figures at random, days in the order that a wine has."""
    start = date(2021, 1, 1) + timedelta(rng.randrange(1100))
    day = start
    out: list[Entry] = []

    def put(kind: str, **fields: object) -> None:
        out.append(Entry(kind, number, day.isoformat(), fields))

    def later(low: int, high: int) -> None:
        nonlocal day
        day += timedelta(rng.randint(low, high))

    put("start", volume=rng.randint(10, 60), unit="L", **{"from": [rng.choice(FRUITS)]})
    put("purchase", item="grapes", price=rng.randint(40, 400), currency="USD")
    put("reading", quantity="sg", value=rng.randint(1070, 1110) / 1000, unit="SG")
    for quantity, low, high, unit in (("ph", 300, 390, "pH"), ("ta", 400, 900, "g/L")):
        if rng.random() < 0.8:
            put("reading", quantity=quantity, value=rng.randint(low, high) / 100, unit=unit)
    later(0, 2)
    put("pitch", yeast=rng.choice(YEASTS), amount=5, unit="g")
    for _ in range(rng.randint(2, 14)):
        later(0, 2)
        put("reading", quantity="temperature", value=rng.randint(55, 90), unit="F")
        if rng.random() < 0.4:
            put("punch_down", times=rng.randint(1, 4))
    later(1, 10)
    put("fermentation", stage="finished")
    for _ in range(rng.randint(0, 5)):
        later(10, 60)
        put("rack", to=f"carboy {rng.randint(1, 30)}")
        put("addition", material=rng.choice(MATERIALS), amount=rng.randint(1, 50), unit="g")
    if rng.random() < 0.7:
        later(10, 90)
        count = rng.randint(12, 60)
        put("bottle", count=count)
        for _ in range(rng.randint(0, 4)):
            later(5, 40)
            if rng.random() < 0.5:
                put("drink", count=rng.randint(1, 2))
            else:
                put("give", count=rng.randint(1, 2), to=rng.choice(PEOPLE))
            put("taste", words=[rng.choice(("plum", "leather", "smoke", "honey"))], score=rng.randint(8, 19), out_of=20)
    return [e for e in out if e.date <= TODAY.isoformat()]


@pytest.fixture(scope="module")
def judged(tmp_path_factory: pytest.TempPathFactory) -> Iterator[tuple[Journal, Names, sqlite3.Connection]]:
    """The journal, the names in it, and its exported rows as one SQL table."""
    rng = random.Random(20241201)
    path: Path = tmp_path_factory.mktemp("judge") / "journal.db"
    with Journal.open(path) as journal:
        with journal.turn():
            for number in range(1, BATCHES + 1):
                note = journal.add_note("2021-01-01", f"all of batch {number}")
                journal.file(note.number, _batch(number, rng), origin="given")
        names = Names()
        cellar = journal.cellar()
        for sort in ("yeast", "material", "person"):
            for known in cellar.names.get(sort, {}).values():
                names.learn(sort, known.name)
        names.update_batches(cellar.batches.values())
        rows = [e for line in export(journal) for e in json.loads(line).get("entries", [])]
        db = sqlite3.connect(":memory:")
        fields = (
            "kind",
            "batch",
            "date",
            "quantity",
            "value",
            "unit",
            "material",
            "amount",
            "yeast",
            "price",
            "count",
            "score",
            "stage",
            "to",
        )
        db.execute(f"CREATE TABLE e ({', '.join(f'[{f}]' for f in fields)}, nth INTEGER PRIMARY KEY)")
        db.executemany(
            f"INSERT INTO e ({', '.join(f'[{f}]' for f in fields)}) VALUES ({', '.join('?' * len(fields))})",
            [[e.get(f) for f in fields] for e in rows],
        )
        yield journal, names, db
        db.close()


FIRST = "SELECT value FROM e WHERE kind = 'reading' AND batch = {b} AND quantity = '{q}' ORDER BY date, nth LIMIT 1"

# Each with the SQL that gives the one figure that the answer must hold.
FIGURES: tuple[tuple[str, str], ...] = (
    ("what was the starting pH of batch 3", FIRST.format(b=3, q="ph")),
    ("starting TA of batch 11", FIRST.format(b=11, q="ta")),
    ("og of batch 17", FIRST.format(b=17, q="sg")),
    ("highest temperature of batch 5", "SELECT max(value) FROM e WHERE batch = 5 AND quantity = 'temperature'"),
    ("lowest temperature of batch 6", "SELECT min(value) FROM e WHERE batch = 6 AND quantity = 'temperature'"),
    (
        "average temperature of batch 7",
        "SELECT round(avg(value), 1) FROM e WHERE batch = 7 AND quantity = 'temperature'",
    ),
    (
        "last temperature of batch 8",
        "SELECT value FROM e WHERE batch = 8 AND quantity = 'temperature' ORDER BY date DESC, nth DESC LIMIT 1",
    ),
    ("how many times was batch 9 racked", "SELECT count(*) FROM e WHERE batch = 9 AND kind = 'rack'"),
    ("how often did I punch down batch 10", "SELECT count(*) FROM e WHERE batch = 10 AND kind = 'punch_down'"),
    ("how many bottles of batch 12 did I fill", "SELECT sum(count) FROM e WHERE batch = 12 AND kind = 'bottle'"),
    (
        "how many bottles of batch 13 are left",
        "SELECT sum(CASE kind WHEN 'bottle' THEN count ELSE -count END) FROM e WHERE batch = 13 AND kind IN "
        "('bottle', 'drink', 'give')",
    ),
    ("how many bottles have I filled in all", "SELECT sum(count) FROM e WHERE kind = 'bottle'"),
    (
        "how many bottles are left in total",
        "SELECT sum(CASE kind WHEN 'bottle' THEN count ELSE -count END) FROM e WHERE kind IN ('bottle', "
        "'drink', 'give')",
    ),
    ("how many bottles have I given to Tamsin", "SELECT sum(count) FROM e WHERE kind = 'give' AND [to] = 'Tamsin'"),
    ("how many bottles did I drink in 2023", "SELECT sum(count) FROM e WHERE kind = 'drink' AND date LIKE '2023%'"),
    ("how much did I spend in 2022", "SELECT sum(price) FROM e WHERE kind = 'purchase' AND date LIKE '2022%'"),
    ("total spent on batch 14", "SELECT sum(price) FROM e WHERE batch = 14 AND kind = 'purchase'"),
    (
        "what did batch 16 cost per bottle",
        "SELECT round(1.0 * (SELECT sum(price) FROM e WHERE batch = 16) / (SELECT sum(count) FROM e WHERE "
        "batch = 16 AND kind = 'bottle'), 2)",
    ),
    ("average score of batch 18", "SELECT round(avg(score), 2) FROM e WHERE batch = 18 AND kind = 'taste'"),
    ("best score of batch 20", "SELECT max(score) FROM e WHERE batch = 20 AND kind = 'taste'"),
    (
        "how long did batch 21 ferment",
        "SELECT julianday((SELECT max(date) FROM e WHERE batch = 21 AND stage = 'finished')) - "
        "julianday((SELECT min(date) FROM e WHERE batch = 21 AND kind = 'pitch'))",
    ),
    (
        "days from pitch to bottle for batch 22",
        "SELECT julianday((SELECT min(date) FROM e WHERE batch = 22 AND kind = 'bottle')) - "
        "julianday((SELECT min(date) FROM e WHERE batch = 22 AND kind = 'pitch'))",
    ),
    (
        "how long since batch 23 was racked",
        "SELECT julianday('2024-12-01') - julianday((SELECT max(date) FROM e WHERE batch = 23 AND kind = 'rack'))",
    ),
    ("how many batches have I started", "SELECT count(DISTINCT batch) FROM e WHERE kind = 'start'"),
    ("how many tastings have I done", "SELECT count(*) FROM e WHERE kind = 'taste'"),
)

# Each with the SQL that gives the batches that the answer must name, and no others.
LISTS: tuple[tuple[str, str], ...] = (
    ("which wines did I add bentonite to", "SELECT DISTINCT batch FROM e WHERE material = 'bentonite'"),
    ("which wines did I add acid to", "SELECT DISTINCT batch FROM e WHERE material = 'tartaric acid'"),
    (
        "which batches were racked more than 3 times",
        "SELECT batch FROM e WHERE kind = 'rack' GROUP BY batch HAVING count(*) > 3",
    ),
    (
        "which wines were never racked",
        "SELECT DISTINCT batch FROM e WHERE batch NOT IN (SELECT batch FROM e WHERE kind = 'rack')",
    ),
    ("which batches used QN-7", "SELECT DISTINCT batch FROM e WHERE yeast = 'QN-7'"),
    ("which wines scored over 17", "SELECT DISTINCT batch FROM e WHERE score > 17"),
    ("wines that scored under 9", "SELECT DISTINCT batch FROM e WHERE score < 9"),
    ("which wines got above 88 degrees", "SELECT DISTINCT batch FROM e WHERE quantity = 'temperature' AND value > 88"),
    ("which wines did I give to Olwen", "SELECT DISTINCT batch FROM e WHERE kind = 'give' AND [to] = 'Olwen'"),
    (
        "which wines are not bottled yet",
        "SELECT DISTINCT batch FROM e WHERE batch NOT IN (SELECT batch FROM e WHERE kind = 'bottle')",
    ),
    ("which batches did I start in 2022", "SELECT DISTINCT batch FROM e WHERE kind = 'start' AND date LIKE '2022%'"),
    ("which wines did I bottle in 2023", "SELECT DISTINCT batch FROM e WHERE kind = 'bottle' AND date LIKE '2023%'"),
    (
        "which wine had the highest temperature",
        "SELECT DISTINCT batch FROM e WHERE quantity = 'temperature' AND value = (SELECT max(value) FROM e "
        "WHERE quantity = 'temperature')",
    ),
    (
        "which wine has the lowest pH",
        "SELECT DISTINCT batch FROM e WHERE quantity = 'ph' AND value = (SELECT min(value) FROM e WHERE "
        "quantity = 'ph')",
    ),
    (
        "which wine was racked most often",
        "SELECT batch FROM e WHERE kind = 'rack' GROUP BY batch HAVING count(*) = (SELECT max(n) FROM "
        "(SELECT count(*) n FROM e WHERE kind = 'rack' GROUP BY batch))",
    ),
    ("which wine got the best score", "SELECT DISTINCT batch FROM e WHERE score = (SELECT max(score) FROM e)"),
    ("which wines have had sugar", "SELECT DISTINCT batch FROM e WHERE material = 'sugar'"),
    (
        "which wines that I racked more than twice scored over 16",
        "SELECT DISTINCT batch FROM e WHERE score > 16 AND batch IN (SELECT batch FROM e WHERE kind = 'rack' "
        "GROUP BY batch HAVING count(*) > 2)",
    ),
)


def named(text: str) -> set[int]:
    """The batches that an answer names."""
    return {int(n) for n in re.findall(r"[Bb]atch (\d+)", text)}


@pytest.mark.parametrize("question, sql", FIGURES, ids=[q for q, _ in FIGURES])
def test_figures_equal_those_of_sql(judged: tuple[Journal, Names, sqlite3.Connection], question: str, sql: str) -> None:
    journal, names, db = judged
    (expected,) = db.execute(sql).fetchone()
    answer, _ = ask(question, TODAY, journal, names)
    if expected is None:
        assert not answer.found
        return
    first = re.sub(
        r"[Bb]atch \d+ \([^)]*\)|\b\d{1,2} [A-Z][a-z]{2} \d{4}", "", answer.answer.partition("\n")[0]
    ).replace(",", "")
    figures = [float(x) for x in re.findall(r"(?<![\w.])\d+\.?\d*", first)]
    assert answer.found
    assert any(abs(x - expected) < 0.006 for x in figures[:1]), answer


@pytest.mark.parametrize("question, sql", LISTS, ids=[q for q, _ in LISTS])
def test_lists_equal_those_of_sql(judged: tuple[Journal, Names, sqlite3.Connection], question: str, sql: str) -> None:
    journal, names, db = judged
    expected = {n for (n,) in db.execute(sql)}
    answer, _ = ask(question, TODAY, journal, names)
    assert named(answer.answer) == expected, answer


def test_the_journal_is_as_large_as_it_says(judged: tuple[Journal, Names, sqlite3.Connection]) -> None:
    assert judged[2].execute("SELECT count(*) FROM e").fetchone()[0] > 1500
