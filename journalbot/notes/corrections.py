"""Corrections in plain words: what a line takes back or puts right of entries filed before.

A correction is known by its words ("make that", "no, that was", "should be", "… not …"). What it corrects is found from
what it names: a batch, an act, a material, an old value, a day; where it names nothing, the last note that holds such a
thing is meant. One that fits nothing changes nothing.
"""

import datetime
import re
from collections.abc import Callable, Container, Sequence
from dataclasses import dataclass

from journalbot.journal.cellar import Cellar
from journalbot.language.lexicon import Mention
from journalbot.language.names import Names
from journalbot.language.text import Text, understand
from journalbot.language.tokens import tokenize
from journalbot.model import Ask, Entry, Settings
from journalbot.notes.corrected import figures, fixed
from journalbot.notes.correction_signs import (
    VALUES,
    Scope,
    gives,
    may_correct,
    new_and_old,
    old_figures,
    scope_of,
    takes_back,
)
from journalbot.vocabulary.corrections import NEGATED

_NOTES_BACK = 6  # notes before the last one that a correction of a bare value may mean
_DAYS_BACK = 3  # and how many days
_WITHIN = 45  # days back that a correction looks for what it names
_NOTE = re.compile(r"\bnote (?:no\.? ?|number |#)?(\d+)\b")
_UNDOING = frozenset(("undo", "delete", "scratch", "remove", "withdraw", "forget"))
_LEADS_NEW = frozenset(("was", "were", "is", "be", "meant", "into", "to"))  # before the batch that holds
_NO_ACTS = frozenset(("add", "start", "vessel", "fermentation"))


@dataclass(frozen=True, slots=True)
class Change:
    """What a correction does to the journal."""

    withdraw: tuple[Entry, ...] = ()
    replace: tuple[tuple[Entry, Entry], ...] = ()  # old, new
    add: tuple[Entry, ...] = ()
    undo: int | None = None  # the note whose doings are undone; 0 for the last turn
    ask: Ask | None = None
    rest: tuple[int, int] = (0, 0)  # what else the line tells: a range of its characters


Entries = Callable[..., list[Entry]]


def read_correction(
    text: str, on: datetime.date, settings: Settings, names: Names, cellar: Cellar, entries: Entries
) -> Change | None:
    """What a line corrects; None where it corrects nothing. `entries` looks entries up in the journal."""
    if takes_back(text):
        return Change(undo=0)
    plain = " ".join(t.low for t in tokenize(text) if t.kind != "mark")
    numbered = _NOTE.search(plain)
    if numbered and plain.split()[0] in _UNDOING:
        return Change(undo=int(numbered[1]))
    words = [t.low for t in tokenize(text)]
    if not words or not may_correct(words):
        return None
    read = understand(text, names, on, settings)
    scope = scope_of(words, read)
    if scope is None:
        return None
    recent = [e for e in entries(since=(on - datetime.timedelta(_WITHIN)).isoformat()) if e.kind != "remark"]
    if not recent:
        return None
    said = words[scope.first]
    found = _candidates(read, scope, on, recent)
    if said in NEGATED and not _denies_filed(read, scope, found):
        return None
    if said == "should" and not (gives(read, scope.last) and found):
        return None  # "should be ready in a week", "it is at 18 ppm, should be 30"
    if not found:
        return None if _stands_alone(read, scope) else Change(ask=Ask("value", (), text))
    change = _change(read, scope, found, on) or _shortly_before(read, scope, found, recent, on)
    unmet = scope.firm and said != "should" and not _stands_alone(read, scope)
    return change or (Change(ask=Ask("value", (), text)) if unmet else None)


