"""What a question asks, as a typed value: what, of which batches, when, and how it is put together.

The parts combine freely. `describe` says a query in one plain sentence: the `understood_as` of an answer.
"""

from typing import NamedTuple

from journalbot.questions.says import METHODS, PARTS, RELATIONS, TESTS, day_said, join

_NAMED = 8  # batches named in a sentence


class What(NamedTuple):
    """One thing asked for: a measure (see `measures`), narrowed by `of` (material, vessel, person, words …)."""

    measure: str
    of: tuple[tuple[str, str], ...] = ()
    part: str = ""  # the side of it that is asked: "date", "amount", "times", "done"; "" for the measure itself

    def get(self, name: str) -> str:
        """What narrows it by that name; "" where nothing does."""
        return next((value for key, value in self.of if key == name), "")


class Condition(NamedTuple):
    """What must hold of a batch: that its facts of a measure exist, are lacking, or compare with a value."""

    what: What
    test: str = "some"  # "some", "none", "over", "under", "at least", "at most", "exactly"
    value: float = 0.0
    unit: str = ""
    method: str = ""  # how the batch's facts come to the one value compared: "last", "mean", "count" …
    since: str = ""  # of its own days, where these are not the question's: "started in 2024 and oaked"
    until: str = ""


class Batches(NamedTuple):
    """Which batches: those of these numbers, or all that fit the description; `every` where each answers for itself."""

    numbers: tuple[int, ...] = ()
    labels: tuple[str, ...] = ()  # how each of `numbers` is called in a sentence
    every: bool = False
    colours: tuple[str, ...] = ()
    years: tuple[int, ...] = ()
    state: str = ""  # "bottled", "under way", "fermenting", "ended"
    vessel: str = ""  # what is, or was at the time, in this vessel
    conditions: tuple[Condition, ...] = ()

    @property
    def described(self) -> bool:
        """Whether something other than numbers says which batches."""
        return bool(self.colours or self.years or self.state or self.conditions)


class When(NamedTuple):
    """The days meant: from `since` to `until` (ISO, either may be open), or those of an act (`anchor`)."""

    since: str = ""
    until: str = ""
    anchor: str = ""  # the measure of an act
    relation: str = ""  # to the anchor: "at", "before", "after", or the span around it: "week", "month", "year"
    of: Batches = Batches()  # whose act; none: the batch's own
    narrow: tuple[tuple[str, str], ...] = ()  # which act of that measure: the adding of this material

    def __bool__(self) -> bool:
        return bool(self.since or self.until or self.anchor)


class Query(NamedTuple):
    """A question, understood."""

    whats: tuple[What, ...]
    batches: Batches = Batches()
    when: When = When()
    within: str = ""  # how the facts of one batch are brought together: "last", "first", "mean", "count" …
    over: str = ""  # how those of all batches are: "most", "least", "mean", "sum", "count", "compare", "list"
    skip: int = 0  # with "last" and "first": how many to pass over ("the one before")
    claim: bool = False  # whether the first of two batches is the one that has the most, or the least
    by: str = ""  # "year" or "month": facts told by the period they fall in
    show: str = ""  # "notes": the notes that the answer rests on, instead of the answer; "plot": a drawing of it


def describe(query: Query) -> str:
    """One plain sentence that says how a question was read."""
    from journalbot.questions.measures import MEASURES

    if query.show == "notes":
        return f"The notes behind: {describe(query._replace(show=''))}"
    if query.over == "list" and not query.whats:
        return _sentence(f"which batches there are{_which(query.batches, lead=' that ')}{_when(query.when)}")
    if query.over == "count" and not query.whats:
        return _sentence(f"how many batches there are{_which(query.batches, lead=' that ')}{_when(query.when)}")
    subject = join([_what(w, MEASURES[w.measure].phrase) for w in query.whats])
    if any(MEASURES[w.measure].scope == "none" for w in query.whats):
        whose = f", {join(query.batches.labels)}" if query.batches.labels else ""
        return _sentence(f"{subject}{whose}{_when(query.when)}")
    part = query.whats[0].part
    way = METHODS.get(query.within, "") or METHODS.get(query.over, "") if part not in ("times", "done") else ""
    if way and query.within in METHODS and query.over in METHODS and query.within != query.over and METHODS[query.over]:
        way = (
            f"{METHODS[query.over]}, by batch, of {METHODS[query.within]}"
            if METHODS[query.within]
            else METHODS[query.over]
        )
    if query.over == "rank":
        way = f"the order of batches by {METHODS.get(query.within, '')}".strip()
    if query.skip:
        way += f" but {query.skip}"
    if query.claim:
        way = f"whether {query.batches.labels[0]} has {way}"
    head = PARTS[part].format(f"{way} {subject}".strip()) if part else f"{way} {subject}".strip()
    by = f", by {query.by}" if query.by else ""
    drawn = ", drawn" if query.show == "plot" else ""
    return _sentence(f"{head}{by}{drawn}{_of(query.batches)}{_when(query.when)}")


