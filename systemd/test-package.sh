#!/usr/bin/env bash
# Tries the package in a container of its own: installs, upgrades, refuses, removes, purges; prints a table.
#   systemd/test-package.sh bookworm|trixie [PUBLISHED] [bare]
# PUBLISHED: a folder published for linux-x64; made when left out. "bare": without systemd running in the container.
# Needs root, mmdebstrap and systemd-nspawn. Roots are kept in PILE_ROOTS (/var/tmp/pile-roots).
set -euo pipefail

refuse() { echo "$*" >&2; exit 2; }
suite=${1:-} published=${2:-} how=${3:-booted}
case $suite in
bookworm) libraries=libgpiod2,libssl3 ;;
trixie) libraries=libgpiod3,libssl3t64 ;;
*) refuse "the suite is \"$suite\"; allowed: bookworm or trixie" ;;
esac
case $how in booted | bare) ;; *) refuse "the last word is \"$how\"; allowed: bare, or nothing" ;; esac
[ "$(id -u)" = 0 ] || refuse "the trial needs root, to make a container"
for tool in mmdebstrap systemd-nspawn; do
    command -v $tool >/dev/null || refuse "$tool is missing; install mmdebstrap and systemd-container"
done

here=$(cd "$(dirname "$0")" && pwd)
roots=${PILE_ROOTS:-/var/tmp/pile-roots}
mkdir -p "$roots"
if ! [ -f "$roots/$suite.tar" ]; then
    mmdebstrap --quiet --variant=minbase \
        --include="systemd-sysv,dbus,udev,libstdc++6,tzdata,init-system-helpers,$libraries" "$suite" "$roots/$suite.new.tar" >&2
    mv "$roots/$suite.new.tar" "$roots/$suite.tar"
fi

work=$(mktemp -d "$roots/trial.XXXXXX")
trap 'rm -rf "$work"' EXIT
if [ -z "$published" ]; then
    published=$work/published
    dotnet publish "$here/../src/PileController" -c Release -r linux-x64 --self-contained -o "$published" \
        --artifacts-path "$work/build" -p:NuGetLockFilePath=obj/package.lock.json -p:RestoreLockedMode=false -m:1 >&2
fi

# A build that rejects the settings at hand stands in for one that no longer knows a key.
rejecting=$work/rejecting
mkdir "$rejecting"
cp "$here/trial/rejecting" "$rejecting/PileController"
trial=$work/root/trial
mkdir -p "$work/root"
tar -xf "$roots/$suite.tar" -C "$work/root"
mkdir "$trial"
pack() { PILE_COMPRESSION=none PILE_VERSION=$1 bash "$here/package.sh" linux-x64 "$work/debs" "$2" >/dev/null && mv "$work/debs"/*.deb "$trial/$3.deb"; }
pack 0.9.1 "$published" one
pack 0.9.2 "$published" two
pack 0.9.3 "$rejecting" rejecting
cp "$here/trial/steps.sh" "$trial/"

nspawn=(systemd-nspawn --quiet --register=no --keep-unit --private-network -D "$work/root")
if [ "$how" = bare ]; then
    "${nspawn[@]}" /bin/bash /trial/steps.sh /trial bare </dev/null >&2 || true
else
    cp "$here/trial/pile-trial.service" "$work/root/etc/systemd/system/"
    mkdir -p "$work/root/etc/systemd/system/multi-user.target.wants"
    ln -s ../pile-trial.service "$work/root/etc/systemd/system/multi-user.target.wants/"
    # The newer kind of control groups, as on a board.
    SYSTEMD_NSPAWN_UNIFIED_HIERARCHY=1 timeout 1800 "${nspawn[@]}" -b systemd.unit=multi-user.target \
        </dev/null >"$work/boot.txt" 2>&1 || true
fi

[ -s "$trial/table.txt" ] || { tail -n 20 "$work/boot.txt" >&2; echo "the container did not run the trial" >&2; exit 1; }
printf '| %s, %s | |\n| --- | --- |\n' "$suite" "$how"
cat "$trial/table.txt"
if ! grep -qx '0 failed' "$trial/table.txt"; then
    cat "$trial/log.txt" >&2
    exit 1
fi
