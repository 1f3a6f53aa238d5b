"""Points for how much a fault hampers driving; the figures are our own."""

import pytest

from partsplan.domain import DrivabilityGrade, Use
from partsplan.scoring import drivability, stops_driving
from tests.support.building import fault

POINTS = {  # columns: grade 0 to 4
    Use.DAILY: (0, 10, 35, 70, 100),
    Use.WEEKEND: (0, 6, 21, 42, 60),
    Use.PROJECT: (0, 3, 10.5, 21, 30),
    Use.STORED: (0, 1, 3.5, 7, 10),
}


@pytest.mark.parametrize("use", list(Use))
def test_points_by_grade_and_use(use: Use) -> None:
    scores = [drivability(fault(drivability=grade), use) for grade in range(5)]
    assert [score.points for score in scores] == list(POINTS[use])
    assert scores[0].reasons == ()
    assert scores[3].reasons == (DrivabilityGrade(grade=3, use=use),)


@pytest.mark.parametrize("grade", range(5))
def test_only_the_worst_grade_stops_driving(grade: int) -> None:
    assert stops_driving(fault(drivability=grade)) == (grade == 4)
