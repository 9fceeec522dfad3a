"""A note to its entries, or to the one thing that must be asked first.

Clauses are read one by one, each by every kind; then each draft gets its batch and date. Whatever no entry accounts for
becomes a remark, so that every word is kept where it can be found.
"""

import datetime
import itertools
from collections.abc import Mapping
from typing import Any, NamedTuple

from journalbot.journal.cellar import Cellar
from journalbot.language.names import Names
from journalbot.language.text import understand
from journalbot.model import Ask, Entry, Settings
from journalbot.notes.amounts import link
from journalbot.notes.dating import set_dates
from journalbot.notes.draft import Draft, Scene
from journalbot.notes.kinds import READERS
from journalbot.notes.kinds.starting import find_start
from journalbot.notes.moods import set_moods
from journalbot.notes.splitting import split
from journalbot.notes.subjects import Subjects
from journalbot.notes.taken_back import take_back
from journalbot.notes.tidying import (
    counted_bottling,
    finished_before,
    on_the_day_drunk,
    on_the_day_tasted,
    one_mark,
    one_pitch,
    one_racking,
    one_stage,
    repeated,
    said_before,
    with_the_start,
    without_left_out,
    without_repeats,
)
from journalbot.notes.unclear import must_ask

_SMALL = {
    "a", "an", "the", "and", "of", "to", "in", "it", "is", "was", "so", "then", "with", "on", "at", "for", "now",
    "today", "this", "that", "i", "by", "into", "from", "up", "off", "my", "w", "&", "also", "just", "its", "are", "as",
    "there", "went", "got", "be", "has", "have", "had", "we", "but", "or", "still", "again", "more", "some", "out",
    "down", "after", "before", "today's", "s", "'s",
}


class Reading(NamedTuple):
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
    """The entries of a note typed on the day `on`, or what must be asked. `given` holds answers to what was asked
    before.
    """
    scene = _scene(text, on, settings, names, cellar, given or {})
    drafts = [d for clause in scene.clauses for reader in READERS for d in reader(clause, scene)]
    drafts = repeated(without_left_out(without_repeats(drafts), scene), scene)
    drafts = on_the_day_tasted(drafts, scene)
    drafts = with_the_start(one_mark(one_racking(one_pitch(drafts))), scene)
    if ask := must_ask(drafts, scene):
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
            if finished_before(draft, number, cellar):
                continue
            entries.extend(e for e in _entries(draft, number, scene) if not said_before(e, entries))
    entries = counted_bottling(entries)
    entries = one_stage(on_the_day_drunk(entries, drafts))
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


def _days(draft: Draft) -> tuple[str, ...]:
    """The days of an act done on several (`last Wednesday and again today`)."""
    found = draft.clause.of("date")
    words = draft.clause.text.words
    if (
        draft.kind not in ("stir", "punch_down", "top_up", "degas", "addition", "airlock", "reading")
        or len(found) < 2
        or draft.clause.mood != "done"
    ):
        return ()
    joined = all(set(words[a.last : b.first]) <= {"and", "again", "&", "on", ","} for a, b in itertools.pairwise(found))
    return tuple(m.value.iso for m in found) if joined else ()


# Mentions that a clause's entries account for, besides the words they stand on.
_ACCOUNTED = (
    "cue", "reading", "batch", "date", "time", "vessel", "amount", "material", "code", "quantity", "number", "variety",
    "fruit", "closure", "place", "money", "score", "oak_form", "oak_toast", "oak_origin", "bottles", "times",
    "pronouns", "both", "airlock", "lees", "left", "planned", "person", "temperature",
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
            last = rest[-1] + 1
            named = {i for m in clause.of("date", "time", "batch") for i in range(m.first, m.last)}
            while last < clause.last and last not in explained | named and scene.text.tokens[last].kind == "word":
                last += 1
            kept.append((rest[0], last))
    if not kept:
        return []
    words = "; ".join(scene.text.slice(first, last) for first, last in kept)
    span = (scene.text.tokens[kept[0][0]].start, scene.text.tokens[kept[-1][1] - 1].end)
    return [Entry("remark", subjects.main(), scene.on.isoformat(), {"text": words}, None, span)]
