"""Figures over time drawn with plain characters, for a terminal of any kind."""

from collections.abc import Sequence
from datetime import date

from journalbot.questions.measures import Fact
from journalbot.questions.measures.readings import value_said
from journalbot.questions.says import day_said

WIDTH, HEIGHT = 56, 10  # columns and rows that points are placed in
_LEAST = 2  # figures that make a course


def plot(facts: Sequence[Fact]) -> str:
    """The facts as points, days to the right and figures upwards; "" where fewer than two can be placed.

    Facts without a whole date, and those of another unit than the first, are left out.
    """
    placed = [f for f in facts if isinstance(f.value, int | float) and len(f.date) == 10]
    placed = [f for f in placed if f.unit == placed[0].unit]
    if len({f.date for f in placed}) < _LEAST:
        return ""
    days = [date.fromisoformat(f.date).toordinal() for f in placed]
    values = [float(f.value or 0) for f in placed]
    low, high, first, last = min(values), max(values), min(days), max(days)
    grid = [[" "] * WIDTH for _ in range(HEIGHT)]
    for day, value in zip(days, values, strict=True):
        column = round((day - first) / (last - first) * (WIDTH - 1))
        row = round((high - value) / (high - low) * (HEIGHT - 1)) if high > low else HEIGHT // 2
        grid[row][column] = "*"
    unit = placed[0].unit
    marks = {0: value_said(high, unit), HEIGHT - 1: value_said(low, unit)}
    if high == low:
        marks = {HEIGHT // 2: value_said(high, unit)}
    edge = max(map(len, marks.values()))
    lines = [f"{marks.get(i, ''):>{edge}} |{''.join(row)}".rstrip() for i, row in enumerate(grid)]
    ends = day_said(placed[days.index(first)].date), day_said(placed[days.index(last)].date)
    lines += [f"{'':>{edge}} +{'-' * WIDTH}", f"{'':>{edge}}  {ends[0]}{ends[1]:>{WIDTH - len(ends[0])}}"]
    return "\n".join(lines)
