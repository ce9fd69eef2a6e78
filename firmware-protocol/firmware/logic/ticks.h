// SPDX-License-Identifier: MIT
// Rig time: ticks of 0.5 us in 32 bits that wrap after 35.8 minutes. Differences are right across a wrap.
#pragma once
#include <stdint.h>

#include "generated_messages.h"

using Tick = uint32_t;
constexpr Tick kTicksPerMs = kTicksPerSecond / 1000;
