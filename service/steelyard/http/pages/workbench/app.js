// The page's wiring: what is filled in on the left, what came of it on the right, and how one goes on from there.

import { details, element, part } from "./elements.js";
import { messagesOf, methodsOf } from "./explanation.js";
import { count, longDate, number, title } from "./figures.js";
import { clearFaults, formBody, setUpForm, showFault, showForm } from "./form.js";
import { faultOf, placeOf } from "./json_places.js";
import { daysAhead, nextSteps, stepName } from "./next_steps.js";
import { problemView } from "./problem.js";
import { inventedMembers, membersOf, ranked, rosterView } from "./roster.js";
import { addressOf, catalogue, offered, picture, send } from "./service.js";
import { curlCommand, pythonCall } from "./snippets.js";
import { summaryOf } from "./summaries.js";

const at = (id) => document.getElementById(id);
const [operationChoice, exampleChoice, body, key] = ["operation", "example", "body", "key"].map(at);
const COACH = ["plan_phases", "review_phase", "decide_phase"]; // asked for most, in the order of a year
let operations = [];
let shownPicture = null; // the address of the picture on show, to be let go with it
let isCurrent = false; // whether the answer on show is that of the body as it stands
let turn = 0; // of answers that overtake each other only the last is shown
let ahead = []; // invented days, as the last answer expects them
let members = []; // of the roster on show

const chosen = () => operations.find((offer) => offer.operation_id === operationChoice.value);
const isForm = () => document.documentElement.dataset.view === "form";

function say(text) {
  at("status").textContent = text;
}

// Left: the request

function chooseOperation() {
  const offer = chosen();
  at("operation-summary").textContent = `POST ${offer.path}. ${offer.description.split("\n\n")[0].replace(/\s+/g, " ")}`;
  exampleChoice.replaceChildren(
    ...offer.examples.map((example) => element("option", { value: example.name }, exampleTitle(example))),
  );
  chooseExample();
}

function chooseExample() {
  const example = chosen().examples.find((each) => each.name === exampleChoice.value);
  if (example) load(example.body);
}

function load(value, days = []) {
  ahead = days;
  body.value = JSON.stringify(value, null, 2);
  body.scrollTop = 0;
  if (isForm()) showForm(chosen().schema, value, ahead);
  showBodyState();
  clear();
  say("Nothing sent yet.");
}

// Fill in a request that comes from an answer or a list, under the name `from`.
function fillIn({ operation, body: value }, from, days = []) {
  showView("member");
  operationChoice.value = operation;
  chooseOperation();
  exampleChoice.append(element("option", { value: "" }, from));
  exampleChoice.value = "";
  load(value, days);
}

// The invented member in a few words: `Fat to lose (man of 31, 84.6 kg)`.
function exampleTitle({ name, body: { profile, ...rest } }) {
  const person = { ...rest, ...profile };
  const sex = { male: "man", female: "woman" }[person.sex];
  return sex ? `${title(name)} (${sex} of ${person.age_years}, ${person.weight_kg} kg)` : title(name);
}

function showBodyState() {
  const fault = faultOf(body.value);
  at("body-state").textContent = fault ?? `JSON, ${count(new TextEncoder().encode(body.value).length, "byte")}`;
  body.setAttribute("aria-invalid", String(fault !== null));
  at("tidy").disabled = fault !== null;
  showSnippets(fault);
}

function showSnippets(fault) {
  const offer = chosen();
  const needed = "First mend the body.";
  at("curl").textContent = fault ? needed : curlCommand(addressOf(offer.path), body.value);
  at("python").textContent = fault ? needed : pythonCall(addressOf("/"), offer.operation_id, JSON.parse(body.value));
  for (const id of ["copy-curl", "copy-python"]) at(id).disabled = fault !== null;
}

function showAs(view) {
  if (view === "form") {
    if (faultOf(body.value)) {
      say("The body is no JSON, so no form can show it.");
      return;
    }
    showForm(chosen().schema, JSON.parse(body.value), ahead);
  }
  document.documentElement.dataset.view = view;
  for (const each of ["form", "json"]) at(`as-${each}`).setAttribute("aria-pressed", String(each === view));
}

function outdated() {
  showBodyState();
  clearFaults();
  if (isCurrent) say("The answer shown is of the request before you changed it.");
  isCurrent = false;
}

