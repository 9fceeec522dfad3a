"""One entry in a few words, as it is read back: `racked to carboy 2`, `gravity 0.996`, `pitched 5 g K-17`."""

from collections.abc import Callable, Iterable

from journalbot.model import Batch, Entry
from journalbot.screen import listed, one_line
from journalbot.vocabulary.quantities import QUANTITIES

_MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
_SIGNS = {"F": " °F", "C": " °C", "SG": "", "pH": "", "Brix": "", "% vol": " % vol", "%": " %"}
_COUNTED = ("tablet", "packet", "bottle", "piece", "pinch", "cup")
_REMARK = 70  # characters of a remark that are read back
_MOST = 20  # entries of one batch and date that are


def number(value: object, least: int = 0) -> str:
    """A figure without needless zeros, but with at least `least` decimals."""
    if not isinstance(value, int | float) or isinstance(value, bool):
        return one_line(str(value), 20)
    text = f"{value:.4f}".rstrip("0")
    whole, _, decimals = text.partition(".")
    decimals = decimals.ljust(least, "0")
    return f"{whole}.{decimals}" if decimals else whole


def day(iso: str, on: str = "") -> str:
    """A date as people say it: `4 Oct 2025`, `Oct 2025`, `2025`; the year is left out where it is that of `on`."""
    year, month, date = (*iso.split("-"), "", "")[:3]
    if not month:
        return year
    said = f"{int(date)} {_MONTHS[int(month) - 1]}" if date else _MONTHS[int(month) - 1]
    return said if date and year == on[:4] else f"{said} {year}"


def label(batch: Batch) -> str:
    """What a batch is called beside its number: its name, else what it was made from, else its colour; may be empty."""
    return one_line(batch.name or listed(batch.fruit[:2]) or batch.colour or "", 30)


def amount(value: object, unit: object, approx: object = None) -> str:
    """`5 g`, `about 6 gal`, `2 packets`, `0.25 tsp`."""
    if value is None:
        return ""
    figure = number(value)
    said = str(unit or "")
    if said in _COUNTED and figure != "1":
        said += "es" if said == "pinch" else "s"
    sign = _SIGNS.get(said, f" {said}" if said else "")
    return f"{'about ' if approx else ''}{figure}{one_line(sign, 12) if not sign.startswith(' ') else sign}"


def phrase(entry: Entry) -> str:
    """The entry in a few words, without its batch and date."""
    act = _PHRASES.get(entry.kind)
    said = act(entry) if act else f"{entry.kind.replace('_', ' ')}{_rest(entry)}"
    return f"{said} at {entry.time}" if entry.time else said


def _join(*parts: str) -> str:
    return " ".join(p for p in parts if p)


def _amount(entry: Entry, value: str = "amount", unit: str = "unit") -> str:
    return amount(entry.get(value), entry.get(unit), entry.get("approx"))


def _text(entry: Entry, name: str, before: str = "") -> str:
    value = entry.get(name)
    if value in (None, "", []):
        return ""
    said = listed(map(str, value)) if isinstance(value, list | tuple) else str(value)
    return _join(before, one_line(said))


def _rest(entry: Entry) -> str:
    """Fields that no phrase of ours knows (an entry given in a file may hold any)."""
    said = ", ".join(f"{k} {one_line(str(v), 30)}" for k, v in entry.fields.items())
    return f" ({said})" if said else ""


def _start(e: Entry) -> str:
    called = _text(e, "name")
    kind = listed(str(e.get(name)) for name in ("colour", "vintage") if e.get(name))
    what = _join(
        _amount(e, "volume"), _amount(e, "weight", "weight_unit"), _text(e, "from", "of" if e.get("volume") else "from")
    )
    return _join(
        "started",
        called and f"“{called}”",
        f"({kind})" if kind else "",
        what and (what if what[:4] == "from" else f"with {what}"),
        _text(e, "vessel", "in"),
    )


def _reading(e: Entry) -> str:
    quantity, unit = str(e.get("quantity")), str(e.get("unit") or "")
    about = "about " if e.get("approx") else ""
    figure = number(e.get("value"), 3 if quantity == "sg" else 0)
    sign = _SIGNS.get(unit, f" {unit}")
    row = QUANTITIES.get(quantity)
    where = _text(e, "vessel", "in")
    if quantity == "temperature":
        return _join(f"{about}{figure}{sign}", where)
    return _join(row.label if row else one_line(quantity, 30), f"{about}{figure}{sign}", where)


