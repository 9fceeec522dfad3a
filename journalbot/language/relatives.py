"""Days told in passing, of a thing and not of the act: "the honey I bought yesterday", "the zin we started in May".

Such a day dates neither the act nor the reading that the sentence tells of.
"""

from collections.abc import Sequence

from journalbot.language.dates import DateMention
from journalbot.language.lexicon import Mention

_SUBJECTS = {"i", "we", "he", "she", "they", "you"}
_AUXILIARIES = {"had", "have", "has", "just", "was", "were"}
_DETERMINERS = {"the", "a", "an", "my", "our", "some", "this", "those", "these", "his", "her", "their"}
_LEADS = {"of", "with", "from", "into", "in", "to", "using"}
_LINKS = {"that", "which", "who"}
# Verbs of things had, brought or seen to; those of the trade's own acts are the vocabulary's.
_VERBS = {
    "bought", "brought", "picked", "weighed", "cleaned", "made", "got", "sent", "left", "found", "mixed", "washed",
    "borrowed", "ordered", "saved", "kept", "froze", "gave", "lent", "used", "opened", "came", "arrived", "delivered",
    "given", "won", "grew", "crushed", "frozen", "received", "fetched",
}  # fmt: skip
_NO_ACTS = {"purchase", "harvest", "add"}  # these tell where a thing came from
_FINITE = {"is", "was", "has", "had", "reads", "read", "stands", "stood", "went", "got", "looks", "tastes", "'s"}
_PARTS = {",", ".", ";", ":", "!", "?", "\n", "(", ")", "and", "but", "then", "so", "-", "–", "—", "&", "+"}
_FAR = 3  # words between a verb and its day
_NEAR = 3  # words between a determiner and its noun


def told_in_passing(words: list[str], known: Sequence[Mention], dates: Sequence[DateMention]) -> dict[int, DateMention]:
    """The days that hang on a thing, by the index of the verb that they date."""
    cues = [m for m in known if m.kind == "cue" and m.value.form == "done"]
    strong = [m for m in cues if m.value.detail != "weak"]
    acts = {m.first for m in strong if m.value.kind not in _NO_ACTS}
    out: dict[int, DateMention] = {}
    for d in dates:
        verb = _verb_before(words, d, acts)
        if verb is None:
            continue
        subject = verb - 1 - (words[verb - 1] in _AUXILIARIES)
        ends = d.last >= len(words) or words[d.last] in _PARTS
        if subject > 0 and words[subject] in _SUBJECTS:
            noun = subject - 1 - (words[subject - 1] in _LINKS)
            hangs = not ends and words[d.last] in _FINITE
            # an act at the end of its sentence is told for its own sake: "racked the zin I pressed on Monday"
            linked = words[subject - 1] == "that"
            aside = hangs or linked or verb not in acts
        else:
            noun = verb - 1
            determiner = _determiner(words, noun)
            aside = verb not in acts or (determiner > 0 and words[determiner - 1] in _LEADS)
        determiner = _determiner(words, noun)
        led = any(determiner > m.first and not _PARTS.intersection(words[m.first : determiner]) for m in strong)
        if aside and determiner >= 0 and (led or (not ends and words[d.last] in _FINITE)):
            out[verb] = d
    return out


def _verb_before(words: list[str], d: DateMention, acts: set[int]) -> int | None:
    """The verb that a day follows, with little between them."""
    for i in range(d.first - 1, max(d.first - 2 - _FAR, 0), -1):
        if words[i] in _PARTS:
            return None
        if words[i] in _VERBS or i in acts:
            return i
    return None


def _determiner(words: list[str], noun: int) -> int:
    """Where the article of a noun stands; -1 where it has none."""
    near = range(noun - 1, max(noun - 1 - _NEAR, -1), -1)
    return next((i for i in near if words[i] in _DETERMINERS), -1) if noun > 0 and words[noun].isalpha() else -1
