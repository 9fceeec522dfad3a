"""Wine moved to another place."""

from collections.abc import Iterator

from journalbot.language.lexicon import Mention
from journalbot.notes.clauses import Clause
from journalbot.notes.draft import Draft, Scene


def read_moving(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """Wine moved to another place."""
    if not clause.done:
        return
    places = clause.of("place")
    cues = clause.cues("move")
    strong = [c for c in cues if c.value.detail != "weak"]
    words = clause.text.words
    if not strong and any(c.value.form != "noun" and c.last <= p.first for c in clause.cues("chill") for p in places):
        return  # "cold stabilising it out in the garage": where it is, not that it was moved
    for place in reversed(places):
        led = _led(place, clause)
        if strong and led in ("in", "on") and _goes_elsewhere(place, strong[0], clause):
            continue  # "moved it to the bread-oven room, coolest in the house"
        back = "back" in words[clause.first : place.first]
        if (
            not led
            or place.value in ("bottle",)
            or any(v.first <= place.first < v.last for v in clause.of("vessel", "date", "batch"))
        ):
            continue
        out = "out" in words[clause.first : place.first]
        if not (
            strong
            or (cues and (led in ("to", "into", "onto", "out") or back))
            or (cues and led == "in" and clause.of("batch", "pronouns") and not clause.of("material", "code", "amount"))
            or (led in ("to", "into", "onto") and _only_wine(clause))
            or ((back or out) and (clause.of("batch") or clause.of("vessel")))
        ):
            continue
        if (clause.cues("rack") and any(c.value.detail != "weak" for c in clause.cues("rack"))) or (
            clause.cues("drink", "give") and not strong
        ):
            continue
        yield Draft("move", clause, place.first, place.last, {"to": _place(place, clause)})
        return
    if (
        strong
        and not any(v.first > strong[0].last + 1 for v in clause.of("vessel"))
        and all(c.value.detail == "weak" for c in clause.cues("rack", "give"))
    ):
        yield from _moved_anywhere(strong[0], clause)


def _goes_elsewhere(place: Mention, cue: Mention, clause: Clause) -> bool:
    """Whether "to" leads to another place, between the verb and this one."""
    words = clause.text.words
    return any(words[i] in ("to", "into") for i in range(cue.last, place.first - 2))


def _only_wine(clause: Clause) -> bool:
    """`Gris into the basement`: a wine and a place, and nothing else."""
    return bool(clause.of("batch")) and not clause.of(
        "cue", "amount", "material", "code", "reading", "person", "number"
    )


_BESIDE = ("beside", "behind", "near", "outside", "beneath", "under", "by", "next")


def _moved_anywhere(cue: Mention, clause: Clause) -> Iterator[Draft]:
    """`moved to the lean-to to cold stabilise`: a place that no table knows."""
    words = clause.text.words
    lead = next((i for i in range(cue.last, clause.last - 1) if words[i] in ("to", "into", "onto", *_BESIDE)), None)
    if lead is None:
        return
    first = lead + 1 if words[lead] not in _BESIDE else lead
    while first < clause.last and words[first] in ("the", "my", "our", "a"):
        first += 1
    last = first + 2 if words[first] in _BESIDE else first
    while (
        last < clause.last
        and words[last]
        not in (",", "to", "so", "because", "for", "and", "where", "at", "(", "-", "with", "until", "it's", "its")
        and clause.text.tokens[last].kind == "word"
        and not any(m.first == last for m in clause.of("date", "time", "reading", "cue"))
    ):
        last += 1
    if first < last <= first + 4:
        yield Draft("move", clause, first, last, {"to": clause.text.slice(first, last)})


def _led(place: Mention, clause: Clause) -> str:
    words = clause.text.words
    i = place.first - 1
    while i >= clause.first and (
        words[i]
        in (
            "the", "my", "our", "a", "back", "cold", "cool", "warm", "lower", "upper", "spare", "dark", "neighbour's",
            "kitchen", "coldest", "warmer", "cooler", "far", "north", "downstairs", "hall", "under",
        )
    ):
        i -= 1
    return (
        words[i]
        if i >= clause.first and words[i] in ("to", "into", "in", "onto", "on", "out", "under", "back", "up", "down")
        else ""
    )


def _place(place: Mention, clause: Clause) -> str:
    """The place as written: with the words before it that tell which, and an "of the …" after it."""
    words = clause.text.words
    first, last = place.first, place.last
    while (
        first - 1 > clause.first
        and words[first - 1]
        in (
            "cold", "cool", "warm", "lower", "upper", "spare", "dark", "coldest", "back", "far", "north", "hall",
            "kitchen", "under",
        )
        and words[first - 1] != "back"
    ):
        first -= 1
    if words[last : last + 2] in (["of", "the"], ["in", "the"], ["under", "the"]):
        nxt = next((m for m in clause.of("place") if m.first == last + 2), None)
        last = nxt.last if nxt else last
    return clause.text.slice(first, last)
