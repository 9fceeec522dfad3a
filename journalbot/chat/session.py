"""The terminal session. The only importer of prompt_toolkit; it moves text in and out and knows nothing of wine."""

import datetime
import os
import sys
import threading
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from journalbot.assistant import Assistant
from journalbot.chat.greeting import greeting
from journalbot.errors import JournalbotError
from journalbot.screen import harmless
from journalbot.turns import sayings

if TYPE_CHECKING:
    from prompt_toolkit import PromptSession
    from prompt_toolkit.history import History
    from prompt_toolkit.input import Input
    from prompt_toolkit.output import Output

PROMPT = "> "


def converse(
    assistant: Assistant,
    today: Callable[[], datetime.date] = datetime.date.today,
    *,
    input: "Input | None" = None,
    output: "Output | None" = None,
    say: Callable[[str], None] = print,
) -> int:
    """Prompt and reply until Ctrl-D or a goodbye; 0. `input` and `output` stand in for the terminal in tests."""
    say(harmless(greeting(assistant, today())))
    session = _session(assistant, input, output)
    threading.Thread(target=_warm_up, daemon=True).start()
    while True:
        try:
            text = session.prompt(PROMPT)
        except KeyboardInterrupt:
            continue  # drops the line, as in a shell
        except EOFError:
            break
        if not text.strip():
            continue
        if sayings.plain(text) in sayings.GOODBYE:
            break
        try:
            say(harmless(assistant.turn(text, today()).text))
        except JournalbotError as error:
            say(harmless(f"Not kept: {error}"))
        except KeyboardInterrupt:
            say("Stopped; nothing of that line was kept.")
    say("Goodbye.")
    return 0


def _session(assistant: Assistant, input: "Input | None", output: "Output | None") -> "PromptSession[str]":
    from prompt_toolkit import PromptSession
    from prompt_toolkit.auto_suggest import AutoSuggestFromHistory

    from journalbot.chat.completion import Completions

    return PromptSession(
        history=_history(assistant.journal.path),
        completer=Completions(assistant.journal),
        complete_while_typing=False,
        auto_suggest=AutoSuggestFromHistory(),
        enable_history_search=True,
        input=input,
        output=output,
    )


def _history(journal: Path) -> "History":
    """Lines typed before, in a file beside the journal that only its owner can read; else in memory."""
    from prompt_toolkit.history import FileHistory, InMemoryHistory

    path = journal.with_name(f"{journal.name}.history")
    try:
        os.close(os.open(path, os.O_CREAT | os.O_RDWR, 0o600))
    except OSError as error:
        print(
            harmless(f"{path} cannot be written ({error.strerror}), so lines typed are not remembered."),
            file=sys.stderr,
        )
        return InMemoryHistory()
    return FileHistory(str(path))


def _warm_up() -> None:
    """Load what a first note or question may need while the person types."""
    import dateparser
    import rapidfuzz.distance
    import rapidfuzz.process

    import journalbot.notes.reader
    import journalbot.questions  # noqa: F401

    del dateparser, rapidfuzz
