"""What a note says twice, or in two places, brought together: drafts before their batch is settled, entries after."""

from dataclasses import replace

from journalbot.journal.cellar import Cellar
from journalbot.model import Entry
from journalbot.notes.dating import PRESENT
from journalbot.notes.draft import Draft, Scene

_AT_THE_START = ("reading", "addition", "crush", "press")


def one_pitch(drafts: list[Draft]) -> list[Draft]:
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


def one_racking(drafts: list[Draft]) -> list[Draft]:
    """`racked 5 off the chips, carboy 1 -> carboy 3`: the verb of one clause, the vessels of the other."""
    out: list[Draft] = []
    for d in drafts:
        twin = next(
            (
                o
                for o in out
                if o.kind == d.kind == "rack"
                and (o.clause.sentence == d.clause.sentence or _bare(o, d))
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


def _bare(act: Draft, vessels: Draft) -> bool:
    """`Racked a week late. Carboy 1 to carboy 2`: the verb alone in one sentence, the vessels alone in the next."""
    next_one = vessels.clause.sentence == act.clause.sentence + 1
    verbs = [c for c in vessels.clause.cues("rack") if c.value.detail != "weak"]
    return next_one and not act.fields and not verbs and "from" in vessels.fields


def without_left_out(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """`gave it 3 g of meta. No, I left the meta out`: a dose that the note itself takes back."""
    gone = {
        m.value
        for c in scene.clauses
        if (c.has("left") and c.has("out")) or c.mood == "denied"
        for m in c.of("material")
        if any(k.words()[:1] == ["no"] for k in scene.sentence(c))
    }
    return [d for d in drafts if d.kind != "addition" or d.fields["material"] not in gone]


_REPEATED = (
    "stir", "punch_down", "top_up", "airlock", "degas", "chill", "reading", "move", "filter", "addition",
)
_TOO = {"too", "likewise", "also", "same"}
_AGAIN = {"again", "too", "also"}


def repeated(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """What is said to have been done again on another day (`… and again on 10/8`) or to another wine (`the dewberry
    too`) in a clause that says no more.
    """
    out: list[Draft] = []
    for clause in scene.clauses:
        out += [d for d in drafts if d.clause is clause]
        bare = not clause.of("cue", "reading", "amount", "code", "material") and not any(
            d.clause is clause for d in drafts
        )
        earlier = [d for d in out if d.kind in _REPEATED]
        if not bare or not earlier or clause.mood != "done":
            continue
        last = [d for d in earlier if d.clause is earlier[-1].clause]
        if clause.own_date and clause.has(*_AGAIN) and last[0].clause.sentence == clause.sentence:
            out += [replace(d, dates=(clause.date,)) for d in last if d.kind not in ("addition", "move", "filter")]
        elif clause.of("batch") and clause.has(*_TOO) and clause.sentence - last[0].clause.sentence <= 1:
            for ref in clause.of("batch"):
                out += [replace(d, clause=clause, ref=ref) for d in last if d.kind != "reading"]
    return out


def on_the_day_tasted(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """`we tasted both last night. The red is oaky`: what is told of a tasting is of its day."""
    told = next((c for c in scene.clauses if c.cues("taste") and c.own_date and c.mood == "done"), None)
    for d in drafts:
        if d.kind == "taste" and told and d.clause.first > told.first and not d.dates and not d.clause.own_date:
            d.dates = (told.date,) if not any(o.kind == "taste" and o.clause is told for o in drafts) else ()
    return drafts


def one_mark(drafts: list[Draft]) -> list[Draft]:
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


def without_repeats(drafts: list[Draft]) -> list[Draft]:
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


def with_the_start(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """What a note says of the batch it starts, without a day or a "now", is of the day of the start."""
    start = next((d for d in drafts if d.kind == "start" and d.dates), None)
    today = scene.on.isoformat()
    for d in drafts if start and start.dates[0] < today else ():
        clause = d.clause
        if (
            d.kind in _AT_THE_START
            and clause.first in scene.start_clauses
            and start is not None
            and clause.first > start.first
            and clause.date == today
            and not (d.dates or any(c.own_date for c in scene.sentence(clause)))
            and not any(c.own_date and c.date == today for c in scene.clauses if c.first < clause.first)
            and not (clause.of("time") or PRESENT.intersection(clause.words()))
        ):
            d.dates = start.dates
    return drafts


def counted_bottling(entries: list[Entry]) -> list[Entry]:
    """`36 x 375 under cork … thats everything bottled`: a bottling told again without its count."""
    counted = {e.batch for e in entries if e.kind == "bottle" and e.get("count") is not None}
    return [e for e in entries if not (e.kind == "bottle" and e.get("count") is None and e.batch in counted)]


def one_stage(entries: list[Entry]) -> list[Entry]:
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


def on_the_day_drunk(entries: list[Entry], drafts: list[Draft]) -> list[Entry]:
    """A tasting told after the bottle was opened is of the day it was opened, where no other day is named for it."""
    opened = {e.batch: e.date for e in entries if e.kind == "drink"}
    dated = any(d.kind == "taste" and d.clause.own_date for d in drafts)
    return [
        e._replace(date=opened[e.batch]) if e.kind == "taste" and e.batch in opened and not dated else e
        for e in entries
    ]


def finished_before(draft: Draft, batch: int | None, cellar: Cellar) -> bool:
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
    "fermentation", "malolactic", "press", "crush", "degas", "filter", "chill", "oak_out", "airlock", "end", "stir",
    "move",
)


def said_before(entry: Entry, entries: list[Entry]) -> bool:
    """An act told twice in one note is one act; doses and readings may well be alike and two."""
    return entry.kind in _ONCE and any(
        (e.kind, e.batch, e.date, e.fields) == (entry.kind, entry.batch, entry.date, entry.fields) for e in entries
    )
