"""How a clause is meant, and when: done, planned, denied, supposed, told by others or asked; its date and time."""

import datetime
import itertools
import re

from journalbot.language.dates import DateMention
from journalbot.language.lexicon import Mention
from journalbot.notes.clauses import Clause
from journalbot.vocabulary.people import PEOPLE

_PAST = {"had", "was", "were", "stood", "went", "got"}
_OPENING = 3  # how far into a clause an "if" still governs it
_CARRIED = {",", "and", "&", "+", "then", "-", "–", "—", "or", "", "/", ":", "(", "plus", "also"}
_WEEKDAYS = {"mon", "tue", "wed", "thu", "fri", "sat", "sun"}
_TOLD_LATE = {
    "noted", "note", "wrote", "write", "log", "logged", "record", "recorded", "mention", "mentioned", "jot", "jotted",
    "say", "tell", "told",
}
_SAME_DAY = re.compile(r"\b(?:the same|that(?: same)?) (?:day|evening|night|afternoon|morning)\b")
_DAY_BEFORE = re.compile(r"\bthe (?:day|night|evening) before\b(?! yesterday)")
_STARTED = re.compile(r"\b(?:started|began) (?:the|a|an|my|our|another|batch|this year's)\b")
_EACH_DAY = (
    "both days", "each day", "every day", "each of the", "both times", "all three days", "daily", "each time",
    "both nights",
)


_SAYING = {"says", "said", "reckons", "thinks", "tells", "told", "claims", "swears"}
_WINES = {"wine", "wines", "mead", "cider", "batch", "batches", "carboy", "demijohn", "barrel"}
_AGAIN = {"today", "again", "ago", "same", "now"}
_ADDING = {"which", "where", "who", "because", "since"}  # words that lead an addition to what is told
PRESENT = {"now", "today", "tonight", "is", "are", "stands", "it's", "its", "'s", "currently", "am", "i'm"}


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


_AFTER_FEAST = {
    "and", "i", "we", "with", "at", "was", "is", "came", "so", "then", "but", "the", "opened", "drank", "day",
}
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
    return any(m.value.iso > on.isoformat() for m in _days(clause))


def _days(clause: Clause) -> list[Mention]:
    """The dates of a clause, without lengths of time after a "not" (`has not shifted in ten days`)."""
    words = clause.text.words
    return [
        m
        for m in clause.of("date")
        if not _of_old_figure(m, clause) and not _adjective(m, words)
        if words[m.first - 1] not in ("until", "till") or clause.mood == "planned" or m.first == clause.first
        if words[m.first] != "in"
        or not any(w in ("not", "never", "hardly") or w.endswith("n't") for w in words[clause.first : m.first])
        or len(m.value.iso) < len("2024-01-01")
    ]


def _adjective(day: Mention, words: list[str]) -> bool:
    """`Christmas rounds`, `yesterday's juice has settled`: a day that only says which of what follows it."""
    after = words[day.last] if day.last < len(words) else ""
    if words[day.last - 1].endswith("'s"):
        return after in ("juice", "must", "yeast", "wine", "grapes", "fruit", "note", "reading", "figure", "mistake")
    feast = day.last - day.first == 1 and words[day.first] in (
        "christmas", "xmas", "easter", "thanksgiving", "halloween",
    )
    return (
        feast
        and after.isalpha()
        and after not in _AFTER_FEAST
        and words[day.first - 1] not in ("at", "for", "on", "since")
    )


def _of_old_figure(day: Mention, clause: Clause) -> bool:
    """`1.000, down from 1.004 last week`: the day of the figure told again, not of the new one."""
    words = clause.text.words
    readings = clause.of("reading")
    return len(readings) > 1 and any(
        r.last == day.first and words[r.first - 1] in ("from", "was") for r in readings[1:]
    )


