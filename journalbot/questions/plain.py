"""A question about a measure, of batches named, or of all."""

from journalbot.questions.candidates import UNRANKED, Candidate, candidates, content
from journalbot.questions.draft import Draft, Pieces, tokens_of, way_token, words_of
from journalbot.questions.measures import MEASURES
from journalbot.questions.narrowing import GOODS, narrowed
from journalbot.questions.query import Batches, Condition, Query, What, When
from journalbot.questions.signs import Sign
from journalbot.questions.stretches import between, quoted, share, standing
from journalbot.questions.times import anchor
from journalbot.questions.ways import put_together
from journalbot.vocabulary.questions import FILLERS

ACTS = frozenset(
    (  # what may say when something else was
        "stuck",
        "rack",
        "press",
        "crush",
        "pitch",
        "bottle",
        "filter",
        "chill",
        "degas",
        "malolactic",
        "top_up",
        "blend",
        "finished",
        "drained",
        "stir",
        "oak out",
        "begin",
    )
)
_MEASURE_OF_ACT = {"begin": "start", "drained": "end", "pitch": "yeast", "oak out": "oak_out"}
_ASKED = frozenset(("who", "why", "when", "how long", "how much", "how many", "times", "clock"))
WENT_IN = frozenset(("went into", "went in", "go into", "goes into", "gone into", "goes in"))
_COST = frozenset(("cost", "costs", "costing"))
_JOINING = frozenset(("and", ",", "&", "plus", "also", "with"))
_FURTHER = frozenset(("reading", "figure", "days", "words", "act", "money"))


def read_plain(p: Pieces) -> Draft:
    """The draft of a question about a measure."""
    special = quoted(p) or between(p) or standing(p)
    if special is not None:
        return special
    ranked = candidates(p.text, p.signs, p.tokens, p.explained)
    special = _compared(p, ranked) or share(p) or _newest(p, ranked)
    if special is not None:
        return special
    silent = not ranked and p.who.numbers and not [i for i in content(p.text, p.tokens) if i not in p.explained]
    asked = [s for s in p.signs if s.name in _ASKED]
    if silent and asked:  # "who has the malbec": how it stands would be no answer
        return Draft(None, [], 0.0, stopped_by=words_of(p.text, sorted(tokens_of(asked))))
    if silent:
        return Draft(Query((What("summary"),), when=p.when), [], 2.0)  # "batch 4?"
    if not ranked:
        left = [i for i in content(p.text, p.tokens) if i not in p.explained]
        return Draft(None, left, -5.0, stopped_by=words_of(p.text, left))
    near = tuple(c.measure.name for c in ranked[:3])
    best, when, used = _with_anchor(p, ranked[0])
    p = p._replace(explained=p.explained | used, when=when or p.when, tokens=[i for i in p.tokens if i not in used])
    what = narrowed(p.text, best, p.signs, p.tokens, p.explained)
    if what.measure == "search" and not what.get("words") and p.when:
        what = What("doing")  # "notes from July"
    stopped = _stopped(p, best, what) if when is None else ()
    ranking = [s for s in p.signs if s.name in ("way:most", "way:least")]
    if ranking and best.measure.name in UNRANKED:
        stopped = words_of(p.text, sorted(tokens_of(ranking)))
    if stopped:
        return Draft(None, [], best.score - 5.0, near=near, stopped_by=stopped)
    if _denied(p, what):
        lacking = Batches(conditions=(Condition(what, "none"),), every=True)
        return Draft(Query((), lacking, p.when, over="list"), best.left, best.score, grouped=True)
    cost = what.measure == "money" and len(p.who.numbers) == 1 and not what.get("item") and not p.when
    if cost and _COST & set(p.text.words):
        what = What("cost")
    if what.measure == "money" and len(p.who.numbers) > 1 and set(what.get("item").split()) <= GOODS:
        what = What("money")  # "the l'acadie juice or the marquette grapes": each for what it cost
    if what.measure == "taste" and not what.of and p.when and p.has("way:change") and "what" in p.text.words:
        what = What("doing")  # "what changed between April and June"
    past = (p.when and not p.when.anchor) or {"was", "were", "kept", "had"} & set(p.text.words)
    if what.get("stage") == "stuck" and p.text.words[0] in ("is", "are") and not p.when:
        what = What("stuck now")
    if what.measure == "contents" and what.get("vessel") and (past or p.has("past")):
        what = What("held", what.of)
    if what.measure == "due" and p.when:
        what = What("plans")  # the usual intervals speak of today only
    said = set(p.text.words)
    if what.measure == "plans" and (
        {"did", "plan"} <= said or ({"was", "were"} & said and {"planning", "planned"} & said)
    ):
        what = What("plans", (*what.of, ("all", "yes")))  # those carried out, too
    if what.measure == "where" and p.when:
        what = What("places")
    whats, left = _all_measures(p, what, best.left)
    if what == What("addition") and p.has("what") and any(s.value in WENT_IN for s in best.signs):
        whats = (What("made of"), *whats)  # "what went into the field blend"
    return Draft(put_together(p, whats, best), left, best.score, near=near)


