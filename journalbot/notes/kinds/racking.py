"""Racking: wine moved from vessel to vessel, by a verb that says so or by where it went."""

from collections.abc import Iterator

from journalbot.language.amounts import Amount
from journalbot.language.lexicon import Mention
from journalbot.notes.clauses import Clause
from journalbot.notes.draft import Draft, Scene
from journalbot.vocabulary.units import UNITS

_SKIP = {
    "the", "a", "an", "my", "our", "its", "clean", "fresh", "another", "washed", "second", "new", "empty", "both",
    "two", "glass", "back", "one", "",  # a word taken back
}


_SHORT = 4  # words of a clause that holds a volume and little else


def role(vessel: Mention, clause: Clause) -> str:
    """What a vessel is in its clause: "to", "from" or "at", by the word that leads it."""
    words = clause.text.words
    i = vessel.first - 1
    while i >= clause.first and words[i] in _SKIP:
        i -= 1
    if i < clause.first and clause.joined_by in ("->", "→"):
        return "to"
    lead = words[i] if i >= clause.first else ""
    if lead in ("into", "onto", "->", "→", "=>", ">", "to"):
        return "to"
    if lead in ("in", "into") and i and words[i - 1] == "back":
        return "to"
    racked = any(c.value.detail != "weak" and c.last <= vessel.first for c in clause.cues("rack"))
    if lead == "in" and racked and len(clause.of("vessel")) == 1 and not clause.of("batch"):
        return "to"
    if lead in ("from", "off", "emptied") or (lead == "of" and i and words[i - 1] == "out"):
        return "from"
    if any(c.last == i + 1 and c.value.detail != "weak" for c in clause.cues("rack")) and any(
        v.first > vessel.last for v in clause.of("vessel")
    ):
        return "from"
    if lead == "and" and any(v.last == i and role(v, clause) == "from" for v in clause.of("vessel")):
        return "from"
    if _racked_from(vessel, clause):
        return "from"
    if lead in ("and", "&", ",") and any(v.last == i and role(v, clause) == "to" for v in clause.of("vessel")):
        return "to"
    nxt = words[vessel.last] if vessel.last < len(words) else ""
    if nxt in ("->", "→", "=>", ">") or (
        nxt in ("to", "into") and any(v.first - vessel.last <= 3 and v.first > vessel.last for v in clause.of("vessel"))
    ):
        return "from"
    return "at"


def _racked_from(vessel: Mention, clause: Clause) -> bool:
    """`oak barrel and carboy 1 racked to the tank`: vessels before the verb, and where the wine went behind it."""
    words = clause.text.words
    inside = {i for v in clause.of("vessel") for i in range(v.first, v.last)}
    for c in clause.cues("rack"):
        between = {words[i] for i in range(vessel.last, c.first) if i not in inside}
        to = any(words[v.first - 1] in ("to", "into", "the") for v in clause.of("vessel") if v.first > c.last)
        if c.value.detail != "weak" and vessel.last <= c.first and between <= {"and", "&", "+", ",", "the"} and to:
            return True
    return False


def pressed_before(clause: Clause, scene: Scene) -> bool:
    """Whether the sentence so far has told of a pressing, so that what goes into a vessel is wine run off."""
    return any(c.cues("press") for c in scene.sentence(clause) if c.first <= clause.first)


def _rack_cue(clause: Clause) -> list[Mention]:
    return [c for c in clause.cues("rack") if c.value.form in ("done", "base", "ing")]


