"""From a Query to facts: which batches, which of their entries, which days; facts brought together to fewer."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from datetime import date, timedelta
from typing import Any

from journalbot.journal.cellar import Cellar
from journalbot.language.names import Names
from journalbot.model import Batch, Entry, Settings
from journalbot.questions.measures import MEASURES, Case, Fact, Measure
from journalbot.questions.measures.base import Source, days_between
from journalbot.questions.measures.money import money_said
from journalbot.questions.measures.readings import value_said
from journalbot.questions.query import Batches, Condition, What, When
from journalbot.questions.says import day_said, days_said, join, number_said
from journalbot.questions.whom import colour_of
from journalbot.vocabulary.units import UNITS
from journalbot.winemaking.acid import ta_from_percent
from journalbot.winemaking.units import UnknownUnit, convert, grams

_NEAR = 3  # days within which a reading still belongs to an act
_SUMMED = frozenset(("bottles", "days", "times"))


class Incomparable(Exception):
    """A condition whose value has a unit that the batch's facts cannot be brought to."""


@dataclass(slots=True)
class Scene:
    """The journal as a question sees it. Entries are fetched once for each set of batches and kinds."""

    source: Source
    cellar: Cellar
    names: Names
    settings: Settings
    today: str
    _kept: dict[tuple[Any, tuple[str, ...]], dict[int | None, list[Entry]]] = field(default_factory=dict)

    def entries(self, numbers: Sequence[int] | None, kinds: tuple[str, ...]) -> dict[int | None, list[Entry]]:
        """The entries of these kinds by batch; of these batches only, unless `numbers` is None."""
        key = (None if numbers is None else tuple(numbers), kinds)
        if key not in self._kept:
            filters: dict[str, Any] = {"kinds": list(kinds)}
            if numbers is not None:
                filters["batch"] = list(numbers)
            found: dict[int | None, list[Entry]] = {}
            for e in self.source.entries(**filters) if kinds else ():
                found.setdefault(e.batch, []).append(e)
            self._kept[key] = found
        return self._kept[key]

    def facts(self, what: What, numbers: Sequence[int] | None, when: When | None = None) -> dict[int | None, list[Fact]]:
        """The facts of a measure by batch; batches without any are left out."""
        measure = MEASURES[what.measure]
        if measure.scope == "none":
            return _by_batch(self._within(measure.compute(self._case(None, self.entries(None, measure.kinds).get(None, []), what)), when, None))
        found = self.entries(numbers, measure.kinds)
        owners: list[int | None] = sorted(n for n in (found if numbers is None else numbers) if n is not None)
        if measure.scope == "any" and numbers is None:
            owners.append(None)
        elif not measure.kinds or what.measure == "where":
            owners = list(numbers if numbers is not None else sorted(self.cellar.batches))
        out: dict[int | None, list[Fact]] = {}
        for number in owners:
            facts = self._within(measure.compute(self._case(number, found.get(number, []), what)), when, number)
            if facts:
                out[number] = facts
        return out

    def _case(self, number: int | None, entries: Sequence[Entry], what: What) -> Case:
        return Case(number, entries, {**dict(MEASURES[what.measure].fixed), **dict(what.of)}, self.today, self.settings, self.cellar, self.source)

    # ---- which batches

    def batches(self, which: Batches, when: When) -> tuple[list[int] | None, list[tuple[Condition, dict[int | None, list[Fact]]]]]:
        """The batches meant (None: all of them), and for each condition the facts that it was judged by."""
        if not which.described:
            return (list(which.numbers), []) if which.numbers else (None, [])
        numbers = list(which.numbers) or sorted(self.cellar.batches)
        numbers = [n for n in numbers if n in self.cellar.batches and self._fits(self.cellar.batches[n], which)]
        judged = []
        narrow = numbers if which.numbers or which.colours or which.years or which.state else None
        for condition in which.conditions:
            facts = self.facts(condition.what, narrow, when)
            numbers = [n for n in numbers if self._meets(condition, facts.get(n, []))]
            judged.append((condition, facts))
        return numbers, judged

    def _fits(self, batch: Batch, which: Batches) -> bool:
        if which.colours and colour_of(batch, self.names) not in which.colours:
            return False
        if which.years and batch.year not in which.years:
            return False
        return not which.state or STATES[which.state](batch)

    def _meets(self, condition: Condition, facts: list[Fact]) -> bool:
        real = [f for f in facts if not f.bare]
        if condition.test == "some":
            return bool(real)
        if condition.test == "none":
            return not real
        if condition.method == "count" or (condition.unit == "times" and not condition.method):
            return _compare(condition.test, float(len(real)), condition.value)
        reduced = reduce_facts(real, condition.method, MEASURES[condition.what.measure], self.settings) if condition.method else real
        values = [v for f in reduced if (v := _in_unit(f, condition.unit)) is not None]
        if reduced and not values:
            raise Incomparable(condition)
        return any(_compare(condition.test, v, condition.value) for v in values)

    # ---- which days

    def _within(self, facts: list[Fact], when: When | None, number: int | None) -> list[Fact]:
        if not when or not facts:
            return facts
        if when.anchor:
            return self._by_anchor(facts, when, number)
        return [f for f in facts if _overlaps(f, when.since, when.until)]

    def span_of(self, when: When) -> When:
        """The days that an anchor with batches of its own, or a span around it, comes to."""
        if not when.anchor or when.relation in ("at", "before", "after"):
            return when
        days = self._anchor_days(when, list(when.of.numbers) or None)
        if not days:
            return when
        day = date.fromisoformat(days[-1])
        if when.relation == "week":
            first = day - timedelta(day.weekday())
            return When(first.isoformat(), (first + timedelta(6)).isoformat())
        size = {"day": 10, "month": 7, "year": 4}[when.relation]
        return When(days[-1][:size], days[-1][:size])

    def _anchor_days(self, when: When, numbers: list[int] | None) -> list[str]:
        facts = self.facts(What(when.anchor), numbers)
        return sorted(f.date for found in facts.values() for f in found if len(f.date) == 10)

    def _by_anchor(self, facts: list[Fact], when: When, number: int | None) -> list[Fact]:
        numbers = list(when.of.numbers) or ([number] if number is not None else None)
        anchors = [f for found in self.facts(What(when.anchor), numbers).values() for f in found if f.date]
        if not anchors:
            return []
        if when.relation == "before":
            return [f for f in facts if (f.date, f.order) <= (anchors[0].date, anchors[0].order)]
        if when.relation == "after":
            return [f for f in facts if (f.date, f.order) >= (anchors[-1].date, anchors[-1].order)]
        same = [f for f in facts if any(set(f.notes) & set(a.notes) and f.date == a.date or f.date == a.date for a in anchors)]
        if same:
            return same
        near = [(abs(days_between(f.date, a.date) or 99), f) for f in facts for a in anchors if len(f.date) == len(a.date) == 10]
        close = [f for gap, f in near if gap == min(g for g, _ in near) and gap <= _NEAR]
        return close


