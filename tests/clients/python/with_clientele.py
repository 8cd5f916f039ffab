"""The same in Python, by a client that clientele generated beside this. Prints what it got."""

import json
import os

from generated import client, schemas
from generated.config import Config

client.client.configure(
    config=Config(
        base_url=os.environ["STEELYARD_URL"],
        headers={"Authorization": f"Bearer {os.environ['STEELYARD_KEY']}"},
        timeout=30.0,
    )
)


def asked(phase: schemas.Hold | schemas.MiniCut) -> schemas.PlanRequest:
    return schemas.PlanRequest(
        profile=schemas.Profile(
            sex=schemas.Sex.FEMALE,
            age_years=27,
            height_cm=166,
            weight_kg=63.2,
            activity=schemas.ActivityByLevel(kind="level", level=schemas.ActivityLevel.LIGHT),
            training=schemas.Training(status=schemas.TrainingStatus.NOVICE, resistance_sessions_per_week=3),
        ),
        start_date="2026-03-30",
        phase=phase,
    )


plan = client.plan_phases(data=asked(schemas.Hold(kind="maintenance", weeks=2)))
assert isinstance(plan, schemas.PlanResponse)
refused = client.plan_phases(data=asked(schemas.MiniCut(kind="mini_cut", weeks=4)))
assert isinstance(refused, schemas.Problem)
mean: float = plan.maintenance_kcal.mean
print(json.dumps({"feasible": plan.feasible, "mean": mean, "refused": refused.status}))
