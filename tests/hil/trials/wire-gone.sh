# The whole wire of probes is gone: nothing of the heap can be believed.
draws || return
pid=$(main_pid)
now; from=$now
echo 1,1,1,1,1,1,1,1,1 >"$wire/behaviour"
takes 90 "all probes are told to be gone" eval 'quality_is heapCore noAnswer && quality_is outside noAnswer'
# heapBlind holds all draw after ten minutes.
safe_within "$from" 660 "no probe answers"
promise "it says why" eval 'answer /api/now | grep -o "\"why\":\"[^\"]*\""'
verify
