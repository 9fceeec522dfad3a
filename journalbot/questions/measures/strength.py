"""Figures worked out from a batch's readings: alcohol, attenuation, sugar left, volume."""

from functools import lru_cache

from journalbot.journal.fold import order_of
from journalbot.journal.vessel_names import split_vessels
from journalbot.model import Entry
from journalbot.questions.measures.base import Case, Fact, Measure, fact_of, notes_of
from journalbot.questions.measures.blended import after_blends, volume_before
from journalbot.questions.measures.gravities import (
    SWEETENERS,
    ended_by,
    final_gravity,
    finish_of,
    gravity_of,
    original_gravity,
    pitch_of,
    readings,
)
from journalbot.questions.measures.readings import reading_fact, value_said
from journalbot.questions.measures.vessels import keys_of
from journalbot.questions.says import day_said, number_said
from journalbot.winemaking.alcohol import alcohol as alcohol_estimate
from journalbot.winemaking.alcohol import alcohol_bounds, og_with_additions
from journalbot.winemaking.alcohol import attenuation as attenuation_estimate
from journalbot.winemaking.alcohol import residual_sugar as residual_sugar_estimate
from journalbot.winemaking.ranges import Estimate, OutOfRange
from journalbot.winemaking.sugar import sugar_volume
from journalbot.winemaking.units import UnknownUnit, grams


def _gravities(case: Case) -> tuple[float, float, Fact] | None:
    """Original and final (or else latest) gravity, with a fact that says from which readings."""
    first = original_gravity(case)
    last = final_gravity(case) or next(reversed(ended_by(case)), None)
    if first is None or last is None or order_of(last) <= order_of(first):
        return None
    og, sg = gravity_of(first), gravity_of(last)
    if sg >= og:
        return None
    working = f"{og:.3f} on {day_said(first.date)}{_from_brix(first)}, and {sg:.3f} on {day_said(last.date)}"
    working += _from_brix(last)
    og, counted, during = _with_additions(case, og, first, last)
    state = "" if final_gravity(case) else " so far"
    notes = notes_of(first, last, *during)
    return og, sg, Fact(case.number, last.date, None, "", state, notes, working + counted, order=last.place)


def original_with_additions(case: Case) -> tuple[float, str, tuple[int, ...]] | None:
    """The gravity that fermentation began from, counting what sweetened it on the way, with its working and notes."""
    first = original_gravity(case)
    if first is None:
        return None
    og, counted, during = _with_additions(case, gravity_of(first), first, finish_of(case))
    return og, f"{gravity_of(first):.3f}{_from_brix(first)}{counted}", notes_of(first, *during)


def _with_additions(case: Case, og: float, first: Entry, last: Entry | None) -> tuple[float, str, list[Entry]]:
    """The original gravity with what was put in between the pitch and `last`; how that is said; and what it was."""
    begun = pitch_of(case)
    during = [
        e
        for e in case.kind("addition")
        if begun is not None
        and e.date >= begun.date
        and order_of(begun) < order_of(e)
        and (last is None or order_of(e) < order_of(last))
        and any(s in str(e.get("material")) for s in SWEETENERS)
        and order_of(e) > order_of(first)
    ]
    counted = ""
    for e in during:
        raised = _raised(case, og, e)
        if raised is None:
            counted += f"; the {e.get('material')} put in on {day_said(e.date)} is not counted, so it is more than this"
        else:
            og = raised
            counted += f"; counting the {e.get('material')} put in on {day_said(e.date)} ({og:.3f})"
    return og, counted, during


def _from_brix(entry: Entry) -> str:
    return f", from {value_said(float(entry.get('value')), 'Brix')}" if entry.get("quantity") == "brix" else ""


