# The disk fills up: control goes on, the record says what it misses.
draws || return
pid=$(main_pid)
fill() { as_pile sh -c "dd if=/dev/zero of=$data/filler bs=1M 2>/dev/null; dd if=/dev/zero of=$data/filler2 bs=4k 2>/dev/null"; df --output=avail / | tail -n 1; }
promise "the disk is full" fill
takes 120 "it says that the record is not being written" eval 'verdict_is storeFailing acting || verdict_is storeFailing pending'
sleep 60
promise "control goes on, by the same process" eval '[ "$(main_pid)" = "$pid" ] && is_on pump && mode'
rm -f $data/filler $data/filler2
takes 120 "the record is written again once there is room" verdict_is storeFailing clear
verify
