"""Room and gas worked out: primaries, rackings, topping up, vessels that fit, bottles, carbon dioxide and pressure."""

from journalbot.journal.vessel_names import vessel_key
from journalbot.questions.measures.base import Case, Fact, Measure
from journalbot.questions.measures.vessels import volume_said
from journalbot.questions.measures.working import (
    DRY_WINE,
    Missing,
    batch_of,
    between,
    calculation,
    colour_of,
    digits_said,
    said,
    told,
    value_of,
    volume,
)
from journalbot.questions.says import join, number_said
from journalbot.winemaking import alcohol, sugar, units, volumes
from journalbot.winemaking.ranges import Estimate, check

_HABIT = "common practice, no source"
_ROOM_TEMPERATURE = 20.0  # °C at which a pressure is told where none is
_VERDICTS = {"enough": "enough room", "tight": "tight", "too full": "too full"}


def _litres(case: Case, name: str) -> float:
    return units.litres(*value_of(case.of[name]))


def _as_asked(case: Case, litres: float) -> str:
    """A volume in the unit of the question, or else of the journal."""
    if case.of.get("volume"):
        unit = value_of(case.of["volume"])[1]
        return f"{number_said(units.convert(litres, 'L', unit), 1)} {unit}"
    return volume_said(litres, case.settings.units)


def _room(case: Case) -> list[Fact]:
    """Whether a primary has room for the foam of so much must."""
    must, capacity = sorted((_litres(case, "volume"), _litres(case, "capacity")))
    kind = colour_of(case) or "other"
    space, wanted = volumes.head_space(must, capacity), volumes.primary_capacity(must, kind)
    verdict = _VERDICTS[volumes.foam_room(must, capacity, kind)]
    low, high = _as_asked(case, wanted.low), _as_asked(case, wanted.high)
    usual = low if low == high else f"{low} to {high}"
    return told(
        case,
        space,
        "",
        f"{verdict}: {space:.0%} of it is head space",
        f"{case.of['volume']} in {case.of['capacity']}; for that much, a vessel of {usual} is usual; {_HABIT}",
    )


def _primary(case: Case) -> list[Fact]:
    must, kind = _litres(case, "volume"), colour_of(case) or "other"
    wanted = volumes.primary_capacity(must, kind)
    low, high = _as_asked(case, wanted.low), _as_asked(case, wanted.high)
    usual = low if low == high else f"{low} to {high}"
    share = "a third" if kind in ("red", "fruit", "mead") else "a quarter to a third"
    return told(
        case,
        wanted.value,
        "L",
        f"one of {usual}",
        f"{case.of['volume']} and {share} left empty for foam and cap; {_HABIT}",
    )


def _racking(case: Case) -> list[Fact]:
    here = volume(case)
    fine, gross = (volumes.racking_loss(here.value, lees) for lees in ("fine lees", "gross lees"))
    unit = "gal" if case.settings.units == "us" else "L"
    spans = [between(units.convert(e.low, "L", unit), units.convert(e.high, "L", unit), unit) for e in (fine, gross)]
    return told(
        case,
        fine.value,
        "L",
        f"usually {spans[0]} off fine lees, {spans[1]} off gross lees",
        f"1 to 4 and 4 to 15 % of {here.said}; {_HABIT}; your own rackings come first",
        here,
    )


def _top_up(case: Case) -> list[Fact]:
    """Litres that fill a vessel: one told of, or the one that the batch is in."""
    here = volume(case)
    if case.of.get("capacity"):
        name, capacity = case.of["capacity"], _litres(case, "capacity")
    else:
        names = [case.of["vessel"]] if case.of.get("vessel") else list(case.cellar.batches[batch_of(case) or 0].vessels)
        if len(names) != 1:
            raise Missing("which vessel" if names else "the vessel that it is in (as in “… in a 5 gal carboy”)")
        known = case.cellar.vessels.get(case.cellar.vessel_key(names[0]))
        if known is None or known.capacity is None:
            raise Missing(f"what {names[0]} holds (note it: “{names[0]} holds 5 gal”)")
        name, capacity = known.name, known.capacity
    if capacity < here.value:
        over = _as_asked(case, here.value - capacity)
        return told(case, 0.0, "L", f"none: {name} is too small by {over}", here.said, here)
    litres = volumes.top_up(here.value, capacity)
    return told(
        case,
        litres,
        "L",
        f"{_as_asked(case, litres)} to the brim of {name}",
        f"{volume_said(capacity, case.settings.units)}"
        f" less {here.said}; the last centimetres of a neck are some 7 ml each",
        here,
    )


