# Installs the package as anybody would, lets the simulated heap make its history once, so that the heap counts as lit,
# and puts the real rig's settings in.
set -e
dpkg -i /trial/pile-controller.deb
within 240 runs
within 60 mode_is drawing || true
systemctl stop pile-controller-watch $unit
install -m 0640 -g pile /trial/guest/settings.json $settings
PileController check $settings
touch /trial/prepared
