#!/usr/bin/env bash
# How many calibrations a second the local server answers, beside a bare Beast program that answers as
# many bytes without looking at the request: wrk on loopback, 64 connections, both loaded in turn in the
# same run; then the same with 500 idle connections open. The answer is checked byte for byte against the
# command. Below 20,000 requests a second, or with a p99 above 10 ms, it fails; on a machine so busy with
# other work that bare Beast is below 45,000, only the processor time of a request is judged (80 us: two
# cores then have a fifth left for the client).
# SECONDS_EACH (4) and ROUNDS (3) may be set.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
program=build/release/cli/swathbook
hello=build/release/bench/beast_hello
least_rate=20000 most_p99_ms=10 busy_below=45000 most_cpu_us=80
seconds_each=${SECONDS_EACH:-4} rounds=${ROUNDS:-3}
export REQUEST=data/demo/01-calibrate-boom-rig.json
folder=$(mktemp -d)
started=()
trap 'kill "${started[@]}" 2>/dev/null || true; rm -rf "$folder"' EXIT

# The judge: the right bytes before fast ones.
"$program" compute calibrate --request "$REQUEST" >"$folder/command"
env -u SWATHBOOK_NOTEBOOK "$program" serve --port 0 >"$folder/address" 2>"$folder/log" &
started+=($!)
"$hello" "$(stat -c %s "$folder/command")" >"$folder/hello" &
started+=($!)
for _ in $(seq 50); do
    [ ! -s "$folder/address" ] || [ ! -s "$folder/hello" ] || break
    sleep 0.1
done
port=$(sed -n 's|^http://localhost:\([0-9]*\)/.*|\1|p' "$folder/address")
ours="http://127.0.0.1:$port/api/compute/calibrate"
rival="http://127.0.0.1:$(cat "$folder/hello")/"
same_bytes() {
    curl -sf -H 'Content-Type: application/json' --data-binary "@$REQUEST" "$ours" | cmp - "$folder/command"
}
same_bytes || { echo "the server does not answer what the command answers" >&2; exit 1; }

# Processor time a process has used, in hundredths of a second.
used() { awk '{print $14 + $15}' "/proc/$1/stat"; }
# load ADDRESS PROCESS: "requests/s p50 p99 faults microseconds-of-processor-a-request"
load() {
    local before result
    before=$(used "$2")
    result=$(wrk -t2 -c64 -d"${seconds_each}s" --timeout 10s -s bench/server_load.lua "$1" | sed -n 's/^RESULT //p')
    awk -v used=$(($(used "$2") - before)) '{print $1, $2, $3, $4, used * 1e4 / $5}' <<<"$result"
}

# measure NAME: ours and the rival in turn, so that a machine that slows down slows both
measure() {
    for _ in $(seq "$rounds"); do
        load "$ours" "${started[0]}" >>"$folder/$1.ours"
        load "$rival" "${started[1]}" >>"$folder/$1.rival"
    done
}

measure quiet
# 500 connections that have asked once and now wait.
python3 - "$port" >"$folder/idle" <<'PYTHON' &
import socket, sys, time
port = int(sys.argv[1])
held = [socket.create_connection(("127.0.0.1", port)) for _ in range(500)]
for one in held:
    one.sendall(b"GET /api/health HTTP/1.1\r\nHost: 127.0.0.1:%d\r\n\r\n" % port)
answered = sum(one.recv(4096).startswith(b"HTTP/1.1 200") for one in held)
print(answered, flush=True)
time.sleep(600)
PYTHON
started+=($!)
for _ in $(seq 100); do
    [ ! -s "$folder/idle" ] || break
    sleep 0.1
done
[ "$(cat "$folder/idle")" = 500 ] || { echo "only $(cat "$folder/idle") idle connections were answered" >&2; exit 1; }
measure idle
same_bytes || { echo "after the load the server answers otherwise" >&2; exit 1; }
memory=$(awk '/^VmHWM/ {printf "%.1f", $2 / 1024}' "/proc/${started[0]}/status")

python3 - "$folder" "$memory" "$least_rate" "$most_p99_ms" "$busy_below" "$most_cpu_us" <<'PYTHON'
import statistics, sys
folder, memory = sys.argv[1:3]
least_rate, most_p99, busy_below, most_cpu = map(float, sys.argv[3:])
def rows(name):
    return [[float(word) for word in line.split()] for line in open(f"{folder}/{name}")]
print(f"{'calibrate over HTTP, 64 connections':<38} {'req/s':>9} {'p50 ms':>8} {'p99 ms':>8} {'CPU us':>7} {'of hello':>9}")
faults = []
for name, title in (("quiet", "alone"), ("idle", "with 500 idle connections")):
    ours, rival = rows(name + ".ours"), rows(name + ".rival")
    middle = lambda table, column: statistics.median(row[column] for row in table)
    ratio = statistics.median(a[0] / b[0] for a, b in zip(ours, rival))
    print(f"  swathbook serve, {title:<21} {middle(ours, 0):9.0f} {middle(ours, 1):8.2f} {middle(ours, 2):8.2f} {middle(ours, 4):7.1f} {ratio:8.2f}x")
    print(f"  bare Beast, {'the same bytes':<26} {middle(rival, 0):9.0f} {middle(rival, 1):8.2f} {middle(rival, 2):8.2f} {middle(rival, 4):7.1f}")
    if any(row[3] for row in ours):
        faults.append(f"{title}: requests failed")
    if middle(ours, 4) > most_cpu:
        faults.append(f"{title}: {middle(ours, 4):.0f} us of processor a request, limit {most_cpu:.0f}")
    if middle(rival, 0) < busy_below:
        print("  the machine is busy with other work: requests/s and p99 are not judged")
        continue
    if middle(ours, 0) < least_rate:
        faults.append(f"{title}: {middle(ours, 0):.0f} requests/s, limit {least_rate:.0f}")
    if middle(ours, 2) > most_p99:
        faults.append(f"{title}: p99 {middle(ours, 2):.1f} ms, limit {most_p99:.0f} ms")
print(f"  memory of the server at most {memory} MB; every answer the command's bytes before and after")
sys.exit("; ".join(faults) if faults else 0)
PYTHON
