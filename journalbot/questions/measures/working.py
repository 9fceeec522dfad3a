"""What every calculation shares: its values from the question or the batch, how sure they are, and how it is told."""

import re
from datetime import date
from typing import NamedTuple

from journalbot.journal.fold import order_of
from journalbot.model import Entry
from journalbot.questions.measures.base import Case, Compute, Fact, Measure
from journalbot.questions.measures.readings import value_said
from journalbot.questions.measures.vessels import volume_said
from journalbot.questions.says import day_said, join, number_said
from journalbot.vocabulary.quantities import QUANTITIES
from journalbot.winemaking import acid, units
from journalbot.winemaking.ranges import Estimate, OutOfRange
from journalbot.winemaking.units import UnknownUnit

_VALUE = re.compile(r"^(-?[\d.]+(?:e-?\d+)?) ?(.*)$")
AID = "It is an aid to your own judgement: weigh it, and measure again afterwards"
DRY_WINE = 12.0  # % vol taken for a wine whose strength is not told
_OLD = 60  # days after which a reading's age is told; this program's choice
_SMALL = 0.012  # share of a value: a band within it is the arithmetic's, and not told
# What changes a wine, so that a reading before it may hold no more.
_CHANGES = ("addition", "blend", "top_up")


class Missing(Exception):
    """Something that the calculation needs and neither the question nor the journal gives."""


class Given(NamedTuple):
    """A value to reckon with, how it is told, and its notes; `lacking` says what it was put in for."""

    value: float
    said: str
    notes: tuple[int, ...] = ()
    lacking: str = ""


def value_of(said: str) -> tuple[float, str]:
    """The number and unit of a value as a Query holds it: `30 mg/L`."""
    found = _VALUE.match(said)
    if not found:
        raise Missing("a number")
    return float(found.group(1)), found.group(2)


def batch_of(case: Case) -> int | None:
    """The batch that is reckoned for."""
    return int(case.of["batch"]) if case.of.get("batch") else None


def of_batch(case: Case, kinds: tuple[str, ...]) -> Case:
    """The case of the batch itself, with its entries of these kinds."""
    number = batch_of(case)
    return case._replace(number=number, entries=case.source.entries(batch=number, kinds=kinds) if number else [])


def volume(case: Case) -> Given:
    """The volume in litres, from the question or else the batch. Missing where neither tells it: no dose without it."""
    if said := case.of.get("volume"):
        value, unit = value_of(said)
        return Given(units.litres(value, unit), f"{number_said(value)} {unit}")
    number = batch_of(case)
    if number is None:
        raise Missing("the volume (as in “… in 5 gal”)")
    batch = case.cellar.batches[number]
    if not batch.volume:
        raise Missing(f"how much there is of batch {number} (note it, or ask with “… in 5 gal”)")
    held = list(batch.vessels)
    split = f" in {join(held)}, to be shared out by what each holds" if len(held) > 1 else ""
    return Given(batch.volume, f"batch {number}, last known at {volume_said(batch.volume, case.settings.units)}{split}")


def reading(case: Case, quantity: str, name: str = "", usual: float | None = None) -> Given:
    """A value of a quantity from the question, or else the batch's last reading of it.

    Where there is neither, `usual` stands in and is said to; without it Missing is raised. A reading that is old, or
    older than what has gone into the wine since, says so.
    """
    if said := case.of.get(name or quantity):
        value, unit = value_of(said)
        return Given(_in_usual_unit(quantity, value, unit), value_said(value, unit))
    number, label = batch_of(case), QUANTITIES[quantity].label
    found = case.source.entries(batch=number, quantity=quantity) if number else []
    found = [e for e in found if isinstance(e.get("value"), int | float)]
    if not found:
        whose = f" of batch {number}" if number else ""
        if usual is None:
            raise Missing(f"the {label}{whose}")
        told = value_said(usual, "pH" if quantity == "ph" else QUANTITIES[quantity].unit)
        nothing = f"no {label} is recorded for batch {number}" if number else f"no {label} is given"
        return Given(usual, told, (), nothing)
    last = found[-1]
    unit = str(last.get("unit") or "")
    told = f"{value_said(float(last.get('value')), unit)} of {day_said(last.date)}{doubt(case, last)}"
    return Given(_in_usual_unit(quantity, float(last.get("value")), unit), told, (last.note,))


def doubt(case: Case, last: Entry) -> str:
    """What speaks against a reading: something put in since, or its age."""
    later = case.source.entries(batch=last.batch, kinds=_CHANGES, since=last.date)
    since = [e for e in later if order_of(e) > order_of(last)]
    if since:
        what = since[-1].get("material") or {"blend": "blend", "top_up": "topping up"}.get(since[-1].kind, "addition")
        return f", read before the {what} of {day_said(since[-1].date)}: measure again first"
    from journalbot.winemaking.record import last_day

    days = (date.fromisoformat(case.today) - last_day(last.date)).days
    return f", {days} days ago" if days > _OLD else ""


