# The pump has run for more than its grace and no water moves: a wheel that stands still. Times as they are when nobody sets them.
draws || return
sleep 60
draws || return
now; from=$now
touch /run/hil/flow-stopped
safe_within "$from" 30 "no pulses, noFlowTime left at 15 s, ticks of 10 s"
takes 30 "it is tripped for that" eval 'answer /api/now | grep -q noFlow && ! mode_is drawing'
alarm_is_up() { answer /api/alarms | grep -q '{"key":"noFlow",[^{}]*"firstUp":true,"stands":true'; }
takes 2 "the alarm that explains it is up with the trip, as the first of its group" alarm_is_up
rm /run/hil/flow-stopped
sleep 60
promise "it stays tripped until a person clears it" eval 'off && mode'
verify
