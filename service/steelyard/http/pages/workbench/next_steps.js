// From an answer to the next request: the person as they were told, and the state as the answer gave it.

import { count, title } from "./figures.js";
import { choiceName } from "./wording.js";

const DAY = 86_400_000;
const CHOICES = { include: ["sizes", "levers"] }; // a coach at the workbench may still choose

/** A day so many days after `date`. */
export const dayAfter = (date, days = 1) => new Date(Date.parse(`${date}T00:00Z`) + days * DAY).toISOString().slice(0, 10);

/**
 * The requests that go on from an answer, the likeliest first: `{label, operation, body}`. Of a state nothing is
 * touched: what it holds takes the place of the log, of the phase, and of weight and body fat.
 */
export function nextSteps(operation, request, answer) {
  if (!answer.state) return [];
  const known = { profile: request.profile, ...(request.screening && { screening: request.screening }), state: answer.state };
  const { as_of_date: day, phase } = answer.state;
  const review = { label: "Review the phase", operation: "review_phase", body: { ...known, log: { weights: [], intakes: [] } } };
  const decide = { label: "Decide what comes next", operation: "decide_phase", body: { ...known, as_of_date: operation === "review_phase" ? dayAfter(day) : day } };
  const plan = { label: "Plan a phase from here", operation: "plan_phases", body: { ...known, start_date: day, phase: { kind: "mini_cut" }, ...CHOICES } };
  if (operation === "decide_phase") return [...plansOf(answer, known), ...(phase ? [review] : [])];
  if (operation === "review_phase") {
    const next = { ...review, label: answer.question ? "Review again, with the answer to the question" : "Review again, a week on" };
    if (answer.question) next.body.settled = { date: day };
    if (answer.is_finished || answer.decision === "end") return [decide];
    if (answer.end_date > day) return [next, decide];
    return [{ ...review, label: "Close the phase", body: { ...known, as_of_date: dayAfter(day) } }, decide];
  }
  return phase ? [review, decide] : [plan, decide];
}

function plansOf({ recommended, alternatives }, known) {
  const of = (row, word) => ({
    label: `${word}: ${choiceName(row.kind).toLowerCase()}${row.weeks ? `, ${count(row.weeks, "week")}` : ""}`,
    operation: "plan_phases",
    body: { ...known, ...withoutNulls(row.plan), ...CHOICES },
  });
  const others = alternatives.filter((row) => row.open && row.plan && row.kind !== recommended.kind);
  return [of(recommended, "Plan it"), ...others.map((row) => of(row, "Plan instead"))];
}

/** A value without what is null in it: in a request what is absent means the same. */
export function withoutNulls(value) {
  if (Array.isArray(value)) return value.map(withoutNulls);
  if (value === null || typeof value !== "object") return value;
  return Object.fromEntries(Object.entries(value).filter(([, each]) => each !== null).map(([name, each]) => [name, withoutNulls(each)]));
}

/** Days to come as the answer expects them, to play with: `{date, weight_kg, intake_kcal}`, on a scale that wanders. */
export function daysAhead(answer) {
  const weeks = answer.phases?.[0]?.weeks ?? answer.weeks;
  if (!answer.state || !weeks?.[0]?.at_end) return [];
  const wander = [0.2, -0.3, 0.1, 0.3, -0.2, -0.1, 0];
  let from = answer.state.weight_kg.mean;
  const days = [];
  for (const { start_date: start, days: length, intake_kcal, at_end: end } of weeks) {
    for (let i = 0; i < length; i += 1) {
      const expected = from + ((end.weight_kg.mean - from) * (i + 1)) / length;
      days.push({ date: dayAfter(start, i), weight_kg: Number((expected + wander[i % 7]).toFixed(1)), intake_kcal: Math.round(intake_kcal) });
    }
    from = end.weight_kg.mean;
  }
  return answer.phases ? days : days.filter((each) => each.date > answer.state.as_of_date); // a review has read its day
}

/** A step in few words, for the list of what was done. */
export function stepName(operation, answer) {
  const day = answer.as_of_date ?? answer.state?.as_of_date ?? answer.phases?.[0]?.start_date;
  const said = {
    plan_phases: () => (answer.feasible ? `planned ${choiceName(answer.phases[0].kind).toLowerCase()}` : "no safe plan"),
    review_phase: () => `reviewed: ${title(answer.verdict).toLowerCase()}, ${answer.decision}`,
    decide_phase: () => `decided: ${choiceName(answer.recommended.kind).toLowerCase()}`,
  }[operation];
  return { day, said: said ? said() : null };
}
