"""How a clause is meant: done, planned, denied, supposed, told by others or asked."""

import datetime

from journalbot.language.lexicon import Mention
from journalbot.notes.clauses import Clause
from journalbot.notes.dating import days_of
from journalbot.vocabulary.people import PEOPLE

_PAST = {"had", "was", "were", "stood", "went", "got"}
_OPENING = 3  # how far into a clause an "if" still governs it
_CARRIED = {",", "and", "&", "+", "then", "-", "–", "—", "or", "", "/", ":", "(", "plus", "also"}
_WEEKDAYS = {"mon", "tue", "wed", "thu", "fri", "sat", "sun"}
_TOLD_LATE = {
    "noted", "note", "wrote", "write", "log", "logged", "record", "recorded", "mention", "mentioned", "jot", "jotted",
    "say", "tell", "told",
}
_SAYING = {"says", "said", "reckons", "thinks", "tells", "told", "claims", "swears"}
_WINES = {"wine", "wines", "mead", "cider", "batch", "batches", "carboy", "demijohn", "barrel"}


def set_moods(clauses: list[Clause], on: datetime.date) -> None:
    """Give every clause its mood, from its own words or from the clause it hangs on."""
    for i, clause in enumerate(clauses):
        before = clauses[i - 1] if i and clauses[i - 1].sentence == clause.sentence else None
        clause.mood = _mood(clause, before, on)


def _covering(clause: Clause) -> set[int]:
    """Tokens of phrases that hold a cue's own "no" or "has not" (`hasn't moved`, `no malic left`)."""
    return {
        i
        for m in clause.mentions
        if m.kind in ("cue", "batch", "vessel", "code") and m.last - m.first > 1
        for i in range(m.first, m.last)
    }


def _mood(clause: Clause, before: Clause | None, on: datetime.date) -> str:
    covered = _covering(clause)
    words = clause.text.words
    if "=" in clause.words() and not clause.of("number", "amount", "reading", "money", "batch"):
        return "told"
    if (clause.last <= len(words) and words[clause.last - 1] == "?") or _ends_asked(clause):
        return "asked"
    free = [m for m in clause.mentions if m.first not in covered]
    if _anothers(clause):
        return "told"
    if any(
        m.kind == "hearsay"
        and not _due(m, clause)
        and "after" not in words[max(0, m.first - 2) : m.first]
        and not {"like", "as", "than"}.intersection(words[max(0, m.first - 2) : m.first])
        for m in free
    ) and not clause.has("lab", "laboratory"):
        return "told"
    acts = [c.last for c in clause.of("cue") if c.value.form == "done" and c.value.detail != "weak"]
    if any(
        m.kind == "supposed"
        and m.first - clause.first < _OPENING
        and not _past(m.first, acts)
        and not _PAST.intersection(words[m.last : m.last + 2])  # "once it had cooled"
        for m in free
    ):
        return "supposed"
    planned = [m for m in free if m.kind == "planned" and _governs(m, clause)]
    if planned and _SAYING.intersection(words[clause.first : planned[0].first]):
        return "told"  # "Hector says it will clean a weld"
    denied = [
        m
        for m in free
        if m.kind == "denied"
        and words[m.first - 1] != "or"  # "rain or no rain"
        and not _TOLD_LATE.intersection(words[m.last : m.last + 2])
        and words[m.last : m.last + 2] != ["put", "down"]
    ]
    if denied and planned and denied[0].first <= planned[0].first:
        return "denied"
    if planned:
        return "planned"
    if denied and not _after_act(denied[0], clause):
        return "denied"
    if _future(clause, on):
        return "planned"
    if _told_to(clause, on):
        return "planned"
    trial = before and before.mood == "told" and "bench" in before.words() and clause.joined_by in _CARRIED
    if trial and not any(m.value.form == "done" and m.value.detail != "weak" for m in clause.of("cue")):
        return "told"
    if before and before.mood in ("planned", "supposed") and clause.joined_by in _CARRIED:
        done = any(m.value.form == "done" and m.value.kind not in ("add",) for m in clause.of("cue"))
        if not done and not clause.of("reading", "money") and before.mood == "planned":
            return "planned"
    if (
        before
        and before.mood == "denied"
        and clause.joined_by in ("and", "or", "nor", "&")
        and not clause.of("cue")
        and not clause.of("reading")
    ):
        return "denied"
    return "done"


def _past(first: int, acts: list[int]) -> bool:
    """Whether something done stands before token `first`: `degassed it till the drill smoked`."""
    return any(last <= first for last in acts)


