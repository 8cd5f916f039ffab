"""Draw the picture of the README: an invented member's mini-cut and what follows it.

Run it with `make pictures`. The service is started, asked for the plan as SVG through the client, and stopped.
"""

import sys
from pathlib import Path

from local_service import local_service
from steelyard_client import Steelyard
from steelyard_client.request_types import ProfileDict, ScreeningDict

PICTURES = Path(__file__).resolve().parent / "pictures"
LIFTER: ProfileDict = {
    "sex": "male",
    "age_years": 31,
    "height_cm": 178,
    "weight_kg": 84.6,
    "body_fat": {"fat_fraction": 0.175, "method": "dxa"},
    "activity": {"kind": "level", "level": "light"},
    "training": {"status": "intermediate", "resistance_sessions_per_week": 4},
}
SCREENING: ScreeningDict = {
    "is_pregnant": False,
    "is_breastfeeding": False,
    "eating_disorder": "none",
    "conditions": [],
    "medicines": [],
}


def main() -> int:
    """Write the picture; the exit status."""
    PICTURES.mkdir(exist_ok=True)
    with local_service() as service, Steelyard(service.url, service.key, timeout_seconds=60) as client:
        picture = client.plan_picture(
            "svg",
            profile=LIFTER,
            screening=SCREENING,
            start_date="2026-04-06",
            phase={"kind": "mini_cut", "weeks": 4},
        )
    (PICTURES / "plan.svg").write_bytes(picture)
    print(f"Wrote plan.svg, {len(picture):,} bytes.")
    return 0


if __name__ == "__main__":
    sys.exit(main())