def set_dates(clauses: list[Clause], on: datetime.date) -> None:
    """Give every clause the date it speaks of: its own, that of the clause it goes on from, or the note's."""
    today = on.isoformat()
    # A date that opens a line ("yesterday: …") holds until another is named or the line ends.
    heading: str | None = None
    told: Clause | None = None  # the clause whose day the sentences after it go on from
    main: Clause | None = None  # the clause before, but for one that only adds to it ("which I picked on Friday")
    for clause in clauses:
        if main and "\n" in clause.text.words[main.last : clause.first]:
            heading = told = None
        own = [_as_of_today(m.value, clause, today) for m in _days(clause)]
        clause.time = next((t.value.time for t in clause.of("time")), None) or next(
            (d.time for d in own if d.time), None
        )
        if (
            own
            and clause.of("reading")
            and clause.text.words[own[0].first - 1] == "since"
            and own[0].first > clause.first
        ):
            own = []  # "still 1.010 since Monday" is read now
        clause.own_date = own[0] if own else None
        opens = main is None or main.sentence != clause.sentence
        if own:
            clause.date = own[0].iso if clause.mood != "planned" else today
            if _heads(clause, own[0]):
                heading = clause.date
        elif _DAY_BEFORE.search(" ".join(clause.words())) and (told or main):
            clause.date = _previous_day((told or main or clause).date)
        elif _SAME_DAY.search(" ".join(clause.words())) and (told or main):
            clause.date = (told or main or clause).date
        elif main and not opens:
            apart = _of_now(clause) or _since(main) or _by_now(clause, main)
            clause.date = today if clause.mood == "planned" or apart else main.date
            told = None if apart else told
        elif (told and _goes_on(clause, told, clauses, today)) or (main and _carries_on(clause, main)):
            clause.date = (told or main or clause).date
        else:
            clause.date = heading or today
            if (
                opens
                and clause.of("cue", "reading", "batch", "money")
                and not (told and _same_wine(clause, told, clauses))
            ):
                told = None
        if not opens and _adds(clause):
            continue
        if own and clause.mood == "done":
            told = clause
        main = clause
    for clause, after in itertools.pairwise(clauses):
        # "the apple is dry: 0.996 on Thursday": the day stands with the figure that shows it
        if (
            after.own_date
            and not clause.own_date
            and clause.date == today
            and clause.sentence == after.sentence
            and clause.cues("fermentation")
            and (after.of("reading") or not after.of("cue", "batch"))
            and not _AGAIN.intersection(w for c in clauses if c.sentence == clause.sentence for w in c.words())
            and sum(bool(c.own_date and c.of("reading")) for c in clauses if c.sentence == clause.sentence) <= 1
        ):
            clause.date = after.date
        # "120 corks R264 and 1 corker R350 yesterday": the day stands with the last of what was bought
        if (
            after.own_date
            and not clause.own_date
            and clause.sentence == after.sentence
            and clause.of("money")
            and after.of("money")
        ):
            clause.date = after.date


def _as_of_today(date: DateMention, clause: Clause, today: str) -> DateMention:
    """ "This week", "in July" said in July: a stretch that holds the day of the note means that day."""
    words = clause.text.words[date.first : date.last]
    now = words[0] == "this" or len(words) == 1 or (len(words) == 2 and words[0] == "in")
    return date._replace(iso=today) if today.startswith(date.iso) and now else date


def _adds(clause: Clause) -> bool:
    """`…, which I picked on Friday`, `the honey I bought yesterday`: a clause that only says more of what stands before
    it.
    """
    words = clause.text.words
    before = words[clause.first - 1]
    unmarked = words[clause.first] in ("i", "we") and clause.joined_by == "," and before.isalpha()
    earlier = clause.has("had") and clause.own_date is not None  # "and I had picked on Friday"
    return clause.joined_by in _ADDING or ((unmarked or earlier) and not clause.of("reading"))


def _same_wine(clause: Clause, told: Clause, clauses: list[Clause]) -> bool:
    """Whether a clause names only wines that the dated sentence named."""
    sentence = {n for c in clauses if c.sentence == told.sentence for m in c.of("batch") for n in m.value.fits}
    here = [set(m.value.fits) for m in clause.of("batch")]
    return bool(here) and all(fits & sentence for fits in here)


def _acts(clause: Clause) -> bool:
    """Whether a clause tells of work on wine, not only of bottles that went."""
    return any(c.value.detail != "weak" and c.value.kind not in ("give", "drink", "taste") for c in clause.of("cue"))


