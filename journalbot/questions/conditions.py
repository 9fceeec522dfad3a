"""What is said of batches: `that I racked more than twice`, `pitched under 60 F`, `without oak`, `over 7`."""

from journalbot.language.amounts import Amount, Score
from journalbot.language.text import Text
from journalbot.questions.candidates import candidates, content
from journalbot.questions.measures import MEASURES
from journalbot.questions.narrowing import narrowed
from journalbot.questions.query import Condition, What
from journalbot.questions.signs import Sign

_SPLIT = frozenset(("and", "but", "with", "without", ","))
_MANY_TIMES = 20  # more often than this nothing is done to a wine that a question would ask about so
_VALUES = ("reading", "temperature", "percent", "amount", "score", "money", "times", "number")
_NO_STARTS = frozenset(("value", "did", "what", "between", "group", "every", "denial", "superlative"))
_HAVING = frozenset(("got", "get", "gets", "had", "has", "have", "received"))  # "got more than two rackings"
_COMPARING = frozenset(("test:over", "test:under", "test:at least", "test:at most"))
_DAYS = {"day": 1, "days": 1, "week": 7, "weeks": 7, "month": 30.44, "months": 30.44, "year": 365.25, "years": 365.25}

Read = tuple[tuple[Condition, ...], str, list[int], float]  # conditions, state, tokens left over, score


def in_test(sign: Sign, signs: list[Sign]) -> bool:
    return any(t.name.startswith("test:") and t.first <= sign.first and sign.last <= t.last for t in signs)


def read_conditions(
    text: Text, signs: list[Sign], tokens: list[int], explained: set[int]
) -> tuple[tuple[Condition, ...], str, list[int], float] | None:
    """The conditions that a stretch of words puts on batches, joined by and; with what is left over."""
    parts = _parts(text, signs, tokens)
    whole = _condition(text, signs, tokens, explained)
    if len(parts) > 1:
        split = [_condition(text, signs, p, explained) for p in parts if content(text, p)]
        if (
            split
            and all(s is not None for s in split)
            and (whole is None or sum(len(s[2]) for s in split if s) <= len(whole[2]))
            and not _same(split)
        ):
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


def _parts(text: Text, signs: list[Sign], tokens: list[int]) -> list[list[int]]:
    """A stretch of words cut at what joins conditions, and after each value compared with."""
    tests = [s for s in signs if s.name.startswith("test:")]
    ends = {m.last for m in text.of(*_VALUES) if any(0 <= m.first - t.last <= 2 for t in tests)}
    starts = {
        s.first for s in signs if ":" not in s.name and s.name not in _NO_STARTS and text.words[s.first] not in _HAVING
    }
    parts: list[list[int]] = [[]]
    for i in tokens:
        if i in ends and i in starts and starts.intersection(parts[-1]):
            parts.append([])
        if text.words[i] in _SPLIT or text.words[i] in ("that", "which", "who"):
            parts.append([])
            if text.words[i] in ("without", "with"):
                parts[-1].append(i)
            continue
        parts[-1].append(i)
    return [p for p in parts if p]


