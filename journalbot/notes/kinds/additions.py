"""Additions: anything put in other than yeast, oak, malolactic culture and top-up wine."""

from collections.abc import Iterator

from journalbot.language.amounts import Amount
from journalbot.language.lexicon import Mention
from journalbot.notes.clauses import Clause
from journalbot.notes.draft import Draft, Scene, amount_fields
from journalbot.notes.kinds.racking import role
from journalbot.notes.kinds.start_fields import is_base_juice
from journalbot.notes.kinds.topping import read_airlock
from journalbot.vocabulary.materials import WEAK_MATERIALS
from journalbot.vocabulary.units import UNITS

_DESCRIBED = {"smells", "tastes", "tasted", "smell", "stinks", "nose", "notes"}
_MARKS = {",", ".", ";", ":", "(", ")", "and", "n", "+", "&", "-", "\n"}
_STOP = {
    "in", "into", "to", "and", "for", "with", "on", "at", "from", ",", "(", ")", "so", "per", "went", "goes",
    "dissolved", "as", "then", "because", "after", "off", "-", "over", "is", "are", "was",
}
_THINGS = {"bottle", "bottles", "bath", "towel", "towels", "cloth", "tank", "butt", "heater", "jacket", "pump", "meter"}
_NO_NOUN = {
    "it", "this", "that", "them", "each", "both", "wine", "must", "juice", "yeast", "the", "course", "lees", "skins",
    "total", "altogether", "all", "told", "bottle", "bottles", "glass", "space", "headspace", "mine", "foam",
    "sediment", "corks",
}


