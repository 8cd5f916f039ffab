"""Whom should a coach look at first?"""

from collections.abc import Sequence
from datetime import date
from typing import NamedTuple

from steelyard.science.register import NOT_MEDICAL_ADVICE
from steelyard.science.review import MemberToRank, Placed, ranked

from .answered import Answered, answering_without_estimates


class RosterAsked(NamedTuple):
    """Whom to put in order, on which day."""

    as_of: date
    members: Sequence[MemberToRank]


@answering_without_estimates
def rank_roster(asked: RosterAsked) -> Answered[list[Placed]]:
    """Members in the order in which to look at them. Raises ``Contradiction`` for a reference that is there twice."""
    return Answered(ranked(asked.members, asked.as_of), reasons=[], cautions=[NOT_MEDICAL_ADVICE])
