# What trials with a plant on the far side ask lines, plant and record. Guests that skip time may be hours old before the
# plant begins: minutes count from then.
read -r began_utc began_up </run/hil/began

# until_minute MINUTE
until_minute() {
    now
    local left=$((began_up + $1 * 60 - now / 1000))
    [ $left -le 0 ] || sleep $left
}

# ticks CHANNEL...: "time value..." of each tick at which all of them are known.
ticks() {
    local channel
    for channel in "$@"; do
        as_pile PileController record samples --data $data --channel "$channel" --from "$began_utc" --csv | tail -n +2 | cut -d, -f1,2
    done | awk -F, -v n=$# '{ seen[$1]++; row[$1] = row[$1] " " $2; if (seen[$1] == 1) order[++k] = $1 }
        END { for (i = 1; i <= k; i++) if (seen[order[i]] == n) print order[i] row[order[i]] }'
}

# unproven: each start of a draw by water that no priming with flow goes before; modes by their numbers, 1 priming, 2 drawing.
# In its last ticks before the draw flow must have been there for the minute that is asked.
unproven() {
    awk -v ticks=5 '
        { drawing = $2 == 2 && $4 > 0 }
        drawing && !before && flowing < ticks { print $1 ": drawing after " flowing + 0 " ticks of flow" }
        { flowing = $2 == 1 && $3 > 0.5 ? flowing + 1 : 0; before = drawing }' /run/hil/ticks
}

# told NAME: column of what the plant says of itself.
told() { awk -F, -v name="$1" 'NR == 1 { for (i = 1; i <= NF; i++) if ($i == name) at = i; next } { print $at }' /trial/told.csv; }
# head would leave while sort still writes.
least() { sort -g | sed -n 1p; }
most() { sort -g | tail -n 1; }

all_read() { local name; for name in "${probe_names[@]}"; do quality_is "$name" good || { echo "$name: $(quality "$name")"; return 1; }; done; echo "${#probe_names[@]} good"; }
valve_is_open() { [ "$(cat "$(lines)/sim_gpio5/value")$(cat "$(lines)/sim_gpio6/value")" = 00 ] && [ "$(cat "$(lines)/sim_gpio12/pull")" = pull-up ]; }
primed_first() {
    within 1200 is_on pump || { echo "no pump within 1200 s"; return 1; }
    mode
    mode_is priming
}

# judge_loop RESTARTS: the rows that lines, plant and record come to.
judge_loop() {
    local restarts=$1 floor=45
    ticks mode flow pumpDuty waterDraw airDraw grant activeZone house >/run/hil/ticks
    cp /run/hil/ticks /trial/
    promise "draws begin only after priming proved flow" no_unproven
    promise "heat drawn meets the grant, by the record" draw_is_granted
    promise "heap above its floor of $floor °C, as it truly is" heap_above $floor
    promise "the house is warmer than it would be without the heap" house_responds
    promise "the record's house is the plant's" house_is_told
    promise "restarts by systemd: $restarts; no watchdog ran out" restarted "$restarts"
    promise "modes seen" modes_seen
    verify
}
no_unproven() {
    local found draws
    found=$(unproven)
    draws=$(awk '{ d = $2 == 2 && $4 > 0; n += d && !b; b = d } END { print n + 0 }' /run/hil/ticks)
    echo "${found:-$draws draws, each after priming}"
    [ -z "$found" ] && [ "$draws" -gt 0 ]
}
# By runs and rests the draw is ahead of the grant or behind it by what one run carries.
draw_is_granted() {
    awk '{ drawn += $5 + $6; granted += $7; n++; run = $4 > 0 ? run + $5 : 0; if (run > most) most = run }
        END { k = 10 / 3.6e6; printf "%.3f kWh drawn, %.3f kWh granted, longest run %.3f kWh, %d ticks\n", drawn * k, granted * k, most * k, n
              exit !(n > 0 && drawn > 0 && drawn - granted < most && granted - drawn < 0.1 * granted + most) }' /run/hil/ticks
}
heap_above() { echo "least $(told activeZoneC | least) °C, most $(told activeZoneC | most) °C"; awk -v t="$(told activeZoneC | least)" -v f="$1" 'BEGIN { exit !(t >= f) }'; }
# A tank and a floor come first: within half an hour a little is much.
house_responds() {
    local truly resting
    truly=$(told houseC | tail -n 1) resting=$(told restingHouseC | tail -n 1)
    echo "at the end $truly against $resting °C; least $(told houseC | least) against $(told restingHouseC | least) °C, outside $(told outsideC | least) °C"
    awk -v a="$truly" -v b="$resting" 'BEGIN { exit !(a > b + 0.05) }'
}
house_is_told() {
    local truly held
    truly=$(told houseC | tail -n 1) held=$(tail -n 1 /run/hil/ticks | cut -d' ' -f9)
    echo "at the end $truly °C, recorded $held °C"
    awk -v a="$truly" -v b="$held" 'BEGIN { exit !(a - b < 0.5 && b - a < 0.5) }'
}
restarted() {
    local seen
    seen=$(systemctl show -P NRestarts $unit)
    echo "$seen restarts, $(journal | grep -ci "watchdog timeout") watchdogs"
    [ "$seen" = "$1" ] && ! journal | grep -qi "watchdog timeout"
}
modes_seen() {
    awk 'BEGIN { split("standby priming drawing recovering frostGuard byHand servicing tripped", name, " ") }
        { n[$2]++ } END { for (m = 0; m < 8; m++) if (n[m]) printf "%s %d, ", name[m + 1], n[m]; print NR " ticks"; exit !n[2] }' /run/hil/ticks
}
