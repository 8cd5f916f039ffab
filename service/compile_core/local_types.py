"""Which local names of a rewritten function are doubles, and which are indices."""

import ast

from syntax import names_in


def local_types(tree: ast.Module) -> tuple[set[str], set[str]]:
    """Names that are indices, and names that take part in arithmetic."""
    indices: set[str] = set()
    floats: set[str] = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.BinOp | ast.AugAssign):
            sides = [node.left, node.right] if isinstance(node, ast.BinOp) else [node.target, node.value]
            if not any(isinstance(side, ast.List | ast.ListComp) for side in sides):
                floats.update(side.id for side in sides if isinstance(side, ast.Name))
        elif isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.USub) and isinstance(node.operand, ast.Name):
            floats.add(node.operand.id)
        if isinstance(node, ast.Assign) and isinstance(node.targets[0], ast.Name) and _is_whole(node.value):
            indices.add(node.targets[0].id)
        if isinstance(node, ast.Assign):
            names = {target.id for target in node.targets if isinstance(target, ast.Name)}
            if _is_decimal(node.value) or (isinstance(node.value, ast.BinOp) and len(names) > 1):
                floats.update(names)
        if isinstance(node, ast.Compare) and isinstance(node.ops[0], ast.Lt | ast.Gt | ast.LtE | ast.GtE):
            floats.update(side.id for side in (node.left, *node.comparators) if isinstance(side, ast.Name))
        if isinstance(node, ast.For) and isinstance(node.iter, ast.Call) and isinstance(node.iter.func, ast.Name):
            if node.iter.func.id == "range" and isinstance(node.target, ast.Name):
                indices.add(node.target.id)
            if node.iter.func.id == "enumerate" and isinstance(node.target, ast.Tuple):
                indices.update(names_in(node.target.elts[0]))
    return indices, floats


def _is_whole(node: ast.expr) -> bool:
    if isinstance(node, ast.UnaryOp):
        node = node.operand
    if isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
        return node.func.id in ("len", "int")
    return isinstance(node, ast.Constant) and type(node.value) is int


def _is_decimal(node: ast.expr) -> bool:
    return isinstance(node, ast.Constant) and type(node.value) is float
