// Searches for layouts of sheets beside the page: the same program on another thread, where nobody sees it.

import load, { searchSheets } from './pkg/page.js';
import { start } from './chunks.js';
import { answer } from './search.js';

async function ready() {
  const page = await load({ module_or_path: new URL('./pkg/page.wasm', import.meta.url) });
  await start('parts', page);
}

answer(ready(), searchSheets);
