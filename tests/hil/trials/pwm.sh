# The pump's duty is a PWM channel, with no relay in series: the kernel leaves it running when the program dies.
pump=pwm loads=(pwm blower)
with_settings -e 's/"drive": "onOff", //' -e 's/"pumpPin": 17,/"pumpPin": null, "pwmChip": "pwm-sim", "pump": { "drive": "pwm", "channel": 0, "frequency": "1 kHz" },/'
draws || return
duty() { head -n 1 $pwm_state; }
promise "the channel runs" duty
old=$(main_pid)
now; from=$now
kill -KILL "$old"
safe_within "$from" 5 "killed (SIGKILL)"
promise "the channel is at 0, disabled" eval 'duty && ! is_on pwm'
takes 60 "another process runs" eval 'runs && [ "$(main_pid)" != "$old" ]'
takes 600 "heat is drawn again" eval 'mode_is drawing && is_on pwm'
old=$(main_pid)
now; from=$now
kill -STOP "$old"
safe_within "$from" 30 "hung (SIGSTOP)"
takes 60 "another process runs" eval 'runs && [ "$(main_pid)" != "$old" ]'

# The file is given another wiring while the program runs, and it dies: what it ran with goes off all the same.
takes 600 "heat is drawn once more" eval 'mode_is drawing && is_on pwm'
old=$(main_pid)
sed -i -e 's/"pumpPin": null, .*"frequency": "1 kHz" },/"pumpPin": 17,/' -e 's/"pump": { "leastRest"/"pump": { "drive": "onOff", "leastRest"/' $settings
now; from=$now
kill -KILL "$old"
safe_within "$from" 5 "killed with its settings edited meanwhile"
promise "it says so" eval 'journal | grep "the outputs it ran with are switched off first"'
takes 60 "another process runs, by the edited file" eval 'runs && [ "$(main_pid)" != "$old" ]'
verify
