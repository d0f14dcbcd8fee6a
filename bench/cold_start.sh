#!/usr/bin/env bash
# How long a person waits for one answer from a cold program, beside general tools that start, compute
# something small and end. The answers are checked; a start above 15 ms fails.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
program=build/release/cli/swathbook
limit_ms=15
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT

ask="$program calibrate --sprayer boomless --width 26ft --course-length 176ft --course-times 31.5s --flow 2.60gal/min"
"$program" notebook new "$folder/book.gpkg" --author "Ada Quill" >/dev/null
"$program" notebook add sprayer name="Boom rig" --notebook "$folder/book.gpkg" >/dev/null
look="$program notebook list --notebook $folder/book.gpkg"

# The judges: right answers before fast ones.
$ask | grep -q '^Output *12\.99 gal/ac' || { echo "calibrate does not answer 12.99 gal/ac" >&2; exit 1; }
$look | grep -q 'Boom rig' || { echo "the notebook does not list its sprayer" >&2; exit 1; }
[ "$(units -t '176 ft / 31.5 s' 'mph' | cut -c1-4)" = "3.80" ] || { echo "GNU units disagrees" >&2; exit 1; }

names=("swathbook calibrate" "swathbook notebook list" "GNU units, the speed only" "Python 3, the bare sum"
    "Node, the bare sum" "sqlite3, listing a table")
commands=("$ask" "$look" "units -t '176 ft / 31.5 s' mph"
    "python3 -c 'print(495*2.6/(176/31.5*3600/5280*26))'"
    "node -e 'console.log(495*2.6/(176/31.5*3600/5280*26))'"
    "sqlite3 $folder/book.gpkg 'select kind from entries'")
hyperfine -N --warmup 10 --min-runs 60 --style none --export-csv "$folder/times.csv" "${commands[@]}" >/dev/null 2>&1

printf '%-28s %10s %10s %18s\n' "cold start" "median ms" "least ms" "against calibrate"
python3 - "$folder/times.csv" "$limit_ms" "${names[@]}" <<'PYTHON'
import csv, sys
rows = list(csv.DictReader(open(sys.argv[1])))
limit, names = float(sys.argv[2]), sys.argv[3:]
ours = float(rows[0]["median"])
for name, row in zip(names, rows):
    median = float(row["median"])
    print(f"{name:<28} {median * 1e3:10.2f} {float(row['min']) * 1e3:10.2f} {median / ours:17.2f}x")
sys.exit(0 if ours * 1e3 <= limit else f"a cold answer takes {ours * 1e3:.1f} ms, limit {limit} ms")
PYTHON