def _in_usual_unit(quantity: str, value: float, unit: str) -> float:
    return acid.ta_from_percent(value) if quantity == "ta" and unit == "%" else value


def as_rate(said: str, to: str) -> float:
    """A rate in the unit wanted; a TA in per cent as g/L."""
    value, unit = value_of(said)
    if unit == "%":
        value, unit = acid.ta_from_percent(value), "g/L"
    return units.convert(value, unit, to)


# ---- telling it


_SPOONS = ((1 / 8, "1/8"), (1 / 4, "1/4"), (1 / 3, "1/3"), (1 / 2, "1/2"), (2 / 3, "2/3"), (3 / 4, "3/4"))


def spoons(grams: float, material: str) -> str:
    """Level teaspoons in words; empty where what a spoon holds is not known, or it is too little to spoon."""
    try:
        level = units.teaspoons(grams, material).value
    except UnknownUnit:
        return ""
    whole = int(level)
    part = min(((0.0, ""), *_SPOONS, (1.0, "")), key=lambda p: abs(p[0] - (level - whole)))
    whole, part = (whole + 1, (0.0, "")) if part[0] == 1.0 else (whole, part)
    spoken = " ".join(p for p in (str(whole) if whole else "", part[1]) if p)
    return f"about {spoken} level tsp" if spoken and level < 24 else ""


def digits_said(value: float, decimals: int) -> str:
    """A value rounded to so many decimals, tens and hundreds for negative ones; at least one figure of it stays."""
    if value and round(value, decimals) == 0:
        return f"{value:.1g}"
    return number_said(round(value, decimals), max(0, decimals))


def said(found: Estimate, unit: str = "", most: int = 3) -> str:
    """An estimate with no more digits than it bears: `about 17 g (13 to 25)`; within 1 % the value alone."""
    width = found.high - found.low
    if width <= 2 * _SMALL * abs(found.value):
        fine = Estimate.share(found.value, 0.01)
        return f"{digits_said(found.value, fine.decimals(most))} {unit}".strip()
    decimals = found.decimals(most)
    low, high = digits_said(found.low, decimals), digits_said(found.high, decimals)
    return f"about {digits_said(found.value, decimals)} {unit}".rstrip() + f" ({low} to {high})"


def between(low: float, high: float, unit: str = "") -> str:
    """A span of a usual practice, in two figures each: `38 to 76 g`."""
    a, b = (f"{float(f'{x:.2g}'):g}" for x in (low, high))
    return f"{a if a == b else f'{a} to {b}'} {unit}".strip()


def told(
    case: Case, value: float, unit: str, text: str, working: str, *given: Given, band: Estimate | None = None
) -> list[Fact]:
    """The fact of a calculation: for a batch, resting on the notes of what was given; bare where a value was put in."""
    lacking = [g for g in given if g.lacking]
    if lacking:
        gone = join([g.lacking for g in lacking])
        text = f"{gone[0].upper()}{gone[1:]}; with {join([g.said for g in lacking])} it would be {text}"
    notes = tuple(dict.fromkeys(n for g in given for n in g.notes))
    low, high = (band.low, band.high) if band else (None, None)
    return [Fact(batch_of(case), "", value, unit, text, notes, working, low=low, high=high, bare=bool(lacking))]


def colour_of(case: Case) -> str:
    """The wine's colour: as the question says, as noted, or by its fruit; empty where nothing tells."""
    from journalbot.winemaking.record import record_of

    number = batch_of(case)
    if case.of.get("colour") or number is None:
        return case.of.get("colour", "")
    return record_of(case.cellar.batches[number], [], date.fromisoformat(case.today)).colour or ""


def safe(compute: Compute) -> Compute:
    """The calculation, with a plain sentence where something is missing or out of range."""

    def run(case: Case) -> list[Fact]:
        def sorry(text: str) -> list[Fact]:
            return [Fact(batch_of(case), "", None, "", text, bare=True)]

        try:
            return compute(case)
        except Missing as missing:
            return sorry(f"I need {missing} for that")
        except OutOfRange as error:
            return sorry(f"That is outside what the calculation holds for: {error}")
        except (UnknownUnit, ValueError) as error:
            return sorry(f"That cannot be worked out: {error}")

    return run


def calculation(name: str, phrase: str, compute: Compute) -> Measure:
    """A calculation as a measure; where something is missing or out of range it says so."""
    return Measure(name, phrase, (), safe(compute), (), sort="calculation", scope="none")
