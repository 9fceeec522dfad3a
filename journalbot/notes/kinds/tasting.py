"""Tastings: the words, as written, and the mark."""

from collections.abc import Iterator

from journalbot.language.lexicon import Mention
from journalbot.notes.clauses import Clause
from journalbot.notes.draft import Draft, Scene
from journalbot.notes.kinds.bottles import read_drinking
from journalbot.vocabulary.descriptors import INTENSIFIERS

_GLUE = {
    ",", ";", "and", "&", "+", "/", "-", "–", "—", ".", ":", "with", "but", "then", "w", "(", ")", "!", "|", "\n", "or",
    "plus", "yet", "turning", "on", "over", "under", "behind",
}
_STOP = {
    "now", "glass", "already", "more", "less", "still", "some", "lots", "of", "a", "an", "the", "it", "is", "its",
    "it's", "was", "just", "really", "bit", "touch", "very", "rather", "kinda", "kind", "all", "too", "hint", "hints",
    "little", "much", "getting", "quite", "in", "good", "way", "today", "with", "notes", "note", "tastes", "taste",
    "tasted", "like", "mostly", "slightly", "super", "nice", "lovely", "this", "that", "time", "at", "end", "maybe",
    "though", "tho", "again", "has", "have", "turned", "gone", "plenty", "big", "from", "nose", "palate", "finish",
    "on", "said", "says", "think", "i", "there", "than", "before", "are", "were", "so", "pretty", "be", "going",
    "become", "became", "know", "suppose", "guess", "mark", "score", "gave", "give", "we", "got", "smells", "out",
}
_TRIVIAL = {"ok", "good", "nice", "fine", "great", "down ok", "well", "bad", "lovely", "off", "better"}
_MAX_WORDS = 4
_WORK = ("oak_out", "stir", "rack", "filter", "press", "crush", "degas", "top_up", "punch_down")
_SMELL = {"smell", "smells", "smelled", "smelt", "stinks", "stink", "reeks", "whiff", "nose", "stank"}


def read(clause: Clause, scene: Scene) -> Iterator[Draft]:
    """A tasting: a clause that says so or gives a mark, with the descriptors of it and of those that go on from it."""
    if clause.mood in ("planned", "asked", "supposed") or (
        clause.mood == "told" and not clause.of("score", "descriptor")
    ):
        return
    if not _begins(clause, scene):
        return
    here = [clause, *_goes_on(clause, scene)]
    for part in _tasters(here):
        words = list(dict.fromkeys(w for c in part for w in _descriptors(c, scene)))
        scores = [m.value for c in part for m in c.of("score")]
        fields: dict[str, object] = {"words": words} if words else {}
        if scores:
            fields["score"], fields["out_of"] = scores[-1].score, scores[-1].out_of
        elif set(words) <= _TRIVIAL:
            continue
        yield Draft("taste", clause, _first_word(part[0]), part[-1].last, fields)


def _first_word(clause: Clause) -> int:
    """Where what is said of the taste begins."""
    said = clause.cues("taste") or clause.of("score") or clause.of("descriptor")
    return min([m.first for m in (*said, *clause.of("descriptor"))], default=clause.first)


def _tasters(clauses: list[Clause]) -> list[list[Clause]]:
    """The clauses parted where another's mark begins: `Ana 14/20 (jammy), Lorne 12.5/20 (sweet, short)`."""
    parts: list[list[Clause]] = [[]]
    for c in clauses:
        if any(x.of("score") for x in parts[-1]) and any(_initialled(m, c) for m in c.of("score")):
            parts.append([])
        parts[-1].append(c)
    return parts


def _initialled(score: Mention, clause: Clause) -> bool:
    """Whether a name or an initial stands before a mark, with no more in its clause."""
    token = clause.text.tokens[score.first - 1]
    return score.first - 1 == clause.first and token.kind == "word" and token.text[:1].isupper()


def _tasted(clause: Clause) -> bool:
    words = clause.text.words
    for c in clause.cues("taste"):
        if c.value.detail == "weak" and not clause.of("batch"):
            continue
        if words[c.first] in ("sample", "taste") and words[c.first - 1 : c.first] in (["to"], ["hydrometer"]):
            continue
        return True
    return False


def _begins(clause: Clause, scene: Scene) -> bool:
    """Whether a tasting starts in this clause: none in the sentence so far, unless of another wine."""
    if clause.of("money"):
        return False
    own = _tasted(clause) or bool(clause.of("score"))
    described = _described(clause)
    i = scene.clauses.index(clause)
    before = scene.clauses[:i]
    if _continued(clause, before, scene):
        return False
    if own:
        return bool(described or clause.of("score") or any(_described(c) for c in _goes_on(clause, scene)))
    if not described or any(w in _SMELL for w in clause.words()) or clause.joined_by in ("because", "so", "since"):
        return False
    # "kit red w burgers. cherry, kinda thin, 5/10": words after a bottle opened or filled, or of a wine named, and a
    # mark to follow
    if any(c.value.kind in _WORK and c.value.detail != "weak" and c.value.form == "done" for c in clause.of("cue")):
        return False
    drinking = [
        c
        for c in [*before[-3:], clause]
        if c.mood == "done" and any(d.kind == "drink" for d in read_drinking(c, scene))
    ]
    drunk = any(c.sentence == clause.sentence for c in drinking)
    filled = any(c.mood == "done" and c.cues("bottle") for c in [*before[-3:], clause])
    marked = any(c.of("score") for c in _goes_on(clause, scene))
    outer = [m for m in described if not any(o is not m and o.first <= m.first and m.last <= o.last for o in described)]
    listed = len(outer) + sum(len(_described(c)) for c in _goes_on(clause, scene)) >= 2
    tasted = any(_tasted(c) for c in before)
    opened = {n for c in drinking for m in c.of("batch") for n in m.value.fits}
    of_it = any(opened.intersection(m.value.fits) for m in clause.of("batch"))
    return (
        drunk
        or ((filled or bool(drinking)) and (listed or marked))
        or (marked and listed)
        or of_it
        or (tasted and (bool(clause.of("batch")) or listed))
    )