def _told_to(clause: Clause, on: datetime.date) -> bool:
    """`bottle the cuvée on 21/9`: a verb's base form, and a day that is nearer ahead than behind."""
    words = clause.text.words
    opening = [m for m in clause.of("cue") if m.first <= clause.first + 1 or words[m.first - 1] == ","]
    if not any(m.value.form == "base" for m in opening):
        return False
    if _AHEAD.intersection(clause.words()):
        return True
    for m in clause.of("date"):
        named = set(words[m.first : m.last])
        if len(m.value.iso) == len("2024-06") and m.value.iso != m.value.future_iso and "last" not in named:
            return True  # "bottle it in June"
        if len(m.value.iso) == len(m.value.future_iso) > 4 and not any(w[:3] in _WEEKDAYS for w in named):
            return _middle(m.value.future_iso) - on < on - _middle(m.value.iso)
    return False


_AHEAD = {"next", "tomorrow"}


def _middle(iso: str) -> datetime.date:
    """The day, or the middle of the month."""
    return datetime.date.fromisoformat(iso if len(iso) == 10 else f"{iso}-15")


def _after_act(denied: Mention, clause: Clause) -> bool:
    """`pitched one packet of TL-22 no sulfite this time`: what is denied comes after what was done."""
    strong = [
        c
        for c in clause.of("cue")
        if c.value.form == "done" and c.value.detail != "weak" and c.value.kind not in ("add", "vessel", "fermentation")
    ]
    return any(c.last < denied.first for c in strong)


def _ends_asked(clause: Clause) -> bool:
    words = clause.text.words
    i = clause.last
    while i < len(words) and words[i] not in (".", "!", "?", "\n", ";"):
        i += 1
    return i < len(words) and words[i] == "?"


def _governs(m: Mention, clause: Clause) -> bool:
    """Whether a word that may be a plan's is one here: "must" is also the juice, "will" wants something to do."""
    word = clause.text.words[m.first]
    if word == "must":
        nxt = clause.text.words[m.last] if m.last < clause.last else ""
        return nxt in (
            "be", "get", "not", "remember", "do", "order", "buy", "check", "test", "taste", "take", "ask",
        ) or any(c.kind == "cue" and c.first == m.last and c.value.form == "base" for c in clause.mentions)
    after = clause.text.words[m.last : m.last + 1]
    if after in (
        ["know"],
        ["see"],
        ["admit"],
        ["say"],
        ["confess"],
        ["report"],
        ["think"],
        ["wait"],
        ["have"],
        ["be"],
    ) and (after != ["be"] and (after != ["have"] or word in ("should", "would", "must", "shd"))):
        return False  # "I have to admit", "should have racked it"
    if "been" in clause.text.words[max(clause.first, m.first - 2) : m.first] or word in ("wanted", "meant", "had"):
        return False  # "have been wanting to", "wanted to rack it but"
    if {"if", "whether", "what", "how"} & set(clause.text.words[max(clause.first, m.first - 3) : m.first]):
        return False
    if (
        word == "plan"
        and m.last - m.first == 1
        and m.first
        and clause.text.words[m.first - 1] in ("a", "the", "past", "my", "our", "per")
    ):
        return False
    be = clause.text.words[m.last : m.last + 1] == ["be"]
    if be or clause.text.words[m.last - 1].endswith("be"):
        if clause.text.words[m.first - 1] in ("out", "used", "seems", "seem", "appears", "found", "looks"):
            return False
        act = m.last + be
        return any(c.first == act and c.value.form == "done" and c.value.kind != "add" for c in clause.of("cue"))
    return True


def _anothers(clause: Clause) -> bool:
    """`neighbor racked his zin`, `my brother's wine is at 1.020`: another cellar's wine."""
    words = clause.words()
    of_wine = {m.first for m in clause.of("batch", "fruit", "variety", "stranger")}
    for i, word in enumerate(words):
        if word.removesuffix("'s") not in PEOPLE or clause.cues("give"):
            continue
        if word.endswith("'s") and words[i + 1 : i + 2] and words[i + 1] in _WINES:
            return True
        for k in range(i + 1, min(i + 4, len(words) - 1)):
            if words[k] in ("his", "her", "their") and (words[k + 1] in _WINES or clause.first + k + 1 in of_wine):
                return True
    return False


def _due(hearsay: Mention, clause: Clause) -> bool:
    """`should be bottled in June`: what is to be done, where `should be 1.090` is what somebody says."""
    return clause.text.words[hearsay.last - 1] == "be" and any(
        c.first == hearsay.last and c.value.form == "done" and c.value.kind != "add" for c in clause.of("cue")
    )


def _future(clause: Clause, on: datetime.date) -> bool:
    return any(m.value.iso > on.isoformat() for m in days_of(clause))
