#!/usr/bin/env python3
"""Writes core/notebook/rule_tables.gen.cpp from data/rules/*.tsv.

Every row must refer to fields, authorities and sources that exist, and the counts must be those that
data/rules/source.txt states. The written file is read back and compared with the tables, value by
value. With --check nothing is written: fails when the file in the tree is not what the tables give.
"""
from __future__ import annotations

import re
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
TABLES = ROOT / "data/rules"
OUTPUT = ROOT / "core/notebook/rule_tables.gen.cpp"

COLUMNS = {
    "fields": ["key", "label_en", "label_es", "type", "format", "phase", "note"],
    "requirements": ["field", "authority", "status", "condition", "source", "note"],
    "authorities": ["key", "applies_when", "valid_from", "valid_until", "ended_by", "deadline",
                    "deadline_basis", "deadline_source", "keep_years", "keep_basis", "keep_source",
                    "fields_basis", "citation", "note"],
    "sources": ["id", "title", "address"],
}
TYPES = {"fields": "FieldRow", "requirements": "RequirementRow", "authorities": "AuthorityRow",
         "sources": "SourceRow"}
STATUSES = {"required", "conditional", "contract", "recommended", "legacy"}
BASES = {"", "seen", "secondary", "partial", "memory"}
DATE = re.compile(r"\d{4}-\d{2}-\d{2}")


def read_table(name: str) -> list[list[str]]:
    lines = (TABLES / f"{name}.tsv").read_text(encoding="utf-8").splitlines()
    if lines[0].split("\t") != COLUMNS[name]:
        sys.exit(f"{name}.tsv: the columns must be {COLUMNS[name]}")
    rows = [line.split("\t") for line in lines[1:]]
    for number, row in enumerate(rows, 2):
        if len(row) != len(COLUMNS[name]):
            sys.exit(f"{name}.tsv:{number}: {len(row)} columns, {len(COLUMNS[name])} wanted")
    return rows


def stated_counts() -> dict[str, int]:
    text = (TABLES / "source.txt").read_text(encoding="utf-8")
    return {name: int(count) for name, count in re.findall(r"(\w+)\.tsv\s+(\d+) ", text)}


def problems_of(tables: dict[str, list[list[str]]]) -> list[str]:
    problems = [f"{name}.tsv has {len(tables[name])} rows, source.txt says {count}"
                for name, count in stated_counts().items() if len(tables[name]) != count]
    keys = {name: [row[0] for row in tables[name]] for name in ("fields", "authorities", "sources")}
    for name, values in keys.items():
        problems += [f"{name}.tsv: {value} comes twice" for value in set(values)
                     if values.count(value) > 1]
    pairs = [tuple(row[:2]) + (row[4],) for row in tables["requirements"]]
    problems += [f"requirements.tsv: {pair} comes twice" for pair in set(pairs) if pairs.count(pair) > 1]
    for field, authority, status, condition, source, _ in tables["requirements"]:
        where = f"requirements.tsv: {field} / {authority}"
        problems += [f"{where}: no such field"] if field not in keys["fields"] else []
        problems += [f"{where}: no such authority"] if authority not in keys["authorities"] else []
        problems += [f"{where}: no such source {source}"] if source not in keys["sources"] else []
        problems += [f"{where}: status {status}"] if status not in STATUSES else []
        if not re.fullmatch(r"|ask|commodity|[A-Z]\d", condition):
            problems.append(f"{where}: condition {condition}")
    for row in tables["authorities"]:
        authority = dict(zip(COLUMNS["authorities"], row))
        where = f"authorities.tsv: {authority['key']}"
        if authority["applies_when"] not in {"always", "restricted_use", "worker_protection"}:
            problems.append(f"{where}: applies_when")
        if not re.fullmatch(r"|\d+ [dh]", authority["deadline"]):
            problems.append(f"{where}: deadline {authority['deadline']}")
        if not re.fullmatch(r"|\d+", authority["keep_years"]):
            problems.append(f"{where}: keep_years")
        for column in ("valid_from", "valid_until"):
            if authority[column] and not DATE.fullmatch(authority[column]):
                problems.append(f"{where}: {column}")
        for column in ("deadline_basis", "keep_basis", "fields_basis"):
            if authority[column] not in BASES:
                problems.append(f"{where}: {column}")
        for value, basis, source in (("deadline", "deadline_basis", "deadline_source"),
                                     ("keep_years", "keep_basis", "keep_source")):
            if bool(authority[value]) != bool(authority[basis]) or \
                    (authority[value] and authority[source] not in keys["sources"]):
                problems.append(f"{where}: {value} needs a basis and a source")
        if bool(authority["valid_until"]) != bool(authority["ended_by"]):
            problems.append(f"{where}: an end needs a reason")
    return problems


def quoted(text: str) -> str:
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'


def generate(tables: dict[str, list[list[str]]]) -> str:
    out = ["// Written by tools/make_rule_tables.py from data/rules/*.tsv. Do not edit.",
           '#include "core/notebook/rule_tables.hpp"', "", "namespace swathbook::notebook {", "",
           "namespace {", ""]
    for name, rows in tables.items():
        out.append(f"constexpr {TYPES[name]} {name}_table[] = {{")
        out += ["    {" + ", ".join(quoted(value) for value in row) + "}," for row in rows]
        out += ["};", ""]
    out += ["}  // namespace", ""]
    for name in tables:
        function = {"fields": "field_rows", "requirements": "requirement_rows",
                    "authorities": "authority_rows", "sources": "source_rows"}[name]
        out.append(f"std::span<const {TYPES[name]}> {function}() {{ return {name}_table; }}")
    out += ["", "}  // namespace swathbook::notebook", ""]
    return "\n".join(out)


def read_back(text: str) -> dict[str, list[list[str]]]:
    tables = {}
    for name in COLUMNS:
        body = re.search(rf"{name}_table\[\] = \{{\n(.*?)\n\}};", text, re.DOTALL).group(1)
        tables[name] = [[value.replace('\\"', '"').replace("\\\\", "\\")
                         for value in re.findall(r'"((?:[^"\\]|\\.)*)"', line)]
                        for line in body.splitlines()]
    return tables


def main() -> int:
    tables = {name: read_table(name) for name in COLUMNS}
    problems = problems_of(tables)
    text = generate(tables)
    if read_back(text) != tables:
        problems.append("the generated text does not read back as the tables")
    if "--check" in sys.argv[1:]:
        if not OUTPUT.is_file() or OUTPUT.read_text(encoding="utf-8") != text:
            problems.append(f"{OUTPUT.name} is not what the tables give: run tools/make_rule_tables.py")
    elif not problems:
        OUTPUT.write_text(text, encoding="utf-8")
    for problem in problems:
        print(problem, file=sys.stderr)
    return 1 if problems else 0


if __name__ == "__main__":
    sys.exit(main())
