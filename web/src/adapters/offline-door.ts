// SPDX-License-Identifier: MIT
// What keeps the page on this computer, seen from the page: stored or not, a newer version waiting, let it take over.
// Null where the browser keeps no pages, or the page is not a built one.

export interface OfflineDoor {
  /** Every file is stored: the page opens without a network from now on. */
  onStored(act: () => void): void;
  /** A newer version is stored and waits. */
  onNewer(act: () => void): void;
  /** Reloads the page on the newer version. */
  takeOver(): void;
}
export function offlineDoor(): OfflineDoor | null {
  if (!('serviceWorker' in navigator) || !import.meta.env.PROD) return null;
  const { serviceWorker } = navigator;
  const registered = afterLoad().then(() =>
    serviceWorker.register('./service-worker.js', { updateViaCache: 'none' }),
  );
  return {
    onStored: (act) => void serviceWorker.ready.then(act),
    onNewer: (act) =>
      void registered.then(
        (registration) => watch(registration, act),
        () => {},
      ),
    takeOver() {
      serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
      void registered.then(({ waiting }) => waiting?.postMessage('take over'));
    },
  };
}
/** Storing the page must not slow down its first show. */
const afterLoad = (): Promise<void> =>
  document.readyState === 'complete'
    ? Promise.resolve()
    : new Promise((loaded) => addEventListener('load', () => loaded(), { once: true }));

/** Asks for a newer one whenever the page comes back to the front; none is found without a network. */
function watch(registration: ServiceWorkerRegistration, act: () => void): void {
  const tellWaiting = () => {
    if (registration.waiting && registration.active) act();
  };
  tellWaiting();
  registration.addEventListener('updatefound', () =>
    registration.installing?.addEventListener('statechange', tellWaiting),
  );
  document.addEventListener('visibilitychange', () => {
    if (!document.hidden) registration.update().catch(() => {});
  });
}
