"""Blends worked out: the Pearson square, several lots, and batches of the journal by their own readings."""


from journalbot.questions.measures.base import Case, Fact, Measure
from journalbot.questions.measures.vessels import volume_said
from journalbot.questions.measures.working import (
    Given,
    Missing,
    calculation,
    digits_said,
    of_batch,
    reading,
    said,
    told,
    value_of,
)
from journalbot.questions.says import join, number_said
from journalbot.winemaking import acid, blending, units
from journalbot.winemaking.blending import Lot
from journalbot.winemaking.ranges import Estimate

_UNITS = {
    "alcohol": "% vol",
    "ta": "g/L",
    "ph": "",
    "sg": "SG",
    "brix": "Brix",
    "free_so2": "mg/L",
    "yan": "mg/L",
    "malic": "g/L",
    "residual_sugar": "g/L",
    "total_so2": "mg/L",
}
_DECIMALS = {"sg": 3, "alcohol": 1, "ph": 2, "ta": 1, "brix": 1}


def _value(quantity: str, said_: str) -> float:
    value, unit = value_of(said_)
    return acid.ta_from_percent(value) if quantity == "ta" and unit == "%" else value


def _told_value(quantity: str, value: float) -> str:
    decimals = _DECIMALS.get(quantity, 0)
    text = f"{value:.3f}" if quantity == "sg" else digits_said(value, decimals)
    return f"{text} {_UNITS.get(quantity, '') if quantity != 'sg' else ''}".strip()


def _square(case: Case) -> list[Fact]:
    """Shares of two wines that make a third figure: the Pearson square."""
    quantity = case.of["quantity"]
    first, second, target = (_value(quantity, case.of[name]) for name in ("first", "second", "to"))
    one, other = blending.shares(quantity, first, second, target)
    parts = abs(target - second), abs(first - target)
    a, b, c = (_told_value(quantity, v) for v in (first, second, target))
    return told(
        case,
        one,
        "",
        f"{one:.0%} of the wine at {a} with {other:.0%} of that at {b}",
        f"{number_said(parts[0], 3)} to {number_said(parts[1], 3)}, the distances of {b} and of {a} from {c}",
    )


def _lots(case: Case) -> list[Fact]:
    """The figure of several lots put together."""
    quantity = case.of["quantity"]
    lots, steps = [], []
    for one in case.of["lots"].split("; "):
        size, value = one.split(" @ ")
        lots.append(Lot(units.litres(*value_of(size)), _value(quantity, value)))
        steps.append(f"{size} at {_told_value(quantity, lots[-1].value)}")
    out = blending.blend(quantity, lots)
    unit = value_of(case.of["lots"].split(" @ ")[0])[1]
    total = number_said(units.convert(sum(lot.litres for lot in lots), "L", unit), 1)
    return told(
        case,
        out,
        _UNITS.get(quantity, ""),
        f"{_told_value(quantity, out)} in {total} {unit}",
        f"{join(steps)}, each counted by its volume",
    )


def _to_add(case: Case) -> list[Fact]:
    """How much of another wine brings a volume of one to a figure."""
    quantity = case.of["quantity"]
    lot, other, target = (_value(quantity, case.of[name]) for name in ("lot", "other", "to"))
    value, unit = value_of(case.of["volume"])
    litres = blending.litres_to_add(quantity, Lot(units.litres(value, unit), lot), other, target)
    added = f"{number_said(units.convert(litres, 'L', unit), 1)} {unit}"
    have, with_, want = (_told_value(quantity, v) for v in (lot, other, target))
    text = f"{added} of the wine at {with_}"
    return told(case, litres, "L", text, f"to bring {case.of['volume']} at {have} to {want}: the Pearson square")


def _lot(case: Case, number: str, quantity: str, size: str) -> tuple[Lot, Given, str]:
    """A batch as a lot: its litres, its last figure of the quantity, and how it is told."""
    own = case._replace(of={"batch": number})
    batch = case.cellar.batches[int(number)]
    if size:
        litres = units.litres(*value_of(size))
    elif batch.volume:
        litres = batch.volume
    else:
        raise Missing(f"how much there is of batch {number}")
    if quantity == "alcohol":
        from journalbot.questions.measures.strength import GRAVITY_KINDS, alcohol

        facts = alcohol(of_batch(own, GRAVITY_KINDS))
        if not facts:
            raise Missing(f"the alcohol of batch {number}, or its original and final gravity")
        value = Given(float(facts[-1].value or 0), f"{float(facts[-1].value or 0):.1f} % vol", facts[-1].notes)
    else:
        value = reading(own, quantity)
    told_size = size or volume_said(litres, case.settings.units)
    return Lot(litres, value.value), value, f"{told_size} of batch {number} at {value.said}"


def _batches(case: Case) -> list[Fact]:
    """What two batches of the journal come to, put together whole or by the volumes told."""
    quantity = case.of["quantity"]
    if quantity in blending.NOT_LINEAR:
        raise blending.NotLinear(blending.NOT_LINEAR[quantity])
    halves = case.of.get("half") and not case.of.get("litres")
    sizes = ("1 L", "1 L") if halves else (case.of.get("litres", ""), case.of.get("other litres", ""))
    parts = [_lot(case, case.of[name], quantity, size) for name, size in zip(("first", "second"), sizes, strict=True)]
    out = blending.blend(quantity, [lot for lot, _, _ in parts])
    found = Estimate.within(out, 0.5) if quantity == "alcohol" else None
    text = said(found, "% vol") if found else _told_value(quantity, out)
    steps = [s.replace("1 L of", "half of") if halves else s for _, _, s in parts]
    return told(
        case,
        out,
        _UNITS.get(quantity, ""),
        text,
        f"{join(steps)}, each counted by its volume",
        *(given for _, given, _ in parts),
        band=found,
    )


def _to_reach(case: Case) -> list[Fact]:
    """How much of the first batch brings the whole of the second to a figure."""
    quantity = case.of["quantity"]
    target = _value(quantity, case.of["to"])
    if quantity in blending.NOT_LINEAR:
        raise blending.NotLinear(blending.NOT_LINEAR[quantity])
    added, added_value, added_said = _lot(case, case.of["first"], quantity, case.of.get("litres", ""))
    kept, kept_value, kept_said = _lot(case, case.of["second"], quantity, case.of.get("other litres", ""))
    litres = blending.litres_to_add(quantity, kept, added.value, target)
    short = (
        f", more than the {volume_said(added.litres, case.settings.units)} there is" if litres > added.litres else ""
    )
    return told(
        case,
        litres,
        "L",
        f"{volume_said(litres, case.settings.units)} of batch {case.of['first']}{short}",
        f"to bring {kept_said} to {_told_value(quantity, target)} with {added_said}: the Pearson square",
        added_value,
        kept_value,
    )


MEASURES: tuple[Measure, ...] = (
    calculation("blend shares", "the shares of {first} and {second} that make {to}", _square),
    calculation("blend to add", "how much at {other} brings {volume} at {lot} to {to}", _to_add),
    calculation("blend of lots", "the {quantity} of a blend of {lots}", _lots),
    calculation("blend of batches", "the {quantity} of batches {first} and {second} blended", _batches),
    calculation("blend to reach", "how much of batch {first} brings batch {second} to {to}", _to_reach),
)
