"""The words of the command line, read by a table.

With `getopt`, because this is on the way to every answer: setting up `argparse` takes longer than opening the journal.
"""

import getopt
from collections.abc import Mapping, Sequence
from typing import NamedTuple


class UsageError(Exception):
    """What is wrong with a command line."""


class Option(NamedTuple):
    """`--name VALUE`, or a bare `--name` where `value` is empty."""

    name: str
    value: str
    help: str


class Command(NamedTuple):
    """One command; `takes` names its words: `TEXT...` one or more, `[FILE]` one or none, empty none."""

    takes: str
    help: str
    options: tuple[Option, ...] = ()


class Given(NamedTuple):
    """A command line as read: no command is ""; the value of a bare option is ""."""

    command: str
    words: tuple[str, ...]
    options: Mapping[str, str]


def read_arguments(argv: Sequence[str], commands: Mapping[str, Command], everywhere: Sequence[Option]) -> Given:
    """The command line by the table, options before or after words; UsageError where it does not fit."""
    every = {o.name: o for c in commands.values() for o in (*c.options, *everywhere)}
    try:
        found, words = getopt.gnu_getopt(list(argv), "h", [n + "=" * bool(o.value) for n, o in every.items()])
    except getopt.GetoptError as error:
        raise UsageError(f"{error.msg}.") from None
    options = {"help" if key == "-h" else key[2:]: value for key, value in found}
    name = words.pop(0) if words else ""
    if name and name not in commands:
        raise UsageError(f"{name!r} is no command; there are {', '.join(commands)}.")
    allowed = (*(commands[name].options if name else ()), *everywhere)
    for key in options:
        if all(key != o.name for o in allowed):
            raise UsageError(f"--{key} is no option {f'of {name}' if name else 'without a command'}.")
    if name and "help" not in options:
        _check(name, commands[name].takes, words)
    return Given(name, tuple(words), options)


def help_on(name: str, commands: Mapping[str, Command], everywhere: Sequence[Option]) -> str:
    """What a command does and takes; all commands where `name` is empty."""
    options = [(f"--{o.name} {o.value}", o.help) for o in everywhere]
    if not name:
        return f"{_table([(f'{n} {c.takes}', c.help) for n, c in commands.items()])}\n\n{_table(options)}"
    command = commands[name]
    own = [(f"--{o.name} {o.value}", o.help) for o in command.options]
    return f"{name} {command.takes}".rstrip() + f": {command.help}\n\n{_table([*own, *options])}"


def _check(name: str, takes: str, words: Sequence[str]) -> None:
    if not words and takes and not takes.startswith("["):
        raise UsageError(f"{name} needs {takes.removesuffix('...')}.")
    most = len(takes.split())
    if len(words) > most and not takes.endswith("..."):
        raise UsageError(f"{name} takes {takes or 'nothing more'}, and not {words[most]!r} too.")


def _table(rows: Sequence[tuple[str, str]]) -> str:
    width = max(len(left) for left, _ in rows) + 2
    return "\n".join(f"  {left:<{width}}{right}" for left, right in rows)
