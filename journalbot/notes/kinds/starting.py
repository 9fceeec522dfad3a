"""Starting a batch: its number, what it is made from, how much, and in which vessel."""

from collections.abc import Iterator

from journalbot.language.lexicon import Mention
from journalbot.notes.clauses import Clause
from journalbot.notes.draft import Draft, Scene
from journalbot.notes.kinds.cellar import role
from journalbot.vocabulary.fruits import FORMS_OF_BASE
from journalbot.vocabulary.units import UNITS

_FORM_WORDS = {s for spellings in FORMS_OF_BASE.values() for s in spellings if " " not in s}
_QUALITIES = {
    "fresh",
    "frozen",
    "wild",
    "red",
    "white",
    "black",
    "ripe",
    "unpasteurised",
    "unpasteurized",
    "pressed",
    "bought",
    "raw",
    "heather",
    "clover",
    "local",
    "orange",
    "wildflower",
    "pink",
    "green",
    "yellow",
    "tart",
    "sour",
    "super",
    "old",
    "vine",
    "sweet",
    "cooking",
    "eating",
    "windfall",
    "crab",
    "tinned",
    "dried",
    "real",
}
_CAME = {
    "came",
    "arrived",
    "picked",
    "harvest",
    "harvested",
    "delivered",
    "collected",
    "fetched",
    "brought",
    "bought",
    "gathered",
    "foraged",
}
_MADE_OF = ("fruit", "variety")
_NAMED = (
    "call it",
    "called it",
    "calling it",
    "call this",
    "named it",
    "name it",
    "christened",
    "calling this",
    "going to call it",
    "named",
    "dubbed",
    "nicknamed",
    "i'll call it",
    "its name is",
    "name is",
    "to be called",
    "will be called",
)
_NOT_VESSEL_UNITS = {"tsp", "tbsp", "cup", "fl oz", "ml"}
_WINE_NAMES = {
    "wine",
    "mead",
    "cider",
    "cyser",
    "melomel",
    "cuvée",
    "cuvee",
    "perry",
    "rosé",
    "rose",
    "metheglin",
    "pyment",
    "hydromel",
}
_STYLES = {
    "mead": "mead",
    "cyser": "mead",
    "melomel": "mead",
    "metheglin": "mead",
    "pyment": "mead",
    "hydromel": "mead",
    "bochet": "mead",
    "cider": "cider",
    "perry": "cider",
}
_COLOURS = {
    "red": "red",
    "white": "white",
    "rosé": "rosé",
    "rose": "rosé",
    "pink": "rosé",
    "blush": "rosé",
    "rosato": "rosé",
    "rosado": "rosé",
}
_LATER = {"kit", "box", "boxes", "crate", "crates", "pail", "pails"}


def find_start(scene: Scene) -> None:
    """Settle whether the note starts a batch, its number, and which clauses describe it."""
    for i, clause in enumerate(scene.clauses):
        if clause.mood not in ("done", "told") and not (clause.mood == "denied" and clause.of("batch")):
            continue
        number = _number_given(clause, scene)
        if number is None and _starts_unnumbered(clause, scene):
            number = scene.cellar.next_number()
        if number is not None:
            scene.started = number
            first = i
            while (first and scene.clauses[first - 1].sentence == clause.sentence) or (
                first and _about_the_start(scene.clauses[first - 1], clause, scene)
            ):
                first -= 1
            last = i + 1
            while last < len(scene.clauses) and not _other_batch(scene.clauses[last], number, scene):
                last += 1
            scene.start_clauses = tuple(c.first for c in scene.clauses[first:last])
            return


def _about_the_start(before: Clause, clause: Clause, scene: Scene) -> bool:
    """Clauses of earlier sentences belong to the start where they name no batch of the journal's."""
    fresh = bool(_CAME.intersection(before.words())) or bool(before.cues("harvest")) or before.words()[-1:] == ["in"]
    named = any(scene.cellar.batches[n].under_way for m in before.of("batch") for n in m.value.fits)
    return (fresh or not named) and before.mood in ("done", "told", "denied")


