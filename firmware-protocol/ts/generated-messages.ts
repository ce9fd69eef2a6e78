// SPDX-License-Identifier: MIT
// Written by firmware-protocol/generate.ts from messages.tsv, codes.tsv and constants.tsv. Do not edit.
// Layouts, types, codes and constants of the wire; it reads and writes nothing itself.
export interface FieldLayout { readonly name: string; readonly cell: 'u8' | 'u16' | 'u32'; readonly shape: 'one' | 'fixed' | 'rest'; readonly count: number }
export interface MessageLayout { readonly code: number; readonly fixedBytes: number; readonly fields: readonly FieldLayout[] }
export interface CodeEntry { readonly code: number; readonly name: string; readonly words: string }
export const wire = {
  /** refused when the rig's is older */
  protocolMajor: 1,
  /** grows when messages are added */
  protocolMinor: 0,
  /** code and fields, without CRC [byte] */
  maxPayloadBytes: 240,
  /** payload, CRC, COBS overhead, delimiter [byte] */
  maxFrameBytes: 244,
  /** 8 data bits, no parity, 1 stop bit [baud] */
  baud: 500000,
  /** fall-back; bursts are refused there [baud] */
  baudSlow: 250000,
  /** rig time, nominal [tick] */
  ticksPerSecond: 2000000,
  /** one conversion of the converter [tick] */
  conversionTicks: 208,
  /** nine conversions [tick] */
  scanTicks: 1872,
  /** [scan] */
  scansPerBlock: 8,
  /** [channel] */
  fastPerScan: 4,
  /** four sums of two, then the slow one [value] */
  samplesPerScan: 5,
  /** most samples in a burst block [sample] */
  burstBlockSamples: 48,
  /** most bytes in one writeStore [byte] */
  writeStoreBytes: 32,
  /** [channel] */
  multiplexerChannel: 7,
  /** distance between beats [ms] */
  beatMs: 20,
  /** silence while live, after which the rig goes safe [ms] */
  hostLostMs: 100,
  /** longest hold of a drive [ms] */
  driveMaxMs: 1000,
  /** longest time of one load command [ms] */
  loadMaxMs: 2000,
  /** shortest pulse ever, 800 us [tick] */
  pulseMinTicks: 1600,
  /** longest pulse ever, 2200 us [tick] */
  pulseMaxTicks: 4400,
  /** shortest servo frame unless declared digital, 60 Hz [tick] */
  framePeriodMinTicks: 33333,
  /** the feed opens below this speed while ending [rpm] */
  feedOffRpm: 1000,
  /** or after this time [ms] */
  feedOffMs: 1500,
  /** pulses run at least this long after the safe order began [ms] */
  pulsesStopMs: 2000,
  /** neutral with the rail up before the first throttle [ms] */
  neutralMs: 2500,
  /** the limited feed must fill the capacitor within this [ms] */
  firstPowerMs: 1000,
  /** of the pack voltage [per cent] */
  firstPowerPerCent: 95,
  /** of the span on that side, largest first throttle step [per cent] */
  firstStepPerCent: 2,
  /** until the fail-safe test is passed [per mille] */
  throttleCapPerMille: 300,
  /** the motor must begin to slow within this [ms] */
  failSafeMaxMs: 500,
} as const;
export interface HelloMessage {
  readonly type: 'hello';
  /** command id, chosen by the host, echoed in the answer */
  readonly id: number;
  /** protocol major version of the host */
  readonly major: number;
  /** protocol minor version of the host */
  readonly minor: number;
}
export interface ReadDescriptorMessage {
  readonly type: 'readDescriptor';
  /** answered by descriptorChunk */
  readonly id: number;
  /** first byte wanted [byte] */
  readonly offset: number;
}
export interface StreamMessage {
  readonly type: 'stream';
  readonly id: number;
  /** 1 starts scan blocks, 0 stops them */
  readonly on: number;
}
export interface ScanListMessage {
  readonly type: 'scanList';
  readonly id: number;
  /** the four channels converted twice a scan, order a b b a c d d c [channel] */
  readonly fast: readonly number[];
  /** the ninth conversion; 7 steps the multiplexer through its eight inputs, one a scan [channel] */
  readonly slow: number;
}
export interface BurstMessage {
  readonly type: 'burst';
  /** every conversion of one channel, until samples are sent (0: until stream or scanList) */
  readonly id: number;
  /** [channel] */
  readonly channel: number;
  /** [sample] */
  readonly samples: number;
  /** action fired by the rig at a known sample; see group action [code] */
  readonly action: number;
  /** load mask, or pulse width in ticks */
  readonly actionArg: number;
  /** how long the action lasts [ms] */
  readonly actionMs: number;
  /** sample index at which the action fires [sample] */
  readonly atSample: number;
}
export interface GoLiveMessage {
  readonly type: 'goLive';
  readonly id: number;
  /** chosen by the host at random; beats must carry it */
  readonly session: number;
}
export interface BeatMessage {
  readonly type: 'beat';
  /** answered by beatBack */
  readonly session: number;
  readonly counter: number;
  /** last scan number the host has seen */
  readonly lastScan: number;
}
export interface SafeAllMessage {
  readonly type: 'safeAll';
  /** from any state: the safe order of PROTOCOL.md */
  readonly id: number;
}
export interface DriveMessage {
  readonly type: 'drive';
  readonly id: number;
  /** see group output [code] */
  readonly output: number;
  /** pulse width wanted [tick] */
  readonly width: number;
  /** time to get there in equal steps [ms] */
  readonly rampMs: number;
  /** the drive ends by itself after this, at most 1000 [ms] */
  readonly holdMs: number;
}
export interface LoadMessage {
  readonly type: 'load';
  readonly id: number;
  /** bit 0 to 2: resistors of the load bank */
  readonly mask: number;
  /** switched off by itself after this, at most 2000 [ms] */
  readonly ms: number;
}
export interface FeedMessage {
  readonly type: 'feed';
  readonly id: number;
  /** see group feedLevel [code] */
  readonly level: number;
}
export interface LimitMessage {
  readonly type: 'limit';
  readonly id: number;
  /** see group limit [code] */
  readonly which: number;
  /** raw code of one conversion; for overSpeed ticks between two captured edges */
  readonly level: number;
  /** how long beyond it before the trip [ms] */
  readonly ms: number;
}
export interface DriveLimitsMessage {
  readonly type: 'driveLimits';
  readonly id: number;
  /** [code] */
  readonly output: number;
  /** shortest pulse allowed in this session [tick] */
  readonly low: number;
  /** neutral of the throttle, free position of the steering [tick] */
  readonly rest: number;
  /** longest pulse allowed in this session [tick] */
  readonly high: number;
}
export interface FrameMessage {
  readonly type: 'frame';
  readonly id: number;
  /** servo frame period; above 60 Hz only with digital = 1 [tick] */
  readonly period: number;
  /** 1: the person declared the servo digital */
  readonly digital: number;
}
export interface ClearTripMessage {
  readonly type: 'clearTrip';
  readonly id: number;
}
export interface ReadCountersMessage {
  readonly type: 'readCounters';
  /** answered by counters */
  readonly id: number;
}
export interface ReadStateMessage {
  readonly type: 'readState';
  /** answered by state */
  readonly id: number;
}
export interface ReadStoreMessage {
  readonly type: 'readStore';
  /** answered by storeChunk */
  readonly id: number;
  /** [byte] */
  readonly offset: number;
}
export interface WriteStoreMessage {
  readonly type: 'writeStore';
  /** into the spare half of the store */
  readonly id: number;
  /** [byte] */
  readonly offset: number;
  /** at most 32 */
  readonly bytes: Uint8Array;
}
export interface CommitStoreMessage {
  readonly type: 'commitStore';
  /** the spare half becomes the store if its CRC agrees */
  readonly id: number;
  /** [byte] */
  readonly length: number;
  readonly crc: number;
}
export interface SwitchMessage {
  readonly type: 'switch';
  readonly id: number;
  /** see group switch [code] */
  readonly which: number;
  readonly on: number;
  /** switched off by itself after this; 0: until told [ms] */
  readonly ms: number;
}
export interface CaptureMessage {
  readonly type: 'capture';
  readonly id: number;
  /** see group captureSource [code] */
  readonly source: number;
}
export interface FailSafeTestMessage {
  readonly type: 'failSafeTest';
  /** throttle pulses stop on purpose until the speed falls, at most this long */
  readonly id: number;
  /** [ms] */
  readonly ms: number;
}
export interface WatchMessage {
  readonly type: 'watch';
  /** thermistors whose open, short or over-temperature must trip */
  readonly id: number;
  /** bit 0 to 3 */
  readonly thermistors: number;
}
export interface AckMessage {
  readonly type: 'ack';
  readonly id: number;
  /** code of the command answered */
  readonly command: number;
}
export interface NakMessage {
  readonly type: 'nak';
  readonly id: number;
  readonly command: number;
  /** see group reason [code] */
  readonly reason: number;
  /** what the reason says of it */
  readonly detail: number;
}
export interface HelloBackMessage {
  readonly type: 'helloBack';
  readonly id: number;
  readonly major: number;
  readonly minor: number;
  /** firmware version */
  readonly firmware: readonly number[];
  /** see group resetCause [code] */
  readonly resetCause: number;
  /** [byte] */
  readonly descriptorLength: number;
  readonly descriptorCrc: number;
  /** rig time now [tick] */
  readonly tick: number;
}
export interface DescriptorChunkMessage {
  readonly type: 'descriptorChunk';
  readonly id: number;
  /** [byte] */
  readonly offset: number;
  readonly bytes: Uint8Array;
}
export interface ScanBlockMessage {
  readonly type: 'scanBlock';
  /** number of the block's first scan */
  readonly scan: number;
  /** rig time of the first conversion of that scan [tick] */
  readonly tick: number;
  /** what was scanned [channel] */
  readonly fast: readonly number[];
  /** [channel] */
  readonly slow: number;
  /** multiplexer input of the first slow conversion */
  readonly slowFirst: number;
  /** see group state [code] */
  readonly state: number;
  /** see group trip [code] */
  readonly trip: number;
  /** bits, see group outputBit */
  readonly outputs: number;
  /** pulse width now, 0 while no pulses [tick] */
  readonly steering: number;
  /** pulse width now, 0 while no pulses [tick] */
  readonly throttle: number;
  /** running count of edges of Hall line B */
  readonly edgesB: number;
  /** running count of edges of Hall line C */
  readonly edgesC: number;
  /** running count of invalid Hall states */
  readonly badHall: number;
  /** running count of edges at the capture input */
  readonly edgesA: number;
  /** rig time of the last captured edge [tick] */
  readonly lastEdge: number;
  /** 8 scans of 5: the sums of two for a b c d, then the slow one */
  readonly samples: Uint16Array;
  /** distances between captured edges, oldest first; the last one ends at lastEdge; 65535: that or more [tick] */
  readonly edges: Uint16Array;
}
export interface BurstBlockMessage {
  readonly type: 'burstBlock';
  /** index of the first sample [sample] */
  readonly first: number;
  /** rig time at which that conversion started [tick] */
  readonly tick: number;
  /** [channel] */
  readonly channel: number;
  readonly outputs: number;
  /** at most 48, one conversion each */
  readonly samples: Uint16Array;
}
export interface BeatBackMessage {
  readonly type: 'beatBack';
  readonly counter: number;
  /** [tick] */
  readonly tick: number;
  /** longest time between two beats since live [ms] */
  readonly worstGap: number;
  /** [code] */
  readonly state: number;
}
export interface CountersMessage {
  readonly type: 'counters';
  readonly id: number;
  /** frames dropped for CRC, COBS or length */
  readonly badFrames: number;
  /** bytes lost on the way in */
  readonly rxLost: number;
  /** blocks that found no room */
  readonly blocksDropped: number;
  readonly edgesDropped: number;
  /** times the storm guard masked a line */
  readonly noisyLine: number;
  /** [ms] */
  readonly worstGap: number;
  /** longest turn of the main loop [tick] */
  readonly worstLoop: number;
  /** least stack room ever [byte] */
  readonly stackFree: number;
}
export interface StateMessage {
  readonly type: 'state';
  /** 0 when unasked */
  readonly id: number;
  /** [code] */
  readonly state: number;
  /** [code] */
  readonly trip: number;
  /** 8 and more: input 0 and more of the multiplexer; 255: none [channel] */
  readonly tripTap: number;
  readonly tripRaw: number;
  /** [tick] */
  readonly tripTick: number;
  /** go-live conditions not met, bits; see group condition */
  readonly missing: number;
  /** throttle allowed now [per mille] */
  readonly throttleCap: number;
}
export interface EventMessage {
  readonly type: 'event';
  /** see group event [code] */
  readonly kind: number;
  /** [tick] */
  readonly tick: number;
  readonly value: number;
}
export interface StoreChunkMessage {
  readonly type: 'storeChunk';
  readonly id: number;
  /** [byte] */
  readonly offset: number;
  /** whole length, 0 when the store is blank [byte] */
  readonly length: number;
  readonly bytes: Uint8Array;
}
export type CommandMessage =
  | HelloMessage
  | ReadDescriptorMessage
  | StreamMessage
  | ScanListMessage
  | BurstMessage
  | GoLiveMessage
  | BeatMessage
  | SafeAllMessage
  | DriveMessage
  | LoadMessage
  | FeedMessage
  | LimitMessage
  | DriveLimitsMessage
  | FrameMessage
  | ClearTripMessage
  | ReadCountersMessage
  | ReadStateMessage
  | ReadStoreMessage
  | WriteStoreMessage
  | CommitStoreMessage
  | SwitchMessage
  | CaptureMessage
  | FailSafeTestMessage
  | WatchMessage
