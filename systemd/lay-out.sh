#!/bin/sh
# Puts a published program and its system files where they belong.
#   lay-out.sh PUBLISHED ROOT LIB    LIB: /usr/lib (a package) or /etc (by hand)
set -eu
published=$1 root=$2 lib=$3
here=$(cd "$(dirname "$0")" && pwd)

mkdir -p "$root/opt/pile-controller"
cp -R "$published/." "$root/opt/pile-controller/"
# Symbols and documentation of members are for those who build it.
rm -f "$root/opt/pile-controller"/*.pdb "$root/opt/pile-controller"/PileController*.xml
chmod -R u=rwX,go=rX "$root/opt/pile-controller"
install -m 0755 "$here/watch" "$root/opt/pile-controller/watch"
install -m 0644 "$here/first-settings.json" "$root/opt/pile-controller/first-settings.json"
for unit in pile-controller pile-controller-watch; do
    install -D -m 0644 "$here/$unit.service" "$root$lib/systemd/system/$unit.service"
done
install -D -m 0644 "$here/pile-controller.sysusers" "$root$lib/sysusers.d/pile-controller.conf"
install -D -m 0644 "$here/pile-controller.tmpfiles" "$root$lib/tmpfiles.d/pile-controller.conf"
install -D -m 0644 "$here/60-pile-controller.rules" "$root$lib/udev/rules.d/60-pile-controller.rules"
