# Writes down each change of an output as it is seen from outside the controller: "ms-since-boot name value".
# A line whose chip is not there reads "gone"; pwm and i2c are the channels of places.sh. Looks fifty times a second.
. /trial/guest/places.sh
mkdir -p /run/hil
exec >>/run/hil/outputs 8<> <(:)
declare -A before
where=$(lines)
seen() {
    [ "$2" != "${before[$1]:-}" ] || return 0
    echo "$((10#${up/./} * 10)) $1 $2"
    before[$1]=$2
}
while :; do
    read -r up _ </proc/uptime
    for name in "${!line_of[@]}"; do
        value=gone
        read -r value 2>/dev/null <"$where/sim_gpio${line_of[$name]}/value" || where=$(lines)
        seen "$name" "$value"
    done
    pwm_runs && seen pwm 1 || seen pwm 0
    i2c_runs && seen i2c 1 || seen i2c 0
    read -rt 0.02 -u 8
done
