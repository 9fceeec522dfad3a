"""How a fermentation goes, alcoholic and malolactic."""

from collections.abc import Iterator

from journalbot.language.lexicon import Mention
from journalbot.notes.clauses import Clause
from journalbot.notes.draft import Draft, Scene

_MALO_DONE = {
    "done", "complete", "completed", "finished", "through", "thru", "over", "gone", "ended", "finally", "finish",
}
_MALO_BEGUN = {
    "in", "into", "added", "add", "inoculated", "started", "pitched", "went", "put", "goes", "sprinkled", "start",
    "begun", "began", "gets", "got", "starting", "dosed", "onto",
}
# Words of an ending that are said of other things too, and what must not be near them.
_OPEN_ENDINGS = {
    "dry", "done", "finished", "complete", "is done", "is finished", "all done", "'s done", "'s finished", "bone dry",
    "has finished", "dryness", "'s dry", "so dry",
}
_OPEN_STARTS = {
    "started", "began", "has started", "has begun", "alive", "ticking", "is going", "underway", "started up",
    "got going", "going well", "going nicely", "fermenting", "bubbling", "fizzing", "up and running",
}
_OTHER_THINGS = {
    "airlock", "airlocks", "taste", "tastes", "finish", "malo", "ml", "mlf", "malolactic", "bottling", "bottled",
    "label", "labels", "racking", "cleaning", "cork", "corks", "nose", "palate", "bucket", "filter", "filtering",
    "weather", "grandson", "grandkids", "harvest", "picking", "degassing", "yet", "bottle", "bottles", "siphon",
}
_NOT_BEFORE = {
    "stopped", "stopping", "quit", "quits", "almost", "nearly", "not", "isn't", "until", "till", "when", "once", "if",
    "before", "still", "never", "should", "slowly", "barely", "hardly", "no",
}
_GUESSED = {"maybe", "perhaps", "possibly", "might", "whether", "unsure"}
_NEW_CAUSES = {
    "batch", "a", "new", "off", "with", "another", "this", "making", "on", "to", "the", "my", "some", "two", "three",
}


