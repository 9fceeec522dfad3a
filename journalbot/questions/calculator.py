"""Questions that want something worked out: which calculation of `vocabulary/calculations.py`, and with what.

A row fits where all that it needs is there and nothing is left over: a figure or a word that it has no use for means
that something else is asked. Of the rows that fit, the one that needs the most is taken.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from functools import cache

from journalbot.journal.cellar import Cellar
from journalbot.language.amounts import unit_at
from journalbot.language.lexicon import Mention
from journalbot.language.text import Text
from journalbot.questions.figures import SCALES, Figure, find_figures
from journalbot.questions.query import Batches, Query, What
from journalbot.questions.whom import label_of
from journalbot.vocabulary.calculations import CALCULATIONS, COMMON, ROLES, TOPICS, Calculation
from journalbot.vocabulary.finings import FININGS, OAK
from journalbot.vocabulary.question_signs import MATERIAL_GROUPS
from journalbot.vocabulary.questions import DEEDS, FILLERS, words
from journalbot.vocabulary.units import UNITS

_GROUPS: dict[str, frozenset[str]] = {
    "#sulfite": frozenset(MATERIAL_GROUPS["sulfite"]),
    "#acid": frozenset(MATERIAL_GROUPS["acid"]),
    "#deacidify": frozenset(MATERIAL_GROUPS["deacidify"]),
    "#sugar": frozenset((*MATERIAL_GROUPS["sweeten"], "water", "corn sugar", "sugar syrup")) - {"glycerin", "syrup"},
    "#usual": frozenset((*FININGS, *OAK, "oak")),
}
_TOLD = words("did was were has had have been")
_COMING = words("need needed should would will could if to")  # "how much do I have to add" is of what is to come
_DETERMINERS = words("the my our this that a an batch")
_ASKING = words("when who whom whose why where long often times ever which was were did had been left since until")
_BLENDED = ("percent", "alcohol", "ta", "g/L", "brix", "sg", "ph", "yan", "residual_sugar", "malic", "free_so2", "mg/L")


@dataclass(slots=True)
class Parts:
    """A question taken apart: figures, batches, materials and topics, each with the words that it takes."""

    text: Text
    figures: list[Figure]
    refs: list[Mention]  # to batches
    materials: list[tuple[str, set[int]]]
    topics: dict[str, set[int]]
    vessels: list[Mention]
    spare: set[int] = field(default_factory=set)  # words of a colour or fruit that say what sort of wine, not which


def read_calculation(text: Text, refs: Sequence[Mention], cellar: Cellar) -> Query | None:
    """The Query of a calculation; None where the question is none."""
    said = set(text.words)
    if ["went", "in"] in [text.words[i : i + 2] for i in range(len(text.words))]:
        return None
    parts = _taken_apart(text, refs)
    told = bool(said & (_TOLD | DEEDS)) and not said & _COMING
    best: tuple[int, Query] | None = None
    for row in CALCULATIONS:
        if (told and not row.done) or (best is not None and len(row.needs) <= best[0]):
            continue
        if not all(_has(parts, need) for need in row.needs):
            continue
        if query := _filled(parts, row, cellar):
            best = (len(row.needs), query)
    return best[1] if best else None


# ---- taking apart


def _taken_apart(text: Text, refs: Sequence[Mention]) -> Parts:
    known = _known()
    # A word of these tables is never mended into another: "sulfuric" is no "sulfur".
    text = replace(text, words=[t.low if t.low in known else w for t, w in zip(text.tokens, text.words, strict=True)])
    materials = [(str(m.value), set(range(m.first, m.last))) for m in text.of("material", "oak_form")]
    topics = _topics(text)
    if "oak" in topics and not text.of("oak_form"):
        materials.append(("oak", topics["oak"]))
    dosed = {i for name, at in materials if any(name in g for g in _GROUPS.values()) for i in at}
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


# ---- fitting a row


def _has(parts: Parts, need: str) -> bool:
    return any(_has_one(parts, one) for one in need.split("|"))


def _has_one(parts: Parts, need: str) -> bool:
    if need.startswith("#"):
        return any(name in _GROUPS[need] for name, _ in parts.materials)
    if need == "batch":
        return bool(parts.refs)
    if need in ("act", "act_now", "worry"):
        return bool(_of_kind(parts, need))
    if need == "unit_wanted":
        return bool(_unit_wanted(parts))
    if need == "two_batches":
        return len(parts.refs) == 2 and all(len(m.value.fits) == 1 for m in parts.refs)
    if need == "lots":
        return len(list(_lots(parts))) >= 2
    if need in ("sort3", "to3", "three_and_volume"):
        three, volumes = _three(parts), [f for f in parts.figures if f.sort == "volume"]
        if three is None or len(volumes) != (1 if need == "three_and_volume" else 0) + (need == "to3") * len(volumes):
            return False
        return need != "to3" or three[2].role == "to"
    sort, _, role = need.partition("@")
    if not role and sort in parts.topics:
        return True
    return any(f.sort == sort and (not role or f.role == role) for f in parts.figures)


def _of_kind(parts: Parts, need: str) -> str:
    """The topic of an act, or of a worry, that is named; of several the one with the longest phrase.

    Whether to bottle or sulfite now is asked of the wine's state, not of the calendar.
    """
    kind = need.partition("_")[0]
    found = [t for t in parts.topics if t.startswith(f"{kind}:")]
    found = [t for t in found if need != "act_now" or t not in ("act:bottle", "act:sulfite", "act:drink")]
    return max(found, key=lambda t: len(parts.topics[t]), default="")


def _three(parts: Parts) -> tuple[Figure, Figure, Figure] | None:
    """Three figures of one quantity and nothing else: two wines and what is wanted of them, that one last."""
    figures = [f for f in parts.figures if f.sort != "volume"]
    if len(figures) != 3 or len({f.sort for f in figures}) != 1 or figures[0].sort not in _BLENDED:
        return None
    a, b, c = figures
    ahead = next((f for f in (a, b) if f.role == "to" and c.role != "to"), None)  # "get 12.5 % from 14 and 11"
    return (b, c, a) if ahead is a else (a, b, c)


def _lots(parts: Parts) -> Iterator[tuple[Figure, Figure]]:
    """Volumes each with the figure that follows it, or stands before it: `3 gal of 12 %`, `12 % 3 gal`."""
    volumes = [f for f in parts.figures if f.sort == "volume"]
    values = [f for f in parts.figures if f.sort in _BLENDED]
    if len(volumes) == len(values) and len({f.sort for f in values}) == 1:
        yield from zip(volumes, values, strict=True)


@dataclass(slots=True)
class Filling:
    """A row being filled: its parts so far, the figures not used yet, the batches, and the words spoken for."""

    of: list[tuple[str, str]]
    left: list[Figure]
    used: set[int]
    numbers: tuple[int, ...] = ()


def _filled(parts: Parts, row: Calculation, cellar: Cellar) -> Query | None:
    """The row's Query; None where something that it wants is missing, or something is left over."""
    filling = Filling([], list(parts.figures), set(parts.spare))
    for group in (g for need in row.needs for g in need.split("|") if g.startswith("#")):
        filling.used |= {i for name, at in parts.materials if name in _GROUPS[group] for i in at}
    if not all(_slot_filled(parts, slot, filling) or slot.endswith("?") for slot in row.slots):
        return None
    of, numbers = filling.of, filling.numbers
    if filling.left or any(m.first not in filling.used for m in parts.refs) or _unexplained(parts, row, filling.used):
        return None
    of += [(topic, "yes") for topic in ("corks", "half") if topic in parts.topics and topic in row.also]
    of += _acids_named(parts) if row.measure == "TA in other units" else []
    of += [("colour", str(m.value[0])) for m in parts.text.of("colour")[:1]]
    labels = tuple(label_of(cellar.batches[n]) for n in numbers if n in cellar.batches)
    return Query((What(row.measure, tuple(of)),), Batches(numbers, labels))


