"""Questions that compute from their own numbers, or from a batch's readings: which calculation, and with what."""

from collections.abc import Sequence

from journalbot.journal.cellar import Cellar
from journalbot.language.amounts import unit_at
from journalbot.language.lexicon import Mention
from journalbot.language.text import Text
from journalbot.questions.query import Query, What
from journalbot.vocabulary.finings import FININGS, OAK
from journalbot.vocabulary.question_signs import MATERIAL_GROUPS
from journalbot.vocabulary.questions import CALCULATE, DEEDS
from journalbot.vocabulary.units import UNITS
from journalbot.winemaking.units import litres

_SULFITES = MATERIAL_GROUPS["sulfite"]
_ACIDS = (*MATERIAL_GROUPS["acid"], *MATERIAL_GROUPS["deacidify"])
_AS_GRAVITY = (0.98, 1.18)  # "alcohol from 1.090 to 0.996": figures that no alcohol is given in
_SCALES = {"c": "C", "celsius": "C", "centigrade": "C", "f": "F", "fahrenheit": "F"}


def read_calculation(text: Text, refs: Sequence[Mention], cellar: Cellar) -> Query | None:
    """The Query of a calculation; None where the question is none."""
    words = set(text.words)
    values = _values(text)
    volume, rates, gravities, brix, temperatures, percents, others = values
    needed = bool(words & {"need", "needed", "should", "would", "will"})
    told = bool(words & {"did", "was", "were", "has", "had", "have"}) and not needed
    if told or words & DEEDS or ["went", "in"] in [text.words[i : i + 2] for i in range(len(text.words))]:
        return None
    wanted = bool(words & CALCULATE) or any(
        " ".join(text.words[i : i + 2]) in CALCULATE for i in range(len(text.words))
    )
    if alone := _from_figures_alone(text, words, refs, percents):
        return alone
    batch = _batch(refs)
    if refs and batch is None:
        return None
    material = _material(text)
    base = (*((("volume", volume),) if volume else ()), *((("batch", str(batch)),) if batch and not volume else ()))
    lone = not refs
    for_it = {"for", "in", "to"} & words or wanted
    molecular = "molecular" in words
    if molecular and (rates or batch):
        ph = _named(text, "ph")
        target = [r for r in rates if r[1]] or (
            list(rates) if "needed" in words or "need" in words or "for" in words else []
        )
        of = (
            *((("to", target[0][0]),) if target else (("value", rates[0][0]),) if rates else ()),
            *((("ph", ph),) if ph else ()),
            *((("batch", str(batch)),) if batch else ()),
        )
        return _query("molecular SO2", *of)
    if material in _SULFITES and rates and for_it:
        to = next((r for r, target in rates if target), "")
        start = next((r for r, target in rates if not target), "") if to and len(rates) > 1 else ""
        return _query(
            "sulfite dose",
            ("material", material),
            ("rise", to or rates[0][0]),
            *((("to", to),) if to else ()),
            *((("from", start),) if start else ()),
            *base,
        )
    if ("yan" in {m.value for m in text.of("quantity")} and rates) or (material == "diammonium phosphate" and rates):
        return _query("nitrogen dose", ("rise", rates[0][0]), *base)
    if (material in _ACIDS or {"ta", "acidity"} & words) and (rates or percents) and for_it and (volume or batch):
        lower = bool(words & {"lower", "reduce", "drop", "decrease", "down"})
        return _query(
            "acid dose",
            ("material", material or ("calcium carbonate" if lower else "tartaric acid")),
            ("rise", rates[0][0] if rates else percents[0]),
            *((("lower", "yes"),) if lower else ()),
            *base,
        )
    if material in ("sugar", "honey") and gravities and for_it and (volume or batch):
        start = gravities[0] if len(gravities) > 1 else ""
        return _query(
            "sugar needed", ("material", material), *((("from", start),) if start else ()), ("to", gravities[-1]), *base
        )
    if material == "potassium sorbate" and wanted and base:
        return _query(
            "sorbate dose",
            *((("alcohol", percents[0].replace("%", "% vol")),) if percents else ()),
            *((("ph", _named(text, "ph")),) if _named(text, "ph") else ()),
            *base,
        )
    if material and (material in FININGS or material in OAK) and wanted and base:
        return _query("usual dose", ("material", material), *base)
    if (
        lone
        and len(gravities) == 2
        and (words & {"alcohol", "abv", "strength", "strong", "alc"} or "to" in words)
        and not material
    ):
        return _query("strength from gravities", ("from", gravities[0]), ("to", gravities[1]))
    if (
        lone
        and len(gravities) == 1
        and temperatures
        and (words & {"correct", "corrected", "correction", "really", "adjusted", "true"})
    ):
        return _query("corrected gravity", ("value", gravities[0]), ("temperature", temperatures[0]))
    if unit := _unit_wanted(text, [m for m in text.mentions if m.kind in ("amount", "temperature", "reading")]):
        value = (temperatures or [volume] if volume or temperatures else others or [""])[0]
        if value and lone:
            return _query(
                "conversion", ("value", value), *((("material", material),) if material else ()), ("unit", unit)
            )
    if lone and len(gravities) + len(brix) == 1 and not volume and not material and not rates and _only_a_value(text):
        return _query("scales", ("value", (*gravities, *brix)[0]))
    if (
        base
        and {"bottles", "bottle"} & words
        and not {"left", "remaining", "did", "have"} & words
        and ((volume and not batch) or words & {"fill", "need", "get", "yield", "expect", "make", "will", "would"})
        and not words & {"many did", "made", "filled"}
    ):
        return (
            _query("bottles needed", *base)
            if volume or "will" in words or "would" in words or "need" in words or "should" in words
            else None
        )
    return None


