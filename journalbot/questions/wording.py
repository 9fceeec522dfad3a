"""How answers are said: one line where one will do, a line each where there are several; figures with their working."""

import re
from collections.abc import Sequence
from typing import TYPE_CHECKING

from journalbot.questions.leaders import EQUALS
from journalbot.questions.measures import MEASURES, Fact
from journalbot.questions.query import Query, What, which_said
from journalbot.questions.says import day_said, join, number_said
from journalbot.questions.whom import label_of

if TYPE_CHECKING:
    from journalbot.questions.scene import Scene

_MANY = 40  # lines shown of a list; the rest is counted (`scene.SHOWN` for batches)
_STORY = 200
_PARTS = 30  # batches shown with what each has in a total


def capital(text: str) -> str:
    """The text with its first letter in upper case."""
    return text[:1].upper() + text[1:]


def label(number: int | None, scene: "Scene") -> str:
    """The batch's label; that of things of no one batch is empty."""
    batch = scene.cellar.batches.get(number) if number is not None else None
    return label_of(batch) if batch else f"batch {number}" if number is not None else ""


def fact_said(fact: Fact, part: str = "", phrase: str = "") -> str:
    """A fact in one phrase: the side asked for first, its day, and how it was worked out."""
    day = day_said(fact.date) if fact.date else ""
    if part == "time":
        said = f"{fact.time}, {day}{f' ({fact.text})' if fact.text else ''}"
    elif part == "date" and day:
        said = f"{day}{f' ({fact.text})' if fact.text else ''}"
    elif fact.unit == "due":
        said = f"{fact.text}, due {day}" if day else fact.text
    elif fact.until and fact.unit == "days":
        said = f"{fact.text}"
    else:
        said = ", ".join(p for p in (fact.text or phrase, day) if p)
    return f"{said} ({fact.working})" if fact.working else said


def heading(what: What, number: int | None, scene: "Scene") -> str:
    """The batch and what is told of it, as a line above a drawing."""
    return f"{capital(label(number, scene)) or 'The journal'}, {_title(what)}:"


def by_period(what: What, facts: Sequence[Fact]) -> str:
    """A line for each year or month."""
    if len(facts) == 1:
        return f"{capital(_title(what))}: {facts[0].label}, {facts[0].text}."
    return "\n".join([f"{capital(_title(what))}:", *(f"  {f.label}: {f.text}" for f in facts)])


def _done(what: What) -> str:
    measure = MEASURES[what.measure]
    return measure.done or measure.phrase.partition("[")[0]


def each(query: Query, what: What, real: dict[int | None, list[Fact]], scene: "Scene", missing: Sequence[int]) -> str:
    """The facts of each batch."""
    measure = MEASURES[what.measure]
    if measure.sort == "story":
        return _stories(query, real, scene)
    lines = []
    lead = "Yes. " if what.part == "done" else ""
    phrase = _done(what)
    for number, facts in real.items():
        who = label(number, scene)
        said = [fact_said(f, what.part, phrase) for f in facts]
        if measure.sort in ("reading",) and len(facts) > 2 and not query.within:
            said = [fact_said(f, what.part, phrase) for f in facts]
        if len(said) > 3 or (any(len(s) > 90 for s in said) and len(said) > 1):
            lines.append(
                f"{capital(who) or 'The journal'}, {_title(what)}:\n"
                + "\n".join(f"  {s}" for s in said[:_MANY])
                + (f"\n  and {len(said) - _MANY} more" if len(said) > _MANY else "")
            )
        elif len(real) == 1 or len(query.whats) > 1:
            lines.append(f"{capital(who) or 'The journal'}, {_title(what)}: {'; '.join(said)}.")
        else:
            lines.append(f"{capital(who) or 'Other'}: {'; '.join(said)}.")
    lines += [f"{capital(label(n, scene))}: {_title(what)} not recorded." for n in missing]
    head = f"{capital(_title(what))}:\n" if len(lines) > 1 and len(query.whats) == 1 else ""
    shown = lines[:_MANY] + ([f"and {len(lines) - _MANY} more batches"] if len(lines) > _MANY else [])
    return lead + head + "\n".join(shown)


def ranked(what: What, real: dict[int | None, list[Fact]], scene: "Scene") -> str:
    """A line a batch, the one with the most first."""
    lines = [
        f"  {k}. {label(number, scene) or 'of no one batch'}: {fact_said(facts[-1])}"
        for k, (number, facts) in enumerate(list(real.items())[:_MANY], 1)
    ]
    more = [f"  and {len(real) - _MANY} more"] if len(real) > _MANY else []
    return "\n".join([f"{capital(_title(what))}, the most first:", *lines, *more])


def _title(what: What) -> str:
    from journalbot.questions.absence import named

    measure = MEASURES[what.measure]
    if what.measure == "plans":
        return "planned"
    if measure.sort == "act" and measure.done and not what.of and what.measure not in ("yeast",):
        return measure.done
    return named(what)


