"""Vessels described: what they hold."""

from collections.abc import Iterator

from journalbot.journal.vessel_names import split_vessels
from journalbot.language.lexicon import Mention
from journalbot.notes.clauses import Clause
from journalbot.notes.draft import Draft, Scene
from journalbot.vocabulary.units import UNITS

_SAYS = {
    "holds", "hold", "takes", "is", "are", "=", ":", "capacity", "of", "the", "a", "an", "about", "exactly", "really",
    "actually", "will", "only", ",", "(", "borrowed", "also", "new", "both", "all", "at", "it", "can", "to", "brim",
    "max", "roughly", "just", "total", "full", "my", "little", "small", "big", "tiny", "large",
}
_NAME_REACH = 14  # tokens between a vessel's pet name and its size
_NOT = {"in", "into", "from", "of", "->", "to", "left", "fill", "filled", "still"}


def read(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """`carboy 2 holds 5 gal`, `the open vat takes 80 litres, the steel tank 50`: a vessel, and its size close behind
    it.
    """
    if clause.mood in ("planned", "told", "asked", "supposed"):
        return
    yield from _in_brackets(clause, scene)
    holds = clause.has("holds", "hold", "holding", "takes", "capacity") or any(
        clause.text.words[v.last : v.last + 1] == ["is"] for v in clause.of("vessel")
    )
    if clause.first in scene.start_clauses and not holds:
        return
    worked = clause.of("reading", "material") or clause.cues("rack", "top_up", "press", "bottle", "pitch")
    if worked and not clause.has("holds", "holding", "capacity"):
        return
    vessels = list(clause.of("vessel"))
    before = scene.clause_before(clause)
    if before and not vessels and before.of("vessel") and _only_says(clause):
        for m in clause.of("amount"):
            name = before.of("vessel")[-1].value.name
            named: dict[str, object] = {"name": name, "capacity": m.value.value, "unit": m.value.unit}
            yield Draft("vessel", clause, clause.first, m.last, named, needs="none")
            return
    waiting: list[Mention] = []
    said = clause.has("holds", "hold", "takes", "is", "are", "capacity", "=") or _describes(scene, clause)
    for i, v in enumerate(vessels):
        stop = vessels[i + 1].first if i + 1 < len(vessels) else clause.last
        size = _size(v, stop, clause, scene) if clause.text.words[v.last : v.last + 1] != ["("] else None
        waiting.append(v)
        if size is None:
            continue
        for w in waiting:
            if said:
                day = () if clause.own_date else (scene.on.isoformat(),)  # what it holds is told of now
                for name in split_vessels(w.value.name):
                    fields: dict[str, object] = {"name": name, "capacity": size[0], "unit": size[1]}
                    yield Draft("vessel", clause, w.first, w.last, fields, needs="none", dates=day)
        waiting = []


def _only_says(clause: Clause) -> bool:
    """`… and it holds 5 l`: the vessel stands in the clause before."""
    words = clause.words()
    return any(w in ("holds", "takes", "hold") for w in words[: 1 + (words[0] in ("it", "they", "which", "that"))])


def read_named(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """`Hank is 6 gallons`, `named them Pip and Squeak they hold 1 gallon each`: vessels called by a proper name."""
    if clause.mood in ("planned", "told", "asked", "supposed"):
        return
    text = scene.text
    words = text.words
    for m in clause.of("amount"):
        if m.value.unit not in ("gal", "L", "ml", "qt"):
            continue
        i = m.first - 1
        begin = max(0, m.first - _NAME_REACH)
        while i >= begin and (
            words[i] in _SAYS
            or words[i]
            in (
                "carboys", "carboy", "demijohns", "buckets", "jugs", "vessels", "they", "she", "he", "and", "which",
                "that", "each",
            )
        ):
            i -= 1
        said = set(words[i + 1 : m.first]) & {"is", "are", "holds", "hold", "takes", "capacity"}
        listed = any(v.kind == "vessel" for v in scene.text.mentions if v.last <= m.first) and _describes(scene, clause)
        last = i + 1
        names: list[tuple[int, int]] = []
        while i >= begin and (said or (listed and i + 1 == m.first)):
            first = i
            while first >= begin and _proper(first, scene):
                first -= 1
            if first == i:
                break
            names.insert(0, (first + 1, i + 1))
            if (
                first >= begin
                and words[first] in ("and", "&", ",")
                and first - 1 >= begin
                and _proper(first - 1, scene)
            ):
                i = first - 1
            else:
                break
        for a, b in names:
            if b <= last:
                fields: dict[str, object] = {"name": text.meant(a, b), "capacity": m.value.value, "unit": m.value.unit}
                yield Draft("vessel", clause, a, b, fields, needs="none")


def _proper(i: int, scene: Scene) -> bool:
    """A word with a capital that no vocabulary explains, as a pet name has."""
    token = scene.text.tokens[i]
    if (
        token.kind != "word"
        or len(token.text) < 2
        or not token.text[:1].isupper()
        or (token.text.isupper() and len(token.text) > 1)
    ):
        return False
    known = [
        m
        for m in scene.text.mentions
        if m.first <= i < m.last
        and m.kind
        in ("batch", "stranger", "variety", "fruit", "vessel", "date", "quantity", "material", "reading", "pronouns")
    ]
    return not known and token.low not in (
        "i", "the", "my", "our", "it", "they", "this", "that", "and", "there", "here",
    )


def _in_brackets(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """`carboy 4 (borrowed, also 5 gal)`: a size in brackets straight after a vessel."""
    words = clause.text.words
    for v in clause.of("vessel"):
        if v.last < len(words) and words[v.last] == "(":
            close = next((i for i in range(v.last, len(words)) if words[i] == ")"), len(words))
            for m in scene.text.of("amount", first=v.last, last=close):
                if m.value.unit in ("gal", "L", "ml", "qt") and all(w in _SAYS for w in words[v.last : m.first]):
                    yield Draft(
                        "vessel",
                        clause,
                        v.first,
                        v.last,
                        {"name": v.value.name, "capacity": m.value.value, "unit": m.value.unit},
                        needs="none",
                    )


def _describes(scene: Scene, clause: Clause) -> bool:
    """A list of vessels goes on: the clause before described one, or the note has no wine in it at all."""
    i = scene.clauses.index(clause)
    earlier = any(
        c.has("holds", "hold", "takes", "is", "are", "capacity") and c.of("vessel") and c.of("amount")
        for c in scene.clauses[:i]
    )
    return earlier or (
        not scene.text.of("batch", "reading", "material", "fruit", "variety")
        and not any(c.cues("rack", "purchase", "start") for c in scene.clauses)
    )


def _size(v: Mention, stop: int, clause: Clause, scene: Scene) -> tuple[float, str] | None:
    words = clause.text.words
    if v.first and words[v.first - 1] in _NOT:
        return None
    nxt = v.last
    if nxt < len(words) and words[nxt] == "(":
        stop = next((i for i in range(nxt, len(words)) if words[i] == ")"), stop)
    for m in scene.text.of("amount", "number", first=v.last, last=max(stop, v.last)):
        if any(w not in _SAYS for w in words[v.last : m.first]):
            return None
        if m.kind == "amount":
            unit = m.value.unit
            return (
                (m.value.value, unit)
                if unit in UNITS and UNITS[unit].dimension == "volume" and unit not in ("tsp", "tbsp", "cup")
                else None
            )
        if (
            m.kind == "number"
            and m.value.style in ("figure", "words")
            and not any(a.first == m.first for a in scene.text.of("amount"))
        ):
            unit = _unit_so_far(scene, m)
            return (m.value.value, unit) if unit and m.value.value == int(m.value.value) else None
    return None


def _unit_so_far(scene: Scene, m: Mention) -> str | None:
    """The unit of the sizes named before (`the open vat takes 80 litres, the steel tank 50`)."""
    earlier = [a for a in scene.text.of("amount") if a.first < m.first and a.value.unit in ("gal", "L")]
    return earlier[-1].value.unit if earlier else None
