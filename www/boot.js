// Starts the page, and says so plainly when it cannot be started.

import { bringChunks } from './chunks.js';
import { keepOffline } from './offline.js';

const STORED = 'Whatever you had typed is still stored on this device.';

function say(title, advice) {
  const notice = document.createElement('main');
  notice.id = 'trouble';
  notice.setAttribute('role', 'alert');
  const heading = document.createElement('h1');
  heading.textContent = title;
  const text = document.createElement('p');
  text.textContent = `${advice} ${STORED}`;
  notice.append(heading, text);
  document.getElementById('app').replaceChildren(notice);
}

async function start() {
  if (typeof WebAssembly !== 'object') {
    say('This browser is too old', 'Notchwright needs WebAssembly: please update the browser.');
    return;
  }
  try {
    const module = await import('./pkg/notchwright.js');
    const page = await module.default({ module_or_path: new URL('./pkg/page.wasm', import.meta.url) });
    bringChunks(page);
    module.startPage();
  } catch (error) {
    console.error(error);
    say('Notchwright could not start', 'Please load the page again.');
    return;
  }
  await keepOffline();
}

// After a trap the module answers nothing any more, and a dead page must not look alive.
window.addEventListener('error', ({ error }) => {
  if (error instanceof WebAssembly.RuntimeError) {
    say('Notchwright has stopped', 'Please load the page again.');
  }
});

start();
