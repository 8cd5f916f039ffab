// Why an answer is what it is: cautions, guard rails, reasons, and the methods behind them with their sources.

import { details, element, part, table } from "./elements.js";
import { count, number, title, words } from "./figures.js";

const LISTS = {
  cautions: "Cautions",
  reasons: "Reasons",
  what_would_change: "What would change this",
  notes: "Notes",
  ends_early_when: "Ends early when",
  guidance: "Guidance",
};

/** The cautions, then the guard rails, then every other message; each text once, and nothing for what is empty. */
export function messagesOf(answer, catalogue) {
  const found = { lists: new Map(Object.keys(LISTS).map((name) => [name, new Map()])), rails: new Map() };
  collect(answer, found);
  const [[, cautions], ...others] = found.lists;
  return [
    cautions.size ? part("Cautions", element("ul", { class: "cautions" }, ...[...cautions.values()].map(messageItem))) : null,
    found.rails.size
      ? part("Guard rails", element("ul", { class: "rails" }, ...[...found.rails.values()].map((rail) => railItem(rail, catalogue))))
      : null,
    ...others
      .filter(([, messages]) => messages.size)
      .map(([name, messages]) => part(LISTS[name], ...shortened([...messages.values()].map(messageItem)))),
  ];
}

/** What the numbers rest on: the answer's methods, joined with the catalogue. */
export function methodsOf(answer, catalogue) {
  const ids = answer.methods ?? [];
  if (!catalogue) {
    return part("Sources", element("p", {}, "The catalogue of methods could not be read with this key; it needs the scope ",
      element("code", {}, "methods"), "."));
  }
  const entries = ids.map((id) => catalogue.entries.get(id)).filter(Boolean);
  const cited = new Set(entries.flatMap((entry) => entry.source_ids));
  const kinds = [...new Set(entries.map((entry) => entry.kind))];
  return part(
    "Sources",
    element("p", {}, `These numbers rest on ${count(entries.length, "entry", "entries")} of the catalogue, and those on ${count(cited.size, "source")}.`),
    ...kinds.map((kind) => {
      const rows = entries.filter((entry) => entry.kind === kind);
      return details(
        count(rows.length, words(kind)),
        table(`${title(kind)}s`, ["What it is", "Formula or value", "Source"],
          rows.map((entry) => [
            element("span", {}, entry.summary, " ", element("code", { class: "code" }, entry.id)), entry.formula, sourcesOf(entry, catalogue)])),
      );
    }),
  );
}

// The first of a list, and the others behind a fold.
function shortened(items, most = 4) {
  const [first, others] = items.length > most + 1 ? [items.slice(0, most), items.slice(most)] : [items, []];
  return [element("ul", {}, ...first), others.length ? details(`${number(others.length)} more`, element("ul", {}, ...others)) : null];
}

function collect(node, found) {
  if (Array.isArray(node)) {
    for (const each of node) collect(each, found);
  } else if (node !== null && typeof node === "object") {
    for (const [name, value] of Object.entries(node)) {
      if (name in LISTS && Array.isArray(value)) {
        for (const message of value) if (message?.text) found.lists.get(name).set(message.text, message);
      } else if (name === "guard_rails" && Array.isArray(value)) {
        for (const rail of value) found.rails.set(`${rail.id} ${rail.text}`, rail);
      } else {
        collect(value, found);
      }
    }
  }
}

const messageItem = (message) => element("li", {}, message.text, " ", element("code", { class: "code" }, message.code));

function railItem(rail, catalogue) {
  const entry = catalogue?.entries.get(rail.id);
  const limit = rail.limit === null ? "" : `Limit ${measured(rail.limit, rail.unit)}`;
  const read = rail.observed === null ? "" : `${limit ? "; found" : "Found"} ${measured(rail.observed, rail.unit)}`;
  return element(
    "li", {},
    element("strong", {}, title(rail.action)), ": ", rail.text, " ", element("code", { class: "code" }, rail.id),
    limit || read ? element("p", { class: "hint" }, `${limit}${read}.`) : null,
    entry ? element("p", { class: "hint" }, `${entry.summary}. `, sourcesOf(entry, catalogue)) : null,
  );
}

// A value with its unit; a share of something as per cent.
const measured = (value, unit) => (unit.startsWith("of ") ? `${plain(100 * value)} % ${unit}` : `${plain(value)} ${unit}`.trim());

const plain = (value) => number(value, value % 1 === 0 || Math.abs(value) >= 100 ? 0 : Math.abs(value) >= 1 ? 1 : 2);

// The entry's sources in one cell; without any, what it rests on instead.
function sourcesOf(entry, catalogue) {
  const sources = entry.source_ids.map((id) => catalogue.sources.get(id)).filter(Boolean);
  if (!sources.length) return element("span", {}, `${title(entry.basis)}.`);
  return element("span", {}, ...sources.flatMap((source, i) => [i ? " " : "", source.citation, " ", doiOf(source)]));
}

function doiOf(source) {
  if (!source.doi) return null;
  const address = `https://doi.org/${source.doi.split("/").map(encodeURIComponent).join("/")}`;
  return element("a", { href: address, target: "_blank", rel: "noopener noreferrer" }, `doi:${source.doi}`);
}
