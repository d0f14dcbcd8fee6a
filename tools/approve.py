#!/usr/bin/env python3
"""What the command prints to a person, kept as files so that a change of it is seen and agreed to.

Each tests/golden/*.txt opens with the command line ("$ swathbook ..."); below it stands what that
command printed, answer and errors together, and the exit status when it is not 0.

usage: tools/approve.py [PROGRAM] [--write]
  compares, prints what differs and ends with 1; with --write takes what is printed now as right.
A new text: make a file with the one line "$ swathbook ...", then run with --write and read it.
"""
from __future__ import annotations

import argparse
import difflib
import os
import shlex
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
GOLDEN = ROOT / "tests/golden"
PROMPT = "$ swathbook "
PAPER_WIDTH = 80  # what the program takes when it does not write to a terminal


def printed(program: Path, command: str) -> str:
    """The text of a golden file as this program would make it."""
    # No variables of the caller's: units, notebook and colour come from the command line alone.
    environment = {"PATH": os.environ.get("PATH", ""), "NO_COLOR": "1", "LC_ALL": "C.UTF-8"}
    run = subprocess.run([str(program), *shlex.split(command[len(PROMPT):])], cwd=ROOT,
                         env=environment, stdin=subprocess.DEVNULL, stdout=subprocess.PIPE,
                         stderr=subprocess.STDOUT, timeout=60, check=False)
    status = f"[exit status {run.returncode}]\n" if run.returncode else ""
    return f"{command}\n{run.stdout.decode()}{status}"


def difference(name: str, kept: str, now: str) -> str:
    lines = difflib.unified_diff(kept.splitlines(), now.splitlines(), f"{name} (kept)",
                                 f"{name} (printed now)", lineterm="", n=2)
    return "\n".join(lines)


def too_wide(text: str) -> list[str]:
    """Lines wider than the paper. Commands to copy, and the one word nobody can break, may be."""
    return [line for line in text.splitlines()[1:]
            if len(line) > PAPER_WIDTH and "swathbook" not in line and " " in line.strip()]


def main() -> int:
    reader = argparse.ArgumentParser(description=(__doc__ or "").split("\n", maxsplit=1)[0])
    reader.add_argument("program", nargs="?", type=Path,
                        default=ROOT / "build/dev/cli/swathbook")
    reader.add_argument("--write", action="store_true", help="take what is printed now as right")
    asked = reader.parse_args()
    program = asked.program.resolve()
    if not program.is_file():
        sys.exit(f"approve: {program} is not there: cmake --build --preset dev --target swathbook")

    paths = sorted(GOLDEN.glob("*.txt"))
    if not paths:
        sys.exit(f"approve: no texts in {GOLDEN}")
    changed = faults = 0
    for path in paths:
        name = str(path.relative_to(ROOT))
        kept = path.read_text()
        command = kept.split("\n", 1)[0]
        if not command.startswith(PROMPT):
            sys.exit(f"approve: {name} does not open with '{PROMPT}...'")
        now = printed(program, command)
        for line in too_wide(now):
            faults += 1
            print(f"{name}: wider than {PAPER_WIDTH} columns: {line}")
        if now == kept:
            continue
        changed += 1
        print(difference(name, kept, now))
        if asked.write:
            path.write_text(now)
    said = "written" if asked.write else "differ"
    print(f"golden: {len(paths)} texts, {changed} {said}, {faults} lines too wide")
    if changed and not asked.write:
        print("If this is how it should read: tools/approve.py --write, and commit the files.")
    return 1 if faults or (changed and not asked.write) else 0


if __name__ == "__main__":
    sys.exit(main())
