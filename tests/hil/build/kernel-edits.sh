#!/usr/bin/env bash
# Changes the unpacked kernel source where the trials need it otherwise than it comes.
#   kernel-edits.sh TREE
set -euo pipefail
tree=$1

# edit FILE SED...: fails when nothing changed, as it would with another version of the source.
edit() {
    local file=$tree/$1
    shift
    cp "$file" "$file.before"
    sed -i "$@" "$file"
    ! cmp -s "$file" "$file.before" || { echo "nothing to change in $file: $*"; exit 1; }
    rm "$file.before"
}

# At the usual 100 Hz simulated edges shorter than 10 ms are lost.
edit arch/um/Kconfig '/^config HZ/,/^config/ s/default 100$/default 1000/'
# The host's registers are handed over whole; a processor with large vectors has four times those allowed for.
edit arch/x86/um/user-offsets.c 's/DEFINE_LONGS(HOST_FP_SIZE, 2696)/DEFINE_LONGS(HOST_FP_SIZE, 12288)/'

# Time travel skips whatever time nothing is done in. A disk that is being waited for is no such time: without this a
# write of a millisecond takes minutes as the guest sees it.
edit arch/um/drivers/ubd_kern.c \
    -e 's/^static int thread_fd = -1;/int ubd_in_flight;\n&/' \
    -e 's/^\tret = os_write_file(thread_fd, &io_req, sizeof(io_req));/\tubd_in_flight++;\n&/' \
    -e '/^static int ubd_submit_request/,/^}/ s/^\tif (ret != sizeof(io_req)) {/&\n\t\tubd_in_flight--;/' \
    -e 's/^\tblk_mq_end_request(io_req->req, io_req->error);/\tubd_in_flight--;\n&/'
edit arch/um/kernel/process.c \
    -e 's/^void um_idle_sleep(void)/extern int ubd_in_flight;\n&/' \
    -e '/^void um_idle_sleep/,/^}/ s/if (time_travel_mode != TT_MODE_OFF)/if (time_travel_mode != TT_MODE_OFF \&\& !ubd_in_flight)/'
# The timer of the host is set anew after a skip, to what is left from now on, so that it still takes the processor from
# a program that is busy; as it comes it is set to after the end of time.
edit arch/um/kernel/time.c 's/time_travel_timer_event\.time - next)/time_travel_timer_event.time - time_travel_time)/'
