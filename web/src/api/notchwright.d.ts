// What scripts ask the module and what it answers.
//
// Lengths are numbers in mm, areas in mm², angles in degrees. Places across a board count from its
// reference edge: the one that goes against the stop on the carriage.

/** What every function returns: a plan with its notes, or every problem of the request at once. */
export type Reply<Plan> = Planned<Plan> | Refused;

/** A plan, with what should be known about it. */
export interface Planned<Plan> {
  ok: true;
  /** What was asked for. */
  plan: Plan;
  /** What to know about it, cautions included. */
  notes: Note[];
}

/** A request that cannot be answered. */
export interface Refused {
  ok: false;
  /** All that is wrong with it. */
  problems: Problem[];
}

/** What is wrong with one field of a request. */
export interface Problem {
  /** Path of the field: `cutter.kerf`, `layout.weights.2`; empty for the request itself. */
  field: string;
  /** What kind of wrong, for programs. */
  code: ProblemCode;
  /** What was given and what would work, for people; lengths in mm. */
  message: string;
  /** The bound that was passed, in the field's own unit, where there is one. */
  limit?: number;
}

/** Kinds of problems. */
export type ProblemCode =
  | 'missing'
  | 'unknown-field'
  | 'wrong-kind'
  | 'unknown-word'
  | 'not-finite'
  | 'not-whole'
  | 'too-small'
  | 'too-large'
  | 'conflict'
  | 'cutter-too-wide'
  | 'dial-too-coarse'
  | 'beyond-travel'
  | 'beyond-height'
  | 'beyond-window'
  | 'unknown-name'
  | 'not-readable'
  | 'cycle'
  | 'unresolved'
  | 'not-a-length'
  | 'division-by-zero'
  | 'larger-than-sheet'
  | 'too-few-sheets';

/** Something to know about a plan. */
export interface Note {
  /** A short name for programs, such as `floor-ridge`. */
  code: string;
  /** `caution`: somebody can get hurt; `warning`: a board can be spoiled; `info`: good to know. */
  severity: 'caution' | 'warning' | 'info';
  /** What it says; lengths in mm. */
  message: string;
  /** The field of the request that it is about, if it is about one. */
  field?: string;
}

/** A cutter that leaves upright walls: a blade, a grooving stack or a straight bit. */
export interface Cutter {
  /** Width it really cuts, measured in a test cut, mm; 0.2 to 60. */
  kerf: number;
  /** Diameter, mm; 1 to 1000. */
  diameter?: number;
  /** Grind of its teeth; flat when left out. */
  grind?: Grind;
  /** Least overlap of neighbouring passes, mm, at most half the kerf; 0.3 when left out. */
  overlap?: number;
}

/** How the tips of the teeth are ground. */
export type Grind =
  /** Square to the blade: leaves a flat floor. */
  | { kind: 'flat' }
  /** Each tooth slopes over the whole kerf, alternately left and right, by this bevel, 0 to 45 degrees. */
  | { kind: 'alternate'; bevelDegrees: number }
  /** Ground to a dovetail's slope. */
  | { kind: 'slope' };

/** The screw that moves the carriage, and its wheel; give either `lead` or `threadsPerInch`. */
export type Screw = ScrewDial & (
  /** Carriage travel per turn, mm; 0.05 to 100. */
  | { lead: number; threadsPerInch?: never }
  /** Threads per inch of a single-start screw; lead = 25.4 / threadsPerInch; 0.25 to 500. */
  | { threadsPerInch: number; lead?: never }
);

/** What a screw has besides its lead. */
export interface ScrewDial {
  /** Graduations of the wheel per turn; 1 to 10000, whole. */
  divisions: number;
  /** Lost motion when the wheel changes direction, mm; 0 when left out. */
  backlash?: number;
  /** What readings are rounded to; whole divisions when left out. */
  rounding?: 'division' | 'half' | 'none';
  /** Where the cut goes as readings rise, seen from the reference edge; `away` when left out. */
  rises?: 'away' | 'towards';
  /** How far the carriage can travel, mm; unlimited when left out. */
  travel?: number;
}

/** Where the reading is zero. */
export type Zero =
  /** The reference edge just touches the side of the stopped cutter: reading = at + kerf. */
  | { kind: 'touch' }
  /** The cutter is flush with the reference edge: reading = at. */
  | { kind: 'flush' }
  /** A kerf made at `reading`, mm, lies with its near side `measured` mm from the reference edge. */
  | { kind: 'testKerf'; reading: number; measured: number };

/** One board. */
export interface Board {
  /** Thickness, mm; 0.5 to 200. */
  thickness: number;
}

/** How the width is divided into pins and sockets. */
export type Layout =
  /** Into so many equal fingers, pins and sockets together; 2 to 500. */
  | { kind: 'count'; count: number }
  /** Into the odd number of fingers nearest this width, mm. */
  | { kind: 'finger'; width: number }
  /** Sockets as wide as the cutter; the rest goes to both end fingers, to the far edge, or is ripped off. */
  | { kind: 'onePass'; leftover: 'ends' | 'far' | 'rip' }
  /** By relative widths; mirrored: they run back again from the last one, which stands in the middle once. */
  | { kind: 'pattern'; weights: number[]; mirrored?: boolean };

/** A groove along the inner faces of both boards. */
export interface Groove {
  /** Edge of the board to the groove's nearer side, mm. */
  fromEdge: number;
  /** Width, mm. */
  width: number;
  /** Depth, mm. */
  depth: number;
  /** Which edge it is measured from; `reference` when left out. */
  edge?: 'reference' | 'far';
}

/** What the saw and sled allow. */
export interface Saw {
  /** Greatest height of the blade above the table, mm; no bound when left out. */
  greatestHeight?: number;
  /** Thickness of the sled's base, mm; 0 when left out. */
  base?: number;
  /** Carriage face to the front rail's near face, mm; no bound when left out, or when the cutter's diameter is. */
  window?: number;
}

/** A box joint between the ends of two boards of the same width. */
export interface BoxJointRequest {
  /** Width of both boards, mm; 2 to 3000. */
  width: number;
  /** Board A. */
  a: Board;
  /** Board B. */
  b: Board;
  /** The cutter. */
  cutter: Cutter;
  /** The screw. */
  screw: Screw;
  /** Where the reading is zero; `touch` when left out. */
  zero?: Zero;
  /** How the width is divided. */
  layout: Layout;
  /** What board A has at the reference edge; `pin` when left out. */
  first?: 'pin' | 'socket';
  /** Glue gap at each flank, mm; 0.05 when left out. */
  glueGap?: number;
  /** How far pins stand past the mating face, mm; 0 when left out. */
  proud?: number;
  /** A groove along both boards, such as a drawer bottom's. */
  groove?: Groove;
  /** What the saw and sled allow; nothing is checked when left out. */
  saw?: Saw;
}

/** A box joint, ready to cut. */
export interface BoxJointPlan {
  /** Number of spaces, pins and sockets together. */
  count: number;
  /** Width of a usual finger, mm: the mean for a pattern, half the pitch for one pass per socket. */
  fingerWidth: number;
  /** Boundaries between the spaces, both edges included, mm. */
  boundaries: number[];
  /** Whether the layout reads the same from both edges. */
  symmetric: boolean;
  /** Whether board A has a pin at the reference edge. */
  firstIsPin: boolean;
  /** Width of the boards that the stops are for, mm: the width asked, or the width to rip to. */
  width: number;
  /** Widths that whole fingers fill, where the rest is to be ripped off. */
  ripTo?: RipTo;
  /** Glue gap that the layout aims at, mm. */
  glueGap: number;
  /** Depth of cut in board A, mm. */
  depthA: number;
  /** Depth of cut in board B, mm. */
  depthB: number;
  /** Set-ups with their stops: board A, then board B. */
  sets: Set[];
  /** What the cuts really make. */
  dryFit: DryFit;
  /** What becomes of the groove. */
  groove?: GroovePlan;
}

/** Widths near the board's that whole fingers fill, mm. */
export interface RipTo {
  /** The greatest that is not above the board's width, mm. */
  below: number;
  /** The least that is not below it, mm. */
  above: number;
}

