// Numbers and names as people read them.

const formats = new Map();

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

/** Mean and interval: `2,379 (2,070 to 2,688)`. */
export function interval(value, format = number, decimals = 0, factor = 1) {
  if (value === null || value === undefined) return "not known";
  const [mean, lower, upper] = [value.mean, value.lower, value.upper].map((each) => format(each * factor, decimals));
  return `${mean} (${lower} to ${upper})`;
}

/** An interval in kilocalories a day. */
export const energy = (value) => (value ? `${interval(value)} kcal/d` : "not known");

/** An interval in kilograms. */
export const mass = (value) => (value ? `${interval(value, number, 1)} kg` : "not known");

/** An interval of a change in kilograms. */
export const massChange = (value) => (value ? `${interval(value, change, 1)} kg` : "not known");

/** An interval of a fraction, as per cent. */
export const share = (value) => (value ? `${interval(value, number, 1, 100)} %` : "not known");

/** A fraction as per cent. */
export const percent = (value, decimals = 0) =>
  value === null || value === undefined ? "not known" : `${number(value * 100, decimals)} %`;

/** A name of the wire for reading: `mini_cut` is `mini cut`. */
export const words = (name) => String(name).replaceAll("_", " ");

/** The same with a capital. */
export function title(name) {
  const text = words(name);
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** A count with its noun. */
export const count = (value, noun) => `${number(value)} ${noun}${value === 1 ? "" : "s"}`;
