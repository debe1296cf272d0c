// The shipped module, loaded as a script would load it: no browser, no network.

import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import * as notchwright from '../../dist/pkg/notchwright.js';

const bytes = readFileSync(new URL('../../dist/pkg/notchwright_bg.wasm', import.meta.url));
notchwright.initSync({ module: bytes });

test('the module starts without a page', () => {
  assert.equal(typeof notchwright.startPage, 'function');
});
