"""The talk with the person: line editing in a terminal, else one reply for each line of input. It holds no meaning."""

import sys

from journalbot.assistant import Assistant
from journalbot.journal.store import Journal


def talk(journal: Journal) -> int:
    """Talk until the person leaves or the input ends; the exit status."""
    assistant = Assistant(journal)
    if sys.stdin.isatty() and sys.stdout.isatty():
        from journalbot.chat.session import converse

        return converse(assistant)
    from journalbot.chat.piped import answer_lines

    return answer_lines(assistant, sys.stdin, sys.stdout)
