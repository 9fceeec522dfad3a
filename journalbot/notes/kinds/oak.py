"""Oak put in and taken out."""

from collections.abc import Iterator

from journalbot.language.lexicon import Mention
from journalbot.notes.clauses import Clause
from journalbot.notes.draft import Draft, Scene, amount_fields

_OUT = {"out", "off", "pulled", "yanked", "removed", "fished", "without", "took", "lifted", "taken", "retrieved"}
_FORMED = {"chips", "cubes", "spiral", "staves", "powder"}
_DESCRIBED = {"tastes", "taste", "smells", "nose"}
_SHORT = 2  # words before "oak" in a clause of nothing else (`on oak`, `all on oak`)


def read(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """Oak put in, of a form that is only ever oak, or called oak; a barrel only where the note says it is there for
    the oak.
    """
    if clause.mood != "done" or clause.of("money") or (clause.cues("purchase") and not clause.cues("add")):
        return
    words = clause.text.words
    oaky = [i for i in range(clause.first, clause.last) if words[i] in ("oak", "oaked")]
    vessels = clause.of("vessel")
    forms = [
        m
        for m in clause.of("oak_form")
        if not any(v.first <= m.first < v.last for v in vessels) and m.value in _FORMED and _is_oak(m, clause, scene)
    ]
    forms = [
        m
        for i, m in enumerate(forms)
        if not any(
            o is not m and o.first <= m.first and m.last <= o.last and o.last - o.first > m.last - m.first
            for o in forms
        )
    ]
    if (_taken_out(clause) and not any(m.first in scene.doses for m in forms)) or (
        clause.has(*_DESCRIBED) and not any(m.first in scene.doses for m in forms)
    ):
        return
    for form in forms:
        fields: dict[str, object] = {"form": form.value, **amount_fields(scene.doses.get(form.first))}
        for kind, name in (("oak_toast", "toast"), ("oak_origin", "origin")):
            near = _nearest(form, clause.of(kind), clause) or _said_after(kind, clause, scene)
            near = near or _said_before(kind, clause, scene)
            if near is not None:
                fields[name] = near.value
        yield Draft("oak", clause, form.first, form.last, fields)
    if oaky and (not forms or oaky[0] < forms[0].first - 4) and _on_oak(clause, oaky):
        fields = {}
        barrel = any(
            v.value.name.lower().split()[-1].startswith(("barrel", "cask", "barrique"))
            or "barrel" in v.value.name.lower()
            for s in scene.sentence(clause)
            for v in s.of("vessel")
        )
        if barrel:
            fields["form"] = "barrel"
        yield Draft("oak", clause, oaky[0], oaky[0] + 1, fields)


def _said_after(kind: str, clause: Clause, scene: Scene) -> Mention | None:
    """`two spirals in, medium plus American`: what a clause of nothing else says of the oak before it."""
    i = scene.clauses.index(clause) + 1
    after = scene.clauses[i] if i < len(scene.clauses) and scene.clauses[i].sentence == clause.sentence else None
    if after is None or any(
        m.kind not in ("oak_toast", "oak_origin", "oak_word", "descriptor") for m in after.mentions
    ):
        return None
    return max(after.of(kind), key=lambda m: m.last - m.first, default=None)


def _said_before(kind: str, clause: Clause, scene: Scene) -> Mention | None:
    """`bought 1 lb of oak chips. American, medium toast. Put 2 oz in`: a sentence before of the oak's sort alone."""
    for c in scene.clauses:
        words_only = c.of(kind) and all(
            m.kind in ("oak_toast", "oak_origin", "oak_word", "descriptor") for m in c.mentions
        )
        if c.sentence in (clause.sentence - 1, clause.sentence - 2) and words_only:
            return max(c.of(kind), key=lambda m: m.last - m.first)
    return None


def _is_oak(m: Mention, clause: Clause, scene: Scene) -> bool:
    if m.value in ("powder",):
        return "oak" in clause.words()
    spelling = " ".join(clause.text.words[m.first : m.last])
    if spelling in (
        "beans", "stick", "sticks", "blocks", "segments", "dice", "flour", "dust", "shavings", "plank", "planks",
        "rods", "dominoes", "slats",
    ):
        return "oak" in clause.words() or bool(clause.of("oak_toast") and clause.of("oak_origin"))
    return (
        m.first in scene.doses
        or "oak" in clause.words()
        or bool(clause.of("oak_toast"))
        or bool(clause.of("oak_origin"))
        or bool(clause.cues("add"))
    )


def _nearest(form: Mention, found: list[Mention], clause: Clause) -> Mention | None:
    """The toast or origin said of a form: before it, or after it within a few words."""
    long = [
        m
        for m in found
        if not any(
            o is not m and o.first <= m.first and m.last <= o.last and o.last - o.first > m.last - m.first
            for o in found
        )
    ]
    near = [m for m in long if (m.last <= form.first + 1 and form.first - m.last < 5) or 0 <= m.first - form.last < 4]
    apart = {m.last for m in clause.of("oak_form")}
    if not near and len(apart) == 1 and long and long[-1].first > form.last:
        return long[-1]  # "oak chips into the rondo, medium toast"
    return min(near, key=lambda m: abs(m.first - form.first)) if near else None


def _taken_out(clause: Clause) -> bool:
    return not _OUT.isdisjoint(clause.words()) or (
        bool(clause.cues("oak_out")) and any(c.value.detail != "weak" for c in clause.cues("oak_out"))
    )


def _on_oak(clause: Clause, oaky: list[int]) -> bool:
    words = clause.text.words
    acts = [c for c in clause.of("cue") if c.value.detail != "weak"]
    if not acts and not clause.of("batch", "pronouns", "vessel", "date") and oaky[0] - clause.first > _SHORT:
        return False  # "reading a book on oak"
    return any(
        words[i] == "oaked"
        or (
            i
            and words[i - 1] in ("on", "to", "onto", "in", "the")
            and not {"off", "from"}.intersection(words[max(0, i - 3) : i])
            and (words[i - 1] in ("on", "onto") or words[i - 2 : i] == ["for", "the"])
        )
        for i in oaky
    )


def read_out(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """Oak taken out, or the wine taken off it."""
    if clause.mood in ("planned", "told", "asked", "supposed") or clause.of("money"):
        return
    strong = [c for c in clause.cues("oak_out") if c.value.detail != "weak"]
    words = clause.text.words
    oak = [
        m
        for m in clause.of("oak_form")
        if m.value in _FORMED and not any(v.first <= m.first < v.last for v in clause.of("vessel"))
    ]
    named = (
        oak[0].first
        if oak
        else next((i for i in range(clause.first, clause.last) if words[i] in ("oak", "wood")), None)
    )
    out = (
        named is not None
        and not any(m.first in scene.doses for m in oak)
        and (
            "out" in clause.words()
            or _verb_out(clause)
            or words[max(0, named - 2) : named] in (["off", "the"], ["from", "the"])
            or words[named - 1] == "off"
        )
    )
    if clause.mood == "denied" and not strong:
        return
    phrase = strong[0] if strong else None
    if phrase and " ".join(words[phrase.first : phrase.last]) == "out of the barrel":
        phrase = None
    if phrase or out:
        at = phrase.first if phrase else named
        if any(
            c.mood == "done"
            and c is not clause
            and c.cues("oak_out")
            and any(q.value.detail != "weak" for q in c.cues("oak_out"))
            for c in scene.clauses[: scene.clauses.index(clause)]
            if c.sentence == clause.sentence
        ):
            return
        yield Draft("oak_out", clause, at or clause.first, (at or clause.first) + 1, {})


def _verb_out(clause: Clause) -> bool:
    return any(
        clause.text.words[c.first] in ("pulled", "yanked", "removed", "fished", "retrieved")
        for c in clause.cues("oak_out")
    )
