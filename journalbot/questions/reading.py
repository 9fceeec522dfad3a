"""A question's words to a Query: its parts are found apart and put together; words that no part explains stop it."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date
from itertools import combinations

from journalbot.journal.cellar import Cellar
from journalbot.language.lexicon import Mention
from journalbot.language.names import Names
from journalbot.language.text import Text
from journalbot.model import Settings
from journalbot.questions import conditions
from journalbot.questions.calculator import read_calculation
from journalbot.questions.candidates import Candidate, candidates, content, narrowed
from journalbot.questions.followups import follow_up
from journalbot.questions.measures import MEASURES
from journalbot.questions.measures.durations import MOMENTS
from journalbot.questions.query import Batches, Condition, Query, What, When
from journalbot.questions.signs import Sign, find_signs, read_text
from journalbot.questions.times import anchor, dates_in
from journalbot.questions.whom import Whom, contested, label_of, references, whom

_ACTS = frozenset(("stuck", "rack", "press", "crush", "pitch", "bottle", "filter", "chill", "degas", "malolactic", "top_up", "blend", "finished", "drained", "stir", "oak out"))
_ANCHOR_MEASURE = {"drained": "end", "pitch": "yeast", "oak out": "oak_out"}
_MOMENT_OF = {"started": "start", "harvest": "start", "oak out": "oak_out"}
# Measures for which "zin" without an article means every zin.
_GENERIC = frozenset(("give", "drink", "bottles left", "bottles made", "money", "cost per bottle"))
_JOINING = frozenset(("and", ",", "&", "plus", "also", "with"))
# Measures so broad that a word left over must not be passed over.
_BROAD = frozenset(("doing", "story", "where", "made of", "taste", "start", "addition", "contents", "recipe", "bottles left", "finished", "rack", "held", "readings", "money"))
_STORIES = frozenset(("doing", "recipe", "story", "made of"))
# What is laid side by side where two batches are compared and no figure is named.
COMPARED = ("yeast", "original gravity", "final gravity", "alcohol", "fermentation time", "ferment temperature", "addition", "malolactic time", "oak", "time on oak", "score")
_PRONOUNS = frozenset(("it", "its", "this one", "that one", "that wine", "this wine", "this batch", "that batch", "same one", "the same one"))
_STRICTLY_EACH = frozenset(("each", "each of", "per batch", "by batch", "respectively", "every one of"))
_AGGREGATES = frozenset(("most", "least", "mean", "sum", "range"))


@dataclass(frozen=True, slots=True)
class Understood:
    """A question as read: the Query, or the words that stopped it and measures that come near."""

    query: Query | None = None
    stopped_by: tuple[str, ...] = ()
    near: tuple[str, ...] = ()
    unknown: str = ""  # a batch that the journal does not have, as typed
    one: bool = False  # several batches fit where one was meant
    said: str = ""  # how the batch was referred to
    unused: tuple[str, ...] = ()  # words that were passed over
    confidence: float = 0.0


def read_question(question: str, today: date, names: Names, cellar: Cellar, settings: Settings, before: Query | None = None) -> Understood:
    """Read a question; of the ways to take its names (a batch, or a material of that name) the one that explains most."""
    text = read_text(question, names, today, settings)
    refs = references(text)
    if before is not None:
        leaning = follow_up(text, refs, find_signs(text, refs), names, cellar, before)
        if leaning is not None:
            query, who = leaning
            return Understood(query, unknown=who.unknown, one=who.one, said=who.said, confidence=15.0)
    calculation = read_calculation(text, refs, cellar)
    if calculation is not None:
        return Understood(calculation, confidence=20.0)
    open_refs = [m for m in refs if contested(m, text)]
    best: Understood | None = None
    for n in range(len(open_refs) + 1):
        for dropped in combinations(open_refs[:4], n):
            kept = [m for m in refs if m not in dropped]
            found = _read(text, kept, names, cellar, before)
            found = replace(found, confidence=found.confidence - 0.4 * n)
            if best is None or (found.query is not None, found.confidence) > (best.query is not None, best.confidence):
                best = found
    assert best is not None
    return best


def _read(text: Text, refs: list[Mention], names: Names, cellar: Cellar, before: Query | None) -> Understood:
    signs = find_signs(text, refs)
    everything = list(range(len(text.words)))
    anchored = anchor(text, signs, _ACTS) if any(s.name.startswith("anchor:") for s in signs) else None
    anchor_refs = [m for m in refs if anchored and m.first >= anchored[2]]
    who = whom(text, [m for m in refs if m not in anchor_refs], names, cellar)
    taken = set(who.tokens) | {i for m in anchor_refs for i in range(m.first, m.last)}
    days = dates_in(text, taken)
    explained = taken | days.tokens
    when = days.when
    group = conditions.find_group(text, signs, explained, who)
    if anchored and not group:
        explained |= anchored[1]
        when = replace(anchored[0], anchor=_ANCHOR_MEASURE.get(anchored[0].anchor, anchored[0].anchor))
        if anchor_refs:
            whose = whom(text, anchor_refs, names, cellar)
            when = replace(when, of=Batches(whose.numbers, _labels(whose.numbers, cellar)))
        everything = [i for i in everything if i not in anchored[1]]
    if not anchored and (state := _in_state(text, signs, explained, who)):
        return _finish(Query((), Batches(state=state, every=True), when, over="list"), [], text, who, names, cellar, before, 8.0, grouped=True)
    if group and group.asked and who.numbers and not set(range(group.first, group.last)) & who.tokens and (into := _parts_of(text, signs, explained)):
        return _finish(Query((into,), when=when), [], text, who, names, cellar, before, 9.0)
    if group:
        read = conditions.read_group(text, signs, group, explained, when, cellar)
        if read is not None:
            return _finish(read.query, read.left, text, who, names, cellar, before, read.score, grouped=True)
    return _plain(text, signs, everything, explained, when, who, names, cellar, before)


def _in_state(text: Text, signs: list[Sign], explained: set[int], who: Whom) -> str:
    """The state that a question is all about (`what is fermenting right now`); "" where it is about something else."""
    found = [s for s in signs if s.name.startswith("state:")]
    if not found or who.tokens or not any(s.name in ("what", "did", "who") for s in signs) or any(s.name in ("when", "how long", "how many", "group", "why", "where") for s in signs):
        return ""
    spare = {i for s in (*found, *(s for s in signs if s.name in ("way:last", "way:each"))) for i in range(s.first, s.last)}
    return found[0].name.partition(":")[2] if all(i in spare | explained for i in content(text, range(len(text.words)))) else ""


def _parts_of(text: Text, signs: list[Sign], explained: set[int]) -> What | None:
    """`Which wines went into the cuvée`: what a named batch is made of."""
    into = any(s.name in ("made of", "blend") or s.value in ("went into", "go into", "goes into", "gone into", "went in", "is in", "are in") for s in signs)
    return What("made of") if into and not any(s.name in ("yeast", "material", "oak", "when", "how many") for s in signs) else None


def _plain(text: Text, signs: list[Sign], tokens: list[int], explained: set[int], when: When, who: Whom, names: Names, cellar: Cellar, before: Query | None) -> Understood:
    """A question about a measure, of batches named, or of all."""
    between = _between(text, signs, tokens, explained)
    if between is not None:
        what, used, score = between
        left = [i for i in content(text, tokens) if i not in used | explained and not _way_token(i, signs)]
        return _finish(Query((what,), when=when), left, text, who, names, cellar, before, score)
    ranked = candidates(text, signs, tokens, explained)
    if (not ranked or ranked[0].score < 1.0) and len(who.numbers) > 1 and any(s.name == "way:compare" for s in signs):
        spare = [i for i in content(text, tokens) if i not in explained and not _way_token(i, signs)]
        return _finish(Query((What("story"),), when=when, over="compare"), spare, text, who, names, cellar, before, 6.0)
    if (blended := _share(text, signs, explained, who, when)) is not None:
        return _finish(blended[0], [i for i in content(text, tokens) if i not in explained and not blended[1] & {i}], text, blended[2], names, cellar, before, 9.0)
    newest = next((s.name[4:] for s in signs if s.name in ("way:last", "way:first")), "")
    if not ranked and newest and any(s.name == "group" for s in signs) and not who.tokens:
        spare = [i for i in content(text, tokens) if i not in explained and not _way_token(i, signs)]
        return _finish(Query((What("start"),), Batches(every=True), when, over=newest), spare, text, who, names, cellar, before, 5.0, grouped=True)
    if not ranked:
        left = [i for i in content(text, tokens) if i not in explained]
        return Understood(stopped_by=_words(text, left), unknown=who.unknown, said=who.said, one=who.one, near=(), confidence=-5.0 - len(left))
    best, tail_when, tail_used = _with_anchor(text, signs, tokens, explained, ranked[0])
    explained = explained | tail_used
    when = tail_when or when
    what = narrowed(text, best, signs, [i for i in tokens if i not in tail_used], explained)
    if what.measure == "search" and not what.get("words"):
        return Understood(stopped_by=_words(text, [i for s in best.signs for i in range(s.first, s.last)]), unknown=who.unknown, said=who.said, one=who.one, confidence=best.score - 5.0)
    if any(s.name == "denial" for s in signs) and not who.numbers and MEASURES[what.measure].sort in ("act", "words") and MEASURES[what.measure].scope == "batch" and any(s.name == "what" for s in signs):
        lacking = Batches(conditions=(Condition(what, "none"),), every=True)
        return _finish(Query((), lacking, when, over="list"), best.left, text, who, names, cellar, before, best.score, grouped=True)
    if what.measure == "where" and when:
        what = What("places")
    lead = min(i for s in best.signs for i in range(s.first, s.last))
    if tail_when is None and not when.anchor and best.measure.sort == "act" and any(w in ("before", "after") for w in text.words[max(0, lead - 2) : lead]):
        best.unasked = ("before" if "before" in text.words else "after",)
    if best.unasked and tail_when is None:
        return Understood(stopped_by=best.unasked, unknown=who.unknown, said=who.said, one=who.one, near=tuple(c.measure.name for c in ranked[:3]), confidence=best.score - 5.0)
    whats, left = [what], best.left
    for _ in range(3):
        more = _further(text, signs, left, explained, tokens)
        if more is None:
            break
        whats.append(more[0])
        left = more[1]
    query = _ways(text, signs, tuple(dict.fromkeys(whats)), best, when, who, explained)
    return _finish(query, left, text, who, names, cellar, before, best.score, near=tuple(c.measure.name for c in ranked[:3]))


def _share(text: Text, signs: list[Sign], explained: set[int], who: Whom, when: When) -> tuple[Query, set[int], Whom] | None:
    """`How much of batch 8 is in the cuvée`: the blending of one batch, as far as another is in it."""
    asks = [s for s in signs if s.name == "how much"]
    if len(who.numbers) != 2 or not asks or "in" not in text.words and "into" not in text.words:
        return None
    if any(s.name in ("material", "yeast", "oak", "bottles", "left", "money", "alcohol") or s.name.startswith("quantity") for s in signs):
        return None
    part, whole = who.numbers
    used = {i for s in signs if s.name in ("how much", "addition", "blend", "in vessel", "made of") for i in range(s.first, s.last)}
    return Query((What("blend", (("part", str(part)),)),), when=when), used, Whom((whole,), tokens=who.tokens)


def _with_anchor(text: Text, signs: list[Sign], tokens: list[int], explained: set[int], best: Candidate) -> tuple[Candidate, When | None, set[int]]:
    """Whether an act in the question says when rather than what: it does where another measure then explains the rest."""
    found = anchor(text, signs, _ACTS, first=1)
    if found is None or found[1] & {i for s in best.signs for i in range(s.first, s.last)} == found[1]:
        return best, None, set()
    when, used, _ = found
    inside = {i for s in best.signs for i in range(s.first, s.last)}
    if inside <= used and not content(text, [i for i in tokens if i not in used | explained]) and text.words[min(used)] in ("when", "before", "after") and MEASURES[best.measure.name].sort == "act" and any(s.name == "what" for s in signs):
        readings = next((c for c in candidates(text, [Sign("reading", min(used), min(used) + 1)], [min(used)], explained) if c.measure.name == "readings"), None)
        if readings:
            return readings, replace(when, anchor=_ANCHOR_MEASURE.get(when.anchor, when.anchor)), used
    rest = [i for i in tokens if i not in used]
    ranked = candidates(text, signs, rest, explained)
    if not ranked or not any(s.name not in ("what", "when", "did") for s in ranked[0].signs):
        return best, None, set()
    other = ranked[0]
    since = text.words[min(used)] in ("since", "after", "before", "until") and other.measure.sort == "act" and other.measure.name != when.anchor
    if (MEASURES[other.measure.name].sort in ("reading", "figure", "words") or since) and len(other.left) <= len(best.left) and not set(best.left) < set(other.left):
        act_tokens = {i for s in best.signs for i in range(s.first, s.last)}
        if best.measure.name in ("pitch temperature", "final gravity") and act_tokens & used:
            return best, None, set()
        return other, replace(when, anchor=_ANCHOR_MEASURE.get(when.anchor, when.anchor)), used
    return best, None, set()


def _further(text: Text, signs: list[Sign], left: list[int], explained: set[int], tokens: list[int]) -> tuple[What, list[int]] | None:
    """One more measure asked for in the words that the first left over (`pH and TA of …`)."""
    if not left or not any(text.words[i] in _JOINING for i in range(max(0, min(left) - 4), min(left))):
        return None
    ranked = [c for c in candidates(text, signs, left, explained) if MEASURES[c.measure.name].sort in ("reading", "figure", "days", "words", "act", "money") and len(c.left) < len(left)]
    if not ranked:
        return None
    return narrowed(text, ranked[0], signs, left, explained), ranked[0].left


def _between(text: Text, signs: list[Sign], tokens: list[int], explained: set[int]) -> tuple[What, set[int], float] | None:
    """How long from one act to another, or since one."""
    length = next((s for s in signs if s.name == "how long"), None)
    if length is None:
        return None
    moments: list[tuple[int, int, str]] = []
    for s in sorted(signs, key=lambda s: (s.first, s.first - s.last)):
        name = _MOMENT_OF.get(s.name, s.name)
        if name in MOMENTS and s.first >= length.last - (s.first < length.last) and not any(s.first < b and a < s.last for a, b, _ in moments) and not (s.first < length.last and length.first < s.last):
            moments.append((s.first, s.last, name))
    used = {i for a, b, _ in moments for i in range(a, b)} | set(range(length.first, length.last))
    linked = set(text.words) & {"between", "from", "since", "to", "until", "till", "after", "before", "ago", "and"}
    if len(moments) >= 2 and linked & {"between", "from", "to", "until", "till", "after", "before"}:
        first, last = moments[0], moments[-1]
        if (first[2], last[2]) in (("pitch", "finished"),):
            return What("fermentation time"), used, 12.0
        if first[2] == last[2]:
            return None
        if "start" in (first[2], last[2]) and "pitch" in (first[2], last[2]):
            first, last = ((f[0], f[1], "ferment") if f[2] == "start" else f for f in (first, last))
        led = text.words[max(0, first[0] - 2) : first[0]]
        if "after" in led and last[2] != first[2]:
            return What("time between", (("from", first[2]), ("to", last[2]))), used, 12.0
        fixed = {text.words[i] for i in range(first[1], last[0])}
        if not fixed & {"to", "and", "until", "till", "before", "after", "from", "-"}:
            return None
        return What("time between", (("from", first[2]), ("to", last[2]))), used, 12.0
    if len(moments) == 1 and (linked & {"since", "ago"}):
        return What("time between", (("from", moments[0][2]), ("to", "today"))), used, 9.0
    return None


def _ways(text: Text, signs: list[Sign], whats: tuple[What, ...], best: Candidate, when: When, who: Whom, explained: set[int]) -> Query:
    """How the facts are to be put together, by the question's own words or else as is usual for the measure."""
    measure = best.measure
    row = {s for s in best.signs}
    ways = [s.name.removeprefix("way:") for s in signs if s.name.startswith("way:") and s not in row and not set(range(s.first, s.last)) & explained
            and not any(r.first < s.last and s.first < r.last and r.name not in ("ask", "when", "score", "temperature", "alcohol", "how long", "final gravity", "money", "age", "ph", "ta", "plan") for r in row)]
    asked = {s.name for s in signs if not (s.name == "when" and _clause_when(text, s))}
    part = _part(asked, measure.sort, {s.name for s in best.signs})
    whats = tuple(replace(w, part=part if MEASURES[w.measure].sort == "act" or part == "date" else "") for w in whats)
    way = next((w for w in ("mean", "sum", "most", "least", "range", "change", "compare", "first", "last", "each") if w in ways), "")
    if way in ("mean", "sum", "range") and measure.sort in ("words", "story") or (way in ("mean", "range") and measure.sort == "act" and measure.counts != "sum"):
        way = "each" if way == "sum" else way
    if "change" in {s.name.removeprefix("way:") for s in best.signs}:
        way = "change"
    if way == "each" and measure.usual == "sum" and not any(s.value in _STRICTLY_EACH for s in signs if s.name == "way:each"):
        way = "sum"
    if measure.counts == "sum" and "how many" in asked and "times" not in asked:
        return Query(tuple(replace(w, part="") for w in whats), when=when, within="sum", over="sum")
    if part == "times" and {"different", "distinct"} & set(text.words):
        return Query(tuple(replace(w, part="") for w in whats), when=when, over="distinct")
    if part == "times":
        return Query(whats, when=when, within="count", over="count")
    if way == "compare" or (way in _AGGREGATES and len(who.numbers) > 1 and way in ("most", "least")):
        return Query(whats, when=when, within=_reduce(measure.usual), over="compare" if way == "compare" else way)
    if way == "each":
        return Query(whats, Batches(every=True), when, within=_reduce(measure.usual))
    if way in ("mean", "sum", "most", "least", "range"):
        return Query(whats, when=when, over=way, within=_inner(measure.sort, way, measure.usual))
    if way in ("first", "last") and measure.name in ("where", "contents", "sweetness", "free vessels", "plans", "bottles left"):
        way = ""
    if way in ("first", "last", "change"):
        return Query(whats, when=when, within=way, over=way if way != "change" else "")
    usual = measure.usual
    if part in ("date", "amount", "done") and measure.sort == "act":
        usual = ""
    return Query(whats, when=when, within=_reduce(usual), over="sum" if usual == "sum" else "")


