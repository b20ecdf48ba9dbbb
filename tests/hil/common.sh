# Sourced by every script here: where things are kept, and how to refuse.
hil=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
project=$(cd "$hil/../.." && pwd)
cache=${XDG_CACHE_HOME:-$HOME/.cache}/pile-controller-hil
linux_series=6.12

refuse() { echo "$*" >&2; exit 2; }
say() { echo "$*" >&2; }

# hash_of FILE...: short name for these contents.
hash_of() { cat "$@" | sha256sum | cut -c1-12; }

# once FOLDER COMMAND...: runs the command with the empty FOLDER, unless it was done before; prints FOLDER.
# What was interrupted is begun anew.
once() {
    local folder=$1
    shift
    if ! [ -e "$folder/done" ]; then
        rm -rf "$folder"
        mkdir -p "$folder"
        # In a condition the shell would pass over failures.
        local ended
        set +e
        (set -e; "$@" "$folder") >"$folder/log.txt" 2>&1
        ended=$?
        set -e
        [ $ended = 0 ] || { tail -n 20 "$folder/log.txt" >&2; refuse "making $folder failed; all it said is in its log.txt"; }
        touch "$folder/done"
    fi
    echo "$folder"
}
