"""Kinds of absence told apart: never recorded, recorded as not done, or in a note not understood yet."""

from datetime import date
from typing import NamedTuple

from journalbot.language.text import understand
from journalbot.model import Note
from journalbot.questions.measures import MEASURES, Fact
from journalbot.questions.query import Query, What
from journalbot.questions.says import day_said, join
from journalbot.questions.scene import Scene
from journalbot.questions.whom import label_of
from journalbot.vocabulary.cues import DENIED
from journalbot.vocabulary.question_signs import GROUP_NAMES

# Where to find nothing is the answer.
_NOTHING = {
    "stuck now": "Nothing is noted as stuck now",
    "due": "Nothing is due by the usual intervals and the plans noted",
    "overdue": "Nothing is overdue by the usual intervals and the plans noted",
    "worries": "Nothing looks wrong by what is noted",
}
_WAITING = 3  # notes shown at most


class Absence(NamedTuple):
    """What is said of something that is not there."""

    text: str
    notes: tuple[int, ...] = ()
    denied: bool = False  # a note says that it was not done
    waiting: bool = False  # a note that may hold it has not been understood


def named(what: What) -> str:
    """What is asked for, as said after "no": `pH`, `additions of tartaric acid`."""
    measure = MEASURES[what.measure]
    phrase = measure.phrase
    for key, value in what.of:
        phrase = phrase.replace("{" + key + "}", GROUP_NAMES.get(value, value))
    out, _, rest = phrase.partition("[")
    while rest:
        inner, _, after = rest.partition("]")
        more, _, rest_after = after.partition("[")
        out += ("" if "{" in inner else inner) + more
        rest = rest_after
    return out.removeprefix("the ").strip()


def told_apart(query: Query, what: What, scene: Scene, numbers: list[int] | None, bare: list[Fact]) -> Absence:
    """What to say where no fact was found."""
    thing = named(what)
    if query.skip:
        return Absence(f"There is no {thing} before that.")
    whose = (
        f" for {join([label_of(scene.cellar.batches[n]) for n in numbers if n in scene.cellar.batches][:4])}"
        if numbers
        else ""
    )
    days = _days(query)
    if what.measure in ("contents", "free vessels", "vessels in use", "capacity") and what.get("vessel"):
        return Absence(
            f"The journal knows of no vessel called {what.get('vessel')}."
            if what.measure != "capacity"
            else f"How much {what.get('vessel')} holds is not recorded."
        )
    if what.measure == "search":
        return Absence(f"No note says “{what.get('words')}”{days}.")
    if what.measure == "money":
        item = what.get("item")
        return Absence(f"No purchase{f' of {item}' if item else ''} recorded{whose}{days}.")
    if what.measure in _NOTHING:
        return Absence(f"{_NOTHING[what.measure]}{whose or _about(query)}.", denied=True)
    if what.measure == "plans":
        return Absence(f"Nothing is planned{whose}{days}.")
    if bare:
        fact = bare[-1]
        return Absence(
            f"No name recorded for {thing}{whose}: the note of {day_said(fact.date)} gives none.",
            tuple(n for f in bare for n in f.notes),
        )
    if denied := _denied(what, scene, numbers):
        return Absence(
            f"No {thing}{whose}: the note of {day_said(denied[1])} says “{denied[0]}”.", (denied[2],), denied=True
        )
    if waiting := _waiting(query, what, scene, numbers):
        shown = join([f"note {n} (“{text}”)" for n, text in waiting[:_WAITING]])
        return Absence(
            f"No {thing} recorded{whose}{days}, but {shown} still to be understood.",
            tuple(n for n, _ in waiting[:_WAITING]),
            waiting=True,
        )
    if MEASURES[what.measure].sort in ("figure", "days", "money") and what.measure != "score":
        why = _why(what, scene, numbers)
        return Absence(f"The journal does not say: no {thing} can be worked out{whose}{days}{why}.")
    if thing.split()[0] in ("what", "where", "how", "whether", "which"):
        return Absence(f"Nothing is recorded{whose}{days}.")
    return Absence(f"No {thing} recorded{whose}{days}.")


def _days(query: Query) -> str:
    when = query.when
    if when.anchor:
        return " at that time"
    if when.since and when.until:
        return (
            f" from {day_said(when.since)} to {day_said(when.until)}"
            if when.since != when.until
            else f" on {day_said(when.since)}"
        )
    return f" since {day_said(when.since)}" if when.since else f" until {day_said(when.until)}" if when.until else ""


_NEEDS = {
    "alcohol": "it needs a gravity before the ferment and one after it",
    "attenuation": "it needs a gravity before the ferment and one after it",
    "bottles left": "no bottling with a count is recorded",
    "cost per bottle": "it needs what was paid and how many bottles were filled",
    "fermentation time": "it needs the pitch and the end of the fermentation",
    "time on oak": "no oak is recorded",
    "malolactic time": "it needs the start and the end of malolactic",
}


def _why(what: What, scene: Scene, numbers: list[int] | None) -> str:
    need = _NEEDS.get(what.measure, "")
    return f" ({need})" if need else ""


def _denied(what: What, scene: Scene, numbers: list[int] | None) -> tuple[str, str, int] | None:
    """The remark of these batches that says the act was not done: (its words, its day, its note)."""
    if MEASURES[what.measure].sort != "act" or not numbers:
        return None
    stems = _stems(what)
    for e in reversed(scene.source.entries(batch=numbers, kinds=["remark"])):
        low = f" {str(e.get('text') or '').casefold()} "
        if any(s in low for s in stems) and any(f" {d} " in low for d in DENIED):
            return str(e.get("text")), e.date, e.note
    return None


def _concerns(note: Note, scene: Scene, numbers: list[int] | None) -> bool:
    """Whether a note that waits may speak of these batches: it names one of them, or none."""
    text = understand(note.text, scene.names, date.fromisoformat(note.on), scene.settings)
    named_there = {n for m in text.of("batch") for n in m.value.fits}
    return not numbers or not named_there or bool(named_there & set(numbers))


def _stems(what: What) -> set[str]:
    from journalbot.vocabulary.question_signs import SIGNS

    value = what.get("material")
    words = {value} if value else set(SIGNS.get(what.measure, (what.measure,)))
    return {
        w for w in words if len(w) > 2 and (value or w.endswith(("ed", "ing")) or w == what.measure) and w != "bottle"
    }


def _waiting(query: Query, what: What, scene: Scene, numbers: list[int] | None) -> list[tuple[int, str]]:
    """Notes not understood yet that speak of what is asked."""
    from journalbot.vocabulary.quantities import QUANTITIES

    quantity = MEASURES[what.measure].quantity
    words = set(QUANTITIES[quantity].spellings) if quantity in QUANTITIES else _stems(what)
    out = []
    for ask in scene.source.open_asks():
        note = scene.source.note(ask.note)
        low = f" {note.text.casefold()} " if note else ""
        since, until = query.when.since, query.when.until
        in_time = note and (not since or note.on >= since) and (not until or note.on <= until + "~")
        if note and in_time and any(f" {w} " in low for w in words) and _concerns(note, scene, numbers):
            out.append((note.number, note.text if len(note.text) < 120 else note.text[:117] + "…"))
    return out


def _about(query: Query) -> str:
    return f" for {join(query.batches.labels)}" if query.batches.labels else ""
