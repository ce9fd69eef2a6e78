#!/bin/bash
# SPDX-License-Identifier: MIT
# Holds private mount and network namespaces in which /dev/ttyS0 can be a pseudo-terminal that the system's
# device list calls a USB adapter (0403:6001), and in which Chromium's managed policy lets one page origin use it.
# Nothing outside the namespaces changes. Needs root, iproute2, python3 and a ttyS0 in /sys.
# Usage: private-serial.sh FOLDER ORIGIN, then commands on stdin: "plug PTY", "unplug"; answers "done".
set -euo pipefail
folder=$1 origin=$2 here=$(cd "$(dirname "$0")" && pwd)
mkdir -p "$folder/chromium/policies/managed" /etc/chromium
cat > "$folder/chromium/policies/managed/serial.json" <<E1
{"SerialAllowUsbDevicesForUrls": [{"devices": [{"vendor_id": 1027, "product_id": 24577}], "urls": ["$origin"]}]}
E1
export here folder
exec unshare -m -n --propagation private bash -ec '
  mount --bind "$folder/chromium" /etc/chromium
  mount -t tmpfs none /run
  mkdir -p /run/udev/data /run/lock
  : > /run/udev/control   # the device library listens for events only where the device daemon seems to run
  device=/run/udev/data/c$(cat /sys/class/tty/ttyS0/dev)
  ip link set lo up
  echo "ready $$"
  while read -r command path; do
    case $command in
      plug)
        mount --bind "$(realpath "$path")" /dev/ttyS0
        printf "I:1\nE:ID_BUS=usb\nE:ID_VENDOR_ID=0403\nE:ID_MODEL_ID=6001\nE:ID_MODEL_ENC=USB\\\\x20serial\nV:1\n" > "$device"
        python3 "$here/plug-event.py" add ;;
      unplug)
        rm -f "$device"
        python3 "$here/plug-event.py" remove
        umount -l /dev/ttyS0 ;;
    esac
    echo done
  done'
