#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
# Writes the golden vectors without any of the project's codecs: payloads by hand-written struct formats,
# CRC by the standard library (binascii.crc_hqx started at FFFF is CRC-16/IBM-3740), stuffing by splitting at zeros.
# It reads no table of the project. Run: python3 firmware-protocol/vectors/vectors.py
import binascii
import json
import pathlib
import struct

here = pathlib.Path(__file__).parent


def cobs(plain):
    # Right for runs below 254 bytes without a zero: what a frame of this protocol can hold.
    runs = plain.split(b"\0")
    assert all(len(run) < 254 for run in runs)
    return b"".join(bytes([len(run) + 1]) + run for run in runs)


def crc(payload):
    return struct.pack(">H", binascii.crc_hqx(payload, 0xFFFF))


def frame(payload):
    return cobs(payload + crc(payload)) + b"\0"


def text(data):
    return data.hex() if data else "-"


def message(name, fmt, fields, rest=None):
    """One row: the struct format is written by hand, little-endian, code byte first."""
    code, fmt = fmt
    flat = []
    for value in fields.values():
        flat += value if isinstance(value, list) else [value]
    payload = bytes([code]) + struct.pack("<" + fmt, *flat)
    told = {"type": name.split(":")[0], **fields}
    if rest:
        rest_name, cell, values = rest
        payload += struct.pack("<%d%s" % (len(values), cell), *values)
        told[rest_name] = values
    return (name, json.dumps(told, separators=(",", ":")), payload)


samples = [
    value
    for scan in range(8)
    for value in (1556 + scan, 491 - scan, 1229, 61 + 2 * scan, 512 if scan == 4 else 400 + scan)
]
zeros = [0] * 40
block = "IIBBBBBBBBHHHBBBHI40H"


def scan_block(**other):
    fields = dict(
        scan=123456, tick=231109632, fast=[0, 1, 2, 3], slow=7, slowFirst=0, state=1, trip=0,
        outputs=0x0B30, steering=3000, throttle=3160, edgesB=200, edgesC=199, badHall=0,
        edgesA=65535, lastEdge=231124000, samples=samples,
    )
    fields.update(other)
    return fields