def _stories(query: Query, real: dict[int | None, list[Fact]], scene: "Scene") -> str:
    out = []
    named = len(real) == 1 and next(iter(real)) is not None
    by_day: dict[str, list[str]] = {}
    if named:
        ((number, facts),) = real.items()
        for f in facts:
            by_day.setdefault(f.date, []).append(f.text)
        out.append(f"{capital(label(number, scene))}:")
    else:
        for number, facts in real.items():
            for f in facts:
                by_day.setdefault(f.date, []).append(f"{_short(number, scene)}{f.text}")
    days = sorted(by_day)
    out += [f"  {day_said(d)}: {'; '.join(by_day[d])}" for d in days[:_STORY]]
    if len(days) > _STORY:
        out.append(f"  and {len(days) - _STORY} more days")
    return "\n".join(out)


def _short(number: int | None, scene: "Scene") -> str:
    return f"{label(number, scene)} " if number is not None else ""


def pooled(
    query: Query,
    what: What,
    result: Sequence[Fact],
    pool: Sequence[Fact],
    scene: "Scene",
    numbers: Sequence[int] | None,
) -> str:
    """One answer over several batches or facts: the highest, the total …"""
    over = query.over
    if over in ("mean", "sum", "range", "count", "distinct"):
        whose = (
            f" over {join([label(n, scene) for n in numbers])}"
            if numbers and 1 < len(numbers) <= 6
            else f", {label(numbers[0], scene)}"
            if numbers and len(numbers) == 1
            else ""
        )
        name = {"mean": "average ", "sum": "", "range": "range of ", "count": "", "distinct": "different "}[over]
        days = {f.date for f in pool}
        day = (
            f", {day_said(pool[0].date)}" if len(days) == 1 and len(pool) < 6 and pool[0].date and over == "sum" else ""
        )
        several = 1 < len({f.batch for f in pool}) == len(pool) <= _PARTS
        said = [f"{f.text}{f' ({f.working})' if f.working and not several else ''}" for f in result]
        return f"{capital(name + _title(what))}{whose}: {join(said)}{day}." + _by_batch(pool, scene)
    lines = []
    shown = _once(result)
    for f in shown[:EQUALS]:
        who = label(f.batch, scene)
        lines.append(
            f"{capital(who)}: {fact_said(f, what.part, _done(what))}."
            if who
            else f"{capital(fact_said(f, what.part, _done(what)))}."
        )
    if len(shown) > EQUALS:
        lines.append("and more that come to the same")
    others = _others(query, result, pool, scene, numbers)
    return _verdict(query, result) + "\n".join(lines) + others


def _verdict(query: Query, result: Sequence[Fact]) -> str:
    """Yes or no, where the first of two batches was said to be the one."""
    if not query.claim:
        return ""
    owners = {f.batch for f in result}
    return "They are equal. " if len(owners) > 1 else "Yes. " if owners == {query.batches.numbers[0]} else "No. "


def _once(facts: Sequence[Fact]) -> list[Fact]:
    """The facts with each batch once for the same figure: a wine that was twice as hot as any is the hottest once."""
    return list({(f.batch, f.value): f for f in reversed(facts)}.values())[::-1]


def _by_batch(pool: Sequence[Fact], scene: "Scene") -> str:
    """What each batch has in a total, where there are a few."""
    if not 1 < len({f.batch for f in pool}) == len(pool) <= _PARTS:
        return ""
    return "".join(
        f"\n  {label(f.batch, scene) or 'of no one batch'}: {f.text}{f' ({f.working})' if f.working else ''}"
        for f in sorted(pool, key=lambda f: f.batch or 0)
    )


def _others(
    query: Query, result: Sequence[Fact], pool: Sequence[Fact], scene: "Scene", numbers: Sequence[int] | None
) -> str:
    """Where named batches were compared: the others, for comparison."""
    if not numbers or query.batches.described or query.over not in ("most", "least"):
        return ""
    shown = {f.batch for f in result}
    rest = [f for f in pool if f.batch not in shown]
    best: dict[int | None, Fact] = {}
    for f in rest:
        best.setdefault(f.batch, f)
    return "".join(f"\n{capital(label(f.batch, scene))}: {fact_said(f)}." for f in best.values())


