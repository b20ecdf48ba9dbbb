#!/bin/bash
# Runs inside the trial's root: installs, upgrades, refuses, removes and purges, and writes a table.
#   steps.sh FOLDER booted|bare    FOLDER holds one.deb, two.deb, rejecting.deb and later rejected.txt, table.txt
set -u
folder=$1 how=$2
export DEBIAN_FRONTEND=noninteractive
table=$folder/table.txt
log=$folder/log.txt
failed=0
: >"$table"
: >"$log"

# row NAME COMMAND...: one line of the table.
row() {
    local name=$1
    shift
    echo "== $name: $*" >>"$log"
    if "$@" >>"$log" 2>&1; then
        echo "| $name | yes |" >>"$table"
    else
        echo "| $name | **NO** |" >>"$table"
        failed=$((failed + 1))
    fi
}
booted_row() { [ "$how" = bare ] || row "$@"; }
not() { ! "$@"; }

version() { [ "$(dpkg-query -W -f '${db:Status-Abbrev}${Version}' pile-controller)" = "ii $1" ]; }
# Active, and its program answers on its page.
runs() {
    systemctl is-active pile-controller && (exec 3<>/dev/tcp/127.0.0.1/8080 && printf 'GET / HTTP/1.1\r\nHost: 127.0.0.1:8080\r\nConnection: close\r\n\r\n' >&3 && head -n 1 <&3 | grep -F 200)
}
watched() { systemctl is-active pile-controller-watch; }
owned() { [ "$(stat -c '%U:%G %a' "$2")" = "$1" ]; }
says() { grep -F "$1" "$folder/said.txt"; }
install_deb() { dpkg -i "$folder/$1.deb" >"$folder/said.txt" 2>&1; local done=$?; cat "$folder/said.txt"; return $done; }
data=/var/lib/pile-controller
settings=/etc/pile-controller/pile.json
mark() { setpriv --reuid=pile --regid=pile --init-groups touch $data/marked && echo "// mine" >>$settings; }
kept() { [ -e $data/marked ] && grep -F "// mine" $settings; }
# What a service that was taken over might leave for root's scripts: a link, and folders whose names fall apart at a blank.
link_out() {
    echo 0.0.1 >/linked
    setpriv --reuid=pile --regid=pile --init-groups ln -sf /linked $data/written-by
    setpriv --reuid=pile --regid=pile --init-groups mkdir /var/backups/pile-controller/{"1 trial","2 trial","3 trial"}
}
backed_up() { [ -n "$(ls -A /var/backups/pile-controller 2>/dev/null)" ]; }
nothing_left() {
    local left
    for left in $data /var/backups/pile-controller /etc/pile-controller /opt/pile-controller /usr/bin/PileController \
        /etc/systemd/system/multi-user.target.wants/pile-controller*; do
        if [ -e "$left" ] || [ -L "$left" ]; then
            echo "left: $left"
            return 1
        fi
    done
    not getent passwd pile
}
main_pid() { systemctl show -P MainPID pile-controller; }
# ended SIGNAL: the process got it, another one runs, and outputs were made safe between.
ended() {
    local pid since tries
    pid=$(main_pid)
    since=$(journalctl -u pile-controller -o cat | grep -c "nothing to switch off")
    kill "-$1" "$pid"
    for tries in $(seq 240); do
        if [ "$(main_pid)" != "$pid" ] && runs; then
            [ "$(journalctl -u pile-controller -o cat | grep -c "nothing to switch off")" -gt "$since" ]
            return
        fi
        sleep 1
    done
    return 1
}
killed_by_watcher() { journalctl -u pile-controller-watch -o cat | grep -F "killing process"; }

row "installs" install_deb one
row "first settings are sound" PileController check $settings
row "settings are root's, readable for its group only" owned root:pile\ 640 $settings
row "data are its user's alone" owned pile:pile\ 700 $data
booted_row "runs, and its page answers" runs
booted_row "is watched" watched
booted_row "the record is written" test -e $data/lock
booted_row "killed, it makes outputs safe and starts again" ended KILL
booted_row "hung, systemd kills it, outputs safe, starts again" ended STOP
booted_row "that was not the watcher" not killed_by_watcher
[ "$how" = bare ] || systemctl service-watchdogs off
booted_row "hung with systemd's watchdog off, the same" ended STOP
booted_row "that was the watcher" killed_by_watcher
[ "$how" = bare ] || systemctl service-watchdogs on
mark
link_out
row "upgrades" install_deb two
row "root writes through no link out of the data" grep -x 0.0.1 /linked
row "a backup named to be split takes nothing else with it" test -e /trial/$(basename "$0")
row "the new version stands" version 0.9.2
row "data and settings are kept" kept
booted_row "a backup was made" backed_up
booted_row "runs again" runs
row "an upgrade whose check rejects the settings is refused" not install_deb rejecting
row "and says why" says "heap.nonsense"
row "the version before stands" version 0.9.2
row "its program is the old one" not grep -F nonsense /opt/pile-controller/PileController
row "data and settings are kept still" kept
booted_row "the version before runs" runs
booted_row "and is watched" watched
row "a downgrade below the data is refused" not install_deb one
row "and says what to do" says "record restore"
row "the newer version stands" version 0.9.2
booted_row "the newer version runs" runs
row "is removed" dpkg -r pile-controller
row "removing keeps data and settings" kept
booted_row "nothing runs" not systemctl is-active pile-controller
row "an older version is refused on kept data" not install_deb one
row "comes back on kept data" install_deb two
row "data and settings are kept again" kept
booted_row "runs once more" runs
row "is purged" dpkg -P pile-controller
row "purging leaves nothing" nothing_left
echo "$failed failed" >>"$table"
