"""A question's words to a Query: its parts are found apart and put together; words that no part explains stop it."""

import re
from collections.abc import Sequence, Set
from datetime import date
from itertools import combinations
from typing import NamedTuple

from journalbot.journal.cellar import Cellar
from journalbot.language.amounts import unit_at
from journalbot.language.lexicon import Mention
from journalbot.language.names import Names
from journalbot.language.text import Text
from journalbot.model import Settings
from journalbot.questions.calculator import read_calculation
from journalbot.questions.cautioned import caution_asked
from journalbot.questions.contexts import in_context
from journalbot.questions.draft import Draft, Pieces, words_of
from journalbot.questions.followups import follow_up
from journalbot.questions.general import beyond_a_query, of_general_knowledge
from journalbot.questions.groups import Group, find_group, read_group, what_did, years_beside
from journalbot.questions.measures import MEASURES
from journalbot.questions.plain import ACTS, act_when, read_plain
from journalbot.questions.query import Batches, Condition, Query, What, When
from journalbot.questions.says import OPENING_DAYS
from journalbot.questions.signs import find_signs, read_text
from journalbot.questions.stretches import in_state, parts_of
from journalbot.questions.times import anchor, dates_in
from journalbot.questions.whom import COLOUR_WORDS, Whom, contested, label_of, references, whom
from journalbot.vocabulary.questions import words

# Measures for which "zin" without an article means every zin.
_GENERIC = frozenset(("give", "drink", "money", "cost per bottle"))
_STOCK = frozenset(("bottles left", "bottles made"))  # and "red" every red
_STORIES = frozenset(("doing", "recipe", "story", "made of", "summary"))
_OF_VESSELS = frozenset(("contents", "held", "where", "places", "time in vessel", "capacity", "rack", "move", "start"))
# What is laid side by side where batches are compared and no figure is named.
COMPARED = (
    "yeast",
    "original gravity",
    "final gravity",
    "alcohol",
    "fermentation time",
    "ferment temperature",
    "addition",
    "malolactic time",
    "oak",
    "time on oak",
    "score",
)
_PRONOUNS = frozenset(
    (
        "it",
        "its",
        "this one",
        "that one",
        "that wine",
        "this wine",
        "this batch",
        "that batch",
        "same one",
        "the same one",
    )
)
# Words of what is to come, without which a question of a dose "in" a wine is of the one it was given.
_TO_COME = words("need needs needed should ought would will could can may if add raise lower usual usually recommended "
                 "typical best right safe required require want target reach get for worth calculate")  # fmt: skip
_OF_WINE = frozenset(("in", "into"))
_YEAR = re.compile(r"(?:19|20)\d\d")
_ACT_OF_STATE = {"bottled": "bottle", "ended": "end"}
# Kinds of mention that name nothing by themselves: beside a wine's name (`nite shift`) such a word may be passed over,
# and it is said that it was.
_PLAIN_KINDS = frozenset(
    (
        "cue",
        "left",
        "still",
        "pronouns",
        "both",
        "planned",
        "denied",
        "supposed",
        "hearsay",
        "descriptor",
        "number",
    )
)


class Understood(NamedTuple):
    """A question as read: the Query, or the words that stopped it and measures that come near."""

    query: Query | None = None
    stopped_by: tuple[str, ...] = ()
    near: tuple[str, ...] = ()
    unknown: str = ""  # a batch that the journal does not have, as typed
    one: bool = False  # several batches fit where one was meant
    said: str = ""  # how the batch was referred to
    general: bool = False  # of general knowledge: nothing that a journal holds
    unused: tuple[str, ...] = ()  # words that were passed over
    confidence: float = 0.0


def read_question(
    question: str,
    today: date,
    names: Names,
    cellar: Cellar,
    settings: Settings,
    before: Query | None = None,
    tasted: Set[str] = frozenset(),
) -> Understood:
    """Read a question; of the ways to take its names (batch, or material of that name) the one that explains most.

    `tasted` are words that tastings of the journal hold, though no table does.
    """
    text = read_text(question, names, today, settings, tasted)
    refs = references(text)
    if stopped := beyond_a_query(text):
        return Understood(stopped_by=stopped)
    calculation = caution_asked(question) or read_calculation(text, refs, cellar)
    if calculation and "next" in text.words and [w.measure for w in calculation.whats] == ["due"]:
        calculation = calculation._replace(whats=(What("plans"), *calculation.whats))  # planned, and usual by then
    if calculation is not None and not (found := _looks_back(text, refs, names, cellar, before)):
        return Understood(calculation, confidence=20.0)
    if calculation is not None and found:
        return found
    if before is not None:
        leaning = follow_up(text, refs, find_signs(text, refs), names, cellar, before)
        if leaning is not None:
            query, who = leaning
            return Understood(query, unknown=who.unknown, one=who.one, said=who.said, confidence=15.0)
    if of_general_knowledge(text, in_context(text, find_signs(text, refs), refs), refs):
        return Understood(general=True)
    open_refs = [m for m in refs if contested(m, text)][:4]
    readings = []
    if not any(m.value.fits for m in refs) and len(vessels := text.of("vessel")) == 1:
        found = _read_in_vessel(text, vessels[0], names, cellar, before)
        readings += [found] if found else []
    for n in range(len(open_refs) + 1):
        for dropped in combinations(open_refs, n):
            found = _read(text, [m for m in refs if m not in dropped], names, cellar, before)
            # "how much honey did I buy" is of the honey, whatever wine is made from it.
            asked = whats_of(found.query) if found.query else []
            goods = any(w.get("item") for w in asked)
            # "described with strawberry", where no wine is called so, is of the taste.
            of_taste = any(w.get("words") for w in asked) and not any(m.value.fits for m in dropped)
            readings.append(
                found._replace(confidence=found.confidence + (1.0 if n and (goods or of_taste) else -0.4 * n))
            )
    return max(readings, key=lambda r: (r.query is not None, r.confidence))


