// A problem document (RFC 9457), with a way from each fault to its place in the request.

import { element, part } from "./elements.js";
import { addressOf } from "./service.js";

/** The view of a problem; `show` is called with a pointer to go to its place. */
export function problemView(answer, show) {
  const problem = answer.json;
  if (!problem?.title) {
    return part("Problem", element("p", { class: "notice" }, `The answer is ${answer.status}, and no problem document.`));
  }
  const faults = problem.errors ?? [];
  return part(
    "Problem",
    element(
      "div", { class: "notice" },
      element("p", { class: "lead" }, `${problem.status} ${problem.title}`),
      element("p", {}, problem.detail),
    ),
    faults.length
      ? element("ol", { class: "faults" }, ...faults.map((fault) => faultItem(fault, show)))
      : null,
    element(
      "dl", { class: "figures" },
      row("Code", element("code", {}, problem.code)),
      row("Kind", typeLink(problem.type)),
      row("To quote to the operator", element("code", {}, problem.instance)),
    ),
  );
}

function faultItem(fault, show) {
  const go = element("button", { type: "button", class: "quiet" }, `Show ${fault.pointer}`);
  go.addEventListener("click", () => show(fault.pointer));
  return element("li", {}, element("code", { class: "pointer" }, fault.pointer), " ", fault.detail, " ",
    element("code", { class: "code" }, fault.code), " ", go);
}

const row = (name, value) => element("div", {}, element("dt", {}, name), element("dd", {}, value));

// A type is a path of the service, and documented there; of anything else no link is made.
function typeLink(type) {
  if (!/^\/problems\/[\w/-]+$/.test(type)) return element("code", {}, type);
  return element("a", { href: addressOf(type), target: "_blank", rel: "noopener" }, type);
}
