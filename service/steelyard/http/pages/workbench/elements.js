// Elements made of names and texts. A text is always a text node, so that nothing an answer says becomes markup.

/** An element with attributes and children; a child may be a text, an element, or nothing. */
export function element(name, attributes = {}, ...children) {
  const made = document.createElement(name);
  for (const [name, value] of Object.entries(attributes)) {
    if (value === false || value === null || value === undefined) continue;
    made.setAttribute(name, value === true ? "" : String(value));
  }
  made.append(...children.flat().filter((child) => child !== null && child !== undefined && child !== ""));
  return made;
}

/** A part of the answer under a heading of the third level. */
export function part(title, ...children) {
  const id = `part-${title.toLowerCase().replace(/\W+/g, "-")}`;
  return element("section", { class: "part", "aria-labelledby": id }, element("h3", { id }, title), ...children);
}

/** A table that scrolls by itself where it is too wide, by keyboard too. The first cell of a row is its head. */
export function table(caption, columns, rows) {
  const head = element("tr", {}, ...columns.map((column) => element("th", { scope: "col" }, column)));
  const lines = rows.map((cells) =>
    element("tr", {}, ...cells.map((cell, i) => element(i ? "td" : "th", { scope: i ? null : "row", class: isDate(cell) && "date" }, cell))),
  );
  const made = element("table", {}, element("caption", {}, caption), element("thead", {}, head),
    element("tbody", {}, ...lines));
  return element("div", { class: "wide", tabindex: "0", role: "region", "aria-label": caption }, made);
}

const isDate = (cell) => typeof cell === "string" && /^\d{4}-\d\d-\d\d$/.test(cell);

/** Something to open, with its summary. */
export function details(summary, ...children) {
  return element("details", {}, element("summary", {}, summary), ...children);
}
