"""How long: from one moment of a batch to another. A row names the moments; an open end runs until today."""

from collections.abc import Callable

from journalbot.journal.fold import order_of
from journalbot.model import Entry
from journalbot.questions.measures.base import Case, Compute, Fact, Measure, days_between, notes_of
from journalbot.questions.measures.gravities import finish_of, pitch_of
from journalbot.questions.says import day_said, days_said

Moment = Callable[[Case], Entry | None]


def _first(kind: str, **fields: str) -> Moment:
    def find(case: Case) -> Entry | None:
        return next((e for e in case.kind(kind) if all(e.get(k) == v for k, v in fields.items())), None)

    return find


def _last(kind: str, **fields: str) -> Moment:
    def find(case: Case) -> Entry | None:
        return next((e for e in reversed(case.kind(kind)) if all(e.get(k) == v for k, v in fields.items())), None)

    return find


MOMENTS: dict[str, tuple[str, Moment, tuple[str, ...]]] = {  # sign -> how said, the entry, kinds it rests on
    "start": ("the start", _first("start"), ("start",)),
    "ferment": ("the first sign of fermentation", _first("fermentation", stage="started"), ("fermentation",)),
    "crush": ("crushing", _first("crush"), ("crush",)),
    "pitch": ("the pitch", pitch_of, ("pitch", "fermentation")),
    "press": ("pressing", _first("press"), ("press",)),
    "finished": ("the end of fermentation", finish_of, ("fermentation", "reading", "pitch")),
    "rack": ("racking", _last("rack"), ("rack",)),
    "first rack": ("the first racking", _first("rack"), ("rack",)),
    "malolactic": ("malolactic", _last("malolactic"), ("malolactic",)),
    "oak": ("going on oak", _first("oak"), ("oak",)),
    "oak_out": ("coming off oak", _last("oak_out"), ("oak_out",)),
    "filter": ("filtering", _last("filter"), ("filter",)),
    "bottle": ("bottling", _first("bottle"), ("bottle",)),
    "drunk": ("opening the first bottle", _first("drink"), ("drink",)),
    "top_up": ("topping up", _last("top_up"), ("top_up",)),
    "airlock": ("seeing to the airlock", _last("airlock"), ("airlock",)),
    "stir": ("stirring the lees", _last("stir"), ("stir",)),
    "taste": ("tasting", _last("taste"), ("taste",)),
    "drained": ("its end", _first("end"), ("end",)),
    "addition": ("the last addition", _last("addition"), ("addition",)),
    "punch_down": ("punching down", _last("punch_down"), ("punch_down",)),
    "degas": ("degassing", _last("degas"), ("degas",)),
    "chill": ("cold stabilising", _first("chill"), ("chill",)),
    "fining": ("fining", _last("addition"), ("addition",)),
}
MOMENT_KINDS: tuple[str, ...] = tuple(dict.fromkeys(k for _, _, kinds in MOMENTS.values() for k in kinds))


def stretch(case: Case, first: Entry, last: Entry | None, what: str, of: str) -> list[Fact]:
    """The days from one entry to another (to today where open) as a fact; none where a date is not exact enough."""
    end = last.date if last else case.today
    days = days_between(first.date, end)
    if days is None or days < 0:
        return []
    closing = f"{of} on {day_said(end)}" if last else f"today, {day_said(end)}"
    text = f"{days_said(days)}{'' if last else ' so far'}"
    return [
        Fact(
            case.number,
            first.date,
            float(days),
            "days",
            text,
            notes_of(first, last),
            f"from {what} on {day_said(first.date)} to {closing}",
            end,
            order=first.place,
        )
    ]


def _between(case: Case) -> list[Fact]:
    first, last = case.of.get("from", ""), case.of.get("to", "")
    begun = MOMENTS[first][1](case)
    if begun is None:
        return []
    if last == "today":
        return stretch(case, begun, None, MOMENTS[first][0], "")
    end = MOMENTS[last][1](case)
    if end is None:
        return []
    if order_of(end) < order_of(begun):
        begun, end, first, last = end, begun, last, first
    return stretch(case, begun, end, MOMENTS[first][0], MOMENTS[last][0])


def _fermenting(case: Case) -> list[Fact]:
    begun, over = pitch_of(case), finish_of(case)
    if begun is None:
        return []
    what = "the pitch" if begun.kind == "pitch" else "the first sign of fermentation"
    batch = case.batch
    if over is None and (batch.bottled or batch.ended):
        return []
    of = (
        ""
        if over is None
        else "the note that it was finished"
        if over.kind == "fermentation"
        else f"the first reading that shows it dry ({over.get('value'):.3f})"
    )
    return stretch(case, begun, over, what, of)


def _malolactic(case: Case) -> list[Fact]:
    begun, over = _first("malolactic", stage="started")(case), _last("malolactic", stage="finished")(case)
    return (
        stretch(case, begun, over, "the malolactic start", "the note that it was finished")
        if begun and (over or case.batch.under_way)
        else []
    )


def leaves_oak(entry: Entry, oak: Entry) -> bool:
    """Whether an entry takes a wine off this oak: a racking out of the barrel that the oak is."""
    out = entry.kind == "rack" and oak.get("form") == "barrel" and entry.get("to")
    return bool(out) and "barrel" not in str(entry.get("to")).casefold() and entry.date > oak.date


