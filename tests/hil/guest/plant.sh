# A small plant, once a second: water that moves through the heap comes warm from it, water that stands cools down.
# It sees the controller's outputs at the lines and shows itself to the probes, nothing else.
. /trial/guest/places.sh
mkdir -p /run/hil
exec 8<> <(:)
supply=4 return=5
where=$(lines)
shown=("${rest[@]}")
while :; do
    pump_runs && goal=38000 below=4000 || goal=${rest[supply]} below=2000
    shown[supply]=$((shown[supply] + (goal - shown[supply]) / 15))
    shown[return]=$((shown[supply] - below))
    (IFS=,; echo "${shown[*]}") >"$wire/milli_c"
    read -rt 1 -u 8
done
