"""Shapes of question that speak of two acts or two batches: from one to another, since one, one inside another."""

import re

from journalbot.questions.candidates import content
from journalbot.questions.draft import Draft, Pieces, tokens_of, way_token
from journalbot.questions.measures.durations import MOMENTS
from journalbot.questions.query import Query, What
from journalbot.questions.whom import Whom

_MOMENT_OF = {"started": "start", "begin": "start", "harvest": "start", "oak out": "oak_out", "culture": "malolactic"}
_LINKS = frozenset(("between", "from", "to", "until", "till", "after", "before"))
_INNER_LINKS = frozenset(("to", "and", "until", "till", "before", "after", "from", "-"))
_QUOTED = re.compile(r"[\"“«]([^\"”»]+)[\"”»]")
_BEFORE = frozenset(("before", "until", "till"))
_WHETHER = frozenset(("is", "are", "was", "were", "has", "have", "isn't", "still"))
_INTO = frozenset(("went into", "go into", "goes into", "gone into", "went in", "is in", "are in"))


def between(p: Pieces) -> Draft | None:
    """How long from one act to another, or since one; None where the question is not about that."""
    length = next((s for s in p.signs if s.name == "how long"), None)
    if length is None:
        return None
    moments: list[tuple[int, int, str]] = []
    for s in sorted(p.signs, key=lambda s: (s.first, s.first - s.last)):
        name = _MOMENT_OF.get(s.name, s.name)
        apart = s.first >= length.last or s.last <= length.first
        if name in MOMENTS and apart and not any(s.first < b and a < s.last for a, b, _ in moments):
            moments.append((s.first, s.last, name))
    words = set(p.text.words)
    used = {i for a, b, _ in moments for i in range(a, b)} | tokens_of([length])
    if len(moments) == 1 and words & _BEFORE and moments[0][2] != "start":
        return _draft(p, What("time between", (("from", "start"), ("to", moments[0][2]))), used, 9.0)
    if len(moments) == 1 and words & {"since", "ago"} and moments[0][2] == "bottle":
        return _draft(p, What("time in bottle"), used, 9.0)
    if len(moments) == 1 and words & {"since", "ago"}:
        return _draft(p, What("time between", (("from", moments[0][2]), ("to", "today"))), used, 9.0)
    if len(moments) < 2 or not words & _LINKS:
        return None
    (begin, after, first), (end, _, last) = moments[0], moments[-1]
    if {first, last} == {"start", "pitch"}:  # "how long after pitching did it start"
        first, last = ("ferment" if m == "start" else m for m in (first, last))
    if "malolactic" in (first, last) and {first, last} & {"start", "finished"}:
        return _draft(p, What("malolactic time"), used, 12.0)
    if (first, last) == ("pitch", "finished"):
        return _draft(p, What("fermentation time"), used, 12.0)
    led_by_after = "after" in p.text.words[max(0, begin - 2) : begin]
    if first == last or not (led_by_after or _INNER_LINKS & set(p.text.words[after:end])):
        return None
    return _draft(p, What("time between", (("from", first), ("to", last))), used, 12.0)


def _draft(p: Pieces, what: What, used: set[int], score: float) -> Draft:
    left = [i for i in content(p.text, p.tokens) if i not in used | p.explained and not way_token(i, p.signs)]
    return Draft(Query((what,), when=p.when), left, score)


def share(p: Pieces) -> Draft | None:
    """`How much of batch 8 is in the cuvée`: the blending of one batch, as far as another is in it."""
    if len(p.who.numbers) != 2 or not p.has("how much") or not {"in", "into"} & set(p.text.words):
        return None
    if p.has("weight", "unit", "material", "yeast", "oak", "bottles", "left", "money", "alcohol") or any(
        s.name.startswith("quantity") for s in p.signs
    ):
        return None
    part, whole = p.who.numbers
    used = tokens_of([s for s in p.signs if s.name in ("how much", "addition", "blend", "in vessel", "made of")])
    left = [i for i in content(p.text, p.tokens) if i not in p.explained | used]
    return Draft(
        Query((What("blend", (("part", str(part)),)),), when=p.when), left, 9.0, who=Whom((whole,), tokens=p.who.tokens)
    )


def in_state(p: Pieces) -> str:
    """The state that a question is all about (`what is fermenting right now`); "" where it is about something else."""
    found = [s for s in p.signs if s.name.startswith("state:")]
    if (
        not found
        or p.who.tokens
        or not p.has("what", "did", "who")
        or p.has("when", "how long", "how many", "why", "where")
        or any(s.name == "group" and s.value not in ("anything", "something") for s in p.signs)
    ):
        return ""
    spare = tokens_of([*found, *(s for s in p.signs if s.name in ("way:last", "way:each"))]) | p.explained
    return found[0].name.partition(":")[2] if set(content(p.text, range(len(p.text.words)))) <= spare else ""


def quoted(p: Pieces) -> Draft | None:
    """The words in quotes that notes are searched for: `notes that say "gone dry"`; None where there are none."""
    words = _QUOTED.search(p.text.text)
    if words is None or not p.has("mention", "note", "taste"):
        return None
    return Draft(Query((What("search", (("words", words.group(1).lower()),)),), when=p.when), [], 14.0)


def standing(p: Pieces) -> Draft | None:
    """Whether a batch is in a state: `is the riesling still fermenting`; None where that is not asked."""
    state = next((s for s in p.signs if s.name.startswith("state:") and s.name != "state:bottled"), None)
    if state is None or not p.who.numbers or p.text.words[0] not in _WHETHER:
        return None
    spare = p.explained | tokens_of([state])
    left = [i for i in content(p.text, p.tokens) if i not in spare and not way_token(i, p.signs)]
    what = What("standing", (("state", state.name.partition(":")[2]),))
    return None if left else Draft(Query((what,), when=p.when), [], 9.0)


def parts_of(p: Pieces) -> What | None:
    """`Which wines went into the cuvée`: what a named batch is made of."""
    into = p.has("made of", "blend") or any(s.value in _INTO for s in p.signs)
    return What("made of") if into and not p.has("yeast", "material", "oak", "when", "how many") else None