;
export type ReportMessage =
  | AckMessage
  | NakMessage
  | HelloBackMessage
  | DescriptorChunkMessage
  | ScanBlockMessage
  | BurstBlockMessage
  | BeatBackMessage
  | CountersMessage
  | StateMessage
  | EventMessage
  | StoreChunkMessage
;
export type Message = CommandMessage | ReportMessage;
export type MessageName = Message['type'];
export const messageLayouts = {
  hello: { code: 0x01, fixedBytes: 3, fields: [
      { name: 'id', cell: 'u8', shape: 'one', count: 1 },
      { name: 'major', cell: 'u8', shape: 'one', count: 1 },
      { name: 'minor', cell: 'u8', shape: 'one', count: 1 },
    ] },
  readDescriptor: { code: 0x02, fixedBytes: 3, fields: [
      { name: 'id', cell: 'u8', shape: 'one', count: 1 },
      { name: 'offset', cell: 'u16', shape: 'one', count: 1 },
    ] },
  stream: { code: 0x03, fixedBytes: 2, fields: [
      { name: 'id', cell: 'u8', shape: 'one', count: 1 },
      { name: 'on', cell: 'u8', shape: 'one', count: 1 },
    ] },
  scanList: { code: 0x04, fixedBytes: 6, fields: [
      { name: 'id', cell: 'u8', shape: 'one', count: 1 },
      { name: 'fast', cell: 'u8', shape: 'fixed', count: 4 },
      { name: 'slow', cell: 'u8', shape: 'one', count: 1 },
    ] },
  burst: { code: 0x05, fixedBytes: 13, fields: [
      { name: 'id', cell: 'u8', shape: 'one', count: 1 },
      { name: 'channel', cell: 'u8', shape: 'one', count: 1 },
      { name: 'samples', cell: 'u32', shape: 'one', count: 1 },
      { name: 'action', cell: 'u8', shape: 'one', count: 1 },
      { name: 'actionArg', cell: 'u16', shape: 'one', count: 1 },
      { name: 'actionMs', cell: 'u16', shape: 'one', count: 1 },
      { name: 'atSample', cell: 'u16', shape: 'one', count: 1 },
    ] },
  goLive: { code: 0x06, fixedBytes: 5, fields: [
      { name: 'id', cell: 'u8', shape: 'one', count: 1 },
      { name: 'session', cell: 'u32', shape: 'one', count: 1 },
    ] },
  beat: { code: 0x07, fixedBytes: 10, fields: [
      { name: 'session', cell: 'u32', shape: 'one', count: 1 },
      { name: 'counter', cell: 'u16', shape: 'one', count: 1 },
      { name: 'lastScan', cell: 'u32', shape: 'one', count: 1 },
    ] },
  safeAll: { code: 0x08, fixedBytes: 1, fields: [
      { name: 'id', cell: 'u8', shape: 'one', count: 1 },
    ] },
  drive: { code: 0x09, fixedBytes: 8, fields: [
      { name: 'id', cell: 'u8', shape: 'one', count: 1 },
      { name: 'output', cell: 'u8', shape: 'one', count: 1 },
      { name: 'width', cell: 'u16', shape: 'one', count: 1 },
      { name: 'rampMs', cell: 'u16', shape: 'one', count: 1 },
      { name: 'holdMs', cell: 'u16', shape: 'one', count: 1 },
    ] },
  load: { code: 0x0a, fixedBytes: 4, fields: [
      { name: 'id', cell: 'u8', shape: 'one', count: 1 },
      { name: 'mask', cell: 'u8', shape: 'one', count: 1 },
      { name: 'ms', cell: 'u16', shape: 'one', count: 1 },
    ] },
  feed: { code: 0x0b, fixedBytes: 2, fields: [
      { name: 'id', cell: 'u8', shape: 'one', count: 1 },
      { name: 'level', cell: 'u8', shape: 'one', count: 1 },
    ] },
  limit: { code: 0x0c, fixedBytes: 6, fields: [
      { name: 'id', cell: 'u8', shape: 'one', count: 1 },
      { name: 'which', cell: 'u8', shape: 'one', count: 1 },
      { name: 'level', cell: 'u16', shape: 'one', count: 1 },
      { name: 'ms', cell: 'u16', shape: 'one', count: 1 },
    ] },
  driveLimits: { code: 0x0d, fixedBytes: 8, fields: [
      { name: 'id', cell: 'u8', shape: 'one', count: 1 },
      { name: 'output', cell: 'u8', shape: 'one', count: 1 },
      { name: 'low', cell: 'u16', shape: 'one', count: 1 },
      { name: 'rest', cell: 'u16', shape: 'one', count: 1 },
      { name: 'high', cell: 'u16', shape: 'one', count: 1 },
    ] },
  frame: { code: 0x0e, fixedBytes: 4, fields: [
      { name: 'id', cell: 'u8', shape: 'one', count: 1 },
      { name: 'period', cell: 'u16', shape: 'one', count: 1 },
      { name: 'digital', cell: 'u8', shape: 'one', count: 1 },
    ] },
  clearTrip: { code: 0x0f, fixedBytes: 1, fields: [
      { name: 'id', cell: 'u8', shape: 'one', count: 1 },
    ] },
  readCounters: { code: 0x10, fixedBytes: 1, fields: [
      { name: 'id', cell: 'u8', shape: 'one', count: 1 },
    ] },
  readState: { code: 0x11, fixedBytes: 1, fields: [
      { name: 'id', cell: 'u8', shape: 'one', count: 1 },
    ] },
  readStore: { code: 0x12, fixedBytes: 3, fields: [
      { name: 'id', cell: 'u8', shape: 'one', count: 1 },
      { name: 'offset', cell: 'u16', shape: 'one', count: 1 },
    ] },
  writeStore: { code: 0x13, fixedBytes: 3, fields: [
      { name: 'id', cell: 'u8', shape: 'one', count: 1 },
      { name: 'offset', cell: 'u16', shape: 'one', count: 1 },
      { name: 'bytes', cell: 'u8', shape: 'rest', count: 0 },
    ] },
  commitStore: { code: 0x14, fixedBytes: 5, fields: [
      { name: 'id', cell: 'u8', shape: 'one', count: 1 },
      { name: 'length', cell: 'u16', shape: 'one', count: 1 },
      { name: 'crc', cell: 'u16', shape: 'one', count: 1 },
    ] },
  switch: { code: 0x15, fixedBytes: 5, fields: [
      { name: 'id', cell: 'u8', shape: 'one', count: 1 },
      { name: 'which', cell: 'u8', shape: 'one', count: 1 },
      { name: 'on', cell: 'u8', shape: 'one', count: 1 },
      { name: 'ms', cell: 'u16', shape: 'one', count: 1 },
    ] },
  capture: { code: 0x16, fixedBytes: 2, fields: [
      { name: 'id', cell: 'u8', shape: 'one', count: 1 },
      { name: 'source', cell: 'u8', shape: 'one', count: 1 },
    ] },
  failSafeTest: { code: 0x17, fixedBytes: 3, fields: [
      { name: 'id', cell: 'u8', shape: 'one', count: 1 },
      { name: 'ms', cell: 'u16', shape: 'one', count: 1 },
    ] },
  watch: { code: 0x18, fixedBytes: 2, fields: [
      { name: 'id', cell: 'u8', shape: 'one', count: 1 },
      { name: 'thermistors', cell: 'u8', shape: 'one', count: 1 },
    ] },
  ack: { code: 0x80, fixedBytes: 2, fields: [
      { name: 'id', cell: 'u8', shape: 'one', count: 1 },
      { name: 'command', cell: 'u8', shape: 'one', count: 1 },
    ] },
  nak: { code: 0x81, fixedBytes: 5, fields: [
      { name: 'id', cell: 'u8', shape: 'one', count: 1 },
      { name: 'command', cell: 'u8', shape: 'one', count: 1 },
      { name: 'reason', cell: 'u8', shape: 'one', count: 1 },
      { name: 'detail', cell: 'u16', shape: 'one', count: 1 },
    ] },
  helloBack: { code: 0x82, fixedBytes: 15, fields: [
      { name: 'id', cell: 'u8', shape: 'one', count: 1 },
      { name: 'major', cell: 'u8', shape: 'one', count: 1 },
      { name: 'minor', cell: 'u8', shape: 'one', count: 1 },
      { name: 'firmware', cell: 'u8', shape: 'fixed', count: 3 },
      { name: 'resetCause', cell: 'u8', shape: 'one', count: 1 },
      { name: 'descriptorLength', cell: 'u16', shape: 'one', count: 1 },
      { name: 'descriptorCrc', cell: 'u16', shape: 'one', count: 1 },
      { name: 'tick', cell: 'u32', shape: 'one', count: 1 },
    ] },
  descriptorChunk: { code: 0x83, fixedBytes: 3, fields: [
      { name: 'id', cell: 'u8', shape: 'one', count: 1 },
      { name: 'offset', cell: 'u16', shape: 'one', count: 1 },
      { name: 'bytes', cell: 'u8', shape: 'rest', count: 0 },
    ] },
  scanBlock: { code: 0x84, fixedBytes: 111, fields: [
      { name: 'scan', cell: 'u32', shape: 'one', count: 1 },
      { name: 'tick', cell: 'u32', shape: 'one', count: 1 },
      { name: 'fast', cell: 'u8', shape: 'fixed', count: 4 },
      { name: 'slow', cell: 'u8', shape: 'one', count: 1 },
      { name: 'slowFirst', cell: 'u8', shape: 'one', count: 1 },
      { name: 'state', cell: 'u8', shape: 'one', count: 1 },
      { name: 'trip', cell: 'u8', shape: 'one', count: 1 },
      { name: 'outputs', cell: 'u16', shape: 'one', count: 1 },
      { name: 'steering', cell: 'u16', shape: 'one', count: 1 },
      { name: 'throttle', cell: 'u16', shape: 'one', count: 1 },
      { name: 'edgesB', cell: 'u8', shape: 'one', count: 1 },
      { name: 'edgesC', cell: 'u8', shape: 'one', count: 1 },
      { name: 'badHall', cell: 'u8', shape: 'one', count: 1 },
      { name: 'edgesA', cell: 'u16', shape: 'one', count: 1 },
      { name: 'lastEdge', cell: 'u32', shape: 'one', count: 1 },
      { name: 'samples', cell: 'u16', shape: 'fixed', count: 40 },
      { name: 'edges', cell: 'u16', shape: 'rest', count: 0 },
    ] },
  burstBlock: { code: 0x85, fixedBytes: 11, fields: [
      { name: 'first', cell: 'u32', shape: 'one', count: 1 },
      { name: 'tick', cell: 'u32', shape: 'one', count: 1 },
      { name: 'channel', cell: 'u8', shape: 'one', count: 1 },
      { name: 'outputs', cell: 'u16', shape: 'one', count: 1 },
      { name: 'samples', cell: 'u16', shape: 'rest', count: 0 },
    ] },
  beatBack: { code: 0x86, fixedBytes: 9, fields: [
      { name: 'counter', cell: 'u16', shape: 'one', count: 1 },
      { name: 'tick', cell: 'u32', shape: 'one', count: 1 },
      { name: 'worstGap', cell: 'u16', shape: 'one', count: 1 },
      { name: 'state', cell: 'u8', shape: 'one', count: 1 },
    ] },
  counters: { code: 0x87, fixedBytes: 17, fields: [
      { name: 'id', cell: 'u8', shape: 'one', count: 1 },
      { name: 'badFrames', cell: 'u16', shape: 'one', count: 1 },
      { name: 'rxLost', cell: 'u16', shape: 'one', count: 1 },
      { name: 'blocksDropped', cell: 'u16', shape: 'one', count: 1 },
      { name: 'edgesDropped', cell: 'u16', shape: 'one', count: 1 },
      { name: 'noisyLine', cell: 'u16', shape: 'one', count: 1 },
      { name: 'worstGap', cell: 'u16', shape: 'one', count: 1 },
      { name: 'worstLoop', cell: 'u16', shape: 'one', count: 1 },
      { name: 'stackFree', cell: 'u16', shape: 'one', count: 1 },
    ] },
  state: { code: 0x88, fixedBytes: 14, fields: [
      { name: 'id', cell: 'u8', shape: 'one', count: 1 },
      { name: 'state', cell: 'u8', shape: 'one', count: 1 },
      { name: 'trip', cell: 'u8', shape: 'one', count: 1 },
      { name: 'tripTap', cell: 'u8', shape: 'one', count: 1 },
      { name: 'tripRaw', cell: 'u16', shape: 'one', count: 1 },
      { name: 'tripTick', cell: 'u32', shape: 'one', count: 1 },
      { name: 'missing', cell: 'u16', shape: 'one', count: 1 },
      { name: 'throttleCap', cell: 'u16', shape: 'one', count: 1 },
    ] },
  event: { code: 0x89, fixedBytes: 9, fields: [
      { name: 'kind', cell: 'u8', shape: 'one', count: 1 },
      { name: 'tick', cell: 'u32', shape: 'one', count: 1 },
      { name: 'value', cell: 'u32', shape: 'one', count: 1 },
    ] },
  storeChunk: { code: 0x8a, fixedBytes: 5, fields: [
      { name: 'id', cell: 'u8', shape: 'one', count: 1 },
      { name: 'offset', cell: 'u16', shape: 'one', count: 1 },
      { name: 'length', cell: 'u16', shape: 'one', count: 1 },
      { name: 'bytes', cell: 'u8', shape: 'rest', count: 0 },
    ] },
} as const satisfies Record<MessageName, MessageLayout>;
export const stateCode = {
  /** Nothing is live. */
  safe: 0,
  /** The rig is live. */
  live: 1,
  /** The rig is going back to safe. */
  ending: 2,
  /** The rig tripped and is safe. */
  tripped: 3,
} as const;
export const feedLevelCode = {
  /** feed off */
  off: 0,
  /** feed through 10 ohm */
  limited: 1,
  /** feed full */
  full: 2,
} as const;
export const outputCode = {
  /** steering */
  steering: 0,
  /** throttle */
  throttle: 1,
} as const;
export const switchCode = {
  /** 5 V for the sensor board */
  hallSupply: 0,
  /** bleeder */
  bleeder: 1,
  /** pack load */
  packLoad: 2,
} as const;
export const captureSourceCode = {
  /** Hall line A */
  hallA: 0,
  /** receiver channel 1 */
  receiver1: 1,
  /** receiver channel 2 */
  receiver2: 2,
  /** nothing */
  none: 3,
} as const;
export const actionCode = {
  /** no action */
  none: 0,
  /** load bank */
  load: 1,
  /** steering pulse */
  steering: 2,
  /** throttle pulse */
  throttle: 3,
} as const;
export const outputBitCode = {
  /** load 10 ohm */
  load1: 0,
  /** load 4.7 ohm */
  load2: 1,
  /** load 2.2 ohm */
  load3: 2,
  /** feed limited */
  feedLimited: 3,
  /** feed full */
  feedFull: 4,
  /** Hall supply */
  hallSupply: 5,
  /** bleeder */
  bleeder: 6,
  /** pack load */
  packLoad: 7,
  /** steering pulses run */
  steeringPulses: 8,
  /** throttle pulses run */
  throttlePulses: 9,
  /** stop line open */
  stopOpen: 10,
  /** stop line was pressed in this session */
  stopSeen: 11,
  /** the rig asks for the stop to be pressed once (its light is on) */
  askStop: 12,
} as const;
export const limitCode = {
  /** pack current, narrow tap */
  packNarrowSlow: 0,
  /** pack current, wide tap */
  packWideSlow: 1,
  /** pack current, short circuit */
  packWideFast: 2,
  /** rail current */
  railCurrentSlow: 3,
  /** pack voltage too low */
  packUnder: 4,
  /** motor speed */
  overSpeed: 5,
  /** thermistor 1 */
  thermistor1: 6,
  /** thermistor 2 */
  thermistor2: 7,
  /** thermistor 3 */
  thermistor3: 8,
  /** thermistor 4 */
  thermistor4: 9,
} as const;
export const tripCode = {
  /** no trip */
  none: 0,
  /** The host fell silent. */
  hostLost: 1,
  /** The stop line opened. */
  stopLine: 2,
  /** The pack current went beyond the short-circuit limit. */
  shortCircuit: 3,
  /** The pack current stayed beyond its limit. */
  packCurrent: 4,
  /** The rail current stayed beyond its limit. */
  railCurrent: 5,
  /** A current tap was beyond its range for too long. */
  clipped: 6,
  /** A thermistor read too hot. */
  overTemperature: 7,
  /** A thermistor is open. */
  thermistorOpen: 8,
  /** A thermistor is shorted. */
  thermistorShort: 9,
  /** A thermistor saw no heat while power flowed. */
  thermistorIdle: 10,
  /** The pack voltage fell too low. */
  underVoltage: 11,
  /** The motor went beyond its speed limit. */
  overSpeed: 12,
  /** No Hall edge came although the throttle was open. */
  noHall: 13,
  /** A line changed faster than any motor can. */
  noisyLine: 14,
  /** The rig's own 5 V fell below 4.5 V. */
  supply: 15,
  /** The rig's processor hung and was reset. */
  watchdog: 16,
  /** The rig's supply broke down and it was reset. */
  brownOut: 17,
  /** The feed stayed on although it was switched off. */
  stuckFeed: 18,
  /** The converter stopped. */
  converter: 19,
} as const;
export const resetCauseCode = {
  /** unknown */
  unknown: 0,
  /** power on */
  powerOn: 1,
  /** reset line (port opened) */
  external: 2,
  /** brown-out */
  brownOut: 3,
  /** watchdog */
  watchdog: 4,
} as const;
export const reasonCode = {
  /** The rig does not know this command. */
  unknownCommand: 1,
  /** The command has the wrong length. */
  badLength: 2,
  /** The rig speaks an older major version of the protocol. */
  newerMajor: 3,
  /** A value is out of range. */
  outOfRange: 4,
  /** The rig is not live. */
  notLive: 5,
  /** The rig is tripped: clear the trip first. */
  tripped: 6,
  /** The stop line is open. */
  stopOpen: 7,
  /** The stop has not been pressed once in this session. */
  stopNotSeen: 8,
  /** The stream is off. */
  notStreaming: 9,
  /** A tap that this needs is not in the scan list. */
  tapNotScanned: 10,
  /** The feed is not on. */
  feedOff: 11,
  /** The limited feed has not filled the controller's capacitor in this session. */
  noFirstPower: 12,
  /** The pack is reversed or missing. */
  polarity: 13,
  /** The receiver rail is not up. */
  railDown: 14,
  /** Neutral has not run long enough. */
  neutralTooShort: 15,
  /** The pulse widths of this output are not set. */
  limitsNotSet: 16,
  /** The first throttle step is too large. */
  firstStep: 17,
  /** The throttle is capped until the fail-safe test is passed. */
  throttleCap: 18,
  /** The load bank has to cool down. */
  loadHot: 19,
  /** The rig is busy with another command. */
  busy: 20,
  /** The link is too slow for a burst. */
  baudTooSlow: 21,
  /** The bytes do not match their CRC. */
  badCrc: 22,
  /** Another session is live. */
  wrongSession: 23,
  /** The motor may still be turning. */
  notStill: 24,
  /** The rig's own supply is too low. */
  supplyLow: 25,
  /** The motor is not turning. */
  notTurning: 26,
} as const;
export const conditionCode = {
  /** the stream is off */
  streamOff: 0,
  /** the stop line is open */
  stopOpen: 1,
  /** the stop has not been pressed in this session */
  stopNotSeen: 2,
  /** a trip is latched */
  tripLatched: 3,
  /** the rig's own supply is low or not measured */
  supplyLow: 4,
  /** the converter does not run */
  converterDead: 5,
} as const;
export const eventCode = {
  /** the marked action fired; value is the sample index */
  action: 1,
  /** the load bank switched off */
  loadOff: 2,
  /** a drive ended by itself; value is the output */
  driveEnded: 3,
  /** result of the fail-safe test; value is ms until the speed fell, 65535 when it did not */
  failSafe: 4,
  /** the feed changed; value is the level */
  feed: 5,
  /** a trip; value is the code */
  trip: 6,
  /** the rig restarted; value is the reset cause */
  restarted: 7,
  /** the limited feed filled the capacitor; value is ms */
  firstPower: 8,
} as const;
export const codeTable = {
  state: [
    { code: 0, name: 'safe', words: 'Nothing is live.' },
    { code: 1, name: 'live', words: 'The rig is live.' },
    { code: 2, name: 'ending', words: 'The rig is going back to safe.' },
    { code: 3, name: 'tripped', words: 'The rig tripped and is safe.' },
  ],
  feedLevel: [
    { code: 0, name: 'off', words: 'feed off' },
    { code: 1, name: 'limited', words: 'feed through 10 ohm' },
    { code: 2, name: 'full', words: 'feed full' },
  ],
  output: [
    { code: 0, name: 'steering', words: 'steering' },
    { code: 1, name: 'throttle', words: 'throttle' },
  ],
  switch: [
    { code: 0, name: 'hallSupply', words: '5 V for the sensor board' },
    { code: 1, name: 'bleeder', words: 'bleeder' },
    { code: 2, name: 'packLoad', words: 'pack load' },
  ],
  captureSource: [
    { code: 0, name: 'hallA', words: 'Hall line A' },
    { code: 1, name: 'receiver1', words: 'receiver channel 1' },
    { code: 2, name: 'receiver2', words: 'receiver channel 2' },
    { code: 3, name: 'none', words: 'nothing' },
  ],
  action: [
    { code: 0, name: 'none', words: 'no action' },
    { code: 1, name: 'load', words: 'load bank' },
    { code: 2, name: 'steering', words: 'steering pulse' },
    { code: 3, name: 'throttle', words: 'throttle pulse' },
  ],
  outputBit: [
    { code: 0, name: 'load1', words: 'load 10 ohm' },
    { code: 1, name: 'load2', words: 'load 4.7 ohm' },
    { code: 2, name: 'load3', words: 'load 2.2 ohm' },
    { code: 3, name: 'feedLimited', words: 'feed limited' },
    { code: 4, name: 'feedFull', words: 'feed full' },
    { code: 5, name: 'hallSupply', words: 'Hall supply' },
    { code: 6, name: 'bleeder', words: 'bleeder' },
    { code: 7, name: 'packLoad', words: 'pack load' },
    { code: 8, name: 'steeringPulses', words: 'steering pulses run' },
    { code: 9, name: 'throttlePulses', words: 'throttle pulses run' },
    { code: 10, name: 'stopOpen', words: 'stop line open' },
    { code: 11, name: 'stopSeen', words: 'stop line was pressed in this session' },
    { code: 12, name: 'askStop', words: 'the rig asks for the stop to be pressed once (its light is on)' },
  ],
  limit: [
    { code: 0, name: 'packNarrowSlow', words: 'pack current, narrow tap' },
    { code: 1, name: 'packWideSlow', words: 'pack current, wide tap' },
    { code: 2, name: 'packWideFast', words: 'pack current, short circuit' },
    { code: 3, name: 'railCurrentSlow', words: 'rail current' },
    { code: 4, name: 'packUnder', words: 'pack voltage too low' },
    { code: 5, name: 'overSpeed', words: 'motor speed' },
    { code: 6, name: 'thermistor1', words: 'thermistor 1' },
    { code: 7, name: 'thermistor2', words: 'thermistor 2' },
    { code: 8, name: 'thermistor3', words: 'thermistor 3' },
    { code: 9, name: 'thermistor4', words: 'thermistor 4' },
  ],
  trip: [
    { code: 0, name: 'none', words: 'no trip' },
    { code: 1, name: 'hostLost', words: 'The host fell silent.' },
    { code: 2, name: 'stopLine', words: 'The stop line opened.' },
    { code: 3, name: 'shortCircuit', words: 'The pack current went beyond the short-circuit limit.' },
    { code: 4, name: 'packCurrent', words: 'The pack current stayed beyond its limit.' },
    { code: 5, name: 'railCurrent', words: 'The rail current stayed beyond its limit.' },
    { code: 6, name: 'clipped', words: 'A current tap was beyond its range for too long.' },
    { code: 7, name: 'overTemperature', words: 'A thermistor read too hot.' },
    { code: 8, name: 'thermistorOpen', words: 'A thermistor is open.' },
    { code: 9, name: 'thermistorShort', words: 'A thermistor is shorted.' },
    { code: 10, name: 'thermistorIdle', words: 'A thermistor saw no heat while power flowed.' },
    { code: 11, name: 'underVoltage', words: 'The pack voltage fell too low.' },
    { code: 12, name: 'overSpeed', words: 'The motor went beyond its speed limit.' },
    { code: 13, name: 'noHall', words: 'No Hall edge came although the throttle was open.' },
    { code: 14, name: 'noisyLine', words: 'A line changed faster than any motor can.' },
    { code: 15, name: 'supply', words: 'The rig\'s own 5 V fell below 4.5 V.' },
    { code: 16, name: 'watchdog', words: 'The rig\'s processor hung and was reset.' },
    { code: 17, name: 'brownOut', words: 'The rig\'s supply broke down and it was reset.' },
    { code: 18, name: 'stuckFeed', words: 'The feed stayed on although it was switched off.' },
    { code: 19, name: 'converter', words: 'The converter stopped.' },
  ],
  resetCause: [
    { code: 0, name: 'unknown', words: 'unknown' },
    { code: 1, name: 'powerOn', words: 'power on' },
    { code: 2, name: 'external', words: 'reset line (port opened)' },
    { code: 3, name: 'brownOut', words: 'brown-out' },
    { code: 4, name: 'watchdog', words: 'watchdog' },
  ],
  reason: [
    { code: 1, name: 'unknownCommand', words: 'The rig does not know this command.' },
    { code: 2, name: 'badLength', words: 'The command has the wrong length.' },
    { code: 3, name: 'newerMajor', words: 'The rig speaks an older major version of the protocol.' },
    { code: 4, name: 'outOfRange', words: 'A value is out of range.' },
    { code: 5, name: 'notLive', words: 'The rig is not live.' },
    { code: 6, name: 'tripped', words: 'The rig is tripped: clear the trip first.' },
    { code: 7, name: 'stopOpen', words: 'The stop line is open.' },
    { code: 8, name: 'stopNotSeen', words: 'The stop has not been pressed once in this session.' },
    { code: 9, name: 'notStreaming', words: 'The stream is off.' },
    { code: 10, name: 'tapNotScanned', words: 'A tap that this needs is not in the scan list.' },
    { code: 11, name: 'feedOff', words: 'The feed is not on.' },
    { code: 12, name: 'noFirstPower', words: 'The limited feed has not filled the controller\'s capacitor in this session.' },
    { code: 13, name: 'polarity', words: 'The pack is reversed or missing.' },
    { code: 14, name: 'railDown', words: 'The receiver rail is not up.' },
    { code: 15, name: 'neutralTooShort', words: 'Neutral has not run long enough.' },
    { code: 16, name: 'limitsNotSet', words: 'The pulse widths of this output are not set.' },
    { code: 17, name: 'firstStep', words: 'The first throttle step is too large.' },
    { code: 18, name: 'throttleCap', words: 'The throttle is capped until the fail-safe test is passed.' },
    { code: 19, name: 'loadHot', words: 'The load bank has to cool down.' },
    { code: 20, name: 'busy', words: 'The rig is busy with another command.' },
    { code: 21, name: 'baudTooSlow', words: 'The link is too slow for a burst.' },
    { code: 22, name: 'badCrc', words: 'The bytes do not match their CRC.' },
    { code: 23, name: 'wrongSession', words: 'Another session is live.' },
    { code: 24, name: 'notStill', words: 'The motor may still be turning.' },
    { code: 25, name: 'supplyLow', words: 'The rig\'s own supply is too low.' },
    { code: 26, name: 'notTurning', words: 'The motor is not turning.' },
  ],
  condition: [
    { code: 0, name: 'streamOff', words: 'the stream is off' },
    { code: 1, name: 'stopOpen', words: 'the stop line is open' },
    { code: 2, name: 'stopNotSeen', words: 'the stop has not been pressed in this session' },
    { code: 3, name: 'tripLatched', words: 'a trip is latched' },
    { code: 4, name: 'supplyLow', words: 'the rig\'s own supply is low or not measured' },
    { code: 5, name: 'converterDead', words: 'the converter does not run' },
  ],
  event: [
    { code: 1, name: 'action', words: 'the marked action fired; value is the sample index' },
    { code: 2, name: 'loadOff', words: 'the load bank switched off' },
    { code: 3, name: 'driveEnded', words: 'a drive ended by itself; value is the output' },
    { code: 4, name: 'failSafe', words: 'result of the fail-safe test; value is ms until the speed fell, 65535 when it did not' },
    { code: 5, name: 'feed', words: 'the feed changed; value is the level' },
    { code: 6, name: 'trip', words: 'a trip; value is the code' },
    { code: 7, name: 'restarted', words: 'the rig restarted; value is the reset cause' },
    { code: 8, name: 'firstPower', words: 'the limited feed filled the capacitor; value is ms' },
  ],
} as const satisfies Record<string, readonly CodeEntry[]>;
export type CodeGroup = keyof typeof codeTable;
