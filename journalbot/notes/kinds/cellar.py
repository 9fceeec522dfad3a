"""Cellar work: acts without fields, racking, moving, topping up, airlocks, blending."""

from collections.abc import Iterator

from journalbot.language.amounts import Amount
from journalbot.language.lexicon import Mention
from journalbot.notes.clauses import Clause
from journalbot.notes.draft import Draft, Scene, amount_fields
from journalbot.notes.moods import each_day
from journalbot.vocabulary.units import UNITS

_PLAIN = ("crush", "press", "degas", "filter", "stir", "chill", "punch_down")
_TO = {"into", "to", "->", "→", "=>", ">", "in", "onto"}
_FROM = {"from", "off", "out", "of", "emptied"}
_ARROWS = {"->", "→", "=>", ">", "to"}
_SKIP = {
    "the",
    "a",
    "an",
    "my",
    "our",
    "its",
    "clean",
    "fresh",
    "another",
    "washed",
    "second",
    "new",
    "empty",
    "both",
    "two",
    "glass",
    "back",
    "one",
}
_PUT_IN = ("pitch", "add", "malolactic", "top_up", "start")
_BARREL_PHRASES = ("off the oak",)
_TOPPED_WITH = {"with", "w/", "w", "using", "from", "of"}
_NOT_PRESSED = {"bottle", "button", "pot", "garlic", "flowers"}


def done(clause: Clause) -> bool:
    """Whether the clause tells of something done."""
    return clause.mood == "done"


