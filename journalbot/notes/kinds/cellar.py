"""Cellar work: acts without fields, racking, moving, topping up, airlocks, blending."""

from collections.abc import Iterator

from journalbot.language.lexicon import Mention
from journalbot.notes.clauses import Clause
from journalbot.notes.dating import each_day
from journalbot.notes.draft import Draft, Scene

_PLAIN = ("crush", "press", "degas", "filter", "stir", "chill", "punch_down")
_NOT_PRESSED = {"bottle", "button", "pot", "garlic"}
_TABLET_REACH = 3  # words between "crushed" and the tablets that were


def read_acts(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """Crushing, pressing, degassing, filtering, stirring the lees, chilling, cap work."""
    if not clause.done:
        return
    seen: set[str] = set()
    for cue in clause.cues(*_PLAIN):
        kind = cue.value.kind
        if kind in seen or not _act_meant(cue, clause):
            continue
        seen.add(kind)
        if kind == "punch_down":
            yield from _punch_down(cue, clause, scene)
        else:
            yield Draft(kind, clause, cue.first, cue.last)
    if "press" not in seen and _run_off_fruit(clause, scene):
        yield Draft("press", clause, clause.first, clause.last)
    if not seen and (carried := _carried_times(clause, scene)):
        yield carried


def _run_off_fruit(clause: Clause, scene: Scene) -> bool:
    """`ran the parsnip off into demijohn 3`: wine taken off its fruit, where that was not pressed before."""
    words = clause.words()
    ran = ("ran" in words or "run" in words or "strained" in words) and bool(clause.of("vessel"))
    off = "off" in words or "strained" in words
    fits = {n for m in clause.of("batch") for n in m.value.fits}
    able = [scene.cellar.batches[n] for n in fits if scene.cellar.batches[n].under_way]
    fruit = len(able) == 1 and not any(
        w in phrase.lower() for phrase in able[0].fruit for w in ("juice", "kit", "honey", "cider", "must")
    )
    return ran and off and fruit and able[0].pressed is None and not clause.of("lees")


def _act_meant(cue: Mention, clause: Clause) -> bool:
    words = clause.text.words
    kind, detail, form = cue.value.kind, cue.value.detail, cue.value.form
    before = words[cue.first - 1] if cue.first else ""
    if kind == "stir" and detail == "lees":
        return bool(clause.of("lees")) and not any(
            m.first < cue.first and words[m.first - 2 : m.first] == ["off", "the"] for m in clause.of("lees")
        )
    if kind == "crush":
        campden = any(
            m.value == "campden tablet" and (abs(m.first - cue.last) <= _TABLET_REACH or abs(cue.first - m.last) <= 2)
            for m in clause.of("material")
        )
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
        return not clause.has(*_NOT_PRESSED) and not (form == "base" and clause.of("money"))
    if kind == "filter" and detail == "through":
        return clause.has("through", "thru", "thro")
    if kind == "filter":
        return form == "done" or (before not in ("the", "a", "plate", "new", "my") and not clause.of("money"))
    if kind == "degas":
        return True
    if kind == "chill":
        return form != "base" or before in ("to", "for", "cold", "") or cue.last - cue.first > 1
    if kind == "punch_down":
        if words[cue.last : cue.last + 1] == ["up"]:
            return False  # "lid pushed up"
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
    days = {m.first: m.value.iso for m in clause.of("date")}
    told = [(m, days[m.last]) for m in clause.of("times") if m.last in days]
    if len(told) > 1:  # "3x yesterday and 2x today"
        for m, day in told:
            yield Draft("punch_down", clause, m.first, m.last, {"times": int(m.value.value)}, dates=(day,))
        return
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
    punched = any(clause.text.words[t.last : t.last + 1] in (["punch"], ["punches"], ["plunge"]) for t in times)
    if (earlier or punched) and times and not clause.of("cue"):
        return Draft("punch_down", clause, times[0].first, times[0].last, {"times": int(times[0].value.value)})
    alone = [n for n in clause.of("number") if n.first == clause.first and n.value.style in ("figure", "words")]
    if earlier and alone and clause.own_date and clause.own_date.first == alone[0].last and not clause.of("cue"):
        return Draft("punch_down", clause, alone[0].first, alone[0].last, {"times": int(alone[0].value.value)})
    return None
