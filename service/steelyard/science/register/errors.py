"""What the core raises when a computation has no meaning for its input."""


class OutOfDomain(ValueError):  # noqa: N818 - named for what happened, as the code says
    """An input lies outside the domain of an equation: nothing sensible can be returned.

    ``code`` is a stable UPPER_SNAKE reason, ``field`` the name of the offending input as the caller gave it,
    ``detail`` an English sentence that says how to mend it.
    """

    def __init__(self, code: str, field: str, detail: str) -> None:
        super().__init__(detail)
        self.code = code
        self.field = field
        self.detail = detail
