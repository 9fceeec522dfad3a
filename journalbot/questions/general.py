"""Questions of general knowledge, which no journal answers: `what is malolactic fermentation`."""

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
