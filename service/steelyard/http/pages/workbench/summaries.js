// What each operation's answer comes down to: its figures, and its tables. One function per operation, by its id.

import { details, element, part, table } from "./elements.js";
import { change, count, energy, interval, longDate, mass, massChange, number, percent, share, shortDate, title, words } from "./figures.js";
import { choiceName } from "./wording.js";

const VERDICTS = {
  within_interval: "As planned", faster: "Faster than planned", slower: "Slower than planned",
  contradicted: "Scale and log do not agree", too_early: "Too early to tell",
};
const DECISIONS = { continue: "keep on", end: "end the phase", shorten: "end it sooner", extend: "go on for longer" };

/** The readable part of an answer. An operation without a summary here shows its plain values. */
export function summaryOf(operationId, answer) {
  const { lead, figures, tables } = (SUMMARIES[operationId] ?? plainValues)(answer);
  const list = figures.filter(([, value]) => value !== undefined && value !== "not known");
  return part(
    "Summary",
    lead ? element("p", { class: "lead" }, lead) : null,
    list.length
      ? element("dl", { class: "figures" },
          ...list.map(([name, value]) => element("div", {}, element("dt", {}, name), element("dd", {}, value))))
      : null,
    element("p", { class: "hint" }, "In parentheses: the 80 % interval."),
    ...(tables ?? []),
  );
}

