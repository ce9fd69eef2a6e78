// SPDX-License-Identifier: MIT
// What the virtual rig's worker does with each message, apart from being a worker: makes the rig and its car,
// joins it to a port, passes on what a person does. The firmware is handed in.
import { truthOf, type VirtualTruth } from '#core/record/virtual-truth';
import { linkLostWords } from '#session/rig-error';
import { MeterInHand } from './meter-in-hand.ts';
import { drawCar } from './physics/population.ts';
import { type FromRigWorker, toRigPortSchema, type ToRigWorker, toRigWorkerSchema } from './rig-messages.ts';
import { pacedBy, type WallClock } from './rig-pace.ts';
import { ServedRig } from './served-rig.ts';
import { createVirtualRig } from './virtual-rig.ts';

export type Reply = (message: FromRigWorker, transfer: Transferable[]) => void;

const wordsOf = (cause: unknown): string => (cause instanceof Error ? cause.message : String(cause));

export class RigService {
  private served: ServedRig | null = null;
  private port: MessagePort | null = null;
  private meter: MeterInHand | null = null;

  constructor(
    private readonly firmware: () => Promise<string>,
    private readonly wall: WallClock,
    private readonly reply: Reply,
  ) {}

  async take(data: unknown): Promise<void> {
    try {
      const message = toRigWorkerSchema.parse(data);
      if (message.kind === 'open') await this.open(message);
      else if (message.kind === 'close') this.close();
      else if (message.kind === 'person') this.reply({ kind: 'acted', figure: this.act(message.act) }, []);
      else if (this.served) this.serve(this.served, message);
    } catch (cause) {
      this.reply({ kind: 'failed', words: `The virtual rig could not start: ${wordsOf(cause)}` }, []);
    }
  }

  private async open({ seed, faults, speed, store }: Extract<ToRigWorker, { kind: 'open' }>): Promise<void> {
    this.close();
    const hex = await this.firmware();
    const { plant: bare, car, description } = drawCar(seed, faults);
    const meter = new MeterInHand(bare, seed);
    const { plant } = meter;
    const rig = createVirtualRig({ hex, plant, seed, faults, store });
    const { port1, port2 } = new MessageChannel();
    const failed = (cause: unknown): void => port1.postMessage({ kind: 'lost', words: wordsOf(cause) });
    const served = new ServedRig(
      rig,
      pacedBy(this.wall, speed),
      (bytes) => port1.postMessage({ kind: 'bytes', bytes }),
      failed,
      (nowMs) => port1.postMessage({ kind: 'time', nowMs }),
    );
    const truth = (): VirtualTruth => truthOf({ seed, faults, truth: () => plant.truth() });
    port1.onmessage = ({ data }) =>
      passOn(served, data, () => port1.postMessage({ kind: 'truth', virtual: truth() }));
    this.served = served;
    this.port = port1;
    this.meter = meter;
    this.reply({ kind: 'opened', car, description }, [port2]);
  }

  private serve(served: ServedRig, message: ToRigWorker): void {
    if (message.kind === 'meter') this.meter?.take(message.meter);
    else if (message.kind === 'readMeter')
      this.reply({ kind: 'metered', value: this.meter?.read(message.place) ?? null }, []);
    else if (message.kind === 'exportStore')
      this.reply({ kind: 'store', bytes: Uint8Array.from(served.rig.exportStore()) }, []);
    else if (message.kind === 'unplug') this.unplug();
  }

  /** Answered even while no rig is there. */
  private act(words: string): number | null {
    if (this.meter?.act(words)) return null;
    return this.served?.person(words) ?? null;
  }

  private unplug(): void {
    this.served?.closed();
    this.port?.postMessage({ kind: 'lost', words: linkLostWords });
  }

  private close(): void {
    this.served?.stop();
    this.port?.close();
    this.served = this.port = null;
  }
}

function passOn(served: ServedRig, data: unknown, tellTruth: () => void): void {
  const message = toRigPortSchema.parse(data);
  if (message.kind === 'bytes') served.receive(message.bytes);
  else if (message.kind === 'heard') served.keepsUp(message.nowMs);
  else if (message.kind === 'askTruth') tellTruth();
  else if (message.kind === 'open') served.opened();
  else served.closed();
}
