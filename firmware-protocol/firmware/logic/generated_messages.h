// SPDX-License-Identifier: MIT
// Written by firmware-protocol/generate.ts from messages.tsv, codes.tsv and constants.tsv. Do not edit.
// A payload is one code byte, then the packed struct of that message, then its rest field if it has one.
#pragma once
#include <stdint.h>

constexpr uint8_t kProtocolMajor = 1;  // refused when the rig's is older
constexpr uint8_t kProtocolMinor = 0;  // grows when messages are added
constexpr uint8_t kMaxPayloadBytes = 240;  // code and fields, without CRC [byte]
constexpr uint8_t kMaxFrameBytes = 244;  // payload, CRC, COBS overhead, delimiter [byte]
constexpr uint32_t kBaud = 500000UL;  // 8 data bits, no parity, 1 stop bit [baud]
constexpr uint32_t kBaudSlow = 250000UL;  // fall-back; bursts are refused there [baud]
constexpr uint32_t kTicksPerSecond = 2000000UL;  // rig time, nominal [tick]
constexpr uint8_t kConversionTicks = 208;  // one conversion of the converter [tick]
constexpr uint16_t kScanTicks = 1872;  // nine conversions [tick]
constexpr uint8_t kScansPerBlock = 8;  // [scan]
constexpr uint8_t kFastPerScan = 4;  // [channel]
constexpr uint8_t kSamplesPerScan = 5;  // four sums of two, then the slow one [value]
constexpr uint8_t kBurstBlockSamples = 48;  // most samples in a burst block [sample]
constexpr uint8_t kWriteStoreBytes = 32;  // most bytes in one writeStore [byte]
constexpr uint8_t kMultiplexerChannel = 7;  // [channel]
constexpr uint8_t kBeatMs = 20;  // distance between beats [ms]
constexpr uint8_t kHostLostMs = 100;  // silence while live, after which the rig goes safe [ms]
constexpr uint16_t kDriveMaxMs = 1000;  // longest hold of a drive [ms]
constexpr uint16_t kLoadMaxMs = 2000;  // longest time of one load command [ms]
constexpr uint16_t kPulseMinTicks = 1600;  // shortest pulse ever, 800 us [tick]
constexpr uint16_t kPulseMaxTicks = 4400;  // longest pulse ever, 2200 us [tick]
constexpr uint16_t kFramePeriodMinTicks = 33333;  // shortest servo frame unless declared digital, 60 Hz [tick]
constexpr uint16_t kFeedOffRpm = 1000;  // the feed opens below this speed while ending [rpm]
constexpr uint16_t kFeedOffMs = 1500;  // or after this time [ms]
constexpr uint16_t kPulsesStopMs = 2000;  // pulses run at least this long after the safe order began [ms]
constexpr uint16_t kNeutralMs = 2500;  // neutral with the rail up before the first throttle [ms]
constexpr uint16_t kFirstPowerMs = 1000;  // the limited feed must fill the capacitor within this [ms]
constexpr uint8_t kFirstPowerPerCent = 95;  // of the pack voltage [per cent]
constexpr uint8_t kFirstStepPerCent = 2;  // of the span on that side, largest first throttle step [per cent]
constexpr uint16_t kThrottleCapPerMille = 300;  // until the fail-safe test is passed [per mille]
constexpr uint16_t kFailSafeMaxMs = 500;  // the motor must begin to slow within this [ms]

