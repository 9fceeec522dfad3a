"""Figures worked out from numbers in the question, or from a batch's own readings; each names what it used."""

import re
from collections.abc import Callable
from dataclasses import replace

from journalbot.questions.measures.base import Case, Fact, Measure
from journalbot.questions.measures.readings import value_said
from journalbot.questions.measures.vessels import volume_said
from journalbot.questions.says import day_said, number_said
from journalbot.vocabulary.finings import OAK
from journalbot.vocabulary.quantities import QUANTITIES
from journalbot.vocabulary.units import UNITS
from journalbot.winemaking import acid, alcohol, gravity, hydrometer, nutrients, sugar, sulfite, units, volumes
from journalbot.winemaking.ranges import Estimate, OutOfRange
from journalbot.winemaking.units import UnknownUnit

_VALUE = re.compile(r"^(-?[\d.]+) ?(.*)$")
_MOST_WAYS = "It is an aid to your own judgement: weigh it, and measure again afterwards."
_CALIBRATION = {"60F": 15.56, "20C": 20.0}


class Missing(Exception):
    """Something that the calculation needs and neither the question nor the journal gives."""


def value_of(said: str) -> tuple[float, str]:
    """The number and unit of a value as a Query holds it: `30 mg/L`."""
    found = _VALUE.match(said)
    if not found:
        raise Missing("a number")
    return float(found.group(1)), found.group(2)


def _volume(case: Case) -> tuple[float, str]:
    """The volume in litres, from the question or else the batch, and how it is said."""
    if said := case.of.get("volume"):
        value, unit = value_of(said)
        return units.litres(value, unit), f"{number_said(value)} {unit}"
    if number := case.of.get("batch"):
        batch = case.cellar.batches[int(number)]
        if batch.volume:
            return batch.volume, f"batch {number}, last known at {volume_said(batch.volume, case.settings.units)}"
        raise Missing(f"how much there is of batch {number}")
    raise Missing("the volume")


def _reading(case: Case, quantity: str, name: str) -> tuple[float, str]:
    """A value of a quantity from the question, or else the batch's last reading of it."""
    if said := case.of.get(name):
        value, unit = value_of(said)
        return value, value_said(value, unit)
    number = case.of.get("batch")
    found = case.source.entries(batch=int(number), quantity=quantity) if number else []
    if not found:
        raise Missing(f"the {QUANTITIES[quantity].label}{f' of batch {number}' if number else ''}")
    last = found[-1]
    later = case.source.entries(batch=int(number or 0), kinds=["addition"], since=last.date)
    since = [e for e in later if (e.date, e.place) > (last.date, last.place)]
    doubt = f", before the {since[-1].get('material')} of {day_said(since[-1].date)}" if since else ""
    return float(
        last.get("value")
    ), f"{value_said(float(last.get('value')), str(last.get('unit') or ''))}, read on {day_said(last.date)}{doubt}"


def _rate(said: str) -> tuple[float, str]:
    """A rate in g/L or mg/L."""
    value, unit = value_of(said)
    if unit == "%":
        return acid.ta_from_percent(value), "g/L"
    return value, unit


def _in_mg(said: str) -> float:
    value, unit = _rate(said)
    return units.convert(value, unit, "mg/L")


def _estimate_said(found: Estimate, unit: str, decimals: int = 2) -> str:
    if found.high - found.low < 1e-9:
        return f"{number_said(found.value, decimals)} {unit}"
    low, high = number_said(found.low, decimals), number_said(found.high, decimals)
    return f"about {number_said(found.value, decimals)} {unit} ({low} to {high})"


def _fact(value: float, unit: str, text: str, working: str) -> list[Fact]:
    return [Fact(None, "", value, unit, text, (), working)]


def _spoons(grams: float, material: str) -> str:
    try:
        spoon = units.teaspoons(grams, material)
    except UnknownUnit:
        return ""
    return f", about {number_said(spoon.value, 1 if spoon.value >= 1 else 2)} level tsp"


def _sulfite(case: Case) -> list[Fact]:
    litres, said = _volume(case)
    material = case.of["material"]
    rise, of = _in_mg(case.of["rise"]), case.of["rise"]
    working = ""
    if case.of.get("to") and (case.of.get("batch") or case.of.get("from")):
        now, now_said = _reading(case, "free_so2", "from")
        working = f"; from free SO2 {now_said}"
        of = f"{number_said(max(0.0, rise - now))} mg/L more"
        rise = max(0.0, rise - now)
    if material == "campden tablet":
        found = sulfite.tablets(rise, litres)
        return _fact(
            found.value,
            "tablets",
            f"{_estimate_said(found, 'tablets', 1)}",
            f"{of} in {said}{working}; 0.44 to 0.55 g a tablet. {_MOST_WAYS}",
        )
    salt = material if material in sulfite.SO2_SHARE else sulfite.POTASSIUM
    dose = sulfite.sulfite_grams(rise, litres, salt)
    share = sulfite.SO2_SHARE[salt]
    return _fact(
        dose,
        "g",
        f"{number_said(dose, 2)} g of {salt}{_spoons(dose, salt)}",
        f"{of} × {number_said(litres, 1)} L ÷ {share} ({said}){working}; part of it will bind. {_MOST_WAYS}",
    )


