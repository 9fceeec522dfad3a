"""Where a question was not understood: the words that stopped it, and near questions that would be answered."""

from journalbot.language.tokens import tokenize
from journalbot.model import Answer
from journalbot.questions.general import ANSWER
from journalbot.questions.measures import MEASURES
from journalbot.questions.query import Batches, Query, What, describe
from journalbot.questions.reading import Understood
from journalbot.questions.says import join
from journalbot.questions.scene import Scene
from journalbot.questions.whom import label_of

_SHOWN = 12  # batches named where one asked for is not there
_WHETHER = frozenset(("has", "have", "did", "is", "was", "were", "are", "any", "anything", "do", "does"))
_ANY = frozenset(("anything", "any", "ever", "anywhere"))
_USUAL = ("yeast", "story", "bottles left")


def not_understood(question: str, read: Understood, scene: Scene) -> Answer:
    """An answer that gives none, and says why."""
    if read.general:
        return Answer(question, None, False, ANSWER)
    stopped = join([f"“{w}”" for w in read.stopped_by[:5]])
    why = f"I did not understand {stopped} in that question." if stopped else "I did not understand that question."
    near = [
        MEASURES[n]
        for n in (read.near or _USUAL)
        if MEASURES[n].scope == "batch" and "{" not in MEASURES[n].phrase.partition("[")[0]
    ]
    numbers = scene.cellar.last_spoken
    batch = scene.cellar.batches.get(numbers) if numbers is not None else None
    if batch is None:
        return Answer(question, None, False, why)
    whose = Batches((batch.number,), (label_of(batch),))
    tries = [describe(Query((What(m.name),), whose)).rstrip(".") for m in near[:3]]
    return Answer(question, None, False, f"{why} It would answer: {'; '.join(tries)}." if tries else why)


def search_instead(question: str, read: Understood, scene: Scene) -> Understood:
    """What was read; or a search for the words that stopped it, where it asks whether any note tells of them (`has
    anything gone to vinegar`) and some do.
    """
    asked = [t.low for t in tokenize(question)]
    if read.query or read.general or read.said or not read.stopped_by or not asked:
        return read
    wanted = " ".join(read.stopped_by).lower()
    bare = wanted == " ".join(w for w in asked if w.isalnum())  # "petrol?"
    if not (bare or (asked[0] in _WHETHER and _ANY & set(asked))):
        return read
    if not scene.source.search(wanted, limit=1, prefix=False):
        return read
    return read._replace(query=Query((What("search", (("words", wanted),)),)))


def unknown_batch(said: str, scene: Scene) -> str:
    """That there is no batch called so; where it is spoken of all the same, and which batches there are."""
    spoken = [f"note {found.note}" for found in scene.source.search(said, limit=3)]
    also = f" It is only spoken of in {join(spoken)}." if spoken else ""
    there = [label_of(batch) for _, batch in sorted(scene.cellar.batches.items())]
    more = f" and {len(there) - _SHOWN} more" if len(there) > _SHOWN else ""
    return f"The journal has no batch called “{said}”.{also} It has {', '.join(there[:_SHOWN]) or 'none yet'}{more}."
