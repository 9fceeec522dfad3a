"""How near the program comes to a labelled notebook: its notes read, and its questions answered, against the labels.

A notebook is two files in `fixtures/notebooks`. `NAME.notes.jsonl` holds notes, each with the entries that it should
give (`gold`; remarks are not labelled) or with what must be asked instead (`gold_ask`). `NAME.questions.jsonl` holds
questions, each with what every right answer contains (`expect`) and with what it must not contain (`reject`).

An entry is right when its kind, batch, date and every field agree with a label's:

- numbers within 1 part in 2000, so that 0.3333 is a third;
- words without regard to case, hyphens and spaces;
- wording that is free (what is planned, whom a bottle went to, the words of a tasting) where one side's words, the
  small ones aside, are all among the other's, or half of all words used are common to both;
- of lists, each member with one of the other side's; of a tasting's words and a wine's origins, three in five suffice;
- whether a figure is approximate, the time of day and the currency do not count;
- of a start, its name, colour, vintage, origins and weight count only where the label gives them.

A note is right when its entries and its labels pair off without remainder, or when it asks where it has to.
"""

import json
import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date
from pathlib import Path
from typing import Any

from journalbot.assistant import Assistant
from journalbot.journal.store import Journal
from journalbot.model import Answer
from journalbot.questions import ask

Json = dict[str, Any]

NOTEBOOKS = Path(__file__).parents[2] / "fixtures" / "notebooks"

_HEAD = {"kind", "batch", "date"}
_NOT_COMPARED = {"approx", "time", "currency"}
_OPTIONAL = {"start": {"name", "colour", "vintage", "from", "weight", "weight_unit"}}
_FREE = {
    "closure", "culture", "from", "item", "material", "name", "origin", "reason", "to", "vessel", "what", "with",
    "words", "yeast",
}  # fmt: skip
_LOOSE_LISTS = {"words", "from"}
_SMALL = {"the", "a", "an", "of", "my", "some", "to", "for", "and", "with", "in"}


# ---- files


def rows(name: str, what: str) -> list[Json]:
    """The lines of a notebook's file of "notes" or "questions"."""
    text = (NOTEBOOKS / f"{name}.{what}.jsonl").read_text(encoding="utf-8")
    return [json.loads(line) for line in text.splitlines() if line.strip()]


def names() -> list[str]:
    """The notebooks kept with the project."""
    return sorted(path.name.partition(".")[0] for path in NOTEBOOKS.glob("*.notes.jsonl"))


def lines(notebook: Iterable[Json], *, labels: bool = False) -> Iterator[str]:
    """A notebook as a person would import it: without its labels, or with them as the entries to file."""
    for row in notebook:
        line = {key: row[key] for key in ("settings", "on", "text") if key in row}
        if labels and "gold" in row:
            line["entries"] = row["gold"]
        yield json.dumps(line, ensure_ascii=False)


# ---- one entry


def agrees(label: Mapping[str, Any], entry: Mapping[str, Any]) -> bool:
    """Whether an entry is what its label says."""
    if any(label.get(key) != entry.get(key) for key in _HEAD):
        return False
    wanted, got = _fields(label), _fields(entry)
    spare = _OPTIONAL.get(label["kind"], set()) - wanted.keys()
    got = {key: value for key, value in got.items() if key not in spare}
    return wanted.keys() == got.keys() and all(_same(key, wanted[key], got[key]) for key in wanted)


def _fields(entry: Mapping[str, Any]) -> Json:
    return {k: v for k, v in entry.items() if v is not None and k not in _HEAD and k not in _NOT_COMPARED}


def _same(key: str, a: Any, b: Any) -> bool:
    if isinstance(a, bool) or isinstance(b, bool):
        return a is b
    if isinstance(a, int | float) and isinstance(b, int | float):
        return abs(a - b) <= max(abs(a), abs(b)) / 2000
    if isinstance(a, dict) and isinstance(b, dict):
        return all(part in b and _same(part, a[part], b[part]) for part in a)
    if isinstance(a, list) or isinstance(b, list):
        return _same_list(key, a if isinstance(a, list) else [a], b if isinstance(b, list) else [b])
    return _same_words(str(a), str(b), free=key in _FREE)


def _same_list(key: str, a: Sequence[Any], b: Sequence[Any]) -> bool:
    found = sum(any(_same(key, x, y) for y in b) for x in a)
    back = sum(any(_same(key, x, y) for x in a) for y in b)
    if key in _LOOSE_LISTS and a and b:
        return 5 * found >= 3 * len(a) and 5 * back >= 3 * len(b)
    return len(a) == len(b) == found


def _same_words(a: str, b: str, *, free: bool) -> bool:
    if re.sub(r"[\s_-]+", "", a.casefold()) == re.sub(r"[\s_-]+", "", b.casefold()):
        return True
    left, right = _content(a), _content(b)
    if not free or not left or not right:
        return False
    return left <= right or right <= left or 2 * len(left & right) >= len(left | right)


def _content(text: str) -> set[str]:
    said = set(re.findall(r"\w+", text.casefold()))
    return said - _SMALL or said


