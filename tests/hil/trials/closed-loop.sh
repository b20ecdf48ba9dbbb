# The loop is closed by the simulated plant, at the wires and nowhere else: boots to drawing, draws at life speed, dies once
# in the midst of it. trials/closed-loop.host tells how long; the controller has the settings of trials/closed-loop.json.
. /trial/guest/record.sh
minutes=$(cat /trial/minutes)
takes 60 "the service is up by itself after the boot" runs
takes 120 "all probes are read through the kernel's 1-Wire" all_read
promise "the first water that moves is to prime the loop" primed_first
takes 600 "then heat is drawn, pump on, valve open" eval 'mode_is drawing && is_on pump && valve_is_open'
until_minute $((minutes / 2))

within 1200 eval 'mode_is drawing && is_on pump' || row NO "draws heat before it is killed" "mode $(mode)"
old=$(main_pid)
now; from=$now
kill -KILL "$old"
safe_within "$from" 5 "killed (SIGKILL) in the midst of a draw"
takes 60 "systemd starts another process" eval 'runs && [ "$(main_pid)" != "$old" ]'
promise "the first water that moves then is to prime the loop" primed_first
takes 600 "then heat is drawn again" eval 'mode_is drawing && is_on pump'
until_minute $minutes
judge_loop 1
