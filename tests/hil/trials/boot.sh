# From power to drawing: the unit as it stands, on real devices, as its own user.
within 60 runs
now
row "$(runs && echo yes || echo NO)" "the service is up by itself after the boot" "$(seconds_of "$now") after power"
before_first_start() { awk -v names="${loads[*]}" '($2 == "pump" || $2 == "blower") && $3 == 1 { print "on " $1 " ms after power"; exit 1 }' /run/hil/outputs && echo "off"; }
promise "outputs are off from power to the first decision" before_first_start

status() { sed -n "s/^$1:[[:space:]]*//p" "/proc/$(main_pid)/status"; }
names_of() { local id; for id in $1; do getent group "$id" | cut -d: -f1; done | sort -u | tr '\n' ' '; }
own_user() { [ "$(status Uid | tr '\t' '\n' | sort -u)" = "$(id -u pile)" ] && echo "uid $(id -u pile), pile"; }
own_groups() { local got; got=$(names_of "$(status Groups) $(status Gid)"); echo "$got"; [ "$got" = "gpio i2c pile " ]; }
no_rights() { echo "CapEff $(status CapEff), NoNewPrivs $(status NoNewPrivs), Seccomp $(status Seccomp)"; [ "$(status CapEff) $(status NoNewPrivs) $(status Seccomp)" = "0000000000000000 1 2" ]; }
promise "its process runs as its own user" own_user
promise "its groups are those that reach the rig" own_groups
promise "it has no capability, gains none, and its system calls are sieved" no_rights

# The list of devices is one that holds: the same user without the entry for the chip is refused, with it let in.
open_chip() { systemd-run -q --wait -p User=pile -p SupplementaryGroups=gpio -p DevicePolicy=closed "$@" dd if=/dev/gpiochip0 count=0 2>&1; }
promise "the chip is closed to a unit that does not name it" eval '! open_chip && echo refused'
promise "and open to one that does" eval 'open_chip -p "DeviceAllow=char-gpiochip rw" && echo opened'

all_read() { local name; for name in "${probe_names[@]}"; do quality_is "$name" good || { echo "$name: $(quality "$name")"; return 1; }; done; echo "${#probe_names[@]} good"; }
takes 60 "all probes are read through the kernel's 1-Wire" all_read
takes 240 "heat is drawn, pump on" eval 'mode_is drawing && is_on pump'
takes 10 "the lamp's line is held" is_on lamp
bulk() { as_pile sh -c 'for file in /sys/bus/w1/devices/w1_bus_master*/therm_bulk_read; do stat -c "%A %G" "$file" && : >>"$file"; done'; }
promise "its user may ask all probes of the wire to convert at once" bulk
beats() { local before; before=$(grep -c ' pulse ' /run/hil/outputs); sleep 10; echo "$(($(grep -c ' pulse ' /run/hil/outputs) - before)) changes in 10 s"; [ $(($(grep -c ' pulse ' /run/hil/outputs) - before)) -ge 8 ]; }
promise "the watchdog line beats" beats
promise "the watcher runs" systemctl is-active pile-controller-watch
warm() { answer /api/now | grep -o '{"channel":"supply"[^}]*' | grep -o '"value":[^,]*'; }
takes 120 "warm water is read at the supply" eval '[ "$(warm | cut -d: -f2 | cut -d. -f1)" -gt 30 ]'
now
systemctl stop $unit
safe_within "$now" 5 "stopped"
verify
