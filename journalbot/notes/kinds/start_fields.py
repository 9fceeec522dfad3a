"""What a note says of the batch it starts: its name, colour, vintage, volume, vessel, weight and what it is made
from.
"""

from journalbot.language.batches import OTHER_KITS
from journalbot.language.lexicon import Mention
from journalbot.notes.clauses import Clause
from journalbot.notes.draft import Scene
from journalbot.vocabulary.everyday import EVERYDAY
from journalbot.vocabulary.fruits import FORMS_OF_BASE
from journalbot.vocabulary.units import UNITS

MADE_OF = ("fruit", "variety")
STYLES = {
    "mead": "mead", "cyser": "mead", "melomel": "mead", "metheglin": "mead", "pyment": "mead", "hydromel": "mead",
    "bochet": "mead", "cider": "cider", "perry": "cider",
}
_DRINKS = {"wine", "wines", *STYLES}
_FORM_WORDS = {s for spellings in FORMS_OF_BASE.values() for s in spellings if " " not in s}
_QUALITIES = {
    "fresh", "frozen", "wild", "red", "white", "black", "ripe", "unpasteurised", "unpasteurized", "pressed", "bought",
    "raw", "heather", "clover", "local", "orange", "wildflower", "pink", "green", "yellow", "tart", "sour", "super",
    "old", "vine", "sweet", "cooking", "eating", "windfall", "crab", "tinned", "dried", "real",
}

_TOOLS = {"masher", "peeler", "crusher", "picker", "corer"}  # "potato masher"
_NAMED = (
    "call it", "called it", "calling it", "call this", "named it", "name it", "christened", "calling this",
    "wants it called", "want it called", "it is called", "shall call", "will call it", "i'll call", "i am calling",
    "i'm calling", "we are calling", "we're calling", "we call", "i call", "going to call it", "named", "dubbed",
    "nicknamed", "i'll call it", "its name is", "name is", "to be called", "will be called", "shall be called",
    "is called", "to be named", "will be named",
)
_NOT_VESSEL_UNITS = {"tsp", "tbsp", "cup", "fl oz", "ml"}
_COLOURS = {
    "red": "red", "white": "white", "rosé": "rosé", "rose": "rosé", "pink": "rosé", "blush": "rosé", "rosato": "rosé",
    "rosado": "rosé",
}

_BEFORE_KIT = {
    "a", "an", "the", "my", "our", "of", "from", "another", "new", "this", "that", "with", ",", ".", ":", "(", "is",
    "=", "started", "batch", "wine", "first", "gal", "l", "gallons", "litres", "cheap", "one", "same", "made", "was",
}
_LATER = {"kit", "box", "boxes", "crate", "crates", "pail", "pails"}


def part_of_other(m: Mention, clause: Clause) -> bool:
    return any(x.first <= m.first < x.last for x in clause.of("vessel", "material", "descriptor") if x.kind == "vessel")


def base_of(scene: Scene) -> list[str]:
    """What the batch is made from, as written, with the form of it ("merlot juice", "zin grapes")."""
    text = scene.text
    out: list[str] = []
    canons: list[str] = []
    last = -1
    for c in scene.clauses:
        if (
            c.first not in scene.start_clauses
            or c.mood == "planned"
            or any(x.value.detail != "weak" for x in c.cues("taste", "blend", "rack", "top_up", "drink", "give"))
        ):
            continue
        for m in sorted(c.of(*MADE_OF), key=lambda m: (m.first, -m.last)):
            if m.first < last or part_of_other(m, c) or _only_name(m, c):
                continue
            if text.words[m.last : m.last + 1] and text.words[m.last] in _TOOLS:
                continue
            if _is_addition(m, c, scene):
                last = m.last
                continue
            first, end = m.first, m.last
            while first - 1 >= c.first and text.words[first - 1] in _QUALITIES:
                first -= 1
            while end < c.last and text.words[end] in _FORM_WORDS and text.words[end] not in ("wine", "wines"):
                end += 1
            if end < c.last and text.words[end] in _DRINKS and _other_base(m, scene):
                continue
            if m.value[0] in ("grape",) and any(o.value[0] != "grape" for k in scene.clauses for o in k.of("variety")):
                continue
            name = text.meant(first, end).lower()
            last = end
            canon = str(m.value[0])
            if (at := next((k for k, o in enumerate(canons) if canon in o or o in canon), None)) is not None:
                if m.first in scene.doses and canon == canons[at] and at < len(out):
                    out[at] = name  # as written beside its weight
                continue
            canons.append(canon)
            if not any(_same(name, o) for o in out):
                out.append(name)
    if not out and (unknown := _unknown_base(scene)):
        return [unknown]
    if not out:
        for c in scene.clauses:
            if c.first not in scene.start_clauses:
                continue
            for i in range(c.first, c.last):
                if text.words[i] in ("kit", "juice", "honey", "grapes") and text.words[i - 1] not in OTHER_KITS:
                    first = i
                    while first > c.first and i - first < 3 and text.words[first - 1] not in _BEFORE_KIT:
                        first -= 1
                    return [text.meant(first, i + 1).lower() if text.words[i] == "kit" else text.words[i]]
    return out