constexpr uint8_t kMsgHello = 0x01;
constexpr uint8_t kMsgReadDescriptor = 0x02;
constexpr uint8_t kMsgStream = 0x03;
constexpr uint8_t kMsgScanList = 0x04;
constexpr uint8_t kMsgBurst = 0x05;
constexpr uint8_t kMsgGoLive = 0x06;
constexpr uint8_t kMsgBeat = 0x07;
constexpr uint8_t kMsgSafeAll = 0x08;
constexpr uint8_t kMsgDrive = 0x09;
constexpr uint8_t kMsgLoad = 0x0A;
constexpr uint8_t kMsgFeed = 0x0B;
constexpr uint8_t kMsgLimit = 0x0C;
constexpr uint8_t kMsgDriveLimits = 0x0D;
constexpr uint8_t kMsgFrame = 0x0E;
constexpr uint8_t kMsgClearTrip = 0x0F;
constexpr uint8_t kMsgReadCounters = 0x10;
constexpr uint8_t kMsgReadState = 0x11;
constexpr uint8_t kMsgReadStore = 0x12;
constexpr uint8_t kMsgWriteStore = 0x13;
constexpr uint8_t kMsgCommitStore = 0x14;
constexpr uint8_t kMsgSwitch = 0x15;
constexpr uint8_t kMsgCapture = 0x16;
constexpr uint8_t kMsgFailSafeTest = 0x17;
constexpr uint8_t kMsgWatch = 0x18;
constexpr uint8_t kMsgAck = 0x80;
constexpr uint8_t kMsgNak = 0x81;
constexpr uint8_t kMsgHelloBack = 0x82;
constexpr uint8_t kMsgDescriptorChunk = 0x83;
constexpr uint8_t kMsgScanBlock = 0x84;
constexpr uint8_t kMsgBurstBlock = 0x85;
constexpr uint8_t kMsgBeatBack = 0x86;
constexpr uint8_t kMsgCounters = 0x87;
constexpr uint8_t kMsgState = 0x88;
constexpr uint8_t kMsgEvent = 0x89;
constexpr uint8_t kMsgStoreChunk = 0x8A;

constexpr uint8_t kStateSafe = 0;  // Nothing is live.
constexpr uint8_t kStateLive = 1;  // The rig is live.
constexpr uint8_t kStateEnding = 2;  // The rig is going back to safe.
constexpr uint8_t kStateTripped = 3;  // The rig tripped and is safe.

constexpr uint8_t kFeedLevelOff = 0;  // feed off
constexpr uint8_t kFeedLevelLimited = 1;  // feed through 10 ohm
constexpr uint8_t kFeedLevelFull = 2;  // feed full

constexpr uint8_t kOutputSteering = 0;  // steering
constexpr uint8_t kOutputThrottle = 1;  // throttle

constexpr uint8_t kSwitchHallSupply = 0;  // 5 V for the sensor board
constexpr uint8_t kSwitchBleeder = 1;  // bleeder
constexpr uint8_t kSwitchPackLoad = 2;  // pack load

constexpr uint8_t kCaptureSourceHallA = 0;  // Hall line A
constexpr uint8_t kCaptureSourceReceiver1 = 1;  // receiver channel 1
constexpr uint8_t kCaptureSourceReceiver2 = 2;  // receiver channel 2
constexpr uint8_t kCaptureSourceNone = 3;  // nothing

constexpr uint8_t kActionNone = 0;  // no action
constexpr uint8_t kActionLoad = 1;  // load bank
constexpr uint8_t kActionSteering = 2;  // steering pulse
constexpr uint8_t kActionThrottle = 3;  // throttle pulse

constexpr uint8_t kOutputBitLoad1 = 0;  // load 10 ohm
constexpr uint8_t kOutputBitLoad2 = 1;  // load 4.7 ohm
constexpr uint8_t kOutputBitLoad3 = 2;  // load 2.2 ohm
constexpr uint8_t kOutputBitFeedLimited = 3;  // feed limited
constexpr uint8_t kOutputBitFeedFull = 4;  // feed full
constexpr uint8_t kOutputBitHallSupply = 5;  // Hall supply
constexpr uint8_t kOutputBitBleeder = 6;  // bleeder
constexpr uint8_t kOutputBitPackLoad = 7;  // pack load
constexpr uint8_t kOutputBitSteeringPulses = 8;  // steering pulses run
constexpr uint8_t kOutputBitThrottlePulses = 9;  // throttle pulses run
constexpr uint8_t kOutputBitStopOpen = 10;  // stop line open
constexpr uint8_t kOutputBitStopSeen = 11;  // stop line was pressed in this session
constexpr uint8_t kOutputBitAskStop = 12;  // the rig asks for the stop to be pressed once (its light is on)

