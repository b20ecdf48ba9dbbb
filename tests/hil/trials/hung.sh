# The process hangs and holds its lines; systemd notices.
draws || return
old=$(main_pid)
now; from=$now
kill -STOP "$old"
safe_within "$from" 30 "hung (SIGSTOP)"
takes 60 "another process runs" eval 'runs && [ "$(main_pid)" != "$old" ]'
promise "that was systemd" eval 'journal | grep -i "watchdog timeout"'
promise "outputs were made safe by the unit" eval 'journal | grep -c "All outputs are off"'
verify
