"""Things done in the cellar: when, how often, how much. One row an act; its facts are the entries themselves."""

from collections.abc import Callable

from journalbot.journal.vessel_names import split_vessels
from journalbot.model import Entry
from journalbot.questions.measures.base import Case, Fact, Measure, fact_of
from journalbot.questions.measures.gravities import sweetenings
from journalbot.questions.measures.said import blend_said, said
from journalbot.questions.measures.vessels import keys_of
from journalbot.vocabulary.question_signs import MATERIAL_GROUPS


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
        if name == "stage" and entry.get("stage") not in wanted.split(" or "):
            return False
        if name == "person":
            people = {person.split()[-1] for person in wanted.casefold().split(" and ")}
            if not people & set(str(entry.get("to") or "").casefold().split()):
                return False
        if name == "form" and wanted not in str(entry.get("form") or ""):
            return False
        if name == "vessel":
            named = [v for f in ("to", "from", "vessel") for v in split_vessels(str(entry.get(f) or ""))]
            if not keys_of(case.cellar, wanted) & {case.cellar.vessel_key(v) for v in named}:
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
        parts = [
            p
            for p in e.get("with") or ()
            if isinstance(p, dict) and case.of.get("part", str(p.get("batch"))) == str(p.get("batch"))
        ]
        only = e.with_fields(**{"with": parts})
        amount = parts[0].get("amount") if len(parts) == 1 else None
        if parts:
            out.append(fact_of(e, amount, str(parts[0].get("unit") or ""), blend_said(only)))
    return out


def acts(*kinds: str) -> Callable[[Case], list[Fact]]:
    """The facts of an act: each of its entries that what narrows the question lets through."""

    def compute(case: Case) -> list[Fact]:
        return [
            fact_of(e, *_value(e), text=said(e), label=str(e.get("to" if e.kind == "give" else "material") or ""))
            for e in case.kind(*kinds)
            if _narrowed(e, case)
        ]

    return compute


def _sweetening(case: Case) -> list[Fact]:
    return [
        fact_of(e, *_value(e), text=said(e), label=str(e.get("material") or ""))
        for e in sweetenings(case)
        if _narrowed(e, case)
    ]


def _chaptalising(case: Case) -> list[Fact]:
    later = {e.id for e in sweetenings(case)}
    return [
        fact_of(e, *_value(e), text=said(e), label=str(e.get("material") or ""))
        for e in case.kind("addition")
        if material_fits(str(e.get("material") or ""), "sugar") and e.id not in later
    ]


# kind, phrase, past participle, signs, what may stand beside, what may narrow it
_ACTS: tuple[tuple[str, str, str, tuple[tuple[str, ...], ...], tuple[str, ...], tuple[str, ...]], ...] = (
    (
        "rack",
        "racking[ involving {vessel}]",
        "racked",
        (("rack",), ("rack", "lees"), ("rack", "where")),
        ("lees", "addition", "oak out"),
        ("vessel",),
    ),
    ("crush", "crushing", "crushed", (("crush",),), (), ()),
    ("punch_down", "punching down", "punched down", (("punch_down",),), (), ()),
    ("degas", "degassing", "degassed", (("degas",),), (), ()),
    ("filter", "filtering", "filtered", (("filter",),), (), ()),
    ("stir", "lees stirring", "stirred", (("stir",), ("stir", "lees")), ("lees",), ()),
    ("chill", "cold stabilising", "chilled", (("chill",),), ("stabilise",), ()),
    (
        "airlock",
        "seeing to the airlock",
        "seen to",
        (("airlock",),),
        ("addition", "cleaned", "drained", "bottle", "check"),
        (),
    ),
    ("move", "moving[ to {place}]", "moved", (("move",), ("move", "place")), ("where",), ("place",)),
    ("top_up", "topping up", "topped up", (("top_up",),), ("addition",), ()),
    (
        "bottle",
        "bottling[ under {closure}]",
        "bottled",
        (
            ("bottle",),
            ("when", "bottles"),
            ("what", "bottle", "where"),
            ("bottle", "closure"),
            ("closure",),
            ("closure", "addition"),
            ("closure", "is"),
        ),
        ("bottles", "made", "addition"),
        ("closure",),
    ),
    ("start", "the start", "started", (("when", "begin"), ("begin",), ("when", "started")), ("started", "made"), ()),
)

_MATERIAL_SIGNS = ("acid", "deacidify", "sulfite", "nutrients", "fining", "stabilise")