constexpr uint8_t kLimitPackNarrowSlow = 0;  // pack current, narrow tap
constexpr uint8_t kLimitPackWideSlow = 1;  // pack current, wide tap
constexpr uint8_t kLimitPackWideFast = 2;  // pack current, short circuit
constexpr uint8_t kLimitRailCurrentSlow = 3;  // rail current
constexpr uint8_t kLimitPackUnder = 4;  // pack voltage too low
constexpr uint8_t kLimitOverSpeed = 5;  // motor speed
constexpr uint8_t kLimitThermistor1 = 6;  // thermistor 1
constexpr uint8_t kLimitThermistor2 = 7;  // thermistor 2
constexpr uint8_t kLimitThermistor3 = 8;  // thermistor 3
constexpr uint8_t kLimitThermistor4 = 9;  // thermistor 4

constexpr uint8_t kTripNone = 0;  // no trip
constexpr uint8_t kTripHostLost = 1;  // The host fell silent.
constexpr uint8_t kTripStopLine = 2;  // The stop line opened.
constexpr uint8_t kTripShortCircuit = 3;  // The pack current went beyond the short-circuit limit.
constexpr uint8_t kTripPackCurrent = 4;  // The pack current stayed beyond its limit.
constexpr uint8_t kTripRailCurrent = 5;  // The rail current stayed beyond its limit.
constexpr uint8_t kTripClipped = 6;  // A current tap was beyond its range for too long.
constexpr uint8_t kTripOverTemperature = 7;  // A thermistor read too hot.
constexpr uint8_t kTripThermistorOpen = 8;  // A thermistor is open.
constexpr uint8_t kTripThermistorShort = 9;  // A thermistor is shorted.
constexpr uint8_t kTripThermistorIdle = 10;  // A thermistor saw no heat while power flowed.
constexpr uint8_t kTripUnderVoltage = 11;  // The pack voltage fell too low.
constexpr uint8_t kTripOverSpeed = 12;  // The motor went beyond its speed limit.
constexpr uint8_t kTripNoHall = 13;  // No Hall edge came although the throttle was open.
constexpr uint8_t kTripNoisyLine = 14;  // A line changed faster than any motor can.
constexpr uint8_t kTripSupply = 15;  // The rig's own 5 V fell below 4.5 V.
constexpr uint8_t kTripWatchdog = 16;  // The rig's processor hung and was reset.
constexpr uint8_t kTripBrownOut = 17;  // The rig's supply broke down and it was reset.
constexpr uint8_t kTripStuckFeed = 18;  // The feed stayed on although it was switched off.
constexpr uint8_t kTripConverter = 19;  // The converter stopped.

constexpr uint8_t kResetCauseUnknown = 0;  // unknown
constexpr uint8_t kResetCausePowerOn = 1;  // power on
constexpr uint8_t kResetCauseExternal = 2;  // reset line (port opened)
constexpr uint8_t kResetCauseBrownOut = 3;  // brown-out
constexpr uint8_t kResetCauseWatchdog = 4;  // watchdog

