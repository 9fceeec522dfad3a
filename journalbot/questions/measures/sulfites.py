"""Sulfite worked out: doses by weight, spoon and tablet, molecular SO2, what an addition gave, what may be free now."""


from journalbot.journal.fold import order_of
from journalbot.questions.measures.base import Case, Fact, Measure
from journalbot.questions.measures.working import (
    AID,
    Given,
    Missing,
    as_rate,
    batch_of,
    calculation,
    colour_of,
    reading,
    safe,
    said,
    spoons,
    told,
    value_of,
    volume,
)
from journalbot.questions.says import number_said
from journalbot.winemaking import sulfite, units
from journalbot.winemaking.ranges import Estimate, check

_OF_PH = 0.12  # share that a pH out by 0.05 moves: 10 ** 0.05 - 1


def _halves(found: Estimate) -> str:
    low, high = (number_said(round(x * 2) / 2) for x in (found.low, found.high))
    tablets = "tablet" if high == "1" else "tablets"
    return f"{low} to {high} Campden {tablets}" if low != high else f"{low} Campden {tablets}"


def _sulfite_said(rise: float, litres: float, material: str, share: float) -> tuple[float, str, str]:
    """The dose by weight (good to a share of it), spoon and tablet; its figure and unit."""
    salt = material if material in sulfite.SO2_SHARE else sulfite.POTASSIUM
    dose = sulfite.sulfite_grams(rise, litres, salt)
    by_tablet = sulfite.tablets(rise, litres)
    weighed = f"{said(Estimate.share(dose, share), 'g', most=2)} of {salt}"
    rough = [spoons(dose, salt), _halves(by_tablet) if by_tablet.value >= 0.25 else ""]
    if material == "campden tablet":
        return by_tablet.value, f"{_halves(by_tablet)} (or {weighed}), by 0.44 to 0.55 g a tablet", "tablets"
    also = ", or ".join(r for r in rough if r)
    return dose, f"{weighed}{f' ({also})' if also else ''}", "g"


def _sulfite(case: Case) -> list[Fact]:
    here = volume(case)
    if case.of.get("to"):
        now = reading(case, "free_so2", "from", usual=0.0)
        goal = as_rate(case.of["to"], "mg/L")
        rise = max(0.0, check("free SO2 to reach", goal, 0, 300, "mg/L") - now.value)
        if not rise:
            return told(case, 0.0, "g", "none: it is there already", f"free SO2 {now.said}", now, here)
        steps = f"from free SO2 {now.said} to {goal:g} mg/L, {number_said(rise, 0)} mg/L more"
    elif case.of.get("rise"):
        now, rise = Given(0, ""), as_rate(case.of["rise"], "mg/L")
        steps = f"{rise:g} mg/L"
    else:
        check("volume", here.value, 0.05, 5000, "L")
        raise Missing("how much SO2 to add (as in “… for 30 ppm”), or the pH")
    return _sulfite_told(case, rise, steps, here, now)


def _sulfite_told(case: Case, rise: float, steps: str, here: Given, *given: Given, share: float = 0.01) -> list[Fact]:
    material = case.of.get("material", sulfite.POTASSIUM)
    dose, text, unit = _sulfite_said(rise, here.value, material, share)
    held = sulfite.SO2_SHARE.get(material, sulfite.SO2_SHARE[sulfite.POTASSIUM])
    working = f"{steps} × {number_said(here.value, 1)} L ÷ {held:.3f} ({here.said}); part of it will bind. {AID}"
    return told(case, dose, unit, text, working, here, *given)


def _aim(case: Case) -> tuple[float, str]:
    """The molecular SO2 to aim at: as asked, or the usual for the colour."""
    if case.of.get("molecular"):
        value = as_rate(case.of["molecular"], "mg/L")
        return value, f"{value:g} mg/L molecular"
    aim = sulfite.AIMS.get(colour_of(case), sulfite.OTHER_AIM)
    return aim, f"{aim:g} mg/L molecular, usual for {'reds' if aim == sulfite.AIMS['red'] else 'wine that is not red'}"


def _pk(case: Case) -> tuple[float, str]:
    """The pK: the usual one, or by the alcohol and temperature that are given."""
    if not (case.of.get("alcohol") and case.of.get("temperature")):
        return sulfite.USUAL_PK, f"pK {sulfite.USUAL_PK}, the usual one"
    strength = value_of(case.of["alcohol"])[0]
    celsius = units.convert(*value_of(case.of["temperature"]), "C")
    found = sulfite.pk(strength, celsius)
    return found, f"pK {found:.2f} at {strength:g} % vol and {celsius:.0f} °C, OIV-MA-AS323-04C"


def _for_molecular(case: Case) -> list[Fact]:
    here = volume(case)
    ph, now = reading(case, "ph", usual=3.5), reading(case, "free_so2", "from", usual=0.0)
    aim, aim_said = _aim(case)
    wanted = sulfite.free_so2_needed(aim, ph.value)
    rise = max(0.0, wanted - now.value)
    steps = f"{aim_said}, is {wanted:.0f} mg/L free SO2 at pH {ph.said}; from free SO2 {now.said}, {rise:.0f} mg/L more"
    if not rise:
        return told(case, 0.0, "g", "none by these readings", steps, ph, now, here)
    return _sulfite_told(case, rise, steps, here, ph, now, share=_OF_PH)


def needed(case: Case, number: int) -> list[Fact]:
    """The sulfite that a batch of the journal needs; what is lacking for it is named."""
    return safe(_for_molecular)(case._replace(of={"batch": str(number)}))


