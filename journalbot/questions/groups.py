"""Batches spoken of as a group: `which wines …`, `average score of the reds that …`."""

from typing import NamedTuple

from journalbot.language.text import Text
from journalbot.questions.candidates import UNRANKED, candidates, content
from journalbot.questions.conditions import in_test, read_conditions
from journalbot.questions.narrowing import narrowed
from journalbot.questions.query import Batches, Condition, Query, What, When
from journalbot.questions.signs import Sign
from journalbot.questions.ways import RANKED_BY
from journalbot.questions.whom import Whom
from journalbot.vocabulary.questions import RELATIVES, words

# What may be said of batches without asking anything of them: `which wines have I made`.
_TRIVIAL = words(
    "are is there do i have we did make made making ever in the journal my cellar so far started all ? . , got on "
    "record known of ours been has now exist any please and how many to list show me give tell which what out let see"
)
_WHICH = frozenset(("which", "what", "list", "show", "any", "of"))
_ORDERED = frozenset(("first", "last", "earliest", "latest", "most recently", "most recent"))
_ACT_OF_STATE = {"bottled": "bottle", "ended": "end"}
_STOOD = frozenset(("came", "started", "finished", "read", "reached", "stood", "ended", "began"))
_PAST = ("ed", "en", "wn", "nk", "pt", "ld", "ut")


class Group(NamedTuple):
    """Batches spoken of as a group: where the word for it stands, and whether the question asks which they are."""

    first: int
    last: int
    asked: bool  # "which wines …"
    counted: bool  # "how many wines …"
    colours: tuple[str, ...] = ()
    relative: int | None = None  # where a clause about them begins
    numbers: tuple[int, ...] = ()
    word: str = ""


class GroupRead(NamedTuple):
    """A Query over a group, with what it left unexplained."""

    query: Query
    left: list[int]
    score: float


def find_group(text: Text, signs: list[Sign], explained: set[int], who: Whom) -> Group | None:
    """The group that the question is about, where there is one."""
    options: list[Group] = []
    for s in signs:
        if s.name.startswith("coloured:") or s.name == "group":
            if set(range(s.first, s.last)) & who.tokens:
                continue
            colours = (s.name.partition(":")[2],) if s.name.startswith("coloured:") else ()
            options.append(_group(text, signs, s.first, s.last, colours, ()))
    if what_did(text):
        options.append(Group(0, 1, asked=True, counted=False, word="batches"))
    plural = [m for m in text.of("batch", "stranger") if set(range(m.first, m.last)) <= who.tokens]
    for m in plural:
        if len(plural) == 1 and (who.every or _asked(text, signs, m.first)[0]):
            colours = tuple(t for t in m.value.terms if t in ("red", "white", "rosé"))
            whole = colours if len(colours) == len(m.value.terms) else ()
            options.append(_group(text, signs, m.first, m.last, whole, who.numbers))
    useful = [
        g
        for g in options
        if g.asked or g.counted or g.relative is not None or ((g.colours or years_beside(text, g)) and not g.numbers)
    ]
    return max(useful, key=lambda g: (g.asked, g.counted, g.relative is not None, -g.first)) if useful else None


def what_did(text: Text) -> bool:
    """Whether a question asks which wine stood at some figure: `what came in at 24.2 Brix`."""
    return text.words[:1] == ["what"] and text.words[1:2] != [] and text.words[1] in _STOOD and bool(text.of("reading"))


def _group(
    text: Text, signs: list[Sign], first: int, last: int, colours: tuple[str, ...], numbers: tuple[int, ...]
) -> Group:
    asked, counted = _asked(text, signs, first)
    relative = None
    nxt = text.words[last] if last < len(text.words) else ""
    if (
        nxt in RELATIVES
        or any(s.first == last and s.name.startswith("test:") for s in signs)
        or ((nxt.endswith(_PAST) and last < len(text.words) and any(s.first == last for s in signs)) and not asked)
    ):
        relative = last
    return Group(first, last, asked, counted, colours, relative, numbers, text.words[first])


