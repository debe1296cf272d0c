// Keeps a copy of the page on the device. The page is told, as events on the window:
//   notchwright:offline-ready  once, when the first copy is complete
//   notchwright:update         when a newer copy is complete and waits for consent
// and answers with notchwright:use-update, on which the newer copy takes over.

function tell(name) {
  window.dispatchEvent(new CustomEvent(`notchwright:${name}`));
}

function follow(worker, isFirst) {
  worker.addEventListener('statechange', () => {
    if (isFirst && worker.state === 'activated') tell('offline-ready');
    if (!isFirst && worker.state === 'installed') tell('update');
  });
}

function useUpdate(registration, event) {
  if (!registration.waiting) return;
  // Whoever asks need not reload the page.
  event.preventDefault();
  const reload = () => location.reload();
  navigator.serviceWorker.addEventListener('controllerchange', reload, { once: true });
  registration.waiting.postMessage({ kind: 'use-update' });
}

export async function keepOffline() {
  // Absent in a file opened from storage, and where the host has no https.
  if (!('serviceWorker' in navigator)) return;
  let registration;
  try {
    const address = new URL('./sw.js', import.meta.url);
    registration = await navigator.serviceWorker.register(address, { updateViaCache: 'none' });
  } catch (error) {
    // The page is whole without its copy: it only needs the network the next time.
    console.warn('No copy for working offline:', error);
    return;
  }
  window.addEventListener('notchwright:use-update', (event) => useUpdate(registration, event));
  if (registration.waiting) tell('update');
  if (registration.installing) follow(registration.installing, !registration.active);
  registration.addEventListener('updatefound', () => {
    follow(registration.installing, !registration.active);
  });
}
