"""How a batch was really made, and a plan for making it again at another volume."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta

from journalbot.journal.fold import litres, order_of
from journalbot.model import Entry
from journalbot.vocabulary.descriptors import FAULTS
from journalbot.vocabulary.quantities import QUANTITIES
from journalbot.vocabulary.remake import CHANGES, FAULT_CHANGES
from journalbot.winemaking.ranges import check_litres
from journalbot.winemaking.record import last_day, notes_of, value_of

# The acts that make a wine, each with what it is called in a plan.
ACTS: dict[str, str] = {
    "start": "start", "crush": "crush", "addition": "add", "pitch": "pitch", "press": "press", "rack": "rack",
    "malolactic": "malolactic", "oak": "oak", "oak_out": "take the oak out", "degas": "degas", "filter": "filter",
    "chill": "chill", "stir": "stir the lees", "top_up": "top up", "blend": "blend", "punch_down": "punch down",
    "bottle": "bottle"}  # fmt: skip
_ONCE = frozenset(("punch_down", "stir"))  # done again and again: the first time stands for all
_MEASURED = ("sg", "brix", "ph", "ta", "temperature", "free_so2", "malic")
_AROUND = ("start", "pitch", "press", "rack", "malolactic", "bottle")  # acts whose readings are worth meeting again


@dataclass(frozen=True)
class Step:
    """One act: days after the start, its kind, what it was done with, how much, and that for each litre of the batch.

    A rate ("g/L") has no `per_litre`: it holds at any volume. `approx` where the date is no exact day; `lasted` days
    for what went on from day to day.
    """

    day: int
    kind: str
    what: str
    amount: float | None
    unit: str
    per_litre: float | None
    notes: tuple[int, ...]
    approx: bool = False
    lasted: int = 0


@dataclass(frozen=True)
class Watch:
    """A reading to meet again: the day, the quantity, what it was, and the act that it was taken at."""

    day: int
    quantity: str
    value: float
    unit: str
    at: str
    notes: tuple[int, ...]


@dataclass(frozen=True)
class Change:
    """What a tasting or a trouble on record suggests doing otherwise, the words that do, and their notes."""

    advice: str
    words: tuple[str, ...]
    notes: tuple[int, ...]


@dataclass(frozen=True)
class Recipe:
    """How a batch was made: `litres` at the start, and the steps, readings and changes in order."""

    batch: int
    started: str
    litres: float
    steps: tuple[Step, ...]
    watches: tuple[Watch, ...]
    changes: tuple[Change, ...]


def how_made(batch: int, entries: Iterable[Entry], volume: float | None = None) -> Recipe:
    """The recipe that a batch's entries tell. `volume` in litres stands in where its start gives none.

    Amounts for a litre are by the volume at the start, which a plan scales as a whole. ValueError where the batch has
    no start, or its volume is not known.
    """
    own = sorted((e for e in entries if e.batch == batch), key=order_of)
    start = next((e for e in own if e.kind == "start"), None)
    if start is None:
        raise ValueError(f"batch {batch} has no start on record, so there is nothing to count its days from")
    told = litres(start.get("volume"), start.get("unit"))
    size = told if told is not None else volume
    if size is None:
        raise ValueError(f"the volume that batch {batch} was started with is not known: say how much it was")
    check_litres(size)
    return Recipe(batch, start.date, size, tuple(_steps(own, start, size)), tuple(_watches(own, start)),
                  tuple(changes(own)))


def scaled(recipe: Recipe, volume: float) -> Recipe:
    """The recipe at another volume in litres: amounts in proportion, rates, days and readings as they were."""
    factor = check_litres(volume) / recipe.litres
    steps = tuple(s if s.amount is None or s.per_litre is None else replace(s, amount=s.amount * factor)
                  for s in recipe.steps)
    return replace(recipe, litres=volume, steps=steps)


def plans(recipe: Recipe, number: int, started: date, today: date) -> list[Entry]:
    """The recipe's steps after the start as plans of batch `number`, laid out from the day on which that is started."""
    return [Entry("plan", number, today.isoformat(), {"what": said(step), "due": _on(started, step).isoformat()})
            for step in recipe.steps if step.kind != "start"]


def said(step: Step) -> str:
    """A step in a few words that a plan can be kept by: `add 12 g potassium metabisulfite`, `press`."""
    # A spoon is good to two figures at most.
    digits = 2 if step.unit in ("tsp", "tbsp", "cup") else 3
    amount = "" if step.amount is None else f"{step.amount:.{digits}g} {step.unit}".strip()
    if step.kind == "bottle" and step.amount is not None:
        amount = f"about {step.amount:.0f}"
    return " ".join(part for part in (ACTS[step.kind], amount, step.what) if part)


def _on(started: date, step: Step) -> date:
    return started + timedelta(days=step.day)


def _day(entry: Entry, start: Entry) -> int:
    """Days from the start; of a date no more exact than a month its middle, of a year its summer."""
    return max(0, (_middle(entry.date) - _middle(start.date)).days)


