"""A note to its entries, or to the one thing that must be asked first.

Clauses are read one by one, each by every kind; then each draft gets its batch and date. Whatever no entry accounts for
becomes a remark, so that every word is kept where it can be found.
"""

import datetime
from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

from journalbot.journal.cellar import Cellar
from journalbot.language.names import Names
from journalbot.language.text import understand
from journalbot.model import Ask, Entry, Settings
from journalbot.notes.amounts import link
from journalbot.notes.clauses import Clause, split, take_back
from journalbot.notes.draft import Draft, Scene
from journalbot.notes.kinds import READERS
from journalbot.notes.kinds.readings import bare_number
from journalbot.notes.kinds.starting import find_start
from journalbot.notes.moods import set_dates, set_moods
from journalbot.notes.subjects import Subjects

_SMALL = {
    "a",
    "an",
    "the",
    "and",
    "of",
    "to",
    "in",
    "it",
    "is",
    "was",
    "so",
    "then",
    "with",
    "on",
    "at",
    "for",
    "now",
    "today",
    "this",
    "that",
    "i",
    "by",
    "into",
    "from",
    "up",
    "off",
    "my",
    "w",
    "&",
    "also",
    "just",
    "its",
    "are",
    "as",
    "there",
    "went",
    "got",
    "be",
    "has",
    "have",
    "had",
    "we",
    "but",
    "or",
    "still",
    "again",
    "more",
    "some",
    "out",
    "down",
    "after",
    "before",
    "today's",
    "s",
}


@dataclass(frozen=True, slots=True)
class Reading:
    """What a note was read as."""

    entries: tuple[Entry, ...] = ()
    ask: Ask | None = None


def read_note(
    text: str,
    on: datetime.date,
    settings: Settings,
    names: Names,
    cellar: Cellar,
    given: Mapping[str, Any] | None = None,
) -> Reading:
    """The entries of a note typed on the day `on`, or what must be asked. `given` holds answers to what was asked before."""
    scene = _scene(text, on, settings, names, cellar, given or {})
    drafts = [d for clause in scene.clauses for reader in READERS for d in reader(clause, scene)]
    drafts = _one_mark(_one_racking(_one_pitch(_without_repeats(drafts))))
    if ask := _must_ask(drafts, scene):
        return Reading(ask=ask)
    entries: list[Entry] = []
    explained: set[int] = set()
    subjects = Subjects(scene, frozenset(d.kind for d in drafts))
    for draft in drafts:
        resolved = subjects.of(draft)
        if isinstance(resolved, Ask):
            return Reading(ask=resolved)
        if resolved is None:
            continue
        explained.update(range(draft.first, draft.last))
        for number in resolved:
            if _finished_before(draft, number, cellar):
                continue
            entries.extend(e for e in _entries(draft, number, scene) if not _said_before(e, entries))
    entries = _counted_bottling(entries)
    entries = _one_stage(_on_the_day_drunk(entries, drafts))
    entries.extend(_remark(scene, explained, subjects))
    return Reading(tuple(entries))


def _scene(
    text: str, on: datetime.date, settings: Settings, names: Names, cellar: Cellar, given: Mapping[str, Any]
) -> Scene:
    understood = understand(text, names, on, settings)
    take_back(understood)
    clauses = split(understood)
    set_moods(clauses, on)
    set_dates(clauses, on)
    scene = Scene(understood, clauses, on, settings, names, cellar, link(understood), given)
    find_start(scene)
    return scene


def _one_pitch(drafts: list[Draft]) -> list[Draft]:
    """`made a starter from 2 packs of QB1120 and pitched it at 9pm`: the yeast of one clause, the act of the other."""
    out: list[Draft] = []
    for d in drafts:
        twin = next(
            (
                o
                for o in out
                if o.kind == d.kind == "pitch"
                and o.clause.sentence == d.clause.sentence
                and ("yeast" in o.fields) != ("yeast" in d.fields)
            ),
            None,
        )
        if twin is None or (
            not {m.value.fits for m in twin.clause.of("batch")} & {m.value.fits for m in d.clause.of("batch")}
            and twin.clause.of("batch")
            and d.clause.of("batch")
        ):
            out.append(d)
        else:
            fields = {**d.fields, **twin.fields}
            where = d if "yeast" not in d.fields else twin
            out[out.index(twin)] = Draft("pitch", where.clause, twin.first, twin.last, fields)
    return out


