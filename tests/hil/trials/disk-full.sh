# The disk fills up: control goes on, the record does so in the room it has set aside, then says what it misses.
draws || return
pid=$(main_pid)
fill() { as_pile sh -c "dd if=/dev/zero of=$data/filler bs=1M 2>/dev/null; dd if=/dev/zero of=$data/filler2 bs=4k 2>/dev/null"; df --output=avail / | tail -n 1; }
told() { answer /api/alarms | grep -q "{\"key\":\"$1\",[^{}]*\"stands\":true"; }
accepting() { answer /api/now | grep -q '"accepting":true'; }
fresh() { answer /api/now | grep -o '"lastSequence":[0-9]*' | cut -d: -f2; }
moves_on() { local before; before=$(fresh); sleep 130; echo "$(($(fresh) - before)) ticks safe in 130 s"; [ $(($(fresh) - before)) -ge 6 ] && accepting; }
promise "the disk is full" fill
takes 120 "it says that the disk is full" told diskFull
promise "ticks go on being made safe in the room that was set aside" moves_on

# The file system gives back what lies past a file's end when it is cut to the length it has; nobody appends meanwhile.
no_room_aside() {
    kill -STOP "$pid"
    truncate -s +0 $data/tail
    as_pile sh -c "dd if=/dev/zero of=$data/filler3 bs=4k 2>/dev/null"
    kill -CONT "$pid"
    df --output=avail / | tail -n 1
}
promise "that room is gone, and full besides" no_room_aside
takes 120 "it says that the record is not being written" eval 'verdict_is storeFailing acting || verdict_is storeFailing pending'
sleep 60
promise "control goes on, by the same process" eval '[ "$(main_pid)" = "$pid" ] && is_on pump && mode'
rm -f $data/filler $data/filler2 $data/filler3
takes 120 "the record is written again once there is room" verdict_is storeFailing clear
verify
