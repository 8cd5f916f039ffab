"""Write ``steelyard_client/generated`` from the contract: the generator's models, and what the generator loses.

It loses the limits of request fields, its models are awkward to type by hand, and all of them are loaded at once. So
three modules are added, ``contract.py`` (the operations), ``request_schemas.py`` (for the checks before sending) and
``request_types.py`` (typed dictionaries of requests), and models are loaded when they are first asked for. ``--check``
writes nothing and fails where the committed tree differs.
"""

import argparse
import ast
import json
import os
import pprint
import re
import shutil
import subprocess
import sys
import tempfile
import textwrap
from collections.abc import Iterator
from pathlib import Path
from typing import Any

SDK = Path(__file__).resolve().parent
CALLS = SDK / "steelyard_client" / "calls.py"
CONTRACT = SDK.parent / "contracts" / "openapi-v1.json"
GENERATED = SDK / "steelyard_client" / "generated"
WIDTH = 118

_ANNOTATIONS = {
    "default",
    "description",
    "examples",
    "title",
    "x-steelyard-default",
}  # say nothing about what is accepted
_CHECKED = {
    *("$ref", "additionalProperties", "anyOf", "const", "discriminator", "enum", "exclusiveMaximum"),
    *("exclusiveMinimum", "format", "items", "maxItems", "maxLength", "maximum", "minItems", "minLength", "minimum"),
    *("oneOf", "properties", "required", "type"),
}  # the keywords that steelyard_client/request_check.py understands
_HEADER = '"""Generated from the contract by regenerate.py: do not edit."""\n\n'

Schema = dict[str, Any]


def main() -> int:
    """Regenerate, or with ``--check`` compare; the exit status."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--check", action="store_true", help="write nothing; fail if the committed tree differs")
    parser.add_argument("--contract", type=Path, default=CONTRACT, help="the OpenAPI document")
    arguments = parser.parse_args()
    with tempfile.TemporaryDirectory() as directory:
        fresh = Path(directory) / "generated"
        generate(arguments.contract, fresh)
        stale = differences(fresh, GENERATED)
        if arguments.check:
            for name in stale:
                print(f"out of date: {name}; run `make sdk`", file=sys.stderr)
            return 1 if stale else 0
        if stale:
            shutil.rmtree(GENERATED, ignore_errors=True)
            shutil.copytree(fresh, GENERATED)
    print(f"Wrote {GENERATED.name}: {len(stale)} files differed." if stale else "The SDK is up to date.")
    return 0


def generate(contract: Path, target: Path) -> None:
    """Write the whole generated package of ``contract`` to ``target``, which must not exist."""
    document = json.loads(contract.read_text(encoding="utf-8"))
    tools = f"{Path(sys.executable).parent}{os.pathsep}{os.environ.get('PATH', '')}"  # the hooks call the pinned ruff
    environment = {**os.environ, "PATH": tools, "RUFF_NO_CACHE": "true"}
    options: list[str | Path] = ["--meta", "none", "--config", SDK / "generator.yaml", "--fail-on-warning"]
    ours = {
        "contract.py": contract_module(document),
        "request_schemas.py": schemas_module(document),
        "request_types.py": types_module(document),
        "awaited_calls.py": awaited_module(CALLS.read_text(encoding="utf-8")),
        "__init__.py": "",  # the tool's own imports a client that ours does without
    }
    _run("openapi_python_client", "generate", "--path", contract, "--output-path", target, *options, env=environment)
    for name, text in ours.items():
        (target / name).write_text(_HEADER + text, encoding="utf-8", newline="\n")
    for path in (target / "models").glob("*.py"):  # a field for what is not known, and nearly always empty
        text = path.read_text(encoding="utf-8")
        told = text.replace("init=False, factory=dict)", "init=False, factory=dict, repr=False)")
        path.write_text(told, encoding="utf-8", newline="\n")
    models = target / "models" / "__init__.py"
    models.write_text(_HEADER + models_module(models.read_text(encoding="utf-8")), encoding="utf-8", newline="\n")
    awaited = target / "awaited_calls.py"
    _run("ruff", "check", "--isolated", "--quiet", "--fix", "--select", "F401,I001", awaited, env=environment)
    _run("ruff", "format", "--isolated", "--quiet", target, env=environment)


def awaited_module(calls: str) -> str:
    """The calls of a client that blocks, to be awaited."""
    lines, tree = calls.splitlines(keepends=True), ast.parse(calls)
    kinds = {node.name: node for node in tree.body if isinstance(node, ast.ClassDef)}
    first_own = next(node for node in tree.body if isinstance(node, ast.Assign))
    imports = "".join(lines[: first_own.lineno - 1]).partition('"""\n')[2]
    imports = re.sub(r"^(\s*)from \.(?!generated)(\w*)", r"\1from ..\2", imports, flags=re.MULTILINE)
    imports = imports.replace("from .generated.", "from .")
    body = "".join(lines[kinds["Calls"].lineno : kinds["Calls"].end_lineno])
    body = body.replace("that blocks", "to be awaited").replace("        from .", "        from ..")
    body = re.sub(r"^    def ", "    async def ", body, flags=re.MULTILINE)
    body = re.sub(r"\bself\._(call|drive)\(", r"await self._\1(", body)
    choices = ", ".join(re.findall(r"^([A-Z]\w*[a-z]) = Literal", calls, re.MULTILINE))
    future = "from __future__ import annotations\n"
    imports = imports.replace(future, f"{future}\nfrom ..calls import Client, {choices}\n")
    return f"{imports}\nclass AwaitedCalls(Client):\n{body}"