def _asked(text: Text, signs: list[Sign], first: int) -> tuple[bool, bool]:
    i = first - 1
    while i >= 0 and text.words[i] in (
        "of",
        "my",
        "the",
        "all",
        "other",
        "our",
        "these",
        "those",
        "2020",
        "2021",
        "2022",
        "2023",
        "2024",
        "2025",
        "2026",
    ):
        i -= 1
    if i < 0:
        return False, False
    word = text.words[i]
    many = word == "many" and i and text.words[i - 1] == "how"
    return word in ("which", "what") or (
        word in ("list", "show", "find", "me", "any") and i <= 3 and word != "any"
    ), bool(many)


def read_group(text: Text, signs: list[Sign], group: Group, explained: set[int], when: When) -> GroupRead | None:
    """The Query of a question about a group; None where the group only says that all are meant."""
    head = set(range(group.first, group.last))
    everything = [i for i in range(len(text.words)) if i not in head]
    years = years_beside(text, group)
    spare = explained | set(years) | head
    batches = Batches(colours=group.colours, years=tuple(years.values()), every=True)
    if group.asked or group.counted:
        tail = [i for i in everything if i >= group.last] or everything
        asking = [i for i in everything if i < group.first]
        return _which(text, signs, group, batches, tail, asking, spare, when)
    if group.relative is None:
        if not (group.colours or years) or group.numbers:
            return None
        return _figures(text, signs, batches, everything, [], spare, when)
    if any(s.name in ("way:most", "way:least") and s.first >= group.relative and not in_test(s, signs) for s in signs):
        return _which(
            text,
            signs,
            group._replace(asked=True),
            batches,
            [i for i in everything if i >= group.last],
            [i for i in everything if i < group.first],
            spare,
            when,
        )
    clause = [i for i in everything if i >= group.relative]
    main = [i for i in everything if i < group.relative]
    return _figures(text, signs, batches, main, clause, spare, when)


def years_beside(text: Text, group: Group) -> dict[int, int]:
    """A year beside the word for the group: `my 2023 whites`, `reds from 2022`."""
    out: dict[int, int] = {}
    spots = [
        group.first - 1,
        group.last + 1 if group.last < len(text.words) and text.words[group.last] in ("from", "of") else group.last,
    ]
    for i in spots:
        if 0 <= i < len(text.tokens) and text.tokens[i].text.isdigit() and 1990 <= int(text.tokens[i].text) <= 2099:
            out[i] = int(text.tokens[i].text)
    return out


def _which(
    text: Text,
    signs: list[Sign],
    group: Group,
    batches: Batches,
    tail: list[int],
    asking: list[int],
    explained: set[int],
    when: When,
) -> GroupRead | None:
    """`Which wines …`: ranked where something superlative is said of them, else those that meet the conditions."""
    over = "count" if group.counted else "list"
    ask_tokens = {
        i
        for i in asking
        if text.words[i] in _WHICH
        or text.words[i] in ("how", "many", "me", "in", "to", "from", "for", "on", "give", "tell")
    }
    before = [i for i in asking if i not in ask_tokens]
    way = next(
        (
            s
            for s in signs
            if s.name in ("way:most", "way:least")
            and not set(range(s.first, s.last)) & explained
            and not in_test(s, signs)
        ),
        None,
    )
    if way is None and any(s.name in ("way:first", "way:last") and s.value in _ORDERED for s in signs):
        return None  # "which yeast was first": not all of them
    left_before = [
        i for i in content(text, before) if i not in explained and not any(s.first <= i < s.last for s in signs)
    ]
    if way is not None:
        ranked = candidates(text, signs, [*before, *tail], explained)
        ranked = [c for c in ranked if c.measure.scope != "none" and c.measure.sort != "story" and not c.unasked]
        ranked = [c for c in ranked if c.measure.name not in UNRANKED]
        if ranked:
            best = ranked[0]
            what = narrowed(text, best, signs, [*before, *tail], explained)
            sort, usual = best.measure.sort, best.measure.usual
            often = best.measure.name != "addition" or any(
                s.name == "times" or s.value.endswith("often") for s in signs
            )
            within = (
                "count"
                if sort == "act" and best.measure.counts == "count" and often
                else usual
                if usual in ("sum", "last")
                else "sum"
                if sort in ("days", "money") or sort == "act"
                else ""
            )
            mean = any(s.name == "way:mean" for s in signs)
            return GroupRead(
                Query((what,), batches, when, within="mean" if mean else within, over=way.name[4:]),
                best.left,
                best.score,
            )
    read = read_conditions(text, signs, tail, explained)
    if read is None:
        return None
    conditions, state, left, score = read
    conditions = tuple(
        c for c in conditions if c.what.measure != "start" or c.test != "some" or when
    )  # every batch has a start
    if (
        not conditions
        and not state
        and not batches.described
        and not read[0]
        and not content(text, tail)
        and not group.counted
        and over == "list"
        and group.word not in ("wines", "batches")
    ):
        return None
    if not conditions and not state and not read[0] and not {text.words[i] for i in tail} <= _TRIVIAL:
        return GroupRead(Query((), batches, when, over=over), tail, -5.0) if content(text, tail) else None
    if period := next((s for s in signs if s.name.startswith("period:")), None):
        if conditions or state or not group.counted:
            left += range(period.first, period.last)
        else:
            by = period.name.partition(":")[2]
            return GroupRead(Query((What("start"),), batches, when, by=by), left + left_before, score + 2.0)
    if len(conditions) > 1 and not when.anchor:
        # "started in 2024 and oaked": the days are the start's.
        own = tuple(
            c._replace(since=when.since, until=when.until) if c.what.measure == "start" else c for c in conditions
        )
        conditions, when = own, When() if own != conditions else when
    described = batches._replace(conditions=conditions, state=state)
    return GroupRead(Query((), described, when, over=over), left + left_before, score + 2.0)


