#!/bin/sh
# SPDX-License-Identifier: MIT
# Builds the spine for the ATmega328P into bench-marshal.hex, and for boards with wider dividers (pack and controller
# side to 20 V) into bench-marshal-4s.hex, and prints what they take of the chip.
# With --check it builds beside the tree and fails if a committed hex differs. Needs avr-gcc, avr-libc and sh only.
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

check=${1:-}
build() { # name, definitions
  avr-g++ -mmcu=atmega328p -DF_CPU=16000000UL $2 -Os -std=gnu++14 -Wall -Wextra -Werror -fno-exceptions -fno-rtti \
    -fno-threadsafe-statics -ffunction-sections -fdata-sections -flto -Wl,--gc-sections -Ilogic -Iavr \
    avr/*.cpp logic/*.cpp -o "$out/$1.elf"
  avr-objcopy -O ihex -R .eeprom "$out/$1.elf" "$out/$1.hex"
  measure "$1" $(avr-size "$out/$1.elf" | tail -n 1)
  keep "$1"
}
measure() { # name, then text, data, bss
  flash=$(($2 + $3))
  static=$(($3 + $4))
  echo "$1: flash $flash of $flash_room bytes, static RAM $static of $ram_room bytes, $((ram_room - static)) left for the stack"
  [ "$flash" -le "$flash_room" ] || { echo "flash is over budget" >&2; exit 1; }
  [ "$static" -le "$static_most" ] || { echo "static RAM is over its budget of $static_most bytes" >&2; exit 1; }
}
keep() { # name
  if [ "$check" != --check ]; then
    cp "$out/$1.hex" "$1.hex"
  elif ! cmp -s "$out/$1.hex" "$1.hex"; then
    echo "$1.hex is not what these sources give: run firmware-protocol/firmware/build.sh and commit it" >&2
    exit 1
  else
    echo "$1.hex is what these sources give"
  fi
}
build bench-marshal ""
build bench-marshal-4s -DVARIANT_4S
