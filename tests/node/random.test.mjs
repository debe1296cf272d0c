// Whatever is asked, every function answers: it never throws, and never gives a number that is none.

import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import * as notchwright from '../../dist/pkg/notchwright.js';
import { assertFinite, assertProblems } from './reply.mjs';
import { REQUESTS } from './requests.mjs';

const TIMES = 10_000;

const bytes = readFileSync(new URL('../../dist/pkg/notchwright_bg.wasm', import.meta.url));
notchwright.initSync({ module: bytes });

/** The same numbers in every run, from 0 up to 1: a 32-bit xorshift. */
function numbers(seed) {
  let state = seed;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
}

const ODD = [
  0, -0, -1, 1e-9, 0.05, 0.5, 1e9, 1e308, -1e308, NaN, Infinity, -Infinity, null, undefined, true,
  '', '12', '½', [], [1, NaN], {}, { kind: 'none' }, Symbol.iterator, 12n, () => 1,
];

/** How many values an object holds, however deep. */
function size(value) {
  if (value === null || typeof value !== 'object') return 1;
  return Object.values(value).reduce((sum, part) => sum + size(part), 0);
}

/**
 * A copy with some of its values scaled, replaced or dropped, and now and then one too many; of a large
 * request a smaller share, so that some of them still hold together.
 */
function bend(value, random, share) {
  if (random() < 0.06 * share) return ODD[Math.floor(random() * ODD.length)];
  if (typeof value === 'number') {
    return random() < 0.6 * share ? value * 10 ** (random() * 2 - 1) : value;
  }
  if (Array.isArray(value)) return value.map((part) => bend(part, random, share));
  if (value === null || typeof value !== 'object') return value;
  const entries = Object.entries(value).filter(() => random() > 0.02 * share);
  if (random() < 0.02 * share) entries.push(['surplus', 1]);
  return Object.fromEntries(entries.map(([name, part]) => [name, bend(part, random, share)]));
}

/** As many values as are bent without taking a smaller share of them. */
const FEW = 8;

for (const [name, request] of Object.entries(REQUESTS)) {
  test(`${name} answers ${TIMES} random requests`, () => {
    const random = numbers(20_011);
    const share = Math.min(1, FEW / size(request));
    let plans = 0;
    for (let i = 0; i < TIMES; i += 1) {
      const reply = notchwright[name](bend(request, random, share));
      if (reply.ok) {
        assertFinite(reply);
        plans += 1;
      } else {
        assertProblems(reply);
      }
    }
    // Neither side may be so rare that it is not tried at all.
    assert.ok(plans > TIMES / 100 && plans < TIMES, `${plans} plans`);
  });
}
