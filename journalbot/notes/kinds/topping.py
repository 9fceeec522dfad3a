"""Topping up, and airlocks seen to."""

import re
from collections.abc import Iterator

from journalbot.language.lexicon import Mention
from journalbot.notes.clauses import Clause
from journalbot.notes.draft import Draft, Scene, amount_fields
from journalbot.vocabulary.units import UNITS

_ALL_AIRLOCKS = re.compile(r"\b(?:all|every|everything)\b(?: \S+){0,3} (?:airlocks?|bubblers?)\b")


_MEASURED = {"about", "a", "another", "some", "the", "roughly", "approx", "approximately", "maybe", "just"}


def read_topping(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """A topping up, with what and how much."""
    cues = clause.cues("top_up")
    if (
        not clause.done
        or not cues
        or clause.of("airlock")
        or _of_airlocks(clause, scene)
        or _top_label(cues[0])
    ):
        return
    words = clause.text.words
    fields: dict[str, object] = {}
    last = cues[0].last
    volumes = [
        m
        for m in clause.of("amount")
        if m.value.unit in UNITS and (UNITS[m.value.unit].dimension == "volume" or m.value.unit == "bottle")
    ]
    volumes = [
        m
        for m in volumes
        if not any(
            d is m.value
            for f, d in scene.doses.items()
            if any(x.first == f and x.kind == "material" and x.value not in ("water",) for x in scene.text.mentions)
        )
    ]
    lead = next((i for i in range(cues[0].first, clause.last) if words[i] in ("with", "w", "using")), None)
    if lead is not None and words[lead + 1 : lead + 2] == ["/"]:
        lead += 1
    if lead is None:
        lead = next(
            (
                i
                for i in range(cues[0].first, clause.last)
                if words[i] == "from" or (words[i] == "of" and words[i - 1 : i] == ["out"])
            ),
            None,
        )
    if lead is not None:
        start = lead + 1
        dosed = [m for m in clause.of("amount") if m.value.unit in UNITS and m.first >= lead]
        amount = next((m for m in volumes if m.first >= lead), dosed[0] if dosed else None)
        if amount is not None and all(words[i] in _MEASURED for i in range(start, amount.first)):
            start = amount.last
        while start < clause.last and words[start] in (
            "of", "the", "a", "some", "my", "our", "out", "about", "from", "that", "more", "rest", "an", "another",
        ):
            start += 1
        end = start
        while (
            end < clause.last
            and words[end]
            not in (
                ",", "(", ")", "so", "because", "and", "on", "which", "since", "today", "yesterday", "again", "-", "–",
            )
            and not any(d.first == end for d in clause.of("date", "time"))
        ):
            end += 1
        while end > start and words[end - 1] in (
            "instead", "too", "again", "today", "now", "as", "well", "this", "time",
        ):
            end -= 1
        if end > start:
            fields["with"] = clause.text.slice(start, end)
            last = end
    if not fields and not volumes and (after := _said_after(clause, scene)):
        amount = after.of("amount")[0]
        fields["with"] = clause.text.slice(amount.last + 1, after.last)
        fields.update(amount_fields(amount.value))
    if volumes and "with" not in fields and words[volumes[0].last : volumes[0].last + 1] == ["of"]:
        end = next((i for i in range(volumes[0].last, clause.last) if words[i] in (",", "and", "so")), clause.last)
        fields["with"] = clause.text.slice(volumes[0].last + 1, end)
    if volumes:
        fields.update(amount_fields(volumes[0].value))
    elif lead is not None and amount is not None:
        fields.update(amount_fields(amount.value))
    yield Draft("top_up", clause, cues[0].first, last, fields)


def _said_after(clause: Clause, scene: Scene) -> Clause | None:
    """`topped up batch 2, 500 ml of store syrah`: the clause that says with what."""
    i = scene.clauses.index(clause) + 1
    after = scene.clauses[i] if i < len(scene.clauses) and scene.clauses[i].sentence == clause.sentence else None
    if after is None or after.of("cue", "vessel", "reading", "material"):
        return None
    opens = [m for m in after.of("amount") if m.first == after.first and UNITS.get(m.value.unit)]
    of = opens and UNITS[opens[0].value.unit].dimension == "volume"
    return after if of and clause.text.words[opens[0].last : opens[0].last + 1] == ["of"] else None


def _of_airlocks(clause: Clause, scene: Scene) -> bool:
    """`checked all the airlocks and topped them up`: the airlocks, not the wine."""
    before = scene.clause_before(clause)
    it = clause.of("pronouns") or clause.has("it", "them")
    return before is not None and bool(before.of("airlock")) and bool(it) and not clause.of("batch")


def _top_label(cue: Mention) -> bool:
    """`on top of`, `the top shelf`."""
    return cue.value.form == "base" and cue.last - cue.first == 1


def read_airlock(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """An airlock refilled, cleaned or checked: said in the clause, or of the airlock just spoken of."""
    if not clause.done:
        return
    here = clause.of("airlock")
    spoken = scene.clause_before(clause)
    if not here and spoken and not spoken.cues("airlock") and _of_airlocks(clause, scene):
        here = spoken.of("airlock")
    worked = [
        c
        for c in clause.cues("airlock", *(["top_up"] if here else []))
        if c.value.form == "done" or clause.text.words[max(0, c.first - 2) : c.first] == ["had", "to"]
    ]
    if not worked:
        return
    earlier = [c for c in scene.clauses[: scene.clauses.index(clause)] if c.of("airlock")]
    if (
        here
        or (
            earlier
            and clause.of("pronouns")
            and earlier[-1] in scene.clauses[max(0, scene.clauses.index(clause) - 3) : scene.clauses.index(clause)]
        )
        or (earlier and _bare_verb(worked[0], clause))
    ):
        said = [
            *(scene.clauses[scene.clauses.index(earlier[-1])].words() if earlier and not here else ()),
            *clause.words(),
        ]
        spoken_of = any(c.of("batch", "vessel", "pronouns") for c in scene.clauses)
        several = "airlocks" in said and not spoken_of and scene.started is None
        everywhere = several or bool(_ALL_AIRLOCKS.search(" ".join(said)))
        yield Draft("airlock", clause, worked[0].first, worked[0].last, needs="none" if everywhere else "batch")


def _bare_verb(cue: Mention, clause: Clause) -> bool:
    return (
        cue.first == clause.first
        and clause.text.words[cue.first] in ("refilled", "cleaned", "replaced", "rinsed")
        and clause.last - clause.first <= 3
    )
