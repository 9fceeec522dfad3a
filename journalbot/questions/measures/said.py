"""What an entry holds, in few words; amounts as recorded."""

from collections.abc import Callable

from journalbot.model import Entry
from journalbot.questions.says import day_said, number_said

Say = Callable[[Entry], str]


def amount_said(entry: Entry, value: str = "amount", unit: str = "unit") -> str:
    """An amount with its unit as recorded; "" where none was."""
    amount = entry.get(value)
    if not isinstance(amount, int | float):
        return ""
    about = "about " if entry.get("approx") else ""
    name = str(entry.get(unit) or "")
    plural = "s" if name in ("tablet", "packet", "bottle", "piece", "cup") and amount > 1 else ""
    return f"{about}{number_said(amount)}{' ' + name + plural if name else ''}"


def _fields(*names: str) -> Say:
    def say(entry: Entry) -> str:
        parts = []
        for name in names:
            word, _, field = name.rpartition(" ")
            value = (
                amount_said(entry)
                if field == "amount"
                else amount_said(entry, "volume")
                if field == "volume"
                else entry.get(field)
            )
            if value not in (None, "", []):
                parts.append(f"{word} {value}".strip())
        return " ".join(parts)

    return say


def _bottle(entry: Entry) -> str:
    count, size = entry.get("count"), entry.get("size")
    said = f"{number_said(count)} bottle{'' if count == 1 else 's'}" if count else ""
    said += f"{' of ' if said else ''}{number_said(size)} {entry.get('unit')}" if size else ""
    return said + (f", {entry.get('closure')}" if entry.get("closure") else "")


def _count(entry: Entry) -> str:
    count = entry.get("count")
    return f"{number_said(count)} bottle{'' if count == 1 else 's'}" if isinstance(count, int | float) else ""


def _give(entry: Entry) -> str:
    return f"{_count(entry) or 'some'} to {entry.get('to')}" if entry.get("to") else _count(entry)


def blend_said(entry: Entry) -> str:
    """What was blended in, and how much of each."""
    parts = [p for p in entry.get("with") or () if isinstance(p, dict)]
    return ", ".join(
        f"{number_said(p['amount'])} {p.get('unit', '')} of batch {p.get('batch')}"
        if p.get("amount") is not None
        else f"batch {p.get('batch')}"
        for p in parts
    )


def _malolactic(entry: Entry) -> str:
    return (
        f"{entry.get('stage') or ''}{', culture ' + str(entry.get('culture')) if entry.get('culture') else ''}".strip(
            ", "
        )
    )


def addition_said(entry: Entry) -> str:
    """An addition as recorded: `0.25 tsp potassium metabisulfite`, `3 campden tablets`."""
    material, unit, amount = str(entry.get("material") or ""), entry.get("unit"), entry.get("amount")
    if unit and material.endswith(f" {unit}") and isinstance(amount, int | float):
        return f"{'about ' if entry.get('approx') else ''}{pieces_said(amount, material)}"
    return f"{amount_said(entry)} {entry.get('material') or ''}".strip()


def pieces_said(amount: float, name: str) -> str:
    """So many pieces of something called by its piece: `1 campden tablet`, `3 campden tablets`."""
    return f"{number_said(amount)} {name}{'' if amount == 1 else 's'}"


def oak_said(entry: Entry) -> str:
    """Oak as recorded: `2 oz medium toast French cubes`."""
    toast = f"{entry.get('toast')} toast" if entry.get("toast") else ""
    amount = amount_said(entry).replace(" pieces", "").replace(" piece", "")
    return " ".join(p for p in (amount, toast, entry.get("origin") or "", entry.get("form") or "oak") if p)


def _start(entry: Entry) -> str:
    made_from = ", ".join(map(str, entry.get("from") or ()))
    volume = amount_said(entry, "volume")
    return " ".join(
        p
        for p in (
            volume,
            f"of {made_from}" if volume and made_from else made_from,
            f"in {entry.get('vessel')}" if entry.get("vessel") else "",
        )
        if p
    )


def _rack(entry: Entry) -> str:
    volume = amount_said(entry, "volume")
    return " ".join(
        p
        for p in (
            volume,
            f"from {entry.get('from')}" if entry.get("from") else "",
            f"to {entry.get('to')}" if entry.get("to") else "",
        )
        if p
    )


SAID: dict[str, Say] = {
    "start": _start,
    "addition": addition_said,
    "oak": oak_said,
    "rack": _rack,
    "bottle": _bottle,
    "drink": _count,
    "give": _give,
    "blend": blend_said,
    "malolactic": _malolactic,
    "move": _fields("to to"),
    "top_up": _fields("amount", "with with"),
    "punch_down": lambda e: f"{number_said(e.get('times'))} times" if e.get("times") else "",
    "fermentation": _fields("stage"),
    "end": _fields("reason"),
    "pitch": _fields("amount", "yeast"),
    "chill": _fields(),
    "plan": lambda e: f"{e.get('what') or ''}{', due ' + day_said(str(e.get('due'))) if e.get('due') else ''}",
    "purchase": lambda e: f"{e.get('item') or ''}",
    "taste": lambda e: ", ".join(map(str, e.get("words") or ())),
    "remark": _fields("text"),
}


def said(entry: Entry) -> str:
    """What an entry holds beyond its kind, in few words; "" where that is all."""
    say = SAID.get(entry.kind)
    return say(entry) if say else ""