def on_oak(case: Case) -> list[Fact]:
    """Days on oak: from each time it went in to its taking out, or else to the bottling or end, or else to today."""
    form = case.of.get("form", "")
    out: list[Fact] = []
    begun: Entry | None = None
    for e in case.kind("oak"):
        if form and e.get("form") != form:
            continue
        ends = [x for x in case.entries if x.kind in ("oak_out", "bottle", "end") or leaves_oak(x, e)]
        if begun is not None and not any(order_of(begun) < order_of(x) < order_of(e) for x in ends):
            continue  # more oak while some was in: one stretch
        begun = e
        last = next((x for x in ends if order_of(x) > order_of(e)), None)
        said = (
            {
                "oak_out": "when it was taken out",
                "bottle": "the bottling",
                "end": "its end",
                "rack": "racking it out",
            }[last.kind]
            if last
            else ""
        )
        out += stretch(case, e, last, f"{e.get('form') or 'oak'} going in", said)
    return out


def _on_skins(case: Case) -> list[Fact]:
    """Days from the crushing, or else from the start or pitch, to the pressing that took the wine off its skins."""
    pressed = case.kind("press")
    begun = next(iter([*case.kind("crush"), *case.kind("start"), *case.kind("pitch")]), None)
    if begun is None or not (pressed or case.batch.under_way):
        return []
    what = {"crush": "crushing", "start": "the start", "pitch": "the pitch"}[begun.kind]
    return stretch(case, begun, pressed[0] if pressed else None, what, "pressing")


def _stuck(case: Case) -> list[Fact]:
    out = []
    stages = case.kind("fermentation")
    for k, e in enumerate(stages):
        if e.get("stage") == "stuck" and (k == 0 or stages[k - 1].get("stage") != "stuck"):
            after = next((x for x in stages[k + 1 :] if x.get("stage") in ("restarted", "finished")), None)
            out += stretch(
                case,
                e,
                after,
                "the note that it was stuck",
                f"the note that it had {after.get('stage')}" if after else "",
            )
    return out


def _on_lees(case: Case) -> list[Fact]:
    """Days from the racking that the finished wine was left after, to the next racking or the bottling."""
    over = finish_of(case)
    racks = [e for e in case.entries if e.kind in ("rack", "bottle", "end")]
    if over is None:
        return []
    rest = [e for e in racks if e.date >= over.date]
    begun = rest[0] if rest and rest[0].kind == "rack" else over
    after = [e for e in rest if order_of(e) > order_of(begun)]
    return stretch(
        case,
        begun,
        after[0] if after else None,
        "racking" if begun.kind == "rack" else "the end of fermentation",
        "the next racking" if after and after[0].kind == "rack" else "the bottling",
    )


def _in_bottle(case: Case) -> list[Fact]:
    bottled = case.kind("bottle")
    return stretch(case, bottled[-1], None, "bottling", "") if bottled else []


def _age(case: Case) -> list[Fact]:
    begun = case.kind("start")
    return stretch(case, begun[0], None, "the start", "") if begun else []


def _measure(
    name: str,
    phrase: str,
    kinds: tuple[str, ...],
    compute: Compute,
    asked: tuple[tuple[str, ...], ...],
    beside: tuple[str, ...] = (),
    narrows: tuple[str, ...] = (),
) -> Measure:
    return Measure(name, phrase, kinds, compute, asked, beside, sort="days", narrows=narrows)


MEASURES: tuple[Measure, ...] = (
    _measure(
        "fermentation time",
        "length of fermentation",
        ("pitch", "fermentation", "reading"),
        _fermenting,
        (
            ("how long", "ferment"),
            ("how long", "finished"),
            ("ferment time",),
            ("how long", "ferment", "finished"),
            ("how long", "ferment", "made"),
            ("how long", "pitch", "finished"),
            ("how long", "yeast"),
        ),
        ("made", "started", "how much", "ferment", "finished"),
    ),
    _measure(
        "time stuck",
        "time stuck",
        ("fermentation",),
        _stuck,
        (("how long", "stuck"), ("how long", "ferment", "stuck")),
        ("is", "restarted"),
    ),
    _measure(
        "malolactic time",
        "length of malolactic fermentation",
        ("malolactic",),
        _malolactic,
        (
            ("how long", "malolactic"),
            ("ferment time", "malolactic"),
            ("how long", "malolactic", "ferment"),
            ("how long", "malolactic", "finished"),
        ),
        ("made", "given"),
    ),
    _measure(
        "time on oak",
        "time on oak",
        ("oak", "oak_out", "rack", "bottle", "end"),
        on_oak,
        (("how long", "oak"), ("oak time",), ("how long", "oak form"), ("how long", "oak", "oak form")),
        ("is", "in vessel", "addition", "age", "oak toast", "oak origin", "change", "vessel"),
        ("form",),
    ),
    _measure(
        "time on skins",
        "time on the skins",
        ("crush", "start", "pitch", "press"),
        _on_skins,
        (("how long", "skins"), ("skins",)),
        ("is", "in vessel"),
    ),
    _measure(
        "time on the lees",
        "time on the lees",
        ("fermentation", "pitch", "reading", "rack", "bottle", "end"),
        _on_lees,
        (("how long", "lees"), ("lees time",)),
        ("is", "in vessel"),
    ),
    _measure(
        "time in bottle",
        "time in bottle",
        ("bottle",),
        _in_bottle,
        (("bottle age",), ("how long", "bottles"), ("how long", "bottle"), ("age", "bottles")),
        ("is", "in vessel"),
    ),
    _measure("age", "age", ("start",), _age, (("age",), ("how long", "begin"), ("how long", "age")), ("is",)),
    _measure("time between", "time from {from} to {to}", MOMENT_KINDS, _between, (), ()),
)