def _other_batch(clause: Clause, number: int, scene: Scene) -> bool:
    if any(c.cues("blend") for c in scene.sentence(clause)):
        return False
    opens = scene.sentence(clause)[0] is clause and clause.of("batch")
    if (
        opens
        and opens[0].first <= clause.first + 1
        and opens[0].value.how == "name"
        and any(scene.cellar.batches[n].under_way for n in opens[0].value.fits)
    ):
        return True
    return any(m.value.how == "number" and m.value.fits and m.value.fits != (number,) for m in clause.of("batch"))


def _number_given(clause: Clause, scene: Scene) -> int | None:
    """The new number that a clause gives, where something in the note tells of a wine begun."""
    new = [m for m in clause.of("batch") if m.value.new is not None]
    if not new:
        return None
    evidence = (
        scene.text.of("fruit", "variety")
        or clause.cues("start", "crush", "press", "harvest")
        or any(m.value.unit in ("gal", "L") for m in scene.text.of("amount"))
        or clause.has("blend", "cuvée", "cuvee", "mead", "kit", "wine", "cider")
    )
    return int(new[0].value.new) if evidence else None


def _starts_unnumbered(clause: Clause, scene: Scene) -> bool:
    """A wine begun without a number: a start in so many words with what it is made of, or fruit come in and put to work."""
    if (clause.of("batch") and any(m.value.how == "number" for m in clause.of("batch"))) or any(
        _poured(c) for c in scene.clauses
    ):
        return False
    sentence = scene.sentence(clause)
    made_of = [
        m for c in (sentence if clause.cues("start") else [clause]) for m in c.of(*_MADE_OF) if not _part_of_other(m, c)
    ]
    starts = [c for c in clause.cues("start") if scene.text.words[c.first] != "new" or c.first == clause.first]
    so_far = [c for c in scene.clauses if c.first <= clause.first]
    fits = [
        n
        for c in so_far
        for m in c.of("batch")
        if m.value.how != "age"
        for n in m.value.fits
        if scene.cellar.batches[n].under_way
    ]
    volume = [m for c in sentence for m in c.of("amount") if m.value.unit in ("gal", "L", "qt")]
    words = set(clause.words())
    if clause.cues("top_up", "taste", "drink", "give", "bottle", "blend", "rack") and not starts:
        return False
    if clause.cues("bleed") and (volume or clause.of("vessel")) and words & {"rosé", "rose", "pink", "juice"}:
        return True
    begun = starts or {"started", "starting", "made", "making", "begun", "mixed"} & words
    if (
        begun
        and (made_of or {"mead", "cider", "kit"} & words)
        and (volume or clause.of("vessel"))
        and not _known_wine(clause, scene, fits)
    ):
        return True
    if starts and {"batch", "wine", "one"} & words and made_of and not fits:
        return True
    whole = [c for c in scene.clauses if c.mood == "done"]
    called = (bool({"calling", "called", "call"} & words) and bool(made_of)) or _so_much_of(clause, made_of, scene)
    fresh = starts and {"new", "next", "another"} & words and "batch" in words
    if (
        (called or (starts and made_of) or fresh)
        and not fits
        and any(c.of("vessel") for c in whole)
        and any(m.value.unit in ("gal", "L") for c in whole for m in c.of("amount"))
    ):
        return True
    if not made_of or _known_wine(clause, scene, fits):
        return False
    here = [c for c in scene.clauses if c.mood == "done"]
    worked = any(c.cues("crush", "press") for c in here)
    housed = any(c.of("vessel") for c in here)
    litres = any(m.value.unit in ("gal", "L") for c in here for m in c.of("amount"))
    came = (
        bool(_CAME & words)
        or bool(clause.cues("harvest"))
        or any(scene.text.words[m.last : m.last + 1] == ["in"] and m.last + 1 == clause.last for m in made_of)
    )
    too = "too" in words or "wine" in words
    return (
        (came and (worked or housed) and (litres or housed))
        or (too and litres and housed)
        or (worked and litres and housed and not fits)
    )


