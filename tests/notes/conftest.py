"""The cellars that the tables of notes are read against."""

from collections.abc import Iterator

import pytest

from .telling import Cellars


@pytest.fixture(scope="session")
def cellars(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Cellars]:
    """Every cellar, each a real journal; notes are read, not filed."""
    opened = Cellars(tmp_path_factory.mktemp("cellars"))
    yield opened
    opened.close()