def _slot_filled(parts: Parts, slot: str, filling: Filling) -> bool:
    """Fill one slot, if there is something to fill it with."""
    name, _, spec = slot.removesuffix("?").partition(":")
    if "=" in name:
        key, _, value = name.partition("=")
        return _constant(filling, key, value) if key else _special(parts, value, filling)
    if name == "batch":
        filling.numbers = tuple(dict.fromkeys(n for m in parts.refs for n in m.value.fits))
        filling.used |= {i for m in parts.refs for i in range(m.first, m.last)}
        return bool(filling.numbers)
    if name == "vessel":
        for m in parts.vessels[:1]:
            filling.of.append((name, m.value.name))
            filling.used |= set(range(m.first, m.last))
        return bool(parts.vessels)
    if spec.startswith("#"):
        group = _GROUPS.get(spec) or frozenset(material for material, _ in parts.materials)
        found = max(((n, at) for n, at in parts.materials if n in group), key=lambda f: (f[0] != "water", len(f[1])), default=None)
        if found:
            filling.of.append((name, found[0]))
            filling.used |= {i for n, at in parts.materials if n in group for i in at}
        return found is not None
    figure = _take(filling.left, spec)
    if figure:
        filling.left.remove(figure)
        filling.of.append((name, figure.said))
    return figure is not None


def _constant(filling: Filling, key: str, value: str) -> bool:
    filling.of.append((key, value))
    return True


