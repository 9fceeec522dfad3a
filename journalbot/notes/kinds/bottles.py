"""Bottles filled, drunk and given away; batches that end otherwise."""

from collections.abc import Iterator

from journalbot.language.amounts import Amount, tidy
from journalbot.language.lexicon import Mention
from journalbot.notes.clauses import Clause
from journalbot.notes.draft import Draft, Scene
from journalbot.notes.kinds.counts import bottle_amounts, counted_batches
from journalbot.notes.kinds.receivers import given_away, names_person, receiver_of, taker_of
from journalbot.vocabulary.people import OCCASIONS, PEOPLE

_NAME = 3  # words of a name
_LISTED = 8  # sentences or lines back that a list of gifts may have been opened
_LOST = {"burst", "exploded", "smashed", "broke", "leaked", "drain"}
_BOTTLE_WORDS = {"bottle", "bottles", "btl", "btls", "botles"}


def read_drinking(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """Bottles opened and bottles given: `killed 4 sauv blancs, 2 apples and a 22 zin`, `one went home with Odry`."""
    if clause.mood != "done" or clause.of("money") or (clause.cues("purchase") and not clause.cues("drink", "give")):
        return
    if listed := _gift_listed(clause, scene):
        yield listed
        return
    if clause.cues("give") and (each := _each_given(clause)):
        yield from each
        return
    kind = _verb_of(clause, scene)
    if not kind or (clause.first in scene.start_clauses and not clause.cues("drink", "give")):
        return
    items = _counted(clause)
    receiver = receiver_of(clause, scene) or _shared_receiver(clause, scene)
    if kind == "give" and (receiver is None or receiver.lower() in OCCASIONS):
        receiver = _earlier_receiver(clause, scene) or receiver
    if kind == "give" and receiver and len(pairs := _given_pairs(clause, scene)) > 1:
        for count, at, to, ref in pairs:
            yield Draft(kind, clause, at, at + 1, {"count": count, "to": to}, ref=ref)
        return
    if kind == "give" and receiver is None and not given_away(clause):
        return
    after = scene.clauses[scene.clauses.index(clause) + 1 :][:1]
    if kind == "give" and not clause.of("number", "amount") and any(_gift_listed(c, scene) for c in after):
        return  # told one by one below
    if kind == "drink" and receiver and clause.cues("give") and not _strong(clause, "drink"):
        kind = "give"
    for count, ref, at in items:
        fields: dict[str, object] = {"count": count}
        if kind == "give" and receiver:
            fields["to"] = receiver
        yield Draft(kind, clause, at, at + 1, fields, ref=ref)


def _gift_listed(clause: Clause, scene: Scene) -> Draft | None:
    """`Dale 1 merlot`, `Hector 2`: a name and a count, in a list after a gift was spoken of."""
    counts = [m for m in clause.of("number", "amount") if m.kind == "number" or m.value.unit == "bottle"]
    if len(counts) != 1 or clause.of("cue", "reading", "money", "material", "vessel") or clause.mood != "done":
        return None
    count = counts[0]
    name = clause.text.slice(clause.first, count.first)
    tokens = clause.text.tokens[clause.first : count.first]
    if not tokens or len(tokens) > _NAME or not all(t.text[:1].isupper() and t.kind == "word" for t in tokens):
        return None
    if any(m.first < count.first and m.kind not in ("person", "descriptor") for m in clause.mentions):
        return None
    given = any(
        c.cues("give") for c in scene.clauses if c.first < clause.first and clause.sentence - c.sentence <= _LISTED
    )
    refs = [b for b in clause.of("batch") if b.first >= count.last]
    rest = {i for b in refs for i in range(b.first, b.last)} | set(range(count.first, count.last))
    if not given or any(
        i not in rest for i in range(count.first, clause.last) if clause.text.words[i] not in ("of", "the")
    ):
        return None
    fields: dict[str, object] = {"count": tidy(count.value.value), "to": name}
    return Draft("give", clause, clause.first, clause.last, fields, ref=refs[0] if refs else None)


def _each_given(clause: Clause) -> list[Draft]:
    """`gave Marcus, Dale and Ray Jr a dewberry each`: one for every name."""
    words = clause.text.words
    if not clause.has("each", "apiece") or len(refs := counted_batches(clause)) != 1:
        return []
    count, ref = refs[0]
    give = next(c for c in clause.of("cue") if c.value.kind == "give")
    names: list[list[int]] = [[]]
    for i in range(give.last, ref.first):
        token = clause.text.tokens[i]
        if words[i] in (",", "and", "&"):
            names.append([])
        elif token.kind == "word" and (token.text[:1].isupper() or words[i] in PEOPLE or words[i] in ("my", "the")):
            names[-1].append(i)
    people = [clause.text.slice(n[0], n[-1] + 1) for n in names if n]
    if len(people) < 2:
        return []
    return [Draft("give", clause, ref.first, ref.first + 1, {"count": count, "to": who}, ref=ref) for who in people]


def _next_clause(clause: Clause, scene: Scene) -> Clause | None:
    i = scene.clauses.index(clause) + 1
    after = scene.clauses[i] if i < len(scene.clauses) else None
    return after if after and after.sentence == clause.sentence and after.joined_by in ("and", ",", "&", "+") else None


def _shared_receiver(clause: Clause, scene: Scene) -> str | None:
    """`6 bottles of one and 4 of the other given to the raffle`: the verb and receiver stand with the last."""
    after = _next_clause(clause, scene)
    if after is None or clause.of("cue", "reading") or not _counted_here(after):
        return None
    return receiver_of(after, scene) or _shared_receiver(after, scene)


def _earlier_receiver(clause: Clause, scene: Scene) -> str | None:
    """`gave Orrin 2 of the marquette, 2 of the rosé and 1 of batch 4 for Christmas`: told once, before."""
    before = scene.clause_before(clause)
    if before is None or not _counted_here(before) or clause.cues("give", "drink"):
        return None
    return receiver_of(before, scene) or _earlier_receiver(before, scene)


def _counted_here(clause: Clause) -> bool:
    return bool(counted_batches(clause) or bottle_amounts(clause))


def _given_pairs(clause: Clause, scene: Scene) -> list[tuple[float, int, str, Mention | None]]:
    """`one went home with Odry and 2 with my brother`, `gave Priya 4 of b2 and Dana 3 of b1`: each count with its own
    receiver.
    """
    out: list[tuple[float, int, str, Mention | None]] = []
    counts = [
        m
        for m in clause.of("number", "amount")
        if (m.kind == "number" and m.value.style in ("figure", "words"))
        or (m.kind == "amount" and m.value.unit == "bottle")
    ]
    counts += [_one_of(b, clause) for b in clause.of("batch") if clause.text.words[b.first - 1] in ("a", "an")]
    counts.sort(key=lambda m: m.first)
    for k, m in enumerate(counts):
        stop = counts[k + 1].first if k + 1 < len(counts) else clause.last
        part = Clause(
            clause.text,
            m.first,
            stop,
            clause.sentence,
            mentions=[x for x in clause.mentions if x.first >= m.first and x.last <= stop],
        )
        to = (
            _named_before(m, clause, scene)
            or receiver_of(part, scene)
            or (out[-1][2] if out and not part.has("to") else None)
        )
        if to is None:
            return []
        ref = next((b for b in part.of("batch") if b.first - m.last <= 3), None)
        out.append((tidy(m.value.value), m.first, to.removesuffix(" and"), ref))
    return out


def _one_of(batch: Mention, clause: Clause) -> Mention:
    """`a blackcurrant to Mum`: one bottle, by its article."""
    at = batch.first - 1
    token = clause.text.tokens[at]
    return Mention("amount", Amount(1, "bottle"), at, at + 1, token.start, token.end)


def _named_before(count: Mention, clause: Clause, scene: Scene) -> str | None:
    """A name right before its count: `Dana 3 bottles`."""
    i = count.first - 1
    token = clause.text.tokens[i]
    people = {p.lower() for p in scene.cellar.people}
    called = token.text[:1].isupper() or token.low in PEOPLE or token.low in people
    named = i >= clause.first and token.kind == "word" and called
    return token.text if named and not any(m.first <= i < m.last for m in clause.of("cue", "batch", "vessel")) else None


def _strong(clause: Clause, kind: str) -> bool:
    return any(c.value.kind == kind and c.value.detail != "weak" and c.value.form == "done" for c in clause.of("cue"))


def _verb_of(clause: Clause, scene: Scene) -> str:
    """Which of the two a clause tells of; weak verbs ("had", "went") need bottles counted beside them."""
    words = set(clause.words())
    lost = not _LOST.isdisjoint(words)
    bottles = bool(bottle_amounts(clause)) or not _BOTTLE_WORDS.isdisjoint(words)
    drink = [c for c in clause.cues("drink") if c.value.form == "done"]
    give = [c for c in clause.cues("give") if c.value.form == "done"]
    if taker_of(clause, scene):
        return "give"
    counted = (
        bottles
        or bool(counted_batches(clause))
        or any(
            n.first == c.last and n.value.style in ("figure", "words")
            for c in (*drink, *give)
            if c.value.detail != "weak" or clause.text.words[c.first] in ("opened", "uncorked", "popped")
            for n in clause.of("number")
        )
        or _that_bottle(clause, scene)
        or _opened(clause)
    )
    if (
        give
        and (counted or (receiver_of(clause, scene) and any(c.value.detail != "weak" for c in give)))
        and receiver_of(clause, scene)
        and not clause.of("vessel")
        and (counted or not clause.has("glass", "glasses", "cup", "sample", "seeds", "skins", "pulp", "pomace", "lees"))
    ) and (any(c.value.detail != "weak" for c in give) or names_person(clause, scene) or bottles):
        return "give"
    if (
        drink
        and clause.of("material")
        and not clause.of("bottles")
        and not bottle_amounts(clause)
        and not counted_batches(clause)
    ):
        return ""  # "knocked back the acid with chalk"
    if drink and {clause.text.words[c.first] for c in drink} <= {"did", "done"} and _bottling(clause, scene):
        return ""  # "bottled the red, and on Friday we did the white, 11 bottles"
    if (
        drink
        and ((any(c.value.detail != "weak" for c in drink) and (counted or clause.of("batch"))) or counted)
        and all(c.value.detail == "weak" for c in clause.cues("rack", "bottle", "top_up", "end"))
        and not lost
        and not _just_filled(clause, scene, drink)
        and not clause.has("leak", "lid", "valve", "glass")
    ) and not ({c.value.detail for c in drink} == {"weak"} and not counted):
        return "drink"
    before = scene.clause_before(clause)
    if before is None and clause.sentence:
        i = scene.clauses.index(clause)
        before = scene.clauses[i - 1] if i and not drink and not give else None
        if before and not _handed_to(clause, scene):
            before = None
    if (
        not drink
        and not give
        and before
        and before.mood == "done"
        and (counted or (clause.of("number") and _handed_to(clause, scene)))
        and not clause.of("reading", "money")
        and not clause.of("material")
    ):
        earlier = _verb_of(before, scene)
        if earlier and _handed_to(clause, scene):
            return "give"
        if earlier and not clause.of("cue"):
            return "give" if receiver_of(clause, scene) and clause.has("w", "with") and before.cues("give") else earlier
    if not drink and not give and counted and not lost and not clause.of("cue", "vessel", "reading", "material"):
        if _handed_to(clause, scene):
            return "give"
        after = _next_clause(clause, scene)
        if after is not None and not after.cues("drink", "give") and _counted_here(after) and _handed_to(after, scene):
            return "give"
        if after is not None and after.cues("drink", "give") and (kind := _verb_of(after, scene)):
            return kind
        refs = [ref for _, ref in counted_batches(clause)]
        if refs and all(any(scene.cellar.batches[n].bottles for n in ref.value.fits) for ref in refs):
            return "drink"
    return ""


def _just_filled(clause: Clause, scene: Scene, drink: list[Mention]) -> bool:
    """`24 bottles of zin done`: of a wine that no bottle was filled with before."""
    fits = [n for m in clause.of("batch") for n in m.value.fits]
    done = {clause.text.words[c.first] for c in drink} <= {"done", "did", "finished"}
    return done and bool(fits) and not any(scene.cellar.batches[n].bottles for n in fits)


def _bottling(clause: Clause, scene: Scene) -> bool:
    """Whether the sentence has told of bottles being filled."""
    return any(c.first < clause.first and c.cues("bottle") for c in scene.sentence(clause))


def _that_bottle(clause: Clause, scene: Scene) -> bool:
    """`I brought one bottle of batch 1 and we opened it`."""
    before = scene.clause_before(clause)
    return bool(
        before and clause.of("pronouns") and clause.has("opened", "drank", "finished") and bottle_amounts(before)
    )


def _opened(clause: Clause) -> bool:
    """`rhubarb opened yesterday`, `opened first mead`: a wine opened is a bottle of it."""
    cues = [c for c in clause.cues("drink") if clause.text.words[c.first] in ("opened", "uncorked")]
    return any(b.last == c.first or b.first in (c.last, c.last + 1) for c in cues for b in clause.of("batch"))


def _counted(clause: Clause) -> list[tuple[float, Mention | None, int]]:
    refs = counted_batches(clause)
    if refs:
        return [(count, ref, ref.first) for count, ref in refs]
    words = clause.text.words
    for m in bottle_amounts(clause):
        return [(m.value.value, None, m.first)]
    for m in clause.of("number"):
        if (
            m.value.style in ("figure", "words")
            and m.value.value <= 200
            and not any(r.first <= m.first < r.last for r in clause.of("batch", "date", "score", "vessel", "time"))
        ):
            return [(tidy(m.value.value), None, m.first)]
    first = next((i for i in range(clause.first, clause.last) if words[i] in _BOTTLE_WORDS), clause.first)
    return [(1, None, first)]


def _handed_to(clause: Clause, scene: Scene) -> bool:
    """Bottles "to" somebody, with no verb; bottles "with" somebody were drunk."""
    return clause.has("to") and receiver_of(clause, scene) is not None
