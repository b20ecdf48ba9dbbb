#!/usr/bin/env bash
# Tries the package for arm64 on this machine, by emulation of its processor: the demo is served, ticks, and its record
# verifies; prints a table. Says nothing of a board's devices.
#   systemd/test-arm64.sh [PACKAGE]
# PACKAGE: a package made by package.sh linux-arm64; made when left out.
# Needs root, mmdebstrap and qemu-user-static. The libraries are kept in PILE_ROOTS (/var/tmp/pile-roots).
set -euo pipefail

refuse() { echo "$*" >&2; exit 2; }
package=${1:-}
[ $# -le 1 ] || refuse "test-arm64.sh was given $# words; allowed: PACKAGE, or none"
[ -z "$package" ] || [ -f "$package" ] || refuse "PACKAGE is \"$package\", which is no file; allowed: a package made by package.sh linux-arm64"
[ "$(id -u)" = 0 ] || refuse "the trial needs root, to make the folder of libraries"
for tool in mmdebstrap qemu-aarch64-static dpkg-deb curl; do
    command -v $tool >/dev/null || refuse "$tool is missing; install mmdebstrap, qemu-user-static, dpkg and curl"
done

here=$(cd "$(dirname "$0")" && pwd)
roots=${PILE_ROOTS:-/var/tmp/pile-roots}
libraries=$roots/bookworm-arm64
if ! [ -e "$libraries/done" ]; then
    rm -rf "$libraries"
    mkdir -p "$roots"
    mmdebstrap --quiet --variant=extract --architectures=arm64 --include=libc6,libgcc-s1,libstdc++6,zlib1g,libssl3,tzdata bookworm "$libraries" >&2
    touch "$libraries/done"
fi

work=$(mktemp -d)
served=
trap '[ -z "$served" ] || kill -KILL "$served" 2>/dev/null; rm -rf "$work"' EXIT
if [ -z "$package" ]; then
    bash "$here/package.sh" linux-arm64 "$work/made"
    package=$(echo "$work"/made/*.deb)
fi
dpkg-deb -x "$package" "$work/tree"

# Memory that is written and run at two addresses is slow to emulate; the bound keeps the collector from reserving 256 GB.
export DOTNET_EnableWriteXorExecute=0 DOTNET_GCHeapHardLimit=20000000 DOTNET_EnableDiagnostics=0
emulated=(qemu-aarch64-static -L "$libraries" "$work/tree/opt/pile-controller/PileController")

failed=0
row() { echo "| $1 | $2 | $3 |"; [ "$3" = yes ] || failed=$((failed + 1)); }
promise() {
    local text=$1 said verdict=yes
    shift
    said=$("$@" 2>&1) || verdict=NO
    row "$text" "$(tail -n 1 <<<"$said")" $verdict
}
# tick: the number of the newest; the first answer is compiled while it is waited for.
tick() { curl -fsS --retry 4 --retry-all-errors --max-time 120 "$page/api/now" 2>/dev/null | grep -o '"sequence":[0-9]*' | head -n 1 | cut -d: -f2 || true; }

# served_within SECONDS: waits for the address it prints.
served_within() {
    for _ in $(seq "$1"); do
        page=$(sed -n 's/^The page is at //p' "$work/said.txt")
        [ -z "$page" ] || return 0
        kill -0 "$served" 2>/dev/null || return 1
        sleep 1
    done
    return 1
}

echo '| arm64, emulated | seen | |'
echo '| --- | --- | --- |'
promise "tells its version" "${emulated[@]}" --version
promise "accepts the settings of a first installation" "${emulated[@]}" check "$work/tree/opt/pile-controller/first-settings.json"
mkdir "$work/data"
"${emulated[@]}" serve --speed 10 --data "$work/data" --urls http://127.0.0.1:0 >"$work/said.txt" 2>&1 &
served=$!
SECONDS=0
if served_within 1200; then
    row "serves the demo" "$page after $SECONDS s" yes
    first=$(tick)
    sleep 60
    last=$(tick)
    row "ticks" "$first to $last within a minute" "$([ "${last:-0}" -gt "${first:-0}" ] && echo yes || echo NO)"
else
    row "serves the demo" "$(tail -n 1 "$work/said.txt")" NO
fi
kill -TERM "$served"
ended=0
wait "$served" || ended=$?
served=
row "ends in order" "exit code $ended" "$([ $ended = 0 ] && echo yes || echo NO)"
promise "its record verifies" "${emulated[@]}" record verify --data "$work/data"
echo "$failed failed"
[ $failed = 0 ]
