"""How fast it is, against what can be measured in the same run: `python -m journalbot.bench [--quick]`.

Prints the start of one question and of one note against bare Python's start; the reading of a note against a general
library's search for dates alone in the same notes; answers at a thousand, ten thousand and a hundred thousand notes;
and the
rate and memory of an import. The notes are of a made-up cellar: a batch every thirty notes, three entries to a note.
"""

import argparse
import datetime
import json
import os
import resource
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

from journalbot.assistant import Assistant
from journalbot.journal.store import Journal

_FRUIT = ("merlot", "riesling", "zinfandel", "apple", "blackberry", "chardonnay", "syrah", "pear", "plum", "barbera")
_YEASTS = ("K-17", "RV-308", "TQ-55", "QB1120", "HL7731")
_FIRST = datetime.date(2015, 9, 1)
_LIFE = (  # a batch's notes, with the days between them; {n} is its number, {w} its fruit, {y} a yeast
    (0, "started batch {n}, 6 gal of {w} juice in bucket {v}, SG 1.092, pH 3.45"),
    (1, "pitched 5 g {y} in batch {n}, 68F, 1 tsp yeast nutrient"),
    (1, "batch {n} is bubbling away, 1.080 at 72F"),
    *((1, f"batch {{n}} 1.0{g} at 74F") for g in (71, 62, 55, 47, 38, 31, 22, 14)),
    (2, "batch {n} 0.998, fermented out, racked from bucket {v} to carboy {v}, 1/4 tsp kmeta"),
    *((20, f"topped up batch {{n}} with 200 ml of {{w}}, free SO2 {s} ppm, 62F") for s in (24, 22, 20, 19, 26, 24, 22)),
    (10, "2 oz medium toast French oak cubes into batch {n}"),
    (40, "pulled the cubes out of batch {n}, tasted: plum, vanilla, a bit tannic, 7/10"),
    (30, "racked batch {n} from carboy {v} to carboy {v}, 1/4 tsp kmeta"),
    (30, "bottled batch {n}, 28 x 750 ml, natural cork"),
    *((60, f"opened a bottle of batch {{n}}: cherry, cedar, {k}/10") for k in (6, 7, 7, 8, 8, 9)),
    (5, "gave 2 bottles of batch {n} to Orla"),
)
_QUESTIONS = (
    "what yeast did batch {n} get?", "when was batch {n} last racked?", "how long did batch {n} ferment?",
    "how many bottles of batch {n} are left?", "what alcohol does batch {n} have?", "did I oak batch {n}?",
    "how has batch {n} changed over the years?", "what is in carboy 2?",
)
_WIDE = (
    "how many bottles have I filled in all?", "hottest ferment and how hot?", "which wines were oaked?",
    "average score of the merlots",
)


