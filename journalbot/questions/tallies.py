"""Totals and averages over very many batches by SQL, where a figure is no more than what entries count or read."""

import json
from collections.abc import Sequence

from journalbot.questions.leaders import FEW, ferment_days, many
from journalbot.questions.measures import Fact
from journalbot.questions.measures.base import Measure
from journalbot.questions.query import Query, What
from journalbot.questions.reduce import said_value
from journalbot.questions.scene import Scene

_COUNTED: dict[str, tuple[str, ...]] = {  # measure -> the kinds of entry whose counts it sums
    "bottles made": ("bottle",),
    "drink": ("drink",),
    "give": ("give",),
    "gone": ("drink", "give"),
}
_WORKED_OUT = 200  # batches beyond those that the journal's own record settles, which may be read one by one
_NOTES = 200  # notes told of those that such a figure rests on
_DECIMALS = {"F": 1, "C": 1, "mg/L": 1}  # of an average, by its unit


def tallied(query: Query, what: What, measure: Measure, scene: Scene, numbers: Sequence[int] | None) -> Fact | None:
    """The total or average; None where it needs each batch worked out, or where there are but few."""
    if what.of or query.when or query.by or query.within not in ("", "sum"):
        return None
    if query.over == "mean" and (many(query, scene.cellar) or len(numbers or ()) > FEW):
        if measure.name == "fermentation time":
            return _average_ferment(what, scene, numbers)
        return _average(measure, scene, numbers)
    if query.over != "sum" or not many(query, scene.cellar):
        return None
    if measure.name == "bottles left":
        return _left(scene)
    return _total(_COUNTED[measure.name], scene) if measure.name in _COUNTED else None


def _total(kinds: Sequence[str], scene: Scene) -> Fact | None:
    rows = scene.source.sql(
        "SELECT note, date, fields ->> 'count' FROM entries WHERE kind IN (SELECT value FROM json_each(?)) "
        "AND withdrawn_by IS NULL AND batch IS NOT NULL ORDER BY date",
        (json.dumps(kinds),),
    )
    found = [(note, date, count) for note, date, count in rows if isinstance(count, int | float)]
    if not found:
        return None
    total = float(sum(count for _, _, count in found))
    notes = tuple(dict.fromkeys(note for note, _, _ in found))
    return Fact(None, found[-1][1], total, "bottles", said_value(total, "bottles"), notes, f"sum of {len(found)}")


def _left(scene: Scene) -> Fact:
    """The bottles left, from what the journal keeps of each batch, less those that other wines were topped up with."""
    filled = [b for b in scene.cellar.batches.values() if b.filled]
    poured = scene.poured()
    left = sum(
        max(0.0, b.bottles - sum(float(e.get("amount")) for e in poured.get(b.number, ()) if e.batch != b.number))
        for b in filled
    )
    return Fact(None, "", float(left), "bottles", said_value(float(left), "bottles"), (), f"of {len(filled)} batches")


def _average_ferment(what: What, scene: Scene, numbers: Sequence[int] | None) -> Fact | None:
    """The average length of fermentation; None where too many batches were not both pitched and called finished."""
    known, unknown = ferment_days(scene.cellar)
    meant = set(numbers) if numbers else set(scene.cellar.batches)
    rest = [n for n in unknown if n in meant]
    if len(rest) > _WORKED_OUT:
        return None
    values = [days for n, days in known.items() if n in meant]
    values += [float(f.value) for facts in scene.facts(what, rest).values() for f in facts if f.value is not None]
    if not values:
        return None
    mean = sum(values) / len(values)
    notes = scene.source.sql(
        "SELECT note FROM entries WHERE kind IN ('pitch', 'fermentation') AND withdrawn_by IS NULL "
        "AND batch IN (SELECT value FROM json_each(?)) LIMIT ?",
        (json.dumps(sorted(meant)), _NOTES),
    )
    told = tuple(dict.fromkeys(note for (note,) in notes))
    return Fact(None, "", mean, "days", said_value(mean, "days"), told, f"average of {len(values)}")


def _average(measure: Measure, scene: Scene, numbers: Sequence[int] | None) -> Fact | None:
    """The average of scores or of one quantity's readings; None where they are not all in one unit."""
    if measure.name == "score":
        of, value, unit = "kind = 'taste'", "score", "out_of"
    elif measure.sort == "reading" and measure.name == measure.quantity:
        of, value, unit = f"quantity = '{measure.quantity}'", "value", "unit"
    else:
        return None
    of += " AND withdrawn_by IS NULL AND batch IS NOT NULL"
    of += " AND batch IN (SELECT value FROM json_each(?))" if numbers else ""
    chosen = (json.dumps(list(numbers)),) if numbers else ()
    rows = list(
        scene.source.sql(
            f"SELECT fields ->> '{unit}', avg(fields ->> '{value}'), count(*) FROM entries WHERE {of} "
            f"AND fields ->> '{value}' IS NOT NULL GROUP BY 1",
            chosen,
        )
    )
    if len(rows) != 1 or rows[0][0] is None:
        return None
    (name, mean, count) = rows[0]
    name = f"/{name:g}" if measure.name == "score" else str(name)
    notes = scene.source.sql(f"SELECT note FROM entries WHERE {of} LIMIT {_NOTES}", chosen)
    said = said_value(mean, name, _DECIMALS.get(name, 2))
    told = tuple(dict.fromkeys(note for (note,) in notes))
    return Fact(None, "", mean, name, said, told, f"average of {count}")
