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
verify