def _raised(case: Case, og: float, added: Entry) -> float | None:
    """The original gravity with what was added in it, by the volume of that time; None where either is not known."""
    amount, unit, material = added.get("amount"), str(added.get("unit")), str(added.get("material"))
    litres = volume_before(case, added) or case.batch.volume
    if not isinstance(amount, int | float) or not litres or material not in ("sugar", "honey"):
        return None
    try:
        mass = grams(amount, unit, material).value * (
            0.82 if material == "honey" else 1.0
        )  # honey is about 18 % water: common practice, no source
        return og_with_additions(og, litres, mass, sugar_volume(mass / 1000))
    except (OutOfRange, UnknownUnit, ValueError):
        return None


def _estimate(
    case: Case, found: tuple[float, float, Fact], estimate: Estimate, unit: str, how: str, decimals: int = 1
) -> list[Fact]:
    _, _, base = found
    half = max(estimate.high - estimate.value, estimate.value - estimate.low)
    said = f"about {number_said(estimate.value, decimals)} {unit}{base.text} (±{number_said(half, decimals)})"
    return [
        Fact(
            case.number,
            base.date,
            round(estimate.value, decimals),
            unit,
            said,
            base.notes,
            f"{how}: {base.working}",
            low=estimate.low,
            high=estimate.high,
            order=base.order,
        )
    ]


@lru_cache(maxsize=1024)
def alcohol_made(og: float, sg: float) -> tuple[Estimate, str]:
    """The alcohol, % vol, of a ferment from one gravity to another, and how it is worked out; OutOfRange beyond all."""
    try:
        return alcohol_estimate(og, sg), "131.25 × (original − final gravity)"
    except OutOfRange:
        low, high = alcohol_bounds(og, sg)
        return Estimate((low + high) / 2, low, high), "from the gravities"


def alcohol(case: Case, blends: int = 3) -> list[Fact]:
    """Alcohol as measured, where it was, and as the gravities give it; what was blended in counted, so many deep."""
    measured = [
        reading_fact(e, f"{value_said(float(e.get('value')), '% vol')} measured") for e in readings(case, "alcohol")
    ]
    found = _gravities(case)
    if found is None or (measured and case.of.get("from") == "lab"):
        return measured
    og, sg, _ = found
    try:
        estimate, how = alcohol_made(og, sg)
    except OutOfRange:
        return measured
    made = _estimate(case, found, estimate, "% vol", how)
    if not blends:
        return measured + made

    def strength_of(number: int) -> Fact | None:
        other = case._replace(number=number, entries=case.source.entries(batch=number, kinds=GRAVITY_KINDS))
        return next(reversed(alcohol(other, blends - 1)), None)

    return [*measured, after_blends(case, made[0], strength_of)]


def _attenuation(case: Case) -> list[Fact]:
    found = _gravities(case)
    if found is None:
        return []
    try:
        return _estimate(case, found, attenuation_estimate(found[0], found[1]), "%", "share of the Brix gone")
    except OutOfRange:
        return []


def _residual_sugar(case: Case) -> list[Fact]:
    measured = [
        reading_fact(e, f"{value_said(float(e.get('value')), 'g/L')} measured")
        for e in readings(case, "residual_sugar")
    ]
    found = _gravities(case)
    strength = [f for f in alcohol(case) if f.low is not None]
    if measured or found is None or not strength or not case.of.get("estimate"):
        return measured
    try:
        sugar = residual_sugar_estimate(
            found[1], Estimate(float(strength[0].value or 0), strength[0].low or 0, strength[0].high or 0)
        )
    except (OutOfRange, ValueError):
        return []
    return _estimate(case, found, sugar, "g/L", "estimated from the gravity and the alcohol", 0)


def volumes(case: Case) -> list[Fact]:
    found = [
        e
        for e in case.entries
        if (e.kind == "reading" and e.get("quantity") == "volume")
        or (e.kind in ("start", "rack") and e.get("volume") is not None)
    ]
    out = []
    for e in found:
        value = e.get("value") if e.kind == "reading" else e.get("volume")
        what = {"start": "at the start", "rack": "racked", "reading": "measured"}[e.kind]
        out.append(
            fact_of(
                e,
                float(value),
                str(e.get("unit") or ""),
                f"{value_said(float(value), str(e.get('unit') or ''))} {what}",
            )
        )
    return out