def read_acts(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """Crushing, pressing, degassing, filtering, stirring the lees, chilling, cap work."""
    if not done(clause):
        return
    seen: set[str] = set()
    for cue in clause.cues(*_PLAIN):
        kind = cue.value.kind
        if kind in seen or not _act_meant(cue, clause, scene):
            continue
        seen.add(kind)
        if kind == "punch_down":
            yield from _punch_down(cue, clause, scene)
        else:
            yield Draft(kind, clause, cue.first, cue.last)
    if not seen and (carried := _carried_times(clause, scene)):
        yield carried
    before = scene.clause_before(clause)
    if not seen and before and "again" in clause.words() and clause.own_date and not clause.of("cue", "reading"):
        for draft in read_acts(before, scene):
            yield Draft(draft.kind, clause, clause.first, clause.last, dict(draft.fields))


def _act_meant(cue: Mention, clause: Clause, scene: Scene) -> bool:
    words = clause.text.words
    kind, detail, form = cue.value.kind, cue.value.detail, cue.value.form
    before = words[cue.first - 1] if cue.first else ""
    if kind == "stir" and detail == "lees":
        return bool(clause.of("lees")) and not any(
            m.first < cue.first and words[m.first - 2 : m.first] == ["off", "the"] for m in clause.of("lees")
        )
    if kind == "crush":
        campden = any(m.value == "campden tablet" for m in clause.of("material"))
        return (
            not campden
            and form != "noun"
            and not (
                form == "base"
                and before in ("the", "a", "this", "to", "last", "during", "of", "after", "before", "at", "for")
            )
        )
    if kind == "press":
        if "down" in words[cue.last : cue.last + 4]:
            return False
        if (form == "ing" and before in ("the", "of", "after", "before", "from", "for", "since")) or (
            form == "base" and before in ("the", "a", "my", "his", "to", "that", "of", "our", "new", "on")
        ):
            return False
        return not clause.has(*_NOT_PRESSED)
    if kind == "filter" and detail == "through":
        return clause.has("through", "thru", "thro")
    if kind == "filter":
        return form == "done" or (before not in ("the", "a", "plate", "new", "my") and not clause.of("money"))
    if kind == "degas":
        return True
    if kind == "chill":
        return form != "base" or before in ("to", "for", "cold", "") or cue.last - cue.first > 1
    if kind == "punch_down":
        if detail == "down":
            return form == "done" and "down" in words[cue.last : cue.last + 4] and not clause.of("vessel", "place")
        if (
            detail == ""
            and cue.last - cue.first == 1
            and words[cue.first] in ("punched", "punch", "punching", "plunged", "plunge", "plunging")
        ):
            return (
                clause.has("cap", "down", "skins", "it", "must")
                or bool(clause.of("times"))
                or words[cue.first] in ("plunged", "plunging")
            )
        return True
    return True


def _punch_down(cue: Mention, clause: Clause, scene: Scene) -> Iterator[Draft]:
    times = _times(cue, clause)
    fields = {"times": times} if times else {}
    dates: tuple[str, ...] = ()
    if each_day(clause):
        named = [c.date for c in scene.clauses if c.of("reading") or c.own_date]
        dates = tuple(dict.fromkeys(d for d in named if len(d) == 10))
    yield Draft("punch_down", clause, cue.first, cue.last, fields, dates=dates)


def _times(cue: Mention, clause: Clause) -> int | None:
    for m in clause.of("times"):
        return int(m.value.value)
    near = [
        m
        for m in clause.of("number")
        if m.value.style in ("figure", "words") and 0 <= cue.first - m.last <= 1 and m.value.value <= 12
    ]
    return int(near[0].value.value) if near else None


def _carried_times(clause: Clause, scene: Scene) -> Draft | None:
    """`punched down 4x yesterday, 3x today`: a count whose act was said before."""
    times = clause.of("times")
    i = scene.clauses.index(clause)
    earlier = [
        c
        for c in scene.clauses[max(0, i - 3) : i]
        if c.sentence == clause.sentence and c.mood == "done" and c.cues("punch_down")
    ]
    if earlier and times and not clause.of("cue"):
        return Draft("punch_down", clause, times[0].first, times[0].last, {"times": int(times[0].value.value)})
    return None


def role(vessel: Mention, clause: Clause) -> str:
    """What a vessel is in its clause: "to", "from" or "at", by the word that leads it."""
    words = clause.text.words
    i = vessel.first - 1
    while i >= clause.first and words[i] in _SKIP:
        i -= 1
    if i < clause.first and clause.joined_by in ("->", "→"):
        return "to"
    lead = words[i] if i >= clause.first else ""
    if lead in ("into", "onto", "->", "→", "=>", ">", "to"):
        return "to"
    if lead in ("in", "into") and i and words[i - 1] == "back":
        return "to"
    racked = any(c.value.detail != "weak" and c.last <= vessel.first for c in clause.cues("rack"))
    if lead == "in" and racked and len(clause.of("vessel")) == 1 and not clause.of("batch"):
        return "to"
    if lead in ("from", "off", "emptied") or (lead == "of" and i and words[i - 1] == "out"):
        return "from"
    if any(c.last == i + 1 and c.value.detail != "weak" for c in clause.cues("rack")) and any(
        v.first > vessel.last for v in clause.of("vessel")
    ):
        return "from"
    if lead == "and" and any(v.last == i and role(v, clause) == "from" for v in clause.of("vessel")):
        return "from"
    if lead == "and" and any(v.last == i and role(v, clause) == "to" for v in clause.of("vessel")):
        return "to"
    nxt = words[vessel.last] if vessel.last < len(words) else ""
    if nxt in ("->", "→", "=>", ">") or (
        nxt in ("to", "into") and any(v.first - vessel.last <= 3 and v.first > vessel.last for v in clause.of("vessel"))
    ):
        return "from"
    return "at"


def _rack_cue(clause: Clause) -> list[Mention]:
    return [c for c in clause.cues("rack") if c.value.form in ("done", "base", "ing")]


def read_racking(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """A racking: a verb that says so, or wine that went into a vessel."""
    if not done(clause):
        return
    cues = [c for c in _rack_cue(clause) if not _rack_noun(c, clause)]
    strong = [c for c in cues if c.value.detail != "weak"]
    vessels = [v for v in clause.of("vessel")]
    if clause.of("money") and not vessels:
        return
    to = [v for v in vessels if role(v, clause) == "to" or _run_off(v, clause, scene)]
    source = [v for v in vessels if role(v, clause) == "from"]
    if cues and not to and not strong:
        to = []
    pressed = bool(clause.cues("press")) or any(c.cues("press") for c in scene.sentence(clause) if c.mood == "done")
    if clause.cues("top_up") and not strong:
        return
    if not strong:
        if not to and not (source and len(vessels) > 1):
            return
        if clause.first in scene.start_clauses and not source:
            return
        if _something_else_goes_in(clause, scene, bool(cues)) and not source and not clause.cues("press"):
            return
        if clause.cues("bottle") or (clause.of("place") and clause.cues("move") and not cues and not source):
            return
    if (
        strong
        and strong[0].value.form in ("ing", "base")
        and not (to or source or clause.of("batch") or clause.of("pronouns") or clause.of("lees"))
        and strong[0].value.form == "ing"
    ):
        return
    at = strong[0] if strong else (to or source)[0]
    emptied = [v for c in scene.sentence(clause) if c.has("emptied") for v in c.of("vessel") if v not in to]
    source = source or [v for v in emptied if v.first < at.first][:1]
    volumes = _volumes(clause, scene) or _volume_after(clause, scene)
    yield from _rackings(clause, at, to, source, volumes)


def _volume_after(clause: Clause, scene: Scene) -> list[Mention]:
    """`DJ1 -> DJ2; 13.5 L`: a volume by itself after a racking."""
    i = scene.clauses.index(clause) + 1
    after = scene.clauses[i] if i < len(scene.clauses) else None
    if (
        after is None
        or after.sentence != clause.sentence
        or after.last - after.first > 4
        or after.of("cue", "vessel", "material", "left")
    ):
        return []
    return _volumes(after, scene)


def _run_off(vessel: Mention, clause: Clause, scene: Scene) -> bool:
    """`pressed on Wednesday, 34 L in demijohn A`: so much in a vessel after a pressing is wine run into it."""
    i = scene.clauses.index(clause)
    pressed = any(c.cues("press") for c in scene.clauses[max(0, i - 4) : i + 1] if c.mood == "done")
    lead = clause.text.words[vessel.first - 1] if vessel.first > clause.first else clause.joined_by
    joined = lead == "and" and any(v.last == vessel.first - 1 for v in clause.of("vessel"))
    return (
        pressed
        and scene.started is None
        and (lead in ("in", ",") or joined)
        and any(v.last <= vessel.first for v in _volumes(clause, scene))
    )


def _rack_noun(cue: Mention, clause: Clause) -> bool:
    """`the last racking`, `wine rack`: the noun, not the act."""
    words = clause.text.words
    before = words[cue.first - 1] if cue.first else ""
    word = words[cue.first]
    if cue.last - cue.first > 1 and word not in ("first", "second", "third"):
        return False
    if word in ("rack", "racks"):
        return before in ("the", "a", "wine", "bottle", "drying", "to") or clause.text.words[
            cue.last : cue.last + 1
        ] in (["of"], ["in"])
    if word == "racking":
        return before in (
            "the",
            "since",
            "last",
            "after",
            "before",
            "next",
            "of",
            "for",
            "needs",
            "from",
            "cane",
            "a",
            "until",
            "by",
        )
    return word in ("racking",) and False


def _rackings(
    clause: Clause, at: Mention, to: list[Mention], source: list[Mention], volumes: list[Mention]
) -> Iterator[Draft]:
    fields: dict[str, object] = {}
    if source:
        fields["from"] = _joined(source, clause)
    if len(to) > 1 and len(volumes) >= len(to):
        for vessel in to:
            volume = min(volumes, key=lambda v: abs(v.first - vessel.first) + 3 * (v.first > vessel.first))
            volumes = [v for v in volumes if v is not volume]
            yield Draft(
                "rack", clause, vessel.first, vessel.last, {**fields, "to": vessel.value.name, **_volume(volume.value)}
            )
        return
    if to:
        fields["to"] = _joined(to, clause)
    if (volumes and len(volumes) == 1) or (volumes and not to):
        fields.update(_volume(volumes[0].value))
    elif volumes and to:
        near = [v for v in volumes if v.first < to[0].first]
        fields.update(_volume((near[-1] if near else volumes[0]).value))
    yield Draft("rack", clause, at.first, at.last, fields)


def _joined(vessels: list[Mention], clause: Clause) -> str:
    """Several vessels as the note writes them."""
    if len(vessels) == 1:
        return str(vessels[0].value.name)
    between = clause.text.words[vessels[0].last : vessels[-1].first]
    if len(vessels) == 2 and len(between) <= 2 and set(between) <= {"and", "&", "+", "the"}:
        return clause.text.slice(vessels[0].first, vessels[1].last)
    return " and ".join(dict.fromkeys(v.value.name for v in vessels))


def _volume(amount: Amount) -> dict[str, object]:
    out: dict[str, object] = {"volume": amount.value, "unit": amount.unit}
    if amount.approx:
        out["approx"] = True
    return out


def volumes_of(clause: Clause, scene: Scene) -> list[Mention]:
    """Volumes in a clause that are nothing else's dose."""
    return _volumes(clause, scene)


def _volumes(clause: Clause, scene: Scene) -> list[Mention]:
    doses = [
        d
        for first, d in scene.doses.items()
        if any(m.first == first and m.kind in ("material", "code", "oak_form") for m in scene.text.mentions)
    ]
    inside = [v for v in clause.of("vessel")]
    return [
        m
        for m in clause.of("amount")
        if m.value.unit in UNITS
        and UNITS[m.value.unit].dimension == "volume"
        and m.value.unit not in ("tsp", "tbsp", "cup", "fl oz")
        and not any(d is m.value for d in doses)
        and not {"lost", "left", "leaving", "spilled", "spilt", "minus"}
        & set(clause.text.words[max(clause.first, m.first - 2) : m.first])
        and not any(w.first == m.last for w in clause.of("left"))
        and not any(v.first <= m.first < v.last for v in inside)
    ]


def _something_else_goes_in(clause: Clause, scene: Scene, moved: bool) -> bool:
    """Whether what goes into the vessel is yeast, a dose, culture, oak or top-up wine."""
    if any(c.value.kind in ("pitch", "malolactic", "top_up") for c in clause.of("cue")) or clause.of("code"):
        return True
    if any(m.first in scene.doses for m in clause.of("material", "oak_form")):
        return not moved and not _volumes(clause, scene)
    if any(m.value.unit in ("g", "mg", "tsp", "tablet", "oz", "tbsp") for m in clause.of("amount")) and not _volumes(
        clause, scene
    ):
        return True
    added = [c for c in clause.cues("add") if c.last - c.first == 1 and c.value.form == "done"]
    return bool(clause.of("material") and not _volumes(clause, scene)) or (
        bool(added) and not moved and not clause.of("batch", "pronouns") and not _volumes(clause, scene)
    )


def read_moving(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """Wine moved to another place."""
    if not done(clause):
        return
    places = clause.of("place")
    cues = clause.cues("move")
    strong = [c for c in cues if c.value.detail != "weak"]
    words = clause.text.words
    for place in reversed(places):
        led = _led(place, clause)
        back = "back" in words[clause.first : place.first]
        if (
            not led
            or place.value in ("bottle",)
            or any(v.first <= place.first < v.last for v in clause.of("vessel", "date"))
        ):
            continue
        out = "out" in words[clause.first : place.first]
        if not (
            strong
            or (cues and (led in ("to", "into", "onto", "out") or back))
            or ((back or out) and (clause.of("batch") or clause.of("vessel")))
        ):
            continue
        if (clause.cues("rack") and any(c.value.detail != "weak" for c in clause.cues("rack"))) or (
            clause.cues("drink", "give") and not strong
        ):
            continue
        yield Draft("move", clause, place.first, place.last, {"to": _place(place, clause)})
        return
    if strong and not clause.of("vessel") and all(c.value.detail == "weak" for c in clause.cues("rack", "give")):
        yield from _moved_anywhere(strong[0], clause)


def _moved_anywhere(cue: Mention, clause: Clause) -> Iterator[Draft]:
    """`moved to the lean-to to cold stabilise`: a place that no table knows."""
    words = clause.text.words
    lead = next((i for i in range(cue.last, clause.last - 1) if words[i] in ("to", "into", "onto")), None)
    if lead is None:
        return
    first = lead + 1
    while first < clause.last and words[first] in ("the", "my", "our", "a"):
        first += 1
    last = first
    while (
        last < clause.last
        and words[last]
        not in (",", "to", "so", "because", "for", "and", "where", "at", "(", "-", "with", "until", "it's", "its")
        and clause.text.tokens[last].kind == "word"
        and not any(m.first == last for m in clause.of("date", "time", "reading", "cue"))
    ):
        last += 1
    if first < last <= first + 4:
        yield Draft("move", clause, first, last, {"to": clause.text.slice(first, last)})


def _led(place: Mention, clause: Clause) -> str:
    words = clause.text.words
    i = place.first - 1
    while i >= clause.first and (
        words[i]
        in (
            "the",
            "my",
            "our",
            "a",
            "back",
            "cold",
            "cool",
            "warm",
            "lower",
            "upper",
            "spare",
            "dark",
            "neighbour's",
            "kitchen",
            "coldest",
            "warmer",
            "cooler",
            "far",
            "north",
            "downstairs",
            "hall",
            "under",
        )
    ):
        i -= 1
    return (
        words[i]
        if i >= clause.first and words[i] in ("to", "into", "in", "onto", "on", "out", "under", "back", "up", "down")
        else ""
    )


def _place(place: Mention, clause: Clause) -> str:
    """The place as written: with the words before it that tell which, and an "of the …" after it."""
    words = clause.text.words
    first, last = place.first, place.last
    while (
        first - 1 > clause.first
        and words[first - 1]
        in (
            "cold",
            "cool",
            "warm",
            "lower",
            "upper",
            "spare",
            "dark",
            "coldest",
            "back",
            "far",
            "north",
            "hall",
            "kitchen",
            "under",
        )
        and words[first - 1] != "back"
    ):
        first -= 1
    if words[last : last + 2] in (["of", "the"], ["in", "the"], ["under", "the"]):
        nxt = next((m for m in clause.of("place") if m.first == last + 2), None)
        last = nxt.last if nxt else last
    return clause.text.slice(first, last)


def read_topping(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """A topping up, with what and how much."""
    cues = clause.cues("top_up")
    if not done(clause) or not cues or clause.of("airlock") or _top_label(cues[0], clause):
        return
    words = clause.text.words
    fields: dict[str, object] = {}
    last = cues[0].last
    volumes = [
        m
        for m in clause.of("amount")
        if m.value.unit in UNITS and (UNITS[m.value.unit].dimension == "volume" or m.value.unit == "bottle")
    ]
    volumes = [
        m
        for m in volumes
        if not any(
            d is m.value
            for f, d in scene.doses.items()
            if any(x.first == f and x.kind == "material" and x.value not in ("water",) for x in scene.text.mentions)
        )
    ]
    lead = next((i for i in range(cues[0].first, clause.last) if words[i] in ("with", "w", "using")), None)
    if lead is not None and words[lead + 1 : lead + 2] == ["/"]:
        lead += 1
    if lead is None:
        lead = next(
            (
                i
                for i in range(cues[0].first, clause.last)
                if words[i] == "from" or (words[i] == "of" and words[i - 1 : i] == ["out"])
            ),
            None,
        )
    if lead is not None:
        start = lead + 1
        amount = next((m for m in volumes if m.first >= lead), None)
        if amount is not None and amount.first <= start + 2:
            start = amount.last
        while start < clause.last and words[start] in (
            "of",
            "the",
            "a",
            "some",
            "my",
            "our",
            "out",
            "about",
            "from",
            "that",
            "more",
            "rest",
            "an",
            "another",
        ):
            start += 1
        end = start
        while (
            end < clause.last
            and words[end]
            not in (
                ",",
                "(",
                ")",
                "so",
                "because",
                "and",
                "on",
                "which",
                "since",
                "today",
                "yesterday",
                "again",
                "-",
                "–",
            )
            and not any(d.first == end for d in clause.of("date", "time"))
        ):
            end += 1
        while end > start and words[end - 1] in (
            "instead",
            "too",
            "again",
            "today",
            "now",
            "as",
            "well",
            "this",
            "time",
        ):
            end -= 1
        if end > start:
            fields["with"] = clause.text.slice(start, end)
            last = end
    if volumes:
        fields.update(amount_fields(volumes[0].value))
    yield Draft("top_up", clause, cues[0].first, last, fields)


def _top_label(cue: Mention, clause: Clause) -> bool:
    """`on top of`, `the top shelf`."""
    return cue.value.form == "base" and cue.last - cue.first == 1


def read_airlock(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """An airlock refilled, cleaned or checked: said in the clause, or of the airlock just spoken of."""
    if not done(clause):
        return
    worked = [c for c in clause.cues("airlock") if c.value.form == "done"]
    here = clause.of("airlock")
    if not worked:
        return
    earlier = [c for c in scene.clauses[: scene.clauses.index(clause)] if c.of("airlock")]
    if (
        here
        or (
            earlier
            and clause.of("pronouns")
            and earlier[-1] in scene.clauses[max(0, scene.clauses.index(clause) - 3) : scene.clauses.index(clause)]
        )
        or (earlier and _bare_verb(worked[0], clause))
    ):
        everywhere = clause.has("all", "every", "everything") and clause.has("airlocks", "bubblers")
        yield Draft("airlock", clause, worked[0].first, worked[0].last, needs="none" if everywhere else "batch")


def _bare_verb(cue: Mention, clause: Clause) -> bool:
    return (
        cue.first == clause.first
        and clause.text.words[cue.first] in ("refilled", "cleaned", "replaced", "rinsed")
        and clause.last - clause.first <= 3
    )


def read_blend(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """A blend: what went in, and how much of each, on the batch that they went into."""
    cues = [c for c in clause.cues("blend") if c.value.form == "done"]
    whole = [c for c in scene.sentence(clause)]
    if not done(clause) or not cues:
        return
    here = (
        [clause]
        if len(clause.of("batch")) > 1
        or (not clause.has("together") and any(_amount_before(m, [clause]) for m in clause.of("batch")))
        else whole
    )
    refs = [m for c in here for m in c.of("batch")]
    into = [m for m in refs if _into(m, clause)]
    parts: list[dict[str, object]] = []
    for m in refs:
        if m in into or len(m.value.fits) != 1:
            continue
        amount = _amount_before(m, whole)
        if amount is not None:
            parts.append({"batch": m.value.fits[0], "amount": amount.value, "unit": amount.unit})
    strong = cues[0].value.detail != "weak"
    if not parts or (not strong and len(parts) < 2 and not into):
        return
    draft = Draft("blend", clause, cues[0].first, cues[0].last, {"with": parts})
    if into and len(into[0].value.fits) == 1:
        draft.batches = into[0].value.fits
    elif into:
        draft.ref = into[0]
    elif scene.started is not None:
        draft.batches = (scene.started,)
    yield draft


def _into(m: Mention, clause: Clause) -> bool:
    words = clause.text.words
    i = m.first - 1
    while i >= 0 and words[i] in ("the", "my", "our"):
        i -= 1
    return i >= 0 and words[i] in ("into", "to")


def _amount_before(m: Mention, clauses: list[Clause]) -> Amount | None:
    words = clauses[0].text.words
    for c in clauses:
        for a in c.of("amount", "percent"):
            if a.last <= m.first and all(
                w in ("of", "the", "my", "our", "batch", "#", "number") for w in words[a.last : m.first]
            ):
                return a.value  # type: ignore[no-any-return]
    return None
