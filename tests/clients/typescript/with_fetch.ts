// A plan, its refusal and its picture, by openapi-fetch on the types of openapi-typescript. Prints what it got.
import createClient from "openapi-fetch";
import type { components, paths } from "./schema/contract.js";

type Plan = components["schemas"]["PlanResponse"];
type Problem = components["schemas"]["Problem"];

const [url, key] = [process.env["STEELYARD_URL"] ?? "", process.env["STEELYARD_KEY"] ?? ""];
const client = createClient<paths>({ baseUrl: url, headers: { Authorization: `Bearer ${key}` } });

const profile: components["schemas"]["Profile"] = {
  sex: "female",
  age_years: 27,
  height_cm: 166,
  weight_kg: 63.2,
  activity: { kind: "level", level: "light" },
  training: { status: "novice", resistance_sessions_per_week: 3 },
};
const hold = { profile, start_date: "2026-03-30", phase: { kind: "maintenance" as const, weeks: 2 } };

const planned = await client.POST("/v1/plans", { body: hold });
if (planned.error) throw new Error(planned.error.title);
const plan: Plan = planned.data;

// Of a deficit without screening answers there is none: the refusal is typed as well.
const refused = await client.POST("/v1/plans", { body: { ...hold, phase: { kind: "mini_cut", weeks: 4 } } });
const problem: Problem | undefined = refused.error;

const drawn = await client.POST("/v1/plans/picture", { body: hold, parseAs: "text" });
const picture = drawn.data;

const written = await client.POST("/v1/plans/document", { body: hold, parseAs: "text" });
const calendar: string | undefined = written.data;

// No null in a request that the contract does not allow, and no field that it does not know.
// @ts-expect-error
await client.POST("/v1/plans", { body: { ...hold, start_date: null } }).catch(() => undefined);
// @ts-expect-error
const misspelt: components["schemas"]["PlanRequest"] = { ...hold, star_date: "2026-03-30" };
void misspelt;

const mean: number = plan.maintenance_kcal.mean;
console.log(
  JSON.stringify({
    feasible: plan.feasible,
    mean,
    refused: problem?.status,
    svg: String(picture).slice(0, 4),
    calendar: calendar?.slice(0, 15),
  }),
);
