# Sourced at boot where a trial brings far-side.sh: the plant itself lives on the far side of the wires, in a process that
# sees nothing of the controller but its lines. The holding that was kept when the image was made goes on.
holding=/var/lib/pile-controller/holding.json
. /trial/far-side.sh
[ ! -e /trial/settings.json ] || install -m 0640 -g pile /trial/settings.json /etc/pile-controller/pile.json

# Where time costs nothing but the processor's, a pool's threads that spin before they sleep would be most of it, and the
# watcher's programs, begun anew every ten seconds, half of the rest; each byte of the wire would be an event. Nothing hangs in such a trial.
if [ -n "${unhurried:-}" ]; then
    echo 0 >$wire/slot_us
    mkdir -p /run/systemd/system/pile-controller.service.d
    printf '[Service]\nEnvironment=DOTNET_ThreadPool_UnfairSemaphoreSpinLimit=0\n' >/run/systemd/system/pile-controller.service.d/unhurried.conf
    systemctl mask --runtime pile-controller-watch.service
    systemctl daemon-reload
fi

# The clock goes on where the holding was left, in winter, before anything of the controller runs; ten minutes later, since
# the record may be ahead of what was kept, and ticks of two lives with the same time could not be told apart.
date -s "@$(($(sed -n 's/.*"plant":{"utcMilliseconds":\([0-9]*\).*/\1/p' $holding) / 1000 + 600))" >/dev/null
read -r up _ </proc/uptime
mkdir -p /run/hil
echo "$(date -u +%Y-%m-%dT%H:%M:%S) ${up%.*}" >/run/hil/began

DOTNET_EnableDiagnostics=0 nice -n -5 /trial/far-side/PileController.FarSide --holding $holding \
    --probes bed:0.45,bed:0.75,turns,bed:1.6,supply,return,house,floor,outside \
    --flow ${inputs[flow]} --told /trial/told.csv "${far_side[@]}" &
