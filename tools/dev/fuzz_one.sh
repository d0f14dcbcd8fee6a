#!/usr/bin/env bash
# fuzz_one.sh TARGET SECONDS: one libFuzzer program over its seeds and the corpus found so far.
# The corpus grows in out/fuzz/corpus; the seeds in fuzz/seeds stay as they are.
set -euo pipefail
target=$1 seconds=$2
name=$(basename "$target" _fuzz)
corpus="out/fuzz/corpus/$name"
log="out/fuzz/$name.log"
mkdir -p "$corpus"
folders=("$corpus")
[ ! -d "fuzz/seeds/$name" ] || folders+=("fuzz/seeds/$name")
if [ "$name" = requests ]; then
    python3 tools/request_seeds.py out/fuzz/request_seeds
    folders+=(out/fuzz/request_seeds)
fi
if ! "$target" -max_total_time="$seconds" -timeout=10 -rss_limit_mb=2048 -max_len=16384 \
    -print_final_stats=1 -artifact_prefix="out/fuzz/$name-" "${folders[@]}" </dev/null >"$log" 2>&1; then
    tail -n 60 "$log" >&2
    echo "fuzz $name: FAILED; the input is out/fuzz/$name-*, the log $log" >&2
    exit 1
fi
echo "fuzz $name: $(sed -n 's/^stat::number_of_executed_units: *//p' "$log") inputs in $seconds s, no fault"