def _from_figures_alone(text: Text, words: set[str], refs: Sequence[Mention], percents: list[str]) -> Query | None:
    """A blend's shares, room for foam, or the free SO2 that a pH asks for: with the question's own numbers only."""
    if any(set(m.value.terms) - {"red", "white", "mead", "cider"} or not m.value.terms for m in refs):
        return None
    if words & {"pearson", "square"} or ({"blend", "mix"} & words and {"to", "get", "make", "for"} & words):
        figures = _alike(text)
        if len(figures) == 3:
            quantity, (first, second, target) = figures[0][0], [said for _, said in figures]
            return _query("blend shares", ("quantity", quantity), ("first", first), ("second", second), ("to", target))
    vast = _volumes(text)
    if vast and words & {"headspace", "head", "headroom", "foam"}:
        small, *more = sorted(vast, key=lambda v: litres(float(v.split()[0]), v.split()[1]))
        colour = next((c for c, ws in _COLOURS.items() if words & ws), "")
        holds = (("capacity", more[-1]),) if more else ()
        return _query("room for foam", ("volume", small), *holds, *((("colour", colour),) if colour else ()))
    ph = _named(text, "ph")
    if ph and "free_so2" in {m.value for m in text.of("quantity")} and not percents and "molecular" not in words:
        return _query("free SO2 needed", ("ph", ph.split()[0]))
    return None


_COLOURS = {"red": {"red", "reds"}, "white": {"white", "whites"}, "mead": {"mead"}, "cider": {"cider"}}


def _is_volume(unit: str) -> bool:
    return unit in UNITS and UNITS[unit].dimension == "volume"


def _volumes(text: Text) -> list[str]:
    """Every volume told, that in a vessel's name too: `an 8 gallon bucket`."""
    out = []
    for i, token in enumerate(text.tokens):
        found = unit_at(text.words, i + 1) if token.kind == "number" else None
        if found and _is_volume(found[0]):
            out.append(f"{float(token.text.replace(',', '.')):g} {found[0]}")
    return out


def _alike(text: Text) -> list[tuple[str, str]]:
    """Figures of one quantity, in order: of percents the alcohol, else what the readings are of."""
    found = [
        (m.value.quantity, f"{m.value.value:g} {m.value.unit}")
        if m.kind == "reading"
        else ("alcohol", f"{m.value.value:g} %")
        for m in text.of("reading", "percent")
    ]
    return found if len({quantity for quantity, _ in found}) == 1 else []


def _query(name: str, *of: tuple[str, str]) -> Query:
    return Query((What(name, tuple(of)),))


