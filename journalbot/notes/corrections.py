"""Corrections in plain words: what a line takes back or puts right of entries filed before.

A correction is known by its words ("make that", "no, that was", "should be", "… not …"). What it corrects is found
from what
it names: a batch, an act, an old value, a day; where it names nothing, the last note's entries are meant.
"""

import datetime
import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from journalbot.journal.cellar import Cellar
from journalbot.language.amounts import Amount, Bottles
from journalbot.language.lexicon import Mention
from journalbot.language.names import Names
from journalbot.language.numerals import Number
from journalbot.language.text import Text, understand
from journalbot.language.tokens import tokenize
from journalbot.model import Ask, Entry, Settings
from journalbot.vocabulary.corrections import MARKERS, NEGATED, TAKE_BACK
from journalbot.vocabulary.units import UNITS

_NOTES_BACK = 3  # notes before the last one that a correction of a bare value may mean
_WITHIN = 45  # days back that a correction looks for what it names
_NOTE = re.compile(r"\bnote (?:no\.? ?|number |#)?(\d+)\b")


@dataclass(frozen=True, slots=True)
class Change:
    """What a correction does to the journal."""

    withdraw: tuple[Entry, ...] = ()
    replace: tuple[tuple[Entry, Entry], ...] = ()  # old, new
    add: tuple[Entry, ...] = ()
    undo: int | None = None  # the note whose doings are undone; 0 for the last turn
    ask: Ask | None = None


Entries = Callable[..., list[Entry]]


def read_correction(
    text: str, on: datetime.date, settings: Settings, names: Names, cellar: Cellar, entries: Entries
) -> Change | None:
    """What a line corrects; None where it corrects nothing. `entries` looks entries up in the journal."""
    plain = _plain(text)
    if plain in TAKE_BACK:
        return Change(undo=0)
    numbered = _NOTE.search(plain)
    if numbered and plain.split()[0] in ("undo", "delete", "scratch", "remove", "withdraw", "forget"):
        return Change(undo=int(numbered[1]))
    words = [t.low for t in tokenize(text)]
    marker = _marker(words) or _contrast(words)
    if marker is None:
        return None
    read = understand(text, names, on, settings)
    if words[marker[0]] in NEGATED and not _denies_filed(read, marker, on, cellar, entries):
        return None
    if words[marker[0]] == "should" and not _gives(read, marker[1]):
        return None  # "should be ready in a week"
    found = _candidates(read, marker, on, cellar, entries)
    if found is None:
        return None
    if not found:
        return Change(ask=Ask("value", (), text))
    change = _change(read, marker, found, names, settings)
    return change or _before_that(read, marker, found, entries, on, names, settings)


def _gives(read: Text, first: int) -> bool:
    """Whether something that a field can hold stands at token `first`, or after an article there."""
    first += read.words[first : first + 1] in (["the"], ["a"], ["about"])
    return any(m.first == first for m in read.of(*_VALUES, "batch", "vessel", "date"))


def _before_that(
    read: Text,
    marker: tuple[int, int],
    found: list[Entry],
    entries: Entries,
    on: datetime.date,
    names: Names,
    settings: Settings,
) -> Change | None:
    """`make that 1.006`, where the last note holds no such thing but one shortly before it, of the same day, does."""
    if not _holds_value(read) or read.of("batch"):
        return None
    last = max(e.note for e in found)
    today = [e for e in entries(since=on.isoformat()) if last - _NOTES_BACK <= e.note < last and e.kind != "remark"]
    for number in sorted({e.note for e in today}, reverse=True):
        if change := _change(read, marker, [e for e in today if e.note == number], names, settings):
            return change
    return None


def _plain(text: str) -> str:
    return " ".join(t.low for t in tokenize(text) if t.kind != "mark")


def _marker(words: list[str]) -> tuple[int, int] | None:
    """Where the words that make a line a correction stand among its tokens."""
    joined = list(words)
    if (
        words[:1] in (["sorry"], ["no"], ["oops"], ["correction"], ["whoops"], ["wait"])
        and words[1:2] in ([","], [":"], ["-"], ["."])
        and {"not", "was", "were"} & set(words)
    ):
        return 0, 1
    if words[0] in _NO and words[1:2] in ([","], [":"], ["-"], ["—"], ["."]) and len(words) - 2 <= _SHORT:
        return 0, 1
    if words[:2] in (["it", "was"], ["that", "was"], ["that's"], ["it's"]) and "not" in words:
        return 0, 2
    for i in range(len(joined)):
        for phrase in MARKERS:
            parts = phrase.split()
            opening = phrase in _OPENINGS
            if joined[i : i + len(parts)] == parts and (not opening or i == 0):
                return i, i + len(parts)
    return None