def read(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """At most one turn of the fermentation a clause."""
    if clause.mood in ("planned", "told", "asked", "supposed") or clause.cues("malolactic") or clause.has(*_GUESSED):
        return
    best: Mention | None = None
    for cue in clause.cues("fermentation"):
        if cue.value.form in ("base",) or not _meant(cue, clause, scene):
            continue
        if best is None or _rank(cue) > _rank(best):
            best = cue
    if best is not None:
        strong = best.value.detail in ("stuck", "restarted") or best.last - best.first > 1
        yield Draft(
            "fermentation",
            clause,
            best.first,
            best.last,
            {"stage": "restarted" if best.value.detail == "started" and clause.has("again") else best.value.detail},
            needs="batch" if strong and clause.of("reading") else "maybe",
        )


# Readings beside which "dry" or "done" is said of the ferment (common practice, no source).
_DRY = {"sg": 1.005, "brix": 1.0, "residual_sugar": 4.0}
_ALONE = 5  # words of a sentence that says no more than "Dry."
_ORDER = ("started", "finished", "stuck", "restarted")


def _rank(cue: Mention) -> tuple[int, int]:
    return cue.last - cue.first, _ORDER.index(cue.value.detail)


def _meant(cue: Mention, clause: Clause, scene: Scene) -> bool:
    words = clause.text.words
    phrase = " ".join(words[cue.first : cue.last])
    before = words[max(clause.first, cue.first - 2) : cue.first]
    after = words[cue.last : cue.last + 1]
    detail = cue.value.detail
    if detail in ("started", "finished") and _NOT_BEFORE.intersection(before):
        return False
    if clause.mood == "denied" and not (detail == "stuck" and _before_denial(cue, clause)):
        return False
    if detail == "started":
        if before[-1:] in (["i"], ["we"]):
            return False  # yeast "that I got going in warm water"
        if scene.started is not None and clause.first in scene.start_clauses and phrase in _OPEN_STARTS:
            return False
        if any(c.first == cue.last and c.value.kind not in ("fermentation", "add", "start") for c in clause.of("cue")):
            return False
        if (
            phrase in ("started", "began")
            and after
            and after[0].endswith("ing")
            and after[0] not in ("fermenting", "bubbling", "working", "fizzing")
        ):
            return False
        if phrase in _OPEN_STARTS and (
            _NEW_CAUSES.intersection(after)
            or clause.of("price")
            or clause.has("raining", "snowing", "work", "school", "digging", "pressing")
        ):
            return after == ["on"] and bool(clause.of("date")) and bool(clause.of("batch", "pronouns"))
        if phrase in ("started", "began", "has started", "has begun"):
            return bool(
                clause.of("batch")
                or clause.of("pronouns")
                or clause.has("ferment", "fermenting", "fermentation", "yeast")
            ) and not clause.has("leaking", "dripping")
        return True
    if detail == "finished" and phrase in _OPEN_ENDINGS:
        if _OTHER_THINGS.intersection(clause.words()) or clause.of("score") or _as_taste(cue, clause):
            return False
        return bool(
            clause.of("batch")
            or clause.of("reading")
            or clause.of("vessel")
            or clause.of("pronouns")
            or _next_reads(clause, scene)
        )
    if (
        detail == "restarted"
        and any(c.of("airlock") for c in scene.sentence(clause))
        and not clause.has("fermenting", "bubbling", "working", "ferment")
    ):
        return False
    if detail == "stuck":
        return (
            after[:1]
            not in (
                ["it"],
                ["the"],
                ["in"],
                ["to"],
                ["an"],
                ["a"],
                ["back"],
                ["my"],
                ["on"],
                ["about"],
                ["with"],
                ["by"],
            )
            and not clause.has(
                "lid",
                "cork",
                "bung",
                "stopper",
                "tap",
                "siphon",
                "drawer",
                "airlock",
                "label",
                "labels",
                "hose",
                "car",
                "truck",
            )
        ) or bool(clause.of("reading"))
    return True


def _before_denial(cue: Mention, clause: Clause) -> bool:
    """`stuck at 1.022 and has not shifted`, or the cue's own "has not" (`hasn't moved in a week`)."""
    return cue.last - cue.first > 1 or any(d.first > cue.first for d in clause.of("denied"))


def _next_reads(clause: Clause, scene: Scene) -> bool:
    """Whether a reading beside it shows the wine dry: in its sentence, or right before one of this word alone."""
    alone = clause.last - clause.first <= _ALONE
    near = [c for c in scene.clauses if alone and abs(c.sentence - clause.sentence) == 1]
    return any(
        r.value.quantity in _DRY and r.value.value <= _DRY[r.value.quantity]
        for s in (*near, *scene.sentence(clause))
        for r in s.of("reading")
    )


def _as_taste(cue: Mention, clause: Clause) -> bool:
    """ "Dry" as a taste: in a list of tasting words."""
    batches = clause.of("batch")
    return (clause.text.words[cue.first] == "dry" and bool(clause.cues("taste", "drink"))) or (
        any(
            d.first != cue.first
            and d.value not in ("dry", "finish")
            and not any(b.first <= d.first < b.last for b in batches)
            for d in clause.of("descriptor")
        )
        and not clause.of("reading")
    )


def read_malolactic(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """Malolactic begun or over."""
    cues = clause.cues("malolactic")
    cultures = [m for m in clause.of("code") if m.value.lower() in {c.lower() for c in scene.cellar.cultures}]
    if (
        not (cues or cultures)
        or clause.of("money")
        or clause.mood in ("planned", "told", "asked", "supposed", "denied")
    ):
        return
    words = set(clause.words())
    said = next((c.value.detail for c in cues if c.value.detail), "")
    context = [c for s in scene.sentence(clause) for c in s.cues("malolactic")]
    if not said and _MALO_DONE & words:
        said = "finished"
    elif not said and (
        _MALO_BEGUN & words
        or cultures
        or clause.cues("add")
        or ("for" in words and words & {"culture", "bacteria", "bugs"})
    ):
        said = "started"
    if not said:
        said = next((c.value.detail for c in context if c.value.detail), "")
    if not said or _told_elsewhere(clause, scene, said):
        return
    at = cues[0] if cues else cultures[0]
    fields: dict[str, object] = {"stage": said}
    codes = clause.of("code") or [
        m for c in scene.sentence(clause) if c.first > clause.first and not c.cues("pitch") for m in c.of("code")
    ]
    if said == "started" and codes:
        fields["culture"] = codes[0].value
    yield Draft(
        "malolactic",
        clause,
        at.first,
        at.last,
        fields,
        needs="batch" if cultures or _MALO_DONE & words or _MALO_BEGUN & words else "maybe",
    )


def _told_elsewhere(clause: Clause, scene: Scene, said: str) -> bool:
    """The same turn told twice in a note (`malic's gone. ML done`) is one; the last clause that tells it counts."""
    later = scene.clauses[scene.clauses.index(clause) + 1 :]
    if said != "finished":
        return False
    return any(
        c.cues("malolactic")
        and (_MALO_DONE.intersection(c.words()) or any(q.value.detail for q in c.cues("malolactic")))
        and not c.of("batch")
        for c in later
    )