def read(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """Every substance put in."""
    if (
        clause.mood in ("planned", "told", "asked", "supposed")
        or (clause.of("money") and not _priced_aside(clause))
        or _bought(clause, scene)
        or any(read_airlock(clause, scene))
    ):
        return
    added = clause.cues("add", "crush") if clause.has("tablet", "tablets", "campden") else clause.cues("add")
    if any(p.first - c.last <= 1 for c in added for p in clause.of("place") if p.first - c.last >= 0):
        added = []  # "berries are in the freezer"
    for m in _outermost(clause, scene):
        dose = scene.doses.get(m.first)
        if _denied(m, clause) or not _put_in(m, dose, clause, scene, bool(added)):
            continue
        for _ in range(_vessels_dosed(m, clause, scene)):
            yield Draft("addition", clause, m.first, m.last, {"material": m.value, **amount_fields(dose)})
    if any(c.value.form in ("done", "base") for c in added) and clause.mood != "denied":
        yield from _unlisted(clause, scene)
    yield from _by_verb(clause, scene)
    yield from _by_rate(clause, scene)
    yield from _more_of_it(clause, scene)


_BY_WEIGHT = ("g", "mg", "tsp", "tablet", "oz", "tbsp", "kg", "pinch", "packet")


def _more_of_it(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """`5 g metabisulphite to the barrel, 1.5 g to DJ1`: a dose for another vessel, of what was named before."""
    i = scene.clauses.index(clause)
    near = [c for c in (*scene.clauses[max(0, i - 1) : i], clause) if c.mood == "done"]
    doses = [
        m
        for m in clause.of("amount")
        if m.value.unit in _BY_WEIGHT
        and not any(d is m.value for d in scene.doses.values())
        and any(0 <= v.first - m.last < 3 for v in clause.of("vessel", "batch"))
    ]
    earlier = [
        m for c in near for m in _outermost(c, scene) if m.first in scene.doses and doses and m.first < doses[0].first
    ]
    for m in doses if earlier and not clause.of("code", "reading") else ():
        yield Draft("addition", clause, m.first, m.last, {"material": earlier[-1].value, **amount_fields(m.value)})


def _vessels_dosed(m: Mention, clause: Clause, scene: Scene) -> int:
    """How many vessels each got the dose: `racked into DJ 4 and DJ 5, 1 tablet in each`."""
    if (
        not any(e.first >= m.last for e in clause.of("both"))
        or len({b.value.fits for c in scene.sentence(clause) for b in c.of("batch")}) > 1
    ):
        return 1
    words = clause.text.words
    told = next(
        (
            n
            for n in clause.of("number")
            if words[n.first - 3 : n.first] == ["each", "of", "the"]
            or words[n.first - 2 : n.first] == ["each", "of"]
            or _counts_vessels(n, words)
        ),
        None,
    )
    if told is not None:
        return int(told.value.value)
    each = (
        any(v.first > e.first for e in clause.of("both") for v in clause.of("vessel"))
        or words[clause.last - 1] == "each"
    )
    so_far = scene.clauses if each else scene.sentence(clause)
    if any(
        c.text.words[v.first - 1] == "both" for c in scene.clauses if c.first <= clause.first for v in c.of("vessel")
    ):
        return 2
    vessels = {
        v.value.name
        for c in so_far
        if c.first <= clause.first
        for v in c.of("vessel")
        if role(v, c) == "to" or (each and c.first in scene.start_clauses and any(ch.isdigit() for ch in v.value.name))
    }
    here = {
        v.value.name
        for v in clause.of("vessel")
        if (any(ch.isdigit() for ch in v.value.name) or not each) and role(v, clause) != "from"
    }
    return max(len(vessels), len(here), 1)


def _priced_aside(clause: Clause) -> bool:
    """`8 kg of blueberries ($42) with 2.7 kg of sugar`: a price in brackets, in a clause that tells of more."""
    words = clause.text.words
    return all(
        words[m.first - 1 : m.first] == ["("] and words[m.last : m.last + 1] == [")"] for m in clause.of("money")
    ) and not clause.cues("purchase")


def _counts_vessels(n: Mention, words: list[str]) -> bool:
    """`the two perry demijohns`: so many vessels."""
    nouns = ("demijohns", "carboys", "jugs", "djs", "buckets", "vessels", "barrels", "tanks", "bins")
    return n.value.style in ("figure", "words") and any(w in nouns for w in words[n.last : n.last + 2])


def _bought(clause: Clause, scene: Scene) -> bool:
    return (
        bool(clause.cues("purchase"))
        and any(c.value.detail != "weak" for c in clause.cues("purchase"))
        and any(s.of("money") for s in scene.sentence(clause))
    )


def _outermost(clause: Clause, scene: Scene) -> list[Mention]:
    """Materials of the clause that are not part of a reading, a vessel's name or a longer word for something else."""
    dosed = {at for at, dose in scene.doses.items() if dose.unit in UNITS}  # "5 g malic acid", not "malic 2 g/L"
    hard = [
        m
        for m in clause.mentions
        if m.kind in ("reading", "vessel")
        or (m.kind == "quantity" and m.first not in dosed)
        or (m.kind == "batch" and m.last - m.first > 1)
    ]
    out: list[Mention] = []
    for m in sorted(clause.of("material"), key=lambda m: m.first - m.last):
        if any(h.first <= m.first and h.last >= m.last for h in hard) or any(o.first <= m.first < o.last for o in out):
            continue
        out.append(m)
    return sorted(out, key=lambda m: m.first)


def _denied(m: Mention, clause: Clause) -> bool:
    near = any(
        0 <= m.first - d.last < 3 and clause.text.words[d.first] in ("no", "without", "not", "skipped")
        for d in clause.of("denied")
    )
    return near or (clause.mood == "denied" and any(d.first < m.first for d in clause.of("denied")))


def _put_in(m: Mention, dose: Amount | None, clause: Clause, scene: Scene, added: bool) -> bool:
    spelling = " ".join(clause.text.words[m.first : m.last])
    words = clause.text.words
    if words[max(clause.first, m.first - 2) : m.first] == ["pinch", "of"]:
        return True
    if words[m.last : m.last + 1] and words[m.last] in _THINGS:
        return False  # "a hot water bottle", "a tea towel"
    if words[max(clause.first, m.first - 2) : m.first] in (["off", "the"], ["off", "its"], ["from", "the"]):
        return False  # "racked it off the bentonite"
    base = (
        scene.started is not None
        and any(f.first <= m.first < f.last for f in clause.of("fruit", "variety"))
        and clause.first in scene.start_clauses
        and m.value in ("honey", "raisins")
    )
    if (base and m.value == "honey") or (clause.first in scene.start_clauses and is_base_juice(m, scene)):
        return False
    if (clause.has(*_DESCRIBED) and dose is None) or (
        clause.cues("top_up")
        and {"with", "w", "using"} & set(clause.text.words[max(clause.first, m.first - 6) : m.first])
    ):
        return False
    if m.value == "water" and scene.started is not None and clause.first in scene.start_clauses and _made_up(m, clause):
        return True
    if dose is not None:
        measured = {"free", "total"}.intersection(words[max(0, m.first - 2) : m.first])
        return not (m.value == "sulfur dioxide" and measured) and (added or not _in_airlock(m, clause))
    if spelling in WEAK_MATERIALS and not added:
        return _listed(clause, scene, m)
    return (
        (added and not clause.of("airlock"))
        or _listed(clause, scene, m)
        or _goes_in(m, clause)
        or (_by_itself(m, clause) and (scene.started is not None or _dosing(m, clause, scene)))
    )


def _in_airlock(m: Mention, clause: Clause) -> bool:
    """`airlock refilled with 50 ml sulphite`; not `3 g sulphite, and the airlock refilled`."""
    return any(a.first < m.first for a in clause.of("airlock"))


def _made_up(m: Mention, clause: Clause) -> bool:
    """`sugar and water to make 5 gallons`, `made up to 14 L with water`."""
    words = clause.text.words
    return (
        words[m.last : m.last + 1] == ["to"]
        or words[m.last : m.last + 2] == ["up", "to"]
        or (words[m.first - 1 : m.first] == ["with"] and clause.has("made", "up", "topped", "brought"))
    )


def _goes_in(m: Mention, clause: Clause) -> bool:
    """`pinch of kmeta in the pink stuff`: a substance, and the wine it is in."""
    words = clause.text.words
    i = m.last + 1 if words[m.last : m.last + 1] in (["in"], ["into"]) else 0
    while i and i < clause.last and words[i] in ("the", "my", "our", "each", "both"):
        i += 1
    return bool(i) and any(x.first == i for x in clause.of("batch", "vessel", "both")) and m.last - m.first > 0


def _dosing(m: Mention, clause: Clause, scene: Scene) -> bool:
    """Whether the sentence is about things put in: another has its dose there, or the wine was degassed for them."""
    here = [c for c in scene.sentence(clause) if c.mood == "done"]
    return any(o.first != m.first and o.first in scene.doses for c in here for o in c.of("material")) or any(
        c.cues("degas", "add") for c in here
    )


_LATER = {"an", "hour", "hours", "later", "day", "days", "next", "after", "the"}  # "and an hour later chitosan"


def _by_itself(m: Mention, clause: Clause) -> bool:
    """A substance alone between two commas (`bentonite first,`)."""
    words = clause.text.words
    first, last = m.first, m.last
    while first > clause.first and words[first - 1] not in _MARKS:
        first -= 1
    while last < clause.last and words[last] not in _MARKS:
        last += 1
    return sum(1 for i in range(first, last) if clause.text.tokens[i].kind == "word" and words[i] not in _LATER) <= 3


def _listed(clause: Clause, scene: Scene, m: Mention) -> bool:
    """`1/4 tsp kmeta, 3 tsp sorbate, kieselsol`: a bare substance in a list of things put in."""
    before = scene.clause_before(clause)
    near = [c for c in clause.of("material") if c.first != m.first and c.first in scene.doses]
    return (bool(near) and _by_itself(m, clause)) or bool(
        before
        and clause.last - clause.first <= 4
        and before.mood == "done"
        and any(c.first in scene.doses for c in before.of("material"))
    )


def _unlisted(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """`added 2 lb of chopped sloes`: an amount of fruit, or of what no table knows, keeps the note's own words."""
    words = clause.text.words
    taken = [v for at, v in scene.doses.items() if not _bare_fruit(at, clause, scene)]
    known = {
        i
        for m in clause.mentions
        if m.kind
        in ("material", "code", "oak_form", "vessel", "batch", "date", "reading", "closure", "oak_toast", "oak_origin")
        for i in range(m.first, m.last)
    }
    for m in clause.of("amount"):
        if (
            any(v is m.value for v in taken)
            or m.value.unit.partition("/")[0] in ("bottle", "packet")
            or clause.cues("top_up", "rack", "bottle")
        ):
            continue
        i = m.last + (words[m.last : m.last + 1] == ["of"])
        j = i
        while j < clause.last and words[j] not in _STOP and j not in known and clause.text.tokens[j].kind == "word":
            j += 1
        if (
            i < j <= i + 4
            and words[j - 1] not in _NO_NOUN
            and words[i] not in _NO_NOUN
            and not any(c.first < j and c.last > i for c in clause.cues("add", "pitch", "press", "crush"))
        ):
            yield Draft("addition", clause, i, j, {"material": " ".join(words[i:j]), **amount_fields(m.value)})


def _by_rate(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """`free SO2 down to 12, so hit it with 50 ppm`: parts per million put in, of what was measured before."""
    measured = any(
        m.kind in ("quantity", "reading") and m.value in ("free_so2", "total_so2")
        for c in scene.sentence(clause)
        for m in c.of("quantity")
    )
    if not measured or not clause.cues("add") or clause.mood != "done" or clause.of("material"):
        return
    for m in clause.of("amount"):
        if m.value.unit == "mg/L" and clause.text.words[m.first - 1] in ("with", "of", "added", "another"):
            yield Draft("addition", clause, m.first, m.last, {"material": "sulfur dioxide", **amount_fields(m.value)})


def _bare_fruit(at: int, clause: Clause, scene: Scene) -> bool:
    """Whether what stands at a token is fruit and no more, in a clause that does not start a wine from it."""
    return (
        clause.first not in scene.start_clauses
        and any(m.first == at for m in clause.of("fruit"))
        and not any(m.first <= at < m.last for m in clause.of("material", "code", "oak_form", "oak_word"))
    )


_VERBS = {
    "sulfited": "potassium metabisulfite", "sulphited": "potassium metabisulfite",
    "k-meta'd": "potassium metabisulfite", "kmeta'd": "potassium metabisulfite", "meta'd": "potassium metabisulfite",
    "so2'd": "sulfur dioxide",
}


def _by_verb(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """A verb that names what it adds: `sulfited the lot`."""
    for c in clause.cues("add"):
        material = _VERBS.get(clause.text.words[c.first])
        if material and clause.mood == "done" and not clause.of("material"):
            free = [m.value for m in clause.of("amount") if not any(v is m.value for v in scene.doses.values())]
            yield Draft(
                "addition", clause, c.first, c.last, {"material": material, **amount_fields(free[0] if free else None)}
            )
