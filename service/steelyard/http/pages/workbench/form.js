// A form made from the contract's schema of a body. It writes into the body as it is filled in; what is left empty is
// left out, and no rule of the service is repeated here: what is wrong is said by the service and shown at its field.

import { details, element } from "./elements.js";
import { count, longDate, number, percent } from "./figures.js";
import { linesOfLog, linesOfWeeks, logOfLines, numberOf, weeksOfLines } from "./lines.js";
import { withoutNulls } from "./next_steps.js";
import { choiceName, hintOf, isShare, labelOf } from "./wording.js";

// The order in which a coach thinks of them; all others follow.
const ORDER = ["state", "profile", "sex", "age_years", "height_cm", "weight_kg", "screening", "start_date", "as_of_date", "phase", "question", "strategy", "goal", "feeling", "is_finished", "settled", "log"];
const OPEN = ["phase", "question", "strategy", "settled", "log", "measurements"]; // what one came for; the rest where it is not filled in

let schemas = {};
let body = {};
let root = "";
let place = null; // the element that holds the form
let changed = () => {};
let ahead = []; // invented days as the last answer expects them, to play with

/** Make the form in `element_`; `told` is called when the body was changed by it. */
export function setUpForm(element_, schemas_, told) {
  [place, schemas, changed] = [element_, schemas_, told];
}

/** Show `value`, a body of the schema `name`. The form works on a copy of its own, which `formBody` gives. */
export function showForm(name, value, days = []) {
  const { state, ...rest } = value;
  [root, body, ahead] = [name, { ...withoutNulls(rest), ...(state && { state: structuredClone(state) }) }, days];
  place.replaceChildren(...sections());
}

export const formBody = () => body;

/** Show a fault at its field, or at the nearest around it; gives the control to go to, or null. */
export function showFault({ pointer, detail }) {
  for (let at = decodeURIComponent(pointer); at.length > 1; at = at.slice(0, at.lastIndexOf("/"))) {
    const field = [...place.querySelectorAll("[data-pointer]")].find((each) => each.dataset.pointer === at || each.dataset.also === at);
    if (!field) continue;
    for (let fold = field.closest("details"); fold; fold = fold.parentElement.closest("details")) fold.open = true;
    const control = field.querySelector("input, select, textarea, button");
    const said = element("p", { class: "fault", id: `fault-${place.querySelectorAll(".fault").length}` }, plainly(detail, pointer));
    field.append(said);
    control?.setAttribute("aria-invalid", "true");
    control?.setAttribute("aria-describedby", [control.getAttribute("aria-describedby"), said.id].filter(Boolean).join(" "));
    return control;
  }
  return null;
}

/** Take all faults away. */
export function clearFaults() {
  for (const said of place.querySelectorAll(".fault")) {
    const control = place.querySelector(`[aria-describedby~="${said.id}"]`);
    const rest = control?.getAttribute("aria-describedby").split(" ").filter((id) => id !== said.id).join(" ");
    if (rest) control.setAttribute("aria-describedby", rest);
    else control?.removeAttribute("aria-describedby");
    control?.removeAttribute("aria-invalid");
    said.remove();
  }
}

