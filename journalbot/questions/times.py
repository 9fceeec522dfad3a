"""When: the days that a question speaks of, by date or by something done on them."""

from collections.abc import Set
from datetime import date, timedelta
from typing import NamedTuple

from journalbot.language.dates import DateMention
from journalbot.language.lexicon import Mention
from journalbot.language.text import Text
from journalbot.questions.query import When
from journalbot.questions.signs import Sign
from journalbot.vocabulary.questions import words

_SINCE = frozenset(("since", "after", "from"))
_UNTIL = frozenset(("until", "till", "before", "by", "to"))
_AT = {
    "when": "at",
    "at": "at",
    "during": "at",
    "on": "at",
    "before": "before",
    "after": "after",
    "since": "after",
    "for": "at",
    "until": "before",
    "till": "before",
}
_TOWARDS = words("it them the to into in my off its lees")
_DOSING = words("adding added add addition of putting put")
_SKIPPED = words("the i we my it was were is it's did you they got of that a start end beginning and in")


class Days(NamedTuple):
    """The days found, with the tokens they take."""

    when: When
    tokens: set[int]


def dates_in(text: Text, taken: set[int], *, weak: bool = False, plan: bool = False) -> Days:
    """The span of days that the dates of a question give; `taken` are tokens that belong to a batch's name.

    With `weak`, a bare year counts too ("and 2022?"); with `plan`, dates look forward ("due in January").
    """
    found = [m for m in text.of("date") if not taken.intersection(range(m.first, m.last))]
    found = [
        m
        for m in found
        if not m.value.weak
        or (m.first and text.words[m.first - 1] in _SINCE | _UNTIL | {"in", "on", "of", "during", "between", "for"})
    ]
    tokens: set[int] = set()
    since = until = ""
    bare = [
        t.text for i, t in enumerate(text.tokens) if weak and i not in taken and t.text.isdigit() and len(t.text) == 4
    ]
    if not found and len(bare) == 1:
        year = {i for i, t in enumerate(text.tokens) if t.text == bare[0]}
        return Days(When(f"{bare[0]}-01-01", f"{bare[0]}-12-31"), year)
    for k, m in enumerate(found):
        lo, hi = _ahead(m.value) if plan else _span(m.value)
        if not lo:
            continue
        before = _before(text, m.first)
        tokens.update(range(m.first, m.last))
        pair = k + 1 < len(found) and found[k + 1].first - m.last <= 2
        if before in _SINCE and not (before == "from" and not pair):
            since = _after(hi) if before == "after" else lo
        elif before in _UNTIL and (before != "to" or since):
            until = _day_before(lo) if before == "before" else hi
        elif before == "between" or (before == "from" and pair):
            since = lo
        elif since and not until:
            until = hi
        else:
            since, until = (min(since, lo) if since else lo), (max(until, hi) if until else hi)
    return Days(When(since, until), tokens)


def _span(d: DateMention) -> tuple[str, str]:
    if d.span:
        return d.span
    return d.iso, d.iso


def _ahead(d: DateMention) -> tuple[str, str]:
    iso = d.future_iso
    if iso == d.iso:
        return _span(d)
    if len(iso) == 7:
        after = date(int(iso[:4]) + int(iso[5:]) // 12, int(iso[5:]) % 12 + 1, 1)
        return f"{iso}-01", (after - timedelta(1)).isoformat()
    return (f"{iso}-01-01", f"{iso}-12-31") if len(iso) == 4 else (iso, iso)


def _before(text: Text, first: int) -> str:
    i = first - 1
    while (
        i >= 0
        and text.words[i] in ("the", "early", "late", "about", "and", "of", "end", "start", "beginning")
        and i > first - 4
    ):
        i -= 1
    return text.words[i] if i >= 0 else ""


def _after(iso: str) -> str:
    return (date.fromisoformat(iso) + timedelta(1)).isoformat() if len(iso) == 10 else iso


def _day_before(iso: str) -> str:
    return (date.fromisoformat(iso) - timedelta(1)).isoformat() if len(iso) == 10 else iso


def anchor(
    text: Text, signs: list[Sign], acts: frozenset[str], first: int = 0, passed: Set[int] = frozenset()
) -> tuple[When, set[int], int] | None:
    """An act that says when (`when I pitched`, `the week I bottled …`, `after the sugar`): the When, its tokens, and
    where it begins. `passed` are tokens that may stand between, as a batch's name does.
    """
    for s in signs:
        if s.name.startswith("opening:") and s.first >= first:
            return When(anchor="start", relation=s.name.partition(":")[2]), set(range(s.first, s.last)), s.first
        if s.name.startswith("anchor:"):
            act = next((a for a in signs if a.name in acts and a.first >= s.last), None)
            if act:
                return When(anchor=act.name, relation=s.name.partition(":")[2]), set(range(s.first, act.last)), s.first
    for act in signs:
        dosed = act.name == "material"
        if act.name not in acts and not dosed:
            continue
        i = act.first - 1
        while (
            i >= first
            and i >= act.first - (9 if passed else 4)
            and (text.words[i] in _SKIPPED or i in passed or (dosed and text.words[i] in _DOSING))
        ):
            i -= 1
        if (
            i > 0
            and text.words[i] in _AT
            and i >= first
            and not (text.words[i] in ("on", "since") and act.first - i > 3)
            and not (dosed and _AT[text.words[i]] == "at" and text.words[i] != "when")
        ):
            used = {k for k in range(i, act.last) if k not in passed}
            relation = _AT[text.words[i]]
            if dosed:
                return When(anchor="addition", relation=relation, narrow=(("material", act.value),)), used, i
            into = _vessel_after(text, act.last)
            if into and act.name == "rack":
                narrow = (("vessel", into.value.name),)
                used |= set(range(act.last, into.last)) - passed
                return When(anchor="rack", relation=relation, narrow=narrow), used, i
            return When(anchor=act.name, relation=relation), used, i
    return None


def _vessel_after(text: Text, last: int) -> Mention | None:
    """The vessel that an act ends in: `when I racked it to carboy 4`."""
    while last < len(text.words) and text.words[last] in _TOWARDS:
        last += 1
    return next((m for m in text.of("vessel") if m.first == last), None)