constexpr uint8_t kReasonUnknownCommand = 1;  // The rig does not know this command.
constexpr uint8_t kReasonBadLength = 2;  // The command has the wrong length.
constexpr uint8_t kReasonNewerMajor = 3;  // The rig speaks an older major version of the protocol.
constexpr uint8_t kReasonOutOfRange = 4;  // A value is out of range.
constexpr uint8_t kReasonNotLive = 5;  // The rig is not live.
constexpr uint8_t kReasonTripped = 6;  // The rig is tripped: clear the trip first.
constexpr uint8_t kReasonStopOpen = 7;  // The stop line is open.
constexpr uint8_t kReasonStopNotSeen = 8;  // The stop has not been pressed once in this session.
constexpr uint8_t kReasonNotStreaming = 9;  // The stream is off.
constexpr uint8_t kReasonTapNotScanned = 10;  // A tap that this needs is not in the scan list.
constexpr uint8_t kReasonFeedOff = 11;  // The feed is not on.
constexpr uint8_t kReasonNoFirstPower = 12;  // The limited feed has not filled the controller's capacitor in this session.
constexpr uint8_t kReasonPolarity = 13;  // The pack is reversed or missing.
constexpr uint8_t kReasonRailDown = 14;  // The receiver rail is not up.
constexpr uint8_t kReasonNeutralTooShort = 15;  // Neutral has not run long enough.
constexpr uint8_t kReasonLimitsNotSet = 16;  // The pulse widths of this output are not set.
constexpr uint8_t kReasonFirstStep = 17;  // The first throttle step is too large.
constexpr uint8_t kReasonThrottleCap = 18;  // The throttle is capped until the fail-safe test is passed.
constexpr uint8_t kReasonLoadHot = 19;  // The load bank has to cool down.
constexpr uint8_t kReasonBusy = 20;  // The rig is busy with another command.
constexpr uint8_t kReasonBaudTooSlow = 21;  // The link is too slow for a burst.
constexpr uint8_t kReasonBadCrc = 22;  // The bytes do not match their CRC.
constexpr uint8_t kReasonWrongSession = 23;  // Another session is live.
constexpr uint8_t kReasonNotStill = 24;  // The motor may still be turning.
constexpr uint8_t kReasonSupplyLow = 25;  // The rig's own supply is too low.
constexpr uint8_t kReasonNotTurning = 26;  // The motor is not turning.

constexpr uint8_t kConditionStreamOff = 0;  // the stream is off
constexpr uint8_t kConditionStopOpen = 1;  // the stop line is open
constexpr uint8_t kConditionStopNotSeen = 2;  // the stop has not been pressed in this session
constexpr uint8_t kConditionTripLatched = 3;  // a trip is latched
constexpr uint8_t kConditionSupplyLow = 4;  // the rig's own supply is low or not measured
constexpr uint8_t kConditionConverterDead = 5;  // the converter does not run

constexpr uint8_t kEventAction = 1;  // the marked action fired; value is the sample index
constexpr uint8_t kEventLoadOff = 2;  // the load bank switched off
constexpr uint8_t kEventDriveEnded = 3;  // a drive ended by itself; value is the output
constexpr uint8_t kEventFailSafe = 4;  // result of the fail-safe test; value is ms until the speed fell, 65535 when it did not
constexpr uint8_t kEventFeed = 5;  // the feed changed; value is the level
constexpr uint8_t kEventTrip = 6;  // a trip; value is the code
constexpr uint8_t kEventRestarted = 7;  // the rig restarted; value is the reset cause
constexpr uint8_t kEventFirstPower = 8;  // the limited feed filled the capacitor; value is ms

struct MsgHello {
  uint8_t id;  // command id, chosen by the host, echoed in the answer
  uint8_t major;  // protocol major version of the host
  uint8_t minor;  // protocol minor version of the host
} __attribute__((packed));
static_assert(sizeof(MsgHello) == 3, "MsgHello has the wrong size");

struct MsgReadDescriptor {
  uint8_t id;  // answered by descriptorChunk
  uint16_t offset;  // first byte wanted
} __attribute__((packed));
static_assert(sizeof(MsgReadDescriptor) == 3, "MsgReadDescriptor has the wrong size");

struct MsgStream {
  uint8_t id;
  uint8_t on;  // 1 starts scan blocks, 0 stops them
} __attribute__((packed));
static_assert(sizeof(MsgStream) == 2, "MsgStream has the wrong size");

struct MsgScanList {
  uint8_t id;
  uint8_t fast[4];  // the four channels converted twice a scan, order a b b a c d d c
  uint8_t slow;  // the ninth conversion; 7 steps the multiplexer through its eight inputs, one a scan
} __attribute__((packed));
static_assert(sizeof(MsgScanList) == 6, "MsgScanList has the wrong size");

