"""The API reference as one page of plain HTML, made from the contract: no script, nothing loaded from elsewhere."""

import json
import re
from collections.abc import Iterator, Mapping
from html import escape
from typing import Any

from ..wire.deprecation import MARK
from .site import REFERENCE, Site, table_head, table_row

Json = Mapping[str, Any]

_REFERENCE = re.compile(r"#/components/schemas/(\w+)")
_METHODS = ("get", "post", "put", "patch", "delete")
_LISTED_EXAMPLES = 3
_ANSWER_COLUMNS = ("Status", "Body", "Meaning", "Headers")
_FIELD_COLUMNS = ("Field", "Type", "Accepted", "Meaning")


def reference_page(document: Json, site: Site) -> str:
    """The whole page for an OpenAPI document."""
    operations = list(_operations(document))
    info = document["info"]
    title = f"{info['title']} API {info['version']}"
    main = "\n".join(
        [
            f"<h1>{escape(title)}</h1>\n<p>{escape(info['summary'])}</p>",
            f'<section id="about"><h2>About</h2>{_prose(info["description"])}',
            '<p>The same as a machine reads it: <a href="openapi.json">OpenAPI document</a>.</p></section>',
            _deprecated(operations),
            '<h2 id="operations">Operations</h2>',
            *(_operation(method, path, operation) for method, path, operation in operations),
            '<h2 id="schemas">Objects</h2>',
            *(_schema(name, schema) for name, schema in sorted(document["components"]["schemas"].items())),
        ]
    )
    return site.page(title, main, at=REFERENCE, contents=_contents(operations, document["components"]["schemas"]))


def _operations(document: Json) -> Iterator[tuple[str, str, Json]]:
    for path, item in document["paths"].items():
        for method in _METHODS:
            if method in item:
                yield method.upper(), path, item[method]


def _contents(operations: list[tuple[str, str, Json]], schemas: Json) -> str:
    calls = "".join(f'<li><a href="#{op["operationId"]}">{escape(op["summary"])}</a></li>' for _, _, op in operations)
    objects = "".join(f'<li><a href="#{name}">{name}</a></li>' for name in sorted(schemas))
    return (
        '<ul><li><a href="#about">About</a></li>'
        f'<li><a href="#operations">Operations</a><ul>{calls}</ul></li></ul>'
        f"<details><summary>Objects</summary><ul>{objects}</ul></details>"
    )


def _deprecated(operations: list[tuple[str, str, Json]]) -> str:
    going = [op for _, _, op in operations if op.get("deprecated")]
    entries = "".join(
        f'<li><a href="#{op["operationId"]}">{escape(op["summary"])}</a>: {_notice(op)}</li>' for op in going
    )
    text = f"<ul>{entries}</ul>" if going else "<p>No operation is deprecated.</p>"
    return f'<section id="deprecated"><h2>Deprecated</h2>{text}</section>'


def _notice(marked: Json) -> str:
    mark = marked.get(MARK, {})
    until = f", may stop working after {mark['sunset']}" if mark.get("sunset") else ""
    since = f" since {mark['since']}" if mark else ""
    return f'<strong class="going">Deprecated{since}{until}.</strong> {_inline(mark.get("instead", ""))}'


def _operation(method: str, path: str, operation: Json) -> str:
    parts = [
        f'<section class="operation" id="{operation["operationId"]}"><h3>{escape(operation["summary"])}</h3>',
        f'<p class="call"><code><span class="method">{method}</span> {escape(path)}</code></p>',
        f"<p>{_notice(operation)}</p>" if operation.get("deprecated") else "",
        _prose(operation["description"]),
    ]
    parameters = operation.get("parameters", [])
    if parameters:
        parts.append("<h4>Query</h4>")
        parts += [
            f"<p><code>{escape(p['name'])}</code> ({_type(p['schema'])}): {_inline(p['description'])}</p>"
            for p in parameters
        ]
    if "requestBody" in operation:
        parts.append("<h4>Request</h4>")
        parts += [_content(kind, content) for kind, content in operation["requestBody"]["content"].items()]
    parts.append("<h4>Answers</h4>")
    head = table_head(_ANSWER_COLUMNS)
    rows = "".join(_answer(status, answer) for status, answer in sorted(operation["responses"].items()))
    parts.append(f'<div class="wide"><table><thead>{head}</thead><tbody>{rows}</tbody></table></div></section>')
    return "\n".join(parts)


def _content(kind: str, content: Json) -> str:
    text = f"<p><code>{escape(kind)}</code>: {_type(content.get('schema', {}))}</p>"
    for name, example in content.get("examples", {}).items():
        value = example["value"]
        body = value if isinstance(value, str) else json.dumps(value, indent=2, ensure_ascii=False)
        text += f"<details><summary>Example: {escape(name)}</summary><pre>{escape(body)}</pre></details>"
    return text


