#!/usr/bin/env python3
"""Writes docs/stories.md and docs/sources.md from the case files, so that what the pages say is what the tests check.

usage: tools/write_docs.py          write both pages
       tools/write_docs.py --check  exit 1 if a page is not what the case files say
"""
import json
import pathlib
import re
import sys

ROOT = pathlib.Path(__file__).resolve().parent.parent
CASES = ROOT / "tests" / "cases"


def read_cases(path):
    """The cases of one file, each a list of (word, rest); continuation lines folded."""
    cases, current = [], []
    for raw in path.read_text(encoding="utf-8").splitlines() + [""]:
        if raw.startswith("#"):
            continue
        if not raw.strip():
            if current:
                cases.append(current)
            current = []
        elif raw[0] in " \t" and current:
            word, rest = current[-1]
            current[-1] = (word, rest + " " + raw.strip())
        else:
            word, _, rest = raw.strip().partition(" ")
            current.append((word, rest.strip()))
    return cases


def values(case, word):
    return [rest for key, rest in case if key == word]


def demand_row(rest):
    match = re.match(r"^(.+?)\s+=\s+(\S+)\s*(.*?)\s+within\s+(.+)$", rest)
    if match:
        path, number, unit, tolerance = match.groups()
        return f"| `{path}` | {number} {unit} | ± {tolerance} |"
    path, verb, wanted = re.split(r"\s+(is|has)\s+", rest, maxsplit=1)
    return f"| `{path}` | {'contains ' if verb == 'has' else ''}{wanted} | |"


def sentence(text):
    text = text[0].upper() + text[1:]
    return text if text[-1] in ".!?" else text + "."


def request_text(value, indent=0, room=100):
    """Readable JSON: whatever fits on a line stays on it."""
    compact = json.dumps(value, ensure_ascii=False)
    if len(compact) + indent <= room or not isinstance(value, (dict, list)) or not value:
        return compact
    pad = " " * (indent + 2)
    if isinstance(value, dict):
        rows = [f"{json.dumps(k, ensure_ascii=False)}: {request_text(v, indent + 2, room)}" for k, v in value.items()]
        brackets = "{}"
    else:
        rows = [request_text(v, indent + 2, room) for v in value]
        brackets = "[]"
    return brackets[0] + "\n" + ",\n".join(pad + row for row in rows) + "\n" + " " * indent + brackets[1]


def story_text(case):
    operation, _, request = values(case, "compute")[0].partition(" ")
    title = re.sub(r"^story-\d+-", "", values(case, "case")[0]).replace("-", " ").capitalize()
    lines = [f"### {title}", ""]
    lines += [sentence(note) + "\n" for note in values(case, "note")]
    lines += ["```sh", f"swathbook compute {operation} <<'JSON'", request_text(json.loads(request)), "JSON", "```", ""]
    expected = values(case, "expect")
    if expected:
        lines += ["| in the answer | value | tolerance |", "|---|---|---|"] + [demand_row(e) for e in expected] + [""]
    lines += [f"Finding: `{code}`\n" for code in values(case, "finding")]
    lines += [f"Refused: `{what}`\n" for what in values(case, "refuse")]
    return "\n".join(lines)


def stories_page():
    parts = ["# Stories\n",
             "Everyday cases of the job, with the commands that reproduce their numbers. People, places and products are\n"
             "invented. This page is written by `tools/write_docs.py` from `tests/cases/stories/`; the tests run every\n"
             "command on it, natively and in WebAssembly. To paste them, `./dev build` and put the program on the path:\n"
             "`export PATH=\"$PWD/build/release/cli:$PATH\"`.\n"]
    for path in sorted((CASES / "stories").glob("*.case")):
        first_line = path.read_text(encoding="utf-8").splitlines()[0]
        parts.append("## " + re.sub(r"Story 0*(\d+)", r"Story \1", first_line.lstrip("# ")) + "\n")
        parts += [story_text(case) for case in read_cases(path)]
    return "\n".join(parts).rstrip() + "\n"


def sources_page():
    groups = {}
    for path in sorted(CASES.rglob("*.case")):
        for case in read_cases(path):
            if values(case, "kind")[0] in ("published", "misprint"):
                source = values(case, "source")[0]
                groups.setdefault(source, []).append(values(case, "case")[0])
    parts = ["# Sources\n",
             "Every publication that a case is taken from, and the cases taken from it. Written by `tools/write_docs.py`\n"
             "from the case files. Sources of formulas stand in `docs/methods/`; sources of tables beside them in\n"
             "`data/*/source.txt`.\n",
             "| Source | Cases |", "|---|---|"]
    for source, names in sorted(groups.items()):
        parts.append(f"| {source.replace('|', '/')} | {', '.join(names)} |")
    return "\n".join(parts) + "\n"


def main():
    stale = []
    for name, text in (("stories.md", stories_page()), ("sources.md", sources_page())):
        page = ROOT / "docs" / name
        if "--check" in sys.argv:
            if not page.exists() or page.read_text(encoding="utf-8") != text:
                stale.append(name)
        else:
            page.write_text(text, encoding="utf-8")
    if stale:
        print(f"docs/{', docs/'.join(stale)}: not what the case files say; run tools/write_docs.py", file=sys.stderr)
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(main())
