// Where in a text of JSON a value stands, so that a fault can be shown where it is.

/**
 * The start and end of the value that a JSON Pointer names (RFC 6901; with a leading `#` as a URI fragment), or of the
 * nearest value around it that is there. The text must be JSON.
 */
export function placeOf(text, pointer) {
  const bare = pointer.startsWith("#") ? decodeURIComponent(pointer.slice(1)) : pointer;
  const steps = bare.split("/").slice(1).map((step) => step.replaceAll("~1", "/").replaceAll("~0", "~"));
  return descend(text, skipSpace(text, 0), steps);
}

function descend(text, start, steps) {
  const whole = { start, end: endOf(text, start) };
  if (!steps.length) return whole;
  const [step, ...rest] = steps;
  let at = start + 1;
  if (text[start] === "{") {
    for (at = skipSpace(text, at); text[at] === '"'; at = skipSpace(text, at)) {
      const nameEnd = endOf(text, at);
      const name = JSON.parse(text.slice(at, nameEnd));
      const value = skipSpace(text, skipSpace(text, nameEnd) + 1);
      if (name === step) return descend(text, value, rest);
      at = skipSpace(text, endOf(text, value));
      if (text[at] === ",") at += 1;
    }
  } else if (text[start] === "[") {
    for (let index = 0; text[(at = skipSpace(text, at))] !== "]"; index += 1) {
      if (String(index) === step) return descend(text, at, rest);
      at = skipSpace(text, endOf(text, at));
      if (text[at] === ",") at += 1;
    }
  }
  return whole;
}

function skipSpace(text, at) {
  while (" \t\n\r".includes(text[at]) && at < text.length) at += 1;
  return at;
}

function endOf(text, start) {
  let depth = 0;
  for (let at = start; at < text.length; at += 1) {
    const sign = text[at];
    if (sign === '"') {
      for (at += 1; text[at] !== '"'; at += 1) if (text[at] === "\\") at += 1;
    } else if (sign === "{" || sign === "[") {
      depth += 1;
    } else if (sign === "}" || sign === "]") {
      if (depth === 0) return at;
      depth -= 1;
    } else if (depth === 0 && (sign === "," || " \t\n\r".includes(sign))) {
      return at;
    }
    if (depth === 0 && '"}]'.includes(sign)) return at + 1;
  }
  return text.length;
}

/** What is wrong with a text that should be JSON, in one sentence; null where nothing is. */
export function faultOf(text) {
  if (!text.trim()) return "There is no body yet.";
  try {
    const value = JSON.parse(text);
    return value !== null && typeof value === "object" && !Array.isArray(value) ? null : "The body must be one object.";
  } catch (error) {
    const said = error.message.replace(/^JSON\.parse: /, "").replace(/ in JSON at position \d+.*$/s, "");
    const position = error.message.match(/position (\d+)/);
    if (!position) return `Not JSON: ${said}`;
    const before = text.slice(0, Number(position[1])).split("\n");
    return `Not JSON at line ${before.length}, column ${before.at(-1).length + 1}: ${said}`;
  }
}
