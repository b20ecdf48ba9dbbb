# Nine probes on one wire, 750 ms a conversion and 70 µs a bit: how long a whole reading takes, as the wire itself tells, and
# whether ticks come on time meanwhile, also on a wire that is far too slow.
. /trial/guest/record.sh
takes 60 "all probes are read through the kernel's 1-Wire" all_read

# From the conversion's begin to the last bit of the last probe.
readings() {
    local whole least most
    read -r whole least most <$wire/readings
    echo "$whole readings of ${#probe_names[@]} probes in $SECONDS s, $(seconds_of "$least") to $(seconds_of "$most") each"
    [ "$whole" -ge "$1" ] && [ "$most" -le 2500 ]
}
# ticks_on_time FROM: the ticks since then, by the record, come every 10 s.
ticks_on_time() {
    as_pile PileController record samples --data $data --channel outside --from "$1" --csv | tail -n +2 | cut -d, -f1 |
        while read -r at; do date -u -d "$at" +%s%3N; done |
        awk 'NR > 1 { gap = $1 - before; least = NR == 2 || gap < least ? gap : least; most = gap > most ? gap : most }
            { before = $1 }
            END { printf "%d ticks, %.2f to %.2f s apart\n", NR, least / 1000, most / 1000; exit !(NR >= 5 && least > 9000 && most < 11000) }'
}
began=$(date -u +%Y-%m-%dT%H:%M:%S)
echo 0 >$wire/readings
SECONDS=0
sleep 90
promise "a whole reading of the wire within 2.5 s" readings 8
promise "ticks every 10 s meanwhile" ticks_on_time "$began"

# Bits of 2 ms: a reading takes longer than a tick waits for it.
echo 2000 >$wire/slot_us
sleep 15
began=$(date -u +%Y-%m-%dT%H:%M:%S)
echo 0 >$wire/readings
sleep 90
slow() {
    local whole least most
    read -r whole least most <$wire/readings
    echo "$whole readings, $(seconds_of "$least") to $(seconds_of "$most") each"
    [ "$whole" -gt 0 ] && [ "$least" -gt 2500 ]
}
promise "a wire on which a reading takes far longer" slow
promise "ticks every 10 s all the same" ticks_on_time "$began"
told() { quality heapCore; [ -n "$(quality heapCore)" ]; }
promise "what is then held of a probe" told
echo 70 >$wire/slot_us
takes 90 "all are read again once the wire is well" all_read
verify
