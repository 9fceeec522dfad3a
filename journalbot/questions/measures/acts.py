"""Things done in the cellar: when, how often, how much. One row an act; its facts are the entries themselves."""

from collections.abc import Callable

from journalbot.model import Entry
from journalbot.questions.measures.base import Case, Fact, Measure, fact_of
from journalbot.questions.says import number_said
from journalbot.vocabulary.questions import MATERIAL_GROUPS

Say = Callable[[Entry], str]


def amount_said(entry: Entry, value: str = "amount", unit: str = "unit") -> str:
    """An amount with its unit as recorded; "" where none was."""
    amount = entry.get(value)
    if not isinstance(amount, int | float):
        return ""
    about = "about " if entry.get("approx") else ""
    name = str(entry.get(unit) or "")
    plural = "s" if name in ("tablet", "packet", "bottle", "piece", "cup") and amount > 1 else ""
    return f"{about}{_spoons(amount, name)}{' ' + name + plural if name else ''}"


_FRACTIONS = {0.125: "1/8", 0.25: "1/4", 0.375: "3/8", 0.5: "1/2", 0.75: "3/4", 0.333: "1/3"}


def _spoons(amount: float, unit: str) -> str:
    """Spoons and cups as people measure them: `1/4`, `2 1/2`; anything else as a number."""
    whole, part = divmod(amount, 1)
    if unit in ("tsp", "tbsp", "cup", "packet") and round(part, 3) in _FRACTIONS:
        return f"{int(whole)} {_FRACTIONS[round(part, 3)]}" if whole else _FRACTIONS[round(part, 3)]
    return number_said(amount)


def _fields(*names: str) -> Say:
    def say(entry: Entry) -> str:
        parts = []
        for name in names:
            word, _, field = name.rpartition(" ")
            value = amount_said(entry) if field == "amount" else amount_said(entry, "volume") if field == "volume" else entry.get(field)
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


def _blend(entry: Entry) -> str:
    parts = [p for p in entry.get("with") or () if isinstance(p, dict)]
    return ", ".join(f"{number_said(p['amount'])} {p.get('unit', '')} of batch {p.get('batch')}" if p.get("amount") is not None else f"batch {p.get('batch')}" for p in parts)


def _malolactic(entry: Entry) -> str:
    return f"{entry.get('stage') or ''}{', culture ' + str(entry.get('culture')) if entry.get('culture') else ''}".strip(", ")


def addition_said(entry: Entry) -> str:
    """An addition as recorded: `1/4 tsp potassium metabisulfite`."""
    return f"{amount_said(entry)} {entry.get('material') or ''}".strip()


def oak_said(entry: Entry) -> str:
    """Oak as recorded: `2 oz medium toast French cubes`."""
    toast = f"{entry.get('toast')} toast" if entry.get("toast") else ""
    amount = amount_said(entry).replace(" pieces", "").replace(" piece", "")
    return " ".join(p for p in (amount, toast, entry.get("origin") or "", entry.get("form") or "oak") if p)


def _start(entry: Entry) -> str:
    made_from = ", ".join(map(str, entry.get("from") or ()))
    volume = amount_said(entry, "volume")
    return " ".join(p for p in (volume, f"of {made_from}" if volume and made_from else made_from, f"in {entry.get('vessel')}" if entry.get("vessel") else "") if p)


def _rack(entry: Entry) -> str:
    volume = amount_said(entry, "volume")
    return " ".join(p for p in (volume, f"from {entry.get('from')}" if entry.get("from") else "", f"to {entry.get('to')}" if entry.get("to") else "") if p)