def _begun_with(case: Case) -> list[Fact]:
    """The volume that a batch began with: that of its start, or else the first one told."""
    return volumes(case)[:1]


def _fruit(case: Case) -> list[Fact]:
    """The weight of fruit that the batch was started with."""
    return [
        fact_of(e, float(w), str(e.get("weight_unit") or ""), _weight_said(e, float(w)))
        for e in case.kind("start")
        if isinstance(w := e.get("weight"), int | float)
    ]


def _weight_said(entry: Entry, weight: float) -> str:
    of = ", ".join(map(str, entry.get("from") or ()))
    return f"{value_said(weight, str(entry.get('weight_unit') or ''))}{f' of {of}' if of else ''}"


def _racked(case: Case) -> list[Fact]:
    """The volumes of wine moved by rackings, into the vessel asked for."""
    keys = keys_of(case.cellar, case.of["vessel"]) if case.of.get("vessel") else set()
    return [
        fact_of(
            e, float(v), str(e.get("unit") or ""), f"{value_said(float(v), str(e.get('unit') or ''))} to {e.get('to')}"
        )
        for e in case.kind("rack")
        if isinstance(v := e.get("volume"), int | float)
        and (not keys or keys & {case.cellar.vessel_key(n) for n in split_vessels(str(e.get("to") or ""))})
    ]


GRAVITY_KINDS = ("reading", "pitch", "fermentation", "addition")

MEASURES: tuple[Measure, ...] = (
    Measure(
        "alcohol",
        "alcohol",
        GRAVITY_KINDS,
        alcohol,
        (
            ("alcohol",),
            ("quantity:alcohol",),
            ("alcohol", "quantity:sg"),
            ("quantity:alcohol", "quantity:sg"),
            ("alcohol", "sg"),
            ("quantity:alcohol", "sg"),
        ),
        ("lab", "reading", "addition", "finished", "made", "final gravity", "mention", "taste", "estimate"),
        sort="figure",
        quantity="alcohol",
        narrows=("from",),
    ),
    Measure(
        "attenuation",
        "apparent attenuation",
        GRAVITY_KINDS,
        _attenuation,
        (("attenuation",),),
        ("ferment", "finished"),
        sort="figure",
    ),
    Measure(
        "residual sugar",
        "residual sugar",
        GRAVITY_KINDS,
        _residual_sugar,
        (("residual sugar",), ("quantity:residual_sugar",)),
        ("lab", "left"),
        narrows=("estimate",),
        sort="figure",
    ),
    Measure(
        "fruit weight",
        "weight of the fruit",
        ("start",),
        _fruit,
        (
            ("weight",),
            ("weight", "grapes"),
            ("weight", "addition"),
            ("how much", "grapes"),
            ("weight", "made of"),
            ("how much", "made of"),
        ),
        ("addition", "grapes", "how much", "begin", "made", "in vessel", "is", "unit"),
        sort="reading",
        usual="sum",
        narrows=("unit",),
    ),
    Measure(
        "volume racked",
        "wine racked[ to {vessel}]",
        ("rack",),
        _racked,
        (("volume", "rack"), ("volume", "addition", "vessel"), ("volume", "rack", "vessel"), ("how much", "rack")),
        ("addition", "rack", "how much", "press"),
        sort="reading",
        narrows=("vessel", "unit"),
    ),
    Measure(
        "batch size",
        "volume it began with",
        ("start", "reading", "rack"),
        _begun_with,
        (("batch size",),),
        ("begin", "made"),
        sort="reading",
    ),
    Measure(
        "volume",
        "volume",
        ("reading", "start", "rack"),
        volumes,
        (
            ("volume",),
            ("quantity:volume",),
            ("how much", "in vessel"),
            ("how much", "begin"),
        ),
        ("left", "how much", "in vessel", "is", "made", "how many"),
        sort="reading",
        usual="last",
        narrows=("unit",),
    ),
)