def _inner(sort: str, way: str, usual: str) -> str:
    """How one batch's facts come together before batches are ranked: sums of what is summed, counts of acts."""
    if way in ("most", "least"):
        return usual if usual == "sum" else "sum" if sort == "days" else ""
    return ""


def _reduce(usual: str) -> str:
    return usual if usual in ("last", "first", "sum", "change") else ""


def _clause_when(text: Text, sign: Sign) -> bool:
    """Whether "when" leads a clause (`gravity when I pitched`) and does not ask."""
    return sign.first > 0 and sign.last < len(text.words) and text.words[sign.first - 1] not in ("and", ",", "since") and text.words[sign.last] in ("i", "we", "it", "the", "they", "pitched", "pitching", "bottled", "racked", "pressed")


def _part(asked: set[str], sort: str, row: set[str]) -> str:
    wants = {n for n in ("when", "times", "how much", "how many") if n in asked and n not in row}
    if {"when", "how much"} <= wants:
        return ""
    if "times" in wants or ("how many" in wants and sort in ("act", "words")):
        return "times"
    if "when" in wants:
        return "date"
    if "how much" in wants and sort == "act":
        return "amount"
    if sort in ("act", "words") and not (asked & {"what", "who", "where", "why", "how long", "when", "how much", "how many", "times"}) and "did" in asked:
        return "done"
    return ""


