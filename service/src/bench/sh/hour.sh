#!/usr/bin/env bash
# What the running service costs: watches 64 simulated cells on four boards over TCP, the simulator in a process of its own, and
# reads the kernel's counters of the service every minute.
#
#   hour.sh MILLIS MINUTES [JAVA OPTIONS...]     MILLIS between scans, 100: ten a second
#
# Prints one line a minute: seconds since the start, CPU of one core over the last minute in per cent, resident and anonymous
# memory in MiB, MiB written since the start, and how busy the machine was (load). docs/benchmarks/footprint.md has what it gave.
set -euo pipefail
[ "$#" -ge 2 ] || { sed -n '5,6s/^# *//p' "$0" >&2; exit 2; }
millis=$1 minutes=$2
shift 2
root=$(cd "$(dirname "$0")/../../../.." && pwd)
jar=${EBBWATCH_JAR:-$root/service/target/ebbwatch.jar}
sim=${SIM_RIG_JAR:-$root/sim-rig/target/sim-rig.jar}
java=${JAVA:-java}
port=${PORT:-$((20000 + RANDOM % 10000))}
work=${WORK:-$(mktemp -d)}
mkdir -p "$work"

{
    printf 'interval: %sms\nboards:\n' "$millis"
    for board in 0 1 2 3; do
        printf '  - serialNumber: SIM-%s\n    channels:\n' "$board"
        printf '      - {cell: {tag: C%s, chemistry: nmc, ratedAmpereHours: 2.6, stateOfChargePercent: 90, spreadPercent: 5}, loadOhms: 10, repeat: 16}\n' "$board"
    done
} >"$work/scenario.yaml"
{
    printf 'storage: %s/records\nhttp: {port: %s}\nboards:\n' "$work" "$((port + 10))"
    for board in 0 1 2 3; do
        printf '  - {name: b%s, port: "tcp:127.0.0.1:%s", serialNumber: SIM-%s}\n' "$board" "$((port + board))" "$board"
    done
    printf 'cells:\n'
    for board in 0 1 2 3; do
        for channel in $(seq 0 15); do
            printf '  - {board: b%s, channel: %s, tag: c%s-%s, chemistry: nmc, ratedAmpereHours: 2.6, loadOhms: 10, switched: true}\n' \
                "$board" "$channel" "$board" "$channel"
        done
    done
} >"$work/rack.yaml"

java -jar "$sim" "$work/scenario.yaml" --port "tcp:$port" >"$work/sim.log" 2>&1 &
simulator=$!
trap 'kill "$simulator" "${service:-}" 2>/dev/null || true' EXIT
until grep -q 'SIM-3' "$work/sim.log"; do
    kill -0 "$simulator" || { cat "$work/sim.log" >&2; exit 1; }
    sleep 0.2
done
"$java" "$@" -jar "$jar" serve "$work/rack.yaml" >"$work/out.log" 2>"$work/err.log" &
service=$!

# Every cell goes on its load, as a person would put it: ten seconds after the boards were heard, all 64 within some seconds.
until [ "$(grep -c ', connected' "$work/out.log")" -ge 4 ]; do
    kill -0 "$service" || { cat "$work/err.log" >&2; exit 1; }
    sleep 0.5
done
sleep 10
api=http://127.0.0.1:$((port + 10))/api/v1
token=$(sed -n '3s/^ *//p' "$work/out.log")
curl -s "$api/passages" | grep -o '{"id":"[^"]*"[^}]*"sequence":[0-9]*' |
    sed 's/{"id":"\([^"]*\)".*"sequence":\([0-9]*\)/\1 \2/' | while read -r id sequence; do
    curl -s -o /dev/null -w '%{http_code}\n' "$api/passages/$id/acts" -H "Authorization: Bearer $token" \
        -H "If-Match: \"$sequence\"" -H "Idempotency-Key: put-on-$id" -H 'Content-Type: application/json' -d '{"act": "PUT_ON"}'
done | sort | uniq -c | sed 's/^/# acts answered: /'

ticks=$(getconf CLK_TCK)
cpu() { awk '{print $14 + $15}' "/proc/$service/stat"; }
kib() { awk -v key="$1:" '$1 == key {print $2}' "/proc/$service/$2"; }
started=$(date +%s) before=0
echo "seconds cpu% rssMiB anonMiB writtenMiB load"
for minute in $(seq "$minutes"); do
    sleep $((started + 60 * minute - $(date +%s)))
    now=$(cpu)
    awk -v s=$((60 * minute)) -v used=$((now - before)) -v ticks="$ticks" -v rss="$(kib VmRSS status)" \
        -v anon="$(kib RssAnon status)" -v written="$(awk '$1 == "write_bytes:" {print $2}' "/proc/$service/io")" \
        -v load="$(cut -d' ' -f1 /proc/loadavg)" \
        'BEGIN {printf "%d %.1f %.1f %.1f %.2f %s\n", s, used / ticks / 60 * 100, rss / 1024, anon / 1024, written / 1048576, load}'
    before=$now
done
