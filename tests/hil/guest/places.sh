# Where the rig's devices are, for everyone in the guest. guest/settings.json tells the controller the same.
chip_config=/sys/kernel/config/gpio-sim/rig
declare -A line_of=([pump]=17 [blower]=27 [lamp]=22 [pulse]=23)
loads=(pump blower)
declare -A inputs=([flow]=24)

# Probes in the order of their addresses, and what they show at rest, 1/1000 °C.
probe_names=(heapCore heapMiddle heapTurns heapEdge supply return house floor outside)
rest=(58000 57000 56000 42000 18000 16000 4000 8000 -4000)
wire=/sys/module/w1_sim/parameters

# The chip's files come and go with it, so they are looked up each time.
lines() { echo "/sys/devices/platform/$(cat $chip_config/dev_name)/$(cat $chip_config/bank0/chip_name)"; }
