"""Which measure a stretch of a question asks for: the one whose signs explain most of its words."""

from collections.abc import Sequence
from dataclasses import dataclass, field

from journalbot.language.text import Text
from journalbot.questions.measures import MEASURES, Measure
from journalbot.questions.query import What
from journalbot.questions.signs import Sign
from journalbot.vocabulary.question_signs import MATERIAL_GROUPS
from journalbot.vocabulary.questions import FILLERS, MODALS, NO_ITEM, words

# Kinds of asking that any measure of a sort can answer without saying so in its rows.
_ANY = frozenset(("what", "did", "how"))
_BY_SORT: dict[str, frozenset[str]] = {
    "act": frozenset(("when", "times", "how much", "how many", "clock")),
    "reading": frozenset(("when", "how much", "times", "clock")),
    "figure": frozenset(("when", "how much")),
    "money": frozenset(("when", "how much")),
    "days": frozenset(("when",)),
    "words": frozenset(("when", "times", "how many")),
    "story": frozenset(("when",)),
}
_WAYS = frozenset(("last", "first", "most", "least", "mean", "sum", "change", "compare", "range", "each"))
_STAGES = {"stuck": "stuck", "started": "started", "finished": "finished", "restarted": "restarted"}
_FREE_WORDS = {"words", "item"}
# Signs that free words never swallow: they ask for something else.
_NOT_FREE = frozenset(
    (
        "lab",
        "alcohol",
        "attenuation",
        "score",
        "temperature",
        "how long",
        "who",
        "why",
        "where",
        "final gravity",
        "original gravity",
        "sg",
        "reading",
        "residual sugar",
        "left",
        "drunk",
        "per bottle",
        "plan",
        "recipe",
        "story",
        "between",
        "volume",
        "stuck",
        "pitch",
        "culture",
        "age",
        "lees",
    )
)
_SMALL = words("the a an my our about of in on i we it that with to any used for from at by what when was is were")
# Fillers that are goods where money is spoken of.
_GOODS = frozenset(("juice", "grapes", "fruit"))


@dataclass(slots=True)
class Candidate:
    """A measure with the tokens that it explains, and those left over."""

    measure: Measure
    used: set[int]
    left: list[int]
    score: float
    unasked: tuple[str, ...] = ()  # how it was asked (who, how long …) where the measure does not answer that
    signs: list[Sign] = field(default_factory=list)


def content(text: Text, tokens: Sequence[int]) -> list[int]:
    """The tokens among these that say something."""
    return [i for i in tokens if text.tokens[i].kind != "mark" and text.words[i] not in FILLERS]


def candidates(
    text: Text, signs: Sequence[Sign], tokens: Sequence[int], explained: set[int], only: frozenset[str] | None = None
) -> list[Candidate]:
    """Measures that the signs among these tokens ask for, the best first; `explained` tokens belong to other parts."""
    inside = set(tokens)
    here = [s for s in signs if set(range(s.first, s.last)) <= inside]
    by_name: dict[str, list[Sign]] = {}
    for s in here:
        by_name.setdefault(s.name.removeprefix("way:") if s.name.startswith("way:") else s.name, []).append(s)
        if s.name.startswith("period:"):
            by_name.setdefault("period", []).append(s)
        if s.name.startswith("way:") and s.value in ("first", "last"):
            by_name.setdefault(s.value, []).append(s)
    ways = {
        i
        for s in here
        if s.name.split(":")[0] in ("way", "every", "group", "test", "denial", "state", "coloured", "period")
        for i in range(s.first, s.last)
    }
    meaning = content(text, tokens)
    out = []
    for order, measure in enumerate(MEASURES.values()):
        if only is not None and measure.name not in only:
            continue
        best: Candidate | None = None
        for row in measure.asked:
            chosen = _assign(row, by_name)
            if chosen is None:
                continue
            candidate = _weigh(text, measure, row, chosen, by_name, meaning, explained, ways, order)
            if best is None or candidate.score > best.score:
                best = candidate
        if best:
            out.append(best)
    return sorted(out, key=lambda c: -c.score)


