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

/**
 * A table. The first cell of a row is its head. Where there is too little room, each row becomes a block with its
 * columns' names (see the style sheet); the roles keep it a table for those who hear it.
 */
export function table(caption, columns, rows) {
  const head = element("tr", { role: "row" }, ...columns.map((column) => element("th", { scope: "col", role: "columnheader" }, column)));
  const cell = (value, i) => element(i ? "td" : "th", { scope: i ? null : "row", role: i ? "cell" : "rowheader",
    "data-column": columns[i], class: isDate(value) && "date" }, value);
  return element("div", { class: "wide" },
    element("table", { role: "table", class: columns.length > 5 && "many" }, element("caption", {}, caption), element("thead", { role: "rowgroup" }, head),
      element("tbody", { role: "rowgroup" }, ...rows.map((cells) => element("tr", { role: "row" }, ...cells.map(cell))))));
}

const isDate = (cell) => typeof cell === "string" && /^\d{4}-\d\d-\d\d$/.test(cell);

/** Something to open, with its summary. */
export function details(summary, ...children) {
  return element("details", {}, element("summary", {}, summary), ...children);
}
