"""The batches that may have the most or the least of something, found without reading every batch's entries.

Each batch's readings bound what it can come to: SQL gives their extremes, an index away. Batches are then worked out
exactly, the most promising first, until no bound is left that beats the best found. What is found is what working out
every batch would have found, save that of many equals the first are shown.
"""

import math
from collections.abc import Callable, Iterator

from journalbot.journal.cellar import Cellar
from journalbot.questions.measures import Fact
from journalbot.questions.measures.base import Measure, Source, days_between
from journalbot.questions.measures.gravities import SWEETENERS
from journalbot.questions.query import Query, What
from journalbot.questions.reduce import base_value, number_of

FEW = 200  # batches up to which all are worked out
_CHUNK = 48  # batches worked out at a time
EQUALS = 20  # of batches that come to the same no more are looked for
_STEADY = frozenset(("", "last", "first", "mean", "most", "least"))  # ways within a batch that stay within its extremes
# The alcohol of a drop in SG: by the usual formula where that holds, and above what any estimate gives elsewhere.
_USUAL_FROM, _USUAL_TO, _USUAL = 1.040, 1.120, 131.25
_ELSEWHERE, _SPARE = 150.0, 1.0

Bounds = dict[int, float]


def leading(
    query: Query,
    what: What,
    measure: Measure,
    source: Source,
    cellar: Cellar,
    work_out: Callable[[list[int]], dict[int | None, list[Fact]]],
) -> dict[int | None, list[Fact]] | None:
    """The facts of the batches that may have the most or least, by batch; None where that needs all of them.

    `work_out` gives the facts of some batches.
    """
    if not many(query, cellar) or query.over not in ("most", "least") or what.of:
        return None
    sign = 1.0 if query.over == "most" else -1.0
    if measure.name == "bottles left" and query.over == "most":
        bounds: Bounds | None = {n: float(b.bottles) for n, b in cellar.batches.items() if b.filled}
    elif measure.name == "fermentation time":
        known, unknown = ferment_days(cellar)
        bounds = known | dict.fromkeys(unknown, sign * math.inf)
    else:
        bounds = _bounds(measure, query.over, source) if query.within in _STEADY else None
    if bounds is None:
        return None
    order = sorted(bounds, key=lambda n: (-sign * bounds[n], n))
    found: dict[int | None, list[Fact]] = {}
    best, equals = -math.inf, 0
    for chunk in _chunks(order):
        limit = sign * bounds[chunk[0]]
        if limit < best - 1e-9 or (limit < best + 1e-9 and equals >= EQUALS):
            break
        for number, facts in work_out(chunk).items():
            values = [sign * v for f in facts if (v := number_of(f)) is not None]
            if not values:
                continue
            top = max(values)
            equals = 1 if top > best + 1e-9 else equals + (abs(top - best) <= 1e-9)
            best = max(best, top)
            found[number] = facts
    return found


def ferment_days(cellar: Cellar) -> tuple[Bounds, list[int]]:
    """The days that each batch fermented that was pitched and called finished; and the batches to be read for that."""
    known: Bounds = {}
    for n, b in cellar.batches.items():
        days = days_between(b.pitched, b.finished) if b.pitched and b.finished else None
        if days is not None and days >= 0:
            known[n] = float(days)
    return known, [n for n in cellar.batches if n not in known]


def many(query: Query, cellar: Cellar) -> bool:
    """Whether a question is of all batches at all times, and these are so many that reading each would take long."""
    some = query.batches.numbers or query.batches.described or query.batches.vessel or query.when or query.by
    return not some and len(cellar.batches) > FEW


def _chunks(order: list[int]) -> Iterator[list[int]]:
    for i in range(0, len(order), _CHUNK):
        yield order[i : i + _CHUNK]