STATES = {
    "bottled": lambda b: bool(b.bottled) and not b.ended,
    "under way": lambda b: b.under_way,
    "fermenting": lambda b: b.under_way and bool(b.pitched) and not b.finished and (b.gravity is None or b.gravity > 1.0),
    "ended": lambda b: bool(b.ended),
}


def _by_batch(facts: list[Fact]) -> dict[int | None, list[Fact]]:
    out: dict[int | None, list[Fact]] = {}
    for f in facts:
        out.setdefault(f.batch, []).append(f)
    return out


def _overlaps(fact: Fact, since: str, until: str) -> bool:
    if not fact.date:
        return False
    end = fact.until or fact.date
    n, m = len(end), len(fact.date)
    return (not since or end >= since[:n]) and (not until or fact.date <= until[:m])


def _compare(test: str, value: float, limit: float) -> bool:
    return {"over": value > limit, "under": value < limit, "at least": value >= limit, "at most": value <= limit, "exactly": abs(value - limit) < 1e-9}[test]


def _in_unit(fact: Fact, unit: str) -> float | None:
    """A fact's number in the unit of a condition; None where that cannot be."""
    if not isinstance(fact.value, int | float):
        return None
    value = float(fact.value)
    if {unit, fact.unit} == {"%", "g/L"} and fact.label == "ta":
        return value * 10 if fact.unit == "%" else value / 10
    if unit.startswith("/") and fact.unit.startswith("/"):
        return value / float(fact.unit[1:]) * float(unit[1:])
    if unit == "g" and fact.label and fact.unit != "g":
        try:
            return grams(value, fact.unit, fact.label).value
        except (UnknownUnit, ValueError):
            return None
    if not unit or unit.rstrip("s") == fact.unit.rstrip("s") or not fact.unit or unit in _SUMMED:
        return value
    try:
        return convert(value, fact.unit, unit)
    except (UnknownUnit, ValueError):
        return None