def _candidates(read: Text, scope: Scope, on: datetime.date, recent: list[Entry]) -> list[Entry]:
    """The entries that the line may be about: those of one note, the latest that fits; none where none does."""
    pool, told = recent, False
    batches = _batches_meant(read, scope, on)
    if batches:
        pool, told = [e for e in pool if e.batch in batches or batches & _parts(e)], True
    old = old_figures(read, scope)
    if old and holds_value(read, scope):
        pool, told = [e for e in pool if old & figures(e)], True
    for wanted, of in _named(read, scope):
        if any(of(e) in wanted for e in pool):
            pool, told = [e for e in pool if of(e) in wanted], True
    materials = {m.value for m in scope.of(read, "material") if not _is_batch(m, read)}
    if materials and not old and any(e.kind == "addition" for e in pool):
        pool, told = [e for e in pool if e.get("material") in materials], True
    acts = _acts(read, scope)
    if acts & {e.kind for e in pool}:
        pool, told = [e for e in pool if e.kind in acts], True
    days = [m.value.iso for m in scope.of(read, "date") if m.value.iso <= on.isoformat()]
    if any(e.date in days for e in pool):
        pool, told = [e for e in pool if e.date in days], True
    elif days and days != [on.isoformat()] and not old and holds_value(read, scope):
        return []  # of another day than anything that was filed
    latest = max((e.note for e in (pool if told else recent)), default=0)
    return [e for e in pool if e.note == latest]


def _named(read: Text, scope: Scope) -> list[tuple[Container[object], Callable[[Entry], object]]]:
    """What a line names its entries by (people, quantities, strains), and where an entry has it."""
    gone = _denied_people(read, scope)
    words = [w.removesuffix("'s") for w in read.words[: scope.end]]
    spoken = f" {' '.join(words)} "
    new, old = ({str(m.value).lower() for m in ms} for ms in new_and_old(read, scope, ("code",)))
    return [
        (gone, _given_to),
        ({True}, lambda e: bool(_given_to(e)) and f" {_given_to(e)} " in spoken),
        ({m.value.quantity for m in scope.of(read, "reading") if m.value.named}, lambda e: e.get("quantity")),
        ({m.value for m in scope.of(read, "quantity")}, lambda e: e.get("quantity")),
        (old or new, lambda e: str(e.get("yeast") or e.get("culture") or "").lower()),
        ({m.value for m in scope.of(read, "oak_form")}, lambda e: e.get("form")),
    ]


def _given_to(e: Entry) -> str:
    """Who was given something, by the last word for them: `my neighbour` is the neighbour."""
    return str(e.get("to") or "").lower().rpartition(" ")[2] if e.kind == "give" else ""


def _denied_people(read: Text, scope: Scope) -> set[str]:
    """The words shortly after a "not", the last words for people among them."""
    words = read.words[: scope.end]
    return {w for i, n in enumerate(words) if n in NEGATED for w in words[i + 1 : i + 4]}


def _acts(read: Text, scope: Scope) -> set[str]:
    """The kinds of entry that a line's verbs name."""
    return {
        m.value.kind
        for m in scope.of(read, "cue")
        if m.value.detail != "weak" and m.value.kind not in _NO_ACTS and not scope.first <= m.first < scope.last
    }


def _is_batch(m: Mention, read: Text) -> bool:
    return any(b.first < m.last and m.first < b.last for b in read.of("batch"))


def _parts(e: Entry) -> set[int]:
    """The batches that were blended into another."""
    return {p["batch"] for p in e.get("with") or () if "batch" in p} if e.kind == "blend" else set()


def _batches_meant(read: Text, scope: Scope, on: datetime.date) -> set[int]:
    """The batches whose entries are meant; none where the only batch named is the right one (`that was batch 4`)."""
    new, old = new_and_old(read, scope, ("batch",))
    if old:
        return {n for m in old for n in m.value.fits}
    if right := _right_batch(read, scope):
        denied = old_figures(read, scope)
        if denied and not holds_value(read, scope):
            return {int(n) for n in denied}  # "batch 8, not 9"
        new = [m for m in new if m is not right]
    elif not holds_value(read, scope) and not _past_days(read, scope, on):
        return set()
    return {n for m in new for n in m.value.fits}


def _right_batch(read: Text, scope: Scope) -> Mention | None:
    """The batch that a line says was the right one: `Sunil's two were batch 5`, `it went into batch 8, not 9`."""
    new, _ = new_and_old(read, scope, ("batch",))
    words = read.words
    numbered = [m for m in new if m.value.how == "number" and words[max(0, m.first - 1)] in _LEADS_NEW]
    return numbered[-1] if numbered and not any(
        m.kind not in ("number", "code") for m in new_and_old(read, scope, VALUES)[0]
    ) else None


