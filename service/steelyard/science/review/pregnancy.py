"""What weight is expected to gain in pregnancy, of which nothing is eating over plan."""

from ..phase import DAYS_PER_WEEK
from ..register import Choice, Message, constant, say, source, traced
from . import texts
from .reading import Now

IOM_2009 = source(
    "iom_2009",
    "Institute of Medicine and National Research Council. Weight gain during pregnancy: reexamining the guidelines. "
    "2009",
    "10.17226/12584",
)
_CLASSES = (18.5, 25.0, 30.0)  # body mass index from which the next class counts
_MOST: Choice[int, float] = Choice(
    (i, constant(
        f"gestational_gain_{name}", kg, unit="kg/week", sources=(IOM_2009,),
        summary=f"Most that is recommended to gain a week in the second and third trimester, {words} before pregnancy",
    ))
    for i, (name, kg, words) in enumerate((
        ("underweight", 0.58, "with a body mass index under 18.5"),
        ("usual", 0.50, "with a body mass index of 18.5 to 24.9"),
        ("overweight", 0.33, "with a body mass index of 25 to 29.9"),
        ("obese", 0.27, "with a body mass index of 30 or over"),
    ))
)  # fmt: skip


@traced
def expected_in_pregnancy(bmi: float, now: Now) -> list[Message]:
    """What part of the tissue gained since the first weighing of a phase is expected in pregnancy; nothing of a loss.

    The weeks of a pregnancy are not told, so that it is the most of any: the first three months add less. ``bmi`` is
    that of the phase's start, the nearest to the one before pregnancy that is known.
    """
    gained = now.window.tissue.mean
    if gained <= 0.0:
        return []
    most = _MOST[sum(bmi >= least for least in _CLASSES)] * now.window_days / DAYS_PER_WEEK
    return [say(texts.EXPECTED_IN_PREGNANCY, expected_kg=min(gained, most))]