def side_by_side(
    query: Query, what: What, real: dict[int | None, list[Fact]], scene: "Scene", numbers: Sequence[int]
) -> str:
    """The facts of several batches, a line each, and the difference of two figures."""
    lines = [f"{capital(_title(what))}:"]
    for n in numbers:
        facts = real.get(n, [])
        lines.append(
            f"  {label(n, scene)}: {'; '.join(fact_said(f, what.part) for f in facts) if facts else 'not recorded'}"
        )
    values = [
        real[n][0] for n in numbers if n in real and len(real[n]) == 1 and isinstance(real[n][0].value, int | float)
    ]
    if len(numbers) == 2 and len(values) == 2 and values[0].unit == values[1].unit:
        gap = abs(float(values[0].value or 0) - float(values[1].value or 0))
        decimals = 3 if values[0].unit == "SG" else 2
        unit = values[0].unit
        shown = "" if unit in ("SG", "pH") or unit.startswith("/") else {"C": "°C", "F": "°F"}.get(unit, unit)
        lines.append(f"  difference: {number_said(gap, decimals)} {shown}".rstrip())
    return "\n".join(lines)


def of_cellar(query: Query, what: What, facts: Sequence[Fact], scene: "Scene") -> str:
    """What is said of vessels, searches and the like."""
    if what.measure in ("contents", "free vessels", "vessels in use"):
        return _vessels(what, facts, scene)
    if MEASURES[what.measure].sort == "calculation":
        return "\n".join(f"{capital(f.text)}{f' ({f.working})' if f.working else ''}".rstrip(".") + "." for f in facts)
    if MEASURES[what.measure].sort == "advice":
        return _advice(facts, scene)
    lines = []
    for f in facts[:_MANY]:
        who = label(f.batch, scene) or f.label
        lines.append(f"{capital(who)}{', ' if who else ''}{day_said(f.date) + ': ' if f.date else ''}{f.text}")
    if len(facts) > _MANY:
        lines.append(f"and {len(facts) - _MANY} more")
    return "\n".join(lines)


_ISO = re.compile(r"\b\d{4}-\d{2}(?:-\d{2})?\b")


def _advice(facts: Sequence[Fact], scene: "Scene") -> str:
    """What practice says, a line each, with the readings it rests on; days as people say them."""
    lines = []
    for f in facts[:_MANY]:
        head = capital(label(f.batch, scene) or "cellar")
        said = f"{f.text.rstrip('.')}{f' ({f.working})' if f.working else ''}"
        lines.append(_ISO.sub(lambda m: day_said(m.group()), f"{head}: {said}."))
    more = [f"and {len(facts) - _MANY} more"] if len(facts) > _MANY else []
    return "\n".join(lines + more)


def _vessels(what: What, facts: Sequence[Fact], scene: "Scene") -> str:
    single = what.get("vessel")
    if single and what.measure == "free vessels" and len(facts) == 1:
        if facts[0].value == "empty":
            return f"Yes: {facts[0].label} is empty."
        return (
            f"No: {join([f'{label(f.batch, scene)} has been in {f.label} since {day_said(f.date)}' for f in facts])}."
        )
    if single and len({f.label for f in facts}) == 1:
        if facts[0].value == "empty":
            return f"Nothing: {facts[0].label} is {facts[0].text}."
        said = [f"{label(f.batch, scene)}, since {day_said(f.date)}{f.text.removeprefix('in it')}" for f in facts]
        return f"{capital(facts[0].label)}: {join(said)}."
    if what.measure == "free vessels":
        return f"Empty: {join(sorted((_vessel(f.label) for f in facts if f.value == 'empty'), key=str.lower))}."
    held = {f: f"{label(f.batch, scene)}, since {day_said(f.date)}" if f.batch is not None else "empty" for f in facts}
    return "\n".join(f"{capital(f.label)}: {said}" for f, said in held.items())


def _vessel(name: str) -> str:
    """A vessel within a sentence: `carboy 5`, also where a note began with it; `DJ 5` as it is."""
    return name[:1].lower() + name[1:] if name[1:2].islower() else name


def batch_list(query: Query, numbers: Sequence[int], shown: dict[int, list[Fact]], scene: "Scene") -> str:
    """The batches that meet the conditions, each with what shows it."""
    lines = []
    for n in numbers[:_MANY]:
        said = "; ".join(fact_said(f) for f in shown.get(n, [])[:6])
        lines.append(f"{capital(label(n, scene))}{': ' + said if said else ''}")
    if len(numbers) > _MANY:
        lines.append(f"and {len(numbers) - _MANY} more")
    if query.over == "count":
        lines.insert(0, f"{len(numbers)} batch{'' if len(numbers) == 1 else 'es'}:")
    return "\n".join(lines)


def no_batches(query: Query) -> str:
    """That none meets the conditions, and which these are."""
    return f"None: there are no batches that {which_said(query.batches) or 'fit that'}."


def notes_said(numbers: Sequence[int], scene: "Scene") -> str:
    """Notes as typed, with number and day."""
    notes = [n for n in map(scene.source.note, numbers[:_MANY]) if n]
    more = f"\nand {len(numbers) - _MANY} more" if len(numbers) > _MANY else ""
    return "\n".join(f"Note {n.number}, {day_said(n.on)}: {n.text}" for n in notes) + more