def _one_racking(drafts: list[Draft]) -> list[Draft]:
    """`racked 5 off the chips, carboy 1 -> carboy 3`: the verb of one clause, the vessels of the other."""
    out: list[Draft] = []
    for d in drafts:
        twin = next(
            (
                o
                for o in out
                if o.kind == d.kind == "rack"
                and o.clause.sentence == d.clause.sentence
                and o.clause is not d.clause
                and ("to" in o.fields) != ("to" in d.fields)
            ),
            None,
        )
        if twin is None or (twin.clause.of("batch") and d.clause.of("batch")):
            out.append(d)
        else:
            twin.fields = {**twin.fields, **d.fields}
    return out


def _one_mark(drafts: list[Draft]) -> list[Draft]:
    """`jammy, rough. It needs time. I give 5 out of 10`: a mark by itself belongs to the words before it."""
    out: list[Draft] = []
    for d in drafts:
        words = next((o for o in reversed(out) if o.kind == "taste"), None)
        if (
            d.kind == "taste"
            and "words" not in d.fields
            and words is not None
            and "score" not in words.fields
            and not d.clause.of("batch")
        ):
            words.fields.update(d.fields)
        else:
            out.append(d)
    return out


def _without_repeats(drafts: list[Draft]) -> list[Draft]:
    """Drafts without those that say the same of the same clause twice."""
    out: list[Draft] = []
    for d in drafts:
        if d.kind == "addition" or not any(
            o.kind == d.kind
            and o.clause is d.clause
            and o.fields == d.fields
            and o.ref is d.ref
            and (o.first, o.last) == (d.first, d.last)
            for o in out
        ):
            out.append(d)
    return out


def _must_ask(drafts: list[Draft], scene: Scene) -> Ask | None:
    """What has to be asked whatever the batch: an impossible value or date, a figure that could be two things."""
    for d in drafts:
        if d.ask == "value":
            if "value" in scene.given:
                d.fields["value"], d.ask = scene.given["value"], ""
                continue
            return Ask("value", (), scene.text.slice(d.clause.first, d.clause.last))
    scene.text.impossible = [
        d for d in scene.text.impossible if scene.text.words[d.first - 1 : d.first] not in (["no"], ["not"])
    ]
    if scene.text.impossible and (drafts or any(c.of("cue", "batch") for c in scene.clauses)):
        if "date" not in scene.given:
            bad = scene.text.impossible[0]
            return Ask("date", (), scene.text.slice(bad.first, bad.last))
        for d in drafts:
            d.dates = (scene.given["date"],)
    if not any(d.kind != "plan" and d.kind != "taste" for d in drafts):
        for clause in scene.clauses:
            number = bare_number(clause)
            if number is None:
                continue
            if "quantity" in scene.given:
                drafts.append(_given_reading(scene, clause, number.first, float(number.value.value)))
                return None
            return Ask(
                "quantity", _quantities(float(number.value.value), scene), scene.text.slice(clause.first, clause.last)
            )
    return None


def _given_reading(scene: Scene, clause: Clause, first: int, value: float) -> Draft:
    from journalbot.language.amounts import tidy
    from journalbot.vocabulary.quantities import QUANTITIES

    quantity = str(scene.given["quantity"])
    unit = QUANTITIES[quantity].unit
    if quantity == "temperature":
        unit = "F" if scene.settings.units == "us" else "C"
    return Draft("reading", clause, first, first + 1, {"quantity": quantity, "value": tidy(value), "unit": unit})


def _quantities(value: float, scene: Scene) -> tuple[str, ...]:
    """The quantities that a bare figure could be of."""
    from journalbot.vocabulary.quantities import QUANTITIES

    warm = (35, 110) if scene.settings.units == "us" else (0, 45)
    usual = {
        "temperature": warm,
        "brix": (-3, 35),
        "free_so2": (5, 80),
        "ph": (2.8, 4.3),
        "ta": (3, 14),
        "total_so2": (30, 200),
    }
    return tuple(q for q, (low, high) in usual.items() if low <= value <= high and q in QUANTITIES)


def _days(draft: Draft) -> tuple[str, ...]:
    """The days of an act done on several (`last Wednesday and again today`)."""
    found = draft.clause.of("date")
    words = draft.clause.text.words
    if (
        draft.kind not in ("stir", "punch_down", "top_up", "degas", "addition", "airlock")
        or len(found) < 2
        or draft.clause.mood != "done"
    ):
        return ()
    joined = all(
        set(words[a.last : b.first]) <= {"and", "again", "&", "on", ","} for a, b in zip(found, found[1:], strict=False)
    )
    return tuple(m.value.iso for m in found) if joined else ()


