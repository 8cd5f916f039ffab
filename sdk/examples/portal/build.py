"""Fill the example portal's page with a plan from the real service, as a gym's own backend would.

The key stays here, on the backend's side: the page gets the answer alone. `make sdk` runs this against a service of
its own.
"""

import json
import re
import sys
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from local_service import local_service
from steelyard_client import Steelyard
from steelyard_client.request_types import PlanRequestDict

PAGE = Path(__file__).with_name("index.html")
# An invented member of an invented gym.
REQUEST: PlanRequestDict = {
    "profile": {
        "sex": "female",
        "age_years": 38,
        "height_cm": 172,
        "weight_kg": 74.5,
        "body_fat": {"fat_fraction": 0.28, "method": "skinfolds"},
        "activity": {"kind": "level", "level": "light"},
        "training": {"status": "intermediate", "resistance_sessions_per_week": 3},
    },
    "screening": {
        "is_pregnant": False,
        "is_breastfeeding": False,
        "eating_disorder": "none",
        "conditions": [],
        "medicines": [],
    },
    "start_date": "2026-05-04",
    "phase": {"kind": "mini_cut", "weeks": 5, "deficit_kcal": 750},
    "return_to_gain": {"maintenance_weeks": 1, "gain_weeks": 8},
    "cut_history": {"cuts_last_12_months": 0},
    "day_split": {"higher_days_per_week": 3},
}

_DATA = re.compile(r'(?<=<script type="application/json">\n).*?(?=\n *</script>)', re.DOTALL)


def answer_from(client: Steelyard) -> dict[str, Any]:
    """The plan as the service answers it."""
    return client.plan_phases(**REQUEST).to_dict()


def page_with(answer: dict[str, Any], page: str) -> str:
    """``page`` with ``answer`` in the card. No text of it can end the script element: `<` is written as an escape."""
    data = json.dumps(answer, ensure_ascii=False, separators=(",", ":")).replace("<", "\\u003c")
    filled, count = _DATA.subn(lambda _: data, page)
    if count != 1:
        raise ValueError("the page must have one card with one script of JSON")
    return filled


def main() -> None:
    """Rewrite the page."""
    with local_service() as service, Steelyard(service.url, service.key) as client:
        answer = answer_from(client)
    PAGE.write_text(page_with(answer, PAGE.read_text(encoding="utf-8")), encoding="utf-8")


if __name__ == "__main__":
    main()
