#!/bin/sh
# SPDX-License-Identifier: MIT
# Builds the spine for the ATmega328P into bench-marshal.hex and prints what it takes of the chip.
# With --check it builds beside the tree and fails if the committed hex differs. Needs avr-gcc, avr-libc and sh only.
set -eu
cd "$(dirname "$0")"

flash_room=32768
ram_room=2048
# Static RAM beyond this leaves less than a quarter of the RAM free at the deepest stack measured (see README.md).
static_most=1300

command -v avr-g++ >/dev/null || { echo "avr-g++ is missing: apt-get install gcc-avr avr-libc binutils-avr" >&2; exit 2; }
out=build
if [ "${1:-}" = --check ]; then out=$(mktemp -d); trap 'rm -rf "$out"' EXIT; fi
mkdir -p "$out"

avr-g++ -mmcu=atmega328p -DF_CPU=16000000UL -Os -std=gnu++14 -Wall -Wextra -Werror -fno-exceptions -fno-rtti \
  -fno-threadsafe-statics -ffunction-sections -fdata-sections -flto -Wl,--gc-sections -Ilogic -Iavr \
  avr/*.cpp logic/*.cpp -o "$out/bench-marshal.elf"
avr-objcopy -O ihex -R .eeprom "$out/bench-marshal.elf" "$out/bench-marshal.hex"

set -- $(avr-size "$out/bench-marshal.elf" | tail -n 1) "${1:-}"
flash=$(($1 + $2))
static=$(($2 + $3))
echo "flash $flash of $flash_room bytes, static RAM $static of $ram_room bytes, $((ram_room - static)) left for the stack"
[ "$flash" -le "$flash_room" ] || { echo "flash is over budget" >&2; exit 1; }
[ "$static" -le "$static_most" ] || { echo "static RAM is over its budget of $static_most bytes" >&2; exit 1; }

if [ "$out" = build ]; then
  cp build/bench-marshal.hex bench-marshal.hex
elif ! cmp -s "$out/bench-marshal.hex" bench-marshal.hex; then
  echo "bench-marshal.hex is not what these sources give: run firmware-protocol/firmware/build.sh and commit it" >&2
  exit 1
else
  echo "bench-marshal.hex is what these sources give"
fi