def _contrast(words: list[str]) -> tuple[int, int] | None:
    """Where a line sets what was against what was not (`the zin was 1.012, not 1.010`)."""
    said = {"was", "were", "is", "cost", "came"} & set(words)
    return next(((i, i + 1) for i, w in enumerate(words) if w in NEGATED and i > 1 and said), None)


def _denies_filed(read: Text, marker: tuple[int, int], on: datetime.date, cellar: Cellar, entries: Entries) -> bool:
    """Whether the figure said not to hold is one that was filed lately, of what the line speaks of."""
    new, _ = _new_and_old(read, _VALUES)
    denied = _old_values(read)
    found = _candidates(read, marker, on, cellar, entries) if denied and new else None
    return any(denied & _figures(e) for e in found or ())


_NO = {"no", "sorry", "oops", "whoops", "correction", "wait", "actually"}
_SHORT = 4  # tokens after a "no," that only put one thing right
_VALUES = ("reading", "amount", "number", "temperature", "bottles", "code", "score", "money", "percent", "times")
_OPENINGS = {
    p
    for p in MARKERS
    if p.split()[0]
    in ("no", "oh", "sorry", "correction", "oops", "that", "wait", "it", "actually", "typo", "whoops", "change")
} | {"make it"}


def _new_and_old(read: Text, kinds: Sequence[str]) -> tuple[list[Mention], list[Mention]]:
    """Mentions of these kinds, those said to hold and those said not to (after "not", "instead of", or before "should
    be").
    """
    words = read.words
    new: list[Mention] = []
    old: list[Mention] = []
    for m in read.of(*kinds):
        lead = words[max(0, m.first - 3) : m.first]
        denied = (
            any(w in NEGATED for w in lead[-2:]) or lead[-2:] == ["instead", "of"] or lead[-2:] == ["rather", "than"]
        )
        corrected = any(words[m.last + k : m.last + k + 2] == ["should", "be"] for k in range(4))
        corrected = corrected or (words[m.last : m.last + 1] == ["to"] and "change" in words[: m.first])
        (old if denied or corrected else new).append(m)
    return new, old


def _candidates(
    read: Text, marker: tuple[int, int], on: datetime.date, cellar: Cellar, entries: Entries
) -> list[Entry] | None:
    """The entries that the line may be about, the latest note's first; None where there is nothing to correct."""
    since = (on - datetime.timedelta(days=_WITHIN)).isoformat()
    new, old = _new_and_old(read, ("batch",))
    acts = {
        m.value.kind
        for m in read.of("cue")
        if m.value.detail != "weak"
        and m.value.kind not in ("add", "start", "vessel", "fermentation")
        and not marker[0] <= m.first < marker[1]
    }
    readings = {m.value.quantity for m in read.of("reading") if m.value.named}
    recent = [e for e in entries(since=since) if e.kind != "remark"]
    if not recent:
        return None
    last = max(e.note for e in recent)
    about = [n for m in old for n in m.value.fits] or (
        [n for m in new for n in m.value.fits] if _holds_value(read) or _dates(read, on)[0] else []
    )
    pool = recent
    if about:
        pool = [e for e in recent if e.batch in about]
    people = {m.value.lower() for m in read.mentions if m.kind == "person"}
    if people & {str(e.get("to", "")).lower() for e in pool}:
        pool = [e for e in pool if str(e.get("to", "")).lower() in people]
    if acts & {e.kind for e in pool}:
        pool = [e for e in pool if e.kind in acts]
    if readings:
        pool = [e for e in pool if e.get("quantity") in readings] or pool
    earlier = [m.value.iso for m in read.of("date") if any(e.date == m.value.iso for e in pool)]
    if earlier and _holds_value(read):
        pool = [e for e in pool if e.date == earlier[0]]
    values = _old_values(read)
    if values and any(values & _figures(e) for e in pool):
        pool = [e for e in pool if values & _figures(e)]
        latest = max(e.note for e in pool)
        return [e for e in pool if e.note == latest]
    if about or acts or earlier:
        latest = max((e.note for e in pool), default=0)
        return [e for e in pool if e.note == latest]
    return [e for e in pool if e.note == last]


def _holds_value(read: Text) -> bool:
    return bool(_new_and_old(read, _VALUES)[0])


def _old_values(read: Text) -> set[float]:
    _, old = _new_and_old(read, ("reading", "amount", "number", "temperature", "score", "money"))
    return {v for m in old if (v := _number(m)) is not None}


def _number(m: Mention) -> float | None:
    value = m.value
    if isinstance(value, Number | Amount):
        return float(value.value)
    if isinstance(value, Bottles):
        return float(value.count)
    number = getattr(value, "value", None) or getattr(value, "score", None)
    return float(number) if isinstance(number, int | float) else None


_FIGURES = ("value", "amount", "count", "volume", "score", "price", "times")


