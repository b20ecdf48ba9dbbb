# Stands at the head of every maintainer script; package.sh puts it there.
program=/opt/pile-controller/PileController
settings=/etc/pile-controller/pile.json
data=/var/lib/pile-controller
backups=/var/backups/pile-controller
units='pile-controller.service pile-controller-watch.service'
# Version of the package that last ran on the data.
stamp=$data/written-by

say() { echo "pile-controller: $*" >&2; }

# Root never runs the program on data of its user: files it made there would lock the service out.
as_pile() { setpriv --reuid=pile --regid=pile --init-groups --no-new-privs env -i PATH="$PATH" HOME=$data DOTNET_EnableDiagnostics=0 "$@"; }

# The data folder is its user's: what stands there may be a link to anything, so root neither reads nor writes in it.
written_by() { if getent passwd pile >/dev/null; then as_pile cat $stamp; else cat $stamp; fi; }
write_stamp() { as_pile sh -c 'rm -f "$2" && echo "$1" >"$2"' - "$1" $stamp; }

booted() { [ -d /run/systemd/system ]; }

# The watcher first: it would only make safe what is being made safe already.
stop_units() {
    booted || return 0
    deb-systemd-invoke stop pile-controller-watch.service pile-controller.service >/dev/null || return 1
}

start_units() {
    booted || return 0
    systemctl daemon-reload || true
    # A failed start is said and is no reason to leave the package half configured: systemd goes on trying.
    deb-systemd-invoke start $units >/dev/null || say "it does not start yet; see: journalctl -u pile-controller"
}

# The program that lies in place now says what is wrong with the settings, if anything.
accepts_settings() {
    [ -e $settings ] || return 0
    as_pile "$program" check $settings >&2
}

# Fails when the data were last written by a newer version than $1.
refuse_newer_data() {
    [ -f $stamp ] || return 0
    written=$(written_by)
    dpkg --compare-versions "$written" gt "$1" || return 0
    say "the data in $data were written by version $written; version $1 may not read them."
    say "Keep $written, or move $data away and bring back a backup of an older version (PileController record restore; they lie in $backups)."
    return 1
}

has_record() { [ -n "$(find $data -maxdepth 1 \( -name tail -o -name manifest -o -name 'ticks-*' \) -print -quit 2>/dev/null)" ]; }

# A checked copy of the data, made by the program that wrote them. $1: their version. Backups of older versions go,
# but the two youngest stay. Without a record there is nothing a copy could be checked by: what lies there is kept as it is.
back_up_data() {
    if ! has_record || ! [ -x $program ]; then return 0; fi
    install -d -o pile -g pile -m 0700 $backups
    copy=$backups/$1-$(date -u +%Y%m%dT%H%M%SZ)
    done=0
    as_pile "$program" record backup "$copy" --data $data >&2 || done=$?
    case $done in
    0) ;;
    1) say "what is said above was wrong before; the copy is true to it." ;;
    *) say "no backup could be made, so nothing is changed."; return 1 ;;
    esac
    # By its own user and with names apart by NUL: a name made to be split must not turn into another path.
    find $backups -mindepth 1 -maxdepth 1 -type d -printf '%T@\t%p\0' | sort -z -rn | tail -z -n +3 | cut -z -f 2- | as_pile xargs -0 -r rm -rf --
}
