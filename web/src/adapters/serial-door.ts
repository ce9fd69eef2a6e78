// SPDX-License-Identifier: MIT
// What the window must do for Web Serial: ask the person for a port, notice one being plugged in. The port itself
// is opened in the worker. Null where the browser has no Web Serial.

export interface SerialChoice {
  readonly vendor?: number;
  readonly product?: number;
}
export interface SerialDoor {
  request(): Promise<SerialChoice | null>;
  present(vendor?: number, product?: number): Promise<boolean>;
  onPlugged(act: () => void): void;
}
const choice = (port: SerialPort): SerialChoice => {
  const { usbVendorId, usbProductId } = port.getInfo();
  return { vendor: usbVendorId, product: usbProductId };
};

export function serialDoor(): SerialDoor | null {
  if (!('serial' in navigator)) return null;
  const { serial } = navigator;
  return {
    async request() {
      try {
        return choice(await serial.requestPort());
      } catch {
        return null;
      }
    },
    async present(vendor, product) {
      const ports = (await serial.getPorts()).map(choice);
      return ports.some(
        (port) => vendor === undefined || (port.vendor === vendor && port.product === product),
      );
    },
    onPlugged: (act) => serial.addEventListener('connect', act),
  };
}
