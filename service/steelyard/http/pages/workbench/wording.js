// What fields and choices are called on the page. What is not listed is read off its name in the contract.

import { title, words } from "./figures.js";

const LABELS = {
  profile: "Person", screening: "Health questions", state: "What is known so far", log: "Log",
  phase: "Phase", start_date: "First day", as_of_date: "As of", sex: "Sex, for the equations",
  activity: "Everyday activity", level: "How active", training: "Training", status: "Lifting experience",
  resistance_sessions_per_week: "Lifting sessions a week", is_new_programme: "New or much more training lately",
  body_fat: "Body-fat reading", fat_fraction: "Body fat, %", method: "How it was measured", met: "Intensity, METs",
  deficit_kcal: "Deficit, kcal a day", surplus_kcal: "Surplus, kcal a day", pace: "Pace, where the size is open",
  event_date: "To be ready on", easing_in_weeks: "Gentle first weeks", weeks_done: "Weeks done already",
  break_every_weeks: "A break after so many weeks", break_weeks: "Weeks of a break", weeks: "Weeks",
  return_to_gain: "What follows", pause: "Pause first", day_split: "Days with more carbohydrate",
  week: "How the week is lived", cut_history: "Cuts so far", current_intake_kcal: "Eaten at present, kcal a day",
  usual_intake_kcal: "Eaten before, kcal a day", maintenance: "Maintenance, where it is known",
  kcal_per_day: "kcal a day", standard_deviation_kcal: "Give or take (1 SD), kcal",
  fat_ceiling_fraction: "Body fat that ends it, %", clinical_clearance: "A professional's clearance",
  is_finished: "The phase is over", settled: "Answer to the question", found: "What came out", goal: "Aim",
  feeling: "How they feel about their leanness", band: "Body fat to stay between", check_ins: "How they are",
  events: "What happened", cycle: "First days of menstruation", measurements: "Measurements of body fat",
  uncertainty_sources: "Count only these uncertainties", phase_history: "Phases so far", kind: "Kind",
  present_phase: "Phase under way", horizon_weeks: "Length, weeks", is_plant_based: "Plants only",
  fat_loss_kg: "Fat to lose, kg", changes: "Changes so far", reference: "Member",
};

const CHOICES = {
  male: "Man", female: "Woman", unspecified: "Both, the stricter", mini_cut: "Mini-cut", maintenance: "Hold at maintenance",
  week: "Steps and sessions", level: "One word for it", dxa: "DXA", bmi_equation: "Height and weight alone",
  visual: "By eye", bmi: "Height and weight alone", own: "Of one's own", path: "What an intake does",
};

const UNITS = [
  [/_g_per_kg$/, "g per kg"], [/_kcal_per_kg$/, "kcal per kg"], [/_kcal$/, "kcal"], [/_kg$/, "kg"], [/_cm$/, "cm"],
  [/_mm$/, "mm"], [/_g$/, "g"], [/_years$/, "years"], [/_fraction$/, "%"],
];

/** What a field is called, with its unit. */
export function labelOf(name) {
  if (LABELS[name]) return LABELS[name];
  const [pattern, unit] = UNITS.find(([each]) => each.test(name)) ?? [/^is_/, ""];
  const text = title(name.replace(pattern, "")).replace(/ per (day|week)$/, " a $1").replace(/ date$/, " day");
  return unit ? `${text}, ${unit}` : text;
}

/** What a choice is called. */
export const choiceName = (value) => CHOICES[value] ?? title(value);

/** Whether a field is a share of one, which people read and write in per cent. */
export const isShare = (name) => name.endsWith("_fraction");

/** A description of the contract in plain words: its first sentence, where that is short and says more. */
export function hintOf(description, name = "") {
  if (isShare(name) || /^A civil date/.test(description)) return ""; // in per cent here; said by the field itself
  const first = words((description ?? "").replaceAll("`", "")).match(/^.*?[.](?=\s|$)/)?.[0] ?? "";
  return first.split(" ").length > 4 && first.length <= 110 ? first : "";
}