def _way_token(i: int, signs: list[Sign]) -> bool:
    return any(s.first <= i < s.last and s.name.startswith(("way:", "every", "group")) for s in signs)


def _labels(numbers: Sequence[int], cellar: Cellar) -> tuple[str, ...]:
    return tuple(label_of(cellar.batches[n]) for n in numbers if n in cellar.batches)


def _words(text: Text, tokens: Sequence[int]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(text.tokens[i].text for i in tokens))


def _finish(query: Query, left: list[int], text: Text, who: Whom, names: Names, cellar: Cellar, before: Query | None, score: float, *, grouped: bool = False, near: tuple[str, ...] = ()) -> Understood:
    """Put the batches in, and decide whether what is left unexplained stops the question."""
    if query.whats and query.over == "compare" and len(who.numbers) > 1 and {w.measure for w in query.whats} <= _STORIES:
        query = replace(query, whats=tuple(What(m) for m in COMPARED), within="")
    measures = [MEASURES[w.measure] for w in query.whats]
    every = who.every or query.batches.every
    if any(m.name == "plans" for m in measures):
        query = replace(query, when=dates_in(text, who.tokens, plan=True).when)
    numbers, one, said = who.numbers, who.one, who.said
    if who.one and who.bare and any(m.name in _GENERIC for m in measures):
        one, every = False, True
    if not numbers and not who.unknown and not grouped and all(m.scope == "batch" for m in measures):
        numbers, one, every = _implied(query, text, cellar, before, every)
    if measures and all(m.scope == "none" for m in measures):
        numbers, one = who.numbers, False
    if query.over == "" and query.within in ("last", "first") and not numbers and not every:
        query = replace(query, over=query.within)
    if query.when and (act := {"bottled": "bottle", "ended": "end"}.get(query.batches.state)):
        query = replace(query, batches=replace(query.batches, state="", conditions=(*query.batches.conditions, Condition(What(act)))))
    if grouped:
        one = False
    if grouped and query.batches.colours and not one:
        numbers = ()  # the colour says which
    batches = replace(query.batches, numbers=numbers, labels=_labels(numbers, cellar), every=every)
    query = replace(query, batches=batches)
    weak, hard = _weak_words(text, left)
    understood = Understood(query, unknown=who.unknown, one=one, said=said, unused=weak, confidence=score - 2.0 * len(left), near=near)
    if hard or len(weak) > (0 if any(m.name in _BROAD for m in measures) else 1):
        return replace(understood, query=None, stopped_by=_words(text, left))
    return understood


