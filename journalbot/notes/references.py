"""The words of a clause that say which wine it is about, apart from those that it only draws on or compares with."""

import itertools

from journalbot.language.lexicon import Mention
from journalbot.notes.clauses import Clause
from journalbot.notes.draft import Scene

_SKIP = {"the", "my", "our", "some", "a", "an", "of", "same", "for", "bit", "more", "last", "that"}
_COMPARED = {"like", "than", "as", "unlike", "versus", "vs"}
_SOURCE_LEADS = {"with", "like", "than", "as", "using", "w", "w/"}
_DRAWN_WITH = {"with", "w", "using"}
_POINTING = {"to", "into", "for", "on"}
_BETWEEN = {"and", "&", ",", "+", "the", "my", "/", "batch", "for", "in", "into", "on"}
_IDLE = {"about", "did", "do", "love", "call", "called", "with", "than", "worth", "wrote", "write", "say", "said"}


def references(scene: Scene, clause: Clause) -> list[Mention]:
    """References that say what a clause is about."""
    words = clause.text.words
    out = []
    for m in clause.of("batch", "stranger"):
        if m.value.how != "unclear" and (m.kind == "stranger" or _inert(scene, m, clause)):
            continue
        i = m.first - 1
        while i >= clause.first and (
            words[i] in _SKIP or any(a.first <= i < a.last for a in clause.of("amount", "number"))
        ):
            i -= 1
        lead = words[i] if i >= clause.first else ""
        if lead in _COMPARED or (lead in _SOURCE_LEADS and clause.cues("top_up", "blend")):
            continue
        drawn = not _DRAWN_WITH.isdisjoint(words[clause.first : m.first]) or lead in ("from", "out")
        if (clause.cues("top_up") and drawn) or (clause.cues("blend") and not clause.has("into")):
            continue
        out.append(m)
    return out


def ref_text(scene: Scene, ref: Mention) -> str:
    """A reference as the note has it."""
    return scene.text.slice(ref.first, ref.last)


def coordinated(refs: list[Mention], clause: Clause) -> bool:
    """Whether references stand in one list ("batch 3 and the plum")."""
    words = clause.text.words
    return all(_BETWEEN.issuperset(words[a.last : b.first]) for a, b in itertools.pairwise(refs))


def points(clause: Clause) -> bool:
    """Whether a pronoun in the clause stands for a wine: not "telling me about it", "did it"."""
    words = clause.text.words
    return any(m.first == 0 or words[m.first - 1] not in _IDLE for m in clause.of("pronouns"))


def _inert(scene: Scene, m: Mention, clause: Clause) -> bool:
    """A fruit's name that stands for the fruit here: a tasting word, a material, what a wine is started from."""
    if m.value.how == "number":
        return False
    if not m.value.fits:
        return True
    if m.first in scene.doses and any(x.first <= m.first and m.last <= x.last for x in clause.of("material")):
        return True
    if not _POINTING.isdisjoint(clause.text.words[max(0, m.first - 2) : m.first]):
        return False
    return (
        scene.started is not None
        and clause.first in scene.start_clauses
        and all(c.value.detail == "weak" for c in clause.cues("rack", "bottle", "top_up", "drink", "taste", "give"))
        and m.value.how == "name"
        and scene.started not in m.value.fits
    )
