"""The cellars that the tables of notes are read against."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from .telling import Cellars

MISREAD = Path(__file__).with_name("misread.txt")


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Sentences that the reader is known to misread are listed in `misread.txt`; one that is mended must leave it."""
    known = set(MISREAD.read_text(encoding="utf-8").splitlines())
    for item in items:
        if item.nodeid in known:
            item.add_marker(pytest.mark.xfail(reason="known to be misread", strict=True))


@pytest.fixture(scope="session")
def cellars(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Cellars]:
    """Every cellar, each a real journal; notes are read, not filed."""
    opened = Cellars(tmp_path_factory.mktemp("cellars"))
    yield opened
    opened.close()
