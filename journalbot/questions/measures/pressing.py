"""Pressing: when, into which vessel, and how much came off the press."""

from journalbot.journal.vessel_names import split_vessels
from journalbot.questions.measures.base import Case, Fact, Measure, fact_of
from journalbot.questions.measures.gravities import readings
from journalbot.questions.measures.readings import value_said
from journalbot.questions.measures.vessels import keys_of


def _pressing(case: Case) -> list[Fact]:
    """Pressings, with the vessel that the wine ran into: a racking of the same note."""
    wanted = case.of.get("vessel")
    keys = keys_of(case.cellar, wanted) if wanted else set[str]()
    out = []
    for e in case.kind("press"):
        into = [str(r.get("to")) for r in case.kind("rack") if r.place[0] == e.place[0] and r.get("to")]
        reached = {case.cellar.vessel_key(v) for to in into for v in split_vessels(to)}
        if not keys or keys & reached:
            out.append(fact_of(e, text=f"into {', '.join(into)}" if into else ""))
    return out


def _pressed(case: Case) -> list[Fact]:
    """The volume that came off the press: racked from it or measured on that day."""
    days = {e.date for e in case.kind("press")}
    off = [e for e in case.kind("rack") if e.date in days and isinstance(e.get("volume"), int | float)]
    read = [e for e in readings(case, "volume") if e.date in days]
    return [
        fact_of(e, float(v), str(e.get("unit") or ""), value_said(float(v), str(e.get("unit") or "")))
        for e, v in [(e, e.get("volume")) for e in off] or [(e, e.get("value")) for e in read]
    ]


MEASURES: tuple[Measure, ...] = (
    Measure(
        "press",
        "pressing[ into {vessel}]",
        ("press", "rack"),
        _pressing,
        (("press",), ("press", "vessel")),
        ("where", "addition"),
        narrows=("vessel",),
        done="pressed",
        by_entry=True,
    ),
    Measure(
        "volume pressed",
        "volume off the press",
        ("press", "rack", "reading"),
        _pressed,
        (("volume", "press"), ("how much", "press"), ("volume", "press", "how much")),
        ("how much", "addition", "made", "oak out"),
        sort="reading",
        narrows=("unit",),
    ),
)