def _so_much_of(clause: Clause, made_of: list[Mention], scene: Scene) -> bool:
    """`5 gal of pear juice in carboy A`: a volume of juice or must in a vessel, of a fruit that no wine under way is of."""
    amounts = {id(m.value) for m in clause.of("amount") if m.value.unit in ("gal", "L", "qt")}
    forms = set(clause.text.words[clause.first : clause.last]) & {
        "juice",
        "must",
        "cider",
        "pulp",
        "purée",
        "puree",
        "concentrate",
    }
    return (
        bool(forms)
        and any(id(scene.doses.get(m.first)) in amounts for m in made_of)
        and bool(clause.of("vessel"))
        and not clause.cues("rack", "top_up", "purchase")
    )


def _poured(clause: Clause) -> bool:
    """Whether a clause is about wine in the glass, where fruit is a taste and nothing is begun."""
    words = clause.text.words
    return any(c.value.detail != "weak" or words[c.first] == "opened" for c in clause.cues("drink", "taste")) or bool(
        clause.of("score")
    )


def _known_wine(clause: Clause, scene: Scene, fits: list[int]) -> bool:
    """Whether the fruit named is that of a wine under way already, not freshly come in."""
    if not fits:
        return False
    fresh = bool({"again", "new", "arrived", "came", "harvest", "harvested", "picked"} & set(clause.words()))
    return not fresh or any(scene.cellar.batches[n].started[:4] == str(scene.on.year) for n in fits)


def _part_of_other(m: Mention, clause: Clause) -> bool:
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
            or any(x.value.detail != "weak" for x in c.cues("taste"))
        ):
            continue
        for m in sorted(c.of(*_MADE_OF), key=lambda m: (m.first, -m.last)):
            if m.first < last or _part_of_other(m, c) or _only_name(m, c):
                continue
            if _is_addition(m, c, scene):
                last = m.last
                continue
            first, end = m.first, m.last
            while first - 1 >= c.first and text.words[first - 1] in _QUALITIES:
                first -= 1
            while end < c.last and text.words[end] in _FORM_WORDS and text.words[end] not in ("wine", "wines"):
                end += 1
            if end < c.last and text.words[end] in ("wine", "wines") and _other_base(m, scene):
                continue
            if m.value[0] in ("grape",) and any(o.value[0] != "grape" for k in scene.clauses for o in k.of("variety")):
                continue
            name = text.slice(first, end).lower()
            last = end
            canon = str(m.value[0])
            if any(canon in o or o in canon for o in canons):
                continue
            canons.append(canon)
            if not any(_same(name, o) for o in out):
                out.append(name)
    if not out:
        for c in scene.clauses:
            if c.first not in scene.start_clauses:
                continue
            for i in range(c.first, c.last):
                if text.words[i] in ("kit", "juice", "honey", "grapes"):
                    return [text.words[i]]
    return out


def _other_base(m: Mention, scene: Scene) -> bool:
    """Whether something besides the wine's own name says what it is made from ("apple wine … 5 gal fresh cider")."""
    return any(
        o.first != m.first and not _only_name(o, c) and c.first in scene.start_clauses
        for c in scene.clauses
        for o in c.of(*_MADE_OF)
        if scene.text.words[o.last : o.last + 1] != ["wine"]
    )


def _same(a: str, b: str) -> bool:
    wa, wb = {w.rstrip("s") for w in a.split()}, {w.rstrip("s") for w in b.split()}
    return bool(wa & wb - _FORM_WORDS - {w.rstrip("s") for w in _FORM_WORDS})


def _only_name(m: Mention, clause: Clause) -> bool:
    """ "Mead", "cider wine", "rosé": the drink, not what it is made of."""
    return m.value[0] in ("mead", "melomel", "cyser", "metheglin", "pyment", "perry") or m.value[0] == "kit"