def _continued(clause: Clause, before: list[Clause], scene: Scene) -> bool:
    """Whether an earlier clause's tasting has taken this one in already."""
    return any(
        c.mood not in ("planned", "asked", "supposed") and clause in _goes_on(c, scene) and _begins(c, scene)
        for c in before[-8:]
    )


def _goes_on(clause: Clause, scene: Scene) -> list[Clause]:
    """The clauses after this one that only add words or a mark to the same tasting."""
    i = scene.clauses.index(clause)
    out: list[Clause] = []
    for c in scene.clauses[i + 1 :]:
        strange = c.of("reading", "money", "amount", "vessel", "code") or any(
            x.value.kind not in ("taste", "fermentation", "add", "oak_out", "move", "drink")
            or (
                x.value.kind in ("add", "oak_out", "move", "drink")
                and x.value.form == "done"
                and x.last - x.first > 0
                and x.value.detail != "weak"
            )
            for x in c.of("cue")
            if x.first not in {d.first for d in c.of("descriptor")}
        )
        if (strange and not c.of("score")) or c.of("batch") or c.mood in ("planned", "asked"):
            break
        if c.sentence - clause.sentence > 2 or not (
            _described(c)
            or c.of("score")
            or (c.sentence == clause.sentence and c.last - c.first <= _MAX_WORDS and c.joined_by in _GLUE)
        ):
            break
        if _tasted(c) and c.of("batch"):
            break
        out.append(c)
    while out and not (_described(out[-1]) or out[-1].of("score")):
        out.pop()
    return out


def _with_food(m: Mention, clause: Clause) -> bool:
    """`opened 2 rieslings with apple pie`: what was eaten is no taste of the wine."""
    words = clause.text.words
    i = m.first - 1
    while i > clause.first and words[i] in ("the", "a", "some", "my", "roast", "our"):
        i -= 1
    return (
        words[i] in ("with", "w", "for", "over")
        and bool(clause.cues("drink"))
        and not any(d.last == i for d in clause.of("descriptor"))
    )


def _described(clause: Clause) -> list[Mention]:
    own = clause.of("batch")
    eaten = {m.first for m in clause.of("descriptor") if _with_food(m, clause)}
    return [
        m
        for m in clause.of("descriptor")
        if m.first not in eaten
        and not (
            clause.text.words[m.first] == "off"
            and clause.text.words[m.last : m.last + 1] in (["into"], ["to"], ["the"])
        )
        and not any(b.first <= m.first < b.last for b in own)
        and not any(
            x.first <= m.first < x.last
            for x in clause.of("vessel", "material", "closure", "date")
            if x.kind != "material" or clause.of("amount")
        )
    ]


def _descriptors(clause: Clause, scene: Scene) -> list[str]:
    """The tasting words of a clause, as written, without what only shades them."""
    text = clause.text
    words = text.words
    compared = next((i for i in range(clause.first, clause.last) if words[i] == "than"), clause.last)
    skip = set(range(compared, clause.last)) | {
        i
        for m in clause.mentions
        if m.kind in ("score", "date", "time", "vessel", "number", "amount")
        or m.kind == "batch"
        or (m.kind == "cue" and m.value.kind in ("taste", "drink", "bottle", "give", "oak_out"))
        for i in range(m.first, m.last)
    }
    described = _described(clause)
    out: list[str] = []
    run: list[int] = []
    for i in range(clause.first, clause.last + 1):
        if i == clause.last or i in skip or words[i] in _GLUE or text.tokens[i].kind == "mark":
            out.extend(_phrase(run, clause, described))
            run = []
        else:
            run.append(i)
    return out


def _phrase(run: list[int], clause: Clause, described: list[Mention]) -> list[str]:
    words = clause.text.words
    while run and (words[run[0]] in _STOP or words[run[0]] in INTENSIFIERS):
        run = run[1:]
    while run and (words[run[-1]] in _STOP or words[run[-1]] in INTENSIFIERS):
        run = run[:-1]
    if not run:
        return []
    inside = [m for m in described if m.first >= run[0] and m.last <= run[-1] + 1]
    if len(run) <= _MAX_WORDS and (inside or (len(run) <= 2 and clause.last - clause.first <= _MAX_WORDS + 1)):
        return [clause.text.slice(run[0], run[-1] + 1).lower()] if inside or _plain(run, clause) else []
    long = [
        m
        for m in inside
        if not any(
            o is not m and o.first <= m.first and m.last <= o.last and o.last - o.first > m.last - m.first
            for o in inside
        )
    ]
    return [clause.text.slice(m.first, m.last).lower() for m in long]


def _plain(run: list[int], clause: Clause) -> bool:
    """Whether words in a list of descriptors may be one that no table knows: no names, no verbs."""
    return all(
        clause.text.tokens[i].kind == "word" and not clause.text.tokens[i].text[:1].isupper() for i in run
    ) and bool(clause.of("descriptor") or clause.joined_by in _GLUE)
