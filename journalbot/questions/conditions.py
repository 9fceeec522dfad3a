"""Batches described: `which wines …`, `reds that I racked more than twice`, `whites pitched under 60 F`, `batches without oak`."""

from dataclasses import dataclass, replace

from journalbot.journal.cellar import Cellar
from journalbot.language.amounts import Amount, Score
from journalbot.language.text import Text
from journalbot.questions.candidates import candidates, content, narrowed
from journalbot.questions.measures import MEASURES
from journalbot.questions.query import Batches, Condition, Query, When
from journalbot.questions.signs import Sign
from journalbot.questions.whom import Whom
from journalbot.vocabulary.questions import RELATIVES

_SPLIT = frozenset(("and", "but", "with", "without", ","))
_WHICH = frozenset(("which", "what", "list", "show", "any", "of"))
_COUNTABLE = frozenset(("sum", "figure", "money"))
_PAST = ("ed", "en", "wn", "nk", "pt", "ld", "ut")
_DAYS = {"day": 1, "days": 1, "week": 7, "weeks": 7, "month": 30.44, "months": 30.44, "year": 365.25, "years": 365.25}


@dataclass(frozen=True, slots=True)
class Group:
    """Batches spoken of as a group: where the word for it stands, and whether the question asks which they are."""

    first: int
    last: int
    asked: bool  # "which wines …"
    counted: bool  # "how many wines …"
    colours: tuple[str, ...] = ()
    relative: int | None = None  # where a clause about them begins
    numbers: tuple[int, ...] = ()
    word: str = ""


@dataclass(frozen=True, slots=True)
class GroupRead:
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
    plural = [m for m in text.of("batch", "stranger") if set(range(m.first, m.last)) <= who.tokens]
    for m in plural:
        if len(plural) == 1 and (who.every or _asked(text, signs, m.first)[0]):
            colours = tuple(t for t in m.value.terms if t in ("red", "white", "rosé"))
            whole = colours if len(colours) == len(m.value.terms) else ()
            options.append(_group(text, signs, m.first, m.last, whole, who.numbers))
    useful = [g for g in options if g.asked or g.counted or g.relative is not None or (g.colours and not g.numbers)]
    return max(useful, key=lambda g: (g.asked, g.counted, g.relative is not None, -g.first)) if useful else None


def _group(text: Text, signs: list[Sign], first: int, last: int, colours: tuple[str, ...], numbers: tuple[int, ...]) -> Group:
    asked, counted = _asked(text, signs, first)
    relative = None
    nxt = text.words[last] if last < len(text.words) else ""
    if nxt in RELATIVES or any(s.first == last and s.name.startswith("test:") for s in signs) or (nxt.endswith(_PAST) and last < len(text.words) and any(s.first == last for s in signs)) and not asked:
        relative = last
    return Group(first, last, asked, counted, colours, relative, numbers, text.words[first])


def _asked(text: Text, signs: list[Sign], first: int) -> tuple[bool, bool]:
    i = first - 1
    while i >= 0 and text.words[i] in ("of", "my", "the", "all", "other", "our", "these", "those", "2020", "2021", "2022", "2023", "2024", "2025", "2026"):
        i -= 1
    if i < 0:
        return False, False
    word = text.words[i]
    many = word == "many" and i and text.words[i - 1] == "how"
    return word in ("which", "what") or (word in ("list", "show", "find", "me", "any") and i <= 3 and word != "any"), bool(many)


def read_group(text: Text, signs: list[Sign], group: Group, explained: set[int], when: When, cellar: Cellar) -> GroupRead | None:
    """The Query of a question about a group; None where the group only says that all are meant."""
    head = set(range(group.first, group.last))
    everything = [i for i in range(len(text.words)) if i not in head]
    years = _years(text, group)
    spare = explained | set(years) | head
    batches = Batches(colours=group.colours, years=tuple(years.values()), every=True)
    if group.asked or group.counted:
        tail = [i for i in everything if i >= group.last] or everything
        asking = [i for i in everything if i < group.first]
        return _which(text, signs, group, batches, tail, asking, spare, when)
    if group.relative is None:
        return None if not group.colours or group.numbers else _figures(text, signs, batches, everything, [], spare, when)
    clause = [i for i in everything if i >= group.relative]
    main = [i for i in everything if i < group.relative]
    return _figures(text, signs, batches, main, clause, spare, when)


def _years(text: Text, group: Group) -> dict[int, int]:
    """A year beside the word for the group: `my 2023 whites`, `reds from 2022`."""
    out: dict[int, int] = {}
    spots = [group.first - 1, group.last + 1 if group.last < len(text.words) and text.words[group.last] in ("from", "of") else group.last]
    for i in spots:
        if 0 <= i < len(text.tokens) and text.tokens[i].text.isdigit() and 1990 <= int(text.tokens[i].text) <= 2099:
            out[i] = int(text.tokens[i].text)
    return out


