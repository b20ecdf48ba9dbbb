#!/usr/bin/env bash
# Builds the rig's devices against a kernel tree; prints the folder the modules lie in.
#   modules.sh KERNEL    the folder build/kernel.sh printed
set -euo pipefail
. "$(dirname "${BASH_SOURCE[0]}")/../common.sh"
kernel=$1

build() {
    cp "$hil"/equipment/*.c "$hil/equipment/Kbuild" "$1/"
    make -C "$kernel/out" ARCH=um M="$1" modules
}

key=$(echo "$kernel" | cat - "$hil"/equipment/*.c "$hil/equipment/Kbuild" | hash_of -)
once "$cache/modules-$key" build