struct MsgBurst {
  uint8_t id;  // every conversion of one channel, until samples are sent (0: until stream or scanList)
  uint8_t channel;
  uint32_t samples;
  uint8_t action;  // action fired by the rig at a known sample; see group action
  uint16_t actionArg;  // load mask, or pulse width in ticks
  uint16_t actionMs;  // how long the action lasts
  uint16_t atSample;  // sample index at which the action fires
} __attribute__((packed));
static_assert(sizeof(MsgBurst) == 13, "MsgBurst has the wrong size");

struct MsgGoLive {
  uint8_t id;
  uint32_t session;  // chosen by the host at random; beats must carry it
} __attribute__((packed));
static_assert(sizeof(MsgGoLive) == 5, "MsgGoLive has the wrong size");

struct MsgBeat {
  uint32_t session;  // answered by beatBack
  uint16_t counter;
  uint32_t lastScan;  // last scan number the host has seen
} __attribute__((packed));
static_assert(sizeof(MsgBeat) == 10, "MsgBeat has the wrong size");

struct MsgSafeAll {
  uint8_t id;  // from any state: the safe order of PROTOCOL.md
} __attribute__((packed));
static_assert(sizeof(MsgSafeAll) == 1, "MsgSafeAll has the wrong size");

struct MsgDrive {
  uint8_t id;
  uint8_t output;  // see group output
  uint16_t width;  // pulse width wanted
  uint16_t rampMs;  // time to get there in equal steps
  uint16_t holdMs;  // the drive ends by itself after this, at most 1000
} __attribute__((packed));
static_assert(sizeof(MsgDrive) == 8, "MsgDrive has the wrong size");

struct MsgLoad {
  uint8_t id;
  uint8_t mask;  // bit 0 to 2: resistors of the load bank
  uint16_t ms;  // switched off by itself after this, at most 2000
} __attribute__((packed));
static_assert(sizeof(MsgLoad) == 4, "MsgLoad has the wrong size");

struct MsgFeed {
  uint8_t id;
  uint8_t level;  // see group feedLevel
} __attribute__((packed));
static_assert(sizeof(MsgFeed) == 2, "MsgFeed has the wrong size");

struct MsgLimit {
  uint8_t id;
  uint8_t which;  // see group limit
  uint16_t level;  // raw code of one conversion; for overSpeed ticks between two captured edges
  uint16_t ms;  // how long beyond it before the trip
} __attribute__((packed));
static_assert(sizeof(MsgLimit) == 6, "MsgLimit has the wrong size");

struct MsgDriveLimits {
  uint8_t id;
  uint8_t output;
  uint16_t low;  // shortest pulse allowed in this session
  uint16_t rest;  // neutral of the throttle, free position of the steering
  uint16_t high;  // longest pulse allowed in this session
} __attribute__((packed));
static_assert(sizeof(MsgDriveLimits) == 8, "MsgDriveLimits has the wrong size");

struct MsgFrame {
  uint8_t id;
  uint16_t period;  // servo frame period; above 60 Hz only with digital = 1
  uint8_t digital;  // 1: the person declared the servo digital
} __attribute__((packed));
static_assert(sizeof(MsgFrame) == 4, "MsgFrame has the wrong size");

struct MsgClearTrip {
  uint8_t id;
} __attribute__((packed));
static_assert(sizeof(MsgClearTrip) == 1, "MsgClearTrip has the wrong size");

struct MsgReadCounters {
  uint8_t id;  // answered by counters
} __attribute__((packed));
static_assert(sizeof(MsgReadCounters) == 1, "MsgReadCounters has the wrong size");

struct MsgReadState {
  uint8_t id;  // answered by state
} __attribute__((packed));
static_assert(sizeof(MsgReadState) == 1, "MsgReadState has the wrong size");

struct MsgReadStore {
  uint8_t id;  // answered by storeChunk
  uint16_t offset;
} __attribute__((packed));
static_assert(sizeof(MsgReadStore) == 3, "MsgReadStore has the wrong size");

struct MsgWriteStore {
  uint8_t id;  // into the spare half of the store
  uint16_t offset;
  // then uint8_t bytes[] to the end of the payload
} __attribute__((packed));
static_assert(sizeof(MsgWriteStore) == 3, "MsgWriteStore has the wrong size");

