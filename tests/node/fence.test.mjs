// Once an exception has left the module, nothing gets in again.

import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { boxJoint, formatLength, initSync } from '../../dist/pkg/notchwright.js';
import { REQUESTS } from './requests.mjs';

const bytes = readFileSync(new URL('../../dist/pkg/notchwright_bg.wasm', import.meta.url));
const { memory } = initSync({ module: bytes });

test('a module that has trapped refuses all that follows', () => {
  assert.equal(boxJoint(REQUESTS.boxJoint).ok, true);
  const whole = new Uint8Array(memory.buffer).slice();
  // Every address in it leads nowhere.
  new Uint8Array(memory.buffer).fill(0xff);
  assert.throws(() => boxJoint(REQUESTS.boxJoint), WebAssembly.RuntimeError);
  // With its memory back it could answer, but what it had begun stays half done.
  new Uint8Array(memory.buffer).set(whole);
  assert.throws(() => boxJoint(REQUESTS.boxJoint), { name: 'Stopped' });
  assert.throws(() => formatLength({ mm: 1, unit: 'mm' }), { name: 'Stopped' });
});