def _is_addition(m: Mention, clause: Clause, scene: Scene) -> bool:
    """Raisins, lemon juice and the like are put in, not made from."""
    return (
        any(x.first <= m.first < x.last and x.value not in ("honey",) for x in clause.of("material"))
        and m.first in scene.doses
    )


def read(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """The start itself, from all the clauses that describe it."""
    if scene.started is None or not scene.start_clauses or clause.first != scene.start_clauses[0]:
        return
    here = [c for c in scene.clauses if c.first in scene.start_clauses and c.mood not in ("planned", "asked")]
    fields: dict[str, object] = {}
    if name := _name(here, scene):
        fields["name"] = name
    words = [w for c in here for w in c.words()]
    colour = _colour(here, scene) or _STYLES.get(str(fields.get("name", "")).split(" ")[-1].lower())
    if colour:
        fields["colour"] = colour
    if vintage := _vintage(here, scene):
        fields["vintage"] = vintage
    volume = _volume(here, scene)
    if volume is not None:
        fields["volume"], fields["unit"] = volume.value.value, volume.value.unit
        if volume.value.approx:
            fields["approx"] = True
    if bases := base_of(scene):
        fields["from"] = bases
    vessels = [
        v
        for c in here
        for v in c.of("vessel")
        if not v.value.weak and role(v, c) != "from" and not c.cues("vessel", "purchase") and not _bought_vessel(v, c)
    ]
    if vessels:
        first = vessels[0]
        pair = [v for v in vessels if v.first <= first.last + 3 and v.first >= first.first]
        fields["vessel"] = (
            " and ".join(dict.fromkeys(v.value.name for v in pair))
            if len(pair) > 1
            and scene.text.words[pair[0].last : pair[1].first] in (["and"], ["and", "the"], ["&"], ["+"])
            else first.value.name
        )
    weight = _weight(here, scene)
    if weight is not None:
        fields["weight"], fields["weight_unit"] = weight.value.value, weight.value.unit
    del words
    main = next((c for c in here if any(m.value.new == scene.started for m in c.of("batch"))), clause)
    dated = main if main.own_date else next((c for c in here if c.own_date and not c.of("reading")), main)
    draft = Draft("start", main, here[0].first, main.last, fields, batches=(scene.started,))
    draft.dates = (dated.date,) if dated.date else ()
    yield draft


def _bought_vessel(v: Mention, clause: Clause) -> bool:
    return v.value.name.lower().split()[-1] in _LATER and bool(clause.of("money"))


def _name(here: list[Clause], scene: Scene) -> str | None:
    text = scene.text
    words = text.words
    for c in here:
        said = " ".join(c.words())
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
        del said
    for c in here:
        for m in sorted(c.of("fruit", "variety"), key=lambda m: m.first):
            if m.last < len(words) and words[m.last] in ("wine",):
                return text.slice(m.first, m.last + 1)
        for i in range(c.first, c.last):
            if words[i] in _STYLES or words[i] in ("cuvée", "cuvee"):
                return text.slice(i, i + 1)
    return None


def _colour(here: list[Clause], scene: Scene) -> str | None:
    for c in here:
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


def _vintage(here: list[Clause], scene: Scene) -> int | None:
    words = scene.text.words
    for i, word in enumerate(words[:-1]):
        if (
            word in ("harvest", "vintage")
            and len(words[i + 1]) == 4
            and words[i + 1].isdigit()
            and words[i + 1].startswith("20")
        ):
            return int(words[i + 1])
    for c in here:
        for m in c.of("batch", "stranger"):
            if m.value.vintage is not None:
                year = int(m.value.vintage)
                text = scene.text.slice(m.first, m.last)
                if str(year) in text or f"{year % 100:02d}" in text:
                    return year
    return None


def _volume(here: list[Clause], scene: Scene) -> Mention | None:
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


def _weight(here: list[Clause], scene: Scene) -> Mention | None:
    for c in here:
        for m in c.of("amount"):
            if m.value.unit in ("kg", "lb") and not _of_material(m, scene):
                return m
    return None
