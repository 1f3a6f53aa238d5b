"""What a plan got wrong."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Violation:
    """A broken rule or a wrong figure."""

    rule: str
    detail: str

    def __str__(self) -> str:
        return f"{self.rule}: {self.detail}"
