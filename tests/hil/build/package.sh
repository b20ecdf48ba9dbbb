#!/usr/bin/env bash
# Makes the Debian package of the controller for this machine, once for each state of its sources; prints the folder
# it lies in.
#   package.sh [PUBLISHED]    PUBLISHED: a folder published for linux-x64 already
set -euo pipefail
. "$(dirname "${BASH_SOURCE[0]}")/../common.sh"
published=${1:-}

build() {
    PILE_COMPRESSION=none nice -n 10 bash "$project/systemd/package.sh" linux-x64 "$1" $published
    mv "$1"/*.deb "$1/pile-controller.deb"
}

sources() { git -C "$project" ls-files -z -- src systemd | (cd "$project" && xargs -0 sha256sum); }

if [ -n "$published" ]; then
    key=$( (sources | grep ' systemd/'; cd "$published" && find . -type f -print0 | sort -z | xargs -0 sha256sum) | hash_of -)
else
    key=$(sources | hash_of -)
fi
[ -e "$cache/package-$key/done" ] || say "Making the package: some minutes, once for each state of the sources."
once "$cache/package-$key" build
