# As flow-stopped, with noFlowTime as it is when nobody sets it: 60 s, and up to three ticks more (DEVELOPERS.md).
draws || return
now; from=$now
touch /run/hil/flow-stopped
safe_within "$from" 90 "no pulses, noFlowTime left at 60 s"
verify