/** One set-up of the saw and its stops, in the order of use. */
export interface Set {
  /** What it is called. */
  name: string;
  /** Which board is cut. */
  board: 'a' | 'b';
  /** Lean of the blade, degrees; positive towards the reference edge as it rises. */
  tiltDegrees: number;
  /** Turn of the board in plan, degrees. */
  yawDegrees: number;
  /** Whether the board is turned face for face. */
  flipped: boolean;
  /** Height of the cutter above the sled's base, mm. */
  height: number;
  /** Width of each cut, mm. */
  kerf: number;
  /** Height of the ridge that each pass leaves in the middle of its kerf, mm; 0 under flat teeth. */
  ridge: number;
  /** Graduations of the wheel that these readings are for, per turn. */
  divisions: number;
  /** Where to run back to before the first stop, so that every stop is reached with rising readings. */
  runUp: Reading;
  /** The stops. */
  stops: Stop[];
}

/** A place of the wheel. */
export interface Reading {
  /** Carriage travel from zero, mm. */
  reading: number;
  /** Whole turns from zero; negative below zero, with the division still counted upwards. */
  turns: number;
  /** Divisions beyond the whole turns; may be fractional. */
  division: number;
}

/** One position of the carriage, and the pass that is cut there. */
export interface Stop {
  /** Place in the order of use, from 1. */
  number: number;
  /** The kerf's side nearest the reference edge, mm, after rounding to the dial. */
  at: number;
  /** Carriage travel from zero, mm. */
  reading: number;
  /** Whole turns from zero; negative below zero, with the division still counted upwards. */
  turns: number;
  /** Divisions beyond the whole turns; may be fractional. */
  division: number;
  /** Change of reading from the stop before, mm; for the first stop, from zero. */
  move: number;
  /** Whole turns of the move. */
  moveTurns: number;
  /** Divisions of the move beyond its whole turns. */
  moveDivision: number;
  /** Which space it clears, along the width from 0, pins and sockets alike. */
  space: number;
  /** Which socket of this board that is, along the width from 0. */
  socket: number;
  /** Which pass of its socket this is, from 1. */
  pass: number;
  /** How many passes its socket takes. */
  passes: number;
}

/** What two boards cut at these stops are like when they are put together. */
export interface DryFit {
  /** Every pair of mating flanks, from the reference edge. */
  flanks: Flank[];
  /** Smallest gap at any flank, mm; negative where wood overlaps. */
  smallestGap: number;
  /** Largest gap at any flank, mm. */
  largestGap: number;
  /** From the highest place of A's socket floors to the face that meets it, mm; negative: in the way. */
  floorGapA: number;
  /** From the highest place of B's socket floors to the face that meets it, mm; negative: in the way. */
  floorGapB: number;
  /** Wood that no pass reaches, inside sockets. */
  uncut: Uncut[];
  /** Whether pins and sockets overlap: the joint does not go together as cut. */
  clash: boolean;
  /** Area left open between the boards in A's face, mm². */
  gapAreaA: number;
  /** Area left open between the boards in B's face, mm². */
  gapAreaB: number;
  /** Area where both boards have wood in A's face, mm². */
  clashAreaA: number;
  /** Area where both boards have wood in B's face, mm². */
  clashAreaB: number;
}

/** One pair of mating flanks. */
export interface Flank {
  /** Where A's flank is, mm. */
  x: number;
  /** Which side of board A's wood it is: towards the reference edge, or away from it. */
  side: 'left' | 'right';
  /** Gap at the outer face, mm; negative where wood overlaps. */
  gapAtOuter: number;
  /** Gap at the inner face, mm; negative where wood overlaps. */
  gapAtInner: number;
}

/** Wood that no pass reaches. */
export interface Uncut {
  /** Which board. */
  board: 'a' | 'b';
  /** Its area on the board's face, mm². */
  area: number;
  /** Its greatest height above the depth line, mm. */
  height: number;
  /** Its middle, mm. */
  near: number;
}

/** Where a groove meets the fingers. */
export interface GroovePlan {
  /** Its nearer side, mm. */
  from: number;
  /** Its farther side, mm. */
  to: number;
  /** What happens at the ends of board A and of board B. */
  ends: GrooveEnd[];
  /** Nearest places at which only one board needs a stopped groove, the nearest first. */
  better: GroovePlace[];
}

/** What a groove meets at the ends of one board. */
export interface GrooveEnd {
  /** Which board. */
  board: 'a' | 'b';
  /** What it runs out through; `both` is partly a pin. */
  through: 'pin' | 'socket' | 'both';
  /** How it must be made so that no hole shows in the finished joint. */
  make: 'through' | 'stopped';
}

/** A place for a groove. */
export interface GroovePlace {
  /** Edge to nearer side, as the request measures it, mm. */
  fromEdge: number;
  /** The board that can then be grooved from end to end. */
  through: 'a' | 'b';
}

/** What numbers of fingers are wanted for. */
export interface BoxJointChoicesRequest {
  /** Width of both boards, mm; 2 to 3000. */
  width: number;
  /** Board A. */
  a: Board;
  /** Board B. */
  b: Board;
  /** The cutter. */
  cutter: Cutter;
  /** The screw. */
  screw: Screw;
  /** Glue gap at each flank, mm; 0.05 when left out. */
  glueGap?: number;
}

/** Numbers of fingers to choose from. */
export interface BoxJointChoicesPlan {
  /** The best first; empty when no inner socket on this board is wide enough for the cutter. */
  choices: Choice[];
}

/** One number of fingers. */
export interface Choice {
  /** Pins and sockets together. */
  count: number;
  /** Width of a finger, mm. */
  fingerWidth: number;
  /** Passes that clear one inner socket. */
  passesPerSocket: number;
  /** Passes for one end of both boards. */
  totalPasses: number;
  /** Width of the finger at each edge, mm. */
  endFinger: number;
  /** Whether a finger and its neighbour together are a whole number of the wheel's divisions. */
  wholeDivisions: boolean;
  /** Why it stands where it stands. */
  reason: string;
}

/** Pieces of a grooving stack and the width wanted of them. */
export interface CutterStackRequest {
  /** Widths of the outer cutters, mm; all of them are in every stack. */
  outer: number[];
  /** Widths of the chippers, mm, each used at most once; none when left out. */
  chippers?: number[];
  /** Thicknesses of the shims, mm, each used at most once; none when left out. */
  shims?: number[];
  /** Width wanted, mm. */
  want: number;
}

/** The stacks nearest a wanted width. */
export interface CutterStackPlan {
  /** The widest that is not wider than wanted. */
  below?: Stack;
  /** The narrowest that is not narrower than wanted. */
  above?: Stack;
  /** The nearer of the two. */
  nearest: Stack;
}

/** One stack. */
export interface Stack {
  /** Width it cuts, mm. */
  width: number;
  /** Its pieces. */
  uses: StackPieces;
}

/** Pieces of a stack. */
export interface StackPieces {
  /** Widths of the outer cutters, mm. */
  outer: number[];
  /** Widths of the chippers between them, mm. */
  chippers: number[];
  /** Thicknesses of the shims, mm. */
  shims: number[];
}

/** A slot made by several kerfs. */
export interface KerfFromSlotRequest {
  /** How many kerfs were cut side by side. */
  steps: number;
  /** How far the carriage moved from each to the next, mm; less than the kerf. */
  step: number;
  /** Width of the slot they made together, mm. */
  slotWidth: number;
}

/** The kerf that was measured. */
export interface KerfFromSlotPlan {
  /** Width of one cut, run-out included, mm. */
  kerf: number;
}

/** A text to be read as a length. */
export interface ParseLengthRequest {
  /** The text: `1 1/2"`, `19,05`, `12 mm`. */
  text: string;
  /** What a bare number is in. */
  unit: 'mm' | 'in';
}

/** The length that was read. */
export interface ParseLengthPlan {
  /** The length, mm. */
  mm: number;
}

/** A length to be written. */
export interface FormatLengthRequest {
  /** The length, mm. */
  mm: number;
  /** What to write it in. */
  unit: 'mm' | 'in';
  /** In inches: the finest part of an inch, 1 to 1024; 64 when left out. Means nothing in mm. */
  fraction?: number;
}

/** The length as written. */
export interface FormatLengthPlan {
  /** The text, with its unit; `≈` comes first when a fraction is not exact. */
  text: string;
  /** Whether the text says the length to the micrometre. */
  exact: boolean;
  /** What to add to the length as written to have the length itself, mm. */
  leftover: number;
}

