"""Facts told by the year or the month that they fall in: `bottles per year`, `which month did I bottle most`."""

from collections import defaultdict
from collections.abc import Sequence

from journalbot.model import Settings
from journalbot.questions.measures import Fact, Measure
from journalbot.questions.reduce import reduce_facts
from journalbot.questions.says import day_said

_SIZE = {"year": 4, "month": 7}
PERSON = "person"  # told by whom the bottles went to


def by_period(facts: Sequence[Fact], period: str, measure: Measure, settings: Settings) -> list[Fact]:
    """One fact a period, in order: the sum of what can be summed, the mean of what is read, else how often.

    Its label is the period. A fact whose date is not known to the period is left out.
    """
    size = _SIZE.get(period, 0)
    parted: dict[str, list[Fact]] = defaultdict(list)
    for f in facts:
        if period == PERSON and f.label:
            parted[f.label].append(f)
        elif period != PERSON and len(f.date) >= size:
            parted[f.date[:size]].append(f)
    out = []
    for key in sorted(parted):
        out += [
            f._replace(label=key if period == PERSON else day_said(key))
            for f in reduce_facts(parted[key], _way(measure, facts), measure, settings)
        ]
    return out


def _way(measure: Measure, facts: Sequence[Fact]) -> str:
    if measure.sort == "money" or {f.unit for f in facts} == {"bottles"}:
        return "sum"
    return "mean" if measure.sort in ("reading", "figure", "days") else "count"


def extreme(facts: Sequence[Fact], way: str) -> list[Fact]:
    """Of the facts of periods those with the most, or the least."""
    values = [float(f.value) for f in facts if isinstance(f.value, int | float)]
    best = (max if way == "most" else min)(values, default=0.0)
    return [f for f in facts if isinstance(f.value, int | float) and abs(float(f.value) - best) < 1e-9]
