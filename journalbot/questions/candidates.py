"""Which measure a stretch of a question asks for: the one whose signs explain most of its words."""

from collections.abc import Sequence
from typing import NamedTuple

from journalbot.language.text import Text
from journalbot.questions.measures import MEASURES, Measure
from journalbot.questions.signs import Sign
from journalbot.vocabulary.question_signs import MATERIAL_GROUPS
from journalbot.vocabulary.questions import FILLERS, MODALS
from journalbot.vocabulary.units import UNITS

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
STAGES = {"stuck": "stuck", "started": "started", "finished": "finished", "restarted": "restarted"}
FREE_WORDS = {"words", "item"}
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
        "per unit",
    )
)
# Signs that no word of a tasting gives: they ask for something else too, but money may go to them.
_NOT_TASTED = frozenset(
    (
        "yeast",
        "oak",
        "rack",
        "press",
        "bottle",
        "sulfite",
        "acid",
        "nutrients",
        "malolactic",
        "fining",
        "money",
        "given",
        "drunk",
        "ferment",
        "made of",
        "top_up",
        "blend",
        "made",
    )
)
_OF_VOLUME = frozenset(("volume", "volume racked", "volume pressed", "capacity"))  # they never answer "how many pounds"
# What has no more or less of it.
UNRANKED = frozenset(
    ("plans", "provenance", "where", "places", "contents", "held", "summary", "doing", "free vessels", "standing")
)
SIGN_OF = {  # what narrows a measure -> the sign that names it, where the two are not called alike
    "yeast": "code",
    "culture": "culture code",
    "form": "oak form",
    "toast": "oak toast",
    "origin": "oak origin",
}


class Candidate(NamedTuple):
    """A measure with the tokens that it explains, and those left over."""

    measure: Measure
    used: set[int]
    left: list[int]
    score: float
    unasked: tuple[str, ...] = ()  # how it was asked (who, how long …) where the measure does not answer that
    signs: Sequence[Sign] = ()


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
        if s.name.split(":")[0] in ("way", "every", "group", "test", "denial", "state", "coloured", "period", "rank")
        for i in range(s.first, s.last)
    }
    meaning = content(text, tokens)
    weighed = any(s.name == "unit" and UNITS[s.value].dimension == "mass" for s in here)
    out = []
    for order, measure in enumerate(MEASURES.values()):
        if (only is not None and measure.name not in only) or (weighed and measure.name in _OF_VOLUME):
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
        if name in FREE_WORDS:
            narrow |= {
                i
                for i in meaning
                if i not in core
                and (measure.name == "search" or not _claimed(i, by_name, measure.name, name))
                and not (name == "item" and text.tokens[i].kind == "number")
            }
        for s in by_name.get(SIGN_OF.get(name, name), ()):
            narrow.update(range(s.first, s.last))
        if name == "stage":
            narrow |= {i for n in STAGES for s in by_name.get(n, ()) for i in range(s.first, s.last)}
        if name == "act":
            narrow |= {i for n in PLAN_ACTS for s in by_name.get(n, ()) for i in range(s.first, s.last)}
        if name == "material":
            narrow |= {i for n in MATERIAL_GROUPS for s in by_name.get(n, ()) for i in range(s.first, s.last)}
    used = core | beside | asks | (narrow if not FREE_WORDS & set(measure.narrows) else set())
    free = narrow if FREE_WORDS & set(measure.narrows) else set()
    if measure.sort == "story":  # what was done is no answer to "do you remember when I bottled it"
        ways = ways - {i for n, found in by_name.items() if n.startswith("state:") for s in found for i in _at(s)}
    left = [i for i in meaning if i not in used and i not in explained and i not in ways and i not in free]
    unexplained_asks = [
        s
        for n in ("how long", "who", "why", "where", "how many", "when", "times", "clock", "money", "left", "opinion")
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
    if measure.sort in ("act", "days"):
        # "should I rack it" asks of what is to come, "how do I rack" of no wine at all.
        unexplained_asks += [s for s in by_name.get("plan", ()) if s.value in MODALS] + by_name.get("how to", [])
    if measure.name == "taste":  # "how much honey is in it"
        unexplained_asks += [s for s in by_name.get("how much", ()) if "how much" not in named]
    score -= 4.0 * len(left) + 3.5 * len(unexplained_asks)
    return Candidate(
        measure,
        used | free,
        left,
        score - order * 0.001,
        tuple(s.value or s.name for s in unexplained_asks if s.name != "when"),
        chosen,
    )


def _at(sign: Sign) -> range:
    return range(sign.first, sign.last)


def _claimed(token: int, by_name: dict[str, list[Sign]], measure: str, narrows: str) -> bool:
    """Whether a word asks for something of its own, so that it is no free word (of a search, of an item bought)."""
    for name, found in by_name.items():
        claims = name in _NOT_FREE or name in _WAYS or (name.startswith("quantity:") and narrows == "words")
        claims = claims or (measure == "taste" and name in _NOT_TASTED)
        if claims and any(s.first <= token < s.last for s in found):
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
    "buy",
    "given",
)