def _values(text: Text) -> tuple[str, list[tuple[str, bool]], list[str], list[str], list[str], list[str], list[str]]:
    """The volume, the rates (with whether it is to be reached), gravities, Brix, temperatures, percents, others."""
    volume, rates, gravities, brix, temperatures, percents, others = "", [], [], [], [], [], []
    for m in text.mentions:
        if m.kind == "amount":
            said = f"{m.value.value:g} {m.value.unit}"
            if "/" in m.value.unit:
                rates.append((said, _target(text, m.first)))
            elif UNITS[m.value.unit].dimension == "volume" and m.value.unit not in (
                "tsp",
                "tbsp",
                "cup",
                "ml",
                "fl oz",
            ):
                volume = volume or said
            else:
                others.append(said)
        elif m.kind == "temperature":
            temperatures.append(f"{m.value.value:g} {m.value.unit}")
        elif m.kind == "percent":
            percents.append(f"{m.value.value:g} %")
        elif m.kind == "reading":
            said = f"{m.value.value:g} {m.value.unit}"
            sort = m.value.quantity
            if sort == "sg" or (sort == "alcohol" and _AS_GRAVITY[0] <= m.value.value <= _AS_GRAVITY[1]):
                gravities.append(f"{m.value.value:g} SG")
            elif sort == "brix":
                brix.append(said)
            elif sort == "temperature":
                temperatures.append(said)
            elif sort in ("free_so2", "total_so2", "yan", "ta"):
                rates.append((said, _target(text, m.first)))
            elif sort == "alcohol":
                percents.append(f"{m.value.value:g} %")
    return volume, rates, gravities, brix, temperatures, percents, others


def _target(text: Text, first: int) -> bool:
    """Whether a rate is one to reach ("to 30 ppm") and not one to add ("by 30 ppm", "30 ppm")."""
    return (
        first > 0
        and text.words[first - 1] in ("to", "reach", "at", "hit", "get")
        and text.words[max(0, first - 2)] not in ("add", "going")
    )


def _named(text: Text, quantity: str) -> str:
    return next((f"{m.value.value:g} {m.value.unit}" for m in text.of("reading") if m.value.quantity == quantity), "")


def _material(text: Text) -> str:
    found = [str(m.value) for m in text.of("material")]
    found += [str(m.value) for m in text.of("oak_form") if "oak" in text.words]
    for word, material in (
        ("so2", "sulfur dioxide"),
        ("acid", "tartaric acid"),
        ("sulfite", "potassium metabisulfite"),
    ):
        if word in text.words and not found:
            found.append(material)
    return next((f for f in found if f != "sulfur dioxide"), found[0] if found else "")


def _batch(refs: Sequence[Mention]) -> int | None:
    numbers = {n for m in refs for n in m.value.fits}
    return numbers.pop() if len(numbers) == 1 else None


def _unit_wanted(text: Text, values: Sequence[Mention]) -> str:
    """The unit that a value is wanted in: `6 gallons in litres`, `how many grams is 1/4 tsp`."""
    taken = {i for m in values for i in range(m.first, m.last)}
    for i, word in enumerate(text.words):
        if i in taken:
            continue
        asked = i and text.words[i - 1] in ("in", "to", "into", "many", "as")
        if asked and word in _SCALES and any(m.kind in ("temperature", "reading") for m in values):
            return _SCALES[word]
        found = unit_at(text.words, i)
        if asked and found and values and UNITS[found[0]].dimension != "count":
            return found[0]
    return ""


def _only_a_value(text: Text) -> bool:
    """Whether the question holds nothing but the value and words for asking what it is."""
    plain = {
        "what",
        "is",
        "whats",
        "what's",
        "in",
        "brix",
        "sg",
        "gravity",
        "as",
        "convert",
        "to",
        "a",
        "of",
        "the",
        "potential",
        "alcohol",
        "abv",
        "does",
        "mean",
        "how",
        "much",
        "equals",
        "equal",
        "be",
        "sugar",
        "density",
        "?",
        "would",
        "reading",
        "translate",
        "an",
        "specific",
        "degrees",
        "and",
    }
    taken = {i for m in text.of("reading") for i in range(m.first, m.last)}
    return all(w in plain for i, w in enumerate(text.words) if i not in taken and text.tokens[i].kind != "mark")