def _which(text: Text, signs: list[Sign], group: Group, batches: Batches, tail: list[int], asking: list[int], explained: set[int], when: When) -> GroupRead | None:
    """`Which wines …`: ranked where something superlative is said of them, else those that meet the conditions."""
    over = "count" if group.counted else "list"
    ask_tokens = {i for i in asking if text.words[i] in _WHICH or text.words[i] in ("how", "many", "me", "in", "to", "from", "for", "on", "give", "tell")}
    before = [i for i in asking if i not in ask_tokens]
    way = next((s for s in signs if s.name in ("way:most", "way:least") and not set(range(s.first, s.last)) & explained and not _in_test(s, signs)), None)
    left_before = [i for i in content(text, before) if i not in explained and not any(s.first <= i < s.last for s in signs)]
    if way is not None:
        ranked = candidates(text, signs, [i for i in (*before, *tail)], explained)
        ranked = [c for c in ranked if MEASURES[c.measure.name].scope != "none" and c.measure.sort != "story"]
        if ranked:
            best = ranked[0]
            what = narrowed(text, best, signs, [*before, *tail], explained)
            sort, usual = best.measure.sort, best.measure.usual
            often = best.measure.name != "addition" or any(s.name == "times" or s.value.endswith("often") for s in signs)
            within = "count" if sort == "act" and best.measure.counts == "count" and often else usual if usual in ("sum", "last") else "sum" if sort in ("days", "money") or sort == "act" else ""
            mean = any(s.name == "way:mean" for s in signs)
            return GroupRead(Query((what,), batches, when, within="mean" if mean else within, over=way.name[4:]), best.left, best.score)
    read = _conditions(text, signs, tail, explained)
    if read is None:
        return None
    conditions, state, left, score = read
    conditions = tuple(c for c in conditions if c.what.measure != "start" or c.test != "some" or when)  # every batch has a start
    if not conditions and not state and not batches.described and not read[0] and not content(text, tail) and not group.counted and over == "list" and group.word not in ("wines", "batches"):
        return None
    described = replace(batches, conditions=conditions, state=state)
    return GroupRead(Query((), described, when, over=over), left + left_before, score + 2.0)


def _figures(text: Text, signs: list[Sign], batches: Batches, main: list[int], clause: list[int], explained: set[int], when: When) -> GroupRead | None:
    """A figure of the batches that meet a clause: `average score of reds that I racked more than twice`."""
    conditions: tuple[Condition, ...] = ()
    state, left, score = "", [], 0.0
    if clause:
        read = _conditions(text, signs, clause, explained)
        if read is None:
            return None
        conditions, state, left, score = read
        if not conditions and not state:
            return None
        conditions = tuple(c for c in conditions if c.what.measure != "start" or c.test != "some")
    described = replace(batches, conditions=conditions, state=state)
    ranked = candidates(text, signs, main, explained)
    ranked = [c for c in ranked if any(s.name not in ("what", "did", "how many") for s in c.signs)]
    if not ranked:
        count = any(s.name == "how many" for s in signs)
        spare = [i for i in content(text, main) if i not in explained and not any(s.first <= i < s.last for s in signs)]
        return GroupRead(Query((), described, when, over="count" if count else "list"), left + spare, score + 1.0)
    best = ranked[0]
    what = narrowed(text, best, signs, main, explained)
    ways = [s.name[4:] for s in signs if s.name.startswith("way:") and set(range(s.first, s.last)) <= set(main)]
    way = next((w for w in ("mean", "sum", "most", "least", "range", "last", "first", "compare") if w in ways), "")
    usual = best.measure.usual if best.measure.usual in ("last", "first", "sum") else ""
    if way in ("last", "first"):
        query = Query((what,), described, when, within=way)
    elif any(s.name == "times" for s in signs if s.first in main):
        query = Query((replace(what, part="times"),), described, when, within="count", over="sum")
    else:
        query = Query((what,), described, when, within=usual, over=way or ("sum" if usual == "sum" else ""))
    return GroupRead(query, left + best.left, score + best.score)


def _in_test(sign: Sign, signs: list[Sign]) -> bool:
    return any(t.name.startswith("test:") and t.first <= sign.first and sign.last <= t.last for t in signs)


def _conditions(text: Text, signs: list[Sign], tokens: list[int], explained: set[int]) -> tuple[tuple[Condition, ...], str, list[int], float] | None:
    """The conditions that a stretch of words puts on batches, joined by and; with what is left over."""
    parts = _parts(text, tokens)
    whole = _condition(text, signs, tokens, explained)
    if len(parts) > 1:
        split = [_condition(text, signs, p, explained) for p in parts if content(text, p)]
        if split and all(s is not None for s in split) and (whole is None or sum(len(s[2]) for s in split if s) <= len(whole[2])) and not _same(split):
            conditions = tuple(c for s in split if s for c in s[0])
            state = next((s[1] for s in split if s and s[1]), "")
            return conditions, state, [i for s in split if s for i in s[2]], sum(s[3] for s in split if s)
    if whole is None:
        left = [i for i in content(text, tokens) if i not in explained]
        return ((), "", [], 0.0) if not left else None
    return whole


