# As flow-stopped, with noFlowTime as it is when nobody sets it: 60 s, and the tick in which it is noticed.
draws || return
now; from=$now
touch /run/hil/flow-stopped
safe_within "$from" 80 "no pulses, noFlowTime left at 60 s"
verify
