"""Whom bottles went to."""

from journalbot.notes.clauses import Clause
from journalbot.notes.draft import Scene
from journalbot.notes.kinds.counts import bottle_amounts, counted_batches
from journalbot.vocabulary.people import OCCASIONS, PEOPLE, TITLES

_NAME_WORDS = 3
_PERSONAL = {"her", "him", "them"}
_GIVE_LEADS = {"to", "with", "w", "for", "w/"}


def given_away(clause: Clause) -> bool:
    return clause.has("away")


def names_person(clause: Clause, scene: Scene) -> bool:
    low = {p.lower() for p in scene.cellar.people}
    words = clause.words()
    return any(w in PEOPLE or w in OCCASIONS for w in words) or any(p in " ".join(words) for p in low)


def taker_of(clause: Clause, scene: Scene) -> str | None:
    """`Rosaria took 6 home`: who took them away."""
    text, words = clause.text, clause.text.words
    took = next(
        (i for i in range(clause.first + 1, clause.last) if words[i] in ("took", "got", "received", "had")), None
    )
    if took is None or (
        words[took] == "took"
        and not (
            clause.has("home", "away", "with", "gift", "present")
            and any(m.first in (took + 1, took + 2) for m in clause.of("number", "amount"))
        )
    ):
        return None
    if words[took] != "took":
        named = not any(
            m.first < took and m.kind not in ("person", "date", "place", "descriptor", "cue") for m in clause.mentions
        ) and words[clause.first] not in ("i", "we", "it", "and")
        counted = any(m.first == took + 1 for m in clause.of("number", "amount")) and any(
            counted_batches(c) or bottle_amounts(c) for c in scene.sentence(clause)
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


def _spoken_of(at: int, clause: Clause) -> str | None:
    """Whom "her" or "him" means: the last person spoken of (`my sister came. I gave her two bottles`)."""
    words = clause.text.words
    found = [i for i in range(at) if words[i].removesuffix("'s") in PEOPLE]
    return words[found[-1]].removesuffix("'s") if found else None


def _was_given(clause: Clause) -> str | None:
    """`Dad was given two bottles`: who stands before the verb."""
    words = clause.text.words
    at = next((i for i in range(clause.first + 2, clause.last) if words[i] == "given"), None)
    if at is None or words[at - 1] not in ("was", "were", "got") or at - 1 - clause.first > _NAME_WORDS:
        return None
    named = clause.text.tokens[clause.first].text[:1].isupper() or words[clause.first] in PEOPLE
    who = (
        words[clause.first] not in ("it", "they", "the", "this", "that") and bool(clause.of("amount", "batch"))
    )
    return clause.text.slice(clause.first, at - 1) if named and who else None


def receiver_of(clause: Clause, scene: Scene) -> str | None:
    """Whom bottles went to: the words after "to" or "with", as written."""
    text = clause.text
    words = text.words
    if taker := taker_of(clause, scene):
        return taker
    if was_given := _was_given(clause):
        return was_given
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
                "for", "on", "at", "who", "because", "so", "as", "when", "yesterday", "today", "tonight", "and", "in",
                "next", "over", "down", "after", "-", "straight", "this", "with", "from", "a", "an", "some", "one",
            )
            and not any(d.first == k for d in clause.of("date", "time", "number", "amount", "batch"))
            and (text.tokens[k].kind != "mark" or (words[k] == "." and words[k - 1] in TITLES))
            and not (words[k] == "the" and k > j)
        ):
            k += 1
        if k == j or any(m.first < k and j < m.last for m in clause.of("code", "material", "oak_form")):
            continue
        if took and words[j] in _PERSONAL and (meant := _spoken_of(j, clause)):
            return meant
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
        counted = any(m.first == k for m in clause.of("number")) or any(m.first == k for m in bottle_amounts(clause))
        plain = k - j == 1 and len(low[0]) > 2 and not any(m.first == j and m.kind != "person" for m in clause.mentions)
        if took and counted and plain and low[0] not in _PERSONAL:
            return name  # "gave marge 4 apple and 1 rhubarb": the one before the count
        if (
            took
            and (
                low[0] in ("it", "them", "this", "that", "him", "her", "the", "a", "another", "each")
                or (
                    not text.tokens[j].text[:1].isupper()
                    and low[0] not in PEOPLE
                    and low[0] not in ("my", "our", "his")
                )
            )
            and not (low[0] == "the" and low[1:2] and (low[1] in PEOPLE or text.tokens[j + 1].text[:1].isupper()))
        ):
            continue
        if looks or (
            given
            and k - j - start == 1
            and len(low[start]) > 2
            and not any(m.first == j + start for m in clause.mentions if m.kind not in ("person", "descriptor"))
        ):
            return text.slice(j + start, k)
    return None
