"""The demo: an invented cellar's notebook, filed in a journal that is thrown away afterwards."""

import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from journalbot.assistant import Assistant
from journalbot.errors import JournalError
from journalbot.journal.store import Journal

NOTEBOOK = Path(__file__).parent.parent / "demo.jsonl"


@contextmanager
def demo_journal() -> Iterator[Journal]:
    """A journal holding the demo notebook, in a folder that is removed on leaving."""
    if not NOTEBOOK.is_file():
        raise JournalError(f"this copy of the program lacks its demo notebook ({NOTEBOOK.name}); install it again.")
    with (
        tempfile.TemporaryDirectory(prefix="journalbot-demo-") as folder,
        Journal.open(Path(folder) / "demo.db") as journal,
        NOTEBOOK.open(encoding="utf-8") as lines,
    ):
        for _ in Assistant(journal).import_lines(lines):
            pass
        yield journal