function showPlace(pointer) {
  if (isForm()) {
    const field = [...document.querySelectorAll("#fields .fault")].map((each) => each.closest("[data-pointer]"));
    const found = field.find((each) => pointer.startsWith(each.dataset.pointer)) ?? field[0];
    found?.querySelector("input, select, textarea, button")?.focus();
    return;
  }
  if (faultOf(body.value)) {
    say("The body is no JSON any more, so the place cannot be shown.");
    body.focus();
    return;
  }
  const { start, end } = placeOf(body.value, pointer);
  body.focus();
  body.setSelectionRange(start, end);
  const line = body.value.slice(0, start).split("\n").length;
  const lineHeight = parseFloat(getComputedStyle(body).lineHeight);
  body.scrollTop = Math.max(0, (line - 4) * lineHeight);
  say(`${pointer} is selected in the body, line ${line}.`);
}

async function copy(id, what) {
  try {
    await navigator.clipboard.writeText(at(id).textContent);
    say(`${what} copied.`);
  } catch {
    getSelection().selectAllChildren(at(id));
    say(`${what} selected: the browser does not let this page copy, so press Ctrl+C.`);
  }
}

// Right: the answer

async function submit(event) {
  event?.preventDefault();
  const fault = faultOf(body.value);
  if (fault) {
    turn += 1;
    say(fault);
    body.focus();
    return;
  }
  const [offer, text, token] = [chosen(), body.value, key.value.trim()];
  await waiting(at("send"), (isLast) => answered(offer, text, token, isLast));
}

// Do what takes a while behind a button; what comes of an older turn is not shown any more.
async function waiting(button, work) {
  const mine = (turn += 1);
  const isLast = () => mine === turn;
  say("Sending.");
  button.setAttribute("aria-disabled", "true");
  try {
    await work(isLast);
  } catch {
    if (isLast()) {
      clear();
      say("No answer came: the service cannot be reached.");
    }
  } finally {
    button.removeAttribute("aria-disabled");
  }
}

async function answered(offer, text, token, isLast) {
  const answer = await send(offer.path, text, token);
  if (!isLast()) return;
  clearFaults();
  if (answer.status !== 200 || !answer.json) {
    showProblem(answer);
    return;
  }
  const [drawn, methods] = await Promise.all([
    offer.picture_path ? picture(offer.picture_path, text, token).catch(() => ({ status: 0 })) : null,
    catalogue(token).catch(() => null),
  ]);
  if (!isLast()) {
    if (drawn?.address) URL.revokeObjectURL(drawn.address);
    return;
  }
  const [cautions, ...others] = messagesOf(answer.json, methods);
  clear(
    summaryOf(offer.operation_id, answer.json),
    cautions,
    goOn(offer.operation_id, JSON.parse(text), answer.json),
    picturePart(offer, drawn),
    ...others,
    methodsOf(answer.json, methods),
    rawPart(answer),
  );
  shownPicture = drawn?.address ?? null;
  isCurrent = true;
  remember(offer.operation_id, text, answer.json);
  say(`Answered in ${number(answer.milliseconds)} ms.`);
  at("answer").focus();
}

function showProblem(answer) {
  clear(problemView(answer, showPlace), rawPart(answer));
  say(`${answer.status}: ${answer.json?.title ?? "no answer of the service"}.`);
  const controls = isForm() && !at("member").hidden ? (answer.json?.errors ?? []).map(showFault) : [];
  (controls.find(Boolean) ?? at("answer")).focus();
}

function clear(...views) {
  if (shownPicture) URL.revokeObjectURL(shownPicture);
  shownPicture = null;
  isCurrent = false;
  at("results").replaceChildren(...views.filter(Boolean));
}

function picturePart(offer, drawn) {
  if (drawn === null || drawn.status === 406) return null;
  if (!drawn.address) return part("Picture", element("p", {}, "The picture could not be had."));
  return part("Picture", element("img", { src: drawn.address, class: "picture", alt: drawn.said || `The answer of ${offer.path} as a picture` }));
}

function rawPart(answer) {
  const text = answer.json === undefined ? answer.text : JSON.stringify(answer.json, null, 2);
  const names = ["steelyard-fingerprint", "x-request-id", "steelyard-contract"];
  const headers = names.filter((name) => answer.headers.has(name)).map((name) => `${name}: ${answer.headers.get(name)}`);
  const made = part(
    "As it came",
    element("pre", { class: "headers" }, [`HTTP ${answer.status}`, ...headers].join("\n")),
    details(`The whole answer, ${count(answer.text.length, "character")}`,
      element("pre", { id: "raw", tabindex: "0", role: "region", "aria-label": "The whole answer as JSON" }, text)),
  );
  made.classList.add("developer");
  return made;
}

// A year: one request after the other

