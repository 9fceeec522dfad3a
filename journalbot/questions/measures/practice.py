"""What practice has to say of a batch as it stands: what is due, what looks wrong, whether to bottle, acid, sulfite."""

from collections.abc import Callable, Iterator
from datetime import date, timedelta
from typing import TYPE_CHECKING

from journalbot.model import Entry
from journalbot.questions.measures.base import Case, Fact, Measure
from journalbot.questions.measures.vessels import volume_said
from journalbot.questions.says import day_said, join, number_said

if TYPE_CHECKING:
    from journalbot.winemaking.plans import Due
    from journalbot.winemaking.record import Record

_LATEST = 20  # batches under way that are looked at where none is named, the latest spoken of first


def _records(case: Case, *, in_bottle: bool = False) -> "Iterator[Record]":
    """The batches asked for as records; where none is named, those under way."""
    from journalbot.winemaking.record import record_of

    cellar = case.cellar
    some = [b for b in cellar.batches.values() if b.bottles] if in_bottle else cellar.under_way()
    numbers = [int(n) for n in case.of.get("batches", "").split()] or [
        b.number for b in sorted(some, key=lambda b: -b.last_id)[:_LATEST]
    ]
    capacities = {v.name: v.capacity for v in cellar.vessels.values() if v.capacity is not None}
    for n in sorted(numbers):
        if n in cellar.batches:
            entries = case.source.entries(batch=n)
            yield record_of(cellar.batches[n], entries, date.fromisoformat(case.today), capacities)


def _due(case: Case) -> list[Fact]:
    """What is due by the usual intervals and by plans, the overdue first, each with its reason."""
    from journalbot.winemaking.care import care, plans_due

    named = bool(case.of.get("batches"))
    of_cellar = [] if named else case.source.entries(batch=None, kinds=["plan", "purchase"])
    found = plans_due(of_cellar, date.fromisoformat(case.today))
    for record in _records(case):
        found += care(record, case.settings.intervals)
    return [
        Fact(d.batch, d.since, "overdue" if d.overdue else "due", "", _due_said(d.what, d.reason, d.overdue), d.notes)
        for d in sorted(found, key=lambda d: (not d.overdue, d.key != "plan", d.since))
        if d.overdue or not case.of.get("late")
    ]


def _due_said(what: str, reason: str, overdue: bool) -> str:
    return f"{what}{' (overdue)' if overdue else ''}: {reason}"


def _worries(case: Case) -> list[Fact]:
    """What looks wrong by the notes, each with what shows it and what to do first."""
    from journalbot.winemaking.worries import worries

    return [
        Fact(w.batch, "", w.what, "", f"{w.what}: {w.reason}. {w.first_step}", w.notes)
        for record in _records(case)
        for w in worries(record)
    ]


def _to_bottle(case: Case) -> list[Fact]:
    """Whether anything on record speaks against bottling."""
    from journalbot.winemaking.bottling import bottling_risk
    from journalbot.winemaking.cautions import sentence

    out = []
    for record in _records(case):
        batch = record.batch
        risk = bottling_risk(record)
        notes: tuple[int, ...] = ()
        last = record.gravities[-1] if record.gravities else None
        read = f"last gravity {last.get('value'):.3f} on {day_said(last.date)}" if last else "no gravity read"
        if batch.bottled and not batch.under_way:
            text = f"it was bottled already, on {day_said(batch.bottled)}"
        elif risk:
            text, notes = f"not as it stands: {risk.reason}. {sentence('bottle pressure', record)}", risk.notes
        else:
            text = f"nothing on record speaks against it ({read}); read it again over a few weeks, and taste it first"
            notes = (last.note,) if last else ()
        out.append(Fact(batch.number, "", "no" if risk else "yes", "", text, notes))
    return out


def _last(record: "Record", quantity: str) -> Entry | None:
    return next(reversed(record.readings(quantity)), None)


def _read_said(record: "Record", entry: Entry) -> str:
    """A reading with its day, and a warning where something has been put in since."""
    from journalbot.questions.measures.readings import value_said

    since = [e for e in record.kind("addition") if (e.date, e.place) > (entry.date, entry.place)]
    doubt = f", before the {since[-1].get('material')} of {day_said(since[-1].date)}" if since else ""
    return f"{value_said(float(entry.get('value')), str(entry.get('unit') or ''))} on {day_said(entry.date)}{doubt}"