def _looks_back(
    text: Text, refs: list[Mention], names: Names, cellar: Cellar, before: Query | None
) -> Understood | None:
    """What is asked of the past in words that could ask for a dose: `how much DAP in batch 3`; None for the dose."""
    said = set(text.words)
    if what_did(text):
        found = _read(text, refs, names, cellar, before)
        return found if found.query else None
    if said & _TO_COME or not said & _OF_WINE or not any(m.value.fits for m in refs):
        return None
    read = _read(text, refs, names, cellar, before)
    acts = read.query is not None and all(
        MEASURES[w.measure].sort == "act" or w.measure == "residual sugar" for w in read.query.whats
    )
    return read if acts and not read.unused and read.query and read.query.whats else None


def whats_of(query: Query) -> list[What]:
    """Everything that a Query asks about, its conditions' too."""
    return [*query.whats, *(c.what for c in query.batches.conditions)]


def _read_in_vessel(
    text: Text, vessel: Mention, names: Names, cellar: Cellar, before: Query | None
) -> Understood | None:
    """Read a question that speaks of a wine by its vessel, as in `top up the barrel`; None where it does not."""
    others = [m for m in text.mentions if m is not vessel]
    plain = Text(text.text, text.tokens, text.words, others, text.impossible)
    read = _read(plain, [], names, cellar, before, vessel)
    if read.query is None or any(w.measure in _OF_VESSELS or w.get("vessel") for w in read.query.whats):
        return None
    if read.query.batches.numbers or read.query.batches.described or not read.query.whats:
        return None
    if any(MEASURES[w.measure].scope != "batch" for w in read.query.whats):
        return None
    batches = read.query.batches._replace(vessel=vessel.value.name)
    return read._replace(query=read.query._replace(batches=batches), confidence=read.confidence - 0.5)


def _read(
    text: Text,
    refs: list[Mention],
    names: Names,
    cellar: Cellar,
    before: Query | None,
    vessel: Mention | None = None,
) -> Understood:
    """Read a question whose references to batches are these, or which means what is in a vessel."""
    signs = in_context(text, find_signs(text, refs), refs)
    anchored = anchor(text, signs, ACTS) if any(s.name.startswith(("anchor:", "opening:")) for s in signs) else None
    opening = anchored is not None and anchored[0].relation in OPENING_DAYS  # "its first week": of the wine asked about
    of_anchor = [m for m in refs if anchored and not opening and m.first >= anchored[2]]
    who = whom(text, [m for m in refs if m not in of_anchor], names, cellar)
    taken = who.tokens | {i for m in of_anchor for i in range(m.first, m.last)}
    taken |= set(range(vessel.first, vessel.last)) if vessel else set()
    days = dates_in(text, taken)
    p = Pieces(text, signs, list(range(len(text.words))), taken | days.tokens, days.when, who, vessel is not None)
    group = find_group(text, signs, p.explained, who)
    if not days.when and (year := _bare_year(text, taken, group)):
        i, days_of = year
        p = p._replace(when=days_of, explained=p.explained | {i})
    if anchored and not group:
        whose = whom(text, of_anchor, names, cellar)
        p = p._replace(
            when=act_when(anchored[0])._replace(of=Batches(whose.numbers, _labels(whose.numbers, cellar))),
            explained=p.explained | anchored[1],
            tokens=[i for i in p.tokens if i not in anchored[1]],
        )
    elif state := in_state(p):
        draft = Draft(Query((), Batches(state=state, every=True), p.when, over="list"), [], 8.0, grouped=True)
        return _finish(p, draft, cellar, before)
    if (
        group
        and group.asked
        and who.numbers
        and not set(range(group.first, group.last)) & who.tokens
        and (into := parts_of(p))
    ):
        return _finish(p, Draft(Query((into,), when=p.when), [], 9.0), cellar, before)
    read = read_group(text, signs, group, p.explained, p.when) if group else None
    return _finish(p, Draft(read.query, read.left, read.score, grouped=True) if read else read_plain(p), cellar, before)


