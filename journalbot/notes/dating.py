"""The day that each clause of a note speaks of: its own, that of what it goes on from, or the note's."""

import datetime
import itertools
import re

from journalbot.language.dates import DateMention
from journalbot.language.lexicon import Mention
from journalbot.notes.clauses import Clause

_SAME_DAY = re.compile(r"\b(?:the same|that(?: same)?) (?:day|evening|night|afternoon|morning)\b")
_DAY_BEFORE = re.compile(r"\bthe (?:day|night|evening) before\b(?! yesterday)")
_STARTED = re.compile(r"\b(?:started|began) (?:the|a|an|my|our|another|batch|this year's)\b")
_EACH_DAY = (
    "both days", "each day", "every day", "each of the", "both times", "all three days", "daily", "each time",
    "both nights",
)


_AGAIN = {"today", "again", "ago", "same", "now"}
_ADDING = {"which", "where", "who", "because", "since"}  # words that lead an addition to what is told
PRESENT = {"now", "today", "tonight", "is", "are", "stands", "it's", "its", "'s", "currently", "am", "i'm"}
_AFTER_FEAST = {
    "and", "i", "we", "with", "at", "was", "is", "came", "so", "then", "but", "the", "opened", "drank", "day",
}


def days_of(clause: Clause) -> list[Mention]:
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
        own = [_as_of_today(m.value, clause, today) for m in days_of(clause)]
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
