"""A question that wants something worked out, taken apart: figures, batches, materials, and what its words speak of."""

from collections.abc import Iterator, Sequence
from functools import cache
from typing import NamedTuple

from journalbot.language.amounts import unit_at
from journalbot.language.lexicon import Mention
from journalbot.language.text import Text
from journalbot.questions.figures import SCALES, Figure, find_figures
from journalbot.vocabulary.calculation_words import COMMON, ROLES, TOPICS
from journalbot.vocabulary.finings import FININGS, OAK
from journalbot.vocabulary.question_signs import MATERIAL_GROUPS
from journalbot.vocabulary.questions import words
from journalbot.vocabulary.units import UNITS

GROUPS: dict[str, frozenset[str]] = {
    "#sulfite": frozenset(MATERIAL_GROUPS["sulfite"]),
    "#acid": frozenset(MATERIAL_GROUPS["acid"]),
    "#deacidify": frozenset(MATERIAL_GROUPS["deacidify"]),
    "#sugar": frozenset((*MATERIAL_GROUPS["sweeten"], "water", "corn sugar", "sugar syrup")) - {"glycerin", "syrup"},
    "#usual": frozenset((*FININGS, *OAK, "oak")),
}
_DETERMINERS = words("the my our this that a an batch")
BLENDED = ("percent", "alcohol", "ta", "g/L", "brix", "sg", "ph", "yan", "residual_sugar", "malic", "free_so2", "mg/L")


class Parts(NamedTuple):
    """A question taken apart: figures, batches, materials and topics, each with the words that it takes."""

    text: Text
    figures: list[Figure]
    refs: list[Mention]  # to batches
    materials: list[tuple[str, set[int]]]
    topics: dict[str, set[int]]
    vessels: list[Mention]
    spare: set[int]  # words of a colour or fruit that say what sort of wine, not which


def taken_apart(text: Text, refs: Sequence[Mention]) -> Parts:
    known = _known()
    # A word of these tables is never mended into another: "sulfuric" is no "sulfur".
    words = [t.low if t.low in known else w for t, w in zip(text.tokens, text.words, strict=True)]
    text = Text(text.text, text.tokens, words, text.mentions, text.impossible)
    materials = [(str(m.value), set(range(m.first, m.last))) for m in text.of("material", "oak_form")]
    topics = _topics(text)
    if "oak" in topics and not text.of("oak_form"):
        materials.append(("oak", topics["oak"]))
    dosed = {i for name, at in materials if any(name in g for g in GROUPS.values()) for i in at}
    figures = find_figures(text, [m for m in refs if not set(range(m.first, m.last)) <= dosed])
    volumes = any(f.sort in ("volume", "capacity") for f in figures)
    kept, spare = [], set[int]()
    for m in refs:
        at = set(range(m.first, m.last))
        if at <= dosed:
            continue
        bare = m.value.how != "number" and not m.value.vintage
        before = next((w for w in reversed(text.words[: m.first]) if not w.replace(".", "").isdigit()), "")
        if bare and (before in ("a", "an") or (volumes and before and before not in _DETERMINERS)):
            spare |= at  # "23 L of red", "a 1.100 mead": a sort of wine
        else:
            kept.append(m)
    return Parts(text, figures, kept, materials, topics, text.of("vessel"), spare)


@cache
def _known() -> frozenset[str]:
    return COMMON | ROLES.keys() | {w for phrases in TOPICS.values() for phrase in phrases for w in phrase.split()}


@cache
def _phrases() -> dict[str, tuple[tuple[tuple[str, ...], str], ...]]:
    """Every topic's phrases by their first word, the longest first."""
    out: dict[str, list[tuple[tuple[str, ...], str]]] = {}
    for topic, phrases in TOPICS.items():
        for phrase in phrases:
            parts = tuple(phrase.split())
            out.setdefault(parts[0], []).append(
                (parts, topic if ":" in topic else topic.replace(" ", "_").replace("-", "_"))
            )
    return {first: tuple(sorted(rows, key=lambda r: -len(r[0]))) for first, rows in out.items()}


