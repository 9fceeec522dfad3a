"""Bottles filled, drunk and given away; batches that end otherwise."""

from collections.abc import Iterator

from journalbot.language.amounts import Amount, Bottles, bottle_size, tidy
from journalbot.language.lexicon import Mention
from journalbot.language.numerals import Number
from journalbot.notes.clauses import Clause
from journalbot.notes.draft import Draft, Scene
from journalbot.vocabulary.descriptors import FAULTS
from journalbot.vocabulary.people import OCCASIONS, PEOPLE

_BOTTLE_WORDS = {"bottle", "bottles", "btl", "btls", "botles"}
_GIVE_LEADS = {"to", "with", "w", "for", "w/"}
_SKIP = {"the", "a", "an", "of", "my", "our", "his", "her", "last", "old", "more", "other", "remaining"}
_CONTAINED = {
    "into",
    "in",
    "filled",
    "and",
    "plus",
    ",",
    "got",
    "gave",
    "made",
    "yielded",
    "bottled",
    "=",
    ":",
    "total",
    "for",
    "bottling",
    "-",
    "is",
    "came",
    "as",
    "x",
    "of",
    "makes",
}
_REASON_LEADS = {"because", "cause", "since", "as", "due", "for"}
_FILLERS = {
    "straight",
    "pure",
    "total",
    "just",
    "all",
    "it",
    "was",
    "had",
    "turned",
    "to",
    "went",
    "gone",
    "is",
    "full",
    "the",
    "a",
    "into",
    "completely",
    "pretty",
    "now",
    "by",
    "of",
    "then",
    "whole",
    "lot",
    "that",
}