def _given_so2(case: Case) -> list[Fact]:
    """The SO2 that so much of a sulfite gives."""
    material = case.of["material"] if case.of["material"] != "sulfur dioxide" else sulfite.POTASSIUM
    amount, unit = value_of(case.of["amount"])
    top, _, per = unit.partition("/")
    here = Given(units.convert(1, per, "L"), f"1 {per}") if per else volume(case)
    if material == "campden tablet" and top == "tablet":
        found = sulfite.so2_from_tablets(amount, here.value)
    else:
        salt = material if material in sulfite.SO2_SHARE else sulfite.POTASSIUM
        weighed = units.grams(amount, top, material)
        low, value, high = (
            sulfite.so2_from_grams(g, here.value, salt) for g in (weighed.low, weighed.value, weighed.high)
        )
        found = Estimate(value, low, high)
    working = f"{amount:g} {top} of {material} in {here.said}; of it 35 to 75 % stays free (common practice, no source)"
    return told(case, found.value, "mg/L", f"{said(found, 'mg/L')} of SO2 added", working, here, band=found)


def _free_needed(case: Case) -> list[Fact]:
    ph = reading(case, "ph", usual=3.5)
    pk, pk_said = _pk(case)
    if case.of.get("molecular"):
        aims = {"": as_rate(case.of["molecular"], "mg/L")}
    else:
        aims = {"usual for reds": sulfite.AIMS["red"], "for whites and others": sulfite.OTHER_AIM}
    found = {name: sulfite.free_so2_needed(aim, ph.value, pk) for name, aim in aims.items()}
    text = ", ".join(
        f"{v:.0f} mg/L of free SO2 for {aims[n]:g} mg/L molecular{f' ({n})' if n else ''}" for n, v in found.items()
    )
    return told(
        case,
        next(iter(found.values())),
        "mg/L",
        text,
        f"at pH {ph.said}, {pk_said}; a pH out by 0.05 moves it 12 %",
        ph,
    )


def _molecular(case: Case) -> list[Fact]:
    ph = reading(case, "ph", usual=3.5)
    free = reading(case, "free_so2", "value")
    pk, pk_said = _pk(case)
    found = Estimate.share(sulfite.molecular_so2(free.value, ph.value, pk), _OF_PH)
    return told(
        case,
        found.value,
        "mg/L",
        f"{said(found, 'mg/L')} of molecular SO2",
        f"free SO2 {free.said} at pH {ph.said}, {pk_said}; the band is a pH out by 0.05",
        ph,
        free,
        band=found,
    )


def _free_now(case: Case) -> list[Fact]:
    """The free SO2 to expect after what went in since the last reading; labelled an estimate."""
    from journalbot.vocabulary.care import SULFITES

    number = batch_of(case)
    read = case.source.entries(batch=number, quantity="free_so2")
    if not read:
        raise Missing(
            f"a reading of free SO2 of batch {number} to start from: what stays free of an addition is not known"
        )
    since = [
        e
        for e in case.source.entries(batch=number, kinds=["addition"], since=read[-1].date)
        if e.get("material") in SULFITES and order_of(e) > order_of(read[-1])
    ]
    now = reading(case, "free_so2")
    if not since:
        return told(
            case,
            now.value,
            "mg/L",
            f"{number_said(now.value)} mg/L when last read; no sulfite has gone in since",
            f"free SO2 {now.said}; what air and time took is not known",
            now,
        )
    here = volume(case)
    added = 0.0
    for e in since:
        added += _so2_of(e.get("material"), e.get("amount"), str(e.get("unit") or ""), here.value)
    found = sulfite.free_so2_after(now.value, added)
    notes = Given(0, "", tuple(e.note for e in since))
    working = (
        f"free SO2 {now.said}, and {added:.0f} mg/L added since, of which 35 to 75 % stays free; what air and time "
        "took is not in it: measure to know"
    )
    return told(
        case,
        found.value,
        "mg/L",
        f"{said(found, 'mg/L')} of free SO2, an estimate",
        working,
        now,
        here,
        notes,
        band=found,
    )


def _so2_of(material: object, amount: object, unit: str, litres: float) -> float:
    """mg/L of SO2 that an addition brought. Missing where it does not say how much."""
    if not isinstance(amount, int | float):
        raise Missing(f"how much {material} went in")
    top, _, per = unit.partition("/")
    total = amount * (litres / units.convert(1, per, "L") if per and per != "L" else 1)
    if unit == "mg/L":
        return float(amount)
    if per == "L":
        total = amount * litres
    if top == "tablet":
        return sulfite.so2_from_tablets(total, litres).value
    salt = str(material) if material in sulfite.SO2_SHARE else sulfite.POTASSIUM
    return sulfite.so2_from_grams(units.grams(total, top, str(material)).value, litres, salt)


MEASURES: tuple[Measure, ...] = (
    calculation(
        "sulfite dose",
        "how much {material} gives[ {rise}][ a rise from {from}][ free SO2 of {to}][ in {volume}]",
        _sulfite,
    ),
    calculation(
        "sulfite for molecular",
        "how much sulfite gives[ {molecular} molecular][ at {ph}][ in {volume}]",
        _for_molecular,
    ),
    calculation("sulfite given", "the SO2 from {amount} of {material}[ in {volume}]", _given_so2),
    calculation("free SO2 needed", "the free SO2 needed[ for {molecular} molecular][ at {ph}]", _free_needed),
    calculation("molecular SO2", "molecular SO2[ of {value} free][ at {ph}]", _molecular),
    calculation("free SO2 now", "the free SO2 to expect now", _free_now),
)
