// Only compiled, never run: a script against the shipped types.

import init, { boxJoint, boxJointChoices, dovetail, drawerBox, formatLength, initSync, parseLength, partsList, sheetLayout } from '../../dist/pkg/notchwright.js';

const bytes: Uint8Array<ArrayBuffer> = new Uint8Array();
initSync({ module: bytes });
await init({ module_or_path: bytes });

const boards = { width: 140, a: { thickness: 12 }, b: { thickness: 18 } };
const cutter = { kerf: 3.07 };
const screw = { threadsPerInch: 16, divisions: 80 };

const reply = boxJoint({ ...boards, cutter, screw, layout: { kind: 'count', count: 9 } });
if (reply.ok) {
  const readings: number[] = reply.plan.sets.flatMap((set) => set.stops.map((stop) => stop.reading));
  const gap: number = reply.plan.dryFit.smallestGap;
  const said: string[] = reply.notes.map((note) => note.message);
  console.log(readings, gap, said);
} else {
  const fields: string[] = reply.problems.map((problem) => problem.field);
  console.log(fields);
}

const choices = boxJointChoices({ ...boards, cutter, screw });
const counts: number[] = choices.ok ? choices.plan.choices.map((choice) => choice.count) : [];

const length = parseLength({ text: '1 1/2"', unit: 'mm' });
const text = formatLength({ mm: length.ok ? length.plan.mm : 0, unit: 'in', fraction: 64 });
const layout = sheetLayout({
  sheets: [{ length: 2440, width: 1220, edgeTrim: { start: 5 }, grain: 'length' }],
  parts: [{ length: 560, width: 120, count: 16, trim: 1 }],
  kerf: 3.2,
  search: { from: 0, steps: 10 },
});
const fences: number[] = layout.ok ? layout.plan.sheets.flatMap((sheet) => sheet.cuts.map((cut) => cut.fence)) : [];
console.log(fences);
console.log(counts, text.ok && text.plan.text.length);

const parts = partsList({
  stocks: [{ name: 'Ash', thickness: 15.6, former: 15 }],
  parts: [{ name: 'Side', count: 16, length: '300 - 2*t', width: 60 }],
});
const changes: number[] = parts.ok ? parts.plan.parts.map(({ length }) => length.change?.by ?? 0) : [];
console.log(changes);
const opening = {
  kind: 'opening', width: 900, height: 640, depth: 600, slides: 'runners', sideClearance: 1, above: 2,
} as const;
const bottom = { thickness: 6, groove: { fromEdge: 10, depth: 5, bit: 6 } };

const drawers = drawerBox({
  size: opening,
  count: 8,
  between: 10,
  side: { thickness: 12 },
  front: { thickness: 14 },
  joint: { kind: 'box', layout: { kind: 'onePass' }, cutter, screw },
  bottom,
  wood: { species: 'white-ash', sawn: 'flat', moisture: 8 },
  climate: { kind: 'moisture', driest: 6, wettest: 12 },
});
for (const drawer of drawers.ok ? drawers.plan.drawers : []) {
  // What is handed on is a request as it stands.
  if (drawer.joint.boxJoint) console.log(boxJoint(drawer.joint.boxJoint).ok);
  if (drawer.joint.dovetail) console.log(dovetail(drawer.joint.dovetail).ok);
}

const halfBlind = drawerBox({
  size: opening,
  side: { thickness: 12 },
  front: { thickness: 19 },
  back: { thickness: 10 },
  joint: {
    kind: 'dovetail', slope: { kind: 'ratio', run: 7 }, tails: 12, halfPin: 8, narrowPin: 6,
    lap: 5, backLap: 0, cutter, screw,
  },
  bottom,
});
for (const drawer of halfBlind.ok ? halfBlind.plan.drawers : []) {
  const back = drawer.joint.back?.dovetail;
  if (back) console.log(dovetail(back).ok, drawer.groove.runs[0]?.backFirst?.stopped?.from);
}

// @ts-expect-error: a plan is only there once the reply is known to be one.
reply.plan;
// @ts-expect-error: the board's width is needed.
boxJointChoices({ a: boards.a, b: boards.b, cutter, screw });
// @ts-expect-error: there is no such layout.
boxJoint({ ...boards, cutter, screw, layout: { kind: 'even' } });
// @ts-expect-error: lengths are numbers in mm.
formatLength({ mm: '12', unit: 'in' });
// @ts-expect-error: a part has a length.
partsList({ stocks: [], parts: [{ name: 'Side', count: 1, width: 60 }] });
