"""Words that the person teaches: "'the pig' is the 15 gallon barrel", "when I say bubbly I mean batch 6"."""

import datetime
import re
from typing import TYPE_CHECKING, NamedTuple

from journalbot.language.text import understand
from journalbot.language.tokens import tokenize
from journalbot.model import Json, Settings
from journalbot.vocabulary.everyday import EVERYDAY

if TYPE_CHECKING:
    from journalbot.journal.cellar import Cellar
    from journalbot.language.names import Names

_QUOTED = r"['\"“”‘’«»]"
# Forms of teaching: the word, then what it means (or the other way round).
_FORMS = tuple(
    re.compile(form, re.IGNORECASE)
    for form in (
        rf"(?:when(?:ever)?|if) (?:i|we) (?:say|write|talk about|speak of|mention) "
        rf"{_QUOTED}?(?P<word>[^'\"“”,]+?){_QUOTED}?,? (?:i|we) mean (?P<means>.+)",
        rf"by {_QUOTED}?(?P<word>[^'\"“”,]+?){_QUOTED}?,? (?:i|we) mean (?P<means>.+)",
        rf"{_QUOTED}(?P<word>[^'\"“”]+){_QUOTED} "
        r"(?:is|means|stands for|is short for|is my name for|is what (?:i|we) call|=) (?P<means>.+)",
        r"(?P<word>[^\s'\"“”,.]+(?: [^\s'\"“”,.]+)?) (?:means|is short for|stands for) (?P<means>.+)",
        rf"(?:i|we) call (?P<means>.+?) {_QUOTED}(?P<word>[^'\"“”]+){_QUOTED}",
    )
)
# The name of a vessel: "Hank is the 15 gallon barrel" tells of other things where it names none.
_NAMING = tuple(
    re.compile(form, re.IGNORECASE)
    for form in (
        r"(?P<means>(?:the|my|our) .+?) is (?:called|named|nicknamed|known as) (?P<word>[^,.;]+)",
        r"(?P<word>[^\s,.;]+) is (?P<means>(?:the|my|our) .+)",
    )
)
_ARTICLES = {"the", "my", "our", "a", "an", "that", "this"}
# Sorts of mention that a word may be taught to mean, and under what name it is kept.
_SORTS = {"yeast": "yeast", "culture": "culture", "material": "material", "person": "person", "place": "place"}
# What the trade's own words mean cannot be taught away: "racked" would no longer rack.
_FIXED = {"cue", "quantity", "planned", "denied", "supposed", "hearsay", "pronouns"}


class Lesson(NamedTuple):
    """A word and what it was said to mean; `meaning` is None where that is not known here, and `why` says so."""

    word: str
    meaning: Json | None
    why: str = ""


def read_lesson(text: str, on: datetime.date, settings: Settings, names: "Names", cellar: "Cellar") -> Lesson | None:
    """The word that a line teaches; None where it teaches none."""
    line = " ".join(text.split()).rstrip(".! ")
    found = next((m for form in (*_FORMS, *_NAMING) if (m := form.fullmatch(line))), None)
    if found is None:
        return None
    naming = found.re in _NAMING
    tokens = [t for t in tokenize(found["word"]) if t.kind != "mark"]
    words = [t.low for t in tokens]
    while words and words[0] in _ARTICLES:
        words.pop(0)
    word = " ".join(words)
    if not word or len(words) > 4:
        return None
    meaning = _meaning(found["means"], on, settings, names, cellar)
    if naming and (not meaning or "vessel" not in meaning or any(names.knows(w) or w in EVERYDAY for w in words)):
        return None
    quoted = re.search(_QUOTED, text) is not None or line[:2].lower() in ("wh", "by", "if")
    if meaning is None and not quoted:
        return None  # "foam means trouble" is a note
    if any(
        m.kind in _FIXED and m.last - m.first == len(words) for m in names.lexicon.find(words, tokens[-len(words) :])
    ):
        return Lesson(
            word, None, f"“{word}” has a meaning of its own in every note, and keeps it; choose another word."
        )
    if meaning is None:
        known = "a batch, a vessel, a yeast, a substance or a person of this journal"
        return Lesson(word, None, f"I do not know “{found['means']}” yet: name {known}.")
    return Lesson(word, meaning)


def _meaning(text: str, on: datetime.date, settings: Settings, names: "Names", cellar: "Cellar") -> Json | None:
    """The one thing that a text names, if it names nothing else."""
    read = understand(text, names, on, settings)
    whole = {i for i, w in enumerate(read.words) if w not in _ARTICLES and read.tokens[i].kind != "mark"}
    for m in sorted(read.mentions, key=lambda m: m.first - m.last):
        if not whole <= set(range(m.first, m.last)):
            continue
        if m.kind == "vessel":
            known = cellar.find_vessel(m.value.name)
            return {"vessel": known.name if known else m.value.name}
        if m.kind == "batch" and len(m.value.fits) == 1:
            return {"batch": m.value.fits[0]}
        if m.kind == "code":
            return {"culture" if m.value in cellar.cultures else "yeast": m.value}
        if m.kind in _SORTS:
            return {_SORTS[m.kind]: m.value}
    return None