def _value(e: Entry) -> float | None:
    """The figure by which an entry is known."""
    return next((float(f) for name in _FIGURES if isinstance(f := e.get(name), int | float)), None)


def _figures(e: Entry) -> set[float]:
    """Every figure that an entry holds."""
    return {float(f) for name in _FIGURES if isinstance(f := e.get(name), int | float)}


def _dates(read: Text, on: datetime.date) -> tuple[list[str], list[str]]:
    new, old = _new_and_old(read, ("date",))
    return [m.value.iso for m in new if m.value.iso <= on.isoformat()], [m.value.iso for m in old]


def _change(read: Text, marker: tuple[int, int], found: list[Entry], names: Names, settings: Settings) -> Change | None:
    """What becomes of the entries found: each field that the line gives anew, on the entries that have it."""
    pairs: list[tuple[Entry, Entry]] = []
    for e in found:
        fixed = _fixed(e, read, found)
        if fixed is not None and fixed != e:
            pairs.append((e, fixed))
    if pairs:
        return Change(replace=tuple(pairs))
    new, _old = _new_and_old(read, ("batch",))
    fits = [m for m in new if len(m.value.fits) == 1]
    if fits and not _holds_value(read):
        number = fits[-1].value.fits[0]
        moved = [e for e in found if e.batch is not None and e.batch != number]
        if moved:
            return Change(replace=tuple((e, replace(e, batch=number)) for e in moved))
    ambiguous = next((m for m in new if len(m.value.fits) > 1), None)
    if ambiguous is not None and not _holds_value(read):
        return Change(
            ask=Ask(
                "batch", tuple(f"batch {n}" for n in ambiguous.value.fits), read.slice(ambiguous.first, ambiguous.last)
            )
        )
    days = [m.value.iso for m in read.of("date") if m.value.iso]
    if days and not _holds_value(read):
        return Change(replace=tuple((e, replace(e, date=days[0])) for e in found if e.date != days[0])) or None
    return None


def _fixed(e: Entry, read: Text, found: list[Entry]) -> Entry | None:
    """The entry with the figure, strain, vessel or count that the line gives; None where the line gives nothing for
    it.
    """
    new, _ = _new_and_old(
        read, ("reading", "amount", "temperature", "bottles", "number", "code", "vessel", "score", "money", "times")
    )
    values = _old_values(read)
    if values and not values & _figures(e) and any(values & _figures(o) for o in found):
        return None
    for m in new:
        fields = _fields(e, m, found)
        if fields:
            return e.with_fields(**fields)
    return None


def _fields(e: Entry, m: Mention, found: list[Entry]) -> dict[str, object] | None:
    value = m.value
    if m.kind == "reading":
        return {"value": value.value, "unit": value.unit} if e.get("quantity") == value.quantity else None
    if m.kind == "code":
        name = {"pitch": "yeast", "malolactic": "culture"}.get(e.kind)
        return {name: value} if name else None
    if m.kind == "vessel":
        return {"to": value.name} if e.kind == "rack" else None
    if m.kind == "score":
        return {"score": value.score, "out_of": value.out_of} if e.kind == "taste" else None
    if m.kind == "money":
        return {"price": value.value, "currency": value.unit} if e.kind == "purchase" else None
    if m.kind == "bottles":
        return {"count": value.count, "size": value.size, "unit": value.unit} if e.kind == "bottle" else None
    if m.kind == "times":
        return {"times": int(value.value)} if e.kind == "punch_down" else None
    if m.kind == "temperature":
        return {"value": value.value, "unit": value.unit} if e.get("quantity") == "temperature" else None
    if m.kind == "amount":
        return _amount_fields(e, value)
    if m.kind == "number" and value.style in ("figure", "words", "decimal", "fraction"):
        return _figure(e, float(value.value), found)
    return None


def _amount_fields(e: Entry, amount: Amount) -> dict[str, object] | None:
    base = amount.unit.partition("/")[0]
    if base == "bottle" and e.get("count") is not None:
        return {"count": amount.value}
    unit = e.get("unit")
    name = (
        "amount"
        if e.get("amount") is not None
        else "volume"
        if e.get("volume") is not None
        else "count"
        if e.kind == "purchase"
        else ""
    )
    if not name or base not in UNITS:
        return None
    known = UNITS.get(str(unit).partition("/")[0])
    return {name: amount.value, "unit": amount.unit} if known and known.dimension == UNITS[base].dimension else None


def _figure(e: Entry, figure: float, found: list[Entry]) -> dict[str, object] | None:
    """A bare figure, where only one entry can take it."""
    number: float | int = int(figure) if figure.is_integer() else figure
    holders = [o for o in found if _value(o) is not None]
    if e not in holders or (len({o.kind for o in holders}) > 1 and e.get("count") is None):
        return None
    for name in ("count", "amount", "times", "score", "value", "price"):
        if e.get(name) is not None:
            return {name: number}
    return None
