"""Questions that are not answered: of general knowledge, which no journal holds (`what is malolactic fermentation`),
and those of a kind that no Query can say.
"""

from collections.abc import Sequence

from journalbot.language.lexicon import Mention
from journalbot.language.text import Text
from journalbot.questions.signs import Sign
from journalbot.vocabulary.questions import words

ANSWER = (
    "That is general knowledge, which the journal does not hold: it answers from your own notes, and works out "
    "doses, gravities and the like. A winemaking handbook will tell."
)
# Processes and substances that people ask the meaning of.
_THINGS = words(
    "malolactic rack fining degas filter stir chill blend top_up press crush punch_down lees sulfite stabilise "
    "attenuation airlock acid deacidify sweeten oak culture nutrients skins"
)
_MATERIALS = frozenset(("material", "a sulfite", "an acid"))
_OWN = words("i we my our me us it mine this that these those the you have has had been now")
_PASSED = words("a an is are of for in to does do mean means work works what how why people one winemakers good about")
_WHAT = (("what", "is"), ("what", "are"), ("what", "does"), ("what", "do"), ("how", "does"), ("how", "do"))
_WHY = (("why", "do"), ("why", "does"), ("why", "would"), ("why", "should"), ("why", "is"))

_ORDER = frozenset(("first", "last", "latest", "next"))
_SEVERAL = words("2 3 4 5 6 7 8 9 10 two three four five six seven eight nine ten few")
_SPANS = words("day week month year days weeks months years hours")


def of_general_knowledge(text: Text, signs: Sequence[Sign], refs: Sequence[Mention]) -> bool:
    """Whether a question asks what something is or how it works, and of no wine, day, vessel or person."""
    said = [w for i, w in enumerate(text.words) if text.tokens[i].kind != "mark"]
    lead = tuple(said[:2])
    whole = ("difference", "between") if "difference" in said and "between" in said else ()
    if lead not in (*_WHAT, *_WHY) or set(said) & _OWN - ({"you"} if lead in _WHY else set()) - set(whole and {"the"}):
        return False
    if any(m.value.fits for m in refs) or text.of("date", "vessel", "code", "number", "reading", "amount", "person"):
        return False
    things = [s for s in signs if s.name in _THINGS or s.name in _MATERIALS]
    others = [s for s in signs if s.name.startswith("state:") or s.name in ("left", "due", "overdue", "plan", "age")]
    covered = {i for s in things for i in range(s.first, s.last)}
    rest = {w for i, w in enumerate(text.words) if i not in covered and text.tokens[i].kind != "mark"}
    done = any(text.words[s.first].endswith("ed") for s in things)
    return bool(things) and not others and not done and (lead in _WHY or rest <= _PASSED | set(whole) | {"the", "and"})


def beyond_a_query(text: Text) -> tuple[str, ...]:
    """Words that ask for what no Query can say: `the last three tastings`, `the day before I bottled`."""
    words = text.words
    for i, word in enumerate(words[1:-1], 1):
        before, after = words[i - 1], words[i + 1]
        if before in _ORDER and word in _SEVERAL and after not in _SPANS:
            return (text.tokens[i].text,)
        if before in _SPANS and word in ("before", "after") and words[max(0, i - 2)] == "the":
            return (text.tokens[i].text,)
    return ()