def _fits(case: Case) -> list[Fact]:
    """The free vessels, alone or together, that match a volume best."""
    here = volume(case)
    taken = {vessel_key(v) for b in case.cellar.under_way() if b.number != batch_of(case) for v in b.vessels}
    free = {
        v.name: v.capacity
        for key, v in case.cellar.vessels.items()
        if v.capacity is not None and key not in taken and vessel_key(v.name) not in taken
    }
    if not free:
        raise Missing("a free vessel whose size is noted (as in “carboy 3 holds 5 gal”)")
    found = volumes.fits(here.value, free)[:4]
    parts = []
    for fit in found:
        left = _as_asked(case, abs(fit.spare))
        parts.append(f"{join(fit.vessels)} ({left + ' to top up' if fit.spare >= 0 else left + ' would be left over'})")
    return told(
        case,
        float(len(found)),
        "",
        "; ".join(parts),
        f"{here.said}; of the free vessels whose size is noted, the closest first",
        here,
    )


def _bottles(case: Case) -> list[Fact]:
    number = batch_of(case)
    filled = case.cellar.batches[number].filled if number else 0
    if filled and not case.of.get("volume"):
        return told(case, float(filled), "bottles", f"it was bottled already: {filled} bottles", "")
    here = volume(case)
    size = _litres(case, "size") if case.of.get("size") else volumes.BOTTLE
    count, rest = volumes.bottles(here.value, size)
    corks = " and as many corks, with a few to spare" if case.of.get("corks") else ""
    over = f", {number_said(rest, 1)} L over" if rest >= 0.05 else ""
    return told(
        case,
        float(count),
        "bottles",
        f"{count} bottles of {size * 1000:.0f} ml{corks}{over}",
        f"{here.said} ÷ {size:g} L; what the lees keep is not taken off",
        here,
    )


def _gas(case: Case) -> list[Fact]:
    litres, strength = _litres(case, "volume"), value_of(case.of["alcohol"])[0]
    found = volumes.co2_litres(litres, strength)
    return told(
        case,
        found.value,
        "L",
        f"{said(found, 'L')} of carbon dioxide",
        f"{case.of['volume']} × {strength:g} % vol × 4.12 L at 20 °C, by molar masses",
        band=found,
    )


def _pressure(case: Case) -> list[Fact]:
    """Bar in a closed bottle if so much sugar ferments in it."""
    celsius = units.convert(*value_of(case.of["temperature"]), "C") if case.of.get("temperature") else _ROOM_TEMPERATURE
    if case.of.get("sugar"):
        grams, how = value_of(case.of["sugar"])[0], f"{case.of['sugar']} of sugar"
    elif case.of.get("value"):
        sg = value_of(case.of["value"])[0]
        dry = alcohol.dryness(sg, Estimate.within(DRY_WINE, 1.5)).residual_sugar
        grams, how = (
            dry.value,
            f"gravity {sg:.3f}, about {digits_said(dry.value, 0)} g/L of sugar in a wine of {DRY_WINE:g} % vol",
        )
    else:
        start, end = (value_of(case.of[n])[0] for n in ("from", "to"))
        grams, how = alcohol.sugar_fermented(abs(start - end)), f"a fall of {abs(start - end):.3f} in gravity"
    check("sugar", grams, 0, 100, "g/L")
    found = sugar.bottle_pressure(grams, celsius)
    return told(
        case,
        found.value,
        "bar",
        f"{said(found, 'bar')} at {celsius:.0f} °C, more when warm",
        f"{how}, all of it fermented "
        "with 2 % head space; what gas the wine held before comes on top; an ordinary wine bottle is made for none",
        band=found,
    )


def _swelling(case: Case) -> list[Fact]:
    litres = _litres(case, "volume")
    start, end = (units.convert(*value_of(case.of[n]), "C") for n in ("from", "to"))
    strength = value_of(case.of["alcohol"])[0] if case.of.get("alcohol") else DRY_WINE
    grown = volumes.warming_expansion(litres, strength, start, end) * 1000
    height = grown / volumes.ml_per_cm(3.0)
    return told(
        case,
        grown,
        "ml",
        f"{said(Estimate.share(abs(grown), 0.05), 'ml')} {'more' if grown > 0 else 'less'}, "
        f"{abs(height):.0f} cm in a neck of 3 cm",
        f"{case.of['volume']} of {strength:g} % vol from {start:.0f} to "
        f"{end:.0f} °C, densities of OIML R 22; glass left out",
    )


MEASURES: tuple[Measure, ...] = (
    calculation("room for foam", "room for foam of {volume}[ of {colour}][ in {capacity}]", _room),
    calculation("primary size", "how big a primary {volume}[ of {colour}] asks for", _primary),
    calculation("racking loss", "what a racking leaves behind[ of {volume}]", _racking),
    calculation("top-up needed", "how much tops up[ {volume}][ in {capacity}][ in {vessel}]", _top_up),
    calculation("vessels that fit", "which free vessels fit[ {volume}]", _fits),
    calculation("bottles needed", "how many bottles[ of {size}][ {volume} fills]", _bottles),
    calculation("gas of a wine", "carbon dioxide given off by {volume} at {alcohol}", _gas),
    calculation(
        "bottle pressure",
        "the pressure in a bottle from[ {sugar}][ {value}][ {from} to {to}][ at {temperature}]",
        _pressure,
    ),
    calculation("swelling", "how much {volume} swells from {from} to {to}", _swelling),
)
