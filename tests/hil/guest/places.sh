# Where the rig's devices are, for everyone in the guest. guest/settings.json tells the controller the same.
chip_config=/sys/kernel/config/gpio-sim/rig
declare -A line_of=([pump]=17 [blower]=27 [lamp]=22 [pulse]=23)
loads=(pump blower)
declare -A inputs=([flow]=24)

# A trial may have the pump driven by channel 0 of either.
pwm_state=/sys/module/pwm_sim/parameters/state
i2c=/sys/module/i2c_sim/parameters

# Probes in the order of their addresses, and what they show at rest, 1/1000 °C.
probe_names=(heapCore heapMiddle heapTurns heapEdge supply return house floor outside)
rest=(58000 57000 56000 42000 18000 16000 4000 8000 -4000)
wire=/sys/module/w1_sim/parameters

# The chip's files come and go with it, so they are looked up each time.
lines() { echo "/sys/devices/platform/$(cat $chip_config/dev_name)/$(cat $chip_config/bank0/chip_name)"; }

# pwm_runs: whether channel 0 of the PWM chip is on.
pwm_runs() {
    local channel enabled period duty
    read -r channel enabled period duty _ <"$pwm_state"
    [ "$enabled" = 1 ] && [ "$duty" -gt 0 ]
}

# i2c_runs: whether channel 0 of a PCA9685 at 0x40 is on (registers from memory); no is told where there is no such chip.
i2c_runs() {
    local address register value
    local -A at=([07]=00 [08]=00 [09]=10)
    while read -r address register value; do [ "$address" != 40 ] || at[$register]=$value; done <"$i2c/get"
    (((16#${at[09]} & 16) == 0 && ((16#${at[07]} & 16) || 16#${at[08]} || 16#${at[09]})))
}

# pump_runs: whether anything that may drive the pump is on. The caller has set $where to what lines says.
pump_runs() {
    local value=0
    read -r value 2>/dev/null <"$where/sim_gpio${line_of[pump]}/value" || where=$(lines)
    [ "$value" = 1 ] || pwm_runs || i2c_runs
}
