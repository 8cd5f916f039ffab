// The page's wiring: what is chosen and typed on the left, what came of it on the right.

import { details, element, part } from "./elements.js";
import { messagesOf, methodsOf } from "./explanation.js";
import { count, number, title } from "./figures.js";
import { faultOf, placeOf } from "./json_places.js";
import { problemView } from "./problem.js";
import { addressOf, catalogue, operations, picture, send } from "./service.js";
import { curlCommand, pythonCall } from "./snippets.js";
import { summaryOf } from "./summaries.js";

const at = (id) => document.getElementById(id);
const [operationChoice, exampleChoice, body, key] = ["operation", "example", "body", "key"].map(at);
let offered = [];
let shownPicture = null; // the address of the picture on show, to be let go with it
let isCurrent = false; // whether the answer on show is that of the body as it stands
let turn = 0; // of answers that overtake each other only the last is shown

const chosen = () => offered.find((offer) => offer.operation_id === operationChoice.value);

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
  body.value = JSON.stringify(example.body, null, 2);
  body.scrollTop = 0;
  showBodyState();
  clear();
  say("Nothing sent yet.");
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

function showPlace(pointer) {
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
  const mine = (turn += 1);
  const fault = faultOf(body.value);
  if (fault) {
    say(fault);
    body.focus();
    return;
  }
  const [offer, text, token] = [chosen(), body.value, key.value.trim()];
  say("Sending.");
  at("send").setAttribute("aria-disabled", "true");
  try {
    const answer = await send(offer.path, text, token);
    if (mine === turn) await showAnswer(offer, text, token, answer, mine);
  } catch {
    if (mine === turn) {
      clear();
      say("No answer came: the service cannot be reached.");
    }
  } finally {
    if (mine === turn) at("send").removeAttribute("aria-disabled");
  }
}

async function showAnswer(offer, text, token, answer, mine) {
  const isAnswer = answer.status === 200 && answer.json;
  if (!isAnswer) {
    clear(problemView(answer, showPlace), rawPart(answer));
    say(`${answer.status}: ${answer.json?.title ?? "no answer of the service"}.`);
    return;
  }
  const [drawn, methods] = await Promise.all([
    offer.picture_path ? picture(offer.picture_path, text, token).catch(() => ({ status: 0 })) : null,
    catalogue(token).catch(() => null),
  ]);
  if (mine !== turn) {
    if (drawn?.address) URL.revokeObjectURL(drawn.address);
    return;
  }
  const [cautions, ...others] = messagesOf(answer.json, methods);
  clear(
    summaryOf(offer.operation_id, answer.json),
    cautions,
    picturePart(offer, drawn),
    ...others,
    methodsOf(answer.json, methods),
    rawPart(answer),
  );
  shownPicture = drawn?.address ?? null;
  isCurrent = true;
  say(`Answered in ${number(answer.milliseconds)} ms.`);
}

function clear(...views) {
  if (shownPicture) URL.revokeObjectURL(shownPicture);
  shownPicture = null;
  isCurrent = false;
  at("results").replaceChildren(...views);
}

function picturePart(offer, drawn) {
  if (drawn?.address) {
    return part("Picture", element("img", { src: drawn.address, class: "picture", alt: drawn.said || `The answer of ${offer.path} as a picture` }));
  }
  const why = drawn === null || drawn.status === 406 ? "There is no picture for this operation." : "The picture could not be had.";
  return part("Picture", element("p", {}, why));
}

function rawPart(answer) {
  const text = answer.json === undefined ? answer.text : JSON.stringify(answer.json, null, 2);
  const names = ["steelyard-fingerprint", "x-request-id", "steelyard-contract"];
  const headers = names.filter((name) => answer.headers.has(name)).map((name) => `${name}: ${answer.headers.get(name)}`);
  return part(
    "As it came",
    element("pre", { class: "headers" }, [`HTTP ${answer.status}`, ...headers].join("\n")),
    details(`The whole answer, ${count(answer.text.length, "character")}`,
      element("pre", { id: "raw", tabindex: "0", role: "region", "aria-label": "The whole answer as JSON" }, text)),
  );
}

async function start() {
  try {
    offered = await operations();
  } catch {
    say("The list of operations could not be loaded; reload the page.");
    return;
  }
  operationChoice.replaceChildren(
    ...offered.map((offer) => element("option", { value: offer.operation_id }, offer.summary)),
  );
  const first = offered.find((offer) => offer.operation_id === "plan_phases") ?? offered[0];
  operationChoice.value = first.operation_id;
  chooseOperation();
  operationChoice.addEventListener("change", chooseOperation);
  exampleChoice.addEventListener("change", chooseExample);
  body.addEventListener("input", () => {
    showBodyState();
    if (isCurrent) say("The answer shown is of the body before you changed it.");
    isCurrent = false;
  });
  body.addEventListener("keydown", (event) => {
    if (event.key === "Enter" && (event.ctrlKey || event.metaKey)) submit(event);
  });
  at("tidy").addEventListener("click", () => {
    body.value = JSON.stringify(JSON.parse(body.value), null, 2);
    showBodyState();
  });
  at("request-form").addEventListener("submit", submit);
  at("copy-curl").addEventListener("click", () => copy("curl", "The curl command is"));
  at("copy-python").addEventListener("click", () => copy("python", "The Python code is"));
  document.documentElement.dataset.ready = "";
}

start();
