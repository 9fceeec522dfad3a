"""Wines named in a note that the journal does not have: which of its own is meant must be asked."""

from journalbot.language.batch_index import GENERIC
from journalbot.notes.clauses import Clause
from journalbot.notes.draft import Draft, Scene
from journalbot.notes.references import ref_text
from journalbot.vocabulary.english import english
from journalbot.vocabulary.everyday import EVERYDAY

_OBJECTS = (  # acts whose object is the wine
    "rack",
    "press",
    "crush",
    "bottle",
    "degas",
    "filter",
    "stir",
    "chill",
    "punch_down",
    "pitch",
    "top_up",
    "drink",
    "give",
    "taste",
    "move",
    "blend",
)
_RECEIVED = ("addition", "pitch", "oak", "malolactic", "reading", "fermentation", "top_up", "punch_down", "stir")
_RECEIVING = {"to", "into", "in", "on", "for"}
_BOTTLES_OF = {"of", "a", "an", "another"}
_DETERMINERS = {"the", "my", "our", "that", "this"}
_SAID_OF = {"off", "into", "to", "with", "is", "was", "at", "has", "from", "'s", "went", "now", ":"}
_TOLD = {"gave", "reads", "read", "says", "said", "shows", "showed"}  # people and instruments do, wines do not
_NOT_A_WINE = {"color", "colour", "chips", "juice", "skins", "wood", "barrel", "flavor", "flavour", "notes", "taste"}


def strange(scene: Scene, draft: Draft) -> str:
    """A wine that the journal does not have, named where the act's wine stands (`racked the cider`, `kmeta to the
    mead`); nothing where there is none.
    """
    clause, words = draft.clause, scene.text.words
    if clause.first in scene.start_clauses:
        return ""
    acts = {c.last for c in clause.of("cue") if c.value.detail != "weak" and c.value.kind in _OBJECTS}
    counts = clause.of("number")
    for m in clause.of("stranger"):
        if GENERIC.issuperset(m.value.terms) and m.value.terms:
            continue  # "crushed the grapes"
        i = m.first
        while i > clause.first and words[i - 1] in _DETERMINERS:
            i -= 1
        after = words[m.last] if m.last < len(words) else ""
        lead = words[i - 1] if i > clause.first else ""
        if after not in _NOT_A_WINE and (
            (i == clause.first and _said_of(m.last, clause))
            or (i in acts and (draft.kind != "taste" or i < m.first))
            or (lead in _RECEIVING and draft.kind in _RECEIVED)
            or (draft.kind in ("drink", "give") and (lead in _BOTTLES_OF or any(n.last == i for n in counts)))
        ):
            return ref_text(scene, m)
    return ""


def nameless(scene: Scene, clause: Clause) -> str:
    """A word in the place of a wine's name that nothing explains (`windfall 1.008`, `racked windfall off its lees`);
    nothing where there is none.
    """
    if clause.first in scene.start_clauses:
        return ""
    text = scene.text
    acts = [c.last for c in clause.of("cue") if c.value.detail != "weak" and c.value.kind not in ("add", "vessel")]
    for i in (clause.first, *acts):
        at = i
        while i < clause.last and text.words[i] in _DETERMINERS:
            i += 1
        told = not _TOLD.isdisjoint(text.words[i + 1 : i + 2])
        named = not told and ((i > at and at != clause.first) or _said_of(i + 1, clause))
        if i < clause.last and text.tokens[i].kind == "word" and named and _unexplained(scene, i):
            return text.slice(i, i + 1)
    return ""


def _said_of(i: int, clause: Clause) -> bool:
    """Whether what stands before token `i` is the subject of what follows: a reading, "is", "off its lees"."""
    words = clause.text.words
    return (i < len(words) and words[i] in _SAID_OF) or any(r.first in (i, i + 1) for r in clause.of("reading"))


def _unexplained(scene: Scene, i: int) -> bool:
    """Whether a word is neither the journal's, nor the trade's, nor English, and no reading explains it."""
    word = scene.text.words[i]
    known = scene.names.knows(word) or word in EVERYDAY or not word.isalpha() or len(word) < 4
    known = known or word in english() or word.removesuffix("s") in english()
    return not known and not any(m.first <= i < m.last for m in scene.text.mentions)
