# Sourced: starts a guest and knows how to cut its power.

# start DISK SHARED [OPTION...]: boots the guest on the disk in the background, with these options of the kernel besides;
# sets $guest, its process group. What stands in SHARED/trial.sh runs in it, and it ends by itself.
start() {
    local disk=$1 shared=$2
    shift 2
    setsid "$kernel/out/linux" mem=1G "ubd0=$disk" root=/dev/ubda rw "trial=$shared" con=null con0=fd:0,fd:1 \
        quiet systemd.show_status=no "$@" </dev/null >"$shared/console.txt" 2>&1 &
    guest=$!
}

# ended SECONDS: waits for the guest's own end; cuts its power when that takes longer.
ended() {
    local left=$1
    while kill -0 "$guest" 2>/dev/null; do
        [ $left -gt 0 ] || { unplug; return 1; }
        sleep 1
        left=$((left - 1))
    done
    wait "$guest" 2>/dev/null || true
}

# unplug: the plug is pulled. Nothing of the guest gets to write anything any more.
guest=
unplug() {
    [ -n "$guest" ] || return 0
    kill -KILL -- "-$guest" 2>/dev/null || true
    wait "$guest" 2>/dev/null || true
}

# share FOLDER TRIAL: what a guest sees of the host.
share() {
    mkdir -p "$1/modules"
    cp -r "$hil/guest" "$1/"
    cp "$modules"/*.ko "$1/modules/"
    cp "$2" "$1/trial.sh"
    : >"$1/table.txt"
}
