# The flow meter's wheel: pulses at its line while the pump moves water, unless /run/hil/flow-stopped is there.
. /trial/guest/places.sh
mkdir -p /run/hil
exec 8<> <(:)
where=$(lines)
half=0.025
while :; do
    if pump_runs && ! [ -e /run/hil/flow-stopped ]; then
        echo pull-up >"$where/sim_gpio${inputs[flow]}/pull"
        read -rt $half -u 8
        echo pull-down >"$where/sim_gpio${inputs[flow]}/pull"
    fi 2>/dev/null
    read -rt $half -u 8
done
