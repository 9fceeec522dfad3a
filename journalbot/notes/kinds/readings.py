"""Readings: what was measured; a room's temperature; wine left in a vessel."""

from collections.abc import Iterator

from journalbot.language.amounts import tidy
from journalbot.language.lexicon import Mention
from journalbot.language.readings import Reading
from journalbot.notes.clauses import Clause
from journalbot.notes.draft import Draft, Scene
from journalbot.vocabulary.units import UNITS

_OLD = {"from", "was", "were"}
_CHECKED = {
    "reads", "read", "shows", "showed", "showing", "got", "checked", "reading", "measured", "tested", "test", "says",
    "said", "gave", "came", "hydrometer", "gravity", "at", "is", "now", "down", "check", "meter",
}
_NOW = {"now", "reads", "currently", "measured", "actual", "actually"}
_TOLD_BEFORE = 10  # tokens of a sentence that says what was tested, before its figure
_LEFT_GAP = 5
_PLACE_GAP = 4  # words from a temperature to the place it is of: "27 degrees in the vestry cupboard"


def read(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """Every figure measured in a clause that is not a plan's target, another's word or an earlier figure told again."""
    if clause.mood == "asked":
        return
    found = clause.of("reading")
    for i, m in enumerate(found):
        reading: Reading = m.value
        if clause.mood == "told" and not _NOW.intersection(clause.text.words[max(clause.first, m.first - 2) : m.first]):
            continue  # "aiming for 1.000, now at 1.006"
        if clause.mood == "planned" and not _before_plan(m, clause):
            continue
        if clause.mood == "supposed" and not any(m.last <= s.first for s in clause.of("supposed")):
            continue
        if _denied(m, clause) or _told_again(m, found[i + 1 :], clause):
            continue
        if reading.quantity == "temperature" and _weather(m, clause):
            continue
        fields = {"quantity": reading.quantity, "value": reading.value, "unit": reading.unit}
        if reading.approx:
            fields["approx"] = True
        draft = Draft("reading", clause, m.first, m.last, fields)
        if not reading.possible:
            draft.ask = "value"
        if reading.quantity == "temperature" and _of_room(m, clause, scene):
            draft.needs = "none"
        yield draft
    if clause.mood == "told":
        return
    yield from _left(clause, scene)
    yield from _same_again(clause, scene)
    yield from _room_bare(clause, scene)


def _room_bare(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """`the pantry is 58`, `its 74 in the kitchen`: a room's temperature without a unit."""
    words = clause.text.words
    low, high = (30, 110) if scene.settings.units == "us" else (-5, 45)
    if clause.mood != "done":
        return
    for n in clause.of("number"):
        if n.value.style not in ("figure", "words") or not low <= n.value.value <= high:
            continue
        before = next(
            (
                p
                for p in clause.of("place")
                if p.last <= n.first
                and set(words[p.last : n.first])
                <= {"is", "at", "was", "sits", "holding", "down", "to", "up", "about", "around", "steady"}
                and p.last < n.first
            ),
            None,
        )
        after = words[n.first - 1] in ("its", "it's", "is") and any(
            p.first - n.last in (1, 2) and words[n.last] == "in" for p in clause.of("place")
        )
        if (before is not None and n.last == clause.last) or after:
            fields = {
                "quantity": "temperature",
                "value": tidy(n.value.value),
                "unit": "F" if scene.settings.units == "us" else "C",
            }
            yield Draft("reading", clause, n.first, n.last, fields, needs="none")


def _same_again(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """`0.993 on Friday and the same again today`: the figure before, on another day."""
    if (
        "same" not in clause.words()
        or not clause.own_date
        or clause.of("reading")
        or not clause.has("again", "figure", "reading", "number", "value", "gravity")
    ):
        return
    earlier = [
        m for c in scene.clauses[: scene.clauses.index(clause)] for m in c.of("reading") if m.value.quantity == "sg"
    ]
    if earlier:
        reading: Reading = earlier[-1].value
        yield Draft(
            "reading",
            clause,
            clause.first,
            clause.last,
            {"quantity": reading.quantity, "value": reading.value, "unit": reading.unit},
        )


def _before_plan(m: Mention, clause: Clause) -> bool:
    """A reading that stands before the words that plan: `1.012 so need to rack`."""
    planned = clause.of("planned")
    return bool(planned) and m.last <= planned[0].first


def _denied(m: Mention, clause: Clause) -> bool:
    return clause.mood == "denied" and any(d.last <= m.first and m.first - d.last < 4 for d in clause.of("denied"))


def _told_again(m: Mention, later: list[Mention], clause: Clause) -> bool:
    """An earlier figure told again: `from 1.050 to 1.010`, `(was 1.021)`."""
    words = clause.text.words
    before = words[m.first - 1] if m.first else ""
    same = [n for n in later if n.value.quantity == m.value.quantity]
    if before in ("from",) and (same or clause.has("down", "up", "dropped", "fell", "went")):
        return True
    lead = words[m.first - 2] if m.first > 1 else ""
    if before == "to" and lead == "compared":
        return True
    earlier = any(n.value.quantity == m.value.quantity and n.last < m.first for n in clause.of("reading"))
    if before in _OLD and lead == "," and earlier:
        return True
    return before in _OLD and (lead == "(" or (lead in ("-", "–") and not clause.of("date")))


def _weather(m: Mention, clause: Clause) -> bool:
    """`Christmas Day was 41 degrees in the shade`: the day's own warmth."""
    words = clause.text.words
    if clause.of("batch", "vessel", "pronouns", "place") or any(r.first != m.first for r in clause.of("reading")):
        return False
    day = any(words[d.last : m.first] in (["was"], ["is"], ["hit"]) for d in clause.of("date"))
    return day or words[m.last : m.last + 3] == ["in", "the", "shade"]


def _of_room(m: Mention, clause: Clause, scene: Scene) -> bool:
    """Whether a temperature is a room's: the room is what the clause is about, and no wine is."""
    beside = [p for p in clause.of("place") if p.last == m.first]
    if any(p.first == clause.first or not clause.text.words[p.first - 1].isalpha() for p in beside):
        return True  # "cellar 4 C"
    if clause.of("batch") or clause.of("vessel"):
        return False
    after = clause.text.words[m.last : m.last + 2]
    if (
        after[:1] == ["there"]
        or after in (["in", "there"], ["out", "there"], ["in", "here"])
        or (
            after[:1] in (["in"], ["on"], ["at"], ["out"])
            and any(0 < p.first - m.last <= _PLACE_GAP for p in clause.of("place"))
        )
    ):
        return True
    if after in (["down", "there"], ["up", "there"]) and scene.text.of("place"):
        return True
    if (
        clause.joined_by == "which"
        and "thermometer" in clause.text.words[max(0, clause.first - _TOLD_BEFORE) : clause.first]
    ):
        return True
    if clause.joined_by == "where":
        return True  # "to the apple store, where it is 20 degrees"
    said = [clause.text.words[p.last : m.first] for p in clause.of("place")]
    if any(between in (["is"], ["was"], ["at"], ["is", "at"]) for between in said):
        return True
    if any(p.last <= m.first for p in clause.of("pronouns")) and not clause.has("itself"):
        return False
    words = clause.text.words[clause.first : m.first]
    if "room" in words or "ambient" in words or "air" in words:
        return True
    place = [p for p in clause.of("place") if p.last <= m.first]
    if not place or any(r.value.quantity != "temperature" for r in clause.of("reading")):
        return False
    lead = clause.text.words[place[0].first - 1] if place[0].first > clause.first else ""
    moved = any(c.value.kind in ("move", "rack") and c.value.detail != "weak" for c in clause.of("cue"))
    return not moved and (lead in ("", "the", "my", "our", "whole") or place[0].first - clause.first <= 1)


def _left(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """`5.2 gal left in there`, `23 L of number 8 still in demijohn A`."""
    left = clause.of("left")
    if clause.mood in ("planned", "denied", "told", "asked"):
        return
    if not left:
        yield from _there_is(clause)
        return
    moved = bool(clause.cues("rack", "top_up", "bottle"))
    for m in clause.of("amount"):
        if (
            UNITS.get(m.value.unit)
            and UNITS[m.value.unit].dimension == "volume"
            and m.value.unit not in ("tsp", "tbsp")
            and not any(
                d is m.value and any(x.first == f for x in clause.of("material")) for f, d in scene.doses.items()
            )
            and any(
                w.first in (m.last, m.last + 1) if moved else -_LEFT_GAP < w.first - m.last < _LEFT_GAP for w in left
            )
        ):
            fields = {"quantity": "volume", "value": m.value.value, "unit": m.value.unit}
            if m.value.approx:
                fields["approx"] = True
            yield Draft("reading", clause, m.first, m.last, fields)


def _there_is(clause: Clause) -> Iterator[Draft]:
    """`There is about 13 l of it`: how much wine there is."""
    words = clause.words()
    if words[:1] != ["there"] or words[1:2] not in (["is"], ["are"], ["was"], ["were"]) or clause.of("vessel"):
        return
    for m in clause.of("amount"):
        if m.value.unit in ("gal", "L") and clause.text.words[m.last : m.last + 2] in (["of", "it"], ["of", "this"]):
            fields = {"quantity": "volume", "value": m.value.value, "unit": m.value.unit}
            if m.value.approx:
                fields["approx"] = True
            yield Draft("reading", clause, m.first, m.last, fields)


def bare_number(clause: Clause) -> Mention | None:
    """A figure that is somebody's reading, but of what is not said: `Batch 8 shows 20 this morning`."""
    if clause.mood in ("told", "asked", "supposed", "planned", "denied"):
        return None
    for m in clause.of("number"):
        lead = clause.text.words[max(clause.first, m.first - 3) : m.first]
        subjects = clause.of("batch", "vessel")
        named = any(b.last == m.first or (b.last == m.first - 1 and lead[-1:] == ["was"]) for b in subjects)
        whole = m.first == clause.first and _only_when(m.last, clause)
        headed = whole and _heads_figure(clause)
        if (
            m.value.style in ("figure", "decimal")
            and m.value.value < 200
            and (headed or named or _CHECKED.intersection(lead))
            and _stands_bare(m, clause)
        ):
            return m
    return None


def _only_when(first: int, clause: Clause) -> bool:
    """Whether nothing but a day or an hour stands from a token to the end of its clause."""
    told = {i for m in clause.of("date", "time") for i in range(m.first, m.last)}
    return all(i in told for i in range(first, clause.last))


def _heads_figure(clause: Clause) -> bool:
    """`batch 5: 3.5`, `reading on the gris this morning, 14`: a figure by itself, after what it was read on."""
    ends = any(b.kind in ("batch", "vessel") and b.last == clause.first - 1 for b in clause.text.mentions)
    before = clause.text.words[max(0, clause.first - _TOLD_BEFORE) : clause.first]
    if before[-1:] in (["."], [":"]) and {"tested", "checked", "measured", "read"}.intersection(before):
        return any(
            b.kind == "batch" and clause.first - _TOLD_BEFORE <= b.first < clause.first for b in clause.text.mentions
        )
    named = any(b.kind == "batch" and b.last <= clause.first for b in clause.text.mentions)
    return ends or (named and clause.joined_by in (":", ",", "-") and "reading" in clause.text.words[: clause.first])


def _stands_bare(m: Mention, clause: Clause) -> bool:
    words = clause.text.words
    nxt = words[m.last] if m.last < clause.last else ""
    return nxt in (
        "when", "", ",", "this", "today", "now", "on", "again", "tonight", "yesterday", "in", "for", "at", "still",
    ) or any(d.first == m.last for d in clause.of("date", "time"))