def _implied(query: Query, text: Text, cellar: Cellar, before: Query | None, every: bool) -> tuple[tuple[int, ...], bool, bool]:
    """The batches meant where the question names none: those spoken of before, the only one there is, or all."""
    pronoun = any(m.kind == "pronouns" and m.value in _PRONOUNS for m in text.mentions) and "it" in {w for w in text.words} | {"it"}
    if pronoun and not every and not _loose_it(text, query):
        if before and before.batches.numbers:
            return before.batches.numbers, False, before.batches.every
        if cellar.last_spoken is not None:
            return (cellar.last_spoken,), False, False
    if len(cellar.batches) == 1 and not every:
        return tuple(cellar.batches), False, False
    return (), False, every


def _loose_it(text: Text, query: Query) -> bool:
    """Whether "it" stands for no batch: "how hot was it" after the batches have been said to be all of them."""
    return query.over in _AGGREGATES


def _weak_words(text: Text, left: list[int]) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The words left over: plain ones that may be passed over, and those that name something and may not."""
    named = {i for m in text.mentions if m.kind not in ("cue", "left", "still", "pronouns", "both", "planned", "denied", "supposed", "hearsay", "descriptor", "number") for i in range(m.first, m.last)}
    hard = [i for i in left if i in named or text.tokens[i].kind == "number"]
    weak = [i for i in left if i not in hard]
    return _words(text, weak), _words(text, hard)