/** A sled on one particular saw. */
export interface SledFitRequest {
  /** The saw. */
  saw: SawTable;
  /** The blade on its arbor. */
  blade: SledBlade;
  /** The sled. */
  sled: Sled;
  /** What is to be cut. */
  cut: SledCut;
  /** Table left over as measured at both ends of the stroke; compared with what is computed. */
  measured?: LeftOver;
  /** Side play of the runner in its slot, mm. */
  play?: number;
}

/** A saw table, measured. */
export interface SawTable {
  /** Blade to the middle of the slot, mm. */
  bladeToSlot: number;
  /** Where on the blade that was measured from: `centre` (when left out) or `nearTooth`, the side nearer the slot. */
  measuredFrom?: 'centre' | 'nearTooth';
  /** Side of the blade the slot is on, seen from the operator: `left` or `right`. */
  slotSide: 'left' | 'right';
  /** Front edge of the table to the arbor's axis, mm. */
  frontToArbor: number;
  /** Arbor's axis to the rear edge of the table, mm. */
  arborToRear: number;
  /** Greatest height of the blade above the table, mm. */
  greatestHeight: number;
  /** Blade to the middle of the slot on its other side, mm, measured from the same place on the blade. */
  secondSlot?: number;
  /** Section of the slot: `plain` (when left out) or `t`. */
  slotSection?: 'plain' | 't';
}

/** A blade. */
export interface SledBlade {
  /** Diameter, mm. */
  diameter: number;
  /** Width it really cuts, mm. */
  kerf: number;
}

/** A sled; distances along the feed count from the base's near edge, the operator's. */
export interface Sled {
  /** The base. */
  base: SledBase;
  /** Face of the carriage that the board stands against, mm. */
  carriageFace: number;
  /** Near face of the front rail, mm. */
  frontRail: number;
  /** The runner. */
  runner: Runner;
  /** Blade line from the base's left edge, mm; its middle when left out. */
  bladeLine?: number;
}

/** The base of a sled. */
export interface SledBase {
  /** Thickness, mm. */
  thickness: number;
  /** Width, mm. */
  width: number;
  /** Length along the feed, mm. */
  length: number;
  /** Least distance of a runner from the base's side edges, mm; 0 when left out. */
  margin?: number;
}

/** The bar that rides in the slot. */
export interface Runner {
  /** Outermost contact with the slot at the near end, mm from the base's near edge. */
  contactNear: number;
  /** Outermost contact with the slot at the far end, mm from the base's near edge. */
  contactFar: number;
  /** Width of the bar, mm. */
  width: number;
  /** Its screw holes, mm from the base's near edge; none when left out. */
  holes?: number[];
  /** Clearance of the screws in their slotted holes, mm, which lets the runner turn for squaring. */
  holeClearance?: number;
}

/** What is to be cut. */
export interface SledCut {
  /** Depth of the cut, mm. */
  depth: number;
  /** Thickness of the board, mm. */
  boardThickness: number;
  /** Width of the board, mm. */
  boardWidth?: number;
  /** Room between board and blade before the cut, mm; 5 when left out. */
  clearance?: number;
  /** How far the carriage face goes past the blade's top, mm; 2 when left out. */
  over?: number;
  /** How far the screw can move the carriage sideways, mm. */
  carriageTravel?: number;
}

/** Table left over beyond the runner's outermost contacts. */
export interface LeftOver {
  /** At the near end, sled pulled back, mm; negative where the contact is off the table. */
  near: number;
  /** At the far end, sled pushed through, mm; negative where the contact is off the table. */
  far: number;
}

/** Where everything goes on one particular saw; `y` runs along the feed from the arbor's axis, away from the operator. */
export interface SledFitPlan {
  /** Height of the blade above the table, mm. */
  height: number;
  /** Half the blade's chord at the table, mm. */
  halfChordTable: number;
  /** Half the blade's chord at the top of the base, mm. */
  halfChordBase: number;
  /** Deepest cut that saw, blade, base and window allow with this board, mm. */
  deepestCut: number;
  /** Smallest window between carriage face and front rail for this cut, mm. */
  smallestWindow: number;
  /** Smallest travel that cuts this board, mm. */
  smallestTravel: number;
  /** The stroke: where the carriage face goes. */
  travel: Stroke;
  /** Slot through the base, from its near edge, mm. */
  slot: BaseSlot;
  /** The runner. */
  runner: RunnerPlan;
  /** The other runner, where the base reaches the other slot. */
  secondRunner?: SidePlan;
  /** The same from the measured left-overs. */
  fromMeasured?: Centring;
  /** How far play lets the sled turn. */
  yaw?: Yaw;
  /** How far slotted screw holes let the runner turn for squaring. */
  holes?: Turning;
  /** Widest board that the carriage can bring past the blade, mm. */
  widestBoard?: number;
}

/** Where the carriage face goes in one stroke. */
export interface Stroke {
  /** Pulled fully back, mm from the arbor's axis. */
  start: number;
  /** Pushed through, mm from the arbor's axis. */
  end: number;
  /** From the one to the other, mm. */
  length: number;
}

/** The slot that the blade works in, mm from the base's near edge. */
export interface BaseSlot {
  /** Near end on top of the base. */
  topNear: number;
  /** Far end on top of the base. */
  topFar: number;
  /** Near end underneath. */
  underNear: number;
  /** Far end underneath. */
  underFar: number;
}

/** Where the runner goes. */
export interface RunnerPlan {
  /** Blade line to the runner's centre line, mm. */
  fromBlade: number;
  /** Base's left edge to the runner's centre line, mm. */
  fromBaseLeft: number;
  /** How far to move the runner, mm; positive away from the operator. */
  forward: number;
  /** Table left beyond the near contact with the sled pulled back, before moving, mm; negative off the table. */
  nearLeft: number;
  /** Table left beyond the far contact with the sled pushed through, before moving, mm; negative off the table. */
  farLeft: number;
  /** Table left at both ends after moving, mm; negative when the runner is too long. */
  leftAfter: number;
  /** Longest span of contacts that stays on this table over this travel, mm. */
  longestSpan: number;
}

/** A runner's place across the sled. */
export interface SidePlan {
  /** Blade line to the runner's centre line, mm. */
  fromBlade: number;
  /** Base's left edge to the runner's centre line, mm. */
  fromBaseLeft: number;
}

/** Moving the runner so that both ends have the same left over. */
export interface Centring {
  /** How far to move it, mm; positive away from the operator. */
  forward: number;
  /** Table left at both ends after moving, mm. */
  leftAfter: number;
}

/** What side play does. */
export interface Yaw {
  /** How far the sled can turn, degrees. */
  degrees: number;
  /** How far a flank can wander over the board's thickness, mm. */
  overThickness: number;
  /** How far the far edge of the board can wander, mm, where its width is given. */
  overWidth?: number;
}

/** A range of turning, to either side. */
export interface Turning {
  /** Degrees. */
  degrees: number;
  /** The same as mm over 500 mm. */
  per500: number;
}

/** A strip of the five-cut test, measured. */
export interface SquareTestRequest {
  /** Width of the strip at the end that was against the fence, mm. */
  fenceEnd: number;
  /** Width of the strip at its free end, mm. */
  freeEnd: number;
  /** Distance between the two measurements, mm. */
  apart: number;
  /** Fence's pivot to where it is adjusted, mm. */
  pivotToAdjuster: number;
  /** Uncertainty of each reading, mm; 0.02 when left out. */
  readingUncertainty?: number;
  /** Thickness of a board, mm, to say what the error does to its joint. */
  boardThickness?: number;
}

/** The fence's error and what to do about it. */
export interface SquareTestPlan {
  /** The error, radians: the angle inside the panel between fence and cut is a right angle plus this. */
  errorRadians: number;
  /** The same in degrees. */
  errorDegrees: number;
  /** The same as mm over 500 mm. */
  per500: number;
  /** The angle between fence and cut, degrees. */
  angleDegrees: number;
  /** How far to move the fence at its point of adjustment, mm. */
  move: number;
  /** Which way. */
  towards: 'panel' | 'away' | 'none';
  /** What the readings leave uncertain of the error, radians. */
  uncertaintyRadians: number;
  /** Whether the error is greater than its uncertainty. */
  significant: boolean;
  /** Slant of a flank over the board's thickness, mm, where that is given. */
  overThickness?: number;
}

