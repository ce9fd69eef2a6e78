// SPDX-License-Identifier: MIT
// Written by firmware-protocol/firmware/embed-descriptor.ts from descriptor.json. Do not edit.
#pragma once
#include <stdint.h>

#include "flash.h"

constexpr uint16_t kDescriptorLength = 3890;
constexpr uint16_t kDescriptorCrc = 0x833F;
const char kDescriptor[] IN_FLASH =
    "{\"board\":\"Bench Marshal reference board, ATmega328P\",\"variant\":\"2S\",\"firmware\":\"0.1.0\",\"referenc"
    "e\":{\"volts\":2.5,\"tolerance\":0.002,\"mux\":4},\"nominalSupplyV\":5,\"clockTolerance\":0.005,\"tickS\":5e-"
    "7,\"conversionTicks\":208,\"scansPerBlock\":8,\"taps\":[{\"id\":\"packVoltage\",\"channel\":0,\"quantity\":\"vo"
    "ltage\",\"unit\":\"V\",\"scale\":{\"kind\":\"linear\",\"zeroV\":0,\"unitsPerV\":2},\"low\":0,\"high\":10,\"cornerHz\""
    ":340,\"error\":{\"gain\":0.005,\"offset\":0.02,\"drift\":0.005,\"inlLsb\":1,\"noiseLsb\":0.6}},{\"id\":\"packCu"
    "rrentNarrow\",\"channel\":1,\"quantity\":\"current\",\"unit\":\"A\",\"scale\":{\"kind\":\"linear\",\"zeroV\":0.8,\"u"
    "nitsPerV\":2.5},\"low\":-2,\"high\":10,\"cornerHz\":340,\"error\":{\"gain\":0.015,\"shunt\":{\"name\":\"pack\",\"t"
    "olerance\":0.01},\"offset\":0.1,\"drift\":0.01,\"inlLsb\":1,\"noiseLsb\":0.6}},{\"id\":\"railVoltage\",\"chann"
    "el\":2,\"quantity\":\"voltage\",\"unit\":\"V\",\"scale\":{\"kind\":\"linear\",\"zeroV\":0,\"unitsPerV\":2},\"low\":0,"
    "\"high\":10,\"cornerHz\":3400,\"error\":{\"gain\":0.005,\"offset\":0.02,\"drift\":0.005,\"inlLsb\":1,\"noiseLsb"
    "\":0.6}},{\"id\":\"railCurrent\",\"channel\":3,\"quantity\":\"current\",\"unit\":\"A\",\"scale\":{\"kind\":\"linear\""
    ",\"zeroV\":0.5,\"unitsPerV\":2},\"low\":-1,\"high\":9,\"cornerHz\":3400,\"error\":{\"gain\":0.015,\"shunt\":{\"na"
    "me\":\"rail\",\"tolerance\":0.01},\"offset\":0.05,\"drift\":0.01,\"inlLsb\":1,\"noiseLsb\":0.6}},{\"id\":\"contr"
    "ollerVoltage\",\"channel\":4,\"quantity\":\"voltage\",\"unit\":\"V\",\"scale\":{\"kind\":\"linear\",\"zeroV\":0,\"un"
    "itsPerV\":2},\"low\":0,\"high\":10,\"cornerHz\":340,\"error\":{\"gain\":0.005,\"offset\":0.02,\"drift\":0.005,\""
    "inlLsb\":1,\"noiseLsb\":0.6}},{\"id\":\"packCurrentWide\",\"channel\":5,\"quantity\":\"current\",\"unit\":\"A\",\""
    "scale\":{\"kind\":\"linear\",\"zeroV\":0.75,\"unitsPerV\":40},\"low\":-30,\"high\":150,\"cornerHz\":340,\"error\""
    ":{\"gain\":0.015,\"shunt\":{\"name\":\"pack\",\"tolerance\":0.01},\"offset\":0.5,\"drift\":0.1,\"inlLsb\":1,\"noi"
    "seLsb\":0.6}},{\"id\":\"jointProbe\",\"channel\":6,\"quantity\":\"voltage\",\"unit\":\"V\",\"scale\":{\"kind\":\"lin"
    "ear\",\"zeroV\":2.5,\"unitsPerV\":0.02},\"low\":-0.05,\"high\":0.05,\"cornerHz\":3400,\"error\":{\"gain\":0.01,"
    "\"offset\":0.0005,\"drift\":0.0001,\"inlLsb\":1,\"noiseLsb\":0.6}},{\"id\":\"thermistorMotor\",\"channel\":7,\""
    "mux\":0,\"quantity\":\"temperature\",\"unit\":\"C\",\"scale\":{\"kind\":\"ntc\",\"pullUpOhm\":10000,\"r25Ohm\":1000"
    "0,\"betaK\":3950},\"low\":-20,\"high\":125,\"cornerHz\":100,\"error\":{\"gain\":0.01,\"offset\":0.5,\"drift\":0."
    "1,\"inlLsb\":1,\"noiseLsb\":0.6}},{\"id\":\"thermistorServo\",\"channel\":7,\"mux\":1,\"quantity\":\"temperatur"
    "e\",\"unit\":\"C\",\"scale\":{\"kind\":\"ntc\",\"pullUpOhm\":10000,\"r25Ohm\":10000,\"betaK\":3950},\"low\":-20,\"hi"
    "gh\":125,\"cornerHz\":100,\"error\":{\"gain\":0.01,\"offset\":0.5,\"drift\":0.1,\"inlLsb\":1,\"noiseLsb\":0.6}}"
    ",{\"id\":\"thermistorController\",\"channel\":7,\"mux\":2,\"quantity\":\"temperature\",\"unit\":\"C\",\"scale\":{\""
    "kind\":\"ntc\",\"pullUpOhm\":10000,\"r25Ohm\":10000,\"betaK\":3950},\"low\":-20,\"high\":125,\"cornerHz\":100,\""
    "error\":{\"gain\":0.01,\"offset\":0.5,\"drift\":0.1,\"inlLsb\":1,\"noiseLsb\":0.6}},{\"id\":\"thermistorAmbien"
    "t\",\"channel\":7,\"mux\":3,\"quantity\":\"temperature\",\"unit\":\"C\",\"scale\":{\"kind\":\"ntc\",\"pullUpOhm\":100"
    "00,\"r25Ohm\":10000,\"betaK\":3950},\"low\":-20,\"high\":125,\"cornerHz\":100,\"error\":{\"gain\":0.01,\"offset"
    "\":0.5,\"drift\":0.1,\"inlLsb\":1,\"noiseLsb\":0.6}},{\"id\":\"midCell\",\"channel\":7,\"mux\":5,\"quantity\":\"vo"
    "ltage\",\"unit\":\"V\",\"scale\":{\"kind\":\"linear\",\"zeroV\":0,\"unitsPerV\":1},\"low\":0,\"high\":5,\"cornerHz\":"
    "340,\"error\":{\"gain\":0.005,\"offset\":0.01,\"drift\":0.0025,\"inlLsb\":1,\"noiseLsb\":0.6}},{\"id\":\"polari"
    "ty\",\"channel\":7,\"mux\":6,\"quantity\":\"voltage\",\"unit\":\"V\",\"scale\":{\"kind\":\"linear\",\"zeroV\":2.5,\"un"
    "itsPerV\":6},\"low\":-15,\"high\":15,\"cornerHz\":340,\"error\":{\"gain\":0.01,\"offset\":0.06,\"drift\":0.015,"
    "\"inlLsb\":1,\"noiseLsb\":0.6}}],\"outputs\":[{\"id\":\"steering\",\"low\":800,\"high\":2200,\"unit\":\"us\"},{\"id"
    "\":\"throttle\",\"low\":800,\"high\":2200,\"unit\":\"us\"},{\"id\":\"load\",\"low\":0,\"high\":7,\"unit\":\"mask\"},{\"i"
    "d\":\"feed\",\"low\":0,\"high\":2,\"unit\":\"level\"},{\"id\":\"hallSupply\",\"low\":0,\"high\":1,\"unit\":\"switch\"},"
    "{\"id\":\"bleeder\",\"low\":0,\"high\":1,\"unit\":\"switch\"},{\"id\":\"packLoad\",\"low\":0,\"high\":1,\"unit\":\"swit"
    "ch\"}],\"loadsOhm\":[10,4.7,2.2],\"limitedFeedOhm\":10}";
static_assert(sizeof kDescriptor == kDescriptorLength + 1, "the descriptor has the wrong length");
