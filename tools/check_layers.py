#!/usr/bin/env python3
"""Folders are layers: fails when an include, or a CMake dependency, goes the wrong way.

Reads tools/layers.txt (which folder may include which) and tools/third_party.txt (which folder may
include which library). Checks every #include of the project's own code:
  * a quoted include names a file of this project from its root: "core/mix/loads.hpp";
  * it belongs to a layer the including layer may use;
  * an angled include is of the standard library, or of a library named for that layer;
  * the core includes nothing that reaches files, clocks, threads, streams or locales;
  * the core calls no function of <cmath> that two C libraries round differently;
  * DEPENDS in each CMakeLists.txt says the same as the includes and as the table;
  * neither the layers nor the headers go round in a circle.
"""
from __future__ import annotations

import re
import sys
from graphlib import CycleError, TopologicalSorter
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
INCLUDE = re.compile(r'^\s*#\s*include\s*(?:"([^"]+)"|<([^>]+)>)', re.MULTILINE)
LAYER_CALL = re.compile(r"swathbook_(?:layer|program)\(\s*(\S+?)\s*(?:\)|\s([^)]*)\))")
SOURCES = {".cpp", ".hpp"}

FORBIDDEN_IN_CORE = {
    "iostream", "istream", "ostream", "fstream", "sstream", "iomanip", "syncstream", "filesystem",
    "thread", "mutex", "shared_mutex", "condition_variable", "future", "stop_token", "semaphore",
    "chrono", "ctime", "locale", "regex", "csignal", "exception", "random",
}
# Exact in every C library, or correctly rounded, are sqrt, fabs, floor, remainder and their like;
# these are not.
ROUNDED_DIFFERENTLY = re.compile(
    r"\b(?:std::|__builtin_)(a?sinh?|a?cosh?|a?tanh?|atan2|exp2?|expm1|log|log1p|log10|log2|pow|cbrt|"
    r"hypot|[tl]gamma|erfc?)\(")
FORBIDDEN_EVERYWHERE = {
    "format": "g++ 12 has no std::format: use fmt/format.h",
    "print": "g++ 12 has no std::print: use fmt/format.h",
    "expected": "use core/base/result.hpp",
    "mdspan": "g++ 12 has no std::mdspan",
}


def read_table(path: Path) -> dict[str, list[str]]:
    table: dict[str, list[str]] = {}
    for number, line in enumerate(path.read_text().splitlines(), 1):
        line = line.split("#", 1)[0].strip()
        if not line:
            continue
        name, colon, rest = line.partition(":")
        if not colon:
            sys.exit(f"{path.name}:{number}: no colon in '{line}'")
        table[name.strip()] = rest.split()
    return table


LAYERS = read_table(ROOT / "tools/layers.txt")
THIRD_PARTY = read_table(ROOT / "tools/third_party.txt")


def layer_of(path: str) -> str | None:
    """The longest layer name that is a folder of the path: core/mix/detail/x.hpp -> core/mix."""
    folders = path.split("/")[:-1]
    for end in range(len(folders), 0, -1):
        name = "/".join(folders[:end])
        if name in LAYERS:
            return name
    return None


def may_use(layer: str, other: str) -> bool:
    return other == layer or "*" in LAYERS[layer] or other in LAYERS[layer]


def own_files() -> list[str]:
    files = []
    for top in sorted({name.split("/")[0] for name in LAYERS}):
        files += [str(path.relative_to(ROOT)) for path in sorted((ROOT / top).rglob("*"))
                  if path.suffix in SOURCES]
    return files


def quoted_problem(layer: str, target: str) -> str | None:
    if not (ROOT / target).is_file():
        return f'"{target}" is no file of this project (quoted includes start at its root; ' \
               "libraries go in < >)"
    other = layer_of(target)
    if other is None:
        return f'"{target}" lies in no layer: name its folder in tools/layers.txt'
    if not may_use(layer, other):
        return f'{layer} may not include {other} ("{target}"): tools/layers.txt'
    return None


