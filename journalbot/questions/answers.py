"""A Query run over the journal: facts, an honest absence, or the question of which batch is meant."""

from typing import NamedTuple

from journalbot.model import Answer, Ask
from journalbot.questions import wording
from journalbot.questions.absence import named, told_apart
from journalbot.questions.leaders import leading
from journalbot.questions.measures import MEASURES, Fact
from journalbot.questions.measures.places import GONE
from journalbot.questions.periods import by_period, extreme
from journalbot.questions.plot import plot
from journalbot.questions.query import Batches, Condition, Query, What, describe
from journalbot.questions.reduce import best_known, in_the_unit, notes_of, number_of, reduce_facts, weighed
from journalbot.questions.says import day_said, join
from journalbot.questions.scene import Incomparable, Scene, day_meant
from journalbot.questions.tallies import tallied
from journalbot.questions.whom import label_of

_BESIDE = frozenset(("plans", "made of"))  # told beside another measure, where there is any
_POOLED = frozenset(("most", "least", "mean", "sum", "range", "count", "first", "last", "distinct"))


class Found(NamedTuple):
    """The text of an answer with the notes that it rests on."""

    text: str
    notes: tuple[int, ...] = ()
    found: bool = True
    ask: Ask | None = None
    query: Query | None = None  # as narrowed to the batch that was meant


def answer(question: str, query: Query, scene: Scene, *, one: bool = False, said: str = "") -> Answer:
    """Run a Query. `one`: a single batch was meant, and several fit what was `said`."""
    try:
        result = run(query, scene, one=one, said=said)
        if not result.found and (goods := _as_goods(query, said)):
            bought = run(goods, scene)
            result = bought if bought.found else result
        elif query.whats[:1] == (What("cost"),) and (goods := _as_goods(query, said)):
            bought = run(goods, scene)
            if bought.found:
                notes = tuple(dict.fromkeys((*bought.notes, *result.notes)))
                result = result._replace(text=f"{bought.text}\n{result.text}", notes=notes)
    except Incomparable as error:
        condition: Condition = error.args[0]
        thing, limit = condition.what.measure, f"{condition.value:g} {condition.unit}".strip()
        result = Found(f"What the journal has for {thing} cannot be compared with {limit}.", (), found=False)
    if query.show == "notes" and result.ask is None:
        result = result._replace(
            text=wording.notes_said(result.notes, scene) or f"That rests on no single note. {result.text}"
        )
    return Answer(question, describe(result.query or query), result.found, result.text, result.notes, result.ask)


def _as_goods(query: Query, said: str) -> Query | None:
    """The Query of what was bought under the name of a wine: `what did I pay for the tempranillo kit`."""
    asked = {w.measure for w in query.whats}
    if not said or not asked or asked - {"money", "bought", "cost"} or any(w.get("item") for w in query.whats):
        return None
    named = " ".join(w for w in said.lower().split() if w not in ("the", "my", "our"))
    if any(c.isdigit() for c in named):
        return None
    of = {"cost": "money"}
    whats = tuple(w._replace(measure=of.get(w.measure, w.measure), of=(*w.of, ("item", named))) for w in query.whats)
    return query._replace(whats=whats, batches=Batches())


def run(query: Query, scene: Scene, *, one: bool = False, said: str = "") -> Found:
    """The answer to a Query."""
    asked = query.when
    query = query._replace(when=scene.span_of(asked, query.batches.numbers))
    if not query.whats:
        return _batches(query, scene)
    if all(MEASURES[w.measure].scope == "none" for w in query.whats):
        return _of_the_cellar(query, scene)
    acts = all(MEASURES[w.measure].sort == "act" for w in query.whats)
    if query.batches.vessel and acts:
        numbers: list[int] | None = sorted(scene.held_in(query.batches.vessel))
    else:
        numbers, _ = scene.batches(query.batches, query.when)
    if numbers == [] and query.batches.vessel:
        return Found(f"No wine is recorded in {query.batches.vessel}.", (), found=False)
    if numbers == [] and query.batches.described:
        return Found("No batch in the journal fits that.", (), found=False)
    if one and acts and query.within == "last" and not query.skip:
        query, one = query._replace(over="last"), False  # "when did I last rack the zin": whichever it was
    if one and numbers is not None and len(numbers) > 1 and query.over != "compare":
        chosen = _choose(query, scene, numbers, said)
        if isinstance(chosen, Found):
            return chosen
        numbers = chosen
        query = query._replace(
            batches=query.batches._replace(
                numbers=tuple(numbers), labels=tuple(label_of(scene.cellar.batches[n]) for n in numbers)
            ),
        )
    answers = [_one_measure(query, what, scene, numbers) for what in query.whats]
    if len(answers) == 1:
        return answers[0]._replace(query=query._replace(when=asked))
    if query.over == "compare" or query.whats[0].measure in _BESIDE:  # what neither has is no difference
        answers = [a for a in answers if a.found] or answers
    texts = [a.text for a in answers]
    notes = tuple(dict.fromkeys(n for a in answers for n in a.notes))
    return Found("\n".join(texts), notes, any(a.found for a in answers), query=query._replace(when=asked))


