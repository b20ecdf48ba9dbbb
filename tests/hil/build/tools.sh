#!/usr/bin/env bash
# Installs what the trials need where it may (root and apt), else says what is missing.
set -euo pipefail
. "$(dirname "${BASH_SOURCE[0]}")/../common.sh"

[ "$(uname -m)" = x86_64 ] || refuse "this machine is $(uname -m); allowed: x86_64, the one user-mode Linux is built for here"
command -v dotnet >/dev/null || refuse "the .NET 10 SDK is missing: install it first"

needed=(linux-source-$linux_series gcc make flex bison bc libelf-dev libssl-dev xz-utils kmod e2fsprogs mmdebstrap git dpkg)
missing=()
for package in "${needed[@]}"; do
    [ "$(dpkg-query -W -f '${db:Status-Status}' "$package" 2>/dev/null)" = installed ] || missing+=("$package")
done
[ ${#missing[@]} -gt 0 ] || exit 0

[ "$(id -u)" = 0 ] && command -v apt-get >/dev/null ||
    refuse "missing: ${missing[*]}. As root: apt-get install ${missing[*]}"
say "Installing ${missing[*]}."
{ apt-get update && DEBIAN_FRONTEND=noninteractive apt-get install -y --no-install-recommends "${missing[@]}"; } >/dev/null 2>&1 ||
    refuse "these could not be installed: ${missing[*]}"
