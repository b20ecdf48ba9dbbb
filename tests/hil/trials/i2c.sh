# The pump's duty is a channel of the PWM chip on I2C, which goes on whatever becomes of the board; then the bus hangs.
pump=i2c loads=(i2c blower)
for register in "00 11" "01 04" "06 00" "07 00" "08 00" "09 00" "fd 00" "fe 1e"; do echo "40 $register" >$i2c/set; done
with_settings -e 's/"drive": "onOff", //' -e 's/"pumpPin": 17,/"pumpPin": null, "i2cPwm": { "bus": 1, "address": "0x40", "frequency": "200 Hz" }, "pump": { "drive": "i2cPwm", "channel": 0 },/'
draws || return
old=$(main_pid)
now; from=$now
kill -KILL "$old"
safe_within "$from" 5 "killed (SIGKILL)"
takes 60 "another process runs" eval 'runs && [ "$(main_pid)" != "$old" ]'
takes 600 "heat is drawn again" eval 'mode_is drawing && is_on i2c'

# Nobody can switch off over a bus that hangs; the timer that feeds the chip's output-enable can.
echo 1 >$i2c/stuck
beats_no_more() { local before; before=$(grep -c ' pulse ' /run/hil/outputs); sleep 5; [ "$(grep -c ' pulse ' /run/hil/outputs)" = "$before" ]; }
takes 60 "the bus hangs: the watchdog line beats no more" beats_no_more
takes 60 "it is told" eval 'journal | grep -E "cannot be (set|switched)|could not be told|does not take"'
sleep 30
echo 0 >$i2c/stuck
now; from=$now
safe_within "$from" 60 "the bus is free again"
takes 120 "another process runs" runs
verify
