// The request as a command and as code, for copying. Neither holds the key.

const WIDTH = 88;

/** A command for a POSIX shell that sends `text` as it stands. */
export function curlCommand(address, text) {
  const quoted = `'${text.replaceAll("'", `'\\''`)}'`;
  return [
    `curl ${address}`,
    '-H "Authorization: Bearer $STEELYARD_KEY"',
    "-H 'Content-Type: application/json'",
    `--data-binary ${quoted}`,
  ].join(" \\\n  ");
}

/** A call through the Python client; `body` is the parsed request. */
export function pythonCall(base, method, body) {
  const fields = Object.entries(body);
  const keywords = fields.filter(([name]) => isName(name)).map(([name, value]) => `        ${name}=${literal(value, 8, name.length + 2)},`);
  const others = Object.fromEntries(fields.filter(([name]) => !isName(name)));
  if (Object.keys(others).length) keywords.push(`        **${literal(others, 8, 3)},`);
  return [
    "from steelyard_client import Steelyard",
    "",
    `with Steelyard(${JSON.stringify(base.replace(/\/$/, ""))}) as client:`,
    `    answer = client.${method}(`,
    ...keywords,
    "    )",
    "print(answer)",
    "print(answer.fingerprint)",
  ].join("\n");
}

const isName = (text) => /^[A-Za-z_]\w*$/.test(text);

// A value as a Python literal: on one line where that is short, else one entry a line.
function literal(value, indent, taken) {
  const flat = onOneLine(value);
  if (indent + taken + flat.length <= WIDTH || value === null || typeof value !== "object") return flat;
  const inner = " ".repeat(indent + 4);
  const [open, close] = Array.isArray(value) ? "[]" : "{}";
  const lines = Array.isArray(value)
    ? value.map((each) => `${inner}${literal(each, indent + 4, 1)},`)
    : Object.entries(value).map(
        ([name, each]) => `${inner}${JSON.stringify(name)}: ${literal(each, indent + 4, name.length + 5)},`,
      );
  return [open, ...lines, " ".repeat(indent) + close].join("\n");
}

function onOneLine(value) {
  if (value === null) return "None";
  if (value === true) return "True";
  if (value === false) return "False";
  if (Array.isArray(value)) return `[${value.map(onOneLine).join(", ")}]`;
  if (typeof value === "object") {
    return `{${Object.entries(value).map(([name, each]) => `${JSON.stringify(name)}: ${onOneLine(each)}`).join(", ")}}`;
  }
  return JSON.stringify(value); // of text and numbers Python reads the same
}
