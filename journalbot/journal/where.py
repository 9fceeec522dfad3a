"""Where the journal is, unless the person says otherwise."""

import os
import sys
from collections.abc import Mapping
from pathlib import Path

from journalbot.errors import JournalError

VARIABLE = "JOURNALBOT_JOURNAL"
_NAME = "journal.db"


def journal_path(given: str | None = None, environ: Mapping[str, str] = os.environ) -> Path:
    """The journal's file: the one given, else that of the environment variable, else the platform's place for data.

    Only the folder of the last is made where it is missing (mode 0700). JournalError where that cannot be done.
    """
    named = given or environ.get(VARIABLE)
    if named:
        return Path(named).expanduser()
    folder = data_folder(environ)
    try:
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
    except OSError as error:
        raise JournalError(
            f"the folder {folder} cannot be made ({(error.strerror or 'no reason given').lower()}); "
            f"name another place with {VARIABLE}."
        ) from error
    return folder / _NAME


def data_folder(environ: Mapping[str, str] = os.environ, platform: str = sys.platform) -> Path:
    """The platform's folder for a program's own data of one person.

    Sources: the XDG Base Directory Specification (Linux and other Unixes); Apple's File System Programming Guide
    (Library/Application Support); Microsoft's known folder LocalAppData.
    """
    home = Path(environ.get("HOME") or Path.home())
    if platform == "win32":
        base = Path(environ.get("LOCALAPPDATA") or home / "AppData" / "Local")
    elif platform == "darwin":
        base = home / "Library" / "Application Support"
    else:
        base = Path(environ.get("XDG_DATA_HOME") or "")
        if not base.is_absolute():  # the specification: a relative path is invalid and to be ignored
            base = home / ".local" / "share"
    return base / "journalbot"