def _perfect(clause: Clause) -> bool:
    """`I have put a bottle against the drum`, `has been stirred`: what is so by now."""
    words = clause.text.words
    done = {c.first for c in clause.of("cue") if c.value.form == "done"}
    return any(
        words[i] in ("have", "has", "i've", "we've") and (i + 1 in done or words[i + 1 : i + 2] == ["been"])
        for i in range(clause.first, clause.last)
    )


def _previous_day(iso: str) -> str:
    """The day before a day; a month or a year as it is."""
    if len(iso) < len("2024-01-01"):
        return iso
    return (datetime.date.fromisoformat(iso) - datetime.timedelta(days=1)).isoformat()


def _of_now(clause: Clause) -> bool:
    """Whether a clause goes over from what was told to what is: `and now 1.006`, `still bubbling`."""
    return clause.has("still") or (clause.has("now", "rn", "currently", "atm") and bool(clause.of("reading")))


def _by_now(clause: Clause, main: Clause) -> bool:
    """`got going on Tuesday and is already down to 1.058`: what began that day, and how it stands."""
    return bool(main.own_date and main.cues("fermentation") and clause.of("reading")) and clause.has("is", "'s", "it's")


def _since(clause: Clause) -> bool:
    """Whether a clause's day is only where something began (`fermenting since Wednesday and stands at 1.055`)."""
    first = clause.own_date.first if clause.own_date else 0
    return clause.text.words[max(0, first - 1)] in ("since", "until") and first > 0


def _goes_on(clause: Clause, told: Clause, clauses: list[Clause], today: str) -> bool:
    """`Pressed it yesterday. It was 1.042 by then.`: a sentence without a day of its own tells on of the day before it,
    unless it speaks of now, of another wine, or follows what came by itself (`started on Thursday. 1.072`).
    """
    if told.date == today:
        return False
    sentence = [c for c in clauses if c.sentence == told.sentence]
    begun = any(m.value.new is not None for c in sentence for m in c.of("batch")) or any(
        c.cues("start") or _STARTED.search(" ".join(c.words())) for c in sentence
    )
    came = any(
        q.value.detail in ("started", "restarted") and not begun for c in sentence for q in c.cues("fermentation")
    ) or any(c.value.detail != "weak" and not begun for c in told.cues("purchase"))
    present = (
        not PRESENT.isdisjoint(clause.words()) or (clause.has("still") and not clause.has("was")) or _perfect(clause)
    )
    other = clause.of("batch") and any(c.of("batch", "reading") or _acts(c) for c in sentence)
    if begun and clause.words()[0] in ("i", "we", "then"):
        other = False  # "Yesterday I started batch 7. I blended 10 litres of batch 5 into it"
    return (
        clause.mood == "done"
        and not (came or present or other)
        and not clause.of("time")
        and not (clause.of("money") and not clause.has("cost"))
        and not clause.has("room")
        and not (clause.of("place") and not clause.of("cue", "batch", "pronouns"))
    )


def _carries_on(clause: Clause, previous: Clause) -> bool:
    """A sentence that only goes on with the act before it (`pressed it last night. 6 gal to carboy 1`): wine moved,
    with no verb, batch or reading of its own.
    """
    strong = [c for c in clause.of("cue") if c.value.detail != "weak" and c.value.kind != "vessel"]
    return (
        previous.mood == "done"
        and not strong
        and not clause.of("batch", "reading", "score")
        and bool(clause.of("vessel"))
        and bool(clause.of("amount"))
    )


def _heads(clause: Clause, d: DateMention) -> bool:
    words = clause.text.words
    nxt = words[d.last] if d.last < len(words) else ""
    alone = all(
        any(m.first <= i < m.last for m in clause.of("date", "batch")) for i in range(clause.first, clause.last)
    )
    return (d.first == clause.first and nxt in (":", "-", "–", "—")) or (alone and nxt in (".", "\n", ","))


def each_day(clause: Clause) -> bool:
    """Whether the clause says something of every day that the note has named so far (`3 punchdowns both days`)."""
    said = " ".join(clause.words())
    return any(p in said for p in _EACH_DAY)