def _middle(iso: str) -> date:
    last = last_day(iso)
    return last if len(iso) == 10 else last.replace(day=15) if len(iso) == 7 else last.replace(month=7, day=1)


def _steps(own: Sequence[Entry], start: Entry, size: float) -> Iterator[Step]:
    for e in own:
        if e.kind not in ACTS or (e.kind == "malolactic" and e.get("stage") == "finished") or e.date < start.date:
            continue
        same = [o for o in own if o.kind == e.kind]
        if e.kind in _ONCE and e is not same[0]:
            continue
        day = _day(e, start)
        lasted = _day(same[-1], start) - day if e.kind in _ONCE else 0
        for what, amount, unit in _amounts(e):
            per_litre = amount / size if amount is not None and "/" not in unit and unit != "%" else None
            yield Step(day, e.kind, what, amount, unit, per_litre, notes_of(e), len(e.date) < 10, lasted)


def _amounts(entry: Entry) -> Iterator[tuple[str, float | None, str]]:
    """What an act was done with and how much of it: what, amount, unit."""
    if entry.kind == "start":
        made_from = ", ".join(map(str, entry.get("from") or ()))
        weight = entry.get("weight")
        field, unit = ("weight", "weight_unit") if isinstance(weight, int | float) else ("volume", "unit")
        yield made_from, _number(entry, field), str(entry.get(unit) or "")
    elif entry.kind == "blend":
        for part in entry.get("with") or ():
            if isinstance(part, dict):
                amount = part.get("amount")
                yield (f"with batch {part.get('batch')}", float(amount) if isinstance(amount, int | float) else None,
                       str(part.get("unit") or ""))
    elif entry.kind == "bottle":
        size = entry.get("size")
        of = f"of {size:g} {entry.get('unit') or ''}".strip() if isinstance(size, int | float) else ""
        yield " ".join(filter(None, (of, f"under {entry.get('closure')}" if entry.get("closure") else ""))), _number(
            entry, "count"), ""
    else:
        words = [entry.get(f) for f in ("material", "yeast", "culture", "toast", "origin", "form", "with")]
        amount = _number(entry, "amount") if entry.kind != "rack" else None
        yield " ".join(str(w) for w in words if isinstance(w, str)), amount, str(entry.get("unit") or "")


def _number(entry: Entry, name: str) -> float | None:
    value = entry.get(name)
    return float(value) if isinstance(value, int | float) else None


def _watches(own: Sequence[Entry], start: Entry) -> Iterator[Watch]:
    """The readings taken on the day of an act, and the last gravity before the bottling."""
    acts: dict[str, str] = {}
    for e in own:
        if e.kind in _AROUND and len(e.date) == 10:
            acts.setdefault(e.date, ACTS[e.kind])
    bottled = next((e for e in own if e.kind == "bottle"), None)
    read = [e for e in own if e.kind == "reading" and e.get("quantity") in _MEASURED and value_of(e) is not None]
    before = [e for e in read if bottled and e.get("quantity") == "sg" and order_of(e) < order_of(bottled)]
    for e in read:
        at = acts.get(e.date) or ("before bottling" if before and e is before[-1] else "")
        if at and e.date >= start.date:
            quantity = str(e.get("quantity"))
            yield Watch(_day(e, start), quantity, value_of(e) or 0.0, str(e.get("unit") or QUANTITIES[quantity].unit),
                        at, notes_of(e))


# ---- what to do otherwise


def changes(own: Sequence[Entry]) -> Iterator[Change]:
    """What the tastings of the finished wine suggest, and what went wrong on the way. The tastings since it was bottled
    count; the last one alone where there is none."""
    tastings = [e for e in own if e.kind == "taste"]
    bottled = next((e for e in own if e.kind == "bottle"), None)
    final = [e for e in tastings if bottled and order_of(e) > order_of(bottled)] or tastings[-1:]
    found: dict[str, list[tuple[str, Entry]]] = {}
    for e in final:
        for word in map(str, e.get("words") or ()):
            if advice := _advice(word.lower()):
                found.setdefault(advice, []).append((word, e))
    for advice, why in found.items():
        yield Change(advice, tuple(dict.fromkeys(w for w, _ in why)), notes_of(*(e for _, e in why)))
    if stuck := [e for e in own if e.kind == "fermentation" and e.get("stage") == "stuck"]:
        yield Change("nutrient by measured YAN, and a steady temperature: it stuck", ("stuck",), notes_of(*stuck))
    if ended := next((e for e in own if e.kind == "end" and e.get("reason")), None):
        yield Change(f"it was ended: {ended.get('reason')}", ("ended",), notes_of(ended))


def _advice(word: str) -> str | None:
    advice = next((a for a, words in CHANGES.items() if word in words), None)
    return advice or FAULT_CHANGES.get(FAULTS.get(word, ""))