# ---- a notebook's notes


@dataclass(slots=True)
class Tally:
    """How a notebook's notes were read."""

    notes: int = 0
    right: int = 0
    labels: int = 0
    entries: int = 0
    entries_right: int = 0
    wrong: int = 0  # entries that no label supports
    misses: list[str] = field(default_factory=list)  # what fell short, for people

    @property
    def f1(self) -> float:
        """The harmonic mean of the shares of entries that are right and of labels that were found."""
        return 2 * self.entries_right / max(1, self.labels + self.entries)


def score_notes(name: str, journal: Journal) -> Tally:
    """Read a notebook through the import into an empty journal, and compare it with its labels."""
    notebook = rows(name, "notes")
    labelled = [row for row in notebook if "text" in row]
    tally = Tally()
    for row, reply in zip(labelled, Assistant(journal).import_lines(lines(notebook)), strict=True):
        entries = [e.to_json() for e in reply.entries if e.kind != "remark"]
        _count(tally, row, entries, reply.ask.what if reply.ask else None)
    return tally


def _count(tally: Tally, row: Json, entries: list[Json], asked: str | None) -> None:
    tally.notes += 1
    if "gold_ask" in row:
        right = asked == row["gold_ask"] or (asked is not None and not entries)
        tally.wrong += len(entries)
    else:
        hits = paired(row["gold"], entries)
        tally.labels += len(row["gold"])
        tally.entries += len(entries)
        tally.entries_right += hits
        tally.wrong += len(entries) - hits
        right = hits == len(row["gold"]) == len(entries) and asked is None
    tally.right += right
    if not right:
        label = row.get("gold", row.get("gold_ask"))
        tally.misses.append(f"{row['on']} {row['text']}\n    label {label}\n    got   {entries or asked}")


def paired(labels: Sequence[Json], entries: Sequence[Json]) -> int:
    """How many labels have an entry of their own that is right."""
    left = list(entries)
    hits = 0
    for label in labels:
        entry = next((e for e in left if agrees(label, e)), None)
        if entry is not None:
            left.remove(entry)
            hits += 1
    return hits


# ---- a notebook's questions


@dataclass(slots=True)
class Marks:
    """How a notebook's questions were answered."""

    questions: int = 0
    right: int = 0
    wrong: int = 0  # answered, and not with what was expected
    misses: list[str] = field(default_factory=list)


def score_questions(name: str, journal: Journal, *, labels: bool) -> Marks:
    """Import a notebook into an empty journal, with its labels as entries or without, and ask every question alone."""
    assistant = Assistant(journal)
    for _ in assistant.import_lines(lines(rows(name, "notes"), labels=labels)):
        pass
    known = assistant.words.names()
    marks = Marks()
    for row in rows(name, "questions"):
        answer, _ = ask(row["q"], date.fromisoformat(row["today"]), journal, known)
        right = answers(row, answer)
        marks.questions += 1
        marks.right += right
        marks.wrong += answer.found and not right
        if not right:
            expected = f"{row['expect']} not {row.get('reject')}"
            marks.misses.append(f"{row['today']} {row['q']}\n    expect {expected}\n    got    {answer.answer}")
    return marks


def answers(question: Mapping[str, Any], answer: Answer) -> bool:
    """Whether an answer holds all that was expected of it and nothing that it must not say."""
    if any(_says(text, answer.answer) for text in question.get("reject", ())):
        return False
    return all(_holds(item, answer) for item in question["expect"])


def _holds(item: Mapping[str, Any], answer: Answer) -> bool:
    ((what, wanted),) = ((k, v) for k, v in item.items() if k != "within")
    if what == "text":
        return any(_says(text, answer.answer) for text in ([wanted] if isinstance(wanted, str) else wanted))
    if what == "number":
        return any(abs(n - wanted) <= item.get("within", 0) + 1e-9 for n in _numbers(answer.answer))
    if what == "date":
        return _names_day(answer.answer, date.fromisoformat(wanted))
    if what == "found":
        return answer.found is wanted
    if what == "ask":
        return answer.ask is not None
    raise ValueError(f"nothing is known of what {what!r} expects")


def _says(text: str, answer: str) -> bool:
    return re.sub(r"[\s-]+", "", text.casefold()) in re.sub(r"[\s-]+", "", answer.casefold())


_NUMBER = re.compile(r"(?<![\w.])-?(?:\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d*\.?\d+)")


def _numbers(text: str) -> list[float]:
    return [float(found.replace(",", "")) for found in _NUMBER.findall(text)]


def _names_day(text: str, day: date) -> bool:
    """Whether a day is told, with its month in letters or in figures of either order."""
    month = day.strftime("%b")
    written = (
        day.isoformat(),
        rf"{month}[a-z]*\.?\s+0?{day.day}(?:st|nd|rd|th)?\b",
        rf"\b0?{day.day}(?:st|nd|rd|th)?\s+(?:of\s+)?{month}",
        rf"\b0?{day.month}/0?{day.day}\b",
        rf"\b0?{day.day}[/.]0?{day.month}\b",
    )
    return any(re.search(form, text, re.IGNORECASE) for form in written)
