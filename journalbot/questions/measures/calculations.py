"""Gravity, sugar and alcohol worked out from figures in the question or from a batch's readings; unit conversions."""

from journalbot.questions.measures.base import Case, Fact, Measure
from journalbot.questions.measures.readings import value_said
from journalbot.questions.measures.strength import GRAVITY_KINDS, alcohol_made, original_with_additions
from journalbot.questions.measures.working import (
    DRY_WINE,
    Given,
    Missing,
    batch_of,
    calculation,
    colour_of,
    digits_said,
    of_batch,
    reading,
    said,
    told,
    value_of,
)
from journalbot.questions.says import day_said, number_said
from journalbot.vocabulary.units import UNITS
from journalbot.winemaking import alcohol, gravity, hydrometer, units
from journalbot.winemaking.ranges import Estimate, check

_CALIBRATION = {"60F": (15.56, "60 °F"), "20C": (20.0, "20 °C")}
_NOT_GRAPE = frozenset(("fruit", "mead", "cider"))


def gravity_given(case: Case) -> Given:
    """An SG: of the question (in Brix too), or the batch's last gravity, or its last Brix where it has none."""
    if value_said_ := case.of.get("value"):
        value, unit = value_of(value_said_)
        return Given(value if unit == "SG" else gravity.sg_from_brix(value), value_said(value, unit))
    try:
        return reading(case, "sg")
    except Missing:
        brix = reading(case, "brix")
        return Given(gravity.sg_from_brix(brix.value), brix.said, brix.notes)


def _scales(case: Case) -> list[Fact]:
    given = gravity_given(case)
    found = gravity.scales(given.value, colour_of(case) not in _NOT_GRAPE)
    below = found.sg < 1
    parts = [
        f"SG {found.sg:.3f}",
        f"{number_said(found.brix, 1)} Brix",
        f"{found.density:.0f} kg/m³ at 20 °C",
        f"{number_said(found.extract, 0)} g/L of extract"
        if not below
        else "no sugar scale below water: it is apparent",
    ]
    if found.potential_alcohol:
        kind = "other must" if colour_of(case) in _NOT_GRAPE else "grape must"
        parts.append(f"potential alcohol {said(found.potential_alcohol, '% vol')} as {kind}")
    working = f"from {given.said}" if batch_of(case) else ""
    return told(case, found.sg, "SG", "; ".join(parts), working, given)


def _potential(case: Case) -> list[Fact]:
    given = original_given(case) if batch_of(case) else gravity_given(case)
    other = colour_of(case) in _NOT_GRAPE
    found = gravity.potential_alcohol(given.value, not other)
    how = (
        f"131.25 × ({given.value:.3f} − 0.996), for musts other than grape; common practice, no source"
        if other
        else f"(2.66 g/L × {1000 * (given.value - 1):.0f} − 30) ÷ 17 g/L for 1 % vol, the must rule for grapes"
    )
    return told(
        case,
        found.value,
        "% vol",
        f"potential alcohol {said(found, '% vol')}",
        f"{given.said}; {how}",
        given,
        band=found,
    )


def original_given(case: Case) -> Given:
    """The batch's original gravity, with what sweetened it while it fermented."""
    found = original_with_additions(of_batch(case, GRAVITY_KINDS))
    if found is None:
        raise Missing(f"the original gravity of batch {batch_of(case)}")
    og, working, notes = found
    return Given(og, working, notes)


def _at_end(case: Case) -> list[Fact]:
    given = original_given(case)
    found = alcohol.alcohol_at_end(given.value)
    working = f"original gravity {given.said}, fermented out to what a dry wine of that strength reads"
    return told(case, found.value, "% vol", f"{said(found, '% vol')} if it ferments dry", working, given, band=found)


def _strength(case: Case) -> list[Fact]:
    start = value_of(case.of["from"])[0]
    if "to" not in case.of:
        found = alcohol.alcohol_at_end(start)
        return told(
            case, found.value, "% vol", f"{said(found, '% vol')} if it ferments dry", f"from {start:.3f}", band=found
        )
    end = value_of(case.of["to"])[0]
    start, end = max(start, end), min(start, end)
    found, how = alcohol_made(start, end)
    return told(
        case, round(found.value, 1), "% vol", said(found, "% vol"), f"{how}: {start:.3f} to {end:.3f}", band=found
    )


def _attenuation(case: Case) -> list[Fact]:
    start, end = (value_of(case.of[name])[0] for name in ("from", "to"))
    found = alcohol.attenuation(max(start, end), min(start, end))
    return told(
        case,
        found.value,
        "%",
        f"{said(found, '%')} apparent",
        f"share of the Brix gone from {max(start, end):.3f} to {min(start, end):.3f}",
        band=found,
    )


def _correct(case: Case) -> list[Fact]:
    given, strength = gravity_given(case), 0.0
    degrees, scale = value_of(case.of["temperature"]) if case.of.get("temperature") else _read_at(case)
    celsius = units.convert(degrees, scale, "C")
    at, mark = _CALIBRATION[case.settings.hydrometer]
    if given.value < 1.000:
        strength = DRY_WINE
    found = hydrometer.correct_hydrometer(given.value, celsius, at, strength)
    wine = f", as of a wine of {strength:g} % vol" if strength else ""
    working = f"{given.said} read at {value_said(degrees, scale)} on a hydrometer true at {mark}{wine}; within 0.0003"
    return told(case, found, "SG", f"{found:.3f}", working, given)