def _acid(case: Case) -> list[Fact]:
    litres, said = _volume(case)
    rise, unit = _rate(case.of["rise"])
    rise = units.convert(rise, unit, "g/L")
    material = case.of["material"]
    if case.of.get("lower") or material in acid.DEACIDIFIERS:
        material = material if material in acid.DEACIDIFIERS else "calcium carbonate"
        found = acid.deacidifier_grams(rise, litres, material)
    else:
        material = material if material in acid.ACIDS else "tartaric acid"
        found = acid.acid_grams(rise, litres, material)
    return _fact(
        found.value,
        "g",
        f"{_estimate_said(found, f'g of {material}', 1)}",
        f"{number_said(rise)} g/L × {number_said(litres, 1)} L ({said}); how far the pH moves cannot be promised. "
        f"{_MOST_WAYS}",
    )


def _nutrient(case: Case) -> list[Fact]:
    litres, said = _volume(case)
    rise = _in_mg(case.of["rise"])
    dose = nutrients.nitrogen_grams(rise, litres)
    return _fact(
        dose,
        "g",
        f"{number_said(dose, 1)} g of diammonium phosphate",
        f"{number_said(rise)} mg/L of nitrogen in {said}. {_MOST_WAYS}",
    )


def _usual(case: Case) -> list[Fact]:
    litres, said = _volume(case)
    material = case.of["material"]
    dose = (volumes.oak_dose if material in OAK else volumes.fining_dose)(material, litres)
    return _fact(
        dose.low,
        dose.unit,
        f"usually {number_said(dose.low, 1)} to {number_said(dose.high, 1)} {dose.unit} of {material}, "
        f"at most {number_said(dose.most, 1)}",
        f"for {said}; common practice, the packet comes first",
    )


def _alcohol(case: Case) -> tuple[float, str]:
    """The alcohol from the question, else as measured in the batch, else by the batch's gravities."""
    try:
        return _reading(case, "alcohol", "alcohol")
    except Missing:
        from journalbot.questions.measures.strength import GRAVITY_KINDS, alcohol

        number = int(case.of.get("batch") or 0)
        entries = case.source.entries(batch=number, kinds=GRAVITY_KINDS) if number else []
        found = alcohol(replace(case, number=number, entries=entries)) if entries else []
        if not found:
            raise
        return float(found[-1].value or 0), f"{found[-1].text} by its gravities"


def _sorbate(case: Case) -> list[Fact]:
    litres, said = _volume(case)
    strength, strength_said = _alcohol(case)
    ph, ph_said = _reading(case, "ph", "ph")
    dose = sugar.sorbate_grams(litres, strength, ph)
    return _fact(
        dose,
        "g",
        f"{number_said(dose, 1)} g of potassium sorbate{_spoons(dose, 'potassium sorbate')}",
        f"for {said}, alcohol {strength_said}, pH {ph_said}; with sulfite beside it. {_MOST_WAYS}",
    )


def _sugar(case: Case) -> list[Fact]:
    litres, said = _volume(case)
    start, start_said = _reading(case, "sg", "from")
    target, _ = value_of(case.of["to"])
    source = sugar.HONEY if case.of["material"] == "honey" else sugar.DRY_SUGAR
    found = sugar.to_brix(litres, gravity.brix_from_sg(start), gravity.brix_from_sg(target), source)
    pounds = units.convert(found.kilograms, "kg", "lb")
    return _fact(
        found.kilograms,
        "kg",
        f"{number_said(found.kilograms, 2)} kg ({number_said(pounds, 1)} lb) of {case.of['material']}",
        f"from {start_said} to {target:.3f} in {said}; "
        f"it comes to {volume_said(found.litres, case.settings.units)} then. {_MOST_WAYS}",
    )


def _scales(case: Case) -> list[Fact]:
    value, unit = value_of(case.of["value"])
    sg = value if unit == "SG" else gravity.sg_from_brix(value)
    found = gravity.scales(sg)
    parts = [
        f"SG {found.sg:.3f}",
        f"{number_said(found.brix, 1)} Brix",
        f"{number_said(found.extract, 0)} g/L of extract",
    ]
    if found.potential_alcohol:
        p = found.potential_alcohol
        parts.append(f"potential alcohol {number_said(p.low, 1)} to {number_said(p.high, 1)} % vol as grape must")
    return _fact(sg, "SG", "; ".join(parts), "")