def _unit_wanted(parts: Parts) -> tuple[str, set[int]] | None:
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


def _take(figures: Sequence[Figure], spec: str) -> Figure | None:
    for one in spec.split("|"):
        sort, _, role = one.partition("@")
        for f in figures:
            if f.sort == sort and (not role or f.role == role):
                return f
    return None


def _special(parts: Parts, name: str, filling: Filling) -> bool:
    """Fill what is no single figure: an act or worry named, a unit wanted, three figures, lots, or two batches."""
    if name in ("act", "worry"):
        topic = _of_kind(parts, name)
        filling.used |= parts.topics.get(topic, set())
        return _constant(filling, name, topic.partition(":")[2])
    if name == "unit":
        unit, at = _unit_wanted(parts) or ("", set[int]())
        filling.used |= at
        return _constant(filling, name, unit)
    if name == "shares":
        three = _three(parts)
        if three is None:
            return False
        filling.left = []
        filling.of += [(key, f.said) for key, f in zip(("first", "second", "to"), three, strict=True)]
        return _constant(filling, "quantity", _quantity(parts, three[0].sort))
    if name == "topped":
        return _topped(parts, filling)
    if name == "lots":
        lots = list(_lots(parts))
        filling.left = []
        filling.of.append(("lots", "; ".join(f"{v.said} @ {f.said}" for v, f in lots)))
        return _constant(filling, "quantity", _quantity(parts, lots[0][1].sort))
    return _two_batches(parts, filling)


def _topped(parts: Parts, filling: Filling) -> bool:
    """A volume of one wine, another to add to it, and what is wanted: `20 L of 13 % with 9 % to get 12 %`."""
    three, volume = _three(parts), next(f for f in parts.figures if f.sort == "volume")
    if three is None:
        return False
    first, second, target = three
    lot = next((f for f in (first, second) if f.first >= volume.last), second)  # the figure that follows the volume
    other = second if lot is first else first
    filling.left = [volume]
    filling.of += [("lot", lot.said), ("other", other.said), ("to", target.said)]
    return _constant(filling, "quantity", _quantity(parts, lot.sort))


def _two_batches(parts: Parts, filling: Filling) -> bool:
    """Two batches of the journal, with the volumes said before them; a figure to reach stays for its own slot."""
    volumes = [f for f in parts.figures if f.sort == "volume"]
    for m, key, size in zip(parts.refs, ("first", "second"), ("litres", "other litres"), strict=True):
        filling.of.append((key, str(m.value.fits[0])))
        filling.of += [(size, v.said) for v in volumes if v.last <= m.first and m.first - v.last <= 2][:1]
        filling.used |= set(range(m.first, m.last))
    filling.left = [f for f in filling.left if f.sort in _BLENDED and f.role == "to"]
    return _constant(
        filling, "quantity", _quantity(parts, next((f.sort for f in parts.figures if f.sort in _BLENDED), ""))
    )


def _quantity(parts: Parts, sort: str) -> str:
    """The quantity that a blend is of, by its figures or else by the words."""
    if sort in ("percent", "g/L", "mg/L", ""):
        named = next((t for t in ("ph", "acid", "alcohol", "free") if t in parts.topics), "")
        usual = {"ph": "ph", "acid": "ta", "alcohol": "alcohol", "free": "free_so2"}.get(named)
        return usual or {"g/L": "ta", "mg/L": "free_so2"}.get(sort, "alcohol")
    return sort


def _acids_named(parts: Parts) -> list[tuple[str, str]]:
    """The acids that a TA is told and wanted as: `4.5 g/L sulfuric to tartaric`."""
    out = []
    for i, word in enumerate(parts.text.words):
        acid = word.replace("sulph", "sulf")
        if acid in ("tartaric", "malic", "citric", "sulfuric", "lactic", "acetic"):
            out.append(("wanted" if parts.text.words[i - 1] in ("as", "to", "in", "into") else "given", acid))
    return out


def _unexplained(parts: Parts, row: Calculation, used: set[int]) -> set[int]:
    """The tokens that say something which the row has no use for."""
    text = parts.text
    named = {t for need in (*row.needs, *row.also) for t in need.split("|")}
    explained = used | {i for t in named for i in parts.topics.get(t, ())}
    explained |= {i for f in parts.figures for i in range(f.first, f.last)}
    explained |= {i for m in text.of("colour") for i in range(m.first, m.last)}
    if "capacity" in " ".join(row.slots):
        explained |= {i for m in parts.vessels for i in range(m.first, m.last)}
    plain = (FILLERS | COMMON) - (_ASKING if not row.done else _ASKING - _TOLD)
    return {
        i
        for i, word in enumerate(text.words)
        if i not in explained and word not in plain and (text.tokens[i].kind != "mark" or word in ("%",))
    }
