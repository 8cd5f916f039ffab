// The same by the functions that @hey-api/openapi-ts generates.
import { client } from "./generated/client.gen.js";
import { documentPlan, drawPlan, planPhases } from "./generated/sdk.gen.js";
import type { PlanRequest, PlanResponse, Problem } from "./generated/types.gen.js";

client.setConfig({ baseUrl: process.env["STEELYARD_URL"] ?? "", auth: process.env["STEELYARD_KEY"] ?? "" });

const hold: PlanRequest = {
  profile: {
    sex: "female",
    age_years: 27,
    height_cm: 166,
    weight_kg: 63.2,
    activity: { kind: "level", level: "light" },
    training: { status: "novice", resistance_sessions_per_week: 3 },
  },
  start_date: "2026-03-30",
  phase: { kind: "maintenance", weeks: 2 },
};

const planned = await planPhases({ body: hold, throwOnError: true });
const plan: PlanResponse = planned.data;

const refused = await planPhases({ body: { ...hold, phase: { kind: "mini_cut", weeks: 4 } } });
const problem: Problem | undefined = refused.error;

const drawn = await drawPlan({ body: hold, parseAs: "text", throwOnError: true });
const written = await documentPlan({ body: hold, parseAs: "text", throwOnError: true });
const calendar: string = written.data;

const mean: number = plan.maintenance_kcal.mean;
console.log(
  JSON.stringify({
    feasible: plan.feasible,
    mean,
    refused: problem?.status,
    svg: String(drawn.data).slice(0, 4),
    calendar: calendar.slice(0, 15),
  }),
);
