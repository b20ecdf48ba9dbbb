# The process hangs and systemd does not look: the watcher is the one left.
draws || return
systemctl service-watchdogs off
old=$(main_pid)
now; from=$now
kill -STOP "$old"
# Six looks, ten seconds apart, and the one before.
safe_within "$from" 80 "hung, systemd's own watchdog off"
takes 60 "another process runs" eval 'runs && [ "$(main_pid)" != "$old" ]'
promise "that was the watcher" eval 'journal pile-controller-watch | grep "killing process"'
verify
