"""Commands whose help begins with an example."""

from typing import Any

import click

SETTINGS = {"help_option_names": ["-h", "--help"]}


class Command(click.Command):
    """A command; without arguments it shows its help."""

    def __init__(self, *args: Any, example: str, **settings: Any) -> None:
        settings.setdefault("context_settings", SETTINGS)
        super().__init__(*args, **settings)
        self.example = example

    def format_help(
        self, context: click.Context, formatter: click.HelpFormatter
    ) -> None:
        formatter.write(f"Example: {self.example}\n\n")
        super().format_help(context, formatter)


class Group(Command, click.Group):
    """The commands together."""

    def list_commands(self, context: click.Context) -> list[str]:
        return list(self.commands)
