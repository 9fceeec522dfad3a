"""Starting a batch: its number, what it is made from, how much, and in which vessel."""

from collections.abc import Iterator

from journalbot.language.lexicon import Mention
from journalbot.notes.clauses import Clause
from journalbot.notes.draft import Draft, Scene
from journalbot.notes.kinds.racking import pressed_before, role
from journalbot.notes.kinds.start_fields import (
    MADE_OF,
    STYLES,
    base_of,
    bought_vessel,
    colour_of,
    name_of,
    part_of_other,
    vintage_of,
    volume_of,
    weight_of,
)

_CAME = {
    "came", "arrived", "picked", "harvest", "harvested", "delivered", "collected", "fetched", "brought", "bought",
    "gathered", "foraged",
}



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
    whole = scene.sentence(before)
    named = any(scene.cellar.batches[n].under_way for c in whole for m in c.of("batch") for n in m.value.fits)
    if any(c.value.detail != "weak" for s in whole for c in s.cues("malolactic", "bottle", "top_up")):
        return False
    if before.date < clause.date and any(s.cues("pitch") for s in whole):
        return False  # "Rosé pitched on Monday. Today 22 L of juice as batch 7"
    return (fresh or not named) and before.mood in ("done", "told", "denied")


def _other_batch(clause: Clause, number: int, scene: Scene) -> bool:
    if any(c.cues("blend") for c in scene.sentence(clause)):
        return False
    poured = any(c.value.detail != "weak" for c in clause.cues("drink", "taste", "give")) or clause.has("had", "opened")
    if poured and any(number not in m.value.fits for m in clause.of("batch") if m.value.fits):
        return True
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
        or scene.text.words[new[0].first - 1] in ("started", "began", "begun", "start")
    )
    return int(new[0].value.new) if evidence else None


def _starts_unnumbered(clause: Clause, scene: Scene) -> bool:
    """A wine begun without a number: a start in so many words with what it is made of, or fruit come in and put to
    work.
    """
    if (clause.of("batch") and any(m.value.how == "number" for m in clause.of("batch"))) or any(
        _poured(c) for c in scene.clauses
    ):
        return False
    sentence = scene.sentence(clause)
    made_of = [
        m for c in (sentence if clause.cues("start") else [clause]) for m in c.of(*MADE_OF) if not part_of_other(m, c)
    ]
    starts = [c for c in clause.cues("start") if scene.text.words[c.first] != "new" or c.first == clause.first]
    so_far = [c for c in scene.clauses if c.first <= clause.first or (c in sentence and c.of(*MADE_OF))]
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
    fresh = starts or clause.text.words[clause.first] in ("started", "starting")
    begun = starts or {"started", "starting", "made", "making", "begun", "mixed"} & words
    if (
        begun
        and (made_of or {"mead", "cider", "kit"} & words)
        and (volume or clause.of("vessel") or (fresh and any(c.of("vessel") or _weighed(c) for c in sentence)))
        and not _known_wine(clause, scene, fits)
    ):
        return True
    if starts and {"batch", "wine", "one"} & words and made_of and not fits:
        return True
    whole = [c for c in scene.clauses if c.mood == "done"]
    called = (bool({"calling", "called", "call"} & words) and bool(made_of)) or _so_much_of(clause, made_of, scene)
    another = starts and {"new", "next", "another"} & words and "batch" in words
    if (
        (called or (starts and made_of) or another)
        and not fits
        and any(c.of("vessel") for c in whole)
        and any(m.value.unit in ("gal", "L") for c in whole for m in c.of("amount"))
    ):
        return True
    if _newly_named(clause) and any(c.of("vessel") for c in whole) and volume:
        return True
    if not made_of or _known_wine(clause, scene, fits):
        return False
    here = [c for c in scene.clauses if c.mood == "done"]
    worked = any(c.cues("crush") or (c.cues("press") and not _definite(made_of, c)) for c in here)
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


def _weighed(clause: Clause) -> bool:
    return any(m.value.unit in ("kg", "lb") for m in clause.of("amount"))


def _definite(made_of: list[Mention], clause: Clause) -> bool:
    """`pressed the pinot`: wine that is there already, not fruit come in."""
    words = clause.text.words
    return any(words[m.first - 1] == "the" for m in made_of if m.first > clause.first) and not _weighed(clause)


def _pressed_out(volume: Mention, clause: Clause, scene: Scene) -> bool:
    """`pressed into the pail, 25 L`: the volume of what was run off, which is the racking's."""
    run_off = any(role(v, clause) == "to" for v in clause.of("vessel")) and pressed_before(clause, scene)
    return run_off and clause.first <= volume.first < clause.last


