"""Facts brought together to fewer: the last, the highest, the sum …; and what makes values comparable."""

from collections import Counter

from journalbot.model import Settings
from journalbot.questions.measures import Fact, Measure
from journalbot.questions.measures.money import money_said
from journalbot.questions.measures.readings import value_said
from journalbot.questions.measures.said import pieces_said
from journalbot.questions.says import day_said, days_said, join, number_said
from journalbot.vocabulary.units import UNITS
from journalbot.winemaking.acid import ta_from_percent
from journalbot.winemaking.units import UnknownUnit, convert, grams

_SUMMED = frozenset(("bottles", "days", "times"))
_ROUGH = frozenset(("tsp", "tbsp", "cup", "tablet", "pinch"))


def in_unit(fact: Fact, unit: str) -> float | None:
    """A fact's number in the unit of a condition; None where that cannot be."""
    if not isinstance(fact.value, int | float):
        return None
    value = float(fact.value)
    if unit == fact.unit:
        return value
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
    return base_value(float(fact.value), fact.unit, fact.label)


def base_value(value: float, unit: str, of: str) -> float:
    """A value in the one unit that values of its kind are compared in."""
    if unit == "%" and of == "ta":
        return ta_from_percent(value)
    known = UNITS.get(unit)
    if unit == "F":
        return convert(value, "F", "C")
    return value * known.factor if known and known.factor and known.dimension in ("volume", "mass") else value


def weighed(facts: list[Fact]) -> list[Fact]:
    """Additions by weight, so that spoons and grams can be compared; those that cannot be weighed are left out."""
    out = []
    for f in facts:
        mass = in_unit(f, "g") if "/" not in f.unit else None
        if mass is not None and f.unit:
            out.append(
                f._replace(
                    value=mass,
                    unit="g",
                    text=f.text if f.unit == "g" else f"{f.text} (about {number_said(mass, 2)} g)",
                )
            )
    return out


def reduce_facts(facts: list[Fact], method: str, measure: Measure, settings: Settings, skip: int = 0) -> list[Fact]:
    """Facts brought together by a method; facts that it cannot take are left out."""
    facts = sorted(facts, key=lambda f: (f.date, f.order))
    if not facts or method in ("", "change", "list", "compare", "all"):
        return facts
    if method in ("last", "first"):
        dated = list(reversed(facts)) if method == "last" else facts
        if measure.sort == "act":  # a wine racked into two vessels was racked once
            dated = list({(f.batch, f.date, f.notes): f for f in reversed(dated)}.values())[::-1]
        if skip >= len(dated):
            return []
        pick = dated[skip]
        # What was put in, or filled, on that same occasion belongs to it.
        same = [
            f
            for f in facts
            if f.date == pick.date and ((f.notes == pick.notes and measure.sort == "act") or measure.sort == "story")
        ]
        return same or [pick]
    if method == "count":
        n = len(facts)
        return [
            facts[-1]._replace(
                value=float(n),
                unit="times",
                label="",
                text=f"{n} time{'' if n == 1 else 's'}",
                notes=notes_of(facts),
                working="",
                date=facts[-1].date,
            )
        ]
    if method == "distinct":
        values = list(dict.fromkeys(str(f.value) for f in facts))
        return [
            Fact(
                _owner(facts), facts[-1].date, float(len(values)), "", f"{len(values)}: {join(values)}", notes_of(facts)
            )
        ]
    figures = [f for f in facts if isinstance(f.value, int | float)]
    if not figures:
        words = any(isinstance(f.value, str) for f in facts)
        return _commonest(facts, method) if words and method in ("most", "least") else []
    if method in ("most", "least"):
        valued = [(value, f) for f in figures if (value := number_of(f)) is not None]
        extreme = (max if method == "most" else min)(value for value, _ in valued)
        return [f for value, f in valued if abs(value - extreme) < 1e-9]
    return _figures(figures, method, measure, settings)


def _commonest(facts: list[Fact], method: str) -> list[Fact]:
    """The value that occurs in most (or fewest) of the facts, with how often."""
    counts = Counter(str(f.value) for f in facts if isinstance(f.value, str))
    wanted = (max if method == "most" else min)(counts.values())
    out = []
    for value in [v for v, n in counts.items() if n == wanted]:
        same = [f for f in facts if f.value == value]
        times = f"{wanted} time{'' if wanted == 1 else 's'}"
        days = join([day_said(f.date) for f in same])
        out.append(
            Fact(_owner(same), "", value, "", f"{value}, {times}", notes_of(same), days)
        )
    return out