def _stopped(p: Pieces, best: Candidate, what: What) -> tuple[str, ...]:
    """The words for which the best measure is no answer after all; none where it is."""
    if what.measure == "search" and not what.get("words"):
        return words_of(p.text, sorted(tokens_of(best.signs)))
    if what.measure == "time in vessel" and p.has("free"):
        return ("empty",)  # how long it has held nothing is not told
    if what.measure == "held" and p.who.numbers and "before" in p.text.words:
        return ("before",)  # what was there before a wine is not told
    lead = min(tokens_of(best.signs))
    before = [w for w in p.text.words[max(0, lead - 2) : lead] if w in ("before", "after")]
    if before and best.measure.sort == "act" and not p.when.anchor:
        return (before[0],)
    return best.unasked


def _denied(p: Pieces, what: What) -> bool:
    """Whether what is asked is where something was not done (`what have I not tasted yet`)."""
    measure = MEASURES[what.measure]
    return (
        p.has("denial")
        and p.has("what")
        and not p.who.numbers
        and measure.sort in ("act", "words")
        and measure.scope == "batch"
    )


def _all_measures(p: Pieces, what: What, left: list[int]) -> tuple[tuple[What, ...], list[int]]:
    """The measure found and those asked for in the words that it left over (`pH and TA of …`)."""
    whats = [what]
    while left and len(whats) < 5 and any(p.text.words[i] in _JOINING for i in range(max(0, min(left) - 4), min(left))):
        more = [
            c
            for c in candidates(p.text, p.signs, left, p.explained)
            if c.measure.sort in _FURTHER and len(c.left) < len(left)
        ]
        if not more:
            break
        whats.append(narrowed(p.text, more[0], p.signs, left, p.explained))
        left = more[0].left
    return tuple(dict.fromkeys(whats)), left


def _compared(p: Pieces, ranked: list[Candidate]) -> Draft | None:
    """`Compare batches 1 and 5`: everything that two wines are compared by."""
    if (ranked and ranked[0].score >= 1.0) or len(p.who.numbers) < 2 or not p.has("way:compare"):
        return None
    left = [i for i in content(p.text, p.tokens) if i not in p.explained and not way_token(i, p.signs)]
    return Draft(Query((What("story"),), when=p.when, over="compare"), left, 6.0)


def _newest(p: Pieces, ranked: list[Candidate]) -> Draft | None:
    """`Most recent batch`: the batch started last, or first."""
    way = next((s.name[4:] for s in p.signs if s.name in ("way:last", "way:first")), "")
    if ranked or not way or not p.has("group") or p.who.tokens:
        return None
    left = [i for i in content(p.text, p.tokens) if i not in p.explained and not way_token(i, p.signs)]
    return Draft(Query((What("start"),), Batches(every=True), p.when, over=way), left, 5.0, grouped=True)


def act_when(when: When) -> When:
    """A When whose anchor is the measure of the act that was named."""
    return when._replace(anchor=_MEASURE_OF_ACT.get(when.anchor, when.anchor))


def _with_anchor(p: Pieces, best: Candidate) -> tuple[Candidate, When | None, set[int]]:
    """Whether an act says when rather than what: it does where another measure then explains the rest."""
    nothing = best, None, set[int]()
    found = anchor(p.text, p.signs, ACTS, first=1, passed=p.explained)
    if found is None or found[1] <= tokens_of(best.signs):
        return nothing
    when, used, _ = found
    link = p.text.words[min(used)]
    if link == "when" and not any(w not in FILLERS or w == "what" for w in p.text.words[: min(used)]):
        return nothing  # "tell me when it was pressed" asks when
    rest = [i for i in p.tokens if i not in used]
    if (
        best.measure.sort == "act"
        and tokens_of(best.signs) <= used
        and not [i for i in content(p.text, rest) if i not in p.explained]
    ):
        did = any(s.name == "doing" and s.value != "did" and not tokens_of([s]) & used for s in p.signs)
        if did and link in ("after", "before", "since", "until"):  # "what happened after I pressed it"
            done = candidates(p.text, p.signs, rest, p.explained, frozenset(("doing",)))
            return (done[0], act_when(when), used) if done else nothing
        # "what was it at when I racked it": whatever was read then.
        readings = _readings(p, min(used)) if link in ("when", "before", "after") and p.has("what") else None
        return (readings, act_when(when), used) if readings else nothing
    ranked = candidates(p.text, p.signs, rest, p.explained)
    if not ranked or not any(s.name not in ("what", "when", "did") for s in ranked[0].signs):
        return nothing
    other = ranked[0]
    later = (
        link in ("since", "after", "before", "until")
        and (other.measure.sort == "act" or other.measure.name == "doing")
        and other.measure.name != when.anchor
    )
    dosed = when.anchor == "begin" and other.measure.name == "addition"  # "how much sugar when we started it"
    if not (other.measure.sort in ("reading", "figure", "words") or later or dosed):
        return nothing
    if len(other.left) > len(best.left) or set(best.left) < set(other.left):
        return nothing
    if best.measure.name in ("pitch temperature", "final gravity") and tokens_of(best.signs) & used:
        return nothing
    return other, act_when(when), used


def _readings(p: Pieces, at: int) -> Candidate | None:
    found = candidates(p.text, [Sign("reading", at, at + 1)], [at], p.explained, frozenset(("readings",)))
    return found[0] if found else None