def models_module(text: str) -> str:
    """The package of models, each loaded when it is first asked for: all of them take longer than the rest together."""
    names = dict(re.findall(r"^from \.(\w+) import (\w+)$", text, re.MULTILINE))
    lines = ["from importlib import import_module", "from typing import TYPE_CHECKING, Any", "", "if TYPE_CHECKING:"]
    lines += [f"    from .{module} import {name} as {name}" for module, name in names.items()]
    lines += [
        "",
        f"_MODULES = {{{', '.join(f'{name!r}: {module!r}' for module, name in names.items())}}}",
        f"__all__ = {sorted(names.values())!r}",
        "",
        "def __getattr__(name: str) -> Any:",
        "    if name not in _MODULES:",
        '        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")',
        '    found = globals()[name] = getattr(import_module(f".{_MODULES[name]}", __name__), name)',
        "    return found",
        "",
        "def __dir__() -> list[str]:",
        "    return __all__",
    ]
    return "\n".join(lines) + "\n"


def differences(fresh: Path, committed: Path) -> list[str]:
    """The names of files that only one tree has, or whose bytes differ."""
    trees = [
        {
            str(path.relative_to(tree)): path.read_bytes()
            for path in tree.rglob("*")
            if path.suffix != ".pyc" and path.is_file()
        }
        for tree in (fresh, committed)
    ]
    return sorted(name for name in trees[0].keys() | trees[1].keys() if trees[0].get(name) != trees[1].get(name))


def contract_module(document: Schema) -> str:
    """The operations."""
    operations = {
        operation["operationId"]: {
            "method": method.upper(),
            "path": path,
            "request": _body_schema(operation),
            "is_pure": operation.get("x-steelyard-pure", False),
        }
        for path, methods in document["paths"].items()
        for method, operation in methods.items()
    }
    lines_of_batches = _lines_of_batches(document)
    lines = [
        "from typing import TYPE_CHECKING, Literal, NamedTuple, TypeAlias",
        "",
        "if TYPE_CHECKING:",
        "    from . import models",
        "",
        f"CONTRACT_VERSION = {document['info']['version']!r}",
        "",
        "class Operation(NamedTuple):",
        '    """One operation: where it is, the schema of its body, and whether it may be sent again."""',
        "    method: str",
        "    path: str",
        "    request: str | None",
        "    is_pure: bool",
        "",
    ]
    for name, operation in sorted(operations.items()):
        arguments = ", ".join(f"{key}={value!r}" for key, value in operation.items())
        lines.append(f"{name.upper()} = Operation({arguments})")
    answers = ", ".join(f"{name!r}: {model!r}" for name, model in lines_of_batches.items())
    lines += [
        "",
        "# What a line of a batch may ask for, and what it is answered with.",
        f"LineOperation = Literal[{', '.join(map(repr, lines_of_batches))}]",
        f'LineResult: TypeAlias = "{" | ".join(f"models.{model}" for model in lines_of_batches.values())}"',
        f"LINE_RESULTS = {{{answers}}}  # names of models",
    ]
    lines += ["", "# The fields of requests with their types; those that may be absent come last, with a mark."]
    fields = pprint.pformat(_fields_of_bodies(document), width=WIDTH, sort_dicts=False)
    lines += [f"REQUEST_FIELDS: dict[str, dict[str, str]] = {fields}"]
    return "\n".join(lines) + "\n"


