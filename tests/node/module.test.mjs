// The shipped module, loaded as a script would load it: no browser, no network.

import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import * as notchwright from '../../dist/pkg/notchwright.js';
import { assertFinite, assertProblems } from './reply.mjs';
import { REQUESTS } from './requests.mjs';

const bytes = readFileSync(new URL('../../dist/pkg/notchwright_bg.wasm', import.meta.url));
notchwright.initSync({ module: bytes });

test('every exported function has a request here', () => {
  const own = ['default', 'initSync', 'searchSheets', 'startPage'];
  const exported = Object.keys(notchwright).filter((name) => !own.includes(name));
  assert.deepEqual(exported.sort(), Object.keys(REQUESTS).sort());
});

for (const [name, request] of Object.entries(REQUESTS)) {
  test(`${name} answers a plain object with a plain object`, () => {
    const reply = notchwright[name](request);
    assert.equal(reply.ok, true, JSON.stringify(reply));
    assert.equal(Object.getPrototypeOf(reply.plan), Object.prototype);
    assert.ok(Array.isArray(reply.notes));
    assertFinite(reply);
  });

  test(`${name} names an unknown field, and what is no request`, () => {
    const problems = assertProblems(notchwright[name]({ ...request, colour: 'red' }));
    assert.ok(problems.some(({ field }) => field === 'colour'), JSON.stringify(problems));
    for (const none of [undefined, null, 7, 'text', [], () => 1]) {
      assertProblems(notchwright[name](none));
    }
  });
}

test('all problems of a request come at once', () => {
  const bad = { ...REQUESTS.boxJoint, width: -1, a: { thickness: NaN }, cutter: {} };
  const fields = assertProblems(notchwright.boxJoint(bad)).map(({ field }) => field);
  for (const field of ['width', 'a.thickness', 'cutter.kerf']) assert.ok(fields.includes(field), `${fields}`);
});

// Derived: 438.1 − 2 · 15.6, and 38.1 + 400 before.
test('parts follow the sheet as measured', () => {
  const [front] = notchwright.partsList(REQUESTS.partsList).plan.parts;
  assert.ok(Math.abs(front.length.finished - 406.9) < 1e-9, `${front.length.finished}`);
  assert.ok(Math.abs(front.length.change.by + 1.2) < 1e-9, `${front.length.change.by}`);
});

// Derived: an inch is 25.4 mm by definition.
test('lengths go in and out', () => {
  assert.equal(notchwright.parseLength({ text: '1 1/2"', unit: 'mm' }).plan.mm, 38.1);
  assert.equal(notchwright.formatLength({ mm: 38.1, unit: 'in' }).plan.text, '1 1/2"');
});