SAID: dict[str, Say] = {
    "start": _start, "addition": addition_said, "oak": oak_said, "rack": _rack, "bottle": _bottle, "drink": _count, "give": _give, "blend": _blend,
    "malolactic": _malolactic, "move": _fields("to to"), "top_up": _fields("amount", "with with"), "punch_down": lambda e: f"{number_said(e.get('times'))} times" if e.get("times") else "",
    "fermentation": _fields("stage"), "end": _fields("reason"), "pitch": _fields("amount", "yeast"), "chill": _fields(), "plan": _fields("what", "due due"),
    "purchase": lambda e: f"{e.get('item') or ''}", "taste": lambda e: ", ".join(map(str, e.get("words") or ())), "remark": _fields("text"),
}


def said(entry: Entry) -> str:
    """What an entry holds beyond its kind, in few words; "" where that is all."""
    say = SAID.get(entry.kind)
    return say(entry) if say else ""


def material_fits(material: str, wanted: str) -> bool:
    """Whether a material is the one asked for, or of the group asked for ("acid")."""
    material = material.casefold()
    if wanted in MATERIAL_GROUPS:
        return material in MATERIAL_GROUPS[wanted] or (wanted in ("sweeten", "sugar") and "sugar" in material.split())
    return material == wanted.casefold() or wanted.casefold() in material


def _narrowed(entry: Entry, case: Case) -> bool:
    for name, wanted in case.of.items():
        if name == "material" and not material_fits(str(entry.get("material") or ""), wanted):
            return False
        if name == "stage" and entry.get("stage") != wanted:
            return False
        if name == "person" and wanted.casefold().split()[-1] not in str(entry.get("to") or "").casefold().split():
            return False
        if name == "form" and wanted not in str(entry.get("form") or ""):
            return False
        if name == "vessel":
            keys = {case.cellar.vessel_key(str(entry.get(f))) for f in ("to", "from", "vessel") if entry.get(f)}
            if case.cellar.vessel_key(wanted) not in keys:
                return False
        if name == "closure" and wanted.rstrip("s") not in str(entry.get("closure") or ""):
            return False
        if name == "place" and wanted.casefold() not in str(entry.get("to") or "").casefold():
            return False
    return True


def _value(entry: Entry) -> tuple[float | str | None, str]:
    if entry.kind in ("drink", "give", "bottle"):
        return entry.get("count"), "bottles"
    if entry.kind == "punch_down":
        return entry.get("times"), "times"
    if entry.kind in ("rack", "start"):
        return entry.get("volume"), str(entry.get("unit") or "")
    if isinstance(entry.get("amount"), int | float):
        return entry.get("amount"), str(entry.get("unit") or "")
    return said(entry) or None, ""


def _blending(case: Case) -> list[Fact]:
    """Blendings; of one batch's share only, where that is asked."""
    out = []
    for e in case.kind("blend"):
        parts = [p for p in e.get("with") or () if isinstance(p, dict) and case.of.get("part", str(p.get("batch"))) == str(p.get("batch"))]
        only = e.with_fields(**{"with": parts})
        amount = parts[0].get("amount") if len(parts) == 1 else None
        if parts:
            out.append(fact_of(e, amount, str(parts[0].get("unit") or ""), _blend(only)))
    return out


def acts(*kinds: str) -> Callable[[Case], list[Fact]]:
    """The facts of an act: each of its entries that what narrows the question lets through."""

    def compute(case: Case) -> list[Fact]:
        return [fact_of(e, *_value(e), text=said(e), label=str(e.get("material") or "")) for e in case.kind(*kinds) if _narrowed(e, case)]

    return compute