def _assign(row: tuple[str, ...], by_name: dict[str, list[Sign]]) -> list[Sign] | None:
    """Signs for every part of a row, no two of the same words; None where there are none."""
    if any(name not in by_name for part in row for name in [next((n for n in part.split("|") if n in by_name), part)]):
        return None
    if len(row) == 1:
        return [by_name[next(n for n in row[0].split("|") if n in by_name)][0]]

    def place(k: int, taken: tuple[Sign, ...]) -> list[Sign] | None:
        if k == len(row):
            return list(taken)
        for name in row[k].split("|"):
            for s in by_name.get(name, ()):
                if not any(s.first < t.last and t.first < s.last for t in taken):
                    found = place(k + 1, (*taken, s))
                    if found:
                        return found
        return None

    return place(0, ())


def _weigh(
    text: Text,
    measure: Measure,
    row: tuple[str, ...],
    chosen: list[Sign],
    by_name: dict[str, list[Sign]],
    meaning: list[int],
    explained: set[int],
    ways: set[int],
    order: int,
) -> Candidate:
    named = {s.name.removeprefix("way:") for s in chosen}
    core = {i for s in chosen for i in range(s.first, s.last)}
    core |= {i for n in named for s in by_name.get(n, ()) for i in range(s.first, s.last)}
    beside = {i for n in measure.beside for s in by_name.get(n, ()) for i in range(s.first, s.last)}
    asks = {
        i
        for n in (_ANY | _BY_SORT.get(measure.sort, frozenset()))
        for s in by_name.get(n, ())
        for i in range(s.first, s.last)
    }
    narrow: set[int] = set()
    for name in measure.narrows:
        if name in _FREE_WORDS:
            narrow |= {
                i for i in meaning if i not in core and (measure.name == "search" or not _claimed(i, by_name, name))
            }
        for s in by_name.get(
            {
                "yeast": "code",
                "culture": "culture code",
                "form": "oak form",
                "toast": "oak toast",
                "origin": "oak origin",
                "stage": "stage",
            }.get(name, name),
            (),
        ):
            narrow.update(range(s.first, s.last))
        if name == "stage":
            narrow |= {i for n in _STAGES for s in by_name.get(n, ()) for i in range(s.first, s.last)}
        if name == "act":
            narrow |= {i for n in PLAN_ACTS for s in by_name.get(n, ()) for i in range(s.first, s.last)}
        if name == "material":
            narrow |= {i for n in MATERIAL_GROUPS for s in by_name.get(n, ()) for i in range(s.first, s.last)}
    used = core | beside | asks | (narrow if not _FREE_WORDS & set(measure.narrows) else set())
    free = narrow if _FREE_WORDS & set(measure.narrows) else set()
    left = [i for i in meaning if i not in used and i not in explained and i not in ways and i not in free]
    unexplained_asks = [
        s
        for n in ("how long", "who", "why", "where", "how many", "when", "times", "clock", "money")
        if n not in named
        for s in by_name.get(n, ())
        if not set(range(s.first, s.last)) & (core | beside | asks | ways) and n not in measure.beside
    ]
    score = (
        3.0 * len(core & set(meaning))
        + 2.0 * len((beside | narrow - free) & set(meaning) - core)
        + 1.2 * len(row)
        + 0.6 * len(core)
        + 1.0 * len(free - used)
    )
    if measure.sort == "act":
        # "should I rack it" asks of what is to come, "how do I rack" of no wine at all.
        unexplained_asks += [s for s in by_name.get("plan", ()) if s.value in MODALS] + by_name.get("how to", [])
    score -= 4.0 * len(left) + 3.5 * len(unexplained_asks)
    return Candidate(
        measure,
        used | free,
        left,
        score - order * 0.001,
        tuple(s.value or s.name for s in unexplained_asks if s.name != "when"),
        chosen,
    )


def _claimed(token: int, by_name: dict[str, list[Sign]], narrows: str) -> bool:
    """Whether a word asks for something of its own, so that it is no free word (of a search, of an item bought)."""
    for name, found in by_name.items():
        if (name in _NOT_FREE or (name.startswith("quantity:") and narrows == "words") or name in _WAYS) and any(
            s.first <= token < s.last for s in found
        ):
            return True
    return False


