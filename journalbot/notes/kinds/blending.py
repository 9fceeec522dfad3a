"""Blends: what went in, how much of each, and into which batch."""

from collections.abc import Iterator

from journalbot.language.amounts import Amount
from journalbot.language.lexicon import Mention
from journalbot.notes.clauses import Clause
from journalbot.notes.draft import Draft, Scene


def read_blend(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """A blend: what went in, and how much of each, on the batch that they went into."""
    cues = [c for c in clause.cues("blend") if c.value.form == "done"]
    whole = list(scene.sentence(clause))
    if not clause.done or not cues:
        return
    here = (
        [clause]
        if len(clause.of("batch")) > 1
        or (not clause.has("together") and any(_amount_before(m, [clause]) for m in clause.of("batch")))
        else whole
    )
    refs = [m for c in here for m in c.of("batch")]
    into = [m for m in refs if _into(m, clause)]
    parts: list[dict[str, object]] = []
    for m in refs:
        source = _source(m, scene)
        if m in into or source is None:
            continue
        amount = _amount_before(m, whole)
        if amount is not None:
            parts.append({"batch": source, "amount": amount.value, "unit": amount.unit})
    strong = cues[0].value.detail != "weak"
    if not parts or (not strong and len(parts) < 2 and not into):
        return
    draft = Draft("blend", clause, cues[0].first, cues[0].last, {"with": parts})
    if into and len(into[0].value.fits) == 1:
        draft.batches = into[0].value.fits
    elif into:
        draft.ref = into[0]
    elif clause.has("into") and clause.of("pronouns") and (before := _spoken_of(clause, scene)):
        draft.batches = before
    elif scene.started is not None:
        draft.batches = (scene.started,)
    yield draft


def _source(m: Mention, scene: Scene) -> int | None:
    """The one batch that a part can be: of several of the name, the one not in bottles."""
    fits = m.value.fits
    able = fits if len(fits) == 1 else [n for n in fits if scene.cellar.batches[n].under_way]
    return able[0] if len(able) == 1 else None


def _spoken_of(clause: Clause, scene: Scene) -> tuple[int, ...]:
    """The batch that "it" stands for: the last one spoken of in the note before this clause."""
    refs = [m for c in scene.clauses[: scene.clauses.index(clause)] for m in c.of("batch")]
    able = [n for n in refs[-1].value.fits if scene.cellar.batches[n].under_way] if refs else []
    return (able[0],) if len(able) == 1 else ()


def _into(m: Mention, clause: Clause) -> bool:
    words = clause.text.words
    i = m.first - 1
    while i >= 0 and words[i] in ("the", "my", "our"):
        i -= 1
    return i >= 0 and words[i] in ("into", "to")


def _amount_before(m: Mention, clauses: list[Clause]) -> Amount | None:
    words = clauses[0].text.words
    for c in clauses:
        for a in c.of("amount", "percent"):
            if a.last <= m.first and all(
                w in ("of", "the", "my", "our", "batch", "#", "number") for w in words[a.last : m.first]
            ):
                return a.value  # type: ignore[no-any-return]
    return None