# kind, phrase, past participle, signs, what may stand beside, what may narrow it
_ACTS: tuple[tuple[str, str, str, tuple[tuple[str, ...], ...], tuple[str, ...], tuple[str, ...]], ...] = (
    ("rack", "racking[ involving {vessel}]", "racked", (("rack",), ("rack", "lees"), ("rack", "where")), ("lees", "addition", "oak out"), ("vessel",)),
    ("press", "pressing", "pressed", (("press",),), ("where",), ()),
    ("crush", "crushing", "crushed", (("crush",),), (), ()),
    ("punch_down", "punching down", "punched down", (("punch_down",),), (), ()),
    ("degas", "degassing", "degassed", (("degas",),), (), ()),
    ("filter", "filtering", "filtered", (("filter",),), (), ()),
    ("stir", "lees stirring", "stirred", (("stir",), ("stir", "lees")), ("lees",), ()),
    ("chill", "cold stabilising", "chilled", (("chill",),), ("stabilise",), ()),
    ("airlock", "seeing to the airlock", "seen to", (("airlock",),), ("addition", "cleaned", "drained", "bottle"), ()),
    ("move", "moving[ to {place}]", "moved", (("move",), ("move", "place")), ("where",), ("place",)),
    ("top_up", "topping up", "topped up", (("top_up",),), ("addition",), ()),
    ("bottle", "bottling[ under {closure}]", "bottled", (("bottle",), ("when", "bottles"), ("what", "bottle", "where"), ("bottle", "closure"), ("closure",), ("closure", "addition"), ("closure", "is")), ("bottles", "made", "addition"), ("closure",)),
    ("start", "the start", "started", (("when", "begin"), ("begin",), ("when", "started")), ("started", "made"), ()),
    ("oak_out", "taking the oak out", "taken off oak", (("oak", "oak out"), ("oak form", "oak out")), ("addition",), ()),
)

_MATERIAL_SIGNS = ("acid", "deacidify", "sulfite", "nutrients", "sweeten", "sugar", "fining", "stabilise")

MEASURES: tuple[Measure, ...] = (
    *(Measure(kind, phrase, (kind,), acts(kind), asked, beside, narrows=narrows, done=done) for kind, phrase, done, asked, beside, narrows in _ACTS),
    Measure("addition", "additions[ of {material}]", ("addition",), acts("addition"),
            (("addition",), ("material",), ("material", "addition"), ("material", "how much"), ("addition", "how much"), *((s, "addition") for s in _MATERIAL_SIGNS), *((s,) for s in _MATERIAL_SIGNS),
             ("material", "sweeten", "addition"), ("sulfite", "sulfite")),
            ("pitch", "how much", *_MATERIAL_SIGNS), narrows=("material",), done="given"),
    Measure("blend", "blending[ of batch {part}]", ("blend",), _blending, (("blend",), ("blend", "how much")), ("addition", "made of"), narrows=("part",), done="blended"),
    Measure("made of", "what went into it", ("start", "blend"), acts("start", "blend"), (("made of",), ("made", "made of"), ("addition", "blend")), ("made", "begin", "blend"), sort="words"),
    Measure("fermentation", "fermentation[ {stage}]", ("fermentation",), acts("fermentation"), (("ferment", "stuck"), ("stuck",), ("restarted",), ("ferment", "restarted"), ("ferment",), ("ferment", "started"), ("when", "started", "ferment")),
            ("finished",), narrows=("stage",), done="fermenting"),
    Measure("stuck", "the fermentation sticking", ("fermentation",), acts("fermentation"), (), fixed=(("stage", "stuck"),), done="stuck"),
    Measure("end", "its end", ("end",), acts("end"), (("drained",), ("why", "drained"), ("why", "finished")), (), done="thrown away"),
    Measure("give", "bottles given away[ to {person}]", ("give",), acts("give"),
            (("who", "given"), ("bottles", "given"), ("given", "person"), ("bottles", "given", "person"), ("how many", "given"), ("how many", "bottles", "given"), ("what", "given", "person"), ("who", "bottles", "given"), ("who", "drunk")),
            ("bottles", "bottle", "addition", "drunk"), narrows=("person",), done="given away", counts="sum"),
    Measure("drink", "bottles drunk", ("drink",), acts("drink"), (("drunk",), ("bottles", "drunk"), ("how many", "drunk"), ("how many", "bottles", "drunk")), ("bottles", "bottle"), done="drunk", counts="sum"),
)

