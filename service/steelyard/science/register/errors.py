"""What is raised when a computation has no meaning for its input.

Inputs are called by their names as an asker knows them, joined by dots: ``age_years``, ``log.weights[3].date``. Where
they stand in a request is for those to say who read requests.
"""


class OutOfDomain(ValueError):  # noqa: N818 - named for what happened, as the code says
    """An input lies outside the domain of an equation: nothing sensible can be returned.

    ``code`` is a stable UPPER_SNAKE reason, ``field`` the name of the offending input, ``detail`` an English sentence
    that says how to mend it.
    """

    def __init__(self, code: str, field: str, detail: str) -> None:
        super().__init__(detail)
        self.code = code
        self.field = field
        self.detail = detail


class Contradiction(OutOfDomain):
    """Inputs that cannot stand together, whoever they are about."""
