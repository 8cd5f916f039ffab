"""Pounds, inches and kilojoules to the units of the wire (kg, cm, kcal), and back.

The factors are exact by definition: the international avoirdupois pound is 0.45359237 kg and the international inch
2.54 cm (agreement of the national standards laboratories of 1959; NIST Special Publication 811, Appendix B.8), and
the thermochemical calorie, which food energy is counted in, is 4.184 J (NIST Special Publication 811, Appendix B.8).
"""

KILOGRAMS_PER_POUND = 0.45359237
CENTIMETRES_PER_INCH = 2.54
INCHES_PER_FOOT = 12
KILOJOULES_PER_KILOCALORIE = 4.184


def pounds(lb: float) -> float:
    """Kilograms of ``lb`` pounds.

    >>> pounds(100)
    45.359237
    """
    return lb * KILOGRAMS_PER_POUND


def to_pounds(kg: float) -> float:
    """Pounds of ``kg`` kilograms."""
    return kg / KILOGRAMS_PER_POUND


def inches(inch: float) -> float:
    """Centimetres of ``inch`` inches.

    >>> inches(70)
    177.8
    """
    return inch * CENTIMETRES_PER_INCH


def to_inches(cm: float) -> float:
    """Inches of ``cm`` centimetres."""
    return cm / CENTIMETRES_PER_INCH


def feet_inches(feet: float, inch: float = 0) -> float:
    """Centimetres of a height in feet and inches.

    >>> feet_inches(5, 10)
    177.8
    """
    return inches(feet * INCHES_PER_FOOT + inch)


def to_feet_inches(cm: float, digits: int = 1) -> tuple[int, float]:
    """Whole feet, and inches below 12 rounded to ``digits``; for heights, so ``cm`` is 0 or more.

    >>> to_feet_inches(182.87)
    (6, 0.0)
    """
    feet, inch = divmod(round(to_inches(cm), digits), INCHES_PER_FOOT)  # rounded first: never 5 ft 12.0 in
    return int(feet), round(inch, digits)


def kilojoules(kj: float) -> float:
    """Kilocalories of ``kj`` kilojoules.

    >>> kilojoules(8368)
    2000.0
    """
    return kj / KILOJOULES_PER_KILOCALORIE


def to_kilojoules(kcal: float) -> float:
    """Kilojoules of ``kcal`` kilocalories."""
    return kcal * KILOJOULES_PER_KILOCALORIE
