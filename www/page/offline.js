/**
 * The site without a network: a service worker keeps it, and tells when a newer version waits. Only a packed site on a
 * host is kept: the source as served changes with every reload, and the one file is kept already.
 */

/**
 * @param {object} told
 * @param {(use: () => void) => void} told.newer a newer version waits; `use` has it take over in every window
 * @param {() => Promise<boolean>} told.settle stores everything typed; whether the window may be loaded anew
 */
export async function keepOffline({ newer, settle }) {
  if (!globalThis.SLOPE_PACKED || globalThis.SLOPE_CORE || !('serviceWorker' in navigator)) return;
  const { serviceWorker } = navigator;
  const isFirst = !serviceWorker.controller;
  const registration = await serviceWorker.register(new URL('service-worker.js', document.baseURI));
  const tell = () => {
    const { waiting } = registration;
    if (waiting && !isFirst) newer(() => waiting.postMessage('take over'));
  };
  const watch = () => registration.installing?.addEventListener('statechange', tell);
  tell();
  // One may have been found while the page was being opened.
  watch();
  registration.addEventListener('updatefound', watch);
  serviceWorker.addEventListener('controllerchange', async () => {
    if (!isFirst && await settle()) location.reload();
  });
}
