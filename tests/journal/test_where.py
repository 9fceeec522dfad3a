"""Where the journal is looked for."""

from pathlib import Path

import pytest

from journalbot.errors import JournalError
from journalbot.journal.where import VARIABLE, data_folder, journal_path


def test_what_is_given_comes_before_the_variable_and_that_before_the_default(tmp_path: Path) -> None:
    environ = {"HOME": str(tmp_path), VARIABLE: str(tmp_path / "mine.db")}
    assert journal_path("other.db", environ) == Path("other.db")
    assert journal_path(None, environ) == tmp_path / "mine.db"
    del environ[VARIABLE]
    default = journal_path(None, environ)
    assert default == tmp_path / ".local/share/journalbot/journal.db"
    assert default.parent.is_dir()
    assert default.parent.stat().st_mode & 0o777 == 0o700
    assert not default.exists()


# Checked against the platformdirs library, which knows the same conventions.
def test_the_folder_is_the_platforms_own(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    macos = pytest.importorskip("platformdirs.macos")
    unix = pytest.importorskip("platformdirs.unix")
    monkeypatch.setenv("HOME", str(tmp_path))
    for xdg in ("", str(tmp_path / "xdg")):
        monkeypatch.setenv("XDG_DATA_HOME", xdg)
        environ = {"HOME": str(tmp_path), "XDG_DATA_HOME": xdg}
        assert data_folder(environ, "linux") == unix.Unix("journalbot", appauthor=False).user_data_path
    monkeypatch.delenv("XDG_DATA_HOME")
    assert data_folder(environ, "darwin") == macos.MacOS("journalbot", appauthor=False).user_data_path
    local = {"LOCALAPPDATA": "C:/Users/ennik/AppData/Local"}
    assert data_folder(local, "win32") == Path("C:/Users/ennik/AppData/Local/journalbot")


def test_a_folder_that_cannot_be_made_is_told(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("in the way")
    with pytest.raises(JournalError, match="cannot be made"):
        journal_path(None, {"HOME": str(tmp_path / "file")})