def angled_problem(layer: str, target: str) -> str | None:
    for prefix, folders in THIRD_PARTY.items():
        if target == prefix or (prefix.endswith("/") and target.startswith(prefix)):
            if "*" in LAYERS[layer] or "*" in folders or layer in folders:
                return None
            return f"<{target}> belongs to {', '.join(folders)} (tools/third_party.txt), not to {layer}"
    if target in FORBIDDEN_EVERYWHERE:
        return f"<{target}>: {FORBIDDEN_EVERYWHERE[target]}"
    if layer.startswith("core/") and target in FORBIDDEN_IN_CORE:
        return f"<{target}> in {layer}: the core has no files, clock, threads, streams or locale"
    if "/" in target or target.endswith(".h"):
        return f"<{target}> is no standard header: name the library in tools/third_party.txt"
    return None


def declared_dependencies() -> dict[str, list[str]]:
    declared: dict[str, list[str]] = {}
    for name in LAYERS:
        path = ROOT / name / "CMakeLists.txt"
        if not path.is_file():
            continue
        for found, rest in LAYER_CALL.findall(path.read_text()):
            match = re.search(r"DEPENDS\s+(.*?)(?:\bLIBRARIES\b|$)", rest, re.DOTALL)
            declared[found] = match.group(1).split() if match else []
    return declared


def reachable(layer: str, declared: dict[str, list[str]]) -> set[str]:
    seen: set[str] = set()
    waiting = [layer]
    while waiting:
        for other in declared.get(waiting.pop(), []):
            if other not in seen:
                seen.add(other)
                waiting.append(other)
    return seen


def circle(graph: dict[str, set[str]], what: str) -> list[str]:
    try:
        TopologicalSorter(graph).prepare()
    except CycleError as error:
        return [f"{what} go round in a circle: {' -> '.join(error.args[1])}"]
    return []


def table_problems() -> list[str]:
    problems = [f"tools/layers.txt: {name} names {other}, which is no layer"
                for name, others in LAYERS.items() for other in others
                if other != "*" and other not in LAYERS]
    plain = {name: set(others) for name, others in LAYERS.items() if "*" not in others}
    return problems + circle(plain, "layers")


def main() -> int:
    problems = table_problems()
    declared = declared_dependencies()
    for name, others in declared.items():
        problems += [f"{name}/CMakeLists.txt: DEPENDS {other} is not allowed by tools/layers.txt"
                     for other in others if name in LAYERS and not may_use(name, other)]
    headers: dict[str, set[str]] = {}
    files = own_files()
    for file in files:
        layer = layer_of(file)
        if layer is None:
            problems.append(f"{file}: lies in no layer: name its folder in tools/layers.txt")
            continue
        text = (ROOT / file).read_text()
        for match in INCLUDE.finditer(text):
            quoted, angled = match.groups()
            problem = quoted_problem(layer, quoted) if quoted else angled_problem(layer, angled)
            other = layer_of(quoted) if quoted else None
            is_program = Path(file).name.startswith("main")  # links what it likes of what it may use
            if not problem and other and layer in declared and other != layer and not is_program \
                    and other not in reachable(layer, declared):
                problem = f'includes "{quoted}" but {layer}/CMakeLists.txt does not depend on {other}'
            if problem:
                line = text.count("\n", 0, match.start()) + 1
                problems.append(f"{file}:{line}: {problem}")
            if quoted and file.endswith(".hpp"):
                headers.setdefault(file, set()).add(quoted)
        for match in ROUNDED_DIFFERENTLY.finditer(text) if layer.startswith("core/") else ():
            line = text.count("\n", 0, match.start()) + 1
            problems.append(f"{file}:{line}: {match.group(0)}...) rounds its last bit differently "
                            "from machine to machine: ask core/base/elementary.hpp")
        if file.endswith(".hpp") and "#pragma once" not in text:
            problems.append(f"{file}: a header begins with #pragma once")
    problems += circle(headers, "headers")
    for problem in problems:
        print(problem, file=sys.stderr)
    print(f"layers: {len(files)} files, {len(LAYERS)} layers, {len(problems)} problems")
    return 1 if problems else 0


if __name__ == "__main__":
    sys.exit(main())