def _strength(case: Case) -> list[Fact]:
    start, end = value_of(case.of["from"])[0], value_of(case.of["to"])[0]
    found = alcohol.alcohol(max(start, end), min(start, end))
    return _fact(
        round(found.value, 1),
        "% vol",
        f"about {number_said(found.value, 1)} % vol ({number_said(found.low, 1)} to {number_said(found.high, 1)})",
        f"131.25 × ({max(start, end):.3f} − {min(start, end):.3f})",
    )


def _correct(case: Case) -> list[Fact]:
    reading = value_of(case.of["value"])[0]
    degrees, scale = value_of(case.of["temperature"])
    celsius = units.convert(degrees, scale, "C")
    at = _CALIBRATION[case.settings.hydrometer]
    found = hydrometer.correct_hydrometer(reading, celsius, at)
    return _fact(
        found,
        "SG",
        f"{found:.3f}",
        f"{reading:.3f} read at {value_said(degrees, scale)} on a hydrometer true at "
        f"{'60 °F' if case.settings.hydrometer == '60F' else '20 °C'}",
    )


def _bottles(case: Case) -> list[Fact]:
    litres, said = _volume(case)
    count, rest = volumes.bottles(litres)
    return _fact(
        float(count),
        "bottles",
        f"{count} bottles of 750 ml, {number_said(rest, 2)} L over",
        f"{said}; what the lees keep is not taken off",
    )


def _molecular(case: Case) -> list[Fact]:
    ph, ph_said = _reading(case, "ph", "ph")
    if case.of.get("to"):
        target = _in_mg(case.of["to"])
        free = sulfite.free_so2_needed(target, ph)
        return _fact(
            round(free, 1),
            "mg/L",
            f"{number_said(free, 0)} mg/L of free SO2",
            f"for {number_said(target)} mg/L molecular at pH {ph_said}, pK 1.81",
        )
    free, free_said = _reading(case, "free_so2", "value")
    found = sulfite.molecular_so2(free, ph)
    return _fact(
        round(found, 2),
        "mg/L",
        f"{number_said(found, 2)} mg/L of molecular SO2",
        f"free SO2 {free_said} at pH {ph_said}, pK 1.81",
    )


def _convert(case: Case) -> list[Fact]:
    value, unit = value_of(case.of["value"])
    to = case.of["unit"]
    if case.of.get("material") and UNITS[unit.partition("/")[0]].dimension != UNITS[to].dimension:
        found = units.grams(value, unit, case.of["material"])
        return _fact(
            found.value,
            "g",
            _estimate_said(found, "g", 2),
            f"{number_said(value)} {unit} of {case.of['material']}; spoons and tablets are rough",
        )
    out = units.convert(value, unit, to)
    return _fact(out, to, f"{value_said(round(out, 2), to)}", f"{value_said(value, unit)}")


def _safe(compute: Callable[[Case], list[Fact]]) -> Callable[[Case], list[Fact]]:
    """The calculation, with a plain sentence where something is missing or out of range."""

    def run(case: Case) -> list[Fact]:
        try:
            return compute(case)
        except Missing as missing:
            return [Fact(None, "", None, "", f"I need {missing} for that.", bare=True)]
        except OutOfRange as error:
            return [Fact(None, "", None, "", f"That is outside what the calculation holds for: {error}.", bare=True)]
        except (UnknownUnit, ValueError) as error:
            return [Fact(None, "", None, "", f"That cannot be worked out: {error}.", bare=True)]

    return run


def measure_of(name: str, phrase: str, compute: Callable[[Case], list[Fact]]) -> Measure:
    """A calculation as a measure; where something is missing or out of range it says so."""
    return Measure(name, phrase, (), _safe(compute), (), sort="calculation", scope="none")


MEASURES: tuple[Measure, ...] = (
    measure_of("sulfite dose", "how much {material} gives {rise} of SO2[ in {volume}][ in batch {batch}]", _sulfite),
    measure_of("acid dose", "how much {material} changes the acid by {rise}[ in {volume}][ in batch {batch}]", _acid),
    measure_of(
        "nitrogen dose",
        "how much diammonium phosphate gives {rise} of nitrogen[ in {volume}][ in batch {batch}]",
        _nutrient,
    ),
    measure_of("usual dose", "the usual dose of {material}[ for {volume}][ for batch {batch}]", _usual),
    measure_of("sorbate dose", "how much sorbate[ for {volume}][ for batch {batch}]", _sorbate),
    measure_of(
        "sugar needed", "how much {material} reaches {to}[ from {from}][ in {volume}][ in batch {batch}]", _sugar
    ),
    measure_of("scales", "what {value} is on the other scales", _scales),
    measure_of("strength from gravities", "the alcohol from {from} to {to}", _strength),
    measure_of("corrected gravity", "a gravity of {value} read at {temperature}, corrected", _correct),
    measure_of("bottles needed", "how many bottles[ {volume} fills][ batch {batch} fills]", _bottles),
    measure_of("molecular SO2", "molecular SO2[ of {value}][ for {to}][ at {ph}][ of batch {batch}]", _molecular),
    measure_of("conversion", "{value} in {unit}", _convert),
)
