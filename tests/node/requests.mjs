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
};
