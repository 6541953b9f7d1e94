#!/usr/bin/env bash
# How long the service takes from its start to its first judged sample: until the page tells of a passage and of its volts. A simulated
# board at ten scans a second is there already. With and without the archive of classes by turns, in one run.
#
#   start.sh ROUNDS [JAVA OPTIONS...]
#
# Prints for each start: seconds by the clock, seconds at work (all threads, kernel included), and the load of the machine; the last
# lines hold the medians. docs/benchmarks/footprint.md has what it gave.
set -euo pipefail
[ "$#" -ge 1 ] || { sed -n '5s/^# *//p' "$0" >&2; exit 2; }
rounds=$1
shift
root=$(cd "$(dirname "$0")/../../../.." && pwd)
jar=${EBBWATCH_JAR:-$root/service/target/ebbwatch.jar}
java=${JAVA:-java}
port=${PORT:-$((20000 + RANDOM % 10000))}
work=$(mktemp -d)
printf 'interval: 100ms\nboards:\n  - serialNumber: START\n    channels:\n      - {cell: {tag: S, chemistry: nmc, ratedAmpereHours: 2.6}, loadOhms: 10, repeat: 16}\n' >"$work/scenario.yaml"
{
    printf 'storage: records\nhttp: {port: %s}\nboards:\n  - {name: b, port: "tcp:127.0.0.1:%s"}\ncells:\n' "$((port + 1))" "$port"
    for channel in $(seq 0 15); do
        printf '  - {board: b, channel: %s, tag: s%s, chemistry: nmc, ratedAmpereHours: 2.6, loadOhms: 10, switched: true}\n' "$channel" "$channel"
    done
} >"$work/rack.yaml"
"$java" -cp "$jar" org.ebbwatch.sim.SimRig "$work/scenario.yaml" --port "tcp:$port" >"$work/sim.log" 2>&1 &
simulator=$!
trap 'kill "$simulator" "${service:-}" 2>/dev/null || true; rm -rf "$work"' EXIT
until grep -q START "$work/sim.log"; do sleep 0.2; done

start() { # NAME JAVA OPTIONS: one start, from nothing, its line appended to NAME's figures
    local name=$1 began ended
    shift
    rm -rf "$work/records"
    began=$(date +%s%N)
    "$java" "$@" -jar "$jar" serve "$work/rack.yaml" >"$work/out.log" 2>&1 &
    service=$!
    until curl -s "http://127.0.0.1:$((port + 1))/api/v1/rack" | grep -q '"volts":[0-9.]*,[^}]*"passageId":"'; do
        kill -0 "$service" || { cat "$work/out.log" >&2; exit 1; }
        sleep 0.02
    done
    ended=$(date +%s%N)
    awk -v name="$name" -v clock="$(((ended - began) / 1000000))" -v ticks="$(getconf CLK_TCK)" -v load="$(cut -d' ' -f1 /proc/loadavg)" \
        '{printf "%-8s %.2f s by the clock, %.2f s at work, load %s\n", name, clock / 1000, ($14 + $15) / ticks, load}' \
        "/proc/$service/stat" | tee -a "$work/$name"
    kill "$service"
    wait "$service" 2>/dev/null || true
}
median() { sort -n -k"$2" "$work/$1" | awk -v at="$2" '{all[NR] = $at} END {print all[int((NR + 1) / 2)]}'; }

# The archive is made of a run that did the same.
"$java" "$@" -XX:ArchiveClassesAtExit="$work/classes.jsa" -Xlog:cds=off -Xlog:cds+dynamic=off -jar "$jar" serve "$work/rack.yaml" \
    >"$work/out.log" 2>&1 &
service=$!
until curl -s "http://127.0.0.1:$((port + 1))/api/v1/rack" | grep -q passageId; do sleep 0.2; done
kill "$service"
wait "$service" 2>/dev/null || true
for _ in $(seq "$rounds"); do
    start plain "$@"
    start archive "$@" -XX:SharedArchiveFile="$work/classes.jsa"
done
for name in plain archive; do
    echo "median of $name: $(median "$name" 2) s by the clock, $(median "$name" 7) s at work"
done