def in_the_unit(facts: list[Fact], unit: str) -> list[Fact]:
    """Facts told in the unit that a question asks for; those that cannot be brought to it stay as recorded."""
    out = []
    for f in facts:
        value = None if f.unit == unit else _in_any(f, unit)
        if value is not None:
            said = f"{'about ' if f.unit in _ROUGH else ''}{said_value(value, unit)}"
            text = f"{said}{f' {f.label}' if f.label else ''} ({f.text})"
            out.append(f._replace(value=value, unit=unit, text=text))
        else:
            out.append(f)
    return out


def _in_any(fact: Fact, unit: str) -> float | None:
    direct = in_unit(fact, unit) if fact.unit else None
    mass = in_unit(fact, "g") if direct is None else None
    return direct if direct is not None else convert(mass, "g", unit) if mass and unit in ("kg", "lb", "oz") else None


def best_known(facts: list[Fact]) -> list[Fact]:
    """Of facts both measured and worked out, those measured."""
    measured = [f for f in facts if f.low is None]
    return measured or facts


def _figures(facts: list[Fact], method: str, measure: Measure, settings: Settings) -> list[Fact]:
    unit = Counter(f.unit for f in facts).most_common(1)[0][0]
    if unit in ("F", "C"):
        unit = "F" if settings.units == "us" else "C"
    if len({f.unit for f in facts}) > 1 and measure.sort == "money":
        return [
            f
            for u in dict.fromkeys(f.unit for f in facts)
            for f in _figures([x for x in facts if x.unit == u], method, measure, settings)
        ]
    if measure.name == "addition" and len({f.label for f in facts}) > 1 and not all(f.unit == "g" for f in facts):
        return [
            f
            for name in dict.fromkeys(f.label for f in facts)
            for f in _figures([x for x in facts if x.label == name], method, measure, settings)
        ]
    if len({f.unit for f in facts}) > 1 and measure.name == "addition":
        unit = "g"
    in_it = [(in_unit(f, unit), f) for f in facts]
    values = [v for v, _ in in_it if v is not None]
    rest = [f for v, f in in_it if v is None]
    if not values:
        return []
    notes = notes_of(facts)
    if method == "range":
        low, high = min(values), max(values)
        text = f"{said_value(low, unit)} to {said_value(high, unit)}"
        return [Fact(_owner(facts), facts[-1].date, high - low, unit, text, notes, f"{len(values)} values")]
    value = sum(values) if method == "sum" else sum(values) / len(values)
    text = said_value(value, unit, decimals=3 if method == "sum" else _decimals(values) + 1)
    if measure.name == "addition" and len({f.label for f in facts}) == 1 and facts[0].label:
        label = facts[0].label
        text = pieces_said(value, label) if label.endswith(f" {unit}") else f"{text} {label}"
    parts = [f.text for f in facts]
    working = (
        f"{'sum' if method == 'sum' else 'average'} of {join(parts)}"
        if 1 < len(parts) <= 6
        else f"{'sum' if method == 'sum' else 'average'} of {len(parts)}"
        if len(parts) > 1
        else facts[0].working
    )
    if rest:
        working += f"; not counted: {join([f.text for f in rest])}"
    if method == "sum" and measure.name == "bottles left" and len(facts) == 1:
        working = facts[0].working
    return [Fact(_owner(facts), facts[-1].date, round(value, 4), unit, text, notes, working, until=facts[0].date)]


def _decimals(values: list[float]) -> int:
    """The decimals that values were given with: an average of them bears one more."""
    return max(next((n for n in range(3) if abs(v - round(v, n)) < 1e-9), 2) for v in values)


def said_value(value: float, unit: str, decimals: int = 1) -> str:
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
    return value_said(round(value, decimals), unit)


def _owner(facts: list[Fact]) -> int | None:
    owners = {f.batch for f in facts}
    return owners.pop() if len(owners) == 1 else None


def notes_of(facts: list[Fact]) -> tuple[int, ...]:
    """The notes that facts rest on, each once."""
    return tuple(dict.fromkeys(n for f in facts for n in f.notes))