/** A screw with positions that were commanded and then measured. */
export interface ScrewCheckRequest {
  /** The screw as it is taken to be. */
  screw: Screw;
  /** The positions; at least three, at most 500. */
  points: ScrewPoint[];
}

/** One position. */
export interface ScrewPoint {
  /** Commanded, mm. */
  commanded: number;
  /** Measured, mm. */
  measured?: number;
  /** Which way it was approached: with readings going `up` or `down`; nothing when that is not known. */
  approach?: 'up' | 'down';
}

/** What a table of commanded and measured positions says of a screw. */
export interface ScrewCheckPlan {
  /** True travel per turn, mm. */
  lead: number;
  /** How much longer the true lead is than the stated one, in thousandths. */
  scalePerMille: number;
  /** Measured position where 0 is commanded, mm. */
  offset: number;
  /** The error that comes back with every turn, where the points can tell it. */
  onceperTurn?: OncePerTurn;
  /** Lost motion, mm, where positions were approached from both sides. */
  backlash?: number;
  /** Standard deviation of what the fit does not explain, mm. */
  residual: number;
  /** Greatest of what the fit does not explain, mm. */
  worst: number;
  /** What the fit does not explain, point by point as given, mm. */
  residuals: number[];
  /** What the lead's error comes to over boards of some widths. */
  overBoard: OverBoard[];
  /** Positioning figures by ISO 230-2, where every position was approached twice or more from both sides. */
  iso230?: Iso230;
}

/** An error that comes back with every turn: `amplitude · sin(2π·turns + phase)`. */
export interface OncePerTurn {
  /** Half of its range, mm. */
  amplitude: number;
  /** Where in the turn it begins, degrees. */
  phaseDegrees: number;
}

/** What the lead's error comes to over a length. */
export interface OverBoard {
  /** The length, mm. */
  length: number;
  /** The error over it, mm. */
  error: number;
}

/** Figures of an axis; all mm. */
export interface Iso230 {
  /** Reversal value: the greatest difference between the two directions. */
  B: number;
  /** Bidirectional repeatability. */
  R: number;
  /** Bidirectional accuracy. */
  A: number;
  /** Range of the mean bidirectional deviation. */
  M: number;
}

/** A groove to be routed along a board. */
export interface GrooveSetupRequest {
  /** Reference edge to the middle of the groove, mm. */
  fromEdge: number;
  /** Width of the groove, mm; for a real sheet its measured thickness and the clearance. */
  width: number;
  /** Diameter of the bit, mm; at most the width. */
  bit: number;
  /** Where the groove begins and ends, from the board's leading end; from end to end when left out. */
  stopped?: StoppedGroove;
  /** Deepest that one pass may go, mm. */
  passDepth?: number;
  /** Depth of the groove, mm. */
  depth?: number;
}

/** Both ends of a stopped groove. */
export interface StoppedGroove {
  /** Leading end of the board to where the groove begins, mm. */
  from: number;
  /** Leading end of the board to where the groove ends, mm. */
  to: number;
}

/** How to rout a groove. */
export interface GrooveSetupPlan {
  /** Fence settings, nearest first. */
  passes: FencePass[];
  /** Depths to set one after another, mm; empty when no depth was given. */
  depths: number[];
  /** Marks for a stopped groove. */
  marks?: Marks;
  /** Radius of a stopped groove's round ends, mm. */
  endRadius: number;
}

/** One setting of the fence. */
export interface FencePass {
  /** Fence to the bit's nearer side, mm. */
  fenceToBit: number;
}

/** Where the board's leading end is when a stopped groove begins and ends. */
export interface Marks {
  /** At the start: leading end past the mark at the bit's far side (the side the board is fed towards), mm. */
  startPastFarMark: number;
  /** At the end: leading end past the mark at the bit's near side (the side the board comes from), mm. */
  stopPastNearMark: number;
  /** The same two from the middle of the bit, mm: at the start. */
  startFromMiddle: number;
  /** From the middle of the bit, at the end, mm. */
  stopFromMiddle: number;
  /** How far the board is fed, mm. */
  feed: number;
}

/** A dovetail between the ends of two boards of the same width. */
export interface DovetailRequest {
  /** Width of both boards, mm. */
  width: number;
  /** The tail board, board A. */
  tail: Board;
  /** The pin board, board B. */
  pin: Board;
  /** Slope of the flanks. */
  slope: Slope;
  /** Number of tails. */
  tails: number;
  /** Half-pin at each edge, at the outer face, where it is narrow, mm. */
  halfPin?: number;
  /** Pin between two tails, at the outer face, where it is narrow, mm. */
  narrowPin?: number;
  /** Relative widths of the tails at their tips, from the reference edge; equal when left out. */
  weights?: number[];
  /** What decides the widths; `narrowPin` and `halfPin` when left out. */
  by?: Pins;
  /** Wood left in front of the tails in a half-blind joint, mm; 0 when left out: a through joint. */
  lap?: number;
  /** Glue gap at each flank, measured across the width, mm; 0.05 when left out. */
  glueGap?: number;
  /** How far tails and pins stand past the mating face, mm; 0 when left out. */
  proud?: number;
  /** The cutter that leans. */
  cutter: Cutter;
  /** The cutter for upright cuts; the same as `cutter` when left out. */
  pinCutter?: Cutter;
  /** The screw. */
  screw: Screw;
  /** Where the reading is zero; `touch` when left out. */
  zero?: Zero;
  /** What the saw and sled allow; nothing is checked when left out. */
  saw?: Saw;
  /** What blade and wedge were really found to be; only the dry fit uses it. */
  measured?: MeasuredTurn;
}

/** Slope of the flanks. */
export interface Slope {
  /** Whether `run` or `degrees` says it. */
  kind: 'ratio' | 'angle';
  /** By ratio: run for a rise of 1, so 8 for 1:8. */
  run?: number;
  /** By angle: degrees from square. */
  degrees?: number;
}

/** What decides the widths of pins and tails. */
export interface Pins {
  /** `widths`: `narrowPin` and `halfPin` as given; `ratio`: tails and pins in proportion at mid thickness, half-pins half a pin; `equal`: the same with tails as wide as pins; `narrowest`: pins as narrow as the blade allows, half-pins as given or else the same. */
  kind: 'widths' | 'ratio' | 'equal' | 'narrowest';
  /** By ratio: tail width for a pin width of 1, both at mid thickness. */
  tailToPin?: number;
}

/** What blade and wedge were really found to be. */
export interface MeasuredTurn {
  /** Lean of the blade, degrees. */
  leanDegrees?: number;
  /** Turn of the pin board in plan, degrees. */
  turnDegrees?: number;
}

/** A dovetail, ready to cut. Board A is the tail board, board B the pin board.  Widths are nominal, before the glue gap is taken off. The outer face is the pin board's, where the tails' tips show; in a half-blind joint it is the plane that the tips touch, behind the lap. */
export interface DovetailPlan {
  /** Number of tails. */
  count: number;
  /** Width of both boards, mm. */
  width: number;
  /** Slope of the flanks: tangent of the angle. */
  slope: number;
  /** Slope of the flanks, degrees from square. */
  angleDegrees: number;
  /** Width of a tail at its tip, mm; the mean where they differ. */
  tailTip: number;
  /** Width of a tail at the baseline, mm; the mean where they differ. */
  tailBase: number;
  /** Width of a pin at the outer face, mm. */
  pinOuter: number;
  /** Width of a pin at the inner face, mm. */
  pinInner: number;
  /** Width of a half-pin at the outer face, mm. */
  halfPinOuter: number;
  /** Width of a half-pin at the inner face, mm. */
  halfPinInner: number;
  /** Narrowest pin at the outer face that the leaning cutter can clear the place of, mm. */
  narrowestPin: number;
  /** Narrowest half-pin whose place takes the leaning cutter whole, mm, where this joint's is narrower: the kerf then runs off the board's edge. */
  narrowestHalfPin?: number;
  /** How far the flank's corner is short of the baseline under the leaning cutter, mm: for the chisel. */
  cornerLeft: number;
  /** Glue gap at each flank, mm. */
  glueGap: number;
  /** Every tail, from the reference edge. */
  tails: Tail[];
  /** Whether the layout reads the same from both edges. */
  symmetric: boolean;
  /** Depth of cut in the tail board, mm. */
  depthA: number;
  /** Depth of cut in the pin board, mm. */
  depthB: number;
  /** Wood left in front of the tails, mm; 0 in a through joint. */
  lap: number;
  /** Thickness of the tail board, mm. */
  thicknessA: number;
  /** Thickness of the pin board, mm. */
  thicknessB: number;
  /** The sets of stops in the order of use; in a half-blind joint only the tail board's. */
  sets: Set[];
  /** What the cuts really make. */
  dryFit: DryFit;
}