def _acid(case: Case) -> list[Fact]:
    """Whether acid is called for, by the last TA and pH and the harvest ranges of the style."""
    from journalbot.winemaking.acid import acid_advice, ta_from_percent

    out = []
    for record in _records(case):
        ta, ph = _last(record, "ta"), _last(record, "ph")
        style = record.colour or ""
        value = float(ta.get("value")) if ta else None
        if ta and ta.get("unit") == "%":
            value = ta_from_percent(float(ta.get("value")))
        try:
            advice = acid_advice(style, value, float(ph.get("value")) if ph else None)
        except ValueError as error:
            out.append(Fact(record.batch.number, "", None, "", f"I cannot say: {error}.", bare=True))
            continue
        said = [f"{name} {_read_said(record, e)}" for name, e in (("TA", ta), ("pH", ph)) if e]
        missing = [name for name, e in (("TA", ta), ("pH", ph)) if not e]
        aims = (
            f"{style} must is usually at TA {number_said(advice.ta_range[0])} to {number_said(advice.ta_range[1])} g/L "
            f"and pH {number_said(advice.ph_range[0])} to {number_said(advice.ph_range[1])}"
        )
        text = _ACID_SAID[advice.action] + (f" (no {join(missing, 'or')} is recorded)" if missing else "")
        working = "; ".join([*said, f"{aims} at harvest; taste decides"])
        out.append(
            Fact(record.batch.number, "", advice.action, "", text, tuple(e.note for e in (ta, ph) if e), working)
        )
    return out


_ACID_SAID = {
    "add": "yes: its TA is low and its pH high",
    "consider adding": "perhaps: one of TA and pH is off the usual range, the other within it",
    "leave": "no: leave it as it is",
    "consider lowering": "no; rather consider lowering it",
    "lower": "no: it has more acid than is usual",
    "unclear": "TA and pH pull opposite ways: acid would mend one and worsen the other",
    "measure": "measure first: both TA and pH are needed",
}


def _sulfite(case: Case) -> list[Fact]:
    """How much sulfite brings the free SO2 to what the last pH and the colour ask for, by the batch's volume."""
    from journalbot.questions.measures.sulfites import needed

    return [fact for record in _records(case) for fact in needed(case, record.batch.number)]


def _coming(case: Case) -> list[Fact]:
    """When an act is due, by plans and else by the usual days; and for a bottling what speaks against it."""
    from journalbot.winemaking.bottling import bottling_risk
    from journalbot.winemaking.care import ahead

    act, out = case.of["act"].replace(" ", "_"), []
    for record in _records(case, in_bottle=act == "drink"):
        found = ahead(record, act, case.settings.intervals)
        risk = bottling_risk(record) if act == "bottle" else None
        for due in found[:2]:
            against = f"; but {risk.reason}" if risk else ""
            text = f"{due.what}: {_when_said(due, record.today)}{against}"
            notes = (*due.notes, *(risk.notes if risk else ()))
            out.append(Fact(record.batch.number, due.since, due.what, "", text, tuple(dict.fromkeys(notes))))
        if not found and case.of.get("batches"):
            text = f"nothing planned, and nothing on record to count the days from, for {_ACT_SAID.get(act, act)}"
            out.append(Fact(record.batch.number, "", None, "", text, (), bare=True))
    if not out:
        text = f"nothing to time {_ACT_SAID.get(act, act)} by: no wine of the kind is at that stage"
        out.append(Fact(None, "", None, "", text, bare=True))
    return out


_ACT_SAID = {
    "rack": "racking",
    "top_up": "topping up",
    "oak_out": "taking the oak out",
    "punch_down": "punching down",
    "bottle": "bottling",
    "taste": "tasting",
    "drink": "drinking",
    "press": "pressing",
    "sulfite": "a sulfite check",
}


def _when_said(due: "Due", today: date) -> str:
    """When a Due falls: its span of days, and whether that has come."""
    from journalbot.vocabulary.care import INTERVALS
    from journalbot.winemaking.record import last_day

    if due.usual is None:
        return f"{due.reason}{', overdue' if due.overdue else ''}"
    since = last_day(due.since)
    first, last = since + timedelta(due.usual[0]), since + timedelta(due.usual[1])
    days = (today - since).days
    state = "not yet" if today < first else "overdue" if today > last else "due now"
    span = (
        day_said(first.isoformat())
        if first == last
        else f"{day_said(first.isoformat())} to {day_said(last.isoformat())}"
    )
    clock = INTERVALS[due.key].clock
    usual = str(due.usual[0]) if due.usual[0] == due.usual[1] else f"{due.usual[0]} to {due.usual[1]}"
    return f"{state}: {span} ({days} days since {clock}; {usual} is {'yours' if due.own else 'usual'})"


