#!/usr/bin/env bash
# Every benchmark of bench/, one after the other, nothing else running. Each prints its figure beside a
# rival's and checks both answers; the first wrong answer or missed limit makes the whole fail.
set -uo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/../.." || exit
failed=()

measure() {
    printf '\n== %s\n' "$1"
    "${@:2}" || failed+=("$1")
}

for program in build/release/bench/*_bench; do
    [ ! -x "$program" ] || measure "$(basename "$program")" "$program"
done
measure "cold start of the program" bench/cold_start.sh
measure "local server" bench/server_bench.sh
measure "WebAssembly" node bench/wasm_bench.mjs
measure "the app in a browser" node bench/web/first_load.mjs

if [ ${#failed[@]} -gt 0 ]; then
    printf '\nfailed: %s\n' "${failed[@]}" >&2
    exit 1
fi
printf '\nall benchmarks within their limits\n'
