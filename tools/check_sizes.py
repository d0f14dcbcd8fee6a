#!/usr/bin/env python3
"""Small files, short functions: header 400 lines, source 700, function 60 lines and 4 levels deep,
6 parameters. Aims are lower (docs of house style); these are the limits. A generated file
(*.gen.*) is not looked at; a numeric derivation that must be longer, or take more, says so on the
line that opens it: `// size: reason`.
"""
from __future__ import annotations

import re
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
FOLDERS = ["core", "api", "store", "reports", "server", "cli", "wasm", "tests", "fuzz", "bench", "examples"]
FILE_LIMITS = {".hpp": 400, ".cpp": 700, ".mjs": 400, ".py": 400}
FUNCTION_LIMIT, NESTING_LIMIT, PARAMETER_LIMIT = 60, 4, 6
LITERAL = re.compile(
    r'R"(?P<mark>[^()\\ ]*)\(.*?\)(?P=mark)"|"(?:\\.|[^"\\\n])*"|(?<![0-9a-fA-F])\'(?:\\.|[^\'\\\n])+\''
    r"|//[^\n]*|/\*.*?\*/|^[ \t]*#(?:[^\n\\]|\\.|\\\n)*", re.DOTALL | re.MULTILINE)
SCOPE = re.compile(r"\b(namespace|class|struct|union|enum|extern)\b")
CONTROL = re.compile(r"(?:^|[\s}:])(if|for|while|switch|do|else|try|catch)\b")


def blank(match: re.Match[str]) -> str:
    """Comments, strings and preprocessor lines become spaces, so that positions stay."""
    return re.sub(r"[^\n]", " ", match.group(0))


def parameter_count(head: str) -> int:
    """Commas at the outer level of the first bracket of a function head."""
    depth, angle, count, seen = 0, 0, 0, False
    for character in head[head.find("("):]:
        if character in "([{":
            depth += 1
        elif character in ")]}":
            depth -= 1
            if depth == 0:
                break
        elif character == "<":
            angle += 1
        elif character == ">":
            angle = max(0, angle - 1)
        elif character == "," and depth == 1 and angle == 0:
            count += 1
        if depth >= 1 and not character.isspace() and character != "(":
            seen = True
    return count + 1 if seen else 0


def kind_of(head: str, stack: list[str]) -> str:
    inside = any(kind in ("function", "test") for kind in stack)
    if inside:
        return "control" if CONTROL.search(" " + head) else "block"
    if "(" in head and not re.match(r"\s*(namespace|enum)\b", head) and "=" not in head.split("(")[0]:
        return "test" if re.match(r"\s*(TEST|RC_GTEST|BENCHMARK)", head) else "function"
    return "scope" if SCOPE.search(head) else "block"


def check_functions(name: str, text: str) -> list[str]:
    problems: list[str] = []
    clean = LITERAL.sub(blank, text)
    lines = text.splitlines()
    stack: list[str] = []
    brackets = [0]  # open round brackets in each open brace: a for loop has semicolons inside
    start = head_start = 0
    for position, character in enumerate(clean):
        brackets[-1] += (character == "(") - (character == ")")
        if character == "{":
            brackets.append(0)
            head = clean[head_start:position].strip()
            kind = kind_of(head, stack)
            if kind in ("function", "test"):
                start = clean.count("\n", 0, position) + 1
                parameters = parameter_count(head)
                if parameters > PARAMETER_LIMIT and "// size:" not in lines[start - 1]:
                    problems.append(f"{name}:{start}: {parameters} parameters, limit {PARAMETER_LIMIT}"
                                    " (make a struct with named members)")
            stack.append(kind)
            if kind == "control" and stack.count("control") == NESTING_LIMIT + 1:
                line = clean.count("\n", 0, position) + 1
                problems.append(f"{name}:{line}: nested deeper than {NESTING_LIMIT}")
        elif character == "}" and stack:
            brackets.pop()
            kind = stack.pop()
            if kind in ("function", "test"):
                end = clean.count("\n", 0, position) + 1
                excused = "// size:" in lines[start - 1]
                if end - start + 1 > FUNCTION_LIMIT and not excused:
                    problems.append(f"{name}:{start}: function of {end - start + 1} lines,"
                                    f" limit {FUNCTION_LIMIT}")
        if character in "{}" or (character == ";" and brackets[-1] <= 0):
            head_start = position + 1
    return problems


def main() -> int:
    problems: list[str] = []
    count = 0
    for folder in FOLDERS:
        for path in sorted((ROOT / folder).rglob("*")):
            limit = FILE_LIMITS.get(path.suffix)
            if limit is None or ".gen." in path.name or not path.is_file():
                continue
            count += 1
            name = str(path.relative_to(ROOT))
            text = path.read_text()
            length = text.count("\n")
            if length > limit:
                problems.append(f"{name}: {length} lines, limit {limit} (split it by idea)")
            if path.suffix in (".hpp", ".cpp"):
                problems += check_functions(name, text)
    for problem in problems:
        print(problem, file=sys.stderr)
    print(f"sizes: {count} files, {len(problems)} problems")
    return 1 if problems else 0


if __name__ == "__main__":
    sys.exit(main())
