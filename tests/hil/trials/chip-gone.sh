# The GPIO chip goes away while lines of it are held, and comes back.
draws || return
old=$(main_pid)
now; from=$now
echo 0 >"$chip_config/live"
safe_within "$from" 20 "the GPIO chip is gone"
takes 20 "the controller says so" eval 'journal | grep -E "cannot be (written|switched)"'
sleep 20
echo 1 >"$chip_config/live"
udevadm settle
now; back=$now
takes 120 "it runs again by itself once the chip is back" eval 'runs && [ -n "$(lines)" ] && [ "$(main_pid)" != "$old" ]'
promise "outputs stayed off when the chip came back" eval 'off && echo off'
verify