def _figures(
    text: Text, signs: list[Sign], batches: Batches, main: list[int], clause: list[int], explained: set[int], when: When
) -> GroupRead | None:
    """A figure of the batches that meet a clause: `average score of reds that I racked more than twice`."""
    conditions: tuple[Condition, ...] = ()
    state, score = "", 0.0
    left: list[int] = []
    if clause:
        read = read_conditions(text, signs, clause, explained)
        if read is None:
            return None
        conditions, state, left, score = read
        if not conditions and not state:
            return None
        conditions = tuple(c for c in conditions if c.what.measure != "start" or c.test != "some")
    described = batches._replace(conditions=conditions, state=state)
    ranked = candidates(text, signs, main, explained)
    ranked = [c for c in ranked if any(s.name not in ("what", "did", "how many") for s in c.signs)]
    order = next((s.name[4:] for s in signs if s.name in ("way:first", "way:last") and s.first in main), "")
    if not ranked and order and not described.conditions:
        spare = [i for i in content(text, main) if i not in explained and not any(s.first <= i < s.last for s in signs)]
        act = What(_ACT_OF_STATE.get(state, "start"))  # "the last wine I bottled"
        described = described._replace(state="" if state in _ACT_OF_STATE else state, every=False)
        return GroupRead(Query((act,), described, when, over=order), left + spare, score + 1.0)
    if not ranked:
        count = any(s.name == "how many" for s in signs)
        spare = [i for i in content(text, main) if i not in explained and not any(s.first <= i < s.last for s in signs)]
        return GroupRead(Query((), described, when, over="count" if count else "list"), left + spare, score + 1.0)
    best = ranked[0]
    what = narrowed(text, best, signs, main, explained)
    ways = [s.name[4:] for s in signs if s.name.startswith("way:") and set(range(s.first, s.last)) <= set(main)]
    way = next((w for w in ("mean", "sum", "most", "least", "range", "last", "first", "compare") if w in ways), "")
    usual = best.measure.usual if best.measure.usual in ("last", "first", "sum") else ""
    if any(s.name == "rank" for s in signs):
        query = Query((what,), described, when, within=RANKED_BY.get(best.measure.sort, "last"), over="rank")
    elif way in ("last", "first"):
        query = Query((what,), described, when, within=way)
    elif any(s.name == "times" for s in signs if s.first in main):
        query = Query((what._replace(part="times"),), described, when, within="count", over="sum")
    else:
        query = Query((what,), described, when, within=usual, over=way or ("sum" if usual == "sum" else ""))
    return GroupRead(query, left + best.left, score + best.score)