const SUMMARIES = {
  estimate_maintenance: (a) => ({
    figures: [
      ["Maintenance", energy(a.maintenance_kcal)],
      ["Physical maintenance", energy(a.physical_maintenance_kcal)],
      ["Resting energy", energy(a.resting_kcal)],
      ["Activity level", number(a.activity_level, 2)],
      ["Body fat", share(a.body_fat_fraction)],
      ["What the log counts for", percent(a.contribution.log_share)],
    ],
    tables: [
      details(
        `${count(a.equations.filter((row) => row.is_used).length, "equation")} used of ${a.equations.length}`,
        table("What each equation says, and its share", ["Equation", "Of", "kcal/d", "Applies", "Share"],
          a.equations.map((row) => [
            words(row.id), words(row.estimates), number(row.kcal_per_day), yes(row.is_applicable), percent(row.weight),
          ])),
      ),
    ],
  }),

  estimate_body_composition: (a) => ({
    figures: [
      ["Body fat", share(a.fat_fraction)],
      ["Fat mass", mass(a.fat_kg)],
      ["Fat-free mass", mass(a.fat_free_kg)],
      ["Fat-free mass index", interval(a.ffmi, number, 1)],
      ["The same, normalised for height", interval(a.normalised_ffmi, number, 1)],
      ["Beside the healthy range", a.healthy_range ? words(a.healthy_range.standing) : undefined],
    ],
    tables: [
      table("What each measurement says", ["Measurement", "Body fat", "Standard deviation", "Counts for"],
        a.measurements.map((row) => [
          words(row.kind), percent(row.fat_fraction, 1), percent(row.standard_deviation, 1), percent(row.weight)])),
    ],
  }),

  plan_phases: (a) => ({
    lead: a.feasible ? planLead(a.phases[0]) : infeasible(a.nearest),
    figures: [
      ["Maintenance", energy(a.maintenance_kcal)],
      ["Body fat at the start", share(a.body_fat_fraction)],
      ["Deficit at the start", a.deficit_kcal === null ? undefined : `${number(a.deficit_kcal)} kcal/d`],
      ["What is known least", a.dominant_uncertainty ? words(a.dominant_uncertainty) : undefined],
    ],
    tables: a.phases.length
      ? [
          table("Phases", ["Phase", "Days", "kcal a day", "Weight kg", "Fat kg", "Lean tissue kg", "Carried mass kg"],
            a.phases.map((phase) => [
              title(phase.kind), `${shortDate(phase.start_date)} to ${shortDate(phase.end_date)}`, range(phase.weeks.map((week) => week.intake_kcal)),
              ...["weight_kg", "fat_kg", "lean_kg", "carried_kg"].map((name) => interval(phase.change[name], change, 1))])),
          details(
            "Week by week",
            table("Weeks", ["From", "Phase", "kcal/d", "Protein g", "Carbohydrate g", "Fat g", "Weight at its end kg"],
              a.phases.flatMap((phase) => phase.weeks.map((week) => [
                week.start_date, title(phase.kind), number(week.intake_kcal), number(week.protein_g),
                number(week.carbohydrate_g), number(week.fat_g), interval(week.at_end.weight_kg, number, 1)]))),
          ),
        ]
      : [],
  }),

  forecast_intake: (a) => ({
    lead: a.feasible ? null : infeasible(a.nearest),
    figures: [
      ["Intake for the target", a.intake_kcal === null ? undefined : readable(a.intake_kcal, "kcal/d")],
      ["Target reached", a.reached_on === null ? undefined : readable(a.reached_on)],
      ["Weight at the end", mass(a.weeks.at(-1)?.at_end.weight_kg)],
      ["Fat mass at the end", mass(a.weeks.at(-1)?.at_end.fat_kg)],
      ["Maintenance at the start", energy(a.maintenance_kcal)],
      ["What is known least", a.uncertainty.length ? words(a.uncertainty[0].source) : undefined],
    ],
    tables: a.weeks.length ? [bodyByWeek("Forecast", a.weeks)] : [],
  }),

  read_trend: (a) => ({
    lead: a.is_conclusive ? null : `Not conclusive yet${a.more_days_needed ? `: ${count(a.more_days_needed, "more day")} needed` : ""}.`,
    figures: [
      ["Weight moves by", `${interval(a.weekly_rate_kg, change, 2)} kg a week`],
      ["Maintenance now", energy(a.maintenance_kcal)],
      ["Fat mass", mass(a.composition?.fat_kg)],
      ["Fat since the log began", massChange(a.composition?.fat_change_kg)],
      ["Lean tissue since then", massChange(a.composition?.lean_change_kg)],
      ["Logged of what was eaten", share(a.logging_ratio)],
      ["Chance of a plateau", percent(a.plateau_probability)],
    ],
    tables: [
      table("What changed", ["Over", "Weight", "Tissue", "Carried mass"],
        a.changes.map((row) => [
          count(row.days, "day"), massChange(row.weight_kg), massChange(row.tissue_kg), massChange(row.carried_kg)])),
    ],
  }),

  review_phase: (a) => ({
    lead: reviewLead(a),
    figures: [
      ["Day of the phase", number(a.days_into_phase)],
      ["Intake to change by", a.correction_kcal ? `${change(a.correction_kcal, 0)} kcal/d` : undefined],
      ["Tissue since the start", massChange(a.change?.tissue_kg)],
      ["Tissue as planned", massChange(a.change?.planned_tissue_kg)],
      ["Carried mass since the start", massChange(a.change?.carried_kg)],
      ["Eaten against the plan", a.eaten?.difference_kcal ? `${interval(a.eaten.difference_kcal, change)} kcal/d` : undefined],
      ["Maintenance now", energy(a.maintenance_kcal)],
      ["The phase ends", longDate(a.end_date)],
    ],
    tables: [
      a.question
        ? element("div", { class: "known" }, element("p", {}, element("strong", {}, "To settle it: "), a.question.ask.text),
            element("p", {}, `Until ${longDate(a.question.until_date)}: nothing is changed for this.`))
        : null,
      a.weeks.length ? bodyByWeek("What is left of the phase", a.weeks) : null,
    ],
  }),

  decide_phase: (a) => ({
    lead: `${choiceName(a.recommended.kind)} for ${count(a.recommended.weeks, "week")}, from ${longDate(a.recommended.plan.start_date)}.`,
    figures: [
      ["Situation", words(a.situation)],
      ["Decided by", words(a.decided_by)],
      ["Body fat", share(a.leanness?.fat_fraction)],
      ["A cut is due at", percent(a.leanness?.cut_due_fat_fraction, 1)],
      ["Maintenance", energy(a.maintenance_kcal)],
    ],
    tables: [
      table(`What each choice brings in ${count(a.horizon_weeks, "week")}`,
        ["Choice", "Open", "Lean tissue", "Fat", "Body fat at the end", "Days dieting", "Score kg"],
        a.alternatives.map((row) => [
          title(row.kind), row.open ? "yes" : `no: ${row.closed_because?.text ?? "closed"}`, massChange(row.lean_kg),
          massChange(row.fat_kg), share(row.end_fat_fraction), number(row.days_dieting), number(row.score?.total_kg, 2)])),
    ],
  }),

  plan_season: season,

  compare_strategies: (a) => ({
    figures: [
      ["Maintenance", energy(a.start.maintenance_kcal)],
      ["Body fat at the start", share(a.start.body_fat_fraction)],
      ["Lives drawn for the intervals", number(a.draws)],
    ],
    tables: [
      table("Strategies", ["Strategy", "Within limits", "Lean tissue gained", "Fat gained", "Days dieting", "Cuts", "Body fat at the end"],
        a.strategies.map((row) => [
          title(row.label), yes(row.feasible), massChange(row.intervals.lean_gained_kg), massChange(row.intervals.fat_gained_kg),
          interval(row.intervals.days_dieting), number(row.expected.cuts), share(row.intervals.final_fat_fraction)])),
      a.refused.length
        ? table("Refused", ["Strategy", "Why"], a.refused.map((row) => [title(row.label), `${row.text} (${row.rule})`]))
        : null,
      details(
        "How likely each is to do better than another",
        table("Chances", ["Strategy", "Over", "More lean tissue", "Less fat", "Fewer days dieting"],
          a.chances.map((row) => [
            title(row.label), words(row.over), percent(row.more_lean), percent(row.less_fat), percent(row.fewer_days_dieting)])),
      ),
    ],
  }),

  optimise_season: (a) => {
    const { tables, ...rest } = season(a);
    const found = [a.runner_up ? ["Runner-up", a.runner_up] : null, ...(a.trade_off ?? []).map((row) => ["Trade-off", row])];
    return {
      ...rest,
      figures: [...rest.figures, ["Strategies searched", number(a.searched?.strategies)]],
      tables: [
        ...tables,
        details(
          "What else was found",
          table("Other strategies", ["What", "Surplus kcal/d", "Cut at", "Cut to", "Lean gained kg", "Days dieting", "Weeks above the band"],
            found.filter(Boolean).map(([what, { strategy, expected }]) => [
              what, number(strategy.surplus_kcal), percent(strategy.cut_at_fat_fraction, 1),
              percent(strategy.cut_to_fat_fraction, 1), number(expected.lean_gained_kg, 2), number(expected.days_dieting),
              number(expected.weeks_above_band)])),
        ),
      ],
    };
  },
};

