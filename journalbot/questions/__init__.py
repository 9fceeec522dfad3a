"""Questions in plain words, answered from the journal's entries."""

import gc
from datetime import date
from typing import TYPE_CHECKING

from journalbot.model import Answer

if TYPE_CHECKING:
    from journalbot.journal.store import Journal
    from journalbot.language.names import Names
    from journalbot.questions.query import Query
    from journalbot.questions.reading import Understood
    from journalbot.questions.scene import Scene

__all__ = ["ask"]

_MENDED = 4  # misspelt words that a question may have


def ask(
    question: str, today: date, journal: "Journal", names: "Names", before: "Query | None" = None
) -> "tuple[Answer, Query | None]":
    """Answer a question on a day. `before` is the last question's Query: a follow-up keeps its parts.

    The Query comes back for the next follow-up; None where the question was not understood.
    """
    collecting = gc.isenabled()
    gc.disable()  # an answer makes nothing that refers to itself; looking for that takes half the time of a long one
    try:
        return _answer(question, today, journal, names, before)
    finally:
        if collecting:
            gc.enable()


def _answer(
    question: str, today: date, journal: "Journal", names: "Names", before: "Query | None"
) -> "tuple[Answer, Query | None]":
    from journalbot.questions.answers import answer
    from journalbot.questions.cautioned import cautions_for
    from journalbot.questions.helping import not_understood, unknown_batch
    from journalbot.questions.query import describe
    from journalbot.questions.scene import Scene

    scene = Scene(journal, journal.cellar(), names, journal.settings, today.isoformat())
    typed, read, changed = _understood(question, today, scene, before)
    if read.query is None:
        return not_understood(question, read, scene), None
    if read.unknown and not read.query.batches.numbers:
        return Answer(question, describe(read.query), False, unknown_batch(read.unknown, scene)), None
    reply = answer(question, read.query, scene, one=read.one, said=read.said)
    query = read.query
    if changed and typed.query and not (reply.found or reply.ask or typed.unknown or typed.unused):
        read, changed, query = typed, {}, typed.query  # what was put right gives nothing: then as it was typed
        reply = answer(question, typed.query, scene, one=read.one, said=read.said)
    if reply.found:
        keys, warned = cautions_for(query, journal, today)
        reply = reply._replace(answer="\n".join((reply.answer, *warned)), cautions=keys)
    if changed and (reply.found or reply.ask):
        mended = ", ".join(f"“{old}” as “{new}”" for old, new in changed.items())
        reply = reply._replace(answer=f"{reply.answer}\n(I read {mended}.)")
    if read.unused and reply.found:
        passed = ", ".join(f"“{w}”" for w in read.unused)
        reply = reply._replace(answer=f"{reply.answer}\n(I passed over {passed}.)")
    if read.unknown:
        reply = reply._replace(answer=f"{reply.answer}\n({unknown_batch(read.unknown, scene)})")
    return reply, query


def _understood(
    question: str, today: date, scene: "Scene", before: "Query | None"
) -> "tuple[Understood, Understood, dict[str, str]]":
    """The question as it was typed, as it must be meant, and the misspelt words of it that were put right."""
    from journalbot.questions.helping import search_instead
    from journalbot.questions.reading import read_question
    from journalbot.questions.respelling import doubtful_words, respelled, tasted_words

    def read_as(text: str, tasted: frozenset[str] = frozenset()) -> "Understood":
        return read_question(text, today, scene.names, scene.cellar, scene.settings, before, tasted)

    typed = read_as(question)
    if tasted := tasted_words(typed, scene.source):
        typed = read_as(question, tasted)
    read, again, changed = typed, question, dict[str, str]()
    while (doubtful := doubtful_words(read, scene.source, scene.names)) and len(changed) < _MENDED:
        again, more = respelled(again, doubtful, scene.names)
        if not more:
            break
        read, changed = read_as(again), changed | more
    if changed and read.query and not (read.unknown or read.unused):
        return typed, read, changed
    return typed, search_instead(question, typed, scene), {}