def _bare_year(text: Text, taken: set[int], group: Group | None) -> tuple[int, When] | None:
    """The one year that stands by itself, and is no part of a wine's name: `total spend 2023`; with its place."""
    own = set(years_beside(text, group)) if group else set()
    found = [i for i, t in enumerate(text.tokens) if i not in taken | own and _YEAR.fullmatch(t.text)]
    if len(found) != 1 or text.of("date"):
        return None
    year = text.tokens[found[0]].text
    return found[0], When(f"{year}-01-01", f"{year}-12-31")


def _finish(p: Pieces, draft: Draft, cellar: Cellar, before: Query | None) -> Understood:
    """Put the batches in, and decide whether what is left unexplained stops the question."""
    who = draft.who or p.who
    base = Understood(
        unknown=who.unknown, one=who.one, said=who.said, near=draft.near, confidence=draft.score - 2.0 * len(draft.left)
    )
    if draft.query is None:
        return base._replace(stopped_by=draft.stopped_by)
    query, one = _with_batches(p, draft, who, cellar, before)
    weak, hard = _left_over(p.text, draft.left)
    broad = any(MEASURES[w.measure].sort == "story" for w in query.whats)
    if hard or (broad and weak) or any(i + 1 not in who.tokens for i in draft.left) or len(weak) > 1:
        return base._replace(stopped_by=words_of(p.text, draft.left))
    return base._replace(query=query, one=one, unused=weak)


def _with_batches(p: Pieces, draft: Draft, who: Whom, cellar: Cellar, before: Query | None) -> tuple[Query, bool]:
    """The draft's Query with its batches; and whether one was meant where several fit."""
    query = draft.query
    assert query is not None
    if (
        query.over == "compare"
        and len(who.numbers) > 1
        and query.whats
        and {w.measure for w in query.whats} <= _STORIES
    ):
        query = query._replace(whats=tuple(What(m) for m in COMPARED), within="", when=When())  # "from last year"
    kin = _kin(who, cellar) if query.over == "compare" and len(who.numbers) == 1 else None
    if kin is not None and query.whats and {w.measure for w in query.whats} <= _STORIES:
        who = Whom((kin, *who.numbers), who.tokens)
        who.every = True
        query = query._replace(whats=tuple(What(m) for m in COMPARED), within="", when=When())
    measures = [MEASURES[w.measure] for w in query.whats]
    if any(m.name == "plans" for m in measures):
        query = query._replace(when=dates_in(p.text, who.tokens, plan=True).when)
    every = who.every or query.batches.every
    numbers, one = who.numbers, who.one and not draft.grouped
    coloured = who.said.lower() in COLOUR_WORDS
    if one and who.bare and any(m.name in _GENERIC or (coloured and m.name in _STOCK) for m in measures):
        one, every = False, True
    if measures and all(m.scope == "none" for m in measures):
        one = False
    elif (
        not numbers
        and not who.unknown
        and not draft.grouped
        and not p.in_vessel
        and all(m.scope == "batch" for m in measures)
    ):
        numbers, every = _implied(query, p.text, cellar, before, every)
    if query.over in ("most", "least") and not numbers:
        every = True
    if query.within in ("last", "first") and not query.over and not numbers and not every:
        query = query._replace(over=query.within)
    which = query.batches
    if query.when and which.state in _ACT_OF_STATE:  # "bottled in 2023" is a bottling in 2023
        done = Condition(What(_ACT_OF_STATE[which.state]))
        which = which._replace(state="", conditions=(*which.conditions, done))
    if draft.grouped and which.colours:
        numbers = ()  # the colour says which
    return query._replace(batches=which._replace(numbers=numbers, labels=_labels(numbers, cellar), every=every)), one


def _kin(who: Whom, cellar: Cellar) -> int | None:
    """The wine of the same making before the one named, which that one is compared with; None where there is none."""
    own = cellar.batches.get(who.numbers[0])
    same = [
        b.number
        for b in cellar.batches.values()
        if own and b.started < own.started and (set(b.fruit) & set(own.fruit) or (b.name and b.name == own.name))
    ]
    return max(same, key=lambda n: cellar.batches[n].started, default=None)


def _implied(
    query: Query, text: Text, cellar: Cellar, before: Query | None, every: bool
) -> tuple[tuple[int, ...], bool]:
    """The batches meant where the question names none: those spoken of before, the only one there is, or all."""
    pronoun = any(m.kind == "pronouns" and m.value in _PRONOUNS for m in text.mentions)
    if pronoun and not every:
        if before and before.batches.numbers:
            return before.batches.numbers, before.batches.every
        if cellar.last_spoken is not None:
            return (cellar.last_spoken,), False
    if len(cellar.batches) == 1 and not every:
        return tuple(cellar.batches), False
    return (), every


def _labels(numbers: Sequence[int], cellar: Cellar) -> tuple[str, ...]:
    return tuple(label_of(cellar.batches[n]) for n in numbers if n in cellar.batches)


def _left_over(text: Text, left: list[int]) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The words left over: plain ones that may be passed over, and those that name something and may not."""
    named = {i for m in text.mentions if m.kind not in _PLAIN_KINDS for i in range(m.first, m.last)}
    hard = [i for i in left if i in named or text.tokens[i].kind == "number" or unit_at(text.words, i)]
    return words_of(text, [i for i in left if i not in hard]), words_of(text, hard)
