#!/usr/bin/env bash
# Makes the disk every trial starts from: the package installed by the guest's own systemd, the heap lit, the real
# rig's settings in; prints the folder it lies in.
#   image.sh KERNEL MODULES ROOT PACKAGE    the folders the other scripts of build/ printed
set -euo pipefail
. "$(dirname "${BASH_SOURCE[0]}")/../common.sh"
. "$hil/guest.sh"
kernel=$1 modules=$2 root=$3 package=$4

build() {
    cp --sparse=always "$root/root.ext4" "$1/disk.ext4"
    share "$1/shared" "$hil/guest/prepare.sh"
    cp "$package/pile-controller.deb" "$1/shared/"
    start "$1/disk.ext4" "$1/shared"
    ended 600
    rm "$1/shared/pile-controller.deb"
    [ -e "$1/shared/prepared" ] || { cat "$1/shared/log.txt" "$1/shared/console.txt"; return 1; }
}

key=$(echo "$kernel $modules $root $package" | cat - "$hil"/guest/{prepare.sh,settings.json,devices.sh,places.sh} | hash_of -)
[ -e "$cache/image-$key/done" ] || say "Installing the package in a guest."
once "$cache/image-$key" build