def _unknown_base(scene: Scene) -> str:
    """What a weight in the start is of, where no table knows it: `15 pounds of mayhaws`."""
    words = scene.text.words
    for c in scene.clauses:
        if c.first not in scene.start_clauses or c.mood == "planned":
            continue
        for m in c.of("amount"):
            i = m.last + (words[m.last : m.last + 1] == ["of"])
            free = i < c.last and words[i].isalpha() and not any(x.first <= i < x.last for x in c.mentions)
            if m.value.unit in ("lb", "kg") and free and words[i] not in EVERYDAY:
                return scene.text.meant(i, i + 1).lower()
    return ""


def _other_base(m: Mention, scene: Scene) -> bool:
    """Whether something besides the wine's own name says what it is made from ("apple wine … 5 gal fresh cider")."""
    return any(
        o.first != m.first and not _only_name(o, c) and c.first in scene.start_clauses
        for c in scene.clauses
        for o in c.of(*MADE_OF)
        if _DRINKS.isdisjoint(scene.text.words[o.last : o.last + 1])
    )


def _same(a: str, b: str) -> bool:
    wa, wb = {w.rstrip("s") for w in a.split()}, {w.rstrip("s") for w in b.split()}
    return bool(wa & wb - _FORM_WORDS - {w.rstrip("s") for w in _FORM_WORDS})


def _only_name(m: Mention, clause: Clause) -> bool:
    """ "Mead", "cider wine", "rosé": the drink, not what it is made of."""
    measured = clause.text.words[m.first - 1] == "of" and any(a.last == m.first - 1 for a in clause.of("amount"))
    if clause.text.words[m.first] in STYLES and clause.text.words[m.last : m.last + 1] == ["from"] and not measured:
        return True
    return m.value[0] in ("mead", "melomel", "cyser", "metheglin", "pyment", "perry") or m.value[0] == "kit"


def _is_addition(m: Mention, clause: Clause, scene: Scene) -> bool:
    """Raisins, lemon juice and the like are put in, not made from."""
    if is_base_juice(m, scene):
        return False
    return (
        any(x.first <= m.first < x.last and x.value not in ("honey",) for x in clause.of("material"))
        and m.first in scene.doses
    )


def is_base_juice(m: Mention, scene: Scene) -> bool:
    """Whether juice that is often put in (apple, grape) is what a wine is made from: gallons of it, and no more."""
    dose = scene.doses.get(m.first)
    rest = [o for o in scene.text.of(*MADE_OF) if o.first != m.first and o.first in scene.doses]
    return (
        scene.started is not None
        and dose is not None
        and dose.unit in ("gal", "L")
        and scene.text.words[m.last - 1 : m.last + 1].count("juice") > 0
        and not any(scene.doses[o.first].unit in ("gal", "L", "kg", "lb") for o in rest)
    )


def bought_vessel(v: Mention, clause: Clause) -> bool:
    return v.value.name.lower().split()[-1] in _LATER and bool(clause.of("money"))


def name_of(here: list[Clause], scene: Scene) -> str | None:
    text = scene.text
    words = text.words
    for c in here:
        for lead in _NAMED:
            n = len(lead.split())
            for i in range(c.first, c.last - n):
                if " ".join(words[i : i + n]) != lead:
                    continue
                j = i + n
                while j < c.last and words[j] in ("it", "the", "a", '"', "'", "“", "‘", "this", "one"):
                    j += 1
                if (
                    j < c.last
                    and words[j] not in ("batch", "number", "no", "#")
                    and not any(m.first == j and m.kind == "number" for m in c.mentions)
                ):
                    k = j
                    while (
                        k < c.last
                        and text.tokens[k].kind == "word"
                        and words[k] not in ("because", "since", "for", "as")
                    ):
                        k += 1
                    if k > j:
                        return text.slice(j, k)
    for c in here:
        for m in sorted(c.of("fruit", "variety"), key=lambda m: m.first):
            if m.last < len(words) and words[m.last] in ("wine",):
                return text.meant(m.first, m.last + 1)
    for c in here:
        for i in range(c.first, c.last):
            if words[i] in STYLES or words[i] in ("cuvée", "cuvee"):
                of_fruit = next((m for m in c.of("fruit", "variety") if m.last == i), None)
                return text.meant(of_fruit.first if of_fruit else i, i + 1)
    return None