/** One tail's place on the tail board, from the reference edge, before the glue gap is taken off. */
export interface Tail {
  /** Nearer side at the tip, mm. */
  fromTip: number;
  /** Farther side at the tip, mm. */
  toTip: number;
  /** Nearer side at the baseline, mm. */
  fromBase: number;
  /** Farther side at the baseline, mm. */
  toBase: number;
}

/** What numbers of tails are chosen for. */
export interface DovetailChoicesRequest {
  /** Width of both boards, mm. */
  width: number;
  /** The tail board, board A. */
  tail: Board;
  /** The pin board, board B. */
  pin: Board;
  /** Slope of the flanks. */
  slope: Slope;
  /** Half-pin at each edge, at the outer face, mm. */
  halfPin?: number;
  /** Pin between two tails, at the outer face, mm. */
  narrowPin?: number;
  /** What decides the widths; `narrowPin` and `halfPin` when left out. */
  by?: Pins;
  /** Wood left in front of the tails in a half-blind joint, mm; 0 when left out. */
  lap?: number;
  /** Glue gap at each flank, measured across the width, mm; 0.05 when left out. */
  glueGap?: number;
  /** How far tails and pins stand past the mating face, mm; 0 when left out. */
  proud?: number;
  /** The cutter that leans. */
  cutter: Cutter;
  /** The cutter for upright cuts; the same as `cutter` when left out. */
  pinCutter?: Cutter;
  /** The screw. */
  screw: Screw;
}

/** Numbers of tails to choose from. */
export interface DovetailChoicesPlan {
  /** The best first. */
  choices: DovetailChoice[];
}

/** One number of tails. */
export interface DovetailChoice {
  /** Number of tails. */
  count: number;
  /** Width of a tail at its tip, mm. */
  tailTip: number;
  /** Width of a pin at the outer face, mm. */
  pinOuter: number;
  /** Passes for one end of both boards. */
  totalPasses: number;
  /** Why it stands where it stands. */
  reason: string;
}

/** A sliding dovetail. */
export interface SlidingDovetailRequest {
  /** The bit. */
  bit: DovetailBit;
  /** Depth of the socket, mm. */
  depth: number;
  /** Width of the socket at its floor, mm; the bit's own when left out. */
  socketFloor?: number;
  /** The board that gets the tongue. */
  board: Board;
  /** Glue gap at each flank, mm; 0.05 when left out. */
  glueGap?: number;
  /** A socket that opens towards one end, so that the tongue only grips at last. */
  taper?: SocketTaper;
}

/** A dovetail bit. */
export interface DovetailBit {
  /** Diameter at its tip, where it is widest, mm. */
  tipDiameter: number;
  /** Angle of its flank to its axis, degrees. */
  flankDegrees: number;
  /** Length of its cutting edge, mm; no bound when left out. */
  cuttingLength?: number;
}

/** A tapered socket. */
export interface SocketTaper {
  /** How much wider the socket is where the tongue enters, mm. */
  by: number;
  /** Length of the socket, mm. */
  length: number;
}

/** A sliding dovetail, ready to rout. */
export interface SlidingDovetailPlan {
  /** Width of the socket at the board's face, mm. */
  mouth: number;
  /** Width of the socket at its floor, mm. */
  floor: number;
  /** Depth of the socket, and length of the tongue, mm. */
  depth: number;
  /** Width of the tongue at its tip, mm. */
  tongueTip: number;
  /** Width of the tongue at its shoulder, mm. */
  tongueMouth: number;
  /** Moves of the fence from one pass of the socket to the next, mm; none for a socket of one pass. */
  socketFenceMoves: number[];
  /** First setting of the fence from the one that puts the bit on the socket's middle, mm. */
  firstFromMiddle: number;
  /** How deep each side of the tongue's board is cut at the tip, mm. */
  tongueCutPerSide: number;
  /** How a tapered socket is turned. */
  taper?: Taper;
}

/** The turn of a tapered socket's flank. */
export interface Taper {
  /** How far each flank runs out over the socket's length, mm: the shim under one end of the board. */
  perSide: number;
  /** The same as an angle, degrees. */
  degrees: number;
}

/** Drawers of one opening, or of one outside size. Sides are board A of the joint and have the tails; front and back are board B. The lower edge is the reference edge. */
export interface DrawerBoxRequest {
  /** The opening with its clearances, or the drawer's outside. */
  size: DrawerSize;
  /** Number of drawers; 1 when left out; 1 to 60, whole. */
  count?: number;
  /** How an opening's height is shared out; equally when left out. */
  heights?: DrawerHeights;
  /** Divider or gap between two drawers of an opening, mm; needed for more than one. */
  between?: number;
  /** The sides, as measured. */
  side: Board;
  /** The front, as measured. */
  front: Board;
  /** The back, as measured; as thick as the front when left out. */
  back?: Board;
  /** A front applied to the box; the box has the only one when left out. */
  applied?: AppliedFrontRequest;
  /** The joint at all four corners. */
  joint: DrawerCorner;
  /** The bottom and its groove. */
  bottom: DrawerBottom;
  /** Solid wood of sides, front and back, its grain along each board; a sheet that does not move when left out. */
  wood?: SolidWood;
  /** The air that the drawers stand in; needed with solid wood. */
  climate?: Climate;
}

/** The room that drawers have. */
export type DrawerSize =
  /** The outside of one drawer, mm; 20 to 3000. */
  | { kind: 'outside'; width: number; height: number; depth: number }
  /** An opening for all drawers together, on wooden runners, on which they lie; room at each side, above each drawer at the dampest, and behind (0 when left out), mm. */
  | { kind: 'opening'; width: number; height: number; depth: number; slides: 'runners'; sideClearance: number; above: number; behind?: number }
  /** The same on slides at the sides, whose measured thickness is the room there, or beneath; with room below each drawer, mm. */
  | { kind: 'opening'; width: number; height: number; depth: number; slides: 'side' | 'under'; sideClearance: number; above: number; below: number; behind?: number };

/** How an opening's height is shared out, from the top. */
export type DrawerHeights =
  /** Equally. */
  | { kind: 'equal' }
  /** Each drawer higher than the one above, mm. */
  | { kind: 'graduated'; step: number }
  /** Each so many times as high as the one above; 1.001 to 4. */
  | { kind: 'ratio'; ratio: number };

/** A front applied to the box. */
export interface AppliedFrontRequest {
  /** Thickness, mm. */
  thickness: number;
  /** How far it reaches past the opening, or past the box where its outside is given, mm; negative for one that lies inside: the gap around it. */
  lap: number;
  /** Gap between two fronts, mm; 2 when left out. */
  gap?: number;
}

/** The joint at all four corners. */
export type DrawerCorner = DrawerTools & (
  /** Fingers; `first` is what the sides have at the lower edge, a pin when left out. */
  | { kind: 'box'; layout: DrawerLayout; first?: 'pin' | 'socket' }
  /** Dovetails, as in `dovetail`; `backLap` is wood left behind the tails at the back, mm, the same as `lap` when left out, 0 for a through back. Widths by proportion hold at the front, and the back has tails with the same tips. */
  | { kind: 'dovetail'; slope: Slope; tails: number; halfPin?: number; narrowPin?: number; by?: Pins; lap?: number; backLap?: number; pinCutter?: Cutter }
);

/** What cuts the joint. */
export interface DrawerTools {
  /** The cutter. */
  cutter: Cutter;
  /** The screw. */
  screw: Screw;
  /** Where the reading is zero; `touch` when left out. */
  zero?: Zero;
  /** Glue gap at each flank, mm; 0.05 when left out. */
  glueGap?: number;
  /** How far pins stand past the mating face, mm, to be planed flush; 0 when left out. */
  proud?: number;
  /** What the saw and sled allow; nothing is checked when left out. */
  saw?: Saw;
}

