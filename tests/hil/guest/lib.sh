# What trials say with: they wait for things, read the clock since boot, and write rows of the table.
unit=pile-controller.service
data=/var/lib/pile-controller
settings=/etc/pile-controller/pile.json

# now: sets $now to the time since boot, ms. No wall clock is read: trials turn it.
now() { read -r up _ </proc/uptime; now=$((10#${up/./} * 10)); }

# row yes|NO PROMISE SEEN
row() { printf '%s\t%s\t%s\n' "$1" "$2" "$3" >>/trial/table.txt; }

# promise TEXT COMMAND...: a row; what the command says last is what was seen.
promise() {
    local text=$1 said verdict=yes
    shift
    said=$("$@" 2>&1) || verdict=NO
    echo "-- $text: $verdict: $said"
    row $verdict "$text" "$(tail -n 1 <<<"${said:-$verdict}")"
}

# within SECONDS COMMAND...: tries until the command succeeds; sets $took, ms.
within() {
    local seconds=$1 began
    shift
    now; began=$now
    until "$@"; do
        now
        [ $((now - began)) -lt $((seconds * 1000)) ] || { took=$((now - began)); return 1; }
        sleep 0.2
    done
    now; took=$((now - began))
}

# takes SECONDS TEXT COMMAND...: a row with the time until the command succeeded.
takes() {
    local seconds=$1 text=$2 verdict=yes
    shift 2
    within "$seconds" "$@" >/dev/null 2>&1 || verdict=NO
    row $verdict "$text (at most $seconds s)" "$(seconds_of $took)"
}
seconds_of() { printf '%d.%d s' $(($1 / 1000)) $(($1 % 1000 / 100)); }

# answer PATH: what the page's own server says; fails while it is not up.
answer() {
    (exec 3<>/dev/tcp/127.0.0.1/8080 && printf 'GET %s HTTP/1.0\r\nHost: 127.0.0.1:8080\r\n\r\n' "$1" >&3 && timeout 10 cat <&3) 2>/dev/null
}
mode() { answer /api/now | grep -o '"mode":"[^"]*"' | head -n 1 | cut -d'"' -f4; }
mode_is() { [ "$(mode)" = "$1" ]; }
# quality CHANNEL: what is held of its probe.
quality() { answer /api/now | grep -o "{\"channel\":\"$1\"[^}]*" | grep -o '"quality":"[^"]*"' | cut -d'"' -f4; }
quality_is() { [ "$(quality "$1")" = "$2" ]; }
verdict_is() { answer /api/now | grep -q "{\"id\":\"$1\",\"verdict\":\"$2\""; }

# line NAME: 1 when it is on; the name is a line's, or pwm or i2c.
line() {
    case $1 in
    pwm | i2c) "$1_runs" && echo 1 || echo 0 ;;
    *) cat "$(lines)/sim_gpio${line_of[$1]}/value" ;;
    esac
}
# What drives the pump; a trial may say something else.
pump=pump
is_on() { [ "$(line "$1")" = 1 ]; }
off() { local load; for load in "${loads[@]}"; do ! is_on "$load" || return 1; done; }
main_pid() { systemctl show -P MainPID $unit; }
runs() { systemctl -q is-active $unit && [ -n "$(mode)" ]; }
as_pile() { setpriv --reuid=pile --regid=pile --init-groups --no-new-privs env DOTNET_EnableDiagnostics=0 "$@"; }
journal() { journalctl -o cat -u "${1:-$unit}" -b; }

# off_since MS: the first moment from MS on at which every load was off or its chip gone.
off_since() {
    awk -v from="$1" -v names="${loads[*]}" '
        function all_off(  i) { for (i = 1; i <= n; i++) if (state[load[i]] == 1) return 0; return 1 }
        BEGIN { n = split(names, load, " ") }
        $1 > from && !told && all_off() { print from; told = 1; exit }
        { state[$2] = $3 }
        $1 > from && !told && all_off() { print $1; told = 1; exit }
        END { if (!told && all_off()) print from; exit }' /run/hil/outputs
}

# safe_within MS LIMIT TEXT: a row; the loads went off within LIMIT seconds after the moment MS.
safe_within() {
    local from=$1 limit=$2 at
    now
    while at=$(off_since "$from"); [ -z "$at" ] && [ $((now - from)) -lt $(((limit + 10) * 1000)) ]; do sleep 0.2; now; done
    if [ -z "$at" ]; then
        row NO "$3: outputs off (at most $limit s)" "still on after $(seconds_of $((now - from)))"
    elif [ $((at - from)) -le $((limit * 1000)) ]; then
        row yes "$3: outputs off (at most $limit s)" "$(seconds_of $((at - from)))"
    else
        row NO "$3: outputs off (at most $limit s)" "$(seconds_of $((at - from)))"
    fi
}

# draws: waits until heat is drawn with the pump on, which most trials begin from; ends the trial where that fails.
draws() {
    within "${1:-240}" eval 'mode_is drawing && is_on $pump' && return
    row NO "draws heat before the trial" "mode $(mode), $pump $(line $pump) after $(seconds_of $took)"
    return 1
}

# with_settings SED...: starts the controller anew with settings changed so.
with_settings() {
    systemctl stop pile-controller-watch $unit
    sed -i "$@" $settings
    as_pile PileController check $settings && systemctl start $unit pile-controller-watch
}

verified() { as_pile PileController record verify --data $data; }
verify() { promise "record verify" verified; }
