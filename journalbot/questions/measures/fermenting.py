"""Yeast, malolactic culture, oak: what was used, and whether a fermentation is over."""

from journalbot.model import Entry
from journalbot.questions.measures.base import Case, Compute, Fact, Measure, fact_of
from journalbot.questions.measures.durations import leaves_oak
from journalbot.questions.measures.gravities import finish_of, readings
from journalbot.questions.measures.readings import reading_fact
from journalbot.questions.measures.said import amount_said, oak_said


def _named(kind: str, field: str) -> Compute:
    """What an act used, by name; an act that names nothing is a bare fact."""

    def compute(case: Case) -> list[Fact]:
        wanted = case.of.get(field, "").casefold()
        out = []
        for e in case.kind(kind):
            name = str(e.get(field) or "")
            if wanted and name.casefold() != wanted:
                continue
            amount = amount_said(e)
            out.append(
                fact_of(
                    e,
                    name or None,
                    text=f"{name}{f', {amount}' if amount else ''}" if name else "not named",
                    bare=not name,
                )
            )
        return [f for f in out if not f.bare] or out

    return compute


def _culture(case: Case) -> list[Fact]:
    # The stage "finished" names no culture, and need not.
    return [
        f
        for f in _named("malolactic", "culture")(case)
        if not f.bare or any(e.get("stage") == "started" for e in case.kind("malolactic"))
    ]


def _malolactic(case: Case) -> list[Fact]:
    stage = case.of.get("stage", "")
    return [
        fact_of(e, str(e.get("stage") or "noted"), text=f"malolactic {e.get('stage') or 'noted'}")
        for e in case.kind("malolactic")
        if not stage or e.get("stage") == stage
    ]


def _finished(case: Case) -> list[Fact]:
    over = finish_of(case)
    if over is None:
        return []
    same = [r for r in readings(case, "sg") if r.note == over.note]
    said = "finished" if over.kind == "fermentation" else "dry by the reading"
    return [fact_of(over, "finished", text=f"{said}{f', gravity {reading_fact(same[-1]).text}' if same else ''}")]


def _oak(case: Case) -> list[Fact]:
    def fits(e: Entry) -> bool:
        wanted = {k: v for k, v in case.of.items() if k in ("form", "toast", "origin")}
        return all(v.casefold() == str(e.get(k) or "").casefold() for k, v in wanted.items())

    return [
        fact_of(e, float(amount), str(e.get("unit") or ""), oak_said(e), label="oak")
        if isinstance(amount := e.get("amount"), int | float)
        else fact_of(e, str(e.get("form") or "oak"), text=oak_said(e))
        for e in case.kind("oak")
        if fits(e)
    ]


def _off_oak(case: Case) -> list[Fact]:
    """When the oak came out, or the wine out of the barrel."""
    out = [fact_of(e) for e in case.kind("oak_out")]
    for oak in case.kind("oak"):
        left = next((e for e in case.kind("rack") if leaves_oak(e, oak)), None)
        out += [fact_of(left, text=f"racked out of the barrel to {left.get('to')}")] if left else []
    return sorted(out, key=lambda f: (f.date, f.order))


MEASURES: tuple[Measure, ...] = (
    Measure(
        "yeast",
        "the yeast[ {yeast}]",
        ("pitch",),
        _named("pitch", "yeast"),
        (
            ("yeast",),
            ("yeast", "addition"),
            ("pitch",),
            ("code",),
            ("code", "addition"),
            ("where", "code"),
            ("where", "code", "addition"),
            ("yeast", "ferment"),
            ("yeast", "pitch"),
        ),
        ("addition", "pitch", "ferment", "given", "made", "how much", "restarted"),
        narrows=("yeast",),
        done="pitched",
        by_entry=True,
    ),
    Measure(
        "culture",
        "the malolactic culture",
        ("malolactic",),
        _culture,
        (
            ("culture",),
            ("culture", "malolactic"),
            ("culture code",),
            ("culture code", "addition"),
            ("where", "culture code"),
            ("culture", "culture code"),
            ("yeast", "malolactic"),
            ("what", "malolactic", "addition"),
        ),
        ("addition", "given"),
        narrows=("culture",),
        sort="words",
    ),
    Measure(
        "malolactic",
        "malolactic fermentation[ {stage}]",
        ("malolactic",),
        _malolactic,
        (("malolactic",), ("malolactic", "finished"), ("malolactic", "started"), ("malolactic", "ferment")),
        ("ferment", "addition", "made"),
        narrows=("stage",),
        done="through malolactic",
        by_entry=True,
    ),
    Measure(
        "finished",
        "the end of fermentation",
        ("fermentation", "pitch", "reading"),
        _finished,
        (("ferment", "finished"), ("when", "finished"), ("finished",), ("is", "finished")),
        ("made",),
        done="fermented out",
    ),
    Measure(
        "oak",
        "oak[ {form}]",
        ("oak",),
        _oak,
        (
            ("oak",),
            ("oak form",),
            ("oak", "oak form"),
            ("oak", "addition"),
            ("oak form", "addition"),
            ("oak origin",),
            ("oak origin", "addition"),
            ("oak origin", "oak form"),
            ("toast",),
            ("toast", "oak"),
        ),
        ("addition", "oak toast", "oak origin", "given", "how much", "toast"),
        narrows=("form", "toast", "origin"),
        done="oaked",
        by_entry=True,
        each=True,
    ),
    Measure(
        "oak_out",
        "taking the oak out",
        ("oak_out", "oak", "rack"),
        _off_oak,
        (("oak", "oak out"), ("oak form", "oak out")),
        ("addition",),
        done="taken off oak",
        by_entry=True,
    ),
)
