"""The estimate of maintenance before a log against groups whose expenditure was measured."""

import pytest
from steelyard.science.person.person import ActivityLevel
from validation.cohorts import CLASS_BIAS, COHORTS, Cohort, class_bias, estimated


@pytest.mark.parametrize("cohort", COHORTS, ids=lambda cohort: cohort.title)
def test_the_mean_of_a_measured_group_is_inside_the_interval(cohort: Cohort) -> None:
    said = estimated(cohort)
    assert said.lower <= cohort.total_kcal <= said.upper


@pytest.mark.parametrize("level", class_bias())
def test_no_level_is_off_by_more_than_a_twentieth(level: ActivityLevel) -> None:
    assert abs(class_bias()[level]) <= CLASS_BIAS
