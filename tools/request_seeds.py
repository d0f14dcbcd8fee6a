#!/usr/bin/env python3
"""request_seeds.py FOLDER: every request of tests/cases as one seed for fuzz/requests.cpp: the
operation's name on the first line, the JSON after it."""
from __future__ import annotations

import hashlib
import re
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
COMPUTE = re.compile(r"^compute\s+(\S+)[ \t]*((?:.*)(?:\n[ \t]+\S.*)*)", re.MULTILINE)


def main() -> int:
    folder = Path(sys.argv[1])
    folder.mkdir(parents=True, exist_ok=True)
    for file in sorted((ROOT / "tests/cases").rglob("*.case")):
        for operation, request in COMPUTE.findall(file.read_text()):
            seed = f"{operation}\n{' '.join(request.split())}".encode()
            (folder / hashlib.sha1(seed).hexdigest()).write_bytes(seed)
    return 0


if __name__ == "__main__":
    sys.exit(main())
