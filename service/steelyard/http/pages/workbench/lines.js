// Lists of numbers as lines of text, for pasting from a sheet and for reading. Nothing is judged here: what is no
// number goes to the service as it was typed.

const NOTHING = "-";

/** A log's weights and intakes: a day a line, with date, weight, energy and carbohydrate. */
export function linesOfLog({ weights = [], intakes = [] }) {
  const days = new Map();
  const day = (date) => days.get(date) ?? days.set(date, { weights: [], intakes: [] }).get(date);
  for (const each of weights) day(each.date).weights.push(each);
  for (const each of intakes) day(each.date).intakes.push(each);
  return [...days].sort(([a], [b]) => (a < b ? -1 : 1)).flatMap(([date, { weights, intakes }]) =>
    Array.from({ length: Math.max(weights.length, intakes.length) }, (_, i) => {
      const eaten = intakes[i];
      const cells = [date, weights[i]?.weight_kg, eaten?.intake_kcal, eaten?.carbohydrate_g, eaten?.is_partial ? "partly" : undefined];
      while (cells.length > 2 && cells.at(-1) === undefined) cells.pop();
      return cells.map((cell) => cell ?? NOTHING).join("  ");
    })).join("\n");
}

/** The weights and intakes of such lines; what else was known of an entry stays with it. */
export function logOfLines(text, before) {
  const [weights, intakes] = [[], []];
  const known = (list, date, i) => list?.filter((each) => each.date === date)[i];
  for (const [date, weight, energy, carbohydrate, partly] of rowsOf(text)) {
    const day = isoDate(date);
    if (isThere(weight)) {
      const order = weights.filter((each) => each.date === day).length;
      weights.push({ date: day, ...(order && { order }), ...known(before.weights, day, order), weight_kg: numberOf(weight) });
    }
    if (isThere(energy)) {
      const { carbohydrate_g: _, is_partial: wasPartial, ...rest } = known(before.intakes, day, 0) ?? {};
      const isPartial = isThere(partly);
      intakes.push({ date: day, ...rest, intake_kcal: numberOf(energy), ...(isThere(carbohydrate) && { carbohydrate_g: numberOf(carbohydrate) }),
        ...((isPartial || wasPartial !== undefined) && { is_partial: isPartial }) });
    }
  }
  return { weights, intakes };
}

/** The weeks of a phase: a week a line, with energy, protein and carbohydrate a day. */
export const linesOfWeeks = (weeks) =>
  weeks.map((week) => [week.intake_kcal, week.protein_g, week.carbohydrate_g].filter((each) => each !== undefined).join("  ")).join("\n");

/** The weeks of such lines; what else was known of a week stays with it. */
export const weeksOfLines = (text, before) =>
  rowsOf(text).map(([energy, protein, carbohydrate], i) => ({
    ...before[i], intake_kcal: numberOf(energy), protein_g: isThere(protein) ? numberOf(protein) : undefined,
    carbohydrate_g: isThere(carbohydrate) ? numberOf(carbohydrate) : undefined,
  }));

/** A number as typed, with point or comma; what is none stays a text. */
export function numberOf(text) {
  const number = Number(text.trim().replace(",", "."));
  return text.trim() && Number.isFinite(number) ? number : text;
}

const isThere = (cell) => cell !== undefined && cell !== NOTHING && cell !== "";

// Cells stand between spaces, tabs or semicolons; without any of those between commas.
const rowsOf = (text) =>
  text.split("\n").map((line) => line.trim()).filter(Boolean).map((line) => {
    const cells = line.includes("\t") || line.includes(";") ? line.split(/[\t;]/) : line.split(/\s+/);
    return (cells.length > 1 ? cells : line.split(",")).map((cell) => cell.trim());
  });

function isoDate(text) {
  const [, day, month, year] = text.match(/^(\d{1,2})\.(\d{1,2})\.(\d{4})$/) ?? [];
  return year ? `${year}-${month.padStart(2, "0")}-${day.padStart(2, "0")}` : text;
}
