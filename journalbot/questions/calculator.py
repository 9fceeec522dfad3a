"""Questions that want something worked out: which calculation of `vocabulary/calculations.py`, and with what.

A row fits where all that it needs is there and nothing is left over: a figure or a word that it has no use for means
that something else is asked. Of the rows that fit, the one that needs the most is taken.
"""

from collections.abc import Sequence

from journalbot.journal.cellar import Cellar
from journalbot.language.lexicon import Mention
from journalbot.language.text import Text
from journalbot.questions.figures import Figure
from journalbot.questions.parts import (
    BLENDED,
    GROUPS,
    Parts,
    has,
    lots_told,
    of_kind,
    taken_apart,
    three_figures,
    unit_wanted,
)
from journalbot.questions.query import Batches, Query, What
from journalbot.questions.whom import label_of
from journalbot.vocabulary.calculation_words import COMMON
from journalbot.vocabulary.calculations import CALCULATIONS, Calculation
from journalbot.vocabulary.questions import DEEDS, FILLERS, words

_TOLD = words("did was were has had have been")
_COMING = words("need needed should would will could if to")  # "how much do I have to add" is of what is to come
_KINDS = frozenset(("fruit", "mead", "cider"))
_ASKING = words("when who whom whose why where long often times ever which was were did had been left since until")


def read_calculation(text: Text, refs: Sequence[Mention], cellar: Cellar) -> Query | None:
    """The Query of a calculation; None where the question is none."""
    said = set(text.words)
    if ["went", "in"] in [text.words[i : i + 2] for i in range(len(text.words))]:
        return None
    parts = taken_apart(text, refs)
    told = bool(said & (_TOLD | DEEDS)) and not said & _COMING
    best: tuple[int, Query] | None = None
    for row in CALCULATIONS:
        if (told and not row.done) or (best is not None and len(row.needs) <= best[0]):
            continue
        if not all(has(parts, need) for need in row.needs):
            continue
        if query := _filled(parts, row, cellar):
            best = (len(row.needs), query)
    return best[1] if best else None


# ---- fitting a row


class Filling:
    """A row being filled: its parts so far, the figures not used yet, the batches, and the words spoken for."""

    def __init__(self, left: list[Figure], used: set[int]) -> None:
        self.of: list[tuple[str, str]] = []
        self.left = left
        self.used = used
        self.numbers: tuple[int, ...] = ()


def _filled(parts: Parts, row: Calculation, cellar: Cellar) -> Query | None:
    """The row's Query; None where something that it wants is missing, or something is left over."""
    filling = Filling(list(parts.figures), set(parts.spare))
    for group in (g for need in row.needs for g in need.split("|") if g.startswith("#")):
        filling.used |= {i for name, at in parts.materials if name in GROUPS[group] for i in at}
    if not all(_slot_filled(parts, slot, filling) or slot.endswith("?") for slot in row.slots):
        return None
    of, numbers = filling.of, filling.numbers
    if filling.left or any(m.first not in filling.used for m in parts.refs) or _unexplained(parts, row, filling.used):
        return None
    of += [(topic, "yes") for topic in ("corks", "half") if topic in parts.topics and topic in row.also]
    of += _acids_named(parts) if row.measure == "TA in other units" else []
    kinds = [str(m.value[0]) for m in parts.text.of("colour")] + [w for w in parts.text.words if w in _KINDS]
    of += [("colour", kind) for kind in kinds[:1]]
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
        group = GROUPS.get(spec) or frozenset(material for material, _ in parts.materials)
        found = max(
            ((n, at) for n, at in parts.materials if n in group),
            key=lambda f: (f[0] != "water", len(f[1])),
            default=None,
        )
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
        topic = of_kind(parts, name)
        filling.used |= parts.topics.get(topic, set())
        return _constant(filling, name, topic.partition(":")[2].replace("_", " "))
    if name == "unit":
        unit, at = unit_wanted(parts) or ("", set[int]())
        filling.used |= at
        return _constant(filling, name, unit)
    if name == "shares":
        three = three_figures(parts)
        if three is None:
            return False
        filling.left = []
        filling.of += [(key, f.said) for key, f in zip(("first", "second", "to"), three, strict=True)]
        return _constant(filling, "quantity", _quantity(parts, three[0].sort))
    if name == "topped":
        return _topped(parts, filling)
    if name == "lots":
        lots = list(lots_told(parts))
        filling.left = []
        filling.of.append(("lots", "; ".join(f"{v.said} @ {f.said}" for v, f in lots)))
        return _constant(filling, "quantity", _quantity(parts, lots[0][1].sort))
    return _two_batches(parts, filling)


def _topped(parts: Parts, filling: Filling) -> bool:
    """A volume of one wine, another to add to it, and what is wanted: `20 L of 13 % with 9 % to get 12 %`."""
    three, volume = three_figures(parts), next(f for f in parts.figures if f.sort == "volume")
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
    filling.left = [f for f in filling.left if f.sort in BLENDED and f.role == "to"]
    return _constant(
        filling, "quantity", _quantity(parts, next((f.sort for f in parts.figures if f.sort in BLENDED), ""))
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
