# Power is cut while heat is drawn, and comes back. power-cut.host pulls the plug; this runs at each boot.
if ! [ -e /trial/cut ]; then
    draws && touch /trial/ready && sleep 600
    return
fi
off_at_first() { awk '($2 == "pump" || $2 == "blower") && $3 == 1 { print "on " $1 " ms after power"; exit 1 } /./ { n++ } END { if (n) print "off" }' /run/hil/outputs; }
promise "after the cut, outputs are off from power on" off_at_first
takes 60 "the service is up again" runs
verify
primed_first() {
    within 600 is_on pump || { echo "no pump within 600 s"; return 1; }
    mode
    mode_is priming
}
promise "the first water that moves is to prime the loop, no draw" primed_first
takes 240 "then heat is drawn" eval 'mode_is drawing && is_on pump'
verify