def _fields_of_bodies(document: Schema) -> dict[str, dict[str, str]]:
    """By the name of a request: its fields with their types as text, the required ones first, others marked ``?``."""
    schemas = request_schemas(document)
    bodies = {_body_schema(call) for methods in document["paths"].values() for call in methods.values()} - {None}
    found: dict[str, dict[str, str]] = {}
    for name in sorted(str(body) for body in bodies):
        required = schemas[name].get("required", [])
        fields = schemas[name]["properties"]
        order = [*required, *(field for field in fields if field not in required)]
        hints = {field: " | ".join(dict.fromkeys(_hints(fields[field], schemas))) for field in order}
        found[name] = {field: hint if field in required else f"{hint}?" for field, hint in hints.items()}
    return found


def schemas_module(document: Schema) -> str:
    """The schemas of all that requests hold, for the checks before sending."""
    schemas = {name: _rules(schema) for name, schema in request_schemas(document).items()}
    lines = ["from typing import Any", "", f"REQUEST_SCHEMAS: dict[str, Any] = {pprint.pformat(schemas, width=WIDTH)}"]
    return "\n".join(lines) + "\n"


def _lines_of_batches(document: Schema) -> dict[str, str]:
    """The operations that a line of a batch may ask for, each with the schema of its answer."""
    asked = set(document["components"]["schemas"]["BatchOperation"]["enum"])
    return {
        operation["operationId"]: _schema_name(operation["responses"]["200"]["content"]["application/json"]["schema"])
        for methods in document["paths"].values()
        for operation in methods.values()
        if operation.get("operationId") in asked
    }


def types_module(document: Schema) -> str:
    """A typed dictionary per object that requests hold; each takes the generated models too."""
    schemas = request_schemas(document)
    objects = [name for name, schema in schemas.items() if schema.get("type") == "object"]
    kinds = {body: f"{body.removesuffix('Request')}Line" for body in _bodies_of_lines(document).values()}
    lines = [
        "import datetime",
        "from collections.abc import Sequence",
        "from typing import Literal, NotRequired, TypedDict",
        "",
        "from . import models",
        "",
        f"__all__ = {[*(f'{name}Dict' for name in sorted(objects)), *kinds.values(), 'Line']!r}",
        "",
    ]
    for name in sorted(objects):
        schema = schemas[name]
        description = " ".join(schema.get("description", name).split())
        lines += [f"class {name}Dict(TypedDict):", *_docstring(description, schema), ""]
        for field, value in schema["properties"].items():
            hint = " | ".join(dict.fromkeys(_hints(value, schemas)))
            if field not in schema.get("required", ()):
                hint = f"NotRequired[{hint}]"
            lines.append(f'    {field}: "{hint}"')
        lines.append("")
    for operation, body in _bodies_of_lines(document).items():
        lines += [
            f"class {kinds[body]}(TypedDict):",
            f'    """A line of a batch that asks what ``{operation}`` asks."""',
            "",
            "    reference: str",
            f'    operation: Literal["{operation}"]',
            f'    body: "models.{body} | {body}Dict"',
            "",
        ]
    lines += ["# Any line of a batch.", f"Line = {' | '.join(kinds.values())}"]
    return "\n".join(lines) + "\n"


def _bodies_of_lines(document: Schema) -> dict[str, str]:
    """The operations that a line of a batch may ask for, each with the schema of its body."""
    asked = set(document["components"]["schemas"]["BatchOperation"]["enum"])
    calls = [call for methods in document["paths"].values() for call in methods.values()]
    return {call["operationId"]: _body_schema(call) or "" for call in calls if call["operationId"] in asked}


def request_schemas(document: Schema) -> dict[str, Schema]:
    """The named schemas that any request body reaches, sorted by name."""
    schemas = document["components"]["schemas"]
    found: set[str] = set()
    waiting = [
        o["requestBody"] for methods in document["paths"].values() for o in methods.values() if "requestBody" in o
    ]
    while waiting:
        for name in set(_references(waiting.pop())) - found:
            found.add(name)
            waiting.append(schemas[name])
    return {name: schemas[name] for name in sorted(found) if "contentSchema" not in schemas[name]}


def _references(node: Any) -> Iterator[str]:
    if isinstance(node, dict):
        if "$ref" in node:
            yield _schema_name(node)
        for child in node.values():
            yield from _references(child)
    elif isinstance(node, list):
        for child in node:
            yield from _references(child)


def _body_schema(operation: Schema) -> str | None:
    """The name of the schema of a JSON body; none where there is no body, or one of lines."""
    media_types = operation.get("requestBody", {}).get("content", {})
    return _schema_name(media_types["application/json"]["schema"]) if "application/json" in media_types else None