messages = [
    message("hello", (0x01, "BBB"), dict(id=1, major=1, minor=0)),
    message("hello:newer-major", (0x01, "BBB"), dict(id=1, major=2, minor=0)),
    message("readDescriptor", (0x02, "BH"), dict(id=2, offset=192)),
    message("stream", (0x03, "BB"), dict(id=3, on=1)),
    message("scanList", (0x04, "B4BB"), dict(id=4, fast=[0, 1, 2, 3], slow=7)),
    message("burst:load-step", (0x05, "BBIBHHH"),
            dict(id=5, channel=2, samples=9600, action=1, actionArg=7, actionMs=200, atSample=2000)),
    message("burst:without-end", (0x05, "BBIBHHH"),
            dict(id=6, channel=3, samples=0, action=0, actionArg=0, actionMs=0, atSample=0)),
    message("goLive", (0x06, "BI"), dict(id=7, session=0xC0FFEE00)),
    message("beat", (0x07, "IHI"), dict(session=0xC0FFEE00, counter=513, lastScan=123455)),
    message("beat:wrap", (0x07, "IHI"), dict(session=0xFFFFFFFF, counter=65535, lastScan=0xFFFFFFFF)),
    message("safeAll", (0x08, "B"), dict(id=8)),
    message("drive", (0x09, "BBHHH"), dict(id=9, output=1, width=3160, rampMs=300, holdMs=1000)),
    message("load", (0x0A, "BBH"), dict(id=10, mask=5, ms=400)),
    message("feed", (0x0B, "BB"), dict(id=11, level=1)),
    message("limit", (0x0C, "BBHH"), dict(id=12, which=1, level=255, ms=40)),
    message("driveLimits", (0x0D, "BBHHH"), dict(id=13, output=1, low=2000, rest=3000, high=4000)),
    message("frame", (0x0E, "BHB"), dict(id=14, period=40000, digital=0)),
    message("clearTrip", (0x0F, "B"), dict(id=15)),
    message("readCounters", (0x10, "B"), dict(id=16)),
    message("readState", (0x11, "B"), dict(id=17)),
    message("readStore", (0x12, "BH"), dict(id=18, offset=64)),
    message("writeStore", (0x13, "BH"), dict(id=19, offset=32), ("bytes", "B", list(range(32)))),
    message("writeStore:nothing", (0x13, "BH"), dict(id=19, offset=32), ("bytes", "B", [])),
    message("commitStore", (0x14, "BHH"), dict(id=20, length=9, crc=0x29B1)),
    message("switch", (0x15, "BBBH"), dict(id=21, which=0, on=1, ms=0)),
    message("capture", (0x16, "BB"), dict(id=22, source=0)),
    message("failSafeTest", (0x17, "BH"), dict(id=23, ms=1500)),
    message("watch", (0x18, "BB"), dict(id=24, thermistors=9)),
    message("ack", (0x80, "BB"), dict(id=9, command=9)),
    message("nak:not-live", (0x81, "BBBH"), dict(id=9, command=9, reason=5, detail=0)),
    message("nak:newer-major", (0x81, "BBBH"), dict(id=1, command=1, reason=3, detail=1)),
    message("nak:unknown-command", (0x81, "BBBH"), dict(id=33, command=0x7F, reason=1, detail=0)),
    message("helloBack", (0x82, "BBB3BBHHI"),
            dict(id=1, major=1, minor=0, firmware=[0, 1, 0], resetCause=2, descriptorLength=2711,
                 descriptorCrc=0xA55A, tick=2400000)),
    message("descriptorChunk", (0x83, "BH"), dict(id=2, offset=0), ("bytes", "B", list(b'{"board":"'))),
    message("scanBlock", (0x84, block), scan_block(), ("edges", "H", [9000, 9012, 65535])),
    message("scanBlock:no-edges", (0x84, block),
            scan_block(scan=0, tick=0, outputs=0, steering=0, throttle=0, edgesA=0, edgesB=0, edgesC=0,
                       state=0, lastEdge=0, samples=zeros), ("edges", "H", [])),
    message("scanBlock:tick-wrap", (0x84, block),
            scan_block(scan=2294370, tick=0xFFFFFF00, state=3, trip=3, samples=[2046] * 40, lastEdge=255),
            ("edges", "H", [258] * 32)),
    message("burstBlock", (0x85, "IIBH"), dict(first=1968, tick=5000000, channel=2, outputs=0x0337),
            ("samples", "H", [600 + n for n in range(48)])),
    message("burstBlock:short", (0x85, "IIBH"), dict(first=9599, tick=6587000, channel=2, outputs=0),
            ("samples", "H", [1023])),
    message("beatBack", (0x86, "HIHB"), dict(counter=513, tick=231124512, worstGap=22, state=1)),
    message("counters", (0x87, "BHHHHHHHH"),
            dict(id=16, badFrames=1, rxLost=0, blocksDropped=0, edgesDropped=3, noisyLine=0, worstGap=22,
                 worstLoop=900, stackFree=640)),
    message("state", (0x88, "BBBBHIHH"),
            dict(id=17, state=3, trip=4, tripTap=5, tripRaw=260, tripTick=231120000, missing=0x000C,
                 throttleCap=300)),
    message("event", (0x89, "BII"), dict(kind=4, tick=231200000, value=180)),
    message("storeChunk", (0x8A, "BHH"), dict(id=18, offset=0, length=12),
            ("bytes", "B", list(b'{"serial":""'))),
    message("storeChunk:blank", (0x8A, "BHH"), dict(id=18, offset=0, length=0), ("bytes", "B", [])),
    # The longest payload: 240 bytes, none of them zero after the head; and one full of zeros.
    message("descriptorChunk:longest", (0x83, "BH"), dict(id=255, offset=0x0101),
            ("bytes", "B", [1 + n % 255 for n in range(236)])),
    message("descriptorChunk:zeros", (0x83, "BH"), dict(id=0, offset=0), ("bytes", "B", [0] * 236)),
]