struct MsgCommitStore {
  uint8_t id;  // the spare half becomes the store if its CRC agrees
  uint16_t length;
  uint16_t crc;
} __attribute__((packed));
static_assert(sizeof(MsgCommitStore) == 5, "MsgCommitStore has the wrong size");

struct MsgSwitch {
  uint8_t id;
  uint8_t which;  // see group switch
  uint8_t on;
  uint16_t ms;  // switched off by itself after this; 0: until told
} __attribute__((packed));
static_assert(sizeof(MsgSwitch) == 5, "MsgSwitch has the wrong size");

struct MsgCapture {
  uint8_t id;
  uint8_t source;  // see group captureSource
} __attribute__((packed));
static_assert(sizeof(MsgCapture) == 2, "MsgCapture has the wrong size");

struct MsgFailSafeTest {
  uint8_t id;  // throttle pulses stop on purpose until the speed falls, at most this long
  uint16_t ms;
} __attribute__((packed));
static_assert(sizeof(MsgFailSafeTest) == 3, "MsgFailSafeTest has the wrong size");

struct MsgWatch {
  uint8_t id;  // thermistors whose open, short or over-temperature must trip
  uint8_t thermistors;  // bit 0 to 3
} __attribute__((packed));
static_assert(sizeof(MsgWatch) == 2, "MsgWatch has the wrong size");

struct MsgAck {
  uint8_t id;
  uint8_t command;  // code of the command answered
} __attribute__((packed));
static_assert(sizeof(MsgAck) == 2, "MsgAck has the wrong size");

struct MsgNak {
  uint8_t id;
  uint8_t command;
  uint8_t reason;  // see group reason
  uint16_t detail;  // what the reason says of it
} __attribute__((packed));
static_assert(sizeof(MsgNak) == 5, "MsgNak has the wrong size");

struct MsgHelloBack {
  uint8_t id;
  uint8_t major;
  uint8_t minor;
  uint8_t firmware[3];  // firmware version
  uint8_t resetCause;  // see group resetCause
  uint16_t descriptorLength;
  uint16_t descriptorCrc;
  uint32_t tick;  // rig time now
} __attribute__((packed));
static_assert(sizeof(MsgHelloBack) == 15, "MsgHelloBack has the wrong size");

struct MsgDescriptorChunk {
  uint8_t id;
  uint16_t offset;
  // then uint8_t bytes[] to the end of the payload
} __attribute__((packed));
static_assert(sizeof(MsgDescriptorChunk) == 3, "MsgDescriptorChunk has the wrong size");

struct MsgScanBlock {
  uint32_t scan;  // number of the block's first scan
  uint32_t tick;  // rig time of the first conversion of that scan
  uint8_t fast[4];  // what was scanned
  uint8_t slow;
  uint8_t slowFirst;  // multiplexer input of the first slow conversion
  uint8_t state;  // see group state
  uint8_t trip;  // see group trip
  uint16_t outputs;  // bits, see group outputBit
  uint16_t steering;  // pulse width now, 0 while no pulses
  uint16_t throttle;  // pulse width now, 0 while no pulses
  uint8_t edgesB;  // running count of edges of Hall line B
  uint8_t edgesC;  // running count of edges of Hall line C
  uint8_t badHall;  // running count of invalid Hall states
  uint16_t edgesA;  // running count of edges at the capture input
  uint32_t lastEdge;  // rig time of the last captured edge
  uint16_t samples[40];  // 8 scans of 5: the sums of two for a b c d, then the slow one
  // then uint16_t edges[] to the end of the payload
} __attribute__((packed));
static_assert(sizeof(MsgScanBlock) == 111, "MsgScanBlock has the wrong size");

struct MsgBurstBlock {
  uint32_t first;  // index of the first sample
  uint32_t tick;  // rig time at which that conversion started
  uint8_t channel;
  uint16_t outputs;
  // then uint16_t samples[] to the end of the payload
} __attribute__((packed));
static_assert(sizeof(MsgBurstBlock) == 11, "MsgBurstBlock has the wrong size");

