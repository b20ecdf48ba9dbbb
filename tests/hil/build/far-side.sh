#!/usr/bin/env bash
# Publishes the plant that lives on the far side of the wires, once for each state of its sources; prints the folder.
set -euo pipefail
. "$(dirname "${BASH_SOURCE[0]}")/../common.sh"

build() {
    nice -n 10 dotnet publish "$project/tests/PileController.FarSide" -c Release -r linux-x64 --self-contained -o "$1/program" \
        --artifacts-path "$1/build" -p:PublishReadyToRun=true -p:NuGetLockFilePath=obj/package.lock.json \
        -p:RestoreLockedMode=false -m:1
    rm -rf "$1/build"
}

key=$( (cd "$project" && git ls-files -z -- src/PileController.Physics tests/PileController.FarSide | xargs -0 sha256sum) | hash_of -)
[ -e "$cache/far-side-$key/done" ] || say "Publishing the far side."
once "$cache/far-side-$key" build