// The service names a field as the contract does, the form as people do.
function plainly(detail, pointer) {
  const name = pointer.split("/").at(-1);
  const path = /^['`]?[\w.]+(\[\d+\][\w.]*)*['`]?(?= is | has )/;
  const day = pointer.match(/^#\/log\/(weights|intakes)\/(\d+)/);
  const entry = day && body.log?.[day[1]]?.[Number(day[2])];
  const label = /^\d+$/.test(name) ? "This" : labelOf(name).replace(/,.*/, "");
  return (entry?.date ? `${entry.date}: ` : "") + detail.replace(path, label);
}

function redraw(focus) {
  const open = new Map([...place.querySelectorAll("details[data-fold]")].map((each) => [each.dataset.fold, each.open]));
  place.replaceChildren(...sections());
  for (const fold of place.querySelectorAll("details[data-fold]")) fold.open = open.get(fold.dataset.fold) ?? fold.open;
  const field = [...place.querySelectorAll("[data-pointer]")].find((each) => each.dataset.pointer === focus);
  field?.querySelector("input, select, textarea, button")?.focus();
}

function sections() {
  return fieldsOf(resolved({ $ref: root }), body, "#");
}

// A schema with what it refers to in it, and without the null of what may be left out.
function resolved(schema) {
  const some = schema.anyOf?.filter((each) => each.type !== "null");
  if (some?.length === 1) {
    const { anyOf, ...rest } = schema;
    return resolved({ ...some[0], ...rest });
  }
  if (schema.$ref) {
    const { $ref, ...rest } = schema;
    const name = $ref.split("/").at(-1);
    return { ...resolved(schemas[name] ?? {}), ...rest, name };
  }
  return Array.isArray(schema.type) ? { ...schema, type: schema.type.find((each) => each !== "null") } : schema;
}

function fieldsOf(schema, holder, pointer) {
  const rank = (name) => (ORDER.includes(name) ? ORDER.indexOf(name) : ORDER.length);
  const names = Object.keys(schema.properties ?? {}).filter((name) => schema.properties[name].const === undefined);
  if (pointer === "#") names.sort((a, b) => rank(a) - rank(b));
  const required = new Set(schema.required ?? []);
  const isUsual = (name) => JSON.stringify(holder[name]) === JSON.stringify(schema.properties[name]["x-steelyard-default"]);
  const isOpen = (name) => required.has(name) || ["log", "weeks"].includes(name) || !isUsual(name);
  const made = (name) => fieldOf({ name, holder, schema: resolved(schema.properties[name]), pointer: `${pointer}/${name}`, required: required.has(name) });
  const [shown, more] = [names.filter(isOpen), names.filter((name) => !isOpen(name) && name !== "state")];
  return grouped([...shown.map(made), ...(more.length ? [fold(`${pointer}/more`, "More to tell", false, ...grouped(more.map(made)))] : [])]);
}

// Short fields stand side by side.
function grouped(fields) {
  const rows = [];
  for (const field of fields) {
    if (!field.classList.contains("short")) rows.push(field);
    else if (rows.at(-1)?.classList.contains("side-by-side")) rows.at(-1).append(field);
    else rows.push(element("div", { class: "side-by-side" }, field));
  }
  return rows;
}

function fold(name, summary, open, ...children) {
  const made = details(summary, ...children);
  made.dataset.fold = name;
  made.open = open;
  return made;
}

function fieldOf(at) {
  const { name, schema, holder, pointer } = at;
  if (schema.name === "State") return stateCard(at);
  if (schema.name === "Log") return section(at, logFields);
  if (name === "weeks" && schema.type === "array") return weeksField(at);
  if (schema.discriminator) return section(at, unionFields);
  if (schema.enum) return choice(at, schema.enum);
  if (schema.type === "boolean") return choice(at, [true, false]);
  if (schema.type === "object") return section(at, (each) => fieldsOf(each.schema, each.holder[each.name], each.pointer));
  if (schema.type === "array") {
    const items = resolved(schema.items);
    if (items.enum) return boxes(at, items.enum);
    if (items.type === "object" || items.discriminator) return section(at, (each) => itemsOf(each, items));
    return textField({ ...at, isList: true, items });
  }
  if (["number", "integer", "string"].includes(schema.type)) return textField(at);
  return jsonField(at);
}

function set({ holder, name }, value) {
  if (value === undefined) delete holder[name];
  else holder[name] = value;
  changed();
}

const idOf = (pointer) => `f${pointer.slice(1).replaceAll("/", "-")}`;

function field({ name, pointer, schema, title }, control, isShort = true) {
  const hint = hintOf(schema.description, name);
  const id = idOf(pointer);
  control.id = id;
  if (hint) control.setAttribute("aria-describedby", `${id}-hint`);
  return element("div", { class: isShort ? "field short" : "field", "data-pointer": pointer },
    element("label", { for: id }, title ?? labelOf(name)), control,
    hint ? element("p", { class: "hint", id: `${id}-hint` }, hint) : null);
}

function textField(at) {
  const { name, holder, schema, isList, items } = at;
  const isDay = schema.format === "date";
  const isNumber = (items ?? schema).type !== "string";
  const factor = isShare(name) ? 100 : 1;
  const value = holder[name];
  const shown = (each) => (typeof each === "number" ? String(Number((each * factor).toFixed(6))) : String(each));
  const control = element("input", { type: isDay ? "date" : "text", inputmode: isNumber && "decimal", autocomplete: "off",
    value: value === undefined ? "" : isList ? value.map(shown).join(", ") : shown(value),
    placeholder: schema["x-steelyard-default"] !== undefined && !isList && `Usual: ${shown(schema["x-steelyard-default"])}` });
  const read = (text) => {
    const read_ = isNumber ? numberOf(text) : text.trim();
    return typeof read_ === "number" ? Number((read_ / factor).toFixed(8)) : read_;
  };
  control.addEventListener("input", () => {
    const text = control.value;
    if (!text.trim()) set(at, isList && holder[name] !== undefined ? [] : undefined);
    else set(at, isList ? text.split(/[,;\s]+/).filter(Boolean).map(read) : read(text));
  });
  return field(at, control, !isList);
}

function choice(at, values) {
  const usual = at.schema["x-steelyard-default"];
  const named = (value) => (value === true ? "Yes" : value === false ? "No" : choiceName(value));
  const none = at.required ? "Choose" : usual !== undefined ? `Usual: ${named(usual)}` : "Left open";
  const control = element("select", {}, element("option", { value: "" }, none),
    ...values.map((value, i) => element("option", { value: i, selected: at.holder[at.name] === value }, named(value))));
  control.addEventListener("change", () => set(at, control.value === "" ? undefined : values[Number(control.value)]));
  return field(at, control);
}

// Some of a few: none of them is an answer too, and is not the same as no answer.
function boxes(at, values) {
  const { name, holder, pointer } = at;
  const NONE = "None of these";
  const shown = [NONE, ...values];
  const inputs = shown.map((value, i) => element("input", { type: "checkbox", id: `${idOf(pointer)}-${i}`,
    checked: value === NONE ? holder[name]?.length === 0 : holder[name]?.includes(value) }));
  for (const [i, input] of inputs.entries()) {
    input.addEventListener("change", () => {
      if (i === 0) for (const other of inputs.slice(1)) other.checked = false;
      else inputs[0].checked = false;
      const chosen = values.filter((_, k) => inputs[k + 1].checked);
      set(at, chosen.length || inputs[0].checked ? chosen : undefined);
    });
  }
  const rows = inputs.map((input, i) => element("span", { class: "box" }, input,
    element("label", { for: input.id }, i === 0 ? NONE : choiceName(shown[i]))));
  return element("fieldset", { class: "boxes", "data-pointer": pointer }, element("legend", {}, labelOf(name)), ...rows);
}

// An object, a list or a choice of kinds: a fold at the top of the body, a group within; a button where it is not there.
function section(at, inside) {
  const { name, holder, schema, pointer, required } = at;
  const label = at.title ?? (name === "log" && body.state ? "Log since then" : labelOf(name));
  const isTop = pointer.split("/").length === 2;
  if (holder[name] === undefined && required) holder[name] = emptyOf(schema);
  if (holder[name] === undefined) {
    const add = element("button", { type: "button", class: "quiet" }, `Tell: ${label}`);
    add.addEventListener("click", () => {
      set(at, emptyOf(schema));
      redraw(pointer);
    });
    return element("div", { class: "field", "data-pointer": pointer }, add);
  }
  const leave = element("button", { type: "button", class: "quiet" }, `Leave out: ${label}`);
  leave.addEventListener("click", () => {
    set(at, undefined);
    redraw(pointer);
  });
  const content = [...inside(at), required ? null : leave];
  if (!isTop) return element("fieldset", { "data-pointer": pointer }, element("legend", {}, label), ...content);
  const about = { profile: aboutPerson, screening: aboutHealth }[name]?.(holder[name]);
  const isOpen = OPEN.includes(name) || (schema.required ?? []).some((each) => holder[name][each] === undefined);
  const made = fold(pointer, about ? `${label}: ${about}` : label, isOpen, element("div", { class: "inside" }, ...content));
  made.classList.add("section");
  made.dataset.pointer = pointer;
  return made;
}

function emptyOf(schema) {
  if (schema.type === "array") return [];
  return schema.discriminator ? { [schema.discriminator.propertyName]: Object.keys(schema.discriminator.mapping)[0] } : {};
}

function unionFields({ name, holder, schema, pointer }) {
  const { propertyName, mapping } = schema.discriminator;
  const value = holder[name];
  const kinds = Object.keys(mapping);
  const control = element("select", {}, ...kinds.map((kind) => element("option", { value: kind, selected: value[propertyName] === kind }, choiceName(kind))));
  const chosen = resolved({ $ref: mapping[value[propertyName]] ?? mapping[kinds[0]] });
  control.addEventListener("change", () => {
    // What both kinds know stays.
    const known = Object.keys(resolved({ $ref: mapping[control.value] }).properties);
    const kept = Object.entries(value).filter(([each]) => known.includes(each));
    set({ name, holder }, { ...Object.fromEntries(kept), [propertyName]: control.value });
    redraw(pointer);
  });
  const at = { name: propertyName, pointer: `${pointer}/${propertyName}`, schema: {} };
  return [field(at, control, false), ...fieldsOf(chosen, value, pointer)];
}

function itemsOf({ name, holder, pointer }, items) {
  const list = holder[name];
  const rows = list.map((_, i) => {
    const at = { name: i, title: `${labelOf(name)} ${i + 1}`, holder: list, pointer: `${pointer}/${i}`, schema: items, required: true };
    const remove = element("button", { type: "button", class: "quiet" }, `Remove ${i + 1}`);
    remove.addEventListener("click", () => {
      list.splice(i, 1);
      changed();
      redraw(pointer);
    });
    const made = fieldOf(at);
    made.append(remove);
    return made;
  });
  const add = element("button", { type: "button", class: "quiet" }, list.length ? "Add another" : "Add one");
  add.addEventListener("click", () => {
    list.push(emptyOf(items));
    changed();
    redraw(`${pointer}/${list.length - 1}`);
  });
  return [...rows, add];
}

function logFields(at) {
  const { holder, name, pointer, schema } = at;
  const log = holder[name];
  const control = element("textarea", { rows: "8", spellcheck: "false", autocomplete: "off", class: "lines" });
  control.value = linesOfLog(log);
  control.addEventListener("input", () => {
    Object.assign(log, logOfLines(control.value, log));
    changed();
  });
  const description = "A day a line: date, weight in kg, energy in kcal, carbohydrate in g. A dash where there is none.";
  const lines = field({ name: "weights", title: "Weights and intakes", pointer: `${pointer}/weights`, schema: { description } }, control, false);
  lines.dataset.also = `${pointer}/intakes`;
  const { weights, intakes, ...properties } = schema.properties;
  const played = [7, 28].filter((days) => ahead.length >= days || (days === 7 && ahead.length)).map((days) => {
    const button = element("button", { type: "button", class: "quiet" }, `Invent ${count(Math.min(days, ahead.length), "day")} as expected`);
    button.addEventListener("click", () => {
      const days_ = ahead.slice(0, days);
      log.weights = days_.map(({ date, weight_kg }) => ({ date, weight_kg }));
      log.intakes = days_.map(({ date, intake_kcal }) => ({ date, intake_kcal }));
      control.value = linesOfLog(log);
      changed();
      control.focus();
    });
    return button;
  });
  return [lines, played.length ? element("p", { class: "beside" }, ...played) : null, ...fieldsOf({ ...schema, properties, required: [] }, log, pointer)];
}

function weeksField(at) {
  const control = element("textarea", { rows: "5", spellcheck: "false", autocomplete: "off", class: "lines" });
  control.value = linesOfWeeks(at.holder[at.name] ?? []);
  control.addEventListener("input", () => set(at, weeksOfLines(control.value, at.holder[at.name] ?? [])));
  const description = "A week a line, as first planned: energy in kcal, protein and carbohydrate in g a day.";
  return field({ ...at, title: "Weeks of the phase", schema: { description } }, control, false);
}

function jsonField(at) {
  const control = element("textarea", { rows: "4", spellcheck: "false", class: "lines" });
  control.value = at.holder[at.name] === undefined ? "" : JSON.stringify(at.holder[at.name], null, 2);
  control.addEventListener("input", () => {
    try {
      set(at, control.value.trim() ? JSON.parse(control.value) : undefined);
    } catch {
      set(at, control.value); // the service says what it should be
    }
  });
  return field(at, control, false);
}

function stateCard({ holder, name, pointer }) {
  const state = holder[name];
  if (state === undefined) return element("div", { hidden: true });
  const { phase } = state;
  const weight = state.weight_kg?.mean;
  const facts = [
    weight && `${number(weight, 1)} kg`,
    weight && state.fat_kg && `body fat ${percent(state.fat_kg.mean / weight)}`,
    state.maintenance_kcal && `maintenance ${number(state.maintenance_kcal.mean)} kcal a day`,
    phase?.weeks && `${choiceName(phase.kind)} of ${count(phase.weeks.length, "week")} since ${longDate(phase.start_date)}`,
  ].filter(Boolean);
  const leave = element("button", { type: "button", class: "quiet" }, "Leave out what is known");
  leave.addEventListener("click", () => {
    set({ holder, name }, undefined);
    ahead = [];
    redraw("#/profile");
  });
  return element("div", { class: "known", "data-pointer": pointer },
    element("p", {}, element("strong", {}, `Known as of ${longDate(state.as_of_date)}: `), `${facts.join("; ")}.`), leave);
}

function aboutHealth(said) {
  const isClear = said.is_pregnant === false && said.is_breastfeeding === false && said.eating_disorder === "none";
  return isClear && said.conditions?.length === 0 && said.medicines?.length === 0 ? "nothing applies" : "";
}

function aboutPerson({ sex, age_years: age, height_cm: height, weight_kg: weight }) {
  const who = { male: "man", female: "woman" }[sex];
  return [who && age && `${who} of ${age}`, height && `${height} cm`, !body.state && weight && `${weight} kg`].filter(Boolean).join(", ");
}