function planLead({ kind, start_date: start, end_date: end, weeks, change: { fat_kg: fat } }) {
  const moved = fat.mean < 0 ? `${number(-fat.mean, 1)} kg less fat` : `${number(fat.mean, 1)} kg more fat`;
  const eat = `Eat ${range(weeks.map((week) => week.intake_kcal))} kcal a day`;
  const scale = `the scale says about ${number(weeks.at(-1).at_end.weight_kg.mean, 1)} kg on ${longDate(end)}`;
  return `${choiceName(kind)}, ${count(weeks.length, "week")} from ${longDate(start)}: about ${moved}. ${eat}; ${scale}.`;
}

function reviewLead(a) {
  const eat = a.correction_kcal ? `, and eat ${number(Math.abs(a.correction_kcal))} kcal a day ${a.correction_kcal < 0 ? "less" : "more"}` : "";
  const wait = a.verdict === "too_early" && a.more_days_needed ? ` About ${count(a.more_days_needed, "more day")} of logging will tell.` : "";
  const found = VERDICTS[a.verdict] ?? title(a.verdict);
  return `${found}: ${a.is_finished ? "the phase is over" : (DECISIONS[a.decision] ?? words(a.decision))}${eat}.${wait}`;
}

function season(a) {
  const totals = a.plan?.totals;
  return {
    lead: a.feasible ? null : broken(a.broken_limits),
    figures: [
      ["Lean tissue gained", massChange(totals?.lean_gained_kg)],
      ["Fat gained", massChange(totals?.fat_gained_kg)],
      ["Days dieting", totals ? `${number(totals.days_dieting)} in ${count(totals.cuts, "cut")}` : undefined],
      ["Body fat at most", share(totals?.peak_fat_fraction)],
      ["Body fat at the end", share(totals?.final_fat_fraction)],
      ["Maintenance at the start", energy(a.start.maintenance_kcal)],
    ],
    tables: a.plan
      ? [
          table("Phases", ["Phase", "Days", "Weeks", "kcal a day", "Fat kg", "Lean tissue kg"],
            a.plan.phases.map((phase) => [
              title(phase.kind), `${shortDate(phase.start_date)} to ${shortDate(phase.end_date)}`, number(phase.weeks),
              range(phase.intakes.map((each) => each.intake_kcal)), interval(phase.change.fat_kg, change, 1),
              interval(phase.change.lean_kg, change, 1)])),
        ]
      : [],
  };
}