def _choose(query: Query, scene: Scene, numbers: list[int], said: str) -> list[int] | Found:
    """Of several batches: the one that alone has anything to say, all where they say the same, or a question."""
    texts: dict[int, tuple[str, ...]] = {}
    for n in numbers:
        facts = [f for w in query.whats for f in _reduced(query, w, scene, [n]).get(n, [])]
        if any(not f.bare and f.value != GONE for f in facts):
            texts[n] = tuple(f.text for f in facts)
    having = sorted(texts)
    asked_done = all(w.part == "done" for w in query.whats)
    if len(having) == 1 and not asked_done:
        return having
    if not having or (asked_done and len(having) == len(numbers)):
        return numbers
    if (
        len(having) == len(numbers)
        and len(set(texts.values())) == 1
        and any(query.whats[0].part == p for p in ("",))
        and MEASURES[query.whats[0].measure].sort == "words"
    ):
        return numbers
    having = having if not asked_done else numbers
    choices = tuple(label_of(scene.cellar.batches[n]) for n in having)
    return Found(f"Which {said or 'batch'}: {join(choices, 'or')}?", (), found=False, ask=Ask("batch", choices, said))


def _reduced(query: Query, what: What, scene: Scene, numbers: list[int] | None) -> dict[int | None, list[Fact]]:
    measure = MEASURES[what.measure]
    facts = scene.facts(what, numbers, query.when)
    if query.batches.vessel and measure.sort == "act":
        facts = scene.while_in(query.batches.vessel, facts)
    if unit := what.get("unit"):
        facts = {n: in_the_unit(found, unit) for n, found in facts.items()}
    if query.batches.every and query.over in ("most", "least") and not query.by and len(facts) > 1:
        facts.pop(None, None)  # what is of no one batch is not one of those compared
    ranked = what.measure == "addition" and query.over in ("most", "least") and query.within == "sum"
    if ranked and len({f.unit for found in facts.values() for f in found}) > 1:
        facts = {n: found for n, every in facts.items() if (found := weighed(every))}
    if measure.sort == "figure" and (query.over in _POOLED or query.within in ("mean", "sum", "most", "least")):
        facts = {n: best_known(found) for n, found in facts.items()}
    return {
        n: reduce_facts(found, query.within, measure, scene.settings, query.skip)
        if n is not None or query.within != "count"
        else found
        for n, found in facts.items()
    }


def _one_measure(query: Query, what: What, scene: Scene, numbers: list[int] | None) -> Found:
    measure = MEASURES[what.measure]
    if total := tallied(query, what, measure, scene, numbers):
        return Found(wording.pooled(query, what, [total], [], scene, None), total.notes)
    foremost = leading(
        query,
        what,
        measure,
        scene.source,
        scene.cellar,
        lambda some: _reduced(query, what, scene, some),
    )
    every = foremost if foremost is not None else _reduced(query, what, scene, numbers)
    by_batch = {n: facts for n, facts in every.items() if facts}
    real = {n: [f for f in facts if not f.bare] for n, facts in by_batch.items()}
    real = {n: facts for n, facts in real.items() if facts}
    if real and what.part == "time":
        timed = {n: clocked for n, facts in real.items() if (clocked := [f for f in facts if f.time])}
        if not timed:
            days = join([day_said(f.date) for facts in real.values() for f in facts][:3])
            text = f"No time of day is recorded for {named(what)}: {days}."
            return Found(text, notes_of(next(iter(real.values()))), found=False)
        real = timed
    if not real:
        return _absent(query, what, scene, numbers, [f for facts in by_batch.values() for f in facts])
    if query.by:
        pool = [f for facts in real.values() for f in facts]
        periods = by_period(pool, query.by, measure, scene.settings)
        if not periods:
            return _absent(query, what, scene, numbers, [])
        shown = extreme(periods, query.over) if query.over else periods
        return Found(wording.by_period(what, shown), notes_of(shown))
    if query.show == "plot" and len(real) == 1 and (drawn := plot(next(iter(real.values())))):
        ((number, facts),) = real.items()
        return Found(f"{wording.heading(what, number, scene)}\n{drawn}", notes_of(facts))
    if query.over in _POOLED and not (
        query.over in ("first", "last") and numbers and (len(numbers) == 1 or query.batches.every)
    ):
        pool = [f for facts in real.values() for f in facts]
        skip = query.skip if query.over in ("first", "last") else 0
        method = "sum" if query.over == "count" else query.over
        result = reduce_facts(pool, method, measure, scene.settings, skip)
        if not result:  # nothing that can be brought together: then each as it is
            return Found(wording.each(query, what, real, scene, ()), notes_of(pool))
        text = wording.pooled(query, what, result, pool, scene, numbers)
        return Found(text, notes_of(result))
    if query.over == "compare" or (len(real) > 1 and query.within == "change" and numbers is not None):
        return Found(
            wording.side_by_side(query, what, real, scene, numbers or sorted(n for n in real if n is not None)),
            notes_of([f for facts in real.values() for f in facts]),
        )
    if query.over == "rank":
        best_first = sorted(real.items(), key=lambda item: -(number_of(item[1][-1]) or 0.0))
        return Found(wording.ranked(what, dict(best_first), scene), notes_of([f for fs in real.values() for f in fs]))
    missing = [n for n in (numbers or []) if n not in real] if numbers and len(numbers) <= 6 else []
    text = wording.each(query, what, real, scene, missing)
    return Found(text, notes_of([f for facts in real.values() for f in facts]))