PLAN_ACTS = (
    "rack",
    "press",
    "bottle",
    "filter",
    "stir",
    "top_up",
    "taste",
    "blend",
    "degas",
    "chill",
    "crush",
    "airlock",
    "pitch",
    "oak",
    "move",
    "malolactic",
)


def narrowed(
    text: Text, candidate: Candidate, signs: Sequence[Sign], tokens: Sequence[int], explained: set[int]
) -> What:
    """The What of a candidate: its measure, with what the question narrows it by."""
    inside = set(tokens)
    here = [s for s in signs if set(range(s.first, s.last)) <= inside]
    measure, of = candidate.measure, []
    row = {s.name for s in candidate.signs} - {"descriptor"}
    core = {i for s in here if s.name in row for i in range(s.first, s.last)}
    for name in measure.narrows:
        value = ""
        if name in _FREE_WORDS:
            taken = (
                core | {i for n in measure.beside for s in here if s.name == n for i in range(s.first, s.last)}
                if name == "words"
                else core
            )
            asks = {
                i
                for s in here
                if s.name in ("what", "did", "when", "how much", "how many", "who", "why", "where", "times")
                or s.name.startswith("way:")
                for i in range(s.first, s.last)
            }
            meant = [
                i
                for i in tokens
                if (i in set(content(text, tokens)) or (name == "item" and text.words[i] in _GOODS))
                and not (name == "item" and text.tokens[i].kind == "number")
                and i not in explained | taken | asks
            ]
            if name == "words" and measure.name == "search" and not meant:
                meant = [
                    i
                    for i in tokens
                    if core
                    and i > max(core)
                    and text.tokens[i].kind == "word"
                    and text.words[i] not in _SMALL
                    and i not in explained
                ]
            value = " ".join(
                f"{'or ' if name == 'item' and k and _apart(text, meant[k - 1], i) else ''}{text.tokens[i].low}"
                for k, i in enumerate(meant)
            )
            if name == "item" and set(value.split()) <= NO_ITEM:
                value = ""
            value = value.removesuffix("'s") or next(
                (s.value for s in here if s.name == "smell" and measure.name == "search"), ""
            )
        elif name == "stage":
            value = next((_STAGES[s.name] for s in here if s.name in _STAGES), "")
        elif name == "act":
            value = next((s.name for s in here if s.name in PLAN_ACTS), "")
        elif name == "material":
            value = (
                next((s.value for s in here if s.name == "material"), "")
                if not any(s.name in ("acid", "deacidify") for s in here)
                else ""
            )
            group = next((s.name for s in here if s.name in MATERIAL_GROUPS and measure.name == "addition"), "")
            value = (
                group if group and (not value or (value in MATERIAL_GROUPS[group] and _only(here, group))) else value
            )
        elif name == "vessel":
            value = next(
                (
                    s.value
                    for s in here
                    if s.name == "vessel" and s.value.lower() not in ("vessel", "vessels", "container", "containers")
                ),
                "",
            )
        else:
            sign = {
                "yeast": "code",
                "culture": "culture code",
                "form": "oak form",
                "toast": "oak toast",
                "origin": "oak origin",
            }.get(name, name)
            value = next((s.value for s in here if s.name == sign), "")
            if name == "closure" and value and value not in ("cork", "corks", "cap", "caps") and " " not in value:
                value = ""
        if value:
            of.append((name, value))
    return What(measure.name, (*measure.fixed, *of))


def _apart(text: Text, first: int, last: int) -> bool:
    """Whether two words of an item are two items: `grapes and juice`."""
    return bool(set(text.words[first + 1 : last]) & {"and", "or", ",", "&", "plus"})


def _only(signs: Sequence[Sign], group: str) -> bool:
    """Whether a material was named only by the group's own word ("sulphite" is any sulfite, "kmeta" the one)."""
    material = next(s for s in signs if s.name == "material")
    return any(s.name == group and s.first <= material.first and material.last <= s.last for s in signs)
