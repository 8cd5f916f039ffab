"""The start page: what the service is for, and where a coach, a developer and an operator go from here."""

from collections.abc import Iterable
from html import escape

from .site import START, Site

_WHAT_FOR = (
    "Steelyard plans training diets for people who lift: how much to eat to lose fat, to keep weight or to gain "
    "muscle, week by week, and how sure that is.",
    "It reads a log of weighings and intake, tells tissue from water, and says whether a phase goes as planned and "
    "what comes next.",
    "It keeps nothing of anyone: every request brings what it needs, and every number leads to its source.",
)
_COACH = (
    ("guides/coach", "Whom to look at today", "one list of all members, with reasons"),
    ("guides/weekly-loop", "The weekly loop", "from a plan to a review to the next phase"),
    ("science", "The science", "what stands behind a number, and how sure it is"),
)
_WORKBENCH = ("workbench", "Workbench", "plan, review and decide with forms, by hand; asks for a key")
_DEVELOPER = (
    ("guides/app-developer", "The first call", "from a key to a plan on a screen"),
    ("reference", "Reference", "every operation and field"),
    ("openapi.json", "OpenAPI document", "the same for generators of clients"),
    ("guides/gym-integrator", "A whole gym", "many members at once, each night"),
)
_OPERATOR = (
    ("health/ready", "Ready?", "what the service says of itself"),
    ("guides/qa", "Checking a deployment", "the contract, every problem, and a command that tries them"),
    ("science/validation", "Validation", "forecasts against published trials"),
)


def start_page(site: Site) -> str:
    """The whole page."""
    what, how, what_not = _WHAT_FOR
    doors = [
        _door(
            "For a coach",
            "You plan for others, and want to know whom to look at.",
            (_WORKBENCH, *_COACH) if site.has_workbench else _COACH,
        ),
        _door("For a developer", "You put plans, trends or verdicts into an app of your own.", _DEVELOPER),
        _door(
            "For an operator",
            "You run the service. The handbook lies with the source, in <code>docker/handbook.md</code>.",
            _OPERATOR,
        ),
    ]
    main = "\n".join(
        [
            "<h1>Plans for people who lift</h1>",
            f'<p class="lead">{what}</p>\n<p>{how} {what_not}</p>',
            f'<div class="doors">\n{"".join(doors)}</div>',
        ]
    )
    return site.page("Steelyard", main, at=START)


def _door(title: str, text: str, links: Iterable[tuple[str, str, str]]) -> str:
    items = "".join(f'<li><a href="{path}">{escape(name)}</a>: {escape(said)}.</li>' for path, name, said in links)
    return f"<section><h2>{title}</h2><p>{text}</p><ul>{items}</ul></section>\n"
