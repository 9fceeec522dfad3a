"""A journal in a real file, new for each test."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from journalbot.journal.store import Journal


@pytest.fixture
def journal(tmp_path: Path) -> Iterator[Journal]:
    with Journal.open(tmp_path / "cellar.db") as opened:
        yield opened
        assert opened.check() == []
