// One whole request for each exported function, as a script would write it.

export const REQUESTS = {
  boxJoint: {
    width: 140,
    a: { thickness: 12 },
    b: { thickness: 18 },
    cutter: { kerf: 3.07 },
    screw: { threadsPerInch: 16, divisions: 80 },
    layout: { kind: 'count', count: 9 },
  },
  boxJointChoices: {
    width: 140,
    a: { thickness: 12 },
    b: { thickness: 18 },
    cutter: { kerf: 3.07 },
    screw: { lead: 1.5, divisions: 100 },
  },
  cutterStack: { outer: [3.2, 3.2], chippers: [1.6, 3.2], shims: [0.1, 0.2], want: 10 },
  kerfFromSlot: { steps: 4, step: 2.5, slotWidth: 13.1 },
  parseLength: { text: '1 1/2"', unit: 'mm' },
  formatLength: { mm: 19.05, unit: 'in', fraction: 64 },
  sledFit: {
    saw: {
      bladeToSlot: 118,
      measuredFrom: 'nearTooth',
      slotSide: 'left',
      frontToArbor: 400,
      arborToRear: 300,
      greatestHeight: 80,
      secondSlot: 121,
    },
    blade: { diameter: 254, kerf: 3.2 },
    sled: {
      base: { thickness: 15, width: 500, length: 600, margin: 20 },
      carriageFace: 180,
      frontRail: 380,
      runner: { contactNear: 20, contactFar: 420, width: 19, holes: [90, 215, 340], holeClearance: 0.5 },
    },
    cut: { depth: 18.5, boardThickness: 12, boardWidth: 140, carriageTravel: 320 },
    measured: { near: 150, far: 60 },
    play: 0.1,
  },
  squareTest: { fenceEnd: 20.15, freeEnd: 20, apart: 300, pivotToAdjuster: 600, boardThickness: 18 },
  screwCheck: {
    screw: { lead: 2, divisions: 100 },
    points: [0, 25, 50, 75].flatMap((x) => [
      { commanded: x, measured: x * 1.001, approach: 'up' },
      { commanded: x, measured: x * 1.001 + 0.01, approach: 'up' },
      { commanded: x, measured: x * 1.001 - 0.06, approach: 'down' },
      { commanded: x, measured: x * 1.001 - 0.05, approach: 'down' },
    ]),
  },
  grooveSetup: {
    fromEdge: 12,
    width: 10,
    bit: 6,
    stopped: { from: 40, to: 200 },
    passDepth: 3,
    depth: 7,
  },
};
