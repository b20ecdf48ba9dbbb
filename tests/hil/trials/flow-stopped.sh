# The pump runs and no water moves: a wheel that stands still. A grower who wants the half minute sets noFlowTime to 10 s and looks every 5 s.
with_settings 's|^  "control": {|  "interlocks": { "noFlowTime": "10 s" },\n  "control": { "tick": "5 s",|'
draws || return
now; from=$now
touch /run/hil/flow-stopped
safe_within "$from" 30 "no pulses, noFlowTime 10 s, tick 5 s"
takes 30 "it is tripped for that" eval 'answer /api/now | grep -q noFlow && ! mode_is drawing'
rm /run/hil/flow-stopped
sleep 60
promise "it stays tripped until a person clears it" eval 'off && mode'
verify
