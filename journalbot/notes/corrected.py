"""The fields that a correction gives anew: each entry as it stands once a figure, strain, vessel or person is right."""

from collections.abc import Iterable, Sequence, Set

from journalbot.language.amounts import Amount, Bottles
from journalbot.language.lexicon import Mention
from journalbot.language.numerals import Number
from journalbot.model import Entry
from journalbot.vocabulary.quantities import QUANTITIES
from journalbot.vocabulary.units import UNITS

_FIGURES = ("value", "amount", "count", "volume", "score", "price", "times")


def number_of(m: Mention) -> float | None:
    """The figure that a mention gives; None where it gives none."""
    value = m.value
    if isinstance(value, Number | Amount):
        return float(value.value)
    if isinstance(value, Bottles):
        return float(value.count)
    number = getattr(value, "value", None) or getattr(value, "score", None)
    return float(number) if isinstance(number, int | float) else None


def figures(e: Entry) -> set[float]:
    """Every figure that an entry holds."""
    parts = [p.get("amount") for p in e.get("with") or ()] if e.kind == "blend" else []
    return {float(f) for f in (*(e.get(name) for name in _FIGURES), *parts) if isinstance(f, int | float)}


def fixed(e: Entry, new: Iterable[Mention], old: Set[float], found: Sequence[Entry]) -> Entry | None:
    """The entry with what these mentions give; None where they give nothing for it. `old` are figures that do not hold:
    where one of the entries found has such a figure, the others stay as they are.
    """
    if old and not old & figures(e) and any(old & figures(o) for o in found):
        return None
    for m in new:
        given = _fields(e, m, found, old)
        if given and (changed := e.with_fields(**given)) != e:
            return changed
    return None


def _fields(e: Entry, m: Mention, found: Sequence[Entry], old: Set[float]) -> dict[str, object] | None:
    value = m.value
    if m.kind == "reading":
        return {"value": value.value, "unit": value.unit} if e.get("quantity") == value.quantity else None
    if m.kind == "code":
        name = {"pitch": "yeast", "malolactic": "culture"}.get(e.kind)
        return {name: value} if name else None
    if m.kind == "vessel":
        return {"to": value.name} if e.kind == "rack" else None
    if m.kind == "person":
        return {"to": value} if e.kind == "give" else None
    if m.kind == "score":
        return {"score": value.score, "out_of": value.out_of} if e.kind == "taste" else None
    if m.kind == "money":
        return {"price": value.value, "currency": value.unit} if e.kind == "purchase" else None
    if m.kind == "bottles":
        return {"count": value.count, "size": value.size, "unit": value.unit} if e.kind == "bottle" else None
    if m.kind == "times":
        return {"times": int(value.value)} if e.kind == "punch_down" else None
    if m.kind == "temperature":
        return {"value": value.value, "unit": value.unit} if e.get("quantity") == "temperature" else None
    if m.kind == "amount":
        return _part_fields(e, value, old) if e.kind == "blend" else _amount_fields(e, value)
    if m.kind == "number" and value.style in ("figure", "words", "decimal", "fraction"):
        spelt = value.style == "words" and e.kind == "reading"  # nobody reads "one" off an instrument
        return None if spelt else _figure(e, float(value.value), found)
    return None


def _amount_fields(e: Entry, amount: Amount) -> dict[str, object] | None:
    base = amount.unit.partition("/")[0]
    if base == "bottle" and e.get("count") is not None:
        return {"count": amount.value}
    held = (name for name in ("amount", "volume") if e.get(name) is not None)
    usual = {"purchase": "count", "reading": "value"}.get(e.kind, "")
    name = next(held, usual)
    if not name or base not in UNITS:
        return None
    known = UNITS.get(str(e.get("unit")).partition("/")[0])
    return {name: amount.value, "unit": amount.unit} if known and known.dimension == UNITS[base].dimension else None


def _part_fields(e: Entry, amount: Amount, old: Set[float]) -> dict[str, object] | None:
    """A blending with the amount of its one part, or of that whose amount does not hold."""
    parts = list(e.get("with") or ())
    meant = [p for p in parts if len(parts) == 1 or p.get("amount") in old]
    if len(meant) != 1:
        return None
    return {"with": [{**p, "amount": amount.value, "unit": amount.unit} if p is meant[0] else p for p in parts]}


def _figure(e: Entry, figure: float, found: Sequence[Entry]) -> dict[str, object] | None:
    """A bare figure, where only one entry can take it."""
    number: float | int = int(figure) if figure.is_integer() else figure
    holders = [o for o in found if any(isinstance(o.get(name), int | float) for name in _FIGURES)]
    if e not in holders or (len({o.kind for o in holders}) > 1 and e.get("count") is None):
        return None
    name = next((n for n in ("count", "amount", "times", "score", "value", "price") if e.get(n) is not None), "")
    return {name: number} if name and (name != "value" or _possible(e, figure)) else None


def _possible(e: Entry, figure: float) -> bool:
    """Whether a reading can be of this figure, in the unit that it has."""
    known = QUANTITIES.get(str(e.get("quantity")))
    return known is None or e.get("unit") != known.unit or known.low <= figure <= known.high
