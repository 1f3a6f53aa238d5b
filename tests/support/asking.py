"""Ways to ask for plans that count, note, or stop."""

from collections.abc import Mapping, Sequence

from partsplan.domain import Needs, Plan
from partsplan.explanation import Question, reply
from partsplan.planning import Limits

CLOSE = Limits(seconds=30.0, gap=0.0)


class Asking:
    """Plans in turn, keeps what it was asked, and stops after ``most`` plans."""

    def __init__(self, most: int | None = None) -> None:
        self.most = most
        self.rounds: list[list[Question]] = []
        self.answered: list[tuple[Question, Plan | Needs | None]] = []

    @property
    def asked(self) -> list[Question]:
        """Every question so far."""
        return [one for questions in self.rounds for one in questions]

    def __call__(
        self, questions: Sequence[Question]
    ) -> Mapping[int, Plan | Needs | None]:
        before = len(self.asked)
        self.rounds.append(list(questions))
        room = len(questions) if self.most is None else max(0, self.most - before)
        found = {}
        for place, question in enumerate(questions[:room]):
            answer = reply(question)
            assert not answer.broken
            found[place] = answer.found
            self.answered.append((question, answer.found))
        return found
