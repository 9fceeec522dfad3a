"""Sugar, honey, concentrate and water worked out: to reach a gravity or an alcohol, to sweeten, and what they do."""

from journalbot.questions.measures.base import Case, Fact, Measure
from journalbot.questions.measures.calculations import gravity_given, original_given
from journalbot.questions.measures.readings import value_said
from journalbot.questions.measures.vessels import volume_said
from journalbot.questions.measures.working import (
    AID,
    Given,
    Missing,
    as_rate,
    batch_of,
    calculation,
    colour_of,
    reading,
    said,
    told,
    value_of,
    volume,
)
from journalbot.questions.says import number_said
from journalbot.winemaking import acid, gravity, sugar, units
from journalbot.winemaking.ranges import Estimate, check

# °Brix of what is put in; a concentrate's is on its label.
_SOURCES = {"sugar": sugar.DRY_SUGAR, "corn sugar": sugar.DRY_SUGAR, "honey": sugar.HONEY, "water": sugar.WATER}
_CONCENTRATE = 68.0  # °Brix where the label's is not told; common practice, no source
_STABILISE = (
    "Sugar in a finished wine ferments unless it is stabilised: sorbate with sulfite, or it is kept cold and watched"
)
_NOT_GRAPE = frozenset(("fruit", "mead", "cider"))


def _source(case: Case) -> tuple[float, str]:
    material = case.of["material"]
    if material in _SOURCES:
        return _SOURCES[material], material
    strength = value_of(case.of["at"])[0] if case.of.get("at") else _CONCENTRATE
    return strength, f"{material} of {strength:g} Brix{'' if case.of.get('at') else ', as is common'}"


def _sg(said_: str) -> float:
    value, unit = value_of(said_)
    return value if unit == "SG" else gravity.sg_from_brix(value)


def _start(case: Case) -> Given:
    """The gravity to start from: of the question, the batch's (before it ferments), or water for honey."""
    if case.of.get("from"):
        value, unit = value_of(case.of["from"])
        return Given(_sg(case.of["from"]), f"{value:.3f}" if unit == "SG" else case.of["from"])
    if batch_of(case):
        if case.cellar.batches[batch_of(case) or 0].pitched:
            og = original_given(case)  # sugar put in later counts from there, whatever has fermented since
            return Given(og.value, f"the original {og.said}", og.notes)
        return gravity_given(case)
    if case.of.get("material") == "honey":
        return Given(1.0, "water")
    raise Missing("the gravity to start from (as in “… from 1.070 to 1.090”)")


def _needed(case: Case) -> list[Fact]:
    here, start = volume(case), _start(case)
    source, source_said = _source(case)
    if case.of.get("alcohol"):
        strength = value_of(case.of["alcohol"])[0]
        grape = colour_of(case) not in _NOT_GRAPE and case.of["material"] != "honey"
        goal = gravity.sg_for_alcohol(strength, grape)
        goal_said = f"{goal:.3f}, the gravity of {strength:g} % vol to come{'' if grape else ' (not of grapes)'}"
    else:
        if not case.of.get("to"):
            raise Missing("the gravity to reach")
        goal = _sg(case.of["to"])
        goal_said = f"{goal:.3f}" if case.of["to"].endswith("SG") else f"{case.of['to']} ({goal:.3f})"
    _check_way(start.value, goal, source, source_said)
    found = sugar.to_sg(here.value, start.value, goal, source)
    mass, rise = found.kilograms, found.litres - here.value
    out = f"{_weight(mass)} of {source_said}"
    if source_said == "water" or source < sugar.HONEY:
        litres = sugar.liquid_litres(mass, source)
        out = f"{volume_said(litres, case.settings.units)} of {source_said}"
    working = (
        f"from {start.said} to {goal_said} in {here.said}; it comes to "
        f"{volume_said(found.litres, case.settings.units)} then, "
        f"{volume_said(rise, case.settings.units)} more; mass balance, within 1 %. {AID}"
    )
    return told(case, mass, "kg", out, working, here, start)


def _check_way(start: float, goal: float, source: float, what: str) -> None:
    """Sugar raises and water lowers: the other way round has no answer."""
    if source == sugar.WATER and goal > start:
        raise ValueError(f"water takes {start:.3f} down, not up to {goal:.3f}: add sugar or honey for that")
    if source > sugar.WATER and goal < start:
        raise ValueError(f"{what} takes {start:.3f} up, not down to {goal:.3f}: add water for that")