struct MsgBeatBack {
  uint16_t counter;
  uint32_t tick;
  uint16_t worstGap;  // longest time between two beats since live
  uint8_t state;
} __attribute__((packed));
static_assert(sizeof(MsgBeatBack) == 9, "MsgBeatBack has the wrong size");

struct MsgCounters {
  uint8_t id;
  uint16_t badFrames;  // frames dropped for CRC, COBS or length
  uint16_t rxLost;  // bytes lost on the way in
  uint16_t blocksDropped;  // blocks that found no room
  uint16_t edgesDropped;
  uint16_t noisyLine;  // times the storm guard masked a line
  uint16_t worstGap;
  uint16_t worstLoop;  // longest turn of the main loop
  uint16_t stackFree;  // least stack room ever
} __attribute__((packed));
static_assert(sizeof(MsgCounters) == 17, "MsgCounters has the wrong size");

struct MsgState {
  uint8_t id;  // 0 when unasked
  uint8_t state;
  uint8_t trip;
  uint8_t tripTap;  // 8 and more: input 0 and more of the multiplexer; 255: none
  uint16_t tripRaw;
  uint32_t tripTick;
  uint16_t missing;  // go-live conditions not met, bits; see group condition
  uint16_t throttleCap;  // throttle allowed now
} __attribute__((packed));
static_assert(sizeof(MsgState) == 14, "MsgState has the wrong size");

struct MsgEvent {
  uint8_t kind;  // see group event
  uint32_t tick;
  uint32_t value;
} __attribute__((packed));
static_assert(sizeof(MsgEvent) == 9, "MsgEvent has the wrong size");

struct MsgStoreChunk {
  uint8_t id;
  uint16_t offset;
  uint16_t length;  // whole length, 0 when the store is blank
  // then uint8_t bytes[] to the end of the payload
} __attribute__((packed));
static_assert(sizeof(MsgStoreChunk) == 5, "MsgStoreChunk has the wrong size");

/** Whether `bytes` after the code byte fit that command. Unknown codes fit nothing. */
inline bool commandLengthFits(uint8_t code, uint8_t bytes) {
  switch (code) {
    case kMsgHello: return bytes == sizeof(MsgHello);
    case kMsgReadDescriptor: return bytes == sizeof(MsgReadDescriptor);
    case kMsgStream: return bytes == sizeof(MsgStream);
    case kMsgScanList: return bytes == sizeof(MsgScanList);
    case kMsgBurst: return bytes == sizeof(MsgBurst);
    case kMsgGoLive: return bytes == sizeof(MsgGoLive);
    case kMsgBeat: return bytes == sizeof(MsgBeat);
    case kMsgSafeAll: return bytes == sizeof(MsgSafeAll);
    case kMsgDrive: return bytes == sizeof(MsgDrive);
    case kMsgLoad: return bytes == sizeof(MsgLoad);
    case kMsgFeed: return bytes == sizeof(MsgFeed);
    case kMsgLimit: return bytes == sizeof(MsgLimit);
    case kMsgDriveLimits: return bytes == sizeof(MsgDriveLimits);
    case kMsgFrame: return bytes == sizeof(MsgFrame);
    case kMsgClearTrip: return bytes == sizeof(MsgClearTrip);
    case kMsgReadCounters: return bytes == sizeof(MsgReadCounters);
    case kMsgReadState: return bytes == sizeof(MsgReadState);
    case kMsgReadStore: return bytes == sizeof(MsgReadStore);
    case kMsgWriteStore: return bytes >= sizeof(MsgWriteStore);
    case kMsgCommitStore: return bytes == sizeof(MsgCommitStore);
    case kMsgSwitch: return bytes == sizeof(MsgSwitch);
    case kMsgCapture: return bytes == sizeof(MsgCapture);
    case kMsgFailSafeTest: return bytes == sizeof(MsgFailSafeTest);
    case kMsgWatch: return bytes == sizeof(MsgWatch);
    default: return false;
  }
}