def _condition(
    text: Text, signs: list[Sign], tokens: list[int], explained: set[int]
) -> tuple[tuple[Condition, ...], str, list[int], float] | None:
    inside = set(tokens)
    here = [s for s in signs if set(range(s.first, s.last)) <= inside]
    meant = [i for i in content(text, tokens) if i not in explained]
    if meant and all({s.name for s in here if s.first <= i < s.last} == {"descriptor"} for i in meant):
        told = What("described", (("words", " ".join(text.tokens[i].low for i in meant)),))
        return (Condition(told),), "", [], 5.0  # "which one was leathery"
    test, value, unit, used, quantity = _test(text, here, inside)
    if not test and any(s.name in _COMPARING for s in here):
        return None  # a comparison with something that is no value
    denied = any(s.name == "denial" for s in here)
    rest = [i for i in tokens if i not in used]
    virtual = [Sign(quantity, min(used), min(used) + 1)] if quantity and used else []
    ranked = candidates(text, [*signs, *virtual], [*rest, *[v.first for v in virtual]], explained | used)
    ranked = [c for c in ranked if MEASURES[c.measure.name].scope == "batch" or c.measure.name in ("search", "money")]
    ranked = [c for c in ranked if not c.unasked]
    state = next((s for s in here if s.name.startswith("state:") and not denied), None)
    if state and (not ranked or ranked[0].score <= 3.0 * (state.last - state.first) + 2.5) and not used:
        left = [i for i in content(text, rest) if i not in explained and not state.first <= i < state.last]
        if not left:
            return (), state.name.partition(":")[2], [], 3.0 * (state.last - state.first)
    if not ranked:
        return None
    best = ranked[0]
    if (
        test
        and not unit
        and not quantity
        and value > _MANY_TIMES
        and best.measure.sort == "act"
        and best.measure.counts == "count"
    ):
        # "fermented below 60": no one ferments sixty times
        virtual = [Sign("quantity:temperature", min(used), min(used) + 1)]
        ranked = [
            c
            for c in candidates(text, [*signs, *virtual], [*rest, min(used)], explained | used)
            if c.measure.quantity == "temperature"
        ]
        if not ranked:
            return None
        best = ranked[0]
    what = narrowed(text, best, [*signs, *virtual], rest, explained | used)
    if test:
        method = _method(best.measure.sort, best.measure.usual, unit, here)
        if unit == "days" and best.measure.sort != "days":
            return None
        condition = Condition(what, test, value, unit if unit != "times" else "times", method)
    elif denied and best.measure.name == "bottles left":
        condition = Condition(what, "at most", 0, "bottles", "sum")
    elif denied:
        condition = Condition(what, "none")
    else:
        condition = Condition(
            what,
            "over" if best.measure.name == "bottles left" else "some",
            method="sum" if best.measure.name == "bottles left" else "",
        )
    left = [
        i for i in best.left if i not in used and not any(s.name == "denial" and s.first <= i < s.last for s in here)
    ]
    return (condition,), "", left, best.score


def _method(sort: str, usual: str, unit: str, signs: list[Sign]) -> str:
    named = next(
        (
            s.name[4:]
            for s in signs
            if s.name in ("way:mean", "way:last", "way:first", "way:most", "way:least", "way:sum")
        ),
        "",
    )
    if named:
        return named
    if sort == "act" and unit in ("times", ""):
        return "count"
    return usual if usual in ("last", "first", "sum") else "sum" if sort in ("money", "days") else ""


def _test(text: Text, here: list[Sign], inside: set[int]) -> tuple[str, float, str, set[int], str]:
    """A comparison with a value: (test, value, unit, its tokens, the quantity that the value's form says)."""
    values = [
        m
        for m in text.of("reading", "temperature", "percent", "amount", "score", "money", "times", "number")
        if set(range(m.first, m.last)) <= inside
    ]
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
    for s in here:
        after_test = text.words[s.last] if s.name in _COMPARING and s.last < len(text.words) else ""
        if after_test in ("one", "once", "a"):
            return s.name.partition(":")[2], 1.0, "times", {*range(s.first, s.last + 1)}, ""
    for m in values:
        if m.kind == "times":
            return "exactly", float(m.value.value), "times", set(range(m.first, m.last)), ""
        if m.kind in ("reading", "temperature", "score"):  # "which batch had a pH of 3.05"
            value, unit, quantity = _value(m.kind, m.value)
            return "exactly", value, unit, set(range(m.first, m.last)), quantity
        if m.kind == "number" and m.first and text.words[m.first - 1] == "a" and any(s.name == "score" for s in here):
            return "exactly", float(m.value.value), "", {m.first - 1, *range(m.first, m.last)}, ""  # "scored a 9"
    return "", 0.0, "", set(), ""


def _value(kind: str, value: object) -> tuple[float, str, str]:
    if isinstance(value, Score):
        return value.score, f"/{value.out_of:g}", "score"
    if isinstance(value, Amount):
        quantity = {"temperature": "quantity:temperature", "percent": "alcohol"}.get(kind, "")
        return (
            float(value.value),
            {"%": "% vol"}.get(value.unit, value.unit) if kind == "percent" else value.unit,
            quantity,
        )
    if kind == "reading":
        unit = getattr(value, "unit", "")
        return float(getattr(value, "value", 0.0)), unit, f"quantity:{getattr(value, 'quantity', '')}"
    return float(getattr(value, "value", 0.0)), "", ""
