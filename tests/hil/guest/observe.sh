# Writes down each change of an output as it is seen from outside the controller: "ms-since-boot name value".
# A line whose chip is not there reads "gone". Looks fifty times a second.
. /trial/guest/places.sh
mkdir -p /run/hil
exec >>/run/hil/outputs 8<> <(:)
declare -A before
where=$(lines)
while :; do
    read -r up _ </proc/uptime
    for name in "${!line_of[@]}"; do
        value=gone
        read -r value 2>/dev/null <"$where/sim_gpio${line_of[$name]}/value" || where=$(lines)
        if [ "$value" != "${before[$name]:-}" ]; then
            echo "$((10#${up/./} * 10)) $name $value"
            before[$name]=$value
        fi
    done
    read -rt 0.02 -u 8
done
