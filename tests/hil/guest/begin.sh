# Runs the trial the host laid here, and keeps what was said.
exec >>/trial/log.txt 2>&1
. /trial/guest/places.sh
. /trial/guest/lib.sh
cd /trial
(. /trial/trial.sh)
journalctl -b --no-pager >/trial/journal.txt
[ ! -e /run/hil/outputs ] || cp /run/hil/outputs /trial/outputs.txt
dmesg >/trial/dmesg.txt
touch /trial/ended
