#!/usr/bin/env bash
# Makes the guest's root file system: Debian with systemd and the two units of guest/; prints the folder it lies in.
# Half a minute, once.
set -euo pipefail
. "$(dirname "${BASH_SOURCE[0]}")/../common.sh"
suite=bookworm
packages=systemd,systemd-sysv,dbus,udev,kmod,procps,libgpiod2,libstdc++6,libssl3,tzdata,init-system-helpers
size=1500M

# The trials begin from rest: nobody waits for a console, asks for the time, or runs beside them.
idle=(systemd-timesyncd.service systemd-networkd.service getty@.service serial-getty@.service apt-daily.timer
    apt-daily-upgrade.timer dpkg-db-backup.timer e2scrub_all.timer fstrim.timer)

build() {
    local tree=$1/tree units=$1/tree/etc/systemd/system name
    mmdebstrap --variant=minbase --include="$packages" $suite "$tree"
    install -m 0644 -t "$units" "$hil"/guest/*.service
    mkdir -p "$units/multi-user.target.wants"
    for name in "$hil"/guest/*.service; do ln -s "../${name##*/}" "$units/multi-user.target.wants/"; done
    for name in "${idle[@]}"; do ln -sf /dev/null "$units/$name"; done
    echo pile-trial >"$tree/etc/hostname"
    echo '/dev/ubda / ext4 defaults 0 1' >"$tree/etc/fstab"
    mke2fs -q -t ext4 -d "$tree" "$1/root.ext4" $size
    rm -rf "$tree"
}

key=$(cat "${BASH_SOURCE[0]}" "$hil"/guest/*.service | hash_of -)
if ! [ -e "$cache/root-$key/done" ]; then
    [ "$(id -u)" = 0 ] || refuse "making the guest's root file system needs root, once"
    say "Making the guest's root file system."
fi
once "$cache/root-$key" build