def _weight(kilograms: float) -> str:
    """Kilograms with pounds beside them, small amounts in grams and ounces."""
    if kilograms < 0.5:
        ounces = units.convert(kilograms, "kg", "oz")
        return f"{said(Estimate.share(kilograms * 1000, 0.01), 'g')} ({number_said(ounces, 1)} oz)"
    pounds = units.convert(kilograms, "kg", "lb")
    return f"{number_said(kilograms, 2)} kg ({number_said(pounds, 1)} lb)"


def _given(case: Case) -> list[Fact]:
    """What so much sugar, honey or water does to a must."""
    here = volume(case)
    if case.of.get("from"):
        start = Given(_sg(case.of["from"]), value_said(*value_of(case.of["from"])))
    else:
        start = original_given(case) if batch_of(case) else Given(1.0, "water")
    source, source_said = _source(case)
    amount, unit = value_of(case.of["amount"])
    mass = units.grams(amount, unit, case.of["material"]).value / 1000
    found = sugar.after_adding(here.value, max(0.0, gravity.brix_from_sg(start.value)), mass, source)
    text = f"{found.sg:.3f} ({number_said(found.brix, 1)} Brix) in {volume_said(found.litres, case.settings.units)}"
    if gravity.OTHER_SG[0] <= found.sg <= gravity.OTHER_SG[1]:
        more = gravity.LINEAR * (found.sg - start.value)
        text += f", some {number_said(more, 1)} % vol more alcohol to come" if more > 0.1 else ""
    fermented = batch_of(case) is not None and not case.of.get("from")
    before = "original gravity" if fermented else "gravity"
    return told(
        case,
        found.sg,
        "SG",
        f"{before} up to {text}" if found.sg > start.value else f"down to {text}",
        f"{number_said(amount)} {unit} of {source_said} in {here.said} of {start.said}",
        here,
        start,
    )


def _sweeten(case: Case) -> list[Fact]:
    here = volume(case)
    if case.of.get("by"):
        grams, start = sugar.sweeten(here.value, as_rate(case.of["by"], "g/L")), Given(0, "")
        steps = f"{case.of['by']} more"
    else:
        start = reading(case, "sg", "from")
        goal = value_of(case.of["to"])[0]
        grams = sugar.sweeten_to_sg(here.value, start.value, goal)
        steps = f"from gravity {start.said} to {goal:.3f}"
    held = here.value + sugar.sugar_volume(grams / 1000)
    of = "sugar" if case.of.get("material") != "honey" else "honey"
    mass = grams / 1000 / (sugar.HONEY / 100 if of == "honey" else 1)
    working = f"{steps} in {here.said}; it comes to {volume_said(held, case.settings.units)} then. {_STABILISE}. {AID}"
    return told(case, mass, "kg", f"{_weight(mass)} of {of}", working, here, start)


def _diluted(case: Case) -> list[Fact]:
    """What water makes of a TA or an alcohol."""
    first, second = sorted((units.litres(*value_of(case.of[n])) for n in ("first", "second")), reverse=True)
    value, unit = value_of(case.of["value"])
    check("water", second, 0, first, "L")
    out = acid.diluted(value, first, second)
    return told(
        case,
        out,
        unit,
        f"{number_said(out, 1)} {unit}",
        f"{number_said(value)} {unit} in "
        f"{number_said(first, 1)} L with {number_said(second, 1)} L of water: by the volumes alone",
    )


def _strength_to_come(case: Case) -> list[Fact]:
    """Sugar for so many % vol more, by the rule of 17 g/L."""
    here = volume(case)
    rise = value_of(case.of["rise"])[0]
    found = sugar.sugar_for_alcohol(here.value, rise)
    return told(
        case,
        found.value,
        "g",
        f"{said(found, 'g')} of sugar",
        f"{rise:g} % vol × 17 g/L (16 to 18) × {number_said(here.value, 1)} L ({here.said}). {AID}",
        here,
        band=found,
    )


MEASURES: tuple[Measure, ...] = (
    calculation(
        "sugar needed", "how much {material} reaches[ {to}][ {alcohol} alcohol][ from {from}][ in {volume}]", _needed
    ),
    calculation("sugar for alcohol", "how much sugar gives {rise} vol more alcohol[ in {volume}]", _strength_to_come),
    calculation("sugar given", "what {amount} of {material} does[ to {from}][ in {volume}]", _given),
    calculation(
        "sweetening", "how much [{material}] sweetens[ from {from}][ to {to}][ by {by}][ in {volume}]", _sweeten
    ),
    calculation("diluted", "what {second} of water makes of {value} in {first}", _diluted),
)
