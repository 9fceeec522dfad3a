"""What a wine was at the time: its volume before something was put in, and its strength once others were blended in."""

from collections.abc import Callable

from journalbot.journal.fold import blended, fold, order_of
from journalbot.model import Entry
from journalbot.questions.measures.base import Case, Fact
from journalbot.questions.measures.vessels import volume_said
from journalbot.questions.says import day_said, number_said
from journalbot.winemaking.alcohol import alcohol_of_blend
from journalbot.winemaking.ranges import Estimate

Strength = Callable[[int], Fact | None]


def volume_before(case: Case, entry: Entry) -> float | None:
    """Litres of the batch just before an entry of its own; None where not known."""
    if case.number is None:
        return None
    earlier = [e for e in case.source.entries(batch=[case.number]) if order_of(e) < order_of(entry)]
    return fold(case.number, earlier).volume


def after_blends(case: Case, made: Fact, strength_of: Strength) -> Fact:
    """The alcohol of a batch once the wines blended into it are counted, each by its volume and strength; as it was
    made where none was. What cannot be counted is told in the working."""
    poured = [
        e
        for e in case.source.entries(batch=[case.number] if case.number else None, kinds=["blend"])
        if e.batch == case.number
    ]
    for blend in poured:
        if order_of(blend) < (made.date, *made.order):
            told = f"; the blend of {day_said(blend.date)} is older than that reading, so this is rough"
            made = made._replace(working=made.working + told)
            continue
        made = _with(case, made, blend, strength_of)
    return made


def _with(case: Case, made: Fact, blend: Entry, strength_of: Strength) -> Fact:
    litres = volume_before(case, blend)
    own = Estimate(float(made.value or 0), made.low or 0, made.high or 0)
    lots, parts, notes = [(litres, own)] if litres else [], [], list(made.notes)
    for number, amount in blended(blend):
        other = strength_of(number)
        if not amount or other is None or not litres:
            told = f"; not counting batch {number} of {day_said(blend.date)}: how much or how strong is not known"
            return made._replace(working=made.working + told)
        value = float(other.value or 0)
        lots.append((amount, Estimate(value, other.low or value, other.high or value)))
        parts.append(f"{volume_said(amount, case.settings.units)} of batch {number} at {number_said(value, 1)} % vol")
        notes += other.notes
    if len(lots) < 2:
        return made
    found = alcohol_of_blend(lots)
    half = max(found.high - found.value, found.value - found.low)
    start = f"{volume_said(litres or 0, case.settings.units)} at {number_said(own.value, 1)} % vol"
    working = f"{start} with {', '.join(parts)} blended in on {day_said(blend.date)}; {made.working}"
    return made._replace(
        value=round(found.value, 1),
        low=found.low,
        high=found.high,
        date=blend.date,
        order=blend.place,
        text=f"about {number_said(found.value, 1)} % vol (±{number_said(half, 1)})",
        working=working,
        notes=tuple(dict.fromkeys((*notes, blend.note))),
    )
