#!/bin/sh
# Takes away what install.sh put there. Settings, data and backups stay; --purge deletes them as well.
set -eu

case ${1:-} in
'' | --purge) ;;
*) echo "uninstall.sh was given \"$1\"; allowed: --purge, or nothing" >&2; exit 2 ;;
esac
[ "$(id -u)" = 0 ] || { echo "uninstall.sh needs root" >&2; exit 2; }

# The watcher first; stopping the controller puts its outputs safe.
for unit in pile-controller-watch.service pile-controller.service; do
    systemctl disable --now $unit 2>/dev/null || true
    rm -f /etc/systemd/system/$unit
done
rm -f /etc/sysusers.d/pile-controller.conf /etc/tmpfiles.d/pile-controller.conf /etc/udev/rules.d/60-pile-controller.rules
rm -f /usr/local/bin/PileController
rm -rf /opt/pile-controller /opt/pile-controller.before
systemctl daemon-reload
if [ "${1:-}" = --purge ]; then
    rm -rf /var/lib/pile-controller /var/backups/pile-controller /etc/pile-controller
    if getent passwd pile >/dev/null && ! userdel pile; then echo "the user pile stays; nothing of it is left but the name" >&2; fi
fi