/** How the height is divided into an odd number of fingers, the same at both edges. */
export type DrawerLayout =
  /** Into so many, odd; heights stay as they are. */
  | { kind: 'count'; count: number }
  /** Into fingers of exactly this width, mm; the height is lowered to a whole number of them. */
  | { kind: 'finger'; width: number }
  /** Into fingers that one pass of the cutter makes on this dial; the height is lowered to a whole number of them. */
  | { kind: 'onePass' };

/** The bottom and its groove. */
export interface DrawerBottom {
  /** Thickness, as measured, mm. */
  thickness: number;
  /** Its groove in all four boards. */
  groove: BottomGroove;
  /** Room between the bottom's edges and the groove's floor, at the dampest, mm; 0.5 when left out. */
  clearance?: number;
  /** Solid wood, its grain from side to side; a sheet when left out. */
  wood?: SolidWood;
}

/** The bottom's groove as it is asked for. */
export interface BottomGroove {
  /** Lower edge of the boards to the groove's lower side, mm. */
  fromEdge: number;
  /** Depth, mm; at most half of the thinnest board. */
  depth: number;
  /** How much wider than the bottom is thick, mm; 0.1 when left out. */
  clearance?: number;
  /** Diameter of the bit that routs it, mm; fence settings are left out without it. */
  bit?: number;
}

/** Solid wood: give `species` with `sawn`, or `shrinkage`. */
export interface SolidWood {
  /** Its name in the table of the Wood Handbook, such as `white-ash`; a name that is not known is refused with all that are. */
  species?: string;
  /** Shrinkage of its width from green to oven-dry, percent, in place of a name; 0.5 to 20. */
  shrinkage?: number;
  /** With a name: whether the growth rings run along a board's width or across it. */
  sawn?: 'flat' | 'quarter';
  /** Its moisture when the boards are cut, percent; 0 to 30. */
  moisture: number;
}

/** The driest and the dampest air, or what wood comes to in it. */
export type Climate =
  /** Relative humidities, percent, 5 to 95, at one temperature, °C, −1.1 to 54.4. */
  | { kind: 'humidity'; driest: number; wettest: number; temperature: number }
  /** The wood's own moistures, percent, 0 to 30. */
  | { kind: 'moisture'; driest: number; wettest: number };

/** Drawers, ready to be cut. */
export interface DrawerBoxPlan {
  /** Every drawer that differs, the topmost first. */
  drawers: DrawerPlan[];
  /** Where each drawer is in the opening, from the top; empty for drawers of a given outside. */
  places: DrawerPlace[];
  /** Opening's height that leaves nothing over above these drawers, mm. */
  snugHeight?: number;
  /** Fronts applied to the boxes, from the top; empty without them. */
  applied: AppliedFront[];
  /** All boards and bottoms as rows of a parts list. */
  parts: DrawerPart[];
}

/** One drawer, or several that are alike. */
export interface DrawerPlan {
  /** How many are made like this. */
  count: number;
  /** Outside, from side to side, mm. */
  width: number;
  /** Height of its boards as they are cut, mm. */
  height: number;
  /** Outside, from front to back without an applied front, mm. */
  depth: number;
  /** Room inside. */
  inside: DrawerInside;
  /** What was changed from what was asked, and why. */
  nudges: Nudge[];
  /** Its boards: sides, front, back. */
  boards: DrawerBoard[];
  /** Its bottom. */
  bottom: BottomPlan;
  /** The bottom's groove. */
  groove: DrawerGroove;
  /** Its corners. */
  joint: DrawerJoint;
  /** What its height does with the air; left out for boards that do not move. */
  movement?: DrawerMovement;
}

/** Room inside a drawer. */
export interface DrawerInside {
  /** Between the sides, mm. */
  width: number;
  /** From the groove's upper side to the upper edge, mm. */
  height: number;
  /** Between front and back, mm. */
  depth: number;
}

/** Something that was changed from what was asked. */
export interface Nudge {
  /** The drawer's height, or lower edge to the groove. */
  what: 'height' | 'groove';
  /** What it would have been, mm. */
  from: number;
  /** What it is, mm. */
  to: number;
  /** Why; lengths in mm. */
  reason: string;
}

/** A board of the box, its grain along its length. */
export interface DrawerBoard {
  /** What it is called. */
  name: 'side' | 'front' | 'back';
  /** Which board of the joint it is. */
  board: 'a' | 'b';
  /** How many a drawer has. */
  count: number;
  /** Along the grain, with what its pins stand proud by, mm. */
  length: number;
  /** The drawer's height, mm. */
  width: number;
  /** Thickness, mm. */
  thickness: number;
}

/** A bottom as it is cut. */
export interface BottomPlan {
  /** From side to side, along the grain of a solid one, mm. */
  length: number;
  /** From front to back, mm. */
  width: number;
  /** Thickness, mm. */
  thickness: number;
  /** How deep each edge lies in its groove as it is cut, from front to back, mm. */
  held: number;
  /** What a solid one does with the air. */
  movement?: BottomMovement;
}

/** What a solid bottom does with the air, from front to back. */
export interface BottomMovement {
  /** Its width at the dampest, mm. */
  wettest: number;
  /** Its width at the driest, mm. */
  driest: number;
  /** How deep each edge lies in its groove when it is narrowest, with the bottom in the middle, mm. */
  heldLeast: number;
  /** The same at one edge when the bottom has slid all the way into the other's groove, mm; below 0 it drops out. */
  heldAside: number;
}

/** The bottom's groove. */
export interface DrawerGroove {
  /** Lower edge to the groove's lower side, mm. */
  fromEdge: number;
  /** Width, mm. */
  width: number;
  /** Depth, mm. */
  depth: number;
  /** Whether one finger covers it, so that nothing of it shows outside. */
  hidden: boolean;
  /** How it is made in the sides, and in front and back. */
  runs: GrooveRun[];
}

/** The groove in one kind of board: the sides, or front and back. */
export interface GrooveRun {
  /** Which board of the joint. */
  board: 'a' | 'b';
  /** From end to end, or stopped. */
  make: 'through' | 'stopped';
  /** Where a stopped one begins and ends; in a side from its front end. */
  stopped?: GrooveStop;
  /** Fence settings for the bit, nearest first; empty without one. */
  passes: FencePass[];
  /** The request that plans it on the router table; left out without a bit. */
  setup?: GrooveSetupRequest;
  /** The same for the side that is fed back end first; left out where it is grooved like the other. */
  backFirst?: GrooveSetupRequest;
}

/** Where a stopped groove begins and ends, from the same end of the board; 0 or its length where it runs out. */
export interface GrooveStop {
  /** Where it begins, mm. */
  from: number;
  /** Where it ends, mm. */
  to: number;
}

/** The joint of a drawer's corners: of all four, or of the front's where the back has its own. */
export interface DrawerJoint {
  /** Number of fingers, or of tails. */
  count: number;
  /** Width of a finger in a box joint, mm. */
  fingerWidth?: number;
  /** The request that plans it as a box joint, groove included. */
  boxJoint?: BoxJointRequest;
  /** The request that plans it as a dovetail. */
  dovetail?: DovetailRequest;
  /** The joint of the back's corners, with the same fingers or tails; left out where it is the front's. */
  back?: DrawerBackJoint;
}

/** The joint of the back's corners, where it is not the front's: one of both. */
export interface DrawerBackJoint {
  /** The request that plans it as a box joint, groove included. */
  boxJoint?: BoxJointRequest;
  /** The request that plans it as a dovetail. */
  dovetail?: DovetailRequest;
}

/** What a drawer's height does with the air. */
export interface DrawerMovement {
  /** The wood's moisture at the driest, percent. */
  driestMoisture: number;
  /** The wood's moisture at the dampest, percent. */
  wettestMoisture: number;
  /** Height at the driest, mm. */
  driest: number;
  /** Height at the dampest, mm. */
  wettest: number;
}

/** Where one drawer is in its opening. */
export interface DrawerPlace {
  /** From the top, from 1. */
  number: number;
  /** Which of the plan's `drawers` it is, from 0. */
  drawer: number;
  /** Opening's lower edge to the drawer's lower edge, mm. */
  fromBelow: number;
  /** From the drawer's upper edge to what is above it. */
  gapAbove: GapAbove;
}