def number_of(fact: Fact) -> float | None:
    """What facts of one measure are ranked by: a score as a share, a temperature in °C, else the number itself."""
    if not isinstance(fact.value, int | float):
        return None
    if fact.unit.startswith("/"):
        return float(fact.value) / float(fact.unit[1:])
    return _base(float(fact.value), fact.unit, fact.label)


def _base(value: float, unit: str, of: str) -> float:
    """A value in the one unit that values of its kind are compared in."""
    if unit == "%" and of == "ta":
        return ta_from_percent(value)
    known = UNITS.get(unit)
    if unit == "F":
        return convert(value, "F", "C")
    return value * known.factor if known and known.factor and known.dimension in ("volume", "mass") else value


def weighed(facts: list[Fact]) -> list[Fact]:
    """Additions by weight, so that spoons, tablets and grams can be compared; those that cannot be weighed are left out."""
    out = []
    for f in facts:
        mass = _in_unit(f, "g") if "/" not in f.unit else None
        if mass is not None and f.unit:
            out.append(replace(f, value=mass, unit="g", text=f.text if f.unit == "g" else f"{f.text} (about {number_said(mass, 2)} g)"))
    return out


def reduce_facts(facts: list[Fact], method: str, measure: Measure, settings: Settings, skip: int = 0) -> list[Fact]:
    """Facts brought together by a method; facts that it cannot take are left out."""
    facts = sorted(facts, key=lambda f: (f.date, f.order))
    if not facts or method in ("", "change", "list", "compare", "all"):
        return facts
    if method in ("last", "first"):
        dated = list(reversed(facts)) if method == "last" else facts
        if skip >= len(dated):
            return []
        pick = dated[skip]
        # What was put in, or filled, on that same occasion belongs to it.
        same = [f for f in facts if f.date == pick.date and f.notes == pick.notes and measure.sort == "act"]
        return same or [pick]
    if method == "count":
        n = len(facts)
        return [replace(facts[-1], value=float(n), unit="times", text=f"{n} time{'' if n == 1 else 's'}", notes=_notes(facts), working="", date=facts[-1].date)]
    if method == "distinct":
        values = list(dict.fromkeys(str(f.value) for f in facts))
        return [Fact(_owner(facts), facts[-1].date, float(len(values)), "", f"{len(values)}: {join(values)}", _notes(facts))]
    numbered = [f for f in facts if number_of(f) is not None]
    if not numbered and method in ("most", "least") and any(isinstance(f.value, str) for f in facts):
        return _commonest(facts, method)
    if not numbered:
        return []
    if method in ("most", "least"):
        extreme = (max if method == "most" else min)(number_of(f) or 0.0 for f in numbered)
        return [f for f in numbered if abs((number_of(f) or 0.0) - extreme) < 1e-9]
    return _figures(numbered, method, measure, settings)


