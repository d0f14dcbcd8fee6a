#!/usr/bin/env python3
"""clang-tidy over core/ and api/, with the rules in .clang-tidy.

A file found clean is remembered in the user's cache folder (every copy of the repository shares it)
by a hash of itself, of every header of ours it reaches, of the rules and of the linter's version; it
is looked at again only when one of them changed. With --seconds N no new file is begun after N seconds; what was left out is said.
"""
from __future__ import annotations

import argparse
import hashlib
import json
import os
import re
import subprocess
import sys
import time
from concurrent.futures import ThreadPoolExecutor
from functools import lru_cache
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
TIDY = "clang-tidy-19"


def cache_folder() -> Path:
    """~/.cache/swathbook/lint; build/lint where there is no home to write to."""
    home = os.environ.get("XDG_CACHE_HOME") or os.path.join(os.environ.get("HOME") or "/", ".cache")
    folder = Path(home) / "swathbook/lint"
    try:
        folder.mkdir(parents=True, exist_ok=True)
        return folder
    except OSError:
        return ROOT / "build/lint"


MEMORY = cache_folder()
INCLUDE = re.compile(rb'^\s*#\s*include\s*"([^"]+)"', re.MULTILINE)


@lru_cache(maxsize=None)
def direct(file: Path) -> tuple[bytes, tuple[Path, ...]]:
    content = file.read_bytes()
    return content, tuple(ROOT / name.decode() for name in INCLUDE.findall(content))


def fingerprint(file: Path, rules: bytes) -> str:
    seen: set[Path] = set()
    waiting = [file]
    digest = hashlib.sha256(rules)
    while waiting:
        current = waiting.pop()
        if current in seen or not current.is_file():
            continue
        seen.add(current)
        waiting += direct(current)[1]
    for path in sorted(seen):
        digest.update(str(path.relative_to(ROOT)).encode() + b"\0" + direct(path)[0])
    return digest.hexdigest()


def look_at(file: Path) -> tuple[Path, bool, str]:
    run = subprocess.run([TIDY, "--quiet", "-p", str(ROOT / "build/dev"), str(file)],
                         capture_output=True, text=True, stdin=subprocess.DEVNULL, check=False)
    return file, run.returncode == 0, run.stdout + ("" if run.returncode == 0 else run.stderr)


def files_to_lint() -> list[Path]:
    commands = json.loads((ROOT / "build/dev/compile_commands.json").read_text())
    files = {Path(command["file"]).resolve() for command in commands}
    wanted = [ROOT / "core", ROOT / "api"]
    return sorted(file for file in files if ".gen." not in file.name
                  if file.is_file() and any(top in file.parents for top in wanted))


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--seconds", type=float, default=1e9)
    parser.add_argument("files", nargs="*")
    asked = parser.parse_args()
    begin = time.monotonic()
    version = subprocess.run([TIDY, "--version"], capture_output=True, check=True).stdout
    rules = (ROOT / ".clang-tidy").read_bytes() + version
    MEMORY.mkdir(parents=True, exist_ok=True)
    files = [Path(name).resolve() for name in asked.files] or files_to_lint()
    marks = {file: MEMORY / fingerprint(file, rules) for file in files}
    waiting = [file for file in files if not marks[file].exists()]
    dirty = left_out = 0

    def guarded(file: Path) -> tuple[Path, bool | None, str]:
        if time.monotonic() - begin > asked.seconds:
            return file, None, ""
        return look_at(file)

    with ThreadPoolExecutor(os.cpu_count()) as pool:
        for file, clean, text in pool.map(guarded, waiting):
            if clean is None:
                left_out += 1
            elif clean:
                marks[file].touch()
            else:
                dirty += 1
                print(text, file=sys.stderr, flush=True)
    print(f"lint: {len(files)} files, {len(files) - len(waiting)} known clean, {dirty} with faults"
          + (f", {left_out} not looked at (time was up)" if left_out else ""))
    return 1 if dirty else 0


if __name__ == "__main__":
    sys.exit(main())