def _bounds(measure: Measure, over: str, source: Source) -> Bounds | None:
    """For each batch that may have a figure the most (or least) that it can be; None where that is not known."""
    if measure.name == "alcohol" and over == "most":
        high, low = _extremes(source, "sg")
        out = {n: _most_alcohol(high[n], low[n]) for n in high}
        return out | dict.fromkeys(_read_otherwise(source) | _sweetened(source), math.inf)
    if measure.name in ("final gravity", "last gravity") and over == "least":
        return _extreme(source, "sg", "min") | dict.fromkeys(_read_otherwise(source), -math.inf)
    if measure.name == "original gravity" and over == "most":
        return _extreme(source, "sg", "max") | dict.fromkeys(_read_otherwise(source), math.inf)
    if measure.sort == "reading" and measure.name == measure.quantity:
        return _foremost(source, measure.quantity, "max" if over == "most" else "min")
    if measure.name in _OF_SOME_READINGS:
        return _extreme(source, measure.quantity, "max" if over == "most" else "min")
    return None


def _most_alcohol(high: float, low: float) -> float:
    """The most alcohol, % vol to one decimal, that gravities between these can come to."""
    outside = _ELSEWHERE * min(high - low, _USUAL_FROM - 0.98) + _SPARE
    if _USUAL_FROM <= high <= _USUAL_TO:
        return max(round(_USUAL * (high - low), 1), outside)
    return _ELSEWHERE * (high - low) + _SPARE


_OF_SOME_READINGS = ("ferment temperature", "pitch temperature")


def _foremost(source: Source, quantity: str, way: str) -> Bounds:
    """The batches with the highest (or lowest) reading of all; of many with the same one, enough to tell."""
    of = "FROM entries WHERE quantity = ? AND withdrawn_by IS NULL AND batch IS NOT NULL"
    tops = []
    for (unit,) in list(source.sql(f"SELECT DISTINCT fields ->> 'unit' {of}", (quantity,))):
        rows = source.sql(f"SELECT {way}(fields ->> 'value') {of} AND fields ->> 'unit' IS ?", (quantity, unit))
        tops += [(base_value(float(v), unit or "", quantity), unit, v) for (v,) in rows if isinstance(v, int | float)]
    best = (max if way == "max" else min)((base for base, _, _ in tops), default=0.0)
    out: Bounds = {}
    for base, unit, value in tops:
        if abs(base - best) < 1e-9:
            batches = source.sql(
                f"SELECT DISTINCT batch {of} AND fields ->> 'unit' IS ? AND fields ->> 'value' = ? LIMIT ?",
                (quantity, unit, value, EQUALS + 1),
            )
            out |= {batch: base for (batch,) in batches}
    return out


def _extremes(source: Source, quantity: str) -> tuple[Bounds, Bounds]:
    """The highest and lowest reading of each batch, in the unit that readings are compared in."""
    return _extreme(source, quantity, "max"), _extreme(source, quantity, "min")


def _extreme(source: Source, quantity: str, way: str) -> Bounds:
    rows = source.sql(
        f"SELECT batch, fields ->> 'unit', {way}(fields ->> 'value') FROM entries "
        "WHERE quantity = ? AND withdrawn_by IS NULL AND batch IS NOT NULL GROUP BY batch, fields ->> 'unit'",
        (quantity,),
    )
    better = max if way == "max" else min
    out: Bounds = {}
    for batch, unit, value in rows:
        if isinstance(value, int | float):
            base = base_value(float(value), unit or "", quantity)
            out[batch] = better(base, out.get(batch, base))
    return out


def _read_otherwise(source: Source) -> set[int]:
    """Batches whose strength or beginning may be told by something other than SG."""
    rows = source.sql(
        "SELECT DISTINCT batch FROM entries WHERE quantity IN ('brix', 'alcohol', 'potential_alcohol') "
        "AND withdrawn_by IS NULL AND batch IS NOT NULL"
    )
    return {batch for (batch,) in rows}


def _sweetened(source: Source) -> set[int]:
    """Batches that sugar or the like was put in, which raises what a gravity tells."""
    like = " OR ".join(["fields LIKE ?"] * len(SWEETENERS))
    rows = source.sql(
        "SELECT DISTINCT batch FROM entries WHERE kind = 'addition' AND withdrawn_by IS NULL AND batch IS NOT NULL "
        f"AND ({like})",
        [f"%{s}%" for s in SWEETENERS],
    )
    return {batch for (batch,) in rows}
