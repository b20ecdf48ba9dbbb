#!/bin/sh
# Installs a published program as a service, or replaces the one that runs, where there is no Debian package.
#   install.sh PUBLISHED    a folder made by dotnet publish -r … --self-contained
set -eu

refuse() { echo "$*" >&2; exit 2; }
[ $# -eq 1 ] || refuse "install.sh was given $# words; allowed: PUBLISHED"
published=$1
[ "$(id -u)" = 0 ] || refuse "install.sh needs root: it makes a user and writes to /opt and /etc"
[ -x "$published/PileController" ] || refuse "PUBLISHED is \"$published\", in which there is no program PileController; allowed: a folder made by dotnet publish"
if [ "$(dpkg-query -W -f '${db:Status-Status}' pile-controller 2>/dev/null || true)" = installed ]; then
    refuse "the package pile-controller is installed; upgrade or remove that one"
fi

here=$(cd "$(dirname "$0")" && pwd)
home=/opt/pile-controller
before=/opt/pile-controller.before
settings=/etc/pile-controller/pile.json
data=/var/lib/pile-controller
units='pile-controller.service pile-controller-watch.service'
as_pile() { setpriv --reuid=pile --regid=pile --init-groups --no-new-privs env -i PATH="$PATH" HOME=$data DOTNET_EnableDiagnostics=0 "$@"; }
# The data folder is its user's: what stands there may be a link to anything, so root neither reads nor writes in it.
written_by() { if getent passwd pile >/dev/null; then as_pile cat $data/written-by; else cat $data/written-by; fi; }

# Everything that can refuse comes before anything is stopped.
if [ -e $settings ]; then
    DOTNET_EnableDiagnostics=0 "$published/PileController" check $settings >&2 ||
        refuse "the new program does not accept $settings (see above); nothing is changed"
fi
version=$("$published/PileController" --version | sed 's/+.*//')
if [ -f $data/written-by ]; then
    written=$(written_by)
    [ "$(printf '%s\n' "$written" "$version" | sort -V | tail -n 1)" = "$version" ] ||
        refuse "the data in $data were written by version $written; version $version may not read them. Move them away and bring back an older backup"
fi

if [ -x $home/PileController ]; then
    systemctl stop pile-controller-watch.service pile-controller.service
    if [ -n "$(find $data -maxdepth 1 \( -name tail -o -name manifest -o -name 'ticks-*' \) -print -quit 2>/dev/null)" ]; then
        copy=/var/backups/pile-controller/$(written_by 2>/dev/null || echo unknown)-$(date -u +%Y%m%dT%H%M%SZ)
        done=0
        as_pile $home/PileController record backup "$copy" --data $data >&2 || done=$?
        if [ $done -gt 1 ]; then
            systemctl start $units
            refuse "no backup could be made, so nothing is changed"
        fi
    fi
    rm -rf $before
    mv $home $before

    # The units belong to their version: an older program may not know what a newer unit asks of it.
    mkdir $before/units
    for unit in $units; do cp -p /etc/systemd/system/$unit $before/units/ 2>/dev/null || true; done
    trap '[ $? = 0 ] || put_back' EXIT
fi

# Whatever failed on the way: the version before runs again, as it was.
put_back() {
    set +e
    systemctl stop $units
    rm -rf $home
    mv $before $home
    cp -p $home/units/* /etc/systemd/system/
    rm -rf $home/units
    systemctl daemon-reload
    systemctl start $units
    echo "version $version is not installed; the one before is back" >&2
}

sh "$here/lay-out.sh" "$published" '' /etc
ln -sf $home/PileController /usr/local/bin/PileController
systemd-sysusers pile-controller.conf
install -d -o pile -g pile -m 0700 $data
if ! [ -e $settings ]; then
    install -d -m 0750 -o root -g pile /etc/pile-controller
    install -m 0640 -o root -g pile $home/first-settings.json $settings
    echo "$settings is new: a simulated heap until rig.kind is \"hardware\"."
fi
systemd-tmpfiles --create pile-controller.conf || true
udevadm control --reload 2>/dev/null || true
udevadm trigger --subsystem-match=gpio --subsystem-match=i2c-dev --subsystem-match=pwm --subsystem-match=w1 2>/dev/null || true
systemctl daemon-reload
systemctl enable $units 2>/dev/null

systemctl start $units || { echo "version $version does not start; see journalctl -u pile-controller" >&2; exit 1; }
as_pile sh -c 'rm -f "$2" && echo "$1" >"$2"' - "$version" $data/written-by
echo "pile-controller $version runs."
