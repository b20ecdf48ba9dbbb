#!/usr/bin/env bash
# Makes a Debian package of the controller.
#   systemd/package.sh RID OUTDIR [PUBLISHED]
# RID: linux-arm64 or linux-x64. PUBLISHED: a folder published for it already; made when left out.
# PILE_VERSION sets another version; PILE_COMPRESSION another of dpkg-deb's (zstd).
set -euo pipefail

refuse() { echo "$*" >&2; exit 2; }

[ $# -eq 2 ] || [ $# -eq 3 ] || refuse "package.sh was given $# words; allowed: RID OUTDIR [PUBLISHED]"
rid=$1 out=$2 published=${3:-}
case $rid in
linux-arm64) architecture=arm64 ;;
linux-x64) architecture=amd64 ;;
*) refuse "RID is \"$rid\"; allowed: linux-arm64 or linux-x64" ;;
esac
[ -z "$published" ] || [ -x "$published/PileController" ] ||
    refuse "PUBLISHED is \"$published\", in which there is no program PileController; allowed: a folder made by dotnet publish -r $rid --self-contained"
command -v dpkg-deb >/dev/null || refuse "dpkg-deb is missing; install dpkg"

here=$(cd "$(dirname "$0")" && pwd)
source=$(dirname "$here")
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

# 0.1.0 where that is tagged; before it 0.1.0~dev.COUNT.HASH, which sorts below 0.1.0 and above earlier ones.
version_of_source() {
    local prefix described
    prefix=$(sed -n 's:.*<VersionPrefix>\(.*\)</VersionPrefix>.*:\1:p' "$source/src/Directory.Build.props")
    described=$(git -C "$source" describe --tags --exact-match 2>/dev/null || true)
    if [ "$described" = "v$prefix" ]; then
        echo "$prefix"
    else
        echo "$prefix~dev.$(git -C "$source" rev-list --count HEAD).$(git -C "$source" rev-parse --short=8 HEAD)"
    fi
}
version=${PILE_VERSION:-$(version_of_source)}
dpkg --validate-version "$version" || refuse "the version is \"$version\"; allowed: one that dpkg accepts"
# The same source makes the same package.
SOURCE_DATE_EPOCH=${SOURCE_DATE_EPOCH:-$(git -C "$source" log -1 --format=%ct)}
export SOURCE_DATE_EPOCH

if [ -z "$published" ]; then
    published=$work/published
    # Built apart; a lock file of its own, since the project's names no machine.
    dotnet publish "$source/src/PileController" -c Release -r "$rid" --self-contained -o "$published" \
        --artifacts-path "$work/build" -p:PublishReadyToRun=true -p:NuGetLockFilePath=obj/package.lock.json \
        -p:RestoreLockedMode=false -m:1 >&2
fi

tree=$work/tree
sh "$here/lay-out.sh" "$published" "$tree" /usr/lib
install -d "$tree/usr/bin"
ln -s /opt/pile-controller/PileController "$tree/usr/bin/PileController"
install -D -m 0644 "$source/LICENSE" "$tree/usr/share/doc/pile-controller/copyright"
install -m 0644 "$here/README.md" "$here/journald-on-a-card.conf" "$tree/usr/share/doc/pile-controller/"

install -d "$tree/DEBIAN"
cat >"$tree/DEBIAN/control" <<CONTROL
Package: pile-controller
Version: $version
Architecture: $architecture
Maintainer: The PileController contributors <pile-controller@localhost>
Section: misc
Priority: optional
Installed-Size: $(du -sk --apparent-size --exclude=DEBIAN "$tree" | cut -f1)
Depends: libc6 (>= 2.36), libgcc-s1, libstdc++6, libssl3 | libssl3t64, libgpiod2 | libgpiod3, tzdata, systemd, udev, dbus | dbus-system-bus, util-linux, init-system-helpers
Description: controller for a greenhouse heated by a compost heap
 Draws heat from a heap of wood chips, no more than it can bear, keeps plants
 and lines from frost, and serves a page on this machine.
CONTROL
for script in preinst postinst prerm postrm; do
    { printf '#!/bin/sh\nset -e\n'; cat "$here/debian/common.sh"; sed "s/@VERSION@/$version/" "$here/debian/$script"; } >"$tree/DEBIAN/$script"
    chmod 0755 "$tree/DEBIAN/$script"
done

mkdir -p "$out"
dpkg-deb --root-owner-group -Z"${PILE_COMPRESSION:-zstd}" --build "$tree" "$out/pile-controller_${version}_${architecture}.deb"
