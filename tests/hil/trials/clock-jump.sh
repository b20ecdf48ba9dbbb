# The wall clock jumps a day ahead and two days back: no duration is touched by it.
draws || return
pid=$(main_pid)
steady() { [ "$(main_pid)" = "$pid" ] && is_on pump && mode_is drawing && mode; }
for jump in "+1 day" "-2 days"; do
    now; from=$now
    date -s "$jump" >/dev/null
    takes 30 "a jump of the clock by $jump is told" eval 'verdict_is clockJump acting'
    sleep 40
    promise "heat is drawn on, by the same process" steady
done
changes() { local n; n=$(awk -v from="$from" '$1 > from && ($2 == "pump" || $2 == "blower")' /run/hil/outputs | wc -l); echo "$n switchings since"; [ "$n" = 0 ]; }
promise "no load was switched" changes
verify
