# SPDX-License-Identifier: MIT
"""Sends an "add" or "remove" event for ttyS0 to the listeners of this network namespace, in the layout that
libudev expects (a 40-byte head with magic 0xfeedcafe and a MurmurHash2 of the subsystem, then KEY=VALUE strings)."""
import os
import socket
import struct
import sys


def murmur2(data: bytes, seed: int = 0) -> int:
    m, mask = 0x5BD1E995, 0xFFFFFFFF
    h = (seed ^ len(data)) & mask
    whole = len(data) - len(data) % 4
    for i in range(0, whole, 4):
        k = struct.unpack_from("<I", data, i)[0] * m & mask
        h = (h * m & mask) ^ ((k ^ k >> 24) * m & mask)
    tail = data[whole:]
    if tail:
        h = (h ^ int.from_bytes(tail, "little")) * m & mask
    h = (h ^ h >> 13) * m & mask
    return h ^ h >> 15


device = os.path.realpath("/sys/class/tty/ttyS0")
with open(device + "/dev", encoding="ascii") as numbers:
    major, minor = numbers.read().strip().split(":")
properties = {
    "ACTION": sys.argv[1],
    "DEVPATH": device[4:],
    "SUBSYSTEM": "tty",
    "DEVNAME": "/dev/ttyS0",
    "MAJOR": major,
    "MINOR": minor,
    "SEQNUM": "1000",
    "USEC_INITIALIZED": "1",
    "ID_BUS": "usb",
    "ID_VENDOR_ID": "0403",
    "ID_MODEL_ID": "6001",
    "ID_MODEL_ENC": "USB\\x20serial",
}
body = b"".join(f"{key}={value}".encode() + b"\0" for key, value in properties.items())
head = struct.pack(
    "=8sIIIIIIII", b"libudev\0", socket.htonl(0xFEEDCAFE), 40, 40, len(body), socket.htonl(murmur2(b"tty")), 0, 0, 0
)
line = socket.socket(socket.AF_NETLINK, socket.SOCK_RAW, 15)
line.bind((0, 0))
line.sendto(head + body, (0, 2))