MEASURES: tuple[Measure, ...] = (
    *(
        Measure(
            kind,
            phrase,
            (kind,),
            acts(kind),
            asked,
            beside,
            narrows=narrows,
            scope="any" if kind == "airlock" else "batch",  # airlocks are seen to all at once
            done=done,
            by_entry=True,
            each=True,
        )
        for kind, phrase, done, asked, beside, narrows in _ACTS
    ),
    Measure(
        "addition",
        "additions[ of {material}]",
        ("addition",),
        acts("addition"),
        (
            ("addition",),
            ("material",),
            ("material", "addition"),
            ("material", "how much"),
            ("addition", "how much"),
            *((s, "addition") for s in _MATERIAL_SIGNS),
            *((s,) for s in _MATERIAL_SIGNS),
            ("sulfite", "sulfite"),
        ),
        ("pitch", "how much", *_MATERIAL_SIGNS),
        narrows=("material", "unit"),
        done="given",
        by_entry=True,
        each=True,
    ),
    Measure(
        "sweetened",
        "sweetening[ with {material}]",
        ("addition", "fermentation", "pitch", "reading"),
        _sweetening,
        (
            ("sweeten",),
            ("sweeten", "addition"),
            ("sweeten", "material", "addition"),
            ("sweeten", "material"),
            ("sweeten", "how much", "material"),
        ),
        ("addition", "how much"),
        narrows=("material", "unit"),
        done="sweetened",
    ),
    Measure(
        "chaptalising",
        "sugar added before or during the fermentation",
        ("addition", "fermentation", "pitch", "reading"),
        _chaptalising,
        (("sugar",), ("sugar", "addition"), ("sugar", "material")),
        ("addition", "how much"),
        done="chaptalised",
    ),
    Measure(
        "blend",
        "blending[ of batch {part}]",
        ("blend",),
        _blending,
        (("blend",), ("blend", "how much")),
        ("addition", "made of"),
        narrows=("part",),
        done="blended",
    ),
    Measure(
        "made of",
        "what went into it",
        ("start", "blend"),
        acts("start", "blend"),
        (("made of",), ("made", "made of"), ("addition", "blend")),
        ("made", "begin", "blend"),
        sort="words",
    ),
    Measure(
        "fermentation",
        "fermentation[ {stage}]",
        ("fermentation",),
        acts("fermentation"),
        (
            ("ferment", "stuck"),
            ("stuck",),
            ("restarted",),
            ("ferment", "restarted"),
            ("ferment",),
            ("ferment", "started"),
            ("when", "started", "ferment"),
        ),
        ("finished",),
        narrows=("stage",),
        done="fermenting",
    ),
    Measure(
        "stuck",
        "the fermentation sticking",
        ("fermentation",),
        acts("fermentation"),
        (),
        fixed=(("stage", "stuck"),),
        done="stuck",
    ),
    Measure(
        "end",
        "its end",
        ("end",),
        acts("end"),
        (("drained",), ("why", "drained"), ("why", "finished")),
        (),
        done="thrown away",
    ),
    Measure(
        "give",
        "bottles given away[ to {person}]",
        ("give",),
        acts("give"),
        (
            ("who", "given"),
            ("given away",),
            ("bottles", "given"),
            ("given", "person"),
            ("bottles", "given", "person"),
            ("how many", "given"),
            ("how many", "bottles", "given"),
            ("what", "given", "person"),
            ("who", "bottles", "given"),
            ("who", "drunk"),
            ("who", "had"),
            ("who", "bottles", "had"),
            ("how many", "bottles", "had", "person"),
            ("given", "anyone"),
            ("bottles", "given", "anyone"),
            ("did", "given", "anyone"),
            ("how many", "bottles", "person"),
            ("how many", "person", "given"),
        ),
        ("bottles", "bottle", "addition", "drunk"),
        narrows=("person",),
        done="given away",
        counts="sum",
        by_entry=True,
        each=True,
    ),
    Measure(
        "drink",
        "bottles drunk",
        ("drink",),
        acts("drink"),
        (("drunk",), ("bottles", "drunk"), ("how many", "drunk"), ("how many", "bottles", "drunk")),
        ("bottles", "bottle"),
        done="drunk",
        counts="sum",
        by_entry=True,
        each=True,
    ),
    Measure(
        "gone",
        "bottles drunk or given away",
        ("drink", "give"),
        acts("drink", "give"),
        (("bottles", "gone"), ("how many", "gone"), ("how many", "bottles", "gone")),
        ("bottles",),
        done="drunk or given away",
        counts="sum",
        by_entry=True,
        each=True,
    ),
)
