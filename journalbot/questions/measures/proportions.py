"""Figures worked out from the numbers of a question alone: blends, room in a primary, free SO2 by pH."""

from journalbot.questions.measures.base import Case, Fact, Measure
from journalbot.questions.measures.calculations import Missing, measure_of, value_of
from journalbot.questions.says import number_said
from journalbot.winemaking import blending, sulfite, units, volumes

_MOLECULAR = {"red": 0.5, "white": 0.8}  # mg/L, the usual low and high aims; common practice, no source


def _fact(value: float, unit: str, text: str, working: str) -> list[Fact]:
    return [Fact(None, "", value, unit, text, (), working)]


def _square(case: Case) -> list[Fact]:
    """Shares of two wines that make a third figure: the Pearson square."""
    quantity = case.of["quantity"]
    first, unit = value_of(case.of["first"])
    second, target = value_of(case.of["second"])[0], value_of(case.of["to"])[0]
    one, other = blending.shares(quantity, first, second, target)
    parts = abs(target - second), abs(first - target)
    a, b, c = (f"{number_said(v)} {unit}".strip() for v in (first, second, target))
    return _fact(
        one,
        "",
        f"{number_said(one * 100, 0)} % of the wine at {a} with {number_said(other * 100, 0)} % of that at {b}",
        f"{number_said(parts[0], 3)} to {number_said(parts[1], 3)}, the distances of {b} and of {a} from {c}",
    )


def _room(case: Case) -> list[Fact]:
    """Whether a primary has room for the foam of so much must."""
    if not case.of.get("capacity"):
        raise Missing("how much the vessel holds")
    must = units.litres(*value_of(case.of["volume"]))
    capacity = units.litres(*value_of(case.of["capacity"]))
    colour = case.of.get("colour", "other")
    space = volumes.head_space(must, capacity)
    wanted = volumes.primary_capacity(must, colour)
    verdict = {"enough": "enough room", "tight": "tight", "too full": "too full"}[
        volumes.foam_room(must, capacity, colour)
    ]
    value, unit = value_of(case.of["volume"])
    low, high = (number_said(units.convert(v, "L", unit), 1) for v in (wanted.low, wanted.high))
    wanted_said = low if low == high else f"{low} to {high}"
    return _fact(
        space,
        "",
        f"{verdict}: {number_said(space * 100, 0)} % of it is head space",
        f"{number_said(value)} {unit} in {case.of['capacity']}; for that much, {wanted_said} {unit} is usual; "
        "common practice, no source",
    )


def _free_for(case: Case) -> list[Fact]:
    """Free SO2 that the usual molecular aims ask for at a pH."""
    ph, _ = value_of(case.of["ph"])
    found = {colour: sulfite.free_so2_needed(aim, ph) for colour, aim in _MOLECULAR.items()}
    said = [f"{number_said(v, 0)} mg/L for {number_said(_MOLECULAR[c])} mg/L molecular" for c, v in found.items()]
    return _fact(
        found["red"],
        "mg/L",
        f"{said[0]} (usual for reds), {said[1]} (for whites)",
        f"at pH {ph:.2f}, pK 1.81; a pH out by 0.05 moves it 12 %",
    )


MEASURES: tuple[Measure, ...] = (
    measure_of("blend shares", "the shares of {first} and {second} that make {to}", _square),
    measure_of("room for foam", "room for foam of {volume}[ of {colour}][ in {capacity}]", _room),
    measure_of("free SO2 needed", "the free SO2 that pH {ph} asks for", _free_for),
)