def _absent(query: Query, what: What, scene: Scene, numbers: list[int] | None, bare: list[Fact]) -> Found:
    """Nothing to tell: never recorded, noted as not done, or in a note that waits to be understood."""
    absence = told_apart(query, what, scene, numbers, bare)
    yes_no = what.part in ("done", "times") or (MEASURES[what.measure].scope == "any" and what.part == "done")
    return Found(absence.text, absence.notes, found=absence.denied or (yes_no and not absence.waiting))


def _of_the_cellar(query: Query, scene: Scene) -> Found:
    what, numbers = query.whats[0], query.batches.numbers
    sort = MEASURES[what.measure].sort
    if sort == "calculation" and len(numbers) > 1:
        choices = tuple(label_of(scene.cellar.batches[n]) for n in numbers)
        return Found(f"Which batch: {join(choices, 'or')}?", (), found=False, ask=Ask("batch", choices))
    if numbers and sort in ("advice", "calculation"):
        what = what._replace(of=(*what.of, ("batches" if sort == "advice" else "batch", " ".join(map(str, numbers)))))
    facts = [f for found in scene.facts(what, None, query.when).values() for f in found]
    if query.batches.numbers:
        facts = [f for f in facts if f.batch in query.batches.numbers]
    facts = reduce_facts(
        facts,
        query.within if query.within in ("last", "first") and what.measure == "search" else "",
        MEASURES[what.measure],
        scene.settings,
    )
    if not facts:
        return _absent(query, what, scene, None, [])
    return Found(wording.of_cellar(query, what, facts, scene), notes_of(facts), found=not all(f.bare for f in facts))


def _batches(query: Query, scene: Scene) -> Found:
    """Which batches there are that meet the conditions, with what shows it."""
    numbers, judged = scene.batches(query.batches, query.when)
    if numbers is None:
        numbers = sorted(scene.cellar.batches)
    if query.when and not judged and not (query.batches.state and day_meant(query.when)):
        numbers = [n for n in numbers if _in_span(scene.cellar.batches[n].started, query)]
    shown: dict[int, list[Fact]] = {}
    for condition, facts in judged:
        for n in numbers:
            if condition.test != "none":
                found = [f for f in facts.get(n, []) if not f.bare]
                if condition.test not in ("some", "none") and condition.method == "" and len(found) > 1:
                    meeting = [f for f in found if scene.meets(condition, [f])] or found
                    meeting.sort(key=lambda f: number_of(f) or 0.0, reverse=condition.test in ("over", "at least"))
                    found = meeting if condition.test == "exactly" else meeting[:1]
                known = shown.setdefault(n, [])
                known.extend(
                    [f for f in found if f not in known]
                    if condition.method != "count"
                    else reduce_facts(found, "count", MEASURES[condition.what.measure], scene.settings)
                )
    notes = notes_of([f for facts in shown.values() for f in facts])
    if not numbers:
        return (
            Found(wording.no_batches(query), (), found=True)
            if scene.cellar.batches
            else Found("There are no batches in the journal yet.", (), found=False)
        )
    return Found(wording.batch_list(query, numbers, shown, scene), notes)


def _in_span(day: str, query: Query) -> bool:
    since, until = query.when.since, query.when.until
    return bool(day) and (not since or day >= since[: len(day)]) and (not until or day <= until[: len(day)])
