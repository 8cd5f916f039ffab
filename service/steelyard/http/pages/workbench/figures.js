// Numbers and names as people read them.

const NBSP = "\u00a0";
const formats = new Map();

const tight = (text) => text.replaceAll(" ", NBSP);

/** A number with so many decimals, and a minus sign that is one. */
export function number(value, decimals = 0) {
  if (value === null || value === undefined) return "not known";
  if (!formats.has(decimals)) {
    formats.set(decimals, new Intl.NumberFormat("en", {
      minimumFractionDigits: decimals,
      maximumFractionDigits: decimals,
      signDisplay: "negative",
    }));
  }
  return formats.get(decimals).format(value).replace("-", "−");
}

/** A number with its sign, for changes. */
export function change(value, decimals = 1) {
  if (value === null || value === undefined) return "not known";
  const text = number(value, decimals);
  return text.startsWith("−") || Number(value.toFixed(decimals)) === 0 ? text : `+${text}`;
}

/** Mean and interval: `2,379 (2,070 to 2,688)`, which breaks before the interval only. */
export function interval(value, format = number, decimals = 0, factor = 1) {
  if (value === null || value === undefined) return "not known";
  const [mean, lower, upper] = [value.mean, value.lower, value.upper].map((each) => format(each * factor, decimals));
  return `${mean} (${tight(`${lower} to ${upper}`)})`;
}

/** An interval in kilocalories a day. */
export const energy = (value) => (value ? `${interval(value)}${NBSP}kcal/d` : "not known");

/** An interval in kilograms. */
export const mass = (value) => (value ? `${interval(value, number, 1)}${NBSP}kg` : "not known");

/** An interval of a change in kilograms. */
export const massChange = (value) => (value ? `${interval(value, change, 1)}${NBSP}kg` : "not known");

/** An interval of a fraction, as per cent. */
export const share = (value) => (value ? `${interval(value, number, 1, 100)}${NBSP}%` : "not known");

/** A fraction as per cent. */
export const percent = (value, decimals = 0) =>
  value === null || value === undefined ? "not known" : `${number(value * 100, decimals)} %`;

/** A name of the wire for reading: `mini_cut` is `mini cut`. */
export const words = (name) => String(name).replaceAll("mini_cut", "mini-cut").replaceAll("_", " ");

/** The same with a capital. */
export function title(name) {
  const text = words(name);
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** A count with its noun. */
export const count = (value, noun, nouns = `${noun}s`) => `${number(value)} ${value === 1 ? noun : nouns}`;

const day = new Intl.DateTimeFormat("en-GB", { day: "numeric", month: "long", year: "numeric", timeZone: "UTC" });

const shortDay = new Intl.DateTimeFormat("en-GB", { day: "numeric", month: "short", timeZone: "UTC" });

/** A date in few signs: `4 May`. */
export const shortDate = (date) => tight(shortDay.format(new Date(`${date}T00:00Z`)));

/** A date in words: `4 May 2026`. */
export const longDate = (date) => (/^\d{4}-\d\d-\d\d$/.test(date ?? "") ? tight(day.format(new Date(`${date}T00:00Z`))) : String(date));