def _read_at(case: Case) -> tuple[float, str]:
    """The temperature noted beside the batch's last gravity."""
    number = batch_of(case)
    gravities = case.source.entries(batch=number, quantity="sg")
    at = [
        e
        for e in case.source.entries(batch=number, quantity="temperature")
        if gravities and e.note == gravities[-1].note
    ]
    if not at:
        when = f" of {day_said(gravities[-1].date)}" if gravities else ""
        raise Missing(f"the temperature of batch {number}'s last gravity{when} (as in “… at 78 F”)")
    return float(at[-1].get("value")), str(at[-1].get("unit"))


def _correct_brix(case: Case) -> list[Fact]:
    value = value_of(case.of["value"])[0]
    degrees, scale = value_of(case.of["temperature"])
    found = hydrometer.correct_refractometer(value, units.convert(degrees, scale, "C"))
    working = (
        f"{value:g} read at {value_said(degrees, scale)} on a refractometer true at 20 °C that does not correct "
        "itself, OIV-MA-AS2-02 Table I; only before fermentation"
    )
    return told(case, found, "Brix", f"{number_said(found, 1)} Brix", working)


def _dryness(case: Case) -> list[Fact]:
    """How a gravity reads: dry, unclear or with sugar left, and what sugar may be in it."""
    try:
        measured = reading(case, "residual_sugar")
    except Missing:
        measured = None
    if measured is not None:  # what was measured comes before any estimate
        sweetness = alcohol.sweetness(measured.value)
        return told(case, measured.value, "g/L", f"residual sugar measured: {measured.said}", sweetness, measured)
    given = gravity_given(case)
    strength, how, notes = alcohol_given(case)
    found = alcohol.dryness(given.value, strength)
    low, high = found.dry_sg
    text = {
        "dry": "it reads dry",
        "unclear": "it may be dry or not: gravity alone cannot tell",
        "sugar left": "it is not dry: sugar is left",
    }[found.state]
    sugar = found.residual_sugar
    left = "sugar left, an estimate: " + (
        f"under {digits_said(max(sugar.high, 1), 0)} g/L" if sugar.low <= 0 else said(sugar, "g/L")
    )
    working = (
        f"gravity {given.said}; a fermented-out wine of {how} reads {low:.3f} to {high:.3f}; the last grams no "
        "hydrometer can see"
    )
    return told(case, given.value, "SG", f"{text}; {left}", working, given, Given(0, "", notes))


def alcohol_given(case: Case) -> tuple[Estimate, str, tuple[int, ...]]:
    """The alcohol from the question, else by the batch's gravities, else that of a usual dry wine."""
    from journalbot.questions.measures.strength import alcohol as of_gravities

    if case.of.get("alcohol"):
        value = check("alcohol", value_of(case.of["alcohol"])[0], 0, 25, "% vol")
        return Estimate.within(value, 0.5), f"{value:g} % vol", ()
    facts = of_gravities(of_batch(case, GRAVITY_KINDS)) if batch_of(case) else []
    if facts:
        f = facts[-1]
        value = float(f.value or 0)
        return Estimate(value, f.low or value, f.high or value), f"{value:.1f} % vol", f.notes
    return Estimate.within(DRY_WINE, 1.5), f"about {DRY_WINE:g} % vol (no strength known)", ()


def _sugar_of(case: Case) -> list[Fact]:
    value = value_of(case.of["value"])[0]
    strength, how, _ = alcohol_given(case)
    found = alcohol.residual_sugar(value, strength)
    return told(
        case,
        found.value,
        "g/L",
        f"{said(found, 'g/L')}, an estimate",
        f"gravity {value:.3f} at {how}, by Tabarié's relation less 17 to 30 g/L of what is no sugar",
        band=found,
    )


def _convert(case: Case) -> list[Fact]:
    value, unit = value_of(case.of["value"])
    to = case.of["unit"]
    if case.of.get("material") and UNITS[unit.partition("/")[0]].dimension != UNITS[to].dimension:
        found = units.grams(value, unit, case.of["material"])
        return told(
            case,
            found.value,
            "g",
            said(found, "g"),
            f"{number_said(value)} {unit} of {case.of['material']}; spoons and tablets are rough",
            band=found,
        )
    out = units.convert(value, unit, to)
    return told(case, out, to, value_said(round(out, 2), to), value_said(value, unit))


MEASURES: tuple[Measure, ...] = (
    calculation("scales", "what [{value}] is on the other scales", _scales),
    calculation("potential alcohol", "the potential alcohol[ of {value}]", _potential),
    calculation("alcohol at the end", "the alcohol if it ferments dry", _at_end),
    calculation("strength from gravities", "the alcohol from {from}[ to {to}]", _strength),
    calculation("attenuation from gravities", "the attenuation from {from} to {to}", _attenuation),
    calculation("corrected gravity", "a gravity[ of {value}] read[ at {temperature}], corrected", _correct),
    calculation("corrected Brix", "a refractometer's {value} read at {temperature}, corrected", _correct_brix),
    calculation("dryness", "whether a gravity[ of {value}] is dry[ at {alcohol}]", _dryness),
    calculation("sugar of a reading", "the sugar left at {value} and {alcohol}", _sugar_of),
    calculation("conversion", "{value} in {unit}", _convert),
)