def _answer(status: str, answer: Json) -> str:
    offered = answer.get("content", {}).items()
    # Among several media types each is named; JSON alone needs no word.
    names = {kind: f"<code>{escape(kind)}</code>: " if len(offered) > 1 else "" for kind, _ in offered}
    bodies = "<br>".join(names[kind] + _type(content.get("schema", {})) for kind, content in offered)
    headers = ", ".join(f"<code>{escape(name)}</code>" for name in sorted(answer.get("headers", {})))
    cells = [f"<code>{status}</code>", bodies or "none", _prose(answer["description"]), headers]
    return table_row(_ANSWER_COLUMNS, cells)


def _schema(name: str, schema: Json) -> str:
    text = f'<section class="schema" id="{name}"><h3>{name}</h3>{_prose(schema.get("description", ""))}'
    properties: Json = schema.get("properties", {})
    if not properties:
        return f"{text}<p>{_type(schema)}{_limits(schema)}</p></section>"
    head = table_head(_FIELD_COLUMNS)
    rows = "".join(
        table_row(
            _FIELD_COLUMNS, [_field(field, field in schema.get("required", ())), _type(s), _accepted(s), _meaning(s)]
        )
        for field, s in properties.items()
    )
    return f'{text}<div class="wide"><table><thead>{head}</thead><tbody>{rows}</tbody></table></div></section>'


def _field(name: str, is_required: bool) -> str:
    return f"<code>{escape(name)}</code>" + ("<br><small>required</small>" if is_required else "")


def _accepted(schema: Json) -> str:
    branches = [schema, *schema.get("anyOf", ()), *schema.get("oneOf", ())]
    texts = [text for text in (_limits(branch) for branch in branches) if text]
    for name in ("default", "x-steelyard-default"):
        if name in schema:
            texts.append(f"default <code>{escape(json.dumps(schema[name]))}</code>")
    return "<br>".join(texts)


def _meaning(schema: Json) -> str:
    examples = ", ".join(f"<code>{escape(_plain(e))}</code>" for e in schema.get("examples", [])[:_LISTED_EXAMPLES])
    notice = f"<br>{_notice(schema)}" if schema.get("deprecated") else ""
    return _inline(schema.get("description", "")) + (f"<br><small>e.g. {examples}</small>" if examples else "") + notice


def _plain(example: Any) -> str:
    return example if isinstance(example, str) else json.dumps(example, ensure_ascii=False)


def _type(schema: Json) -> str:
    if match := _REFERENCE.fullmatch(schema.get("$ref", "")):
        return f'<a href="#{match[1]}">{match[1]}</a>'
    for union in ("oneOf", "anyOf"):
        if union in schema:
            return " or ".join(_type(branch) for branch in schema[union])
    if "const" in schema:
        return f"<code>{escape(json.dumps(schema['const']))}</code>"
    if "enum" in schema:
        return " or ".join(f"<code>{escape(json.dumps(value))}</code>" for value in schema["enum"])
    kind = schema.get("type", "anything")
    if isinstance(kind, list):
        return " or ".join(_type({"type": "null"} if one == "null" else {**schema, "type": one}) for one in kind)
    if kind == "array":
        return f"list of {_type(schema.get('items', {}))}"
    if kind == "object" and isinstance(schema.get("additionalProperties"), Mapping):
        return f"object of {_type(schema['additionalProperties'])}"
    return escape(str(kind)) + (f" ({escape(schema['format'])})" if "format" in schema else "")


def _limits(schema: Json) -> str:
    texts = []
    if "minimum" in schema and "maximum" in schema:
        texts.append(f"{schema['minimum']:g} to {schema['maximum']:g}")
    else:
        signs = {"minimum": "≥", "exclusiveMinimum": "&gt;", "maximum": "≤", "exclusiveMaximum": "&lt;"}
        texts += [f"{sign} {schema[name]:g}" for name, sign in signs.items() if name in schema]
    for low, high, unit in (("minLength", "maxLength", "characters"), ("minItems", "maxItems", "entries")):
        if high in schema:
            texts.append(f"{schema.get(low, 0)} to {schema[high]} {unit}")
        elif low in schema:
            texts.append(f"{schema[low]} {unit} or more")
    if "pattern" in schema:
        texts.append(f"<code>{escape(schema['pattern'])}</code>")
    return " ".join(texts)


def _prose(text: str) -> str:
    """Paragraphs and lists of the contract's descriptions, which use no more of Markdown than these and code."""
    blocks = []
    for block in text.strip().split("\n\n"):
        lines = block.splitlines()
        if lines and all(line.startswith("- ") for line in lines):
            blocks.append("<ul>" + "".join(f"<li>{_inline(line[2:])}</li>" for line in lines) + "</ul>")
        elif block:
            blocks.append(f"<p>{_inline(block)}</p>")
    return "".join(blocks)


def _inline(text: str) -> str:
    return re.sub(r"`([^`]+)`", r"<code>\1</code>", escape(text))
