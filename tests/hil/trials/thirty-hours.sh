# A night, a day and most of a night of the plant at the wires, in a guest that skips the time in which nothing is done. The
# controller's settings are those of life.
. /trial/guest/record.sh
takes 60 "the service is up by itself after the boot" runs
takes 120 "all probes are read through the kernel's 1-Wire" all_read
until_minute "$(cat /trial/minutes)"
judge_loop 0