def _same(split: list[tuple[tuple[Condition, ...], str, list[int], float] | None]) -> bool:
    names = [c.what for s in split if s for c in s[0]]
    return len(names) > 1 and len(set(names)) == 1


def _parts(text: Text, tokens: list[int]) -> list[list[int]]:
    parts: list[list[int]] = [[]]
    for i in tokens:
        if text.words[i] in _SPLIT or text.words[i] in ("that", "which", "who"):
            parts.append([])
            if text.words[i] in ("without", "with"):
                parts[-1].append(i)
            continue
        parts[-1].append(i)
    return [p for p in parts if p]


def _condition(text: Text, signs: list[Sign], tokens: list[int], explained: set[int]) -> tuple[tuple[Condition, ...], str, list[int], float] | None:
    inside = set(tokens)
    here = [s for s in signs if set(range(s.first, s.last)) <= inside]
    test, value, unit, used, quantity = _test(text, here, inside)
    denied = any(s.name == "denial" for s in here)
    rest = [i for i in tokens if i not in used]
    virtual = [Sign(quantity, min(used), min(used) + 1)] if quantity and used else []
    ranked = candidates(text, [*signs, *virtual], [*rest, *[v.first for v in virtual]], explained | used)
    ranked = [c for c in ranked if MEASURES[c.measure.name].scope == "batch" or c.measure.name in ("search", "money")]
    state = next((s for s in here if s.name.startswith("state:") and not denied), None)
    if state and (not ranked or ranked[0].score <= 3.0 * (state.last - state.first) + 2.5) and not used:
        left = [i for i in content(text, rest) if i not in explained and not state.first <= i < state.last]
        if not left:
            return (), state.name.partition(":")[2], [], 3.0 * (state.last - state.first)
    if not ranked:
        return None
    best = ranked[0]
    what = narrowed(text, best, [*signs, *virtual], rest, explained | used)
    if test:
        method = _method(best.measure.sort, best.measure.usual, unit, here)
        if unit == "days" and best.measure.sort != "days":
            return None
        condition = Condition(what, test, value, unit if unit != "times" else "times", method)
    elif denied:
        condition = Condition(what, "none")
    else:
        condition = Condition(what, "over" if best.measure.name == "bottles left" else "some", method="sum" if best.measure.name == "bottles left" else "")
    left = [i for i in best.left if i not in used and not any(s.name == "denial" and s.first <= i < s.last for s in here)]
    return (condition,), "", left, best.score


def _method(sort: str, usual: str, unit: str, signs: list[Sign]) -> str:
    named = next((s.name[4:] for s in signs if s.name in ("way:mean", "way:last", "way:first", "way:most", "way:least", "way:sum")), "")
    if named:
        return named
    if sort == "act" and unit in ("times", ""):
        return "count"
    return usual if usual in ("last", "first", "sum") else "sum" if sort in ("money", "days") else ""


def _test(text: Text, here: list[Sign], inside: set[int]) -> tuple[str, float, str, set[int], str]:
    """A comparison with a value: (test, value, unit, its tokens, the quantity that the value's form says)."""
    values = [m for m in text.of("reading", "temperature", "percent", "amount", "score", "money", "times", "number") if set(range(m.first, m.last)) <= inside]
    for s in here:
        if not s.name.startswith("test:"):
            continue
        after = [m for m in values if 0 <= m.first - s.last <= 2]
        before = [m for m in values if 0 <= s.first - m.last <= 1] if s.value.startswith("or ") else []
        for m in after or before:
            value, unit, quantity = _value(m.kind, m.value)
            used = set(range(min(s.first, m.first), max(s.last, m.last)))
            nxt = text.words[m.last] if m.last < len(text.words) else ""
            if nxt in _DAYS and m.kind == "number":
                return s.name.partition(":")[2], value * _DAYS[nxt], "days", used | {m.last}, "how long"
            if nxt in ("times", "bottles") and m.last in inside:
                return s.name.partition(":")[2], value, nxt, used | ({m.last} if nxt == "times" else set()), quantity
            return s.name.partition(":")[2], value, unit, used, quantity
    for m in values:
        if m.kind == "times":
            return "exactly", float(m.value.value), "times", set(range(m.first, m.last)), ""
    return "", 0.0, "", set(), ""


def _value(kind: str, value: object) -> tuple[float, str, str]:
    if isinstance(value, Score):
        return value.score, f"/{value.out_of:g}", "score"
    if isinstance(value, Amount):
        quantity = {"temperature": "quantity:temperature", "percent": "alcohol"}.get(kind, "")
        return float(value.value), {"%": "% vol"}.get(value.unit, value.unit) if kind == "percent" else value.unit, quantity
    if kind == "reading":
        unit = getattr(value, "unit", "")
        return float(getattr(value, "value", 0.0)), unit, f"quantity:{getattr(value, 'quantity', '')}"
    return float(getattr(value, "value", 0.0)), "", ""