_LOOKED_AT = {"stuck": ("sg",), "sluggish": ("sg",), "too warm": ("temperature",), "too cold": ("temperature",)}


def _one_worry(case: Case) -> list[Fact]:
    """Whether one thing looks wrong with a batch, and if nothing shows it, the readings looked at."""
    from journalbot.winemaking.worries import worries

    wanted = case.of["worry"]
    alike = {"stuck": ("stuck", "sluggish", "no start"), "head space": ("head space",)}.get(wanted, (wanted,))
    out = []
    for record in _records(case):
        found = [w for w in worries(record) if w.what in alike]
        for w in found:
            out.append(Fact(w.batch, "", w.what, "", f"{w.what}: {w.reason}. {w.first_step}", w.notes))
        if not found:
            read = [e for q in _LOOKED_AT.get(wanted, ()) for e in record.readings(q)[-2:]]
            seen = join([f"{_read_said(record, e)}" for e in read]) or "no reading of it is recorded"
            text = f"nothing noted shows that: {seen}"
            out.append(Fact(record.batch.number, "", None, "", text, tuple(e.note for e in read), bare=not read))
    return out


def _gas(case: Case) -> list[Fact]:
    """The carbon dioxide that a batch has given off, by its volume and the alcohol made so far."""
    from journalbot.questions.measures.strength import alcohol
    from journalbot.winemaking.volumes import co2_litres

    volume = case.batch.volume
    strength = [f for f in alcohol(case) if isinstance(f.value, int | float)]
    if not volume or not strength:
        return []
    found = co2_litres(volume, float(strength[-1].value or 0))
    litres = f"about {number_said(round(found.value, -1), 0)} L ({number_said(round(found.low, -1), 0)} to "
    working = f"{volume_said(volume, case.settings.units)} and {strength[-1].text} of alcohol; {strength[-1].working}"
    text = f"{litres}{number_said(round(found.high, -1), 0)} L) of carbon dioxide"
    return [Fact(case.number, strength[-1].date, found.value, "L", text, strength[-1].notes, working)]


def _measure(
    name: str,
    phrase: str,
    compute: Callable[[Case], list[Fact]],
    asked: tuple[tuple[str, ...], ...],
    beside: tuple[str, ...] = (),
    fixed: tuple[tuple[str, str], ...] = (),
) -> Measure:
    return Measure(name, phrase, (), compute, asked, beside, sort="advice", scope="none", fixed=fixed)


MEASURES: tuple[Measure, ...] = (
    _measure(
        "due",
        "what is due",
        _due,
        (("due",), ("advise", "doing"), ("advise", "doing", "plan")),
        ("doing", "is", "left", "plan", "what", "last"),
    ),
    _measure(
        "overdue",
        "what is overdue",
        _due,
        (("overdue",), ("due", "overdue")),
        ("doing", "is", "what", "due"),
        (("late", "yes"),),
    ),
    _measure("worries", "what looks wrong", _worries, (("wrong",),), ("doing", "is", "did", "last")),
    _measure(
        "bottling check",
        "whether anything speaks against bottling",
        _to_bottle,
        (("advise", "bottle"), ("advise", "bottles")),
        ("is", "plan", "last"),
    ),
    _measure(
        "acid advice",
        "whether acid is called for",
        _acid,
        (("advise", "acid"), ("advise", "addition", "acid"), ("advise", "deacidify"), ("advise", "an acid")),
        ("addition", "plan"),
    ),
    _measure(
        "sulfite needed",
        "how much sulfite is called for",
        _sulfite,
        (
            ("advise", "sulfite"),
            ("advise", "how much", "sulfite"),
            ("advise", "a sulfite"),
            ("advise", "addition", "a sulfite"),
        ),
        ("addition", "plan", "how much", "sulfite", "a sulfite", "material", "quantity:free_so2"),
    ),
    _measure("when due", "when {act} is due", _coming, ()),
    _measure("one worry", "whether it looks {worry}", _one_worry, ()),
    Measure(
        "gas",
        "carbon dioxide given off",
        ("reading", "pitch", "fermentation", "addition"),
        _gas,
        (("gas",), ("gas", "made"), ("gas", "given")),
        ("how much", "made", "given", "addition", "ferment"),
        sort="figure",
    ),
)
