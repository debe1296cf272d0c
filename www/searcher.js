// Searches for layouts of sheets beside the page: the same program on another thread, where nobody sees it.

import load, { searchSheets } from './pkg/page.js';
import { start } from './chunks.js';

async function ready() {
  const page = await load({ module_or_path: new URL('./pkg/page.wasm', import.meta.url) });
  await start('parts', page);
}

const isReady = ready();

// Where it cannot be done here, the page does it by itself.
self.onmessage = async ({ data }) => {
  let answer = null;
  try {
    await isReady;
    answer = searchSheets(...data) ?? null;
  } catch (error) {
    console.warn('no search beside the page:', error);
  }
  self.postMessage(answer);
};
