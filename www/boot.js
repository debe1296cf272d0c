// Starts the page, and says so plainly when it cannot be started.

import { bringChunks } from './chunks.js';
import { keepOffline } from './offline.js';
import { sayStopped, watchForTraps } from './stopped.js';

// Lets the browser paint and answer before what follows.
function pause() {
  return new Promise((done) => setTimeout(done));
}

// Until what stands in the page has been seen, and not for long where nobody looks.
function seen() {
  const frame = () => new Promise((done) => requestAnimationFrame(done));
  const twoFrames = frame().then(frame);
  return Promise.race([twoFrames, new Promise((done) => setTimeout(done, 250))]);
}

async function start() {
  watchForTraps();
  if (typeof WebAssembly !== 'object') {
    sayStopped('This browser is too old', 'It lacks WebAssembly: please update it.');
    return;
  }
  try {
    const module = await import('./pkg/page.js');
    const page = await module.default({ module_or_path: new URL('./pkg/page.wasm', import.meta.url) });
    bringChunks(page);
    await seen();
    module.startPage();
    await pause();
  } catch (error) {
    console.error(error);
    sayStopped('Notchwright could not start', 'Please load the page again.');
    // A copy on this device that cannot start gives way to a newer one; none is made of a page that cannot.
    if (!navigator.serviceWorker?.controller) return;
  }
  await keepOffline();
}

start();