ok = dict((name, payload) for name, _, payload in messages)
drive, ack = ok["drive"], ok["ack"]


def flipped(data, at, mask):
    return data[:at] + bytes([data[at] ^ mask]) + data[at + 1:]


def good(payload):
    return "frame:" + payload.hex()


# Lines of bytes and what a decoder must make of them, in order.
streams = [
    ("delimiters only", b"\0\0\0", []),
    ("two frames", frame(drive) + frame(ack), [good(drive), good(ack)]),
    ("zeros between frames mean nothing", b"\0" + frame(drive) + b"\0\0" + frame(ack), [good(drive), good(ack)]),
    ("a bit flipped in the payload", flipped(frame(drive), 1, 0x10) + frame(ack), ["fault:crc", good(ack)]),
    ("a bit flipped in the CRC", flipped(frame(drive), len(frame(drive)) - 2, 0x01) + frame(ack),
     ["fault:crc", good(ack)]),
    ("CRC bytes swapped", cobs(ack + crc(ack)[::-1]) + b"\0" + frame(ack), ["fault:crc", good(ack)]),
    ("CRC left out", cobs(drive) + b"\0" + frame(ack), ["fault:crc", good(ack)]),
    ("code byte points beyond the end", b"\x09\x11\x22\x33\0" + frame(ack), ["fault:cobs", good(ack)]),
    ("cut short, then a new frame", frame(drive)[:5] + b"\0" + frame(ack), ["fault:cobs", good(ack)]),
    ("delimiter lost: two frames run together", frame(drive)[:-1] + frame(ack) + frame(ack),
     ["fault:crc", good(ack)]),
    ("one byte", b"\x01\0" + frame(ack), ["fault:empty", good(ack)]),
    ("a CRC and no payload", cobs(b"\xff\xff") + b"\0" + frame(ack), ["fault:empty", good(ack)]),
    ("300 bytes without a zero", b"\x55" * 300 + b"\0" + frame(ack), ["fault:tooLong", good(ack)]),
    ("5000 bytes without a zero", b"\xaa" * 5000 + b"\0" + frame(ack), ["fault:tooLong", good(ack)]),
    ("no delimiter yet", frame(drive)[:-1], []),
]

# Payloads whose frame is sound and whose content is not a message.
odd = [
    ("no such command", bytes([0x7F, 33]), "unknownMessage"),
    ("no such report", bytes([0xF0, 1, 2, 3]), "unknownMessage"),
    ("code zero", bytes([0]), "unknownMessage"),
    ("a command without its id", bytes([0x08]), "wrongLength:safeAll"),
    ("drive one byte short", drive[:-1], "wrongLength:drive"),
    ("drive one byte long", drive + b"\0", "wrongLength:drive"),
    ("scan list with three channels", ok["scanList"][:-2], "wrongLength:scanList"),
    ("scan block with half an edge", ok["scanBlock"] + b"\1", "wrongLength:scanBlock"),
    ("scan block one sample short", ok["scanBlock:no-edges"][:-2], "wrongLength:scanBlock"),
    ("burst block with half a sample", ok["burstBlock"][:-1], "wrongLength:burstBlock"),
]


def write(name, head, rows):
    body = "".join("\t".join(row) + "\n" for row in rows)
    (here / name).write_text("# " + head + "\n" + body)


write("messages.txt", "name\tmessage\tpayload\tframe",
      [(name, told, payload.hex(), frame(payload).hex()) for name, told, payload in messages])
write("streams.txt", "name\tbytes\tresults",
      [(name, text(data), " ".join(results) or "-") for name, data, results in streams])
write("odd-payloads.txt", "name\tpayload\tframe\tfault",
      [(name, payload.hex(), frame(payload).hex(), fault) for name, payload, fault in odd])
