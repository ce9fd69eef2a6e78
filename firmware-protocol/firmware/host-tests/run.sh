#!/bin/sh
# SPDX-License-Identifier: MIT
# Builds the logic for this host with sanitizers and runs its tests; the last line says how many passed and failed.
set -eu
cd "$(dirname "$0")/.."
command -v g++ >/dev/null || { echo "g++ is missing: apt-get install g++" >&2; exit 2; }
mkdir -p build/host
for source in logic/*.cpp host-tests/*.cpp; do
  object=build/host/$(basename "$source").o
  newest=$(ls -t "$source" logic/*.h host-tests/*.h | head -n 1)
  if [ -f "$object" ] && [ "$object" -nt "$newest" ]; then continue; fi
  g++ -std=gnu++14 -O1 -g -Wall -Wextra -Werror -Wno-address-of-packed-member -fsanitize=address,undefined \
    -fno-sanitize-recover=all -Ilogic -Ihost-tests -c "$source" -o "$object"
done
g++ -fsanitize=address,undefined build/host/*.o -o build/host/logic-tests
exec ./build/host/logic-tests ../vectors
