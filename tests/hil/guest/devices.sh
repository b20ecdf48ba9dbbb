# Puts the rig's devices there: a GPIO chip, a wire of probes, a PWM chip, an I2C bus. They begin as a sound rig at rest.
. /trial/guest/places.sh
insmod /trial/modules/w1_sim.ko count=9 milli_c="$(IFS=,; echo "${rest[*]}")"
insmod /trial/modules/pwm_sim.ko
insmod /trial/modules/i2c_sim.ko

mountpoint -q /sys/kernel/config || mount -t configfs none /sys/kernel/config
mkdir -p "$chip_config/bank0"
echo 32 >"$chip_config/bank0/num_lines"
echo board-gpio >"$chip_config/bank0/label"
for line in "${!line_of[@]}"; do
    mkdir "$chip_config/bank0/line${line_of[$line]}"
    echo "$line" >"$chip_config/bank0/line${line_of[$line]}/name"
done
echo 1 >"$chip_config/live"
udevadm settle
if [ -e /trial/far-side.sh ]; then
    . /trial/guest/far-side.sh
else
    bash /trial/guest/plant.sh &
    bash /trial/guest/flow.sh &
fi
[ -n "${unobserved:-}" ] || bash /trial/guest/observe.sh &