def _schema_name(node: Schema) -> str:
    return str(node["$ref"]).rpartition("/")[2]


def _rules(schema: Schema) -> Schema:
    """``schema`` without what only describes. Fails on a keyword that the checks would pass over in silence."""
    if isinstance(schema.get("type"), list):  # the checks know one type at a time
        return {"anyOf": [_rules(_of_type(schema, type_)) for type_ in schema["type"]]}
    rules: Schema = {}
    for keyword, value in sorted(schema.items()):
        if keyword in _ANNOTATIONS:
            continue
        if keyword not in _CHECKED:
            raise SystemExit(f"request_check.py does not know the keyword {keyword!r}: teach it, then add it here")
        if keyword == "properties":
            rules[keyword] = {name: _rules(child) for name, child in value.items()}
        elif keyword in {"anyOf", "oneOf"}:
            rules[keyword] = [_rules(child) for child in value]
        elif keyword == "items":
            rules[keyword] = _rules(value)
        elif keyword == "$ref":
            rules[keyword] = _schema_name(schema)
        elif keyword == "discriminator":
            mapping = {tag: reference.rpartition("/")[2] for tag, reference in value["mapping"].items()}
            rules[keyword] = {"propertyName": value["propertyName"], "mapping": mapping}
        elif keyword == "additionalProperties" and value is not False:
            raise SystemExit("request_check.py only knows closed objects: teach it free-form ones")
        else:
            rules[keyword] = value
    return rules


def _of_type(schema: Schema, type_: str) -> Schema:
    """``schema`` of one of its types; of null without its limits, which say nothing of that."""
    return {"type": type_} if type_ == "null" else schema | {"type": type_}


def _hints(schema: Schema, schemas: dict[str, Schema]) -> Iterator[str]:
    """The alternatives of a field's type hint."""
    if "$ref" in schema:
        name = _schema_name(schema)
        if "const" in schemas[name]:  # of one choice the generator makes no class
            yield from _hints(schemas[name], schemas)
            return
        yield f"models.{name}"
        if "enum" in schemas[name]:
            yield f"Literal[{', '.join(repr(choice) for choice in schemas[name]['enum'])}]".replace('"', "'")
        else:
            yield f"{name}Dict"
        return
    for branch in [*schema.get("anyOf", ()), *schema.get("oneOf", ())]:
        yield from _hints(branch, schemas)
    if "const" in schema:
        yield f"Literal[{schema['const']!r}]"
        return
    match schema.get("type"):
        case list() as types:  # with null among them
            for type_ in types:
                yield from _hints(_of_type(schema, type_), schemas)
        case "string":
            yield from ("datetime.date", "str") if schema.get("format") == "date" else ("str",)
        case "number":
            yield "float"
        case "integer":
            yield "int"
        case "boolean":
            yield "bool"
        case "null":
            yield "None"
        case "array":
            yield f"Sequence[{' | '.join(dict.fromkeys(_hints(schema['items'], schemas)))}]"
        case None:
            pass
        case other:
            raise SystemExit(f"no type hint is known for {other!r}")


def _docstring(description: str, schema: Schema) -> list[str]:
    """The description of an object and of each of its fields, wrapped."""
    lines = textwrap.wrap(f'"""{description}', WIDTH - 4, initial_indent="    ", subsequent_indent="    ")
    lines.append("")
    for field, value in schema["properties"].items():
        branches = [value, *value.get("anyOf", ())]
        text = next((branch["description"] for branch in branches if "description" in branch), "")
        text = " ".join(text.split())
        ranges = [f"{b['minimum']:g} to {b['maximum']:g}" for b in branches if "minimum" in b and "maximum" in b]
        if not text:
            names = [_schema_name(branch) for branch in branches if "$ref" in branch]
            text = f"Always `{value['const']}`." if "const" in value else f"See `{names[0]}Dict`." if names else ""
        entry = f"{field}: {text}" + (f" {ranges[0]}." if ranges else "")
        lines += textwrap.wrap(entry.strip(), WIDTH - 4, initial_indent="    ", subsequent_indent="        ")
    return [re.sub(r"\\", r"\\\\", line) for line in [*lines, '    """']]


def _run(module: str, *arguments: str | Path, env: dict[str, str]) -> None:
    command = [sys.executable, "-m", module, *map(str, arguments)]
    done = subprocess.run(command, env=env, capture_output=True, text=True, check=False)  # noqa: S603 - our own words
    if done.returncode:
        raise SystemExit(f"{module} failed:\n{done.stdout}{done.stderr}")


if __name__ == "__main__":
    raise SystemExit(main())
