# The pump runs and no water moves: a wheel that stands still. A grower who wants the half minute sets noFlowTime to 15 s.
with_settings 's/^  "control"/  "interlocks": { "noFlowTime": "15 s" },\n&/'
draws || return
now; from=$now
touch /run/hil/flow-stopped
safe_within "$from" 30 "no pulses, noFlowTime 15 s"
takes 30 "it is tripped for that" eval 'answer /api/now | grep -q noFlow && ! mode_is drawing'
rm /run/hil/flow-stopped
sleep 60
promise "it stays tripped until a person clears it" eval 'off && mode'
verify
