#!/usr/bin/env bash
# Installs the package on a clean Debian 12 tree, lets it watch a simulated board, upgrades it with its data, removes and purges it.
#
#   test-install.sh PACKAGE.deb
#
# Needs root, debootstrap and a Debian mirror; says so and ends well where they are missing, unless EBBWATCH_NO_SKIP is set. No
# service manager runs in such a tree: the unit's own command line is started as the unit's user, and the unit is only checked.
# EBBWATCH_TREE names a tree made before (tar, its top folder `tree`), to save the time of making one.
set -euo pipefail
package=$(realpath "$1")
skip() {
    echo "test of the Debian package SKIPPED: $1" >&2
    [ -z "${EBBWATCH_NO_SKIP:-}" ] || exit 1
    exit 0
}
fail() {
    echo "test of the Debian package FAILED: $1" >&2
    tail -n 20 "$work"/*.log >&2 || true
    exit 1
}
[ "$(id -u)" = 0 ] || skip "only root can make a tree"
work=$(mktemp -d) tree=$work/tree service='' board=''
stop() { # PID: ends a process of this test and waits for it
    [ -z "$1" ] || { kill -TERM "$1" 2>/dev/null && wait "$1" 2>/dev/null; } || true
}
finish() {
    stop "$service"
    stop "$board"
    ! mountpoint -q "$tree/proc" || umount --lazy "$tree/proc"
    rm -rf --one-file-system "$work"
}
trap finish EXIT
if [ -n "${EBBWATCH_TREE:-}" ]; then
    tar -C "$work" -xf "$EBBWATCH_TREE"
else
    command -v debootstrap >/dev/null || skip "there is no debootstrap"
    debootstrap --variant=minbase bookworm "$tree" >"$work/debootstrap.log" 2>&1 || skip "no Debian 12 tree can be made here"
    cp /etc/resolv.conf "$tree/etc/"
    chroot "$tree" apt-get update -q >"$work/update.log" 2>&1 || skip "no Debian mirror answers"
fi
mount -t proc proc "$tree/proc" || skip "nothing can be mounted here"

inside() { DEBIAN_FRONTEND=noninteractive LC_ALL=C chroot "$tree" "$@"; }
step() { echo "package: $*"; }
install_package() { # FILE
    cp "$1" "$tree/tmp/ebbwatch.deb"
    inside apt-get install -y -q --no-install-recommends /tmp/ebbwatch.deb >"$work/install.log" 2>&1 || fail "it does not install"
}
get() { # PATH: the body of the page's answer
    exec 3<>"/dev/tcp/127.0.0.1/$page" && printf 'GET %s HTTP/1.0\r\nHost: 127.0.0.1:%s\r\n\r\n' "$1" "$page" >&3
    timeout 20 cat <&3
    exec 3>&-
}
wait_for() { # PATH PATTERN: until the answer holds the pattern
    for _ in $(seq 120); do
        ! get "$1" 2>/dev/null | grep -q "$2" || return 0
        kill -0 "$service" 2>/dev/null || fail "the service ended"
        sleep 1
    done
    fail "$1 never showed $2"
}
start_service() {
    local unit=$tree/lib/systemd/system/ebbwatch.service command
    command=$(sed -n 's/^ExecStart=//p' "$unit")
    # shellcheck disable=SC2086
    chroot --userspec="$(sed -n 's/^User=//p' "$unit"):$(sed -n 's/^Group=//p' "$unit")" "$tree" $command \
        >"$work/service.log" 2>&1 &
    service=$!
}

step "a clean tree"
install_package "$package"
step "installed"
inside getent passwd ebbwatch >/dev/null || fail "there is no user ebbwatch"
[ "$(stat -c %A:%U "$tree/var/lib/ebbwatch")" = "drwxr-x---:$(stat -c %U "$tree/var/lib/ebbwatch")" ] ||
    fail "the records' folder is open to others"
[ "$(inside stat -c %a:%U:%G /etc/ebbwatch/environment)" = 640:root:ebbwatch ] || fail "secrets are open to others"
[ -s "$tree/var/cache/ebbwatch/classes.jsa" ] || fail "no archive of classes was made"
inside runuser -u ebbwatch -- ebbwatch --version | grep -q . || fail "the command does not run"
inside java -Xshare:on -XX:SharedArchiveFile=/var/cache/ebbwatch/classes.jsa @/etc/ebbwatch/java.options \
    -jar /usr/share/ebbwatch/ebbwatch.jar --version >"$work/share.log" 2>&1 || fail "the archive of classes cannot be used"
if command -v systemd-analyze >/dev/null; then
    sed "s|^ExecStart=/usr/bin/ebbwatch|ExecStart=$tree/usr/bin/ebbwatch|" "$tree/lib/systemd/system/ebbwatch.service" \
        >"$work/ebbwatch.service"
    systemd-analyze verify --man=no "$work/ebbwatch.service" >"$work/verify.log" 2>&1 || fail "the unit is faulty"
    [ ! -s "$work/verify.log" ] || fail "the unit is doubtful"
else
    step "the unit is not checked: there is no systemd-analyze"
fi

page=$(shuf -i 20000-29999 -n 1)
port=$(shuf -i 30000-31999 -n 1)
cat >"$tree/tmp/scenario.yaml" <<END
boards:
  - serialNumber: TREE
    channels:
      - {cell: {tag: T, chemistry: nmc, ratedAmpereHours: 2.6, stateOfChargePercent: 90}, loadOhms: 10}
END
cat >"$tree/etc/ebbwatch/rack.yaml" <<END
storage: /var/lib/ebbwatch/records
http: {port: $page}
boards:
  - {name: tree, port: "tcp:127.0.0.1:$port"}
cells:
  - {board: tree, channel: 0, tag: oak, chemistry: nmc, ratedAmpereHours: 2.6, loadOhms: 10, switched: true}
END
chroot "$tree" java -cp /usr/share/ebbwatch/ebbwatch.jar org.ebbwatch.sim.SimRig /tmp/scenario.yaml --port "tcp:$port" \
    >"$work/board.log" 2>&1 &
board=$!
start_service
wait_for /api/v1/passages '"tag":"oak"'
wait_for /api/v1/rack '"volts":[34]\.'
passage=$(get /api/v1/rack | grep -o '"passageId":"[^"]*"' | head -n 1)
[ -n "$passage" ] || fail "the cell has no passage"
step "watches a simulated board"

echo '# a line of this machine' >>"$tree/etc/ebbwatch/java.options"
dpkg-deb -R "$package" "$work/next"
sed -i 's/^Version: .*/&+next/' "$work/next/DEBIAN/control"
echo '# a line of the next version' >>"$work/next/etc/ebbwatch/environment"
dpkg-deb -b "$work/next" "$work/next.deb" >/dev/null
install_package "$work/next.deb"
inside dpkg-query -W -f '${Version}' ebbwatch | grep -q '+next$' || fail "it was not upgraded"
grep -q 'of this machine' "$tree/etc/ebbwatch/java.options" || fail "the upgrade took what a person had written"
grep -q 'next version' "$tree/etc/ebbwatch/environment" || fail "the upgrade left an untouched file old"
kill -0 "$service" || fail "the old service ended under the upgrade"
stop "$service"
start_service
wait_for /api/v1/rack '"volts":[34]\.'
[ "$(get /api/v1/rack | grep -o '"passageId":"[^"]*"' | head -n 1)" = "$passage" ] || fail "the passage was lost"
stop "$service"
service=''
step "upgraded with its data"

inside apt-get remove -y -q ebbwatch >"$work/remove.log" 2>&1 || fail "it does not let itself be removed"
[ ! -e "$tree/usr/share/ebbwatch" ] && [ ! -e "$tree/var/cache/ebbwatch" ] || fail "a removal leaves the program"
[ -s "$tree/var/lib/ebbwatch/records/ebbwatch.mv.db" ] && [ -s "$tree/etc/ebbwatch/rack.yaml" ] || fail "a removal takes records"
inside apt-get purge -y -q ebbwatch </dev/null >"$work/purge.log" 2>&1 || fail "it does not let itself be purged"
left=$(find "$tree" -xdev -path "$tree/proc" -prune -o -name '*ebbwatch*' -not -path "$tree/tmp/*" -not -path "$tree/var/cache/apt/*" -print)
[ -z "$left" ] || fail "a purge leaves $left"
! inside getent passwd ebbwatch >/dev/null && ! inside getent group ebbwatch >/dev/null || fail "a purge leaves the user"
step "removed and purged; all is well"
