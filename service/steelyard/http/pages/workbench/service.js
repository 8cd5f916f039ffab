// The calls to the service that served this page. The key is an argument: nothing here keeps it.

const PROBLEM = "application/problem+json";
const catalogues = new Map();

/** The address of a path of the service, wherever a gateway has put it. */
export const addressOf = (path) => new URL(`.${path}`, document.baseURI).href;

/** What the page offers: `{operations, schemas}`. */
export async function offered() {
  const answer = await fetch(addressOf("/workbench/operations.json"), { credentials: "omit" });
  if (!answer.ok) throw new Error(`The list of operations was answered with ${answer.status}.`);
  return answer.json();
}

/**
 * Send `text` as a body. Gives `{status, headers, json, text, milliseconds}`; `json` is missing where the answer is
 * none. Throws where no answer came.
 */
export async function send(path, text, key, type = "application/json") {
  const begun = performance.now();
  const answer = await post(path, text, key, `${type}, ${PROBLEM}`, type);
  const said = await answer.text();
  const milliseconds = Math.round(performance.now() - begun);
  return { status: answer.status, headers: answer.headers, text: said, json: parsed(said), milliseconds };
}

/** The picture of the same request, for a page as light or dark and as wide as this: a blob's address with its text, or a status. */
export async function picture(path, text, key) {
  const theme = matchMedia("(prefers-color-scheme: dark)").matches ? "dark" : "light";
  const answer = await post(`${path}?theme=${theme}&width=${innerWidth < 640 ? "phone" : "page"}`, text, key, `image/svg+xml, ${PROBLEM};q=0.1`);
  if (answer.status !== 200) return { status: answer.status };
  const svg = await answer.text();
  const said = ["title", "desc"].map((name) => textOf(svg, name)).filter(Boolean).join(". ");
  const address = URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" }));
  return { status: 200, address, said };
}

/** The catalogue of methods and sources by id, asked for once per key; null where the key may not read it. */
export async function catalogue(key) {
  if (!catalogues.has(key)) {
    const answer = await fetch(addressOf("/v1/methods"), { headers: authorization(key), credentials: "omit" });
    if (!answer.ok) return null;
    const { entries, sources } = await answer.json();
    catalogues.clear();
    catalogues.set(key, {
      entries: new Map(entries.map((entry) => [entry.id, entry])),
      sources: new Map(sources.map((source) => [source.id, source])),
    });
  }
  return catalogues.get(key);
}

const authorization = (key) => (key ? { Authorization: `Bearer ${key}` } : {});

function post(path, text, key, accept, type = "application/json") {
  return fetch(addressOf(path), {
    method: "POST",
    headers: { ...authorization(key), "Content-Type": type, Accept: accept },
    body: text,
    credentials: "omit",
    cache: "no-store",
  });
}

function parsed(text) {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

// The first element of that name in the picture, which holds text alone. Not parsed as markup: this page's policy
// lets no script do that.
function textOf(svg, name) {
  const found = svg.match(new RegExp(`<${name}[^>]*>([^<]*)</${name}>`));
  const marks = { lt: "<", gt: ">", quot: '"', apos: "'", amp: "&" };
  const plain = (found?.[1] ?? "").replace(/&(lt|gt|quot|apos|amp);/g, (_, mark) => marks[mark]);
  return plain.replace(/\s+/g, " ").trim().replace(/\.$/, "");
}