def _of_another(clause: Clause, scene: Scene) -> bool:
    """Whether a clause tells of moving another wine (`I racked the rest of the shiraz into demijohn 3, 8.9 litres`)."""
    others = any(m.value.fits and scene.started not in m.value.fits for m in clause.of("batch"))
    return others and any(c.value.detail != "weak" for c in clause.cues("rack", "top_up"))


def _of_starting(clause: Clause) -> bool:
    """Whether a clause's day can be that of the start: not of a reading, a purchase, or what came of it."""
    return not clause.of("reading") and not clause.cues("purchase", "fermentation", "malolactic", "pitch")


def _newly_named(clause: Clause) -> bool:
    """`new mead with clover honey …`, `another cider`: a wine that is not one of the journal's."""
    words = clause.words()
    return any(
        word in ("new", "another") and words[i + 1 : i + 2] and words[i + 1] in {"batch", "wine", "kit", *STYLES}
        for i, word in enumerate(words)
    ) and not clause.cues("drink", "taste", "give", "bottle", "rack")


def _so_much_of(clause: Clause, made_of: list[Mention], scene: Scene) -> bool:
    """`5 gal of pear juice in carboy A`: a volume of juice or must in a vessel, of a fruit that no wine under way is
    of.
    """
    amounts = {id(m.value) for m in clause.of("amount") if m.value.unit in ("gal", "L", "qt")}
    forms = set(clause.text.words[clause.first : clause.last]) & {
        "juice", "must", "cider", "pulp", "purée", "puree", "concentrate",
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


def read(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """The start itself, from all the clauses that describe it."""
    if scene.started is None or not scene.start_clauses or clause.first != scene.start_clauses[0]:
        return
    here = [c for c in scene.clauses if c.first in scene.start_clauses and c.mood not in ("planned", "asked")]
    fields: dict[str, object] = {}
    if name := name_of([c for c in scene.clauses if c.first in scene.start_clauses and c.mood != "asked"], scene):
        fields["name"] = name
    colour = colour_of(here, scene) or STYLES.get(str(fields.get("name", "")).split(" ")[-1].lower())
    if colour:
        fields["colour"] = colour
    if vintage := vintage_of(here, scene):
        fields["vintage"] = vintage
    volume = volume_of([c for c in here if not _of_another(c, scene)], scene)
    if volume is not None and not any(_pressed_out(volume, c, scene) for c in here):
        fields["volume"], fields["unit"] = volume.value.value, volume.value.unit
        if volume.value.approx:
            fields["approx"] = True
    if bases := base_of(scene):
        fields["from"] = bases
    if "colour" not in fields and any(
        "mead" in c.words() and not c.cues("purchase") for c in here if c.sentence == here[0].sentence
    ):
        fields["colour"] = "mead"
    vessels = [
        v
        for c in here
        for v in c.of("vessel")
        if not v.value.weak
        and role(v, c) != "from"
        and not c.cues("vessel")
        and not (c.cues("purchase") and c.of("money"))
        and not bought_vessel(v, c)
        and not (role(v, c) == "to" and pressed_before(c, scene))
    ]
    if vessels:
        first = next((v for v in vessels if scene.text.words[v.first - 1] in ("in", "into", "to", "the")), vessels[0])
        pair = [v for v in vessels if v.first <= first.last + 3 and v.first >= first.first]
        fields["vessel"] = (
            scene.text.meant(pair[0].first, pair[-1].last)
            if len(pair) > 1
            and scene.text.words[pair[0].last : pair[1].first] in (["and"], ["and", "the"], ["&"], ["+"])
            else first.value.name
        )
    weight = weight_of(here, scene)
    if weight is not None:
        fields["weight"], fields["weight_unit"] = weight.value.value, weight.value.unit
    main = next((c for c in here if any(m.value.new == scene.started for m in c.of("batch"))), clause)
    dated = (
        main
        if main.own_date or main.date < scene.on.isoformat()
        else next((c for c in here if c.own_date and c.sentence <= main.sentence + 1 and _of_starting(c)), main)
    )
    begun = next(
        (c for c in here if c.cues("start") or (c.sentence <= main.sentence and c.has("started", "began"))), None
    )
    if begun and not main.own_date and begun.date < dated.date:
        dated = begun
    draft = Draft("start", main, here[0].first, main.last, fields, batches=(scene.started,))
    draft.dates = (dated.date,) if dated.date else ()
    yield draft
