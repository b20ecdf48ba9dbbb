# The process dies at once, without a word.
draws || return
old=$(main_pid)
now; from=$now
kill -KILL "$old"
safe_within "$from" 5 "killed (SIGKILL)"
takes 60 "another process runs" eval 'runs && [ "$(main_pid)" != "$old" ]'
promise "outputs were made safe by the unit" eval 'journal | grep -c "All outputs are off"'
promise "no draw follows at once" eval 'off && mode'
takes 600 "heat is drawn again" eval 'mode_is drawing && is_on pump'
verify