def colour_of(here: list[Clause], scene: Scene) -> str | None:
    for c in here:
        if "fruit wine" in " ".join(c.words()):
            return "fruit"
        vessels = c.of("vessel")
        for i in range(c.first, c.last):
            word = scene.text.words[i]
            if any(v.first <= i < v.last for v in vessels):
                continue
            if word in _COLOURS and not any(
                m.first <= i < m.last and m.last - m.first > 1 for m in c.of("variety", "fruit", "material")
            ):
                return _COLOURS[word]
    return None


def vintage_of(here: list[Clause], scene: Scene) -> int | None:
    words = scene.text.words
    for i, word in enumerate(words[:-1]):
        if (
            word in ("harvest", "vintage")
            and len(words[i + 1]) == 4
            and words[i + 1].isdigit()
            and words[i + 1].startswith("20")
        ):
            return int(words[i + 1])
    for i, word in enumerate(words[1:], 1):
        if word == "vintage" and words[i - 1].isdigit() and words[i - 1].startswith("20") and len(words[i - 1]) == 4:
            return int(words[i - 1])
    for m in scene.text.of("number"):  # "batch 7 (bacchus, 2023)"
        named = any(f.last in (m.first - 1, m.first) for c in here for f in c.of(*MADE_OF))
        if named and words[m.first - 1] in (",", "(") and m.value.value in (scene.on.year, scene.on.year - 1):
            return int(m.value.value)
    for c in here:
        for m in c.of("batch", "stranger"):
            if m.value.vintage is not None:
                year = int(m.value.vintage)
                text = scene.text.slice(m.first, m.last)
                if str(year) in text or f"{year % 100:02d}" in text:
                    return year
    return None


def volume_of(here: list[Clause], scene: Scene) -> Mention | None:
    """How much there is of it: a total ("made up to 14 L") before the first volume of must, juice or wine."""
    words = scene.text.words
    found: list[Mention] = []
    for c in here:
        for m in c.of("amount"):
            unit = m.value.unit
            if (
                unit not in UNITS
                or UNITS[unit].dimension != "volume"
                or unit in _NOT_VESSEL_UNITS
                or _of_material(m, scene)
                or any(v.first <= m.first < v.last for v in c.of("vessel"))
                or any(
                    b.first in (m.last, m.last + 1) and b.value.how == "number" for b in c.of("batch")
                )  # what was blended in
            ):
                continue
            if c.cues("vessel") or _in_brackets_after_vessel(m, scene):
                continue
            if (
                words[m.first - 2 : m.first]
                in (["up", "to"], ["made", "to"], ["brought", "to"], ["water", "to"], ["topped", "to"], ["make", "up"])
                or (words[m.first - 1 : m.first] in (["to"], ["makes"], ["total"], ["make"]) and not c.of("vessel"))
                or words[m.last : m.last + 2] in (["all", "told"], ["in", "all"], ["total"])
            ):
                return m
            found.append(m)
    return found[0] if found else None


def _of_material(m: Mention, scene: Scene) -> bool:
    return any(
        d is m.value
        and any(
            x.first == f
            and x.kind == "material"
            and not any(b.kind in ("fruit", "variety") and b.first == f for b in scene.text.mentions)
            for x in scene.text.mentions
        )
        for f, d in scene.doses.items()
    )


def _in_brackets_after_vessel(m: Mention, scene: Scene) -> bool:
    words = scene.text.words
    return any(words[v.last : v.last + 1] == ["("] and v.last <= m.first <= v.last + 3 for v in scene.text.of("vessel"))


def weight_of(here: list[Clause], scene: Scene) -> Mention | None:
    begun = [c for c in here if any(m.value.new is not None for m in c.of("batch"))]
    for c in (*begun, *here):  # the weight told with the batch, before one bought
        for m in c.of("amount"):
            if m.value.unit in ("kg", "lb") and not _of_material(m, scene):
                return m
    return None
