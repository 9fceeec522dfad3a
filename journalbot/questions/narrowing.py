"""What a question narrows a measure by: the material, the vessel, the person, the words that a note must hold."""

from collections.abc import Sequence

from journalbot.language.text import Text
from journalbot.questions.candidates import FREE_WORDS, PLAN_ACTS, SIGN_OF, STAGES, Candidate, content
from journalbot.questions.query import What
from journalbot.questions.signs import Sign
from journalbot.vocabulary.question_signs import MATERIAL_GROUPS
from journalbot.vocabulary.questions import NO_ITEM, words

GOODS = frozenset(("juice", "grapes", "fruit"))  # fillers that are goods where money is spoken of
_SMALL = words("the a an my our about of in on i we it that with to any used for from at by what when was is were")
_ANY_VESSEL = words("vessel vessels container containers")
_SORTS = words("long short big little old new")  # fillers that tell goods apart: "long corks"
_PLAIN_CLOSURES = words("cork corks cap caps")  # other closures are named in two words
_ORDINALS = words("first second third fourth last next")
_ASKS = frozenset(("what", "did", "when", "how much", "how many", "who", "why", "where", "times"))


def narrowed(
    text: Text, candidate: Candidate, signs: Sequence[Sign], tokens: Sequence[int], explained: set[int]
) -> What:
    """The What of a candidate: its measure, with what the question narrows it by."""
    inside = set(tokens)
    here = [s for s in signs if set(range(s.first, s.last)) <= inside]
    measure = candidate.measure
    of = []
    for name in measure.narrows:
        if name in FREE_WORDS:
            value = _free_words(text, candidate, here, tokens, explained, name)
        elif name == "material":
            value = _material(here, measure.name)
        else:
            value = _named(here, name)
        if value:
            of.append((name, value))
    return What(measure.name, (*measure.fixed, *of))


def _named(here: Sequence[Sign], name: str) -> str:
    """What a sign of the question names."""
    if name == "stage":
        stages = list(dict.fromkeys(STAGES[s.name] for s in here if s.name in STAGES))
        both = {"stuck", "restarted"} <= set(stages)  # "when did it stick, and when did it get going again"
        return "stuck or restarted" if both else next(iter(stages), "")
    if name == "act":
        return next((s.name for s in here if s.name in PLAN_ACTS), "")
    if name == "vessel":
        return next((s.value for s in here if s.name == "vessel" and s.value.lower() not in _ANY_VESSEL), "")
    if name == "person":
        return " and ".join(dict.fromkeys(s.value for s in here if s.name == "person"))
    value = next((s.value for s in here if s.name == SIGN_OF.get(name, name)), "")
    return "" if name == "closure" and value not in _PLAIN_CLOSURES and " " not in value else value


def _material(here: Sequence[Sign], measure: str) -> str:
    """The material, or the group of materials (acid, sulfite …) that is asked for as one."""
    acid = any(s.name in ("acid", "deacidify") for s in here)
    value = "" if acid else next((s.value for s in here if s.name == "material"), "")
    group = next((s.name for s in here if s.name in MATERIAL_GROUPS and measure == "addition"), "")
    return group if group and (not value or (value in MATERIAL_GROUPS[group] and _only(here, group))) else value


def _free_words(
    text: Text, candidate: Candidate, here: Sequence[Sign], tokens: Sequence[int], explained: set[int], name: str
) -> str:
    """The words that a note must hold, or that name what was bought: those that nothing else explains."""
    measure = candidate.measure
    search, item = measure.name == "search", name == "item"
    row = {s.name for s in candidate.signs} - {"descriptor"}
    taken = {i for s in here if s.name in row for i in range(s.first, s.last)}
    after = max(taken, default=-1)
    if not item:
        taken |= {i for s in here if s.name in measure.beside for i in range(s.first, s.last)}
    else:  # "what did Anders charge for the grapes"
        taken |= {i for s in here if s.name == "person" for i in range(s.first, s.last)}
    asks = {i for s in here if s.name in _ASKS or s.name.startswith("way:") for i in range(s.first, s.last)}
    asks |= set() if search else {i for i in tokens if text.words[i] in _ORDINALS}
    asks |= set() if search else {i for s in here if s.name == "denial" for i in range(s.first, s.last)}
    telling = set(content(text, tokens))
    meant = [
        i
        for i in tokens
        if (i in telling or (item and (text.words[i] in GOODS or (text.words[i] in _SORTS and i + 1 in telling))))
        and not (item and text.tokens[i].kind == "number")
        and i not in explained | taken | asks
    ]
    if search and not meant and after >= 0:
        small = {i for i in tokens if text.tokens[i].kind != "word" or text.words[i] in _SMALL}
        meant = [i for i in tokens if i > after and i not in small | explained]
    said = [
        # As typed where notes are searched for it: it may well be right.
        (text.tokens[i].text.lower() if search else text.tokens[i].low)
        for i in meant
    ]
    apart = [item and bool(k) and _apart(text, meant[k - 1], i) for k, i in enumerate(meant)]
    value = " ".join(f"{'or ' if split else ''}{word}" for word, split in zip(said, apart, strict=True))
    if item and set(value.split()) <= NO_ITEM:
        value = ""
    smelt = next((s.value for s in here if s.name == "smell" and search), "")
    return value.removesuffix("'s") or smelt


def _apart(text: Text, first: int, last: int) -> bool:
    """Whether two words of an item are two items: `grapes and juice`."""
    return bool(set(text.words[first + 1 : last]) & {"and", "or", ",", "&", "plus"})


def _only(signs: Sequence[Sign], group: str) -> bool:
    """Whether a material was named only by the group's own word ("sulphite" is any sulfite, "kmeta" the one)."""
    material = next(s for s in signs if s.name == "material")
    return any(s.name == group and s.first <= material.first and material.last <= s.last for s in signs)