def _topics(text: Text) -> dict[str, set[int]]:
    """The topics that the words name, with the tokens that do."""
    out: dict[str, set[int]] = {}
    for i, word in enumerate(text.words):
        for parts, topic in _phrases().get(word, ()):
            if tuple(text.words[i : i + len(parts)]) == parts:
                out.setdefault(topic, set()).update(range(i, i + len(parts)))
    return out


# ---- what is there


def has(parts: Parts, need: str) -> bool:
    return any(_has_one(parts, one) for one in need.split("|"))


def _has_one(parts: Parts, need: str) -> bool:
    if need.startswith("#"):
        return any(name in GROUPS[need] for name, _ in parts.materials)
    if need == "batch":
        return bool(parts.refs)
    if need in ("act", "act_now", "worry"):
        return bool(of_kind(parts, need))
    if need == "unit_wanted":
        return bool(unit_wanted(parts))
    if need == "two_batches":
        return len(parts.refs) == 2 and all(len(m.value.fits) == 1 for m in parts.refs)
    if need == "lots":
        return len(list(lots_told(parts))) >= 2
    if need in ("sort3", "to3", "three_and_volume"):
        three, volumes = three_figures(parts), [f for f in parts.figures if f.sort == "volume"]
        if three is None or len(volumes) != (1 if need == "three_and_volume" else 0) + (need == "to3") * len(volumes):
            return False
        return need != "to3" or three[2].role == "to"
    sort, _, role = need.partition("@")
    if not role and sort in parts.topics:
        return True
    return any(f.sort == sort and (not role or f.role == role) for f in parts.figures)


def of_kind(parts: Parts, need: str) -> str:
    """The topic of an act, or of a worry, that is named; of several the one with the longest phrase.

    Whether to bottle or sulfite now is asked of the wine's state, not of the calendar.
    """
    kind = need.partition("_")[0]
    found = [t for t in parts.topics if t.startswith(f"{kind}:")]
    found = [t for t in found if need != "act_now" or t not in ("act:bottle", "act:sulfite", "act:drink")]
    return max(found, key=lambda t: len(parts.topics[t]), default="")


def three_figures(parts: Parts) -> tuple[Figure, Figure, Figure] | None:
    """Three figures of one quantity and nothing else: two wines and what is wanted of them, that one last."""
    figures = [f for f in parts.figures if f.sort != "volume"]
    if len(figures) != 3 or len({f.sort for f in figures}) != 1 or figures[0].sort not in BLENDED:
        return None
    a, b, c = figures
    ahead = next((f for f in (a, b) if f.role == "to" and c.role != "to"), None)  # "get 12.5 % from 14 and 11"
    return (b, c, a) if ahead is a else (a, b, c)


def lots_told(parts: Parts) -> Iterator[tuple[Figure, Figure]]:
    """Volumes each with the figure that follows it, or stands before it: `3 gal of 12 %`, `12 % 3 gal`."""
    volumes = [f for f in parts.figures if f.sort == "volume"]
    values = [f for f in parts.figures if f.sort in BLENDED]
    if len(volumes) == len(values) and len({f.sort for f in values}) == 1:
        yield from zip(volumes, values, strict=True)


def unit_wanted(parts: Parts) -> tuple[str, set[int]] | None:
    """The unit that a value is wanted in, with its words: `6 gallons in litres`, `how many grams is 1/4 tsp`."""
    text, taken = parts.text, {i for f in parts.figures for i in range(f.first, f.last)}
    for i, word in enumerate(text.words):
        if i in taken or not i or text.words[i - 1] not in ("in", "to", "into", "many", "as"):
            continue
        if word in SCALES and any(f.sort == "temperature" for f in parts.figures):
            return SCALES[word], {i}
        found = unit_at(text.words, i)
        if found and UNITS[found[0]].dimension != "count":
            return found[0], set(range(i, found[1]))
    return None