def read_bottling(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """A bottling: counts, sizes and closure, one entry a size."""
    if clause.mood != "done":
        return
    cues = [c for c in clause.cues("bottle") if _verb(c, clause)]
    filled = _filled_bottles(clause, scene)
    if not cues and not filled and not _count_and_closure(clause, scene):
        return
    before = scene.clauses[max(0, scene.clauses.index(clause) - 4) : scene.clauses.index(clause)]
    if not cues and any(clause in _tail(c, scene) and any(read_bottling(c, scene)) for c in before):
        return
    if clause.of("money") or (clause.cues("drink", "give") and not cues) or (clause.cues("purchase") and not cues):
        return
    here = [clause, *_tail(clause, scene)]
    counts = _counts(here, scene)
    closure = next((m for c in here for m in _closures(c)), None)
    at = cues[0] if cues else clause.of("amount", "bottles", "number")[0]
    entries = [dict(c) for c in counts] or [{}]
    for fields in entries:
        if closure is not None:
            fields["closure"] = closure
        yield Draft("bottle", clause, at.first, at.last, fields)


def _verb(cue: Mention, clause: Clause) -> bool:
    words = clause.text.words
    word = words[cue.first]
    if word == "bottle" and cue.last - cue.first == 1:
        return cue.first == clause.first and words[cue.last : cue.last + 1] not in (["of"], [], [","])
    if word == "bottling":
        return words[cue.last : cue.last + 1] not in (["bucket"], ["wand"], ["line"]) and words[
            cue.first - 1 : cue.first
        ] not in (["before"], ["for"], ["after"], ["since"], ["until"], ["pre"], ["at"])
    if words[cue.first : cue.last] in (["in", "bottles"], ["into", "bottles"], ["in", "the", "bottle"]):
        return not clause.has("still", "since", "months", "years", "year", "weeks", "has", "been")
    return True


def _filled_bottles(clause: Clause, scene: Scene) -> bool:
    """`filled into 29 bottles`, `through the filter and into 28 bottles of 0.75`."""
    words = clause.text.words
    for m in clause.of("amount", "bottles"):
        unit = m.value.unit if isinstance(m.value, Amount) else "bottle"
        if (
            (unit == "bottle" or isinstance(m.value, Bottles))
            and m.first > 0
            and (words[m.first - 1] in ("into", "filled", "in") or clause.joined_by in ("into",))
        ):
            return True
    return False


def _count_and_closure(clause: Clause, scene: Scene) -> bool:
    """`28 bottles, real corks`: so many bottles and what closes them."""
    counted = [m for m in clause.of("amount") if m.value.unit == "bottle"] or clause.of("bottles")
    return (
        bool(counted)
        and bool(clause.of("closure"))
        and not clause.of("money")
        and not clause.cues("drink", "give", "purchase")
    )


def _tail(clause: Clause, scene: Scene) -> list[Clause]:
    """The clauses after a bottling that only go on about it: counts, sizes, closures."""
    i = scene.clauses.index(clause)
    out: list[Clause] = []
    for c in scene.clauses[i + 1 : i + 5]:
        about = c.of("closure") or c.of("bottles") or _bottle_amounts(c)
        bare = bool(c.of("number")) and c.last - c.first <= 4 and not c.of("reading")
        if (
            c.sentence - clause.sentence > 1
            or not (about or bare)
            or any(
                x.value.kind in ("drink", "give", "purchase", "rack") and x.value.detail != "weak" for x in c.of("cue")
            )
            or c.of("money", "score")
            or c.mood != "done"
        ):
            break
        if c.of("batch") and not _same_ref(c, clause):
            break
        out.append(c)
    return out


def _same_ref(a: Clause, b: Clause) -> bool:
    return {m.value.fits for m in a.of("batch")} == {m.value.fits for m in b.of("batch")}


def _bottle_amounts(clause: Clause) -> list[Mention]:
    return [m for m in clause.of("amount") if m.value.unit == "bottle"]


def _counts(clauses: list[Clause], scene: Scene) -> list[dict[str, object]]:
    """The counts of a bottling, each with its size where that is said."""
    out: list[dict[str, object]] = []
    words = scene.text.words
    for clause in clauses:
        for m in clause.of("bottles"):
            value: Bottles = m.value
            out.append({"count": value.count, "size": value.size, "unit": value.unit})
        if out:
            continue
        for m in clause.of("amount", "number"):
            count = _count_of(m, clause, scene)
            if count is None:
                continue
            fields: dict[str, object] = {"count": count}
            if size := _size_after(m, clause, words):
                fields["size"], fields["unit"] = size
            out.append(fields)
            break
    if len(out) == 1 and "size" not in out[0]:
        for clause in clauses:
            for m in clause.of("amount", "number"):
                if (
                    m.kind == "number"
                    and (size := bottle_size(m.value.value))
                    and words[m.last : m.last + 1] in (["s"], ["'s"], ["ml"])
                ):
                    out[0]["size"], out[0]["unit"] = tidy(size[0]), size[1]
                elif (
                    m.kind == "amount"
                    and m.value.unit in ("ml", "cl", "L")
                    and (m.value.unit != "L" or m.value.value <= 3)
                    and "count" in out[0]
                ):
                    out[0]["size"], out[0]["unit"] = m.value.value, m.value.unit
    return out


def _count_of(m: Mention, clause: Clause, scene: Scene) -> int | float | None:
    words = clause.text.words
    if m.kind == "amount":
        return m.value.value if m.value.unit == "bottle" else None  # type: ignore[no-any-return]
    n: Number = m.value
    if (
        n.style not in ("figure", "words")
        or not 1 <= n.value < 1000
        or any(r.first <= m.first < r.last for r in clause.of("reading", "date", "time", "batch", "vessel", "score"))
    ):
        return None
    before = words[m.first - 1] if m.first else ""
    after = words[m.last] if m.last < len(words) else ""
    known = bottle_size(n.value) and after in ("s", "ml")
    if known or (
        after in ("%", "°", "degrees", "f", "c", "days", "weeks", "months", "hours", "people", "of") and after != "of"
    ):
        return None
    follows = any(c.first == m.last or c.first == m.last + 1 for c in clause.of("closure")) or after in (
        "of",
        "under",
        "with",
        "",
        "x",
        ",",
        "full",
        "standard",
        "half",
        "swing",
        "screw",
        "clear",
        "green",
        "bordeaux",
        "burgundy",
        "in",
        "for",
        "w",
        "at",
        "plus",
        "and",
        "so",
        "this",
        "today",
        "total",
    )
    return (
        tidy(n.value)
        if (before in _CONTAINED and follows)
        or (m.first == clause.first and follows)
        or (follows and clause.cues("bottle"))
        else None
    )


def _size_after(m: Mention, clause: Clause, words: list[str]) -> tuple[float | int, str] | None:
    """`28 bottles of 0.75`, `29 bottles of 0.75 L`, `24 half-litre swing tops`."""
    i = m.last
    if words[i : i + 1] in (["of"], ["x"], ["×"], ["@"]):
        i += 1
    if words[i : i + 1] in (["half-litre"], ["half-liter"], ["half-litres"]):
        return 0.5, "L"
    for a in clause.of("amount", "number"):
        if a.first != i:
            continue
        if a.kind == "amount" and a.value.unit in ("ml", "cl", "L"):
            return a.value.value, a.value.unit
        if a.kind == "number" and (size := bottle_size(a.value.value)):
            return tidy(size[0]), size[1]
    return None


def _closures(clause: Clause) -> list[str]:
    found = [m for m in clause.of("closure")]
    long = [
        m
        for m in found
        if not any(
            o is not m and o.first <= m.first and m.last <= o.last and o.last - o.first > m.last - m.first
            for o in found
        )
    ]
    return [clause.text.slice(m.first, m.last) for m in long]


def read_drinking(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """Bottles opened and bottles given: `killed 4 sauv blancs, 2 apples and a 22 zin`, `one went home with Odry`."""
    if clause.mood != "done" or clause.of("money") or (clause.cues("purchase") and not clause.cues("drink", "give")):
        return
    kind = _verb_of(clause, scene)
    if not kind:
        return
    items = _counted(clause, scene)
    receiver = _receiver(clause, scene) or _shared_receiver(clause, scene)
    if kind == "give" and receiver and len(pairs := _given_pairs(clause, scene)) > 1:
        for count, at, to in pairs:
            yield Draft(kind, clause, at, at + 1, {"count": count, "to": to})
        return
    if kind == "give" and receiver is None and not _given(clause, scene):
        return
    if kind == "drink" and receiver and clause.cues("give") and not _strong(clause, "drink"):
        kind = "give"
    for count, ref, at in items:
        fields: dict[str, object] = {"count": count}
        if kind == "give" and receiver:
            fields["to"] = receiver
        yield Draft(kind, clause, at, at + 1, fields, ref=ref)


def _next_clause(clause: Clause, scene: Scene) -> Clause | None:
    i = scene.clauses.index(clause) + 1
    after = scene.clauses[i] if i < len(scene.clauses) else None
    return after if after and after.sentence == clause.sentence and after.joined_by in ("and", ",", "&", "+") else None


def _shared_receiver(clause: Clause, scene: Scene) -> str | None:
    """`6 bottles of one and 4 of the other given to the raffle`: the verb and receiver stand with the last."""
    after = _next_clause(clause, scene)
    if after is None or clause.of("cue", "reading") or not _counted_here(after):
        return None
    return _receiver(after, scene) or _shared_receiver(after, scene)


def _counted_here(clause: Clause) -> bool:
    return bool(_count_refs(clause) or _bottle_amounts(clause))


def _given_pairs(clause: Clause, scene: Scene) -> list[tuple[float, int, str]]:
    """`one went home with Odry and 2 with my brother`: each count with its own receiver."""
    out = []
    counts = [
        m
        for m in clause.of("number", "amount")
        if (m.kind == "number" and m.value.style in ("figure", "words"))
        or (m.kind == "amount" and m.value.unit == "bottle")
    ]
    for k, m in enumerate(counts):
        stop = counts[k + 1].first if k + 1 < len(counts) else clause.last
        part = Clause(
            clause.text,
            m.first,
            stop,
            clause.sentence,
            mentions=[x for x in clause.mentions if x.first >= m.first and x.last <= stop],
        )
        to = _receiver(part, scene)
        if to is None:
            return []
        out.append((tidy(m.value.value), m.first, to.removesuffix(" and")))
    return out


def _strong(clause: Clause, kind: str) -> bool:
    return any(c.value.kind == kind and c.value.detail != "weak" and c.value.form == "done" for c in clause.of("cue"))


def _verb_of(clause: Clause, scene: Scene) -> str:
    """Which of the two a clause tells of; weak verbs ("had", "went") need bottles counted beside them."""
    words = set(clause.words())
    bottles = bool(_bottle_amounts(clause)) or not _BOTTLE_WORDS.isdisjoint(words)
    drink = [c for c in clause.cues("drink") if c.value.form == "done"]
    give = [c for c in clause.cues("give") if c.value.form == "done"]
    if _taker(clause):
        return "give"
    counted = (
        bottles
        or bool(_count_refs(clause))
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
        and (counted or (_receiver(clause, scene) and any(c.value.detail != "weak" for c in give)))
        and _receiver(clause, scene)
        and not clause.of("vessel")
    ):
        if any(c.value.detail != "weak" for c in give) or _person(clause, scene) or bottles:
            return "give"
    if (
        drink
        and ((any(c.value.detail != "weak" for c in drink) and (counted or clause.of("batch"))) or counted)
        and not clause.cues("rack", "bottle", "top_up")
        and not clause.has("leak", "lid", "valve", "glass")
    ):
        if not (set(c.value.detail for c in drink) == {"weak"} and not counted):
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
        and counted
        and not clause.of("reading", "money")
        and not clause.of("material")
    ):
        earlier = _verb_of(before, scene)
        if earlier and _handed_to(clause, scene):
            return "give"
        if earlier and not clause.of("cue"):
            return "give" if _receiver(clause, scene) and clause.has("w", "with") and before.cues("give") else earlier
    if not drink and not give and counted and not clause.of("cue", "vessel", "reading", "material"):
        if _handed_to(clause, scene):
            return "give"
        after = _next_clause(clause, scene)
        if after is not None and after.cues("drink", "give") and (kind := _verb_of(after, scene)):
            return kind
        refs = [ref for _, ref in _count_refs(clause)]
        if refs and all(any(scene.cellar.batches[n].bottles for n in ref.value.fits) for ref in refs):
            return "drink"
    return ""


def _that_bottle(clause: Clause, scene: Scene) -> bool:
    """`I brought one bottle of batch 1 and we opened it`."""
    before = scene.clause_before(clause)
    return bool(
        before and clause.of("pronouns") and clause.has("opened", "drank", "finished") and _bottle_amounts(before)
    )


def _opened(clause: Clause) -> bool:
    """`rhubarb opened yesterday`, `opened first mead`: a wine opened is a bottle of it."""
    cues = [c for c in clause.cues("drink") if clause.text.words[c.first] in ("opened", "uncorked")]
    return any(b.last == c.first or b.first in (c.last, c.last + 1) for c in cues for b in clause.of("batch"))


def _count_refs(clause: Clause) -> list[tuple[float, Mention]]:
    """Counts that stand right before a batch (`4 sauv blancs`, `a dozen of the kit red`)."""
    out = []
    words = clause.text.words
    for ref in clause.of("batch"):
        i = ref.first - 1
        while i >= clause.first and words[i] in _SKIP:
            i -= 1
        n = next((m for m in clause.of("number") if m.last == i + 1 and m.value.style in ("figure", "words")), None)
        b = next((m for m in _bottle_amounts(clause) if m.last == i + 1), None)
        if b is not None:
            out.append((b.value.value, ref))
        elif n is not None and n.value.value <= 200:
            out.append((tidy(n.value.value), ref))
        elif {"a", "an", "last", "another", "first"}.intersection(words[i + 1 : ref.first + 1]):
            out.append((1, ref))
    return out


def _counted(clause: Clause, scene: Scene) -> list[tuple[float, Mention | None, int]]:
    refs = _count_refs(clause)
    if refs:
        return [(count, ref, ref.first) for count, ref in refs]
    words = clause.text.words
    for m in _bottle_amounts(clause):
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


def _given(clause: Clause, scene: Scene) -> bool:
    return clause.has("away")


def _handed_to(clause: Clause, scene: Scene) -> bool:
    """Bottles "to" somebody, with no verb; bottles "with" somebody were drunk."""
    return clause.has("to") and _receiver(clause, scene) is not None


def _person(clause: Clause, scene: Scene) -> bool:
    low = {p.lower() for p in scene.cellar.people}
    words = clause.words()
    return any(w in PEOPLE or w in OCCASIONS for w in words) or any(p in " ".join(words) for p in low)


def _taker(clause: Clause) -> str | None:
    """`Rosaria took 6 home`: who took them away."""
    text, words = clause.text, clause.text.words
    took = next((i for i in range(clause.first + 1, clause.last) if words[i] in ("took", "got", "received")), None)
    if took is None or (words[took] == "took" and not clause.has("home", "away", "with", "gift", "present")):
        return None
    if words[took] != "took":
        named = not any(
            m.first < took and m.kind not in ("person", "date", "place", "descriptor", "cue") for m in clause.mentions
        ) and words[clause.first] not in ("i", "we", "it", "and")
        counted = any(m.first == took + 1 for m in clause.of("number", "amount")) and bool(
            _count_refs(clause) or _bottle_amounts(clause)
        )
        start = clause.first + (words[clause.first] in ("the", "then"))
        return text.slice(start, took) if named and counted and took - start <= 3 else None
    first = took
    while first - 1 >= clause.first and (
        text.tokens[first - 1].text[:1].isupper()
        or words[first - 1] in PEOPLE
        or words[first - 1] in ("my", "our", "his", "her")
        or (first < took and words[first - 1] in ("aunt", "uncle", "mrs", "mr"))
    ):
        first -= 1
    if first == took and took - 1 >= clause.first and took - 2 >= clause.first and words[took - 2] in PEOPLE:
        first = took - 2
    return text.slice(first, took) if first < took else None


def _receiver(clause: Clause, scene: Scene) -> str | None:
    """Whom bottles went to: the words after "to" or "with", as written."""
    text = clause.text
    words = text.words
    if taker := _taker(clause):
        return taker
    for i in range(clause.first, clause.last - 1):
        lead = words[i] in _GIVE_LEADS
        give = any(c.value.kind == "give" and c.last == i for c in clause.of("cue"))
        took = words[i] in ("gave", "give", "given", "handed") and i + 1 < clause.last
        if not lead and not took and not (give and words[i - 1] in ("to", "with", "w")):
            continue
        j = i + 1 if lead or took else i
        if any(
            m.first <= j < m.last for m in clause.of("place", "vessel", "date", "time", "number", "amount", "batch")
        ) and not (j < clause.last and words[j] in PEOPLE):
            continue
        k = j
        while (
            k < clause.last
            and words[k]
            not in (
                "for",
                "on",
                "at",
                "who",
                "because",
                "so",
                "as",
                "when",
                "yesterday",
                "today",
                "tonight",
                "and",
                "in",
                "next",
                "over",
                "down",
                "after",
                "-",
                "straight",
                "this",
                "with",
                "from",
            )
            and not any(d.first == k for d in clause.of("date", "time", "number", "amount", "batch"))
            and text.tokens[k].kind != "mark"
        ):
            k += 1
        if k == j:
            continue
        name = text.slice(j, k)
        low = name.lower().split()
        start = 1 if low[0] in ("the", "a") and len(low) > 1 else 0
        looks = (
            any(t.text[:1].isupper() for t in text.tokens[j + start : k])
            or any(w in PEOPLE or w in OCCASIONS for w in low)
            or low[0] in ("my", "our", "his", "her")
            or name.lower() in {p.lower() for p in scene.cellar.people}
        )
        given = (
            any(
                c.value.kind == "give" and c.value.detail != "weak" for s in scene.sentence(clause) for c in s.of("cue")
            )
            and words[i] == "to"
        )
        if took and (
            low[0] in ("it", "them", "this", "that", "him", "her", "the", "a", "another", "each")
            or (not text.tokens[j].text[:1].isupper() and low[0] not in PEOPLE and low[0] not in ("my", "our", "his"))
        ):
            continue
        if looks or (
            given
            and k - j == 1
            and len(low[0]) > 2
            and not any(m.first == j for m in clause.mentions if m.kind not in ("person", "descriptor"))
        ):
            return text.slice(j + start, k)
    return None


def read_ending(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """A batch thrown away, and why."""
    if clause.mood != "done":
        return
    cues = [c for c in clause.cues("end") if c.value.form == "done" and _thrown(c, clause)]
    if not cues:
        return
    fields: dict[str, object] = {}
    if reason := _reason(cues[0], clause, scene):
        fields["reason"] = reason
    yield Draft("end", clause, cues[0].first, cues[0].last, fields)


def _thrown(cue: Mention, clause: Clause) -> bool:
    words = clause.text.words
    if cue.value.detail == "weak":
        return False
    if (
        words[cue.last : cue.last + 1] in (["in"], ["into"], ["on"])
        or (clause.of("material") and not clause.of("batch"))
        or clause.of("oak_form")
        or clause.has("lees", "sediment", "sanitizer", "water", "pulp", "skins", "gunk", "sludge")
    ):
        return False
    return True


def _reason(cue: Mention, clause: Clause, scene: Scene) -> str | None:
    text = clause.text
    words = text.words
    i = scene.clauses.index(clause)
    for k in range(cue.last, clause.last):
        if words[k] in _REASON_LEADS:
            return _trim(text.slice(k + 1, clause.last))
    fault = next((d for d in clause.of("descriptor") if d.first >= cue.last and d.value in FAULTS), None)
    if fault is not None:
        return text.slice(fault.first, fault.last)
    comma = next((k for k in range(clause.last - 1, cue.last - 1, -1) if words[k] in (",", "-", "–", "—", "(")), None)
    if comma is not None and comma + 1 < clause.last:
        return _trim(text.slice(comma + 1, clause.last))
    fault = next((d for d in scene.clauses[i - 1].of("descriptor") if d.value in FAULTS), None) if i else None
    if fault is not None:
        return text.slice(fault.first, fault.last)
    for c in scene.clauses[i + 1 : i + 3]:
        if (
            c.of("vessel")
            or (
                c.of("cue")
                and any(
                    x.value.detail != "weak" and x.value.kind not in ("taste", "add", "fermentation", "purchase")
                    for x in c.of("cue")
                )
            )
            or c.of("batch")
        ):
            break
        return _trim(text.slice(c.first, c.last))
    back = scene.clauses[i - 1] if i else None
    if back and back.sentence == clause.sentence and not back.of("reading"):
        return _trim(text.slice(back.first, back.last))
    return None


def _trim(phrase: str) -> str | None:
    words = phrase.split()
    while words and words[0].lower().strip(",.") in _FILLERS:
        words = words[1:]
    return " ".join(words).strip(" ,.") or None
