#!/usr/bin/env bash
# Builds a Linux kernel that runs as an ordinary program (user-mode Linux); prints the folder. Some five minutes, once.
set -euo pipefail
. "$(dirname "${BASH_SOURCE[0]}")/../common.sh"

source=/usr/src/linux-source-$linux_series.tar.xz
version=$(dpkg-query -W -f '${Version}' "linux-source-$linux_series")

build() {
    local tree=$1/source out=$1/out
    mkdir "$tree" "$out"
    tar -xf "$source" -C "$tree" --strip-components=1
    bash "$hil/build/kernel-edits.sh" "$tree"
    make -C "$tree" ARCH=um O="$out" x86_64_defconfig
    cat "$hil/equipment/kernel.config" >>"$out/.config"
    make -C "$tree" ARCH=um O="$out" olddefconfig
    make -C "$tree" ARCH=um O="$out" mod2noconfig
    all_there "$out/.config"
    nice -n 5 make -C "$tree" ARCH=um O="$out" -j"$(nproc)" linux modules
    # Objects are most of the size; modules of ours are built without them.
    find "$out" -name '*.o' -not -path '*/scripts/*' -delete
}

# olddefconfig drops what it cannot have without a word.
all_there() {
    local line missing=0
    while read -r line; do
        case $line in
        *=n | '#'* | '') ;;
        *) grep -qxF "$line" "$1" || { echo "the kernel cannot have $line"; missing=1; } ;;
        esac
    done <"$hil/equipment/kernel.config"
    return $missing
}

key=$( (echo "$version"; cat "$hil/equipment/kernel.config" "$hil/build/kernel-edits.sh") | hash_of -)
[ -e "$cache/kernel-$key/done" ] || say "Building the kernel from $source ($version): five minutes of both cores, once."
once "$cache/kernel-$key" build