/** Room above a drawer. */
export interface GapAbove {
  /** As the boards are cut, mm. */
  now: number;
  /** At the dampest, mm; never less than was asked for. */
  wettest: number;
  /** At the driest, mm. */
  driest: number;
}

/** A front applied to a box. */
export interface AppliedFront {
  /** Which drawer, from the top, from 1. */
  number: number;
  /** From side to side, along the grain, mm. */
  width: number;
  /** Height, mm. */
  height: number;
  /** Thickness, mm. */
  thickness: number;
  /** How far it reaches below the box's lower edge, mm; negative where it ends above it. */
  below: number;
}

/** A row of a parts list. */
export interface DrawerPart {
  /** What it is called. */
  name: string;
  /** How many of it. */
  count: number;
  /** Along the grain, mm. */
  length: number;
  /** Across the grain, mm. */
  width: number;
  /** Thickness, mm. */
  thickness: number;
  /** What it is cut from. */
  stock: 'sides' | 'fronts' | 'backs' | 'bottoms' | 'applied fronts';
  /** Whether it may lie across the grain of its sheet. */
  mayTurn: boolean;
}


/** Sheets on hand or to buy, and the parts to be cut from them. */
export interface SheetLayoutRequest {
  /** Kinds of sheets, up to 50. */
  sheets: Sheet[];
  /** Parts to cut, up to 500, of up to 2000 pieces together. */
  parts: SheetPart[];
  /** Width the saw really cuts, mm. */
  kerf: number;
  /** Breaking sheets down with a hand-held saw before they come to the table saw; not done when left out. */
  rough?: RoughCuts;
  /** Smallest off-cut worth keeping; 300 by 100 mm when left out. */
  leastOffcut?: OffcutSize;
  /** How long to search, and from where. */
  search?: SheetSearch;
}

/** One kind of sheet. */
export interface Sheet {
  /** What it is called. */
  name?: string;
  /** Stock it is made of; parts come from sheets of their own stock. */
  stock?: string;
  /** Length, mm. */
  length: number;
  /** Width, mm. */
  width: number;
  /** Thickness, mm; only shown. */
  thickness?: number;
  /** Where the grain runs: along the `length` (when left out), along the `width`, or `none`: then every part may turn. */
  grain?: 'length' | 'width' | 'none';
  /** What is cut off each edge before anything else, mm, kerf included; 0 when left out. */
  edgeTrim?: number | EachSide;
  /** How many there are; as many as needed when left out. */
  quantity?: number;
  /** Price of one, in any money: where each whole sheet of a stock has one, the cheapest layout is the best. */
  price?: number;
  /** Mass of one, kg: for what a person lifts; by its area that of another of its stock and thickness when left out. */
  mass?: number;
  /** Whether it is an off-cut on hand, to be used before any whole sheet; `false` when left out. */
  offcut?: boolean;
}

/** A length for each edge; 0 when left out. */
export interface EachSide {
  /** At the edge where the length begins, mm. */
  start?: number;
  /** At the edge where the length ends, mm. */
  end?: number;
  /** At the edge where the width begins, mm. */
  near?: number;
  /** At the edge where the width ends, mm. */
  far?: number;
}

/** One part of a list. */
export interface SheetPart {
  /** What it is called. */
  name?: string;
  /** Its number in the list; its place in it, from 1, when left out. */
  number?: number;
  /** How many are needed; 1 when left out. */
  count?: number;
  /** Finished length along the grain, mm. */
  length: number;
  /** Finished width across the grain, mm. */
  width: number;
  /** Whether its grain may run across; `false` when left out. */
  mayTurn?: boolean;
  /** Allowance at each edge to be trimmed later, mm; 0 when left out. */
  trim?: number | EachSide;
  /** Stock it is made of; may be left out where all sheets are of one. */
  stock?: string;
  /** Whether it is cut later: it gets its place, and its cuts come last, so that it can stay in a larger piece until the place it goes to can be measured; `false` when left out. */
  later?: boolean;
}

/** The largest piece that comes to the table saw: at least one bound is needed. */
export interface RoughCuts {
  /** Longest side of a piece that a person lifts, mm; no bound when left out. */
  longest?: number;
  /** Its other side at most, mm; the same as `longest` when left out. */
  widest?: number;
  /** Its mass at most, kg; needs the `mass` of a sheet of each stock. */
  heaviest?: number;
  /** Left beside each rough cut for the table saw to trim, mm, its kerf included; 5 when left out. */
  allowance?: number;
  /** Width the hand-held saw cuts, mm; the same as `kerf` when left out. */
  kerf?: number;
}

/** A size; either side may be the longer one. */
export interface OffcutSize {
  /** One side, mm. */
  length: number;
  /** The other side, mm. */
  width: number;
}

/** How long to search, and from where. Slices of a search come to the same layout as all of it at once. */
export interface SheetSearch {
  /** Rounds that were made before; 0 when left out. */
  from?: number;
  /** Rounds to make now, at most; 200 when left out. */
  steps?: number;
  /** The best layout of the rounds before, as the plan gave it. */
  best?: string;
}

/** Sheets laid out, and how to cut them. */
export interface SheetLayoutPlan {
  /** Every sheet, in the order of cutting: off-cuts on hand first, the sheet that least is used of last. */
  sheets: LaidSheet[];
  /** Whole sheets used. */
  wholeSheets: number;
  /** Off-cuts on hand that are used. */
  offcutsUsed: number;
  /** Length used of the last sheet, mm, from its trimmed edge. */
  usedLength: number;
  /** Settings of the fence for all sheets. */
  settings: number;
  /** Share of the sheets' area that becomes parts, from 0 to 1. */
  share: number;
  /** Price of the whole sheets, where each has one. */
  cost?: number;
  /** What no layout can do without, stock after stock, where all sheets of the stock are of one kind. */
  bounds: StockBound[];
  /** How far the search has come. */
  search: SheetSearchReached;
}

/** One sheet. */
export interface LaidSheet {
  /** Its number, from 1. */
  number: number;
  /** Which of the request's sheets it is, from 0. */
  kind: number;
  /** What it is called. */
  name?: string;
  /** Its stock. */
  stock?: string;
  /** Its thickness, mm. */
  thickness?: number;
  /** Its length, mm. */
  length: number;
  /** Its width, mm. */
  width: number;
  /** Its parts. */
  parts: LaidPart[];
  /** What is left over. */
  offcuts: LaidOffcut[];
  /** Every cut, in the order of cutting. */
  cuts: CutStep[];
  /** Settings of the fence. */
  settings: number;
  /** Length used, mm, from the trimmed edge. */
  usedLength: number;
  /** Share of its area that becomes parts, from 0 to 1. */
  share: number;
}

/** An upright rectangle on a sheet, from the corner where its length and its width begin. */
export interface SheetPlace {
  /** Along the sheet's length, mm. */
  x: number;
  /** Along the sheet's width, mm. */
  y: number;
  /** Size along the sheet's length, mm. */
  length: number;
  /** Size along the sheet's width, mm. */
  width: number;
}

/** A part in its place, its allowances included. */
export interface LaidPart {
  /** Its number in the list. */
  number: number;
  /** Which of the request's parts it is, from 0. */
  part: number;
  /** What it is called. */
  name?: string;
  /** Where it lies. */
  place: SheetPlace;
  /** Whether its length lies across the grain, or across the length of a sheet without grain. */
  turned: boolean;
  /** Whether it is cut later. */
  later: boolean;
}

/** What is left over. */
export interface LaidOffcut {
  /** Where it lies. */
  place: SheetPlace;
  /** Whether it is worth keeping. */
  keep: boolean;
}

/** One cut, from edge to edge of the piece in hand. */
export interface CutStep {
  /** Its number on this sheet, from 1. */
  step: number;
  /** `rough`: by hand, so that a person can lift what comes to the table saw; `trim`: takes an edge off; `rip`: along the grain; `crosscut`: across it. */
  kind: 'rough' | 'trim' | 'rip' | 'crosscut';
  /** The piece in hand: 0 is the sheet, others were yielded by earlier cuts. */
  piece: number;
  /** Where that piece lies on the sheet. */
  place: SheetPlace;
  /** Which of the piece's sides gets shorter: along the sheet's `length` or its `width`. */
  across: 'length' | 'width';
  /** From the fence, or from the stop for crosscuts, to the blade's nearer side, mm; for a rough cut from the piece's edge. */
  fence: number;
  /** Whether the fence stays where it was for the cut before. */
  sameSetting: boolean;
  /** Whether it is left for later, with the parts that are cut later. */
  later: boolean;
  /** What comes of it: first what was against the fence, then what falls off, unless the blade takes all of it. */
  yields: YieldedPiece[];
}