def _of(e: Entry, material: str, verb: str) -> str:
    dose, what = _amount(e), _text(e, material)
    if e.get("unit") and what.endswith(f" {e.get('unit')}"):  # 2 campden tablets, not "2 tablets campden tablet"
        dose, what = amount(e.get("amount"), None, e.get("approx")), what + ("" if e.get("amount") == 1 else "s")
    return _join(verb, dose, what, _text(e, "vessel", "to"))


def _oak(e: Entry) -> str:
    return _join(
        "oak:", _amount(e), _text(e, "toast"), (e.get("toast") and "toast") or "", _text(e, "origin"), _text(e, "form")
    )


def _blend(e: Entry) -> str:
    parts = e.get("with")
    said = (
        [
            _join(amount(p.get("amount"), p.get("unit")), (p.get("amount") and "of") or "", f"batch {p.get('batch')}")
            for p in parts
            if isinstance(p, dict)
        ]
        if isinstance(parts, list | tuple)
        else []
    )
    return _join("blended with", listed(said))


def _bottles(e: Entry, verb: str) -> str:
    count = e.get("count")
    bottles = f"{number(count)} bottle{'' if count == 1 else 's'}" if count is not None else ""
    size = _amount(e, "size")
    return _join(verb, bottles, size and f"of {size}", _text(e, "closure", "under"), _text(e, "to", "to"))


def _taste(e: Entry) -> str:
    words = e.get("words")
    said = ", ".join(map(str, words)) if isinstance(words, list | tuple) else str(words or "")
    score = number(e.get("score")) if e.get("score") is not None else ""
    if score and e.get("out_of") is not None:
        score += f"/{number(e.get('out_of'))}"
    return _join("tasted:", ", ".join(p for p in (one_line(said, 120), score) if p)) if said or score else "tasted"


def _purchase(e: Entry) -> str:
    unit = e.get("unit")
    price = e.get("price")
    cost = (
        _join("for", number(price, 0 if isinstance(price, int) else 2), _text(e, "currency"))
        if price is not None
        else ""
    )
    return _join("bought", amount(e.get("count"), None if unit == "piece" else unit), _text(e, "item"), cost)


def _plan(e: Entry) -> str:
    due = e.get("due")
    return _join(
        "to do:", _text(e, "what"), f"({'by ' if len(str(due)) == 10 else 'in '}{day(str(due))})" if due else ""
    )


def _rack(e: Entry) -> str:
    return _join("racked", _amount(e, "volume"), _text(e, "from", "from"), _text(e, "to", "to"))


def _fixed(said: str) -> Callable[[Entry], str]:
    return lambda e: _join(said, _rest(e).strip())


def _staged(said: str, *known: str) -> Callable[[Entry], str]:
    return lambda e: _join(said, _text(e, "stage"), *(_text(e, name, "with") for name in known))


_PHRASES: dict[str, Callable[[Entry], str]] = {
    "start": _start,
    "reading": _reading,
    "pitch": lambda e: _of(e, "yeast", "pitched"),
    "addition": lambda e: _of(e, "material", "added"),
    "fermentation": _staged("fermentation"),
    "crush": _fixed("crushed"),
    "press": _fixed("pressed"),
    "degas": _fixed("degassed"),
    "filter": _fixed("filtered"),
    "stir": _fixed("lees stirred"),
    "chill": _fixed("cold stabilising"),
    "airlock": _fixed("airlock seen to"),
    "punch_down": lambda e: _join(
        "cap worked", (e.get("times") is not None and f"{number(e.get('times'))}× a day") or ""
    ),
    "rack": _rack,
    "move": lambda e: _join("moved", _text(e, "to", "to")),
    "top_up": lambda e: _join("topped up", _text(e, "with", "with"), _amount(e) and f"({_amount(e)})"),
    "oak": _oak,
    "oak_out": _fixed("oak taken out"),
    "malolactic": _staged("malolactic", "culture"),
    "blend": _blend,
    "bottle": lambda e: _bottles(e, "bottled"),
    "taste": _taste,
    "drink": lambda e: _bottles(e, "drunk:"),
    "give": lambda e: _bottles(e, "given away:"),
    "purchase": _purchase,
    "vessel": lambda e: _join(_text(e, "name"), _amount(e, "capacity") and f"holds {_amount(e, 'capacity')}"),
    "plan": _plan,
    "end": lambda e: _join("ended", (e.get("reason") and f"({_text(e, 'reason')})") or ""),
    "remark": lambda e: f"remark “{one_line(str(e.get('text', '')), _REMARK)}”",
}


def phrases(entries: Iterable[Entry]) -> str:
    """Several entries of one batch and date."""
    said = list(map(phrase, entries))
    more = [f"and {len(said) - _MOST} more"] if len(said) > _MOST else []
    return "; ".join([*said[:_MOST], *more])
