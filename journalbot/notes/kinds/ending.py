"""Batches that end otherwise than in bottles, and why."""

from collections.abc import Iterator

from journalbot.language.lexicon import Mention
from journalbot.notes.clauses import Clause
from journalbot.notes.draft import Draft, Scene
from journalbot.vocabulary.descriptors import FAULTS

_REASON_LEADS = {"because", "cause", "since", "as", "due", "for"}
_FILLERS = {
    "straight", "pure", "total", "just", "all", "it", "was", "had", "turned", "to", "went", "gone", "is", "full", "the",
    "a", "into", "completely", "pretty", "now", "by", "of", "then", "whole", "lot", "that",
}


def read_ending(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """A batch thrown away, and why."""
    if clause.mood != "done":
        return
    cues = [c for c in clause.cues("end") if c.value.form == "done" and _thrown(c, clause)]
    if not cues:
        words = clause.words()
        if words in (["all", "drunk"], ["all", "drunk", "up"], ["all", "gone"]):
            yield Draft("end", clause, clause.first, clause.last, {"reason": " ".join(words)})
        return
    fields: dict[str, object] = {}
    if reason := _reason(cues[0], clause, scene):
        fields["reason"] = reason
    yield Draft("end", clause, cues[0].first, cues[0].last, fields)


_BRIEF = 3  # words of a clause that only names what went wrong
_LEAVINGS = ("lees", "sediment", "sanitizer", "water", "pulp", "skins", "gunk", "sludge")


def _thrown(cue: Mention, clause: Clause) -> bool:
    words = clause.text.words
    if cue.value.detail == "weak":
        return False
    onto = words[cue.last : cue.last + 1] in (["in"], ["into"], ["on"])
    other = clause.of("oak_form") or clause.has(*_LEAVINGS) or (clause.of("material") and not clause.of("batch"))
    return not onto and not other


def _reason(cue: Mention, clause: Clause, scene: Scene) -> str | None:
    text = clause.text
    words = text.words
    i = scene.clauses.index(clause)
    for k in range(cue.last, clause.last):
        if words[k] in _REASON_LEADS:
            return _trim(text.slice(k + 1, clause.last))
    fault = next((d for d in clause.of("descriptor") if d.first >= cue.last and d.value in FAULTS), None)
    if fault is not None:
        return text.slice(fault.first, fault.last)
    comma = next((k for k in range(clause.last - 1, cue.last - 1, -1) if words[k] in (",", "-", "–", "—", "(")), None)
    if comma is not None and comma + 1 < clause.last:
        return _trim(text.slice(comma + 1, clause.last))
    after = scene.clauses[i + 1] if i + 1 < len(scene.clauses) else None
    if after and after.sentence == clause.sentence and len(after.words()) <= _BRIEF and not after.of("cue", "batch"):
        return _trim(text.slice(after.first, after.last))
    near = after if after and after.sentence == clause.sentence else None
    fault = next((d for d in near.of("descriptor") if d.value in FAULTS), None) if near else None
    if fault is not None:
        return text.slice(fault.first, fault.last)
    told = [c for c in scene.clauses[:i] if clause.sentence - c.sentence <= 1]
    fault = next((d for c in reversed(told) for d in c.of("descriptor") if d.value in FAULTS), None)
    if fault is not None:
        return text.slice(fault.first, fault.last)
    for c in scene.clauses[i + 1 : i + 3]:
        if (
            c.of("vessel")
            or (
                c.of("cue")
                and any(
                    x.value.detail != "weak" and x.value.kind not in ("taste", "add", "fermentation", "purchase")
                    for x in c.of("cue")
                )
            )
            or c.of("batch")
        ):
            break
        return _trim(text.slice(c.first, c.last))
    back = scene.clauses[i - 1] if i else None
    if back and back.sentence == clause.sentence and not back.of("reading"):
        return _trim(text.slice(back.first, back.last))
    return None


def _trim(phrase: str) -> str | None:
    words = phrase.split()
    while words and words[0].lower().strip(",.") in _FILLERS:
        words = words[1:]
    return " ".join(words).strip(" ,.") or None