# Mentions that a clause's entries account for, besides the words they stand on.
_ACCOUNTED = (
    "cue",
    "reading",
    "batch",
    "date",
    "time",
    "vessel",
    "amount",
    "material",
    "code",
    "quantity",
    "number",
    "variety",
    "fruit",
    "closure",
    "place",
    "money",
    "score",
    "oak_form",
    "oak_toast",
    "oak_origin",
    "bottles",
    "times",
    "pronouns",
    "both",
    "airlock",
    "lees",
    "left",
    "planned",
    "person",
    "temperature",
)


def _counted_bottling(entries: list[Entry]) -> list[Entry]:
    """`36 x 375 under cork … thats everything bottled`: a bottling told again without its count."""
    counted = {e.batch for e in entries if e.kind == "bottle" and e.get("count") is not None}
    return [e for e in entries if not (e.kind == "bottle" and e.get("count") is None and e.batch in counted)]


def _one_stage(entries: list[Entry]) -> list[Entry]:
    """`its alive!! started up again last night`: started again is not also started."""
    again = {e.batch for e in entries if e.get("stage") == "restarted"}
    over = {e.batch for e in entries if e.kind == "fermentation" and e.get("stage") == "finished"}
    return [
        e
        for e in entries
        if not (
            e.kind == "fermentation"
            and ((e.get("stage") == "started" and e.batch in again) or (e.get("stage") == "stuck" and e.batch in over))
        )
    ]


def _on_the_day_drunk(entries: list[Entry], drafts: list[Draft]) -> list[Entry]:
    """A tasting told after the bottle was opened is of the day it was opened, where no other day is named for it."""
    opened = {e.batch: e.date for e in entries if e.kind == "drink"}
    dated = any(d.kind == "taste" and d.clause.own_date for d in drafts)
    return [
        replace(e, date=opened[e.batch]) if e.kind == "taste" and e.batch in opened and not dated else e
        for e in entries
    ]


def _finished_before(draft: Draft, batch: int | None, cellar: Cellar) -> bool:
    """Called dry again after it was called finished: a description, no turn of the fermentation."""
    known = cellar.batches.get(batch) if batch is not None else None
    said = draft.clause.text.words[draft.first : draft.last]
    return (
        draft.kind == "fermentation"
        and said[-1:] in (["dry"], ["done"], ["finished"])
        and known is not None
        and known.finished is not None
    )


_ONCE = (
    "fermentation",
    "malolactic",
    "press",
    "crush",
    "degas",
    "filter",
    "chill",
    "oak_out",
    "airlock",
    "end",
    "stir",
    "move",
)


def _said_before(entry: Entry, entries: list[Entry]) -> bool:
    """An act told twice in one note is one act; doses and readings may well be alike and two."""
    return entry.kind in _ONCE and any(
        (e.kind, e.batch, e.date, e.fields) == (entry.kind, entry.batch, entry.date, entry.fields) for e in entries
    )


def _entries(draft: Draft, batch: int | None, scene: Scene) -> list[Entry]:
    text = scene.text
    start, end = text.tokens[draft.first].start, text.tokens[draft.last - 1].end
    dates = draft.dates or _days(draft) or (draft.clause.date,)
    return [
        Entry(draft.kind, batch, date, dict(draft.fields), draft.clause.time, (start, end), draft.doubt)
        for date in dates
    ]


def _remark(scene: Scene, explained: set[int], subjects: Subjects) -> list[Entry]:
    """What no entry accounts for, clause by clause, as one remark."""
    kept: list[tuple[int, int]] = []
    for clause in scene.clauses:
        tokens = range(clause.first, clause.last)
        touched = bool(explained.intersection(tokens))
        known = explained | (
            {i for m in clause.mentions if m.kind in _ACCOUNTED for i in range(m.first, m.last)} if touched else set()
        )
        rest = [
            i
            for i in tokens
            if i not in known and scene.text.tokens[i].kind == "word" and scene.text.words[i] not in _SMALL
        ]
        if rest and not touched:
            kept.append((clause.first, clause.last))
        elif rest:
            kept.append((rest[0], rest[-1] + 1))
    if not kept:
        return []
    words = "; ".join(scene.text.slice(first, last) for first, last in kept)
    span = (scene.text.tokens[kept[0][0]].start, scene.text.tokens[kept[-1][1] - 1].end)
    return [Entry("remark", subjects.main(), scene.on.isoformat(), {"text": words}, None, span)]