def notes(count: int) -> list[dict[str, str]]:
    """So many notes of the made-up cellar, in order of time, as a notebook has them."""
    made = []
    for number in range(1, count // len(_LIFE) + 2):
        day = _FIRST + datetime.timedelta(days=number * 4)
        fruit, yeast, vessel = _FRUIT[number % len(_FRUIT)], _YEASTS[number % len(_YEASTS)], number % 200 + 1
        for after, text in _LIFE:
            day += datetime.timedelta(days=after)
            made.append({"on": day.isoformat(), "text": text.format(n=number, w=fruit, y=yeast, v=vessel)})
    return sorted(made, key=lambda note: note["on"])[:count]


def _filled(path: Path, count: int) -> tuple[float, float]:
    """A journal of so many notes read from their text; seconds for the first and for the last tenth of them."""
    marks = []
    with Journal.open(path) as journal:
        start = time.perf_counter()
        for i, _ in enumerate(Assistant(journal).import_lines(json.dumps(n) + "\n" for n in notes(count)), 1):
            if i in (count // 10, count - count // 10, count):
                marks.append(time.perf_counter() - start)
    return marks[0], marks[-1] - marks[-2]


def _run(*commands: list[str]) -> list[float]:
    """Seconds that each command takes, the middle of 21 rounds of them all, with bytecode cached.

    In rounds, so that whatever else the machine does meanwhile falls on all of them alike; output goes nowhere, as
    reading it would be timed too, and would make the quickest look slower than it is.
    """
    env = {k: v for k, v in os.environ.items() if k != "PYTHONDONTWRITEBYTECODE"}
    times: list[list[float]] = [[] for _ in commands]
    for _ in range(22):
        for command, taken in zip(commands, times, strict=True):
            start = time.perf_counter()
            subprocess.run(
                command, env=env, check=True, stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL,
                stderr=subprocess.DEVNULL,
            )
            taken.append(time.perf_counter() - start)
    return [statistics.median(taken[1:]) for taken in times]


def _each(act: Callable[[str], object], texts: list[str]) -> list[float]:
    times = []
    for text in texts:
        start = time.perf_counter()
        act(text)
        times.append(time.perf_counter() - start)
    return sorted(times)


def _say(what: str, figure: str) -> None:
    print(f"{what:<58} {figure}", flush=True)


def _spread(times: list[float]) -> str:
    return f"median {statistics.median(times) * 1e3:7.2f} ms   p99 {times[int(len(times) * 0.99)] * 1e3:7.2f} ms"


def _starts(path: Path) -> None:
    journalbot = [sys.executable, "-m", "journalbot", "--journal", str(path)]
    bare, ask, note = _run(
        [sys.executable, "-c", "pass"],
        [*journalbot, "ask", _QUESTIONS[0].format(n=7)],
        [*journalbot, "note", "batch 7 1.010 at 68F"],
    )
    _say("start of bare Python", f"{bare * 1e3:7.1f} ms")
    _say("start to end of one question, 10,000 notes", f"{ask * 1e3:7.1f} ms   {ask / bare:5.1f} times bare Python")
    _say("start to end of one note, 10,000 notes", f"{note * 1e3:7.1f} ms   {note / bare:5.1f} times bare Python")


def _reading(path: Path) -> None:
    from dateparser.search import search_dates

    from journalbot.notes.reader import read_note

    texts = [n["text"] for n in notes(400)][:400]
    with Journal.open(path) as journal:
        assistant = Assistant(journal)
        names, cellar, settings = assistant.words.names(), journal.cellar(), journal.settings
        on = datetime.date(2016, 1, 1)
        read_note(texts[0], on, settings, names, cellar)
        ours = _each(lambda text: read_note(text, on, settings, names, cellar), texts)
    search_dates(texts[0], languages=["en"])
    theirs = _each(lambda text: search_dates(text, languages=["en"]), texts[:80])
    _say("reading a note", _spread(ours))
    _say("a general library looking for dates alone in them", _spread(theirs))
    _say("ratio of medians", f"{statistics.median(theirs) / statistics.median(ours):7.1f} times as long")


def _answers(path: Path, count: int) -> None:
    today = datetime.date(2060, 1, 1)
    with Journal.open(path) as journal:
        assistant = Assistant(journal)
        batches = max(1, count // len(_LIFE) - 1)
        one = [q.format(n=1 + (i * 7) % batches) for i in range(12) for q in _QUESTIONS]
        assistant.ask(one[0], today)
        _say(f"an answer about one batch, {count:,} notes", _spread(_each(lambda q: assistant.ask(q, today), one)))
        _say(
            f"an answer over all batches, {count:,} notes",
            _spread(_each(lambda q: assistant.ask(q, today), [*_WIDE] * 5)),
        )


def main() -> int:
    """Run it all and print the figures."""
    parser = argparse.ArgumentParser(prog="python -m journalbot.bench", description=__doc__)
    parser.add_argument("--quick", action="store_true", help="leave out the journal of 100,000 notes")
    sizes = (1_000, 10_000) if parser.parse_args().quick else (1_000, 10_000, 100_000)
    with tempfile.TemporaryDirectory() as folder:
        for count in sizes:
            path = Path(folder) / f"{count}.db"
            start = time.perf_counter()
            first, last = _filled(path, count)
            took = time.perf_counter() - start
            tenth = count // 10
            _say(
                f"import of {count:,} notes",
                f"{count / took:7.0f} notes a second; first tenth {tenth / first:.0f}, last {tenth / last:.0f}",
            )
            if count == 10_000:
                _say("most memory so far", f"{resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024:7.0f} MB")
                _starts(path)
                _reading(path)
            _answers(path, count)
    return 0


if __name__ == "__main__":
    sys.exit(main())
