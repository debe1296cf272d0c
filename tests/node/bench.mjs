// How long the shipped module takes over a large joint. Prints a median and asserts nothing, since machines differ.

import { readFileSync } from 'node:fs';
import * as notchwright from '../../dist/pkg/notchwright.js';

const RUNS = 501;
const REQUEST = {
  width: 1200,
  a: { thickness: 12 },
  b: { thickness: 18 },
  cutter: { kerf: 1.6 },
  screw: { threadsPerInch: 16, divisions: 80 },
  layout: { kind: 'count', count: 200 },
};

const bytes = readFileSync(new URL('../../dist/pkg/notchwright_bg.wasm', import.meta.url));
notchwright.initSync({ module: bytes });

const times = [];
for (let run = 0; run < RUNS; run += 1) {
  const start = performance.now();
  const reply = notchwright.boxJoint(REQUEST);
  times.push(performance.now() - start);
  if (!reply.ok) throw new Error(JSON.stringify(reply.problems));
}
times.sort((a, b) => a - b);
const median = times[Math.floor(RUNS / 2)].toFixed(2);
console.log(`box joint, ${REQUEST.layout.count} fingers, asked and answered in Node: ${median} ms`);
