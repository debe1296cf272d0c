// Only compiled, never run: a script against the shipped types.

import init, { initSync, startPage } from '../../dist/pkg/notchwright.js';

const bytes: Uint8Array<ArrayBuffer> = new Uint8Array();
initSync({ module: bytes });
await init({ module_or_path: bytes });
startPage();

// @ts-expect-error: it takes nothing.
startPage('app');