function broken(limits) {
  const said = limits.map((each) => `${words(each.limit)} ${readable(each.found)}, allowed ${readable(each.allowed)}`);
  return `This season does not keep every limit: ${said.join("; ")}.`;
}

function bodyByWeek(caption, weeks) {
  return table(caption, ["Week from", "kcal/d", "Weight at its end kg", "Fat kg", "Lean tissue kg", "Carried mass kg"],
    weeks.map((week) => [
      week.start_date, number(week.intake_kcal), interval(week.at_end.weight_kg, number, 1),
      number(week.at_end.fat_kg.mean, 1), number(week.at_end.lean_kg.mean, 1), change(week.at_end.carried_kg.mean)]));
}

const yes = (value) => (value ? "yes" : "no");

function range(values) {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  return least === most ? number(least) : `${number(least)} to ${number(most)}`;
}

const NEAREST = {
  fat_loss_kg: (value) => `${number(value, 1)} kg of fat in the time asked`,
  weeks: (value, { weeks_kind: kind }) => `a ${words(kind ?? "cut")} of ${count(value, "week")}`,
  deficit_kcal: (value) => `a deficit of ${number(value)} kcal a day at most`,
  target_weight_kg: (value) => `a weight of ${number(value, 1)} kg`,
  intake_kcal: (value) => `${number(value)} kcal a day`,
  by_date: (value) => `the target on ${longDate(value)}`,
  value: (value) => `${number(value, value < 1 ? 3 : 1)} reached by the date`,
};

function infeasible(nearest) {
  const near = Object.entries(NEAREST).filter(([name]) => nearest?.[name] !== null && nearest?.[name] !== undefined);
  const said = near.map(([name, tell]) => tell(nearest[name], nearest));
  return `No safe plan does what was asked.${said.length ? ` Nearest: ${said.join("; ")}.` : ""}`;
}

// A value of the wire in a line of text, whatever it is.
function readable(value, unit = "") {
  if (value === null || value === undefined) return "not known";
  if (typeof value === "number") return `${number(value, value % 1 ? 1 : 0)} ${unit}`.trim();
  if (typeof value !== "object") return words(value);
  if ("mean" in value && typeof value.mean === "number") return `${interval(value)} ${unit}`.trim();
  return Object.entries(value).map(([name, each]) => `${words(name)} ${readable(each)}`).join(", ");
}

function plainValues(answer) {
  const figures = Object.entries(answer).filter(([, value]) => !Array.isArray(value));
  return { figures: figures.map(([name, value]) => [title(name), readable(value)]), tables: [] };
}
