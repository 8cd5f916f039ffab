// A coach's members: each is reviewed, then all are put in the order in which to look at them.

import { details, element, part, table } from "./elements.js";
import { change, count, longDate, number, title } from "./figures.js";
import { dayAfter } from "./next_steps.js";
import { send } from "./service.js";

const MOST = 500; // of one roster; larger ones are merged by their priorities
const LEVELS = ["as planned", "look at the log", "this week", "today"];

/** The members in a text: lines of a batch or reviews' requests, as one JSON array or one a line. */
export function membersOf(text) {
  const rows = text.trim().startsWith("[") ? JSON.parse(text) : text.split("\n").filter((line) => line.trim()).map((line) => JSON.parse(line));
  return rows.map(({ reference, body, operation, ...review }, i) => ({ reference: String(reference ?? `member-${i + 1}`), body: body ?? review }));
}

/** Review all, and rank those who could be reviewed: `{places, failed, day}`, or `{problem}` where no ranking came. */
export async function ranked(members, day, key) {
  const now = await reviewed(members, key);
  if (now.problem) return now;
  // Last week's attention is in the state; of those who send their whole log it is what that log said a week ago.
  const untold = members.filter(({ reference, body }) => now.attention.has(reference) && !body.state && body.log);
  const before = await reviewed(untold.map(({ reference, body }) => ({ reference, body: aWeekAgo(body, now.attention.get(reference).as_of_date) })), key);
  const rows = members.filter(({ reference }) => now.attention.has(reference)).map(({ reference, body }) => {
    const last = body.state?.attention ?? before.attention?.get(reference);
    return { reference, attention: now.attention.get(reference), ...(last && { before: last }) };
  });
  const latest = day || rows.map((each) => each.attention.as_of_date).sort().at(-1);
  const places = [];
  for (let from = 0; from < rows.length; from += MOST) {
    const answer = await send("/v1/rosters", JSON.stringify({ as_of_date: latest, members: rows.slice(from, from + MOST) }), key);
    if (answer.status !== 200) return { problem: answer };
    places.push(...answer.json.members);
  }
  places.sort((a, b) => b.priority - a.priority);
  return { places, failed: now.failed, day: latest };
}

async function reviewed(members, key) {
  const [attention, failed] = [new Map(), []];
  if (!members.length) return { attention, failed };
  const lines = members.map(({ reference, body }) => JSON.stringify({ reference, operation: "review_phase", body }));
  const batch = await send("/v1/batches", lines.join("\n"), key, "application/x-ndjson");
  if (batch.status !== 200) return { problem: batch };
  for (const { line, result, problem } of batch.text.trim().split("\n").map((each) => JSON.parse(each))) {
    if (result) attention.set(members[line - 1].reference, result.attention);
    else if (problem) failed.push({ reference: members[line - 1].reference, problem });
  }
  return { attention, failed };
}

function aWeekAgo(body, day) {
  const then = dayAfter(day, -7);
  const cut = (list) => list?.filter((each) => (each.date ?? each) <= then);
  return { ...body, as_of_date: then, log: Object.fromEntries(Object.entries(body.log).map(([name, list]) => [name, cut(list)])) };
}

/** The ranked table; `open` is called with a member's reference. */
export function rosterView({ places, failed, day }, open) {
  const opener = (reference) => {
    const button = element("button", { type: "button", class: "quiet" }, reference);
    button.addEventListener("click", () => open(reference));
    return button;
  };
  const levels = [3, 2, 1, 0].map((level) => [level, places.filter((each) => each.attention.level === level).length]);
  const rows = places.map(({ reference, attention, days_silent: silent, change: moved }, i) => [
    number(i + 1), opener(reference), element("span", { class: `level level-${attention.level}` }, `${attention.level}: ${LEVELS[attention.level]}`),
    attention.reason.text, attention.action.text, attention.change_kcal ? `${change(attention.change_kcal, 0)} kcal a day` : "none",
    longDate(attention.since_date), silent === null ? "no entry" : number(silent), title(moved)]);
  return part("In this order",
    element("p", { class: "lead" }, `${longDate(day)}. ${levels.filter(([, many]) => many).map(([level, many]) => `${title(LEVELS[level])}: ${number(many)}.`).join(" ")}`),
    table("Members, who needs it most first", ["Place", "Member", "Attention", "Why", "What to do", "Intake changed", "Since", "Days silent", "Against last week"], rows),
    failed.length ? table("Not reviewed", ["Member", "Why not"], failed.map(({ reference, problem }) => [opener(reference), whyNot(problem)])) : null);
}

// In a coach's words; the place in the request and the service's own words are behind a fold.
function whyNot(problem) {
  const faults = problem.errors ?? [];
  const places = [...new Set(faults.map(({ pointer }) => placeInWords(pointer)).filter(Boolean))];
  const said = places.length
    ? `Something in this member's data is missing or cannot be right: ${places.join("; ")}.`
    : "This member's data could not be read.";
  return element("div", {}, element("p", {}, said),
    details("For whoever prepares the data", element("p", {}, problem.detail),
      ...faults.map(({ pointer, code }) => element("p", {}, element("code", { class: "pointer" }, pointer), " ", element("code", { class: "code" }, code)))));
}

// `#/phase/weeks/0/intake_kcal` as `phase, weeks, number 1, intake`.
function placeInWords(pointer) {
  return pointer.replace(/^#\/?/, "").split("/").filter(Boolean)
    .map((name) => (/^\d+$/.test(name) ? `number ${Number(name) + 1}` : name.replace(/_(kcal|kg|g|cm|fraction|percent)$/, "").replaceAll("_", " ")))
    .join(", ");
}

/** Invented members, made of the page's examples of reviews, all looked at on one day. */
export function inventedMembers(examples) {
  const [midway, early, after] = ["midway", "too_early", "afterwards"].map((name) => examples.find((each) => each.name === name).body);
  const last = (body) => body.log.weights.at(-1).date;
  const today = dayAfter(last(after));
  // The same person some days sooner or later, altered.
  const member = (reference, body, alter = () => {}, silent = 0) => {
    const days = (Date.parse(today) - Date.parse(last(body))) / 86_400_000 - 1 - silent;
    const moved = JSON.parse(JSON.stringify(body).replace(/\d{4}-\d\d-\d\d/g, (date) => dayAfter(date, days)));
    alter(moved);
    return { reference, body: { ...moved, as_of_date: today } };
  };
  return [
    member("Amara", midway),
    member("Bruno", early),
    member("Chiara", midway, (body) => {
      body.log.check_ins = [7, 0].map((days) => ({ date: dayAfter(today, -days), hunger: 5, sleep: 1, mood: 1, strength: "down_much" }));
    }),
    member("Dmitri", midway, undefined, 9),
    member("Eszter", midway, ({ log, phase }) => {
      for (const each of log.weights) {
        const week = Math.max(0, Date.parse(each.date) - Date.parse(phase.start_date)) / (7 * 86_400_000);
        each.weight_kg = Number((each.weight_kg + 1 * week).toFixed(1));
      }
    }),
    member("Farid", { ...after, screening: midway.screening }),
    member("Greta", midway, ({ phase }) => {
      phase.weeks[0].intake_kcal = 0;
    }),
  ];
}
