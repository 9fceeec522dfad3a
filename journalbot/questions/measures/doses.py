"""Doses for a volume or a batch: acid, sorbate, nutrient, finings and oak; and what acid and malolactic do."""

from journalbot.questions.measures.base import Case, Fact, Measure
from journalbot.questions.measures.calculations import alcohol_given, gravity_given, original_given
from journalbot.questions.measures.working import (
    AID,
    Given,
    Missing,
    as_rate,
    batch_of,
    between,
    calculation,
    reading,
    said,
    spoons,
    told,
    value_of,
    volume,
)
from journalbot.questions.says import number_said
from journalbot.vocabulary.finings import OAK
from journalbot.winemaking import acid, gravity, nutrients, sugar, units, volumes
from journalbot.winemaking.ranges import Estimate

_OLD_MUST_NITROGEN = "from memory, a band and no fact: some musts ferment dry on 100 mg/L"

# ---- acid


_NO_PH = "how far the pH moves cannot be promised, since it hangs on the wine's buffers: measure it on a trial"


def _acid(case: Case) -> list[Fact]:
    here, material = volume(case), case.of.get("material", "")
    lower = bool(case.of.get("lower")) or material in acid.DEACIDIFIERS
    if case.of.get("to"):
        now = reading(case, "ta", "from")
        goal = as_rate(case.of["to"], "g/L")
        change = now.value - goal if lower else goal - now.value
        if change <= 0:
            return told(case, 0.0, "g", "none: it is there already", f"TA {now.said}", now, here)
        steps = f"from TA {now.said} to {goal:g} g/L"
    else:
        now, change = Given(0, ""), as_rate(case.of["rise"], "g/L")
        steps = f"{change:g} g/L"
    if lower:
        material = material if material in acid.DEACIDIFIERS else "calcium carbonate"
        found = acid.deacidifier_grams(change, here.value, material)
    else:
        material = material if material in acid.ACIDS else "tartaric acid"
        found = acid.acid_grams(change, here.value, material)
    spooned = spoons(found.value, material)
    working = f"{steps} (TA as tartaric) × {number_said(here.value, 1)} L ({here.said}); {_NO_PH}. {AID}"
    text = f"{said(found, 'g')} of {material}{f', {spooned}' if spooned else ''}"
    return told(case, found.value, "g", text, working, here, now, band=found)


def _acid_given(case: Case) -> list[Fact]:
    here, material = volume(case), case.of["material"]
    amount, unit = value_of(case.of["amount"])
    mass = units.grams(amount, unit, material)
    value, low, high = (acid.ta_rise(g, here.value, material) for g in (mass.value, mass.low, mass.high))
    found = Estimate(value.value, low.low, high.high)
    return told(
        case,
        found.value,
        "g/L",
        f"TA up by {said(found, 'g/L')} as tartaric",
        f"{amount:g} {unit} of {material} in {here.said}; {_NO_PH}",
        here,
        band=found,
    )


def _no_ph(case: Case) -> list[Fact]:
    text = (
        "that cannot be worked out: TA counts acid, pH follows the ratio of acids to their salts, and buffers differ "
        "from wine to wine. Ask for a change of TA, add it to a measured sample, and read the pH of that"
    )
    return told(case, 0.0, "", text, "Iowa State University Extension; Mattick, Plane and Weirs 1980")


def _ta_units(case: Case) -> list[Fact]:
    value, unit = value_of(case.of["value"])
    grams = acid.ta_from_percent(value) if unit == "%" else value
    given, wanted = case.of.get("given", "tartaric"), case.of.get("wanted", "")
    if not wanted:
        wanted = "sulfuric" if given == "tartaric" and unit != "%" else "tartaric"
    out = acid.ta_as(grams, given, wanted)
    return told(
        case,
        out,
        "g/L",
        f"{number_said(out, 2)} g/L as {wanted}",
        f"{value:g} {unit} as {given}, by molar masses; 1 % is 10 g/L",
    )


def _malolactic(case: Case) -> list[Fact]:
    malic = reading(case, "malic", "value")
    found = acid.malolactic_change(malic.value)
    return told(
        case,
        found.ta_fall,
        "g/L",
        f"TA down by about {number_said(found.ta_fall, 1)} g/L as tartaric, and "
        f"{number_said(found.lactic, 1)} g/L of lactic acid made",
        f"malic acid {malic.said}, all of it used: two "
        "equivalents become one; pH rises, by how much cannot be promised",
        malic,
    )


# ---- sorbate, nutrient, finings, oak


def _sorbate(case: Case) -> list[Fact]:
    here = volume(case)
    strength, strength_said, notes = alcohol_given(case)
    ph = reading(case, "ph", usual=3.5)
    if ph.value > 3.5:
        text = (
            f"none to rely on: at pH {ph.value:.2f} it needs more than the ceiling of {sugar.SORBATE_LIMIT:.0f} mg/L, "
            "so lower the pH first or leave the wine dry"
        )
        return told(case, 0.0, "g", text, f"pH {ph.said}; T. Underhill's table ends at pH 3.5", ph)
    dose = sugar.sorbate_grams(here.value, strength.value, ph.value)
    spooned = spoons(dose, "potassium sorbate")
    text = f"{said(Estimate.share(dose, 0.1), 'g')} of potassium sorbate{f', {spooned}' if spooned else ''}"
    working = (
        f"for {here.said}, alcohol {strength_said}, pH {ph.said}; with sulfite beside it, in clear and still wine "
        f"where no malolactic is at work. {AID}"
    )
    return told(case, dose, "g", text, working, here, ph, Given(0, "", notes))