def read_racking(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """A racking: a verb that says so, or wine that went into a vessel."""
    if not clause.done:
        return
    cues = [c for c in _rack_cue(clause) if not _rack_noun(c, clause)]
    strong = [c for c in cues if c.value.detail != "weak"]
    vessels = list(clause.of("vessel"))
    if clause.of("money") and not vessels:
        return
    to = [v for v in vessels if role(v, clause) == "to" or _run_off(v, clause, scene)]
    source = [v for v in vessels if role(v, clause) == "from"]
    if cues and not to and not strong:
        to = []
    if clause.cues("top_up") and not strong:
        return
    if not strong:
        if not to and not (source and len(vessels) > 1):
            return
        if clause.first in scene.start_clauses and not source and not pressed_before(clause, scene):
            return
        if _something_else_goes_in(clause, scene, bool(cues)) and not source and not clause.cues("press"):
            return
        if clause.cues("bottle") or (clause.of("place") and clause.cues("move") and not cues and not source):
            return
    if (
        strong
        and strong[0].value.form in ("ing", "base")
        and not (to or source or clause.of("batch") or clause.of("pronouns") or clause.of("lees"))
        and strong[0].value.form == "ing"
    ):
        return
    at = strong[0] if strong else (to or source)[0]
    emptied = [v for c in scene.sentence(clause) if c.has("emptied") for v in c.of("vessel") if v not in to]
    source = source or [v for v in emptied if v.first < at.first][:1]
    volumes = volumes_of(clause, scene) or _volume_after(clause, scene)
    yield from _rackings(clause, at, to, source, volumes)


def _volume_after(clause: Clause, scene: Scene) -> list[Mention]:
    """`DJ1 -> DJ2; 13.5 L`, `racked to carboy 2. 4.75 gal, SG 1.012`: a volume by itself after a racking."""
    i = scene.clauses.index(clause) + 1
    after = scene.clauses[i] if i < len(scene.clauses) else None
    if after is None or after.of("vessel", "material", "left", "batch", "money"):
        return []
    gave = after.joined_by in ("which", ",") and after.has("gave", "came", "made", "yielded", "got")
    noun = [
        c
        for c in after.of("cue")
        if gave or clause.text.words[c.first - 1] == "after" or c.value.kind == "purchase"
    ]
    if len(noun) < len(after.of("cue")):
        return []  # but "22.1 L after racking", "58 L in all" go on with it
    volumes = volumes_of(after, scene)
    same = after.sentence == clause.sentence and (gave or after.last - after.first <= _SHORT)
    return volumes if same or (volumes and volumes[0].first == after.first and not after.own_date) else []


def _run_off(vessel: Mention, clause: Clause, scene: Scene) -> bool:
    """`pressed on Wednesday, 34 L in demijohn A`: so much in a vessel after a pressing is wine run into it."""
    i = scene.clauses.index(clause)
    pressed = any(c.cues("press") for c in scene.clauses[max(0, i - 4) : i + 1] if c.mood == "done")
    at = vessel.first - 1
    while at > clause.first and clause.text.words[at] in ("the", "a", "my"):
        at -= 1
    lead = clause.text.words[at] if at >= clause.first else clause.joined_by
    joined = lead == "and" and any(v.last == vessel.first - 1 for v in clause.of("vessel"))
    return (
        pressed
        and scene.started is None
        and (lead in ("in", ",") or joined)
        and any(volumes_of(c, scene) for c in (clause, scene.clause_before(clause)) if c)
    )


def _rack_noun(cue: Mention, clause: Clause) -> bool:
    """`the last racking`, `wine rack`: the noun, not the act."""
    words = clause.text.words
    before = words[cue.first - 1] if cue.first else ""
    word = words[cue.first]
    if cue.last - cue.first > 1 and word not in ("first", "second", "third"):
        return False
    if word in ("rack", "racks"):
        return before in ("the", "a", "wine", "bottle", "drying", "to") or clause.text.words[
            cue.last : cue.last + 1
        ] in (["of"], ["in"])
    if word == "racking":
        return before in (
            "the", "since", "last", "after", "before", "next", "of", "for", "needs", "from", "cane", "a", "until", "by",
        )
    return word in ("racking",) and False


def _rackings(
    clause: Clause, at: Mention, to: list[Mention], source: list[Mention], volumes: list[Mention]
) -> Iterator[Draft]:
    fields: dict[str, object] = {}
    if source:
        fields["from"] = _joined(source, clause)
    if len(to) > 1 and len(volumes) >= len(to):
        for vessel in to:
            volume = min(volumes, key=lambda v: abs(v.first - vessel.first) + 3 * (v.first > vessel.first))
            volumes = [v for v in volumes if v is not volume]
            yield Draft(
                "rack", clause, vessel.first, vessel.last, {**fields, "to": vessel.value.name, **_volume(volume.value)}
            )
        return
    if to:
        fields["to"] = _joined(to, clause)
    if (volumes and len(volumes) == 1) or (volumes and not to):
        fields.update(_volume(volumes[0].value))
    elif volumes and to:
        near = [v for v in volumes if v.first < to[0].first]
        fields.update(_volume((near[-1] if near else volumes[0]).value))
    yield Draft("rack", clause, at.first, at.last, fields)


def _joined(vessels: list[Mention], clause: Clause) -> str:
    """Several vessels as the note writes them."""
    if len(vessels) == 1:
        return str(vessels[0].value.name)
    inside = {i for v in vessels for i in range(v.first, v.last)}
    between = {clause.text.words[i] for i in range(vessels[0].first, vessels[-1].last) if i not in inside}
    if between <= {"and", "&", "+", "the", ",", "a", "one"}:
        return clause.text.meant(vessels[0].first, vessels[-1].last)
    return " and ".join(dict.fromkeys(v.value.name for v in vessels))


def _volume(amount: Amount) -> dict[str, object]:
    out: dict[str, object] = {"volume": amount.value, "unit": amount.unit}
    if amount.approx:
        out["approx"] = True
    return out


def volumes_of(clause: Clause, scene: Scene) -> list[Mention]:
    """Volumes in a clause that are nothing else's dose."""
    doses = [
        d
        for first, d in scene.doses.items()
        if any(m.first == first and m.kind in ("material", "code", "oak_form") for m in scene.text.mentions)
    ]
    inside = list(clause.of("vessel"))
    return [
        m
        for m in clause.of("amount")
        if m.value.unit in UNITS
        and UNITS[m.value.unit].dimension == "volume"
        and m.value.unit not in ("tsp", "tbsp", "cup", "fl oz")
        and not any(d is m.value for d in doses)
        and not {"lost", "left", "leaving", "spilled", "spilt", "minus"}
        & set(clause.text.words[max(clause.first, m.first - 2) : m.first])
        and not any(w.first == m.last for w in clause.of("left"))
        and not any(v.first <= m.first < v.last for v in inside)
    ]


def _something_else_goes_in(clause: Clause, scene: Scene, moved: bool) -> bool:
    """Whether what goes into the vessel is yeast, a dose, culture, oak or top-up wine."""
    if any(c.value.kind in ("pitch", "malolactic", "top_up") for c in clause.of("cue")) or clause.of("code"):
        return True
    if any(clause.text.words[v.first - 2 : v.first] in (["back", "into"], ["back", "to"]) for v in clause.of("vessel")):
        return False
    if any(m.first in scene.doses for m in clause.of("material", "oak_form")):
        return not moved and not volumes_of(clause, scene)
    if any(m.value.unit in ("g", "mg", "tsp", "tablet", "oz", "tbsp") for m in clause.of("amount")) and not volumes_of(
        clause, scene
    ):
        return True
    added = [c for c in clause.cues("add") if c.last - c.first == 1 and c.value.form == "done"]
    return bool(clause.of("material") and not volumes_of(clause, scene)) or (
        bool(added) and not moved and not clause.of("batch", "pronouns") and not volumes_of(clause, scene)
    )