def _commonest(facts: list[Fact], method: str) -> list[Fact]:
    """The value that occurs in most (or fewest) of the facts, with how often."""
    counts = Counter(str(f.value) for f in facts if isinstance(f.value, str))
    wanted = (max if method == "most" else min)(counts.values())
    out = []
    for value in [v for v, n in counts.items() if n == wanted]:
        same = [f for f in facts if f.value == value]
        times = f"{wanted} time{'' if wanted == 1 else 's'}"
        out.append(Fact(_owner(same), "", value, "", f"{value}, {times}", _notes(same), join([day_said(f.date) for f in same])))
    return out


def best_known(facts: list[Fact]) -> list[Fact]:
    """Of facts both measured and worked out, those measured."""
    measured = [f for f in facts if f.low is None]
    return measured or facts


def _figures(facts: list[Fact], method: str, measure: Measure, settings: Settings) -> list[Fact]:
    unit = Counter(f.unit for f in facts).most_common(1)[0][0]
    if unit in ("F", "C"):
        unit = "F" if settings.units == "us" else "C"
    if len({f.unit for f in facts}) > 1 and measure.sort == "money":
        return [f for u in dict.fromkeys(f.unit for f in facts) for f in _figures([x for x in facts if x.unit == u], method, measure, settings)]
    if measure.name == "addition" and len({f.label for f in facts}) > 1 and not all(f.unit == "g" for f in facts):
        return [f for name in dict.fromkeys(f.label for f in facts) for f in _figures([x for x in facts if x.label == name], method, measure, settings)]
    if len({f.unit for f in facts}) > 1 and measure.name == "addition":
        unit = "g"
    values = [v for f in facts if (v := _in_unit(f, unit)) is not None]
    rest = [f for f in facts if _in_unit(f, unit) is None]
    if not values:
        return []
    notes = _notes(facts)
    if method == "range":
        low, high = min(values), max(values)
        text = f"{said_value(low, unit)} to {said_value(high, unit)}"
        return [Fact(_owner(facts), facts[-1].date, high - low, unit, text, notes, f"{len(values)} values")]
    value = sum(values) if method == "sum" else sum(values) / len(values)
    text = said_value(value, unit, exact=method == "sum")
    if measure.name == "addition" and len({f.label for f in facts}) == 1:
        text = f"{text} {facts[0].label}"
    parts = [f.text for f in facts]
    working = f"{'sum' if method == 'sum' else 'average'} of {join(parts)}" if 1 < len(parts) <= 6 else f"{'sum' if method == 'sum' else 'average'} of {len(parts)}" if len(parts) > 1 else facts[0].working
    if rest:
        working += f"; not counted: {join([f.text for f in rest])}"
    if method == "sum" and measure.name == "bottles left" and len(facts) == 1:
        working = facts[0].working
    return [Fact(_owner(facts), facts[-1].date, round(value, 4), unit, text, notes, working, until=facts[0].date)]


def said_value(value: float, unit: str, *, exact: bool = False) -> str:
    """A figure with its unit, as answers say it."""
    if unit.startswith("/"):
        return f"{number_said(value, 2)}{unit}"
    if unit == "days":
        return days_said(value)
    if unit == "bottles":
        return f"{number_said(value, 1)} bottle{'' if value == 1 else 's'}"
    if unit == "times":
        return f"{number_said(value, 1)} time{'' if value == 1 else 's'}"
    if len(unit) == 3 and unit.isupper():
        return money_said(value, unit)
    if unit in ("SG", "pH"):
        return value_said(value, unit)
    return value_said(round(value, 3 if exact else 1), unit)


def _owner(facts: list[Fact]) -> int | None:
    owners = {f.batch for f in facts}
    return owners.pop() if len(owners) == 1 else None


def _notes(facts: list[Fact]) -> tuple[int, ...]:
    return tuple(dict.fromkeys(n for f in facts for n in f.notes))