def _sentence(text: str) -> str:
    return (text if text[1:2].isupper() else text[0].upper() + text[1:]) + "."


def _what(what: What, phrase: str) -> str:
    said = phrase
    for key, value in what.of:
        if key in ("late", "all"):
            continue
        slot = "{" + key + "}"
        said = (
            said.replace(slot, value) if slot in said else f"{said}{f' in {value}' if key == 'unit' else f' ({value})'}"
        )
    while "[" in said:  # a part of the phrase that stands only where what it holds is given
        before, _, rest = said.partition("[")
        inner, _, after = rest.partition("]")
        said = before + ("" if "{" in inner else inner) + after
    return said


def _of(batches: Batches) -> str:
    if batches.vessel:
        return f", of the wine in {batches.vessel}"
    if batches.numbers and not batches.described:
        return f", {'each of ' if batches.every and len(batches.numbers) > 1 else ''}{_labels(batches)}"
    which = _which(batches, lead=" ")
    return f", of all batches{which}" if which or batches.every else ", over all batches"


def _labels(batches: Batches) -> str:
    """The batches by name; of many the first few, and how many more."""
    more = len(batches.labels) - _NAMED
    return join(batches.labels if more <= 1 else (*batches.labels[:_NAMED], f"{more} more"))


def which_said(batches: Batches) -> str:
    """What is said of the batches, as it stands after "that"."""
    return _which(batches, lead=" ").removeprefix(" that ")


def _which(batches: Batches, lead: str) -> str:
    parts = []
    if batches.numbers:
        parts.append(f"are among {_labels(batches)}")
    if batches.colours:
        parts.append(f"are {join(batches.colours, 'or')}")
    if batches.years:
        parts.append(f"are from {join([str(y) for y in batches.years], 'or')}")
    if batches.state:
        parts.append(f"are {batches.state}")
    parts += [condition_said(c) for c in batches.conditions]
    return (lead if lead != " " else " that ") + join(parts) if parts else ""


def condition_said(c: Condition) -> str:
    """A condition as it stands after "that"."""
    from journalbot.questions.measures import MEASURES

    what = _what(What(c.what.measure, c.what.of), MEASURES[c.what.measure].phrase) + _when(When(c.since, c.until))
    if c.test == "none":
        return f"have no record of {what}"
    if c.test == "some":
        return f"have a record of {what}"
    way = METHODS.get(c.method, "")
    unit = "" if c.unit in ("SG", "pH") else c.unit if c.unit.startswith("/") else f" {c.unit}"
    return f"have {way} {what} {TESTS[c.test]} {c.value:g}{unit}".replace("  ", " ").strip()


def _when(when: When) -> str:
    if not when:
        return ""
    if when.anchor:
        from journalbot.questions.measures import MEASURES

        whose = f" of {join(when.of.labels)}" if when.of.labels else ""
        return (
            f", {RELATIONS[when.relation]} {_what(What(when.anchor, when.narrow), MEASURES[when.anchor].phrase)}{whose}"
        )
    if when.since and when.until:
        return (
            f", on {day_said(when.since)}"
            if when.since == when.until
            else f", from {day_said(when.since)} to {day_said(when.until)}"
        )
    return f", since {day_said(when.since)}" if when.since else f", until {day_said(when.until)}"