/** A piece that comes of a cut. */
export interface YieldedPiece {
  /** Its number on this sheet. */
  piece: number;
  /** Where it lies on the sheet. */
  place: SheetPlace;
  /** `part`: done; `piece`: to be cut once more; `offcut`: left over; `trimming`: trimmed off an edge. */
  is: 'part' | 'piece' | 'offcut' | 'trimming';
  /** Number of the part in its list, where it is one. */
  part?: number;
}

/** What no layout of one stock can do without. */
export interface StockBound {
  /** The stock. */
  stock?: string;
  /** Fewest sheets. */
  sheets: number;
  /** Least length of the last one, mm. */
  usedLength: number;
}

/** How far a search has come. */
export interface SheetSearchReached {
  /** Rounds made so far, those before `from` included: the next request's `from`. */
  steps: number;
  /** Whether going on could change nothing. */
  done: boolean;
  /** The best layout, to go on from: the next request's `best`. */
  best: string;
  /** Whether no layout uses fewer sheets, or less of the last one, in any stock. */
  proven: boolean;
}

/** Plans a box joint: layout, passes, dial settings, and the dry fit of what they cut. Never throws. */
export function boxJoint(request: BoxJointRequest): Reply<BoxJointPlan>;

/** Numbers of fingers for a board and a cutter, the best first. Never throws. */
export function boxJointChoices(request: BoxJointChoicesRequest): Reply<BoxJointChoicesPlan>;

/** The stacks nearest a wanted width, from below and above. Never throws. */
export function cutterStack(request: CutterStackRequest): Reply<CutterStackPlan>;

/** The kerf that made a stepped slot. Never throws. */
export function kerfFromSlot(request: KerfFromSlotRequest): Reply<KerfFromSlotPlan>;

/** Reads a length as it is typed. Never throws. */
export function parseLength(request: ParseLengthRequest): Reply<ParseLengthPlan>;

/** Writes a length as it is read. Never throws. */
export function formatLength(request: FormatLengthRequest): Reply<FormatLengthPlan>;

/** Where the runner goes on one particular saw, how far the carriage travels, whether the sled stays on the table. Never throws. */
export function sledFit(request: SledFitRequest): Reply<SledFitPlan>;

/** How square a fence is, from the strip of a five-cut test. Never throws. */
export function squareTest(request: SquareTestRequest): Reply<SquareTestPlan>;

/** True lead, once-per-turn error and backlash of a screw, from measured positions. Never throws. */
export function screwCheck(request: ScrewCheckRequest): Reply<ScrewCheckPlan>;

/** Fence settings, passes and stop marks of a groove on the router table. Never throws. */
export function grooveSetup(request: GrooveSetupRequest): Reply<GrooveSetupPlan>;

/** Plans dovetails cut on the sled: layout, set-ups with their stops, and the dry fit of what they cut. Never throws. */
export function dovetail(request: DovetailRequest): Reply<DovetailPlan>;

/** Plans a sliding dovetail on the router table. Never throws. */
export function slidingDovetail(request: SlidingDovetailRequest): Reply<SlidingDovetailPlan>;

/** Numbers of tails for these boards and this cutter, the best first. Never throws. */
export function dovetailChoices(request: DovetailChoicesRequest): Reply<DovetailChoicesPlan>;

/** Parts whose dimensions follow the stock as measured. */
export interface PartsListRequest {
  /** What numbers without a unit are in, inside texts; `mm` when left out. */
  unit?: 'mm' | 'in';
  /** What parts are cut from; at most 50. */
  stocks: Stock[];
  /** Lengths with a name; at most 100, none when left out. */
  measures?: Measure[];
  /** The parts; at most 500. */
  parts: Part[];
}

/**
 * A length: a number in mm, or a text. A text is a length (`11 1/2"`, `19,05`) or a sum over names (`300 - 2*t`):
 * `t` is the measured thickness of the part's own stock, every other name a measure. Operators are + - * / and
 * brackets, `min(a; b)`, `max(a; b)` and `round(a; step)`. A number without a unit is a length where it is added to
 * one, and a factor where it multiplies one. A text may come with the unit of its own numbers.
 */
export type PartDimension = number | string | { text: string; unit?: 'mm' | 'in' };

/** A sheet or a board that parts are cut from. */
export interface Stock {
  /** Its name, by which parts say what they are cut from. */
  name: string;
  /** Thickness as measured, mm; 0.1 to 500. */
  thickness: number;
  /** Thickness that the list was worked out with before, mm; no changes are given when left out. */
  former?: number;
}

/** A length with a name. */
export interface Measure {
  /** One word of letters of any script, digits and `_`; A to Z may be upper or lower case. */
  name: string;
  /** What it is; may use other measures, and `t` of the stock of the part that uses it. */
  value: PartDimension;
}

/** One kind of part. */
export interface Part {
  /** What it is called. */
  name: string;
  /** Its number, 1 to 9999; the least that no other part has when left out. */
  number?: number;
  /** How many are needed, 1 to 999, whole. */
  count: number;
  /** Length, along the grain; 0.5 to 20000 mm. */
  length: PartDimension;
  /** Width, across the grain; 0.5 to 20000 mm. */
  width: PartDimension;
  /** Name of its stock; may be left out where there is only one. */
  stock?: string;
  /** Whether it may be turned across the grain; not when left out. */
  mayTurn?: boolean;
  /** What it is cut larger by on each side, to be trimmed, at most 200 mm; nothing when left out. */
  trim?: PartDimension;
  /** Whether it is cut later, to fit; not when left out. */
  later?: boolean;
}

/** Parts, worked out. */
export interface PartsListPlan {
  /** The parts, in the order given. */
  parts: PartRow[];
  /** What of each stock is needed, in the order given. */
  stocks: StockTotal[];
}

/** One kind of part, worked out. */
export interface PartRow {
  /** Its number, no other part's. */
  number: number;
  /** What it is called. */
  name: string;
  /** How many are needed. */
  count: number;
  /** Name of its stock. */
  stock: string;
  /** Thickness of its stock as measured, mm. */
  thickness: number;
  /** Length, along the grain. */
  length: PartSize;
  /** Width, across the grain. */
  width: PartSize;
  /** What it is cut larger by on each side, to be trimmed, mm. */
  trim: number;
  /** What became of that when the stock was measured again, where it changed. */
  trimChange?: SizeChange;
  /** Area of one face of one piece, finished, mm². */
  area: number;
  /** Whether it may be turned across the grain. */
  mayTurn: boolean;
  /** Whether it is cut later, to fit. */
  later: boolean;
}

/** A part's length or width. */
export interface PartSize {
  /** As it ends up, mm. */
  finished: number;
  /** As it is cut before trimming, mm: the allowance more on both sides. */
  rough: number;
  /** What became of it when the stock was measured again, where it changed. */
  change?: SizeChange;
}

/** A change of a dimension or an allowance with its stock's thickness. */
export interface SizeChange {
  /** What it was, mm, of a dimension finished. */
  was: number;
  /** What it has grown by, mm; negative where it has shrunk. */
  by: number;
}

/** What is needed of one stock. */
export interface StockTotal {
  /** Its name. */
  name: string;
  /** Its thickness as measured, mm. */
  thickness: number;
  /** Kinds of parts cut from it. */
  parts: number;
  /** Pieces cut from it. */
  pieces: number;
  /** Area of all finished pieces, mm². */
  area: number;
  /** Area of all pieces before trimming, mm², without kerfs and offcuts. */
  roughArea: number;
}

/** Works out parts for the stock as measured: every dimension, what changed with the stock, what is needed of each. Never throws. */
export function partsList(request: PartsListRequest): Reply<PartsListPlan>;
/** Plans the drawers of an opening, or of one outside size. */
export function drawerBox(request: DrawerBoxRequest): Reply<DrawerBoxPlan>;
/** Lays parts out on sheets, every cut from edge to edge, and lists the cuts in order. Never throws. */
export function sheetLayout(request: SheetLayoutRequest): Reply<SheetLayoutPlan>;