function goOn(operation, request, answer) {
  const steps = nextSteps(operation, request, answer);
  if (!steps.length) return null;
  const buttons = steps.map((step, i) => {
    const button = element("button", { type: "button", class: i > 0 && "quiet" }, step.label);
    button.addEventListener("click", () => {
      fillIn(step, "The last answer", step.operation === "review_phase" ? daysAhead(answer) : []);
      at("request-title").focus();
    });
    return button;
  });
  return part("Go on from here", element("p", { class: "beside" }, ...buttons));
}

function remember(operation, text, answer) {
  const { day, said } = stepName(operation, answer);
  if (!said) return;
  const days = ahead;
  const back = element("button", { type: "button", class: "quiet" }, `${longDate(day)}: ${said}`);
  back.addEventListener("click", () => {
    fillIn({ operation, body: JSON.parse(text) }, "An earlier step", days);
    submit();
  });
  at("steps").append(element("li", {}, back));
  at("trail").hidden = false;
}

// All members

function showView(view) {
  for (const each of ["member", "roster"]) {
    at(each).hidden = each !== view;
    at(`to-${each}`).setAttribute("aria-pressed", String(each === view));
  }
  document.documentElement.dataset.on = view;
}

function changeView(view) {
  if (!at(view).hidden) return;
  turn += 1;
  clear();
  say("Nothing sent yet.");
  showView(view);
}

async function rank(event) {
  event.preventDefault();
  try {
    members = membersOf(at("members").value);
  } catch (error) {
    say(`These are no members: ${error.message}`);
    at("members-as-json").open = true;
    at("members").focus();
    return;
  }
  if (!members.length) {
    say("No members yet: choose a file, or take the invented members.");
    at("members-file").focus();
    return;
  }
  await waiting(at("rank"), async (isLast) => {
    const found = await ranked(members, at("roster-day").value, key.value.trim());
    if (!isLast()) return;
    if (found.problem) {
      showProblem(found.problem);
      return;
    }
    clear(rosterView(found, openMember));
    say(`${count(found.places.length, "member")} ranked${found.failed.length ? `, ${found.failed.length} not reviewed` : ""}.`);
    at("answer").focus();
  });
}

function openMember(reference) {
  const member = members.find((each) => each.reference === reference);
  fillIn({ operation: "review_phase", body: member.body }, reference);
  submit();
}

function listen() {
  operationChoice.addEventListener("change", chooseOperation);
  exampleChoice.addEventListener("change", chooseExample);
  body.addEventListener("input", outdated);
  at("request-form").addEventListener("keydown", (event) => {
    if (event.key === "Enter" && (event.ctrlKey || event.metaKey)) submit(event);
    // Enter in a field would send a form that is half filled in.
    else if (event.key === "Enter" && event.target.matches("#fields input")) event.preventDefault();
  });
  at("tidy").addEventListener("click", () => {
    body.value = JSON.stringify(JSON.parse(body.value), null, 2);
    showBodyState();
  });
  for (const view of ["form", "json"]) at(`as-${view}`).addEventListener("click", () => showAs(view));
  for (const view of ["member", "roster"]) at(`to-${view}`).addEventListener("click", () => changeView(view));
  at("request-form").addEventListener("submit", submit);
  at("roster-form").addEventListener("submit", rank);
  at("key-form").addEventListener("submit", (event) => (at("roster").hidden ? submit : rank)(event));
  at("invent").addEventListener("click", () => {
    const { examples } = operations.find((offer) => offer.operation_id === "review_phase");
    const invented = inventedMembers(examples);
    at("members").value = invented.map((each) => JSON.stringify(each)).join("\n");
    say(`${count(invented.length, "invented member")} ready to be put in order.`);
  });
  at("members-file").addEventListener("change", async (event) => {
    const [file] = event.target.files;
    if (!file) return;
    at("members").value = await file.text();
    say(`The members of ${file.name} are ready to be put in order.`);
  });
  at("copy-curl").addEventListener("click", () => copy("curl", "The curl command is"));
  at("copy-python").addEventListener("click", () => copy("python", "The Python code is"));
}

async function start() {
  document.documentElement.dataset.view = "form";
  let schemas;
  try {
    ({ operations, schemas } = await offered());
  } catch {
    say("The list of operations could not be loaded; reload the page.");
    return;
  }
  setUpForm(at("fields"), schemas, () => {
    body.value = JSON.stringify(formBody(), null, 2);
    outdated();
  });
  const rank_ = ({ operation_id: id }) => (COACH.includes(id) ? COACH.indexOf(id) : COACH.length);
  operationChoice.replaceChildren(
    ...operations.toSorted((a, b) => rank_(a) - rank_(b)).map((offer) => element("option", { value: offer.operation_id }, offer.summary)),
  );
  chooseOperation();
  listen();
  document.documentElement.dataset.ready = "";
}

start();