def holds_value(read: Text, scope: Scope) -> bool:
    """Whether a line gives a figure or strain that holds; `batch 8, not 9` and `Sunil's two were batch 5` do not."""
    return bool(new_and_old(read, scope, VALUES)[0]) and _right_batch(read, scope) is None


def _past_days(read: Text, scope: Scope, on: datetime.date) -> list[str]:
    new, _ = new_and_old(read, scope, ("date",))
    return [m.value.iso for m in new if m.value.iso <= on.isoformat()]


def _denies_filed(read: Text, scope: Scope, found: Sequence[Entry]) -> bool:
    """Whether what is said not to hold is something that was filed lately, of what the line speaks of."""
    if not new_and_old(read, scope, (*VALUES, "batch", "person"))[0]:
        return False
    denied = old_figures(read, scope)
    people = _denied_people(read, scope)
    return any(
        denied & figures(e) or (_right_batch(read, scope) and e.batch in denied) or _given_to(e) in people
        for e in found
    )


def _stands_alone(read: Text, scope: Scope) -> bool:
    """Whether a line that corrects nothing tells a reading or an addition of a wine by itself, so that it is a note."""
    figure = scope.of(read, "reading", "temperature") or (scope.of(read, "amount") and scope.of(read, "material"))
    return bool(figure and scope.of(read, "batch"))


def _shortly_before(
    read: Text, scope: Scope, found: list[Entry], recent: list[Entry], on: datetime.date
) -> Change | None:
    """`make that 1.006`, where the last note holds no such thing but one shortly before it does."""
    if not holds_value(read, scope) or scope.of(read, "batch"):
        return None
    last = max(e.note for e in found)
    since = (on - datetime.timedelta(_DAYS_BACK)).isoformat()
    before = [e for e in recent if last - _NOTES_BACK <= e.note < last and e.date >= since]
    for number in sorted({e.note for e in before}, reverse=True):
        if change := _change(read, scope, [e for e in before if e.note == number], on):
            return change
    return None


def _change(read: Text, scope: Scope, found: list[Entry], on: datetime.date) -> Change | None:
    """What becomes of the entries found: what the line gives anew, on the entries that have it."""
    right = _right_batch(read, scope)
    if right is None:
        new = [*new_and_old(read, scope, (*VALUES, "vessel"))[0], *_receiver(read, scope)]
        old = old_figures(read, scope)
        pairs = [(e, after) for e in found if (after := fixed(e, new, old, found)) is not None]
        if pairs:
            return Change(replace=tuple(pairs), rest=_rest(read, scope))
        if holds_value(read, scope):
            return None
    named, _ = new_and_old(read, scope, ("batch",))
    fits = [right] if right else [m for m in named if len(m.value.fits) == 1]
    if fits:
        number = fits[-1].value.fits[0]
        moved = [e for e in found if e.batch is not None and e.batch != number]
        if moved:
            return Change(replace=tuple((e, e._replace(batch=number)) for e in moved))
    if vague := next((m for m in named if len(m.value.fits) > 1), None):
        choices = tuple(f"batch {n}" for n in vague.value.fits)
        return Change(ask=Ask("batch", choices, read.slice(vague.first, vague.last)))
    days = [m.value.iso for m in scope.of(read, "date") if m.value.iso]
    if days:
        return Change(replace=tuple((e, e._replace(date=days[0])) for e in found if e.date != days[0])) or None
    return None


def _receiver(read: Text, scope: Scope) -> list[Mention]:
    """Who it was given to after all, where somebody else is denied: `went to my brother, not Anna`."""
    if not _denied_people(read, scope):
        return []
    for i, word in enumerate(read.words[: scope.end]):
        last = i + 1
        while word in ("to", "for") and last < min(scope.end, i + 4) and read.tokens[last].kind == "word":
            if read.words[last] in NEGATED:
                break
            last += 1
        if last > i + 1:
            start, end = read.tokens[i + 1].start, read.tokens[last - 1].end
            return [Mention("person", read.text[start:end], i + 1, last, start, end)]
    return []


def _rest(read: Text, scope: Scope) -> tuple[int, int]:
    """The characters of the sentences after that of the correction."""
    end = next((i for i in range(scope.end, len(read.words)) if read.words[i] in (".", "!", "\n")), None)
    return (read.tokens[end].end, len(read.text)) if end is not None and end + 1 < len(read.words) else (0, 0)
