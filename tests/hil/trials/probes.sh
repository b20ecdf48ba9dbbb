# Probes that are gone, lose their supply, or send a wrong bit. None is believed; the draw goes on with the others.
draws || return
pid=$(main_pid)
behave() { local of=(0 0 0 0 0 0 0 0 0); of[$1]=$2; (IFS=,; echo "${of[*]}") >"$wire/behaviour"; }
turns=2
now; from=$now

behave $turns 1
takes 30 "a probe that is gone is told as such" quality_is heapTurns noAnswer
behave 0 0
takes 30 "and is read again when it is back" quality_is heapTurns good
behave $turns 2
takes 30 "one that shows its power-on value of 85 °C is told as such" quality_is heapTurns powerOnValue
behave 0 0
takes 30 "and is read again when it is well" quality_is heapTurns good
behave $turns 3
# The kernel asks again some times before it gives up, and the controller then lets the probe sit out.
doubted() { local now_held; now_held=$(quality heapTurns); echo "$now_held"; [ -n "$now_held" ] && [ "$now_held" != good ]; }
takes 60 "one that sends a wrong bit is not believed" doubted
promise "what is held of it" doubted
behave 0 0
takes 30 "and is read again when it is well" quality_is heapTurns good
promise "the draw went on, by the same process" eval '[ "$(main_pid)" = "$pid" ] && is_on pump && mode_is drawing && mode'
verify