def _nutrient(case: Case) -> list[Fact]:
    here = volume(case)
    if case.of.get("to"):
        now = reading(case, "yan", "from")
        rise = max(0.0, as_rate(case.of["to"], "mg/L") - now.value)
    else:
        now, rise = Given(0, ""), as_rate(case.of["rise"], "mg/L")
    dose = nutrients.nitrogen_grams(rise, here.value)
    return told(
        case,
        dose,
        "g",
        f"{said(Estimate.share(dose, 0.01), 'g')} of diammonium phosphate",
        f"{rise:g} mg/L of "
        f"nitrogen × {number_said(here.value, 1)} L ÷ 212 mg in a gram ({here.said}){_over_limit(dose, here.value)}. "
        f"{AID}",
        here,
        now,
    )


def _over_limit(dose: float, litres: float) -> str:
    passed = nutrients.limits_passed(dose, litres)
    limits = {where: f"{nutrients.DAP_LIMITS[where][0]:.2g} g/L ({where})" for where in passed}
    return f"; that is over the legal limit of {' and '.join(limits.values())}" if passed else ""


def _nitrogen_need(case: Case) -> list[Fact]:
    """The YAN that a must of this Brix may need, and what the last reading lacks of it."""
    given = _must(case)
    brix = gravity.brix_from_sg(given.value)
    need = nutrients.yan_need(brix)
    text = f"some {need.low:.0f} to {need.high:.0f} mg/L of YAN; {need.value:.0f} by Californian practice"
    working = f"{given.said}, {brix:.0f} Brix; {_OLD_MUST_NITROGEN}"
    if batch_of(case):
        try:
            yan = reading(case, "yan")
        except Missing:
            usual = ""
            if case.cellar.batches[batch_of(case) or 0].volume:
                here = volume(case)
                low, high = (rate * here.value for rate in nutrients.USUAL_DAP)
                usual = f"; unmeasured, {between(low, high, 'g')} of diammonium phosphate is usual for {here.said}"
            return told(case, need.value, "mg/L", text, f"{working}; no YAN is recorded{usual}", given, band=need)
        lacking = max(0.0, need.value - yan.value)
        here = volume(case)
        dose = nutrients.nitrogen_grams(lacking, here.value)
        text += f"; it had {yan.said}, so {said(Estimate.share(dose, 0.1), 'g')} of diammonium phosphate"
        return told(
            case, dose, "g", text, f"{working}; {here.said}{_over_limit(dose, here.value)}. {AID}", given, yan, here
        )
    return told(case, need.value, "mg/L", text, working, given, band=need)


def _must(case: Case) -> Given:
    return original_given(case) if batch_of(case) else gravity_given(case)


def _nitrogen_given(case: Case) -> list[Fact]:
    here = volume(case)
    amount, unit = value_of(case.of["amount"])
    mass = units.grams(amount, unit, "yeast nutrient" if unit in ("tsp", "tbsp", "cup") else "diammonium phosphate")
    found = Estimate(*(nutrients.nitrogen_rise(g, here.value) for g in (mass.value, mass.low, mass.high)))
    return told(
        case,
        found.value,
        "mg/L",
        f"{said(found, 'mg/L')} of nitrogen",
        f"{amount:g} {unit} of diammonium phosphate "
        f"in {here.said}, 212 mg of nitrogen in a gram{_over_limit(mass.value, here.value)}",
        here,
        band=found,
    )


def _usual(case: Case) -> list[Fact]:
    here, material = volume(case), case.of["material"]
    named = (
        {form: volumes.oak_dose(form, here.value) for form in OAK}
        if material == "oak"
        else {material: (volumes.oak_dose if material in OAK else volumes.fining_dose)(material, here.value)}
    )
    parts = []
    for name, dose in named.items():
        oak = f"oak {name}" if name in OAK else name
        unit = "" if dose.unit == "piece" else dose.unit
        parts.append(f"{between(dose.low, dose.high, unit)} of {oak}, at most {between(dose.most, dose.most, unit)}")
    trial = "taste as it goes" if material in (*OAK, "oak") else "try it on a small sample first"
    first = next(iter(named.values()))
    return told(
        case,
        first.low,
        first.unit,
        f"usually {'; or '.join(parts)}",
        f"for {here.said}; common practice, the packet comes first, and {trial}",
        here,
    )


MEASURES: tuple[Measure, ...] = (
    calculation(
        "acid dose", "how much [{material}] changes TA[ by {rise}][ from {from}][ to {to}][ in {volume}]", _acid
    ),
    calculation("acid given", "what {amount} of {material} does to the TA[ in {volume}]", _acid_given),
    calculation("pH not promised", "what acid does to the pH", _no_ph),
    calculation("TA in other units", "a TA of {value} in other units", _ta_units),
    calculation("malolactic change", "what malolactic does to the acid[ with {value} malic]", _malolactic),
    calculation("sorbate dose", "how much sorbate[ for {volume}][ at {alcohol}][ and {ph}]", _sorbate),
    calculation("nitrogen dose", "how much diammonium phosphate gives[ {rise}][ up to {to}][ in {volume}]", _nutrient),
    calculation("nitrogen need", "the nitrogen that a must[ of {value}] may need", _nitrogen_need),
    calculation("nitrogen given", "the nitrogen from {amount} of diammonium phosphate[ in {volume}]", _nitrogen_given),
    calculation("usual dose", "the usual dose of {material}[ for {volume}]", _usual),
)
