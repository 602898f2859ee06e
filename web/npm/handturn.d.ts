/** What the engine is started from. */
export type Wasm = BufferSource | WebAssembly.Module;

/**
 * Starts the engine from the bytes of handturn.wasm, a compiled module, or a
 * Response or a promise of one. Call it once, before any other function.
 */
export function init(wasm: Wasm | Response | Promise<Wasm | Response>): Promise<void>;

/** Starts the engine at once, from bytes or a compiled module. */
export function initSync(wasm: Wasm): void;

/** What every function throws when a value is refused. The message is an English sentence. */
export class HandturnError extends Error {
  /** Which value: `parts`, `head.plates`, `marks.pattern.3`, ... */
  field: string;
  /** Why: `Empty`, `WrongKind`, `NotANumber`, `NotWhole`, `OutOfRange`, `Overflow`, `Unknown`, ... */
  cause: string;
  /** What is allowed, where there are limits; both ends are allowed. */
  limits: { least: number; greatest: number } | { least_mm: number; greatest_mm: number } | { most: number } | null;
}

// --- plain values ---------------------------------------------------------------

/** An exact fraction `[num, den]`, reduced, `den` above 0. Whole numbers within 2^53. */
export type Fraction = [num: number, den: number];
/** An exact angle as part of a turn: `[1, 4]` is 90°. */
export type Turns = Fraction;
/** An exact length in millimetres. */
export type Millimetres = Fraction;
/** A sense of turning. */
export type Sense = 'Clockwise' | 'Anticlockwise';
/** An angle given: a text as people type it, a number of degrees, or part of a turn. */
export type AngleGiven = string | number | Turns;

// --- what is asked -------------------------------------------------------------------

/** A question, with the head it is put to. Give exactly one of parts, angle, list and marks. */
export type Request = { head?: Head } & (
  /** Equal parts in one turn (2 to 10,000), cut every `every`-th (1 when not given). */
  | { parts: number; every?: number }
  /** An angle, set `times` times in a row (1 when not given). */
  | { angle: AngleGiven; times?: number }
  /** Two to 400 angles from one zero; the first is where the work stands at the start. */
  | { list: string | AngleGiven[] }
  | { marks: Marks }
);

/** Equal marks round a dial. */
export interface Marks {
  /** Marks in one turn, 2 to 10,000. */
  count: number;
  /** Kinds of mark by line length (mm unless it names its unit); one of 1 mm when not given. */
  kinds?: { length: string | number }[];
  /** Kind of each mark from the zero mark on, as a place in `kinds`; repeated as often as needed. */
  pattern?: number[];
  /** Numbers on the dial. */
  numbers?: { every?: number; perMark?: number; climbs?: 'clockwise' | 'anticlockwise'; zero?: boolean };
}

/**
 * A dividing head, given in part: what is missing is 40 : 1, level, with a 24-notch
 * direct plate, no plates and no gears. Texts are read as people type them.
 */
export interface Head {
  name?: string;
  /** Handle turns for one turn of the work: `40`, `"40 : 1"`, `[81, 2]`. */
  ratio?: string | number | Fraction;
  /** Which way the work turns for a clockwise handle. */
  workTurns?: 'clockwise' | 'anticlockwise';
  tilted?: boolean;
  degreeRing?: 'clockwise' | 'anticlockwise' | 'none';
  /** Slack, in handle turns. */
  slack?: string | number | Fraction;
  spindleClamp?: boolean;
  /** Circles of each plate: `"15 16 / 21 23"` or `[[15, 16], [21, 23]]`. Radii: `"49(51.5)"`. */
  plates?: string | number[][];
  plateStop?: 'withdraws' | 'fixed';
  /** Notches of direct plates. */
  direct?: string | number[];
  wormDropsOut?: boolean;
  /** Change gears, each as often as owned: `"24x2 28"` or `[24, 24, 28]`. */
  gears?: string | number[];
  /** Distance of the studs, in teeth; not checked when it is missing. */
  studDistance?: string | number;
  /** Teeth by which a rim must clear the next stud's gear. */
  studMargin?: string | number;
  mostIdlers?: string | number;
  /** What the plate does with one idler in a simple train. */
  oneIdler?: 'follows' | 'against';
  fourGears?: boolean;
  /** Least and greatest circle radius that the pin reaches, mm. */
  reachLeast?: string | number;
  reachGreatest?: string | number;
  /** Diameter of the pin, mm. */
  pin?: string | number;
  /** Opening of the sector arms: text, degrees or part of a turn. */
  armsLeast?: AngleGiven;
  armsGreatest?: AngleGiven;
  /** Whether there is a dial on the handwheel, its marks (or what one is worth, `"3′"`), its vernier. */
  handwheel?: boolean;
  handwheelMarks?: string | number;
  handwheelVernier?: string | number;
  /** Whether there is a fine dial; its shift of the plate in one turn, its marks, travel and slack. */
  fineDial?: boolean;
  fineShift?: AngleGiven;
  fineMarks?: string | number;
  fineTravel?: AngleGiven;
  fineSlack?: string | number | Fraction;
  /** Diameter of the work, mm unless it names inches. */
  workDiameter?: string | number;
}

// --- what is answered --------------------------------------------------------------------

export type Kind = 'Direct' | 'Plain' | 'Handwheel' | 'Compound' | 'Differential' | 'FineDial' | 'NearestHole';

/** The whole answer. */
export interface Answer {
  /** One group for each kind that is offered. */
  groups: Group[];
  /** Kinds that are not offered, and why. */
  left_out: { kind: Kind; reason: string }[];
  /** What would make it exact, where nothing owned does. */
  lacking: { circle: number | null; gear: number | null; gear_way: Differential | null };
}

/** All ways of one kind: the first eight in each order, and how many there are. */
export interface Group {
  kind: Kind;
  count: number;
  closest: Rated[];
  quickest: Rated[];
}

/** A way with its errors, which are all nought when it is exact. */
export interface Rated {
  way: Way;
  errors: {
    /** The greatest distance of any position from where it is wanted. */
    worst: Turns;
    /** The greatest difference of error between neighbours. */
    adjacent: Turns;
    /** How far the work is from home after the closing move. */
    closing: Turns;
  };
}

/** One manner of setting a division. Hand it back as it came. */
export type Way =
  | { Direct: { notches: number; sense: Sense } }
  | { Plain: Holes }
  | { Handwheel: { dial: { marks: number; vernier: number }; ratio: Fraction } }
  | { Compound: Compound }
  | { Differential: Differential }
  | { FineDial: Holes & { dial: { shift: Turns; marks: number; travel: Turns; slack: Fraction } } }
  | { NearestHole: Holes };

/** A circle, by its plate (counted from 0) and its holes. */
export interface CircleAt {
  plate: number;
  holes: number;
}

export interface Arms {
  least: Turns;
  greatest: Turns;
}

export interface Holes {
  circle: CircleAt;
  ratio: Fraction;
  arms: Arms;
}

/** Two circles of one plate; the back pin's spaces are below 0 when it goes back. */
export interface Compound {
  plate: number;
  pin: number;
  back: number;
  pin_spaces: number;
  back_spaces: number;
  times_round: number;
  ratio: Fraction;
  arms: Arms;
}

export interface Differential {
  circle: CircleAt;
  holes: number;
  ratio: Fraction;
  arms: Arms;
  train: {
    first: { driver: number; driven: number };
    second: { driver: number; driven: number } | null;
    idlers: [number | null, number | null];
    idlers_in: 'First' | 'Second';
  };
  /** Whether the plate turns the same way as the handle. */
  follows: boolean;
}

/** A hole, notch or dial mark by its true number, and how many there are. */
export interface At {
  number: number;
  of: number;
}

/** Where everything stands at one position. */
export interface Place {
  index: number;
  /** How far the work should have turned since position 0, and how far it has. */
  wanted: Turns;
  stands: Turns;
  /** Turns of the handle on the plate since position 0. */
  handle: Fraction;
  pin: At | null;
  back_pin: At | null;
  dial: At | null;
  notch: At | null;
}

/** What the hands do between two positions, leg by leg. */
export interface Move {
  legs: {
    part: 'Pin' | 'BackPin' | 'Handwheel' | 'FineDial' | 'Spindle';
    sense: Sense;
    /** Whole turns, and holes, notches or marks beyond them. */
    turns: number;
    spaces: number;
    from: At;
    to: At;
    /** Spaces between the arms, holes that show, and whether they stand to the rest of the circle. */
    arms: { spaces: number; show: number; rest: boolean } | null;
  }[];
}

/** One line of working. Words of the trade are names such as `AllMoves` or `{ SetAsIfFor: 120 }`. */
export interface Equation {
  about: Word | null;
  terms: ({ Over: Fraction } | { Whole: number } | { Angle: Turns } | { Sign: string } | { Word: Word })[];
  remark: Word | null;
}
export type Word = string | { [name: string]: number };

/** Every way the head can set it, in two orders; what is left out and why; what is lacking. */
export function divide(request: Request): Answer;
/** The best way of each kind, ranked. `closest` when no order is given. */
export function ways(request: Request, order?: 'closest' | 'quickest'): Rated[];
/** Where everything stands at position `index`, counted from 0; the last is the end of the closing move. */
export function place(request: Request, way: Way, index: number): Place;
/** What the hands do from position `index` to the next. */
export function step(request: Request, way: Way, index: number): Move;
/** The equations that lead to a way, to check it by hand. */
export function working(request: Request, way: Way): Equation[];

/** The whole head, checked, as the engine holds it. */
export function head(values?: Head): object;

/** A near fraction, and the fraction sought less the near one. */
export interface Near {
  fraction: Fraction;
  residual: Fraction;
}
/** The fraction nearest to `num / den` with a denominator of at most `most`. */
export function nearest(num: number, den: number, most: number): Near;

/** `12`, `-0.5`, `0,5`, `3/8` or `1 3/8`. */
export function readNumber(text: string): Fraction;
/** `40`, `40:1`, `40.5 : 1` or `81/2`. */
export function readRatio(text: string): Fraction;
/** `17.5`, `17°30′`, `17 30 15` or `1/3 turn`. */
export function readAngle(text: string): Turns;
/** Angles split by space, new line or `;`. */
export function readAngles(text: string): Turns[];
/** `6.35`, `6.35 mm`, `1/4 in` or `250 thou`. */
export function readLength(text: string): Millimetres;
/** `15 16 / 21 23`, a radius in brackets where known. */
export function readPlates(text: string): { circles: { holes: number; radius: Millimetres | null }[] }[];
/** `24 24 28` or `24x2 28`. */
export function readGears(text: string): { teeth: number; count: number }[];

// --- error budgets, and the plate one lacks --------------------------------------------

/** Errors of machine and hands, each to either side; what is not given is common practice. */
export interface Sources {
  /** Worm wheel, once in a turn of the work; worm, once in a turn of the handle: angles of the work. */
  wheel?: AngleGiven;
  worm?: AngleGiven;
  /** Place of a hole of an owned plate along its circle. */
  hole?: LengthGiven;
  /** Play of the pin in its hole, side to side. */
  pinPlay?: LengthGiven;
  /** Plate and blank off centre: half of what an indicator swings. */
  plateRunOut?: LengthGiven;
  blankRunOut?: LengthGiven;
  /** Reading of a dial, as a part of its finest mark. */
  reading?: string | number | Fraction;
  /** Whether slack is always taken up from the same side. */
  sameSide?: boolean;
  /** Radius of circles of which the head does not tell it. */
  radius?: LengthGiven;
}

export type Source =
  | 'Rounding' | 'Wheel' | 'Worm' | 'Holes' | 'Drilling' | 'Pin' | 'PlateRunOut' | 'Reading' | 'Slack' | 'Blank';

/** An error as an angle, as a length where the piece is cut, and how far off the angle can be as computed. */
export interface ErrorSize {
  arcsec: number;
  mm: number;
  within: number;
}

/** Sizes of an error. */
export interface ErrorSizes {
  /** No position is further off; no two neighbours differ by more. */
  total: ErrorSize;
  adjacent: ErrorSize;
  /** Root mean squares of both. */
  rms: ErrorSize;
  adjacent_rms: ErrorSize;
}

/** What makes a division wrong. */
export interface Budget {
  /** What the way rounds, exact. */
  rounding: Rated['errors'];
  /** Each source that makes something of it, with how it is taken to spread. */
  terms: (ErrorSizes & { source: Source; spread: 'Known' | 'Even' | 'Wave' | 'OneSided' })[];
  /** Greatest sizes added, mean squares added. */
  sum: ErrorSizes;
  /** The source with the greatest total. */
  dominant: Source | null;
}

/** What a way makes of a request, errors of machine and hands counted in; lengths at the head's work diameter. */
export function budget(request: Request & { sources?: Sources }, way: Way): Budget;

/** A plate to be made for a request. */
export type PlateAsked = Request & {
  /** How many times the holes needed are drilled; 1 when not given. */
  multiple?: number;
  /** Radius of the ring of holes; 55 mm when not given. */
  ring?: LengthGiven;
  /** How far a drilled hole strays along the ring; 0.05 mm when not given. */
  drilling?: LengthGiven;
  sources?: Sources;
  /** A further generation pays when it takes at least this share off the work's error; 1/10 when not given. */
  pays?: string | number | Fraction;
};

/** The plan of a plate, generation by generation. */
export interface PlatePlan {
  /** Handle turns of one part; the holes that a plate must have, or a multiple; the first circle owned that does. */
  needs: { turns: Fraction; holes: number; owned: CircleAt | null };
  /** How every generation is divided. */
  parts: { count: number; every: number };
  /** The circle that the plate gives the head; the way of the finished work with it. */
  circle: CircleAt;
  work: Way;
  /** How many generations pay. */
  enough: number;
  generations: {
    /** The way it is drilled; from the second on with the plate before. */
    way: Way;
    /** Its holes; lengths at the ring. */
    plate: Budget;
    /** The work cut with it; lengths at the head's work diameter. */
    work: Budget;
    /** Share of the work's error that it takes off what the generation before left. */
    gain: number;
    pays: boolean;
  }[];
}

/** The plan of the plate that a request needs; drilled first by the way with the least error, or by `first`. */
export function makePlate(request: PlateAsked, first?: Way): PlatePlan;

/** A ring of holes to be drilled. */
export interface RingAsked {
  holes: number;
  /** Diameter of the drill; the head's pin when not given. */
  drill?: LengthGiven;
  /** Radius of the ring; the greatest there is room for, in whole millimetres, when not given. */
  radius?: LengthGiven;
  /** Radius of the blank's rim. */
  rim?: LengthGiven;
  /** Rings that it has. */
  rings?: { radius: LengthGiven; drill: LengthGiven }[];
  /** Metal to be left between holes and to the rim; 0.75 mm when not given. */
  web?: LengthGiven;
  /** Its pin and its reach are what the ring must serve. */
  head?: Head;
}

/** How a ring fits: the metal left, and how far the pin can shake. */
export interface RingFit {
  radius: Length;
  drill: Length;
  web: Length;
  beside: Length | null;
  to_rim: Length | null;
  play: Length | null;
}

/** Whether a ring of holes can be drilled; what is in the way is an error. */
export function plateRing(asked: RingAsked): RingFit;

/** A lead screw of a mill's table, with its dial. */
export interface TableScrew {
  lead: LengthGiven;
  /** Marks once round the dial. */
  marks: number;
  /** 0 when not given. */
  slack?: LengthGiven;
  /** Whether the figures fall as the coordinate grows. */
  falls?: boolean;
}

/** A ring of holes on a mill's table, X to the right and Y away. */
export interface HolesAsked {
  holes: number;
  /** Radius of the ring. */
  ring: LengthGiven;
  /** Where hole 0 stands, from X anticlockwise; 0 when not given. */
  first?: AngleGiven;
  /** The way the holes count; anticlockwise when not given. */
  sense?: 'anticlockwise' | 'clockwise';
  /** X and Y of the centre from the edges where the dials stand at zero; 0 and 0 when not given. */
  centre?: [LengthGiven, LengthGiven];
  /** The screws, one for both or X and Y; no dials are told without them. */
  screws?: TableScrew | [TableScrew, TableScrew];
}

/** An angle that is not exact, and how far off it can be as computed. */
export interface Seconds {
  arcsec: number;
  within: number;
}

/** A dial: whole turns from zero, and the mark that stands at the line. */
export interface DialShows {
  turns: number;
  mark: number;
}

/** What a dial reads over a hole, and how it is come up to: straight, or back past it to `past` first. */
export interface DialAt {
  shows: DialShows;
  off: Length;
  comes: 'Stays' | 'Straight' | 'Past';
  past: DialShows | null;
}

/** Where holes lie. */
export interface HolesPlaced {
  holes: { degrees: number; from_centre: [Length, Length]; from_edges: [Length, Length]; dial: [DialAt, DialAt] | null }[];
  /** The worst that rounding to marks does; null without screws. */
  worst: { outwards: Length; onwards: Length; neighbours: Length; onwards_arcsec: Seconds; neighbours_arcsec: Seconds } | null;
}

/** Coordinates of every hole of a ring, and what the dials of a mill's table read there. */
export function plateHoles(asked: HolesAsked): HolesPlaced;

/** A straight tape of equal pitches, to be wrapped round a drum. */
export interface TapeAsked {
  parts: number;
  drum: LengthGiven;
  /** Of the paper; 0 when not given. */
  thickness?: LengthGiven;
  /** By how many thousandths the print is longer than drawn, and the paper thicker than reckoned; 0 when not given. */
  stretch?: string | number | Fraction;
  thicker?: LengthGiven;
}

/** Its pitch and length, and what is left over at the joint: a lap, below 0 a gap. */
export interface TapeSizes {
  pitch: Length;
  length: Length;
  lap: Length;
  lap_arcsec: Seconds;
  /** What a tenth of a millimetre along the tape is on the drum. */
  tenth_arcsec: Seconds;
}

/** The sizes of a tape. */
export function drumTape(asked: TapeAsked): TapeSizes;
/** The drum on which so many pitches close. */
export function drumFor(asked: { parts: number; pitch: LengthGiven; thickness?: LengthGiven }): { drum: Length };

/** Equal disks that touch each other and one in the middle, their centres on a circle. */
export function touchingDisks(asked: { parts: number; diameter: LengthGiven }): { disk: Length; central: Length };

// --- threads: what is asked ------------------------------------------------------------

/** A length given: a text (`"1/4 in"`, `"6.35 mm"`), a number of millimetres, or an exact fraction of them. */
export type LengthGiven = string | number | Millimetres;
/** A pitch or a lead: a length, or threads per inch as `"32 tpi"`. */
export type PitchGiven = LengthGiven;

/**
 * A thread: its name as people write it (`"M6x0.75-6g"`, `"1/4 BSF"`, `"2 BA"`, `"Tr16x8 P4 LH"`),
 * the name with which of the threads it can stand for (the first unless said), or its own figures.
 */
export type ThreadGiven = string | { name: string; pick?: number } | OwnThread;

/** A thread by its own figures. */
export interface OwnThread {
  /** A form of the list, or any angle with flats at crest and root in pitches. */
  form:
    | 'metric' | 'unified' | 'whitworth' | 'pipe' | 'ba' | 'tr' | 'acme' | 'square'
    | { angle: AngleGiven; crestFlat: string | number | Fraction; rootFlat: string | number | Fraction };
  major: LengthGiven;
  pitch: PitchGiven;
  /** 1 to 60; 1 when not given. */
  starts?: number;
  hand?: 'right' | 'left';
}

/** A thread with the class it is made to: the class of its name or the usual one unless said. */
export interface ThreadAsked {
  thread: ThreadGiven;
  /** What is made; the screw unless side or class say otherwise. */
  side?: 'screw' | 'nut';
  /** `"6g"`, `"2A"`, `"medium"`, as people write it. */
  class?: string;
}

/** The hole before a tap. */
export interface DrillsAsked {
  thread: ThreadGiven;
  /** Percent of the full height wanted, 30 to 100; 70 when not given. */
  percent?: string | number | Fraction;
  /** Whole sets owned; the metric one when neither sets nor drills are given. */
  sets?: ('metric' | 'number' | 'letter' | 'fraction')[];
  /** Drills owned besides, or the Shop's list as typed: `number letter -#41 6.35`. */
  drills?: LengthGiven[] | string;
}

/** How a thread is cut with a single point. */
export interface InfeedAsked extends ThreadAsked {
  /** Diameter of the work, or of the bore; the middle of the limits when not given. */
  work?: LengthGiven;
  /** The tool's own nose; one that suits the thread when not given. */
  nose?: { flat: LengthGiven } | { radius: LengthGiven };
  /** Straight in, along the flank, or short of it by an angle; short by half a degree when not given. */
  feed?: 'plunge' | 'flank' | { short: AngleGiven };
}

export interface PassesAsked extends InfeedAsked {
  /** Depth as the slide travels; as worked out by `infeed` when not given. */
  depth?: LengthGiven;
  /** First and least cut as the slide travels; starting points for steel when not given. */
  first?: LengthGiven;
  least?: LengthGiven;
  /** Spring passes, 0 to 20; 1 when not given. */
  spring?: number;
  /** One mark of the slide's dial (0.02 mm unless said), what it reads, and its marks once round (100). */
  dial?: { division?: LengthGiven; reads?: 'travel' | 'diameter'; marks?: number };
  /** After a measurement: what is still to come off along the slide, and where the dial stands, in marks. */
  left?: LengthGiven;
  dialAt?: number;
  /** First pass listed (1), and how many at most (420, which is all there can be). */
  from?: number;
  most?: number;
}

export interface WiresAsked extends ThreadAsked {
  /** Wires, needles or drill shanks owned. */
  owned?: LengthGiven[];
}

export interface OverAsked extends ThreadAsked {
  wire: LengthGiven;
}

export interface ReadingAsked extends OverAsked {
  /** What was read over three wires. */
  reading: LengthGiven;
  /** Set-over of the slide from square across; square across when not given. */
  setOver?: AngleGiven;
}

/** A lathe's way from spindle to tool; what is missing is a reversible first driver and no gearbox. */
export interface Lathe {
  /** Lead of the lead screw: `"8 tpi"`, `3`. */
  screw: PitchGiven;
  screwHand?: 'right' | 'left';
  /** Turns of the first driver for one of the spindle; 1 when not given. */
  head?: string | number | Fraction;
  /** Ratios of a gearbox, the one it stands in first. */
  gearbox?: (string | number | Fraction)[];
  /** Change gears, each as often as owned: `"20x2 30"` or `[20, 20, 30]`. */
  gears: string | number[];
  /** Distance of the studs and margin of the rims, in teeth. */
  studDistance?: number;
  studMargin?: number;
  /** 0 to 2. */
  mostIdlers?: number;
  fourGears?: boolean;
  /** Which way the first driver turns beside the spindle; `either` when not given. */
  drive?: 'either' | 'same' | 'against';
}

/** A lead to be cut: that of a thread, a length, or a worm's by module or diametral pitch. */
export type GearsAsked = {
  lathe: Lathe;
  /** Six gears: never (unless said), always, or when fewer are off by more than so many parts in a million. */
  six?: 'never' | 'always' | number;
  /** Steps the search may take, 1 to 1,000,000,000; 1,000,000 when not given. `finished` tells whether they did. */
  steps?: number;
} & (
  | { thread: ThreadGiven }
  | ((
      | { lead: PitchGiven }
      | { module: LengthGiven }
      | { diametralPitch: string | number | Fraction }
    ) & { starts?: number; hand?: 'right' | 'left' })
);

/** What was measured on a thread that nobody knows. */
export interface Measured {
  /** Outside of a screw, bore of a nut. */
  diameter: LengthGiven;
  pitch: PitchGiven;
  side?: 'screw' | 'nut';
}

// --- threads: what is answered ---------------------------------------------------------

/** A length in both units. */
export interface Length {
  mm: number;
  inch: number;
  /** To its last digit, `"5.908 mm"` or `"1/14 in"`; `null` where it is not exact. */
  exact: string | null;
  /** By how many millimetres `mm` can be off where it is not exact; else 0. */
  within: number;
}

/** Greatest and least; `null` where the standard sets none. */
export interface Range {
  max: Length | null;
  min: Length | null;
}

export type Series =
  | 'Coarse' | 'Fine' | 'Unc' | 'Unf' | 'Unef' | 'Un4' | 'Un6' | 'Un8' | 'Un12' | 'Un16' | 'Un20' | 'Un28' | 'Un32'
  | 'Bsw' | 'Bsf' | 'Ba' | 'Me40' | 'Me32' | 'Brass' | 'Cycle' | 'Pipe' | 'Tr' | 'Acme'
  | 'StubAcme';
export type Form = 'Metric' | 'Unified' | 'Whitworth' | 'Pipe' | 'Ba' | 'Trapezoidal' | 'Acme' | 'StubAcme' | 'Cycle'
  | 'Square' | 'Own';
export type Side = 'screw' | 'nut';

/** A thread by its basic sizes, with what its name says of it. */
export interface Thread {
  /** Its listed name, which reads again, and its series; `null` outside all lists. */
  name: string | null;
  series: Series | null;
  form: Form;
  /** Between the flanks, in degrees. */
  angle: number;
  major: Length;
  pitch: Length;
  tpi: number;
  lead: Length;
  starts: number;
  hand: 'Right' | 'Left';
  /** The class named, where one was. */
  class: string | null;
  side: Side | null;
}

/** One side of the joint: radial depth, and its flats or roundings, 0 where there is none. */
export interface Profile {
  depth: Length;
  crest_flat: Length;
  root_flat: Length;
  crest_radius: Length;
  root_radius: Length;
}

export interface LimitsOfSize {
  class: string;
  side: Side;
  major: Range;
  /** Pitch diameter (effective). */
  pitch_diameter: Range;
  minor: Range;
}

export interface Sizes {
  thread: Thread;
  basic: {
    major: Length;
    pitch_diameter: Length;
    /** Down to the screw's root, the nut's bore, and out to the nut's root. */
    minor_external: Length;
    minor_internal: Length;
    major_internal: Length;
  };
  profile: { sharp_height: Length; external: Profile; internal: Profile };
  /** Of the class asked for, or of every usual one that the standard has at this size. */
  limits: LimitsOfSize[];
}

export interface Blank {
  class: string | null;
  side: Side;
  /** What to turn or bore to: the middle of the limits. */
  to: Length;
  limits: Range | null;
  /** For a die, which raises the crest. */
  die: Length | null;
}

export interface Tapping {
  drill: { set: 'Number' | 'Letter' | 'Fraction' | 'Metric' | null; name: string; diameter: Length };
  /** Percent of the full height: crest flat to root flat of a 60° thread, the form's depth of all others. */
  percent: number;
  /** Percent of the nut's own basic height. */
  percent_of_nut: number;
}

export interface Candidate {
  thread: Thread;
  /** Measured less basic. */
  off_diameter: Length;
  off_pitch: Length;
  /** What tells it from the first: another angle, twenty threads longer by, diameter larger by. */
  reasons: ('Angle' | { OverTwenty: Length } | { Diameter: Length })[];
}

/** Depths from touch-on, and how the top slide stands. Angles in degrees. */
export interface Depths {
  work: Length;
  straight: Length;
  along_slide: Length;
  /** How much the groove is then widened along the bed, where the nose is narrower than a flat root. */
  widen: Length;
  /** Diameter the tip reaches. */
  tip: Length;
  /** From square across, and on a scale that reads zero along the bed. */
  set_over: number;
  on_bed_scale: number;
  swing: 'None' | 'Clockwise' | 'Anticlockwise';
  drift: 'None' | 'Headstock' | 'Tailstock';
}

export interface Pass {
  /** From 1. */
  number: number;
  spring: boolean;
  /** The dial, zero at touch-on: marks from zero, whole turns, the mark at the line, what it shows. */
  reading: { from_zero: number; turns: number; mark: number; shows: Length };
  /** How far the slide goes on, and how deep it then stands. */
  cut: Length;
  depth: Length;
}

export interface Passes {
  /** All there are, spring passes counted, and how many are not listed here. */
  count: number;
  left_out: number;
  depth: Length;
  /** The depth wanted less the nearest that the dial can show. */
  left_by_rounding: Length;
  first: Length;
  least: Length;
  set_over: number;
  passes: Pass[];
}

export interface Wires {
  /** Touches straight grooves at the pitch line; and with the lead angle counted. */
  best: Length;
  best_with_lead: Length;
  least: Length;
  greatest: Length;
  /** Whether the root, not the crests, sets the least. */
  by_root: boolean;
  /** In degrees. */
  lead_angle: number;
  /** Which of those owned to take. */
  chosen: Length | null;
}

/** What wires read at one pitch diameter. */
export interface Over {
  pitch_diameter: Length;
  /** Over three wires, by exact contact. */
  over_wires: Length;
  /** The usual formula, the lead-angle term to add to it, and whether both are within 0.001 mm. */
  formula: Length;
  lead_term: Length;
  formula_will_do: boolean;
  touches: Length;
  proud: Length;
}

export interface OverWires {
  wire: Length;
  max: Over;
  min: Over;
}

export interface Left {
  diameter: Length;
  straight: Length;
  along_slide: Length;
}

/** What a reading means; below 0 is past. */
export interface FromWires {
  pitch_diameter: Length;
  limits: Range;
  verdict: 'MoreToCut' | 'Within' | 'TooFar';
  to_limit: Left;
  to_middle: Left;
  at_most: Left;
}

/** A train in the order in which it is mounted. */
export interface GearTrain {
  pairs: { driver: number; driven: number }[];
  idlers: number[];
  /** In which pair the idlers stand, and which setting of the gearbox it is for, from 0. */
  idlers_in: number;
  setting: number;
  exact: boolean;
  ratio: number;
  /** The lead it cuts. */
  cuts: Length;
  off_ppm: number;
  off_over_100_mm: Length;
}

export interface Gears {
  lead: Length;
  /** The best eight of all, the best first. */
  trains: GearTrain[];
  /** Whether the whole space was covered; else give more steps. */
  finished: boolean;
  tried_six: boolean;
  /** Trains accounted for, and those of them looked at one by one. */
  covered: number;
  weighed: number;
  /** Gears of a nearer ratio that can't be mounted, and why. */
  unmounted: { drivers: number[]; driven: number[]; setting: number; why: string } | null;
  /** The one gear that would make it exact, where nothing owned does. */
  lacking: { gear: number | null; train: GearTrain | null; with_127: GearTrain | null };
}

/** Every series with the names of its sizes. */
export function threads(): { series: Series; names: string[] }[];
/** Every thread that a name can stand for, those met most often first. */
export function readThread(text: string): Thread[];
/** Basic sizes, profile and limits of size. */
export function threadSizes(asked: ThreadAsked): Sizes;
/** What to turn or bore the work to before the thread is cut. */
export function threadBlank(asked: ThreadAsked): Blank;
/** The drills nearest to the engagement wanted, at most five. */
export function tappingDrills(asked: DrillsAsked): Tapping[];
/** The listed threads that something measured may be, nearest first, at most eight. */
export function whichThread(measured: Measured): Candidate[];
/** How far the tool goes in, and how the top slide stands for it. */
export function infeed(asked: InfeedAsked): Depths;
/** The passes as readings of the slide's dial. */
export function passes(asked: PassesAsked): Passes;
/** Pass `number`, from 1. */
export function pass(asked: PassesAsked, number: number): Pass;
/** Which wires serve to measure a screw. */
export function wires(asked: WiresAsked): Wires;
/** What a wire reads at the greatest and at the least pitch diameter. */
export function overWires(asked: OverAsked): OverWires;
/** From a reading over three wires back to the pitch diameter, and what is still to come off. */
export function fromWires(asked: ReadingAsked): FromWires;
/** Change gears for a lead: the nearest trains, proved best where `finished`. */
export function gearsFor(asked: GearsAsked): Gears;

// --- dials ------------------------------------------------------------------------

/** An exact angle, told both ways. */
export interface AngleTold {
  turns: Turns;
  degrees: number;
}
/** Arc-seconds that are not exact, and how far off they can be. */
export interface Arcsec {
  arcsec: number;
  within: number;
}

/** Lines of a dial: each mark gets the rarest one whose `every` divides it; one must be for every mark. */
export interface DialAsked {
  count: number;
  lines: { every: number; length: LengthGiven }[];
  numbers?: Marks['numbers'];
}

/** What to cut and to stamp: at a position of the cutting order, or at a mark counted from zero the way numbers climb. */
export type MarkAsked = { marks: Marks } & (
  | { index: number; workTurns?: 'clockwise' | 'anticlockwise' }
  | { mark: number }
);
export interface Mark {
  mark: number;
  /** Which of the kinds of `marks`, from 0. */
  kind: number;
  length: Length;
  number: number | null;
}

/** The slide that draws the lines, its dial at 0 where the tool touches the edge. */
export interface StopsAsked {
  marks: Marks;
  /** How far one turn of its dial moves it, and the marks round that dial. */
  lead: PitchGiven;
  round: number;
  /** How far from the edge lines begin. */
  from?: LengthGiven;
  /** Which way its dial counts while a line is drawn; up when not given. */
  runs?: 'up' | 'down';
}
export interface DialReading {
  from_zero: number;
  turns: number;
  mark: number;
  travel: Length;
}
export interface Stops {
  start: DialReading;
  /** One for each kind of mark: where to stop, the line that comes of it, and by how much it is longer than asked. */
  ends: { reading: DialReading; length: Length; off: Length }[];
}

export interface FiguresAsked {
  /** Read from before a handwheel, from beside a table, or on a face at its uppermost place. */
  on: 'handwheel' | 'table' | 'face';
  /** True when not given. */
  upright?: boolean;
  /** Seen from the dial's front. */
  climbs: 'clockwise' | 'anticlockwise';
}
export interface Figures {
  lines_from: 'Front' | 'Back' | 'Centre' | 'Outside';
  feet: 'Front' | 'Back' | 'Centre' | 'Outside';
  /** To who sees them upright. */
  climbs_right: boolean;
  /** The sense of turning past a fixed line for which the dial reads more. */
  rises: Sense;
}

/** A vernier, by the marks of a dial and parts of one, or by two angles. */
export type VernierAsked = (
  | { count: number; parts: number }
  | { main: AngleGiven; least: AngleGiven }
) & {
  /** Numbered against the dial, over N + 1 marks. */
  retrograde?: boolean;
  /** Each division over two marks. */
  long?: boolean;
  /** To both sides of its zero. */
  double?: boolean;
};
export interface Vernier {
  /** Of one side, and the marks they stand over. */
  divisions: number;
  over_marks: number;
  /** Both ends counted, both sides together. */
  lines: number;
  main: AngleTold;
  least: AngleTold;
  division: AngleTold;
  spans: AngleTold;
  /** Along the rim, where a diameter is given. */
  division_arc: Length | null;
  spans_arc: Length | null;
}
export interface VernierReading {
  /** The mark reached or passed, the line that meets one or comes nearest, and what is left. */
  mark: number;
  line: number;
  left: AngleTold;
}

export interface DialWidth {
  arc: Length;
  chord: Length;
  /** A line that reads well: a tenth to a fifth of a division. */
  line: { least: Length; greatest: Length };
}
export interface DialsForScrew {
  /** Dials of 10 to 500 marks whose mark is a round step of an inch or of a millimetre. */
  handy: { marks: number; step: Length; inch: boolean }[];
  /** For the step asked: marks a turn would need, the nearest whole number, what each is, what a turn is off. */
  for_step: { needed: number; marks: number; each: Length; off: Length } | null;
}

/** A screw across the end of an arm that turns the plate of a head; 40 : 1 when no ratio is given. */
export interface FineArm {
  lead: PitchGiven;
  radius: LengthGiven;
  ratio?: string;
}
export interface FineStep {
  at_work: AngleTold;
  marks: number;
  /** The arm for exactly that. */
  radius: Length;
}
export interface FineAsked extends FineArm {
  marks: number;
  /** What one mark is called, and the error that will do, both at the work. */
  step: AngleGiven;
  within: AngleGiven;
  /** Turns of the dial used each way. */
  turns: number | Fraction;
}
export interface FineDial {
  radius: Length;
  /** One mark near the middle, and the greatest error over the turns used (below 0 the work falls behind), at the work. */
  mark: Arcsec;
  worst: Arcsec;
  /** The most marks each way within the error that will do. */
  most_marks: number;
  /** The fewest holes of a circle of which the turns used cover half a space each way. */
  least_holes: number;
  /** As the head has it: `fineShift` and `fineTravel`, angles of the plate. */
  shift: AngleTold;
  travel: AngleTold;
}

/** The marks of a dial as a question takes them. */
export function dialMarks(asked: DialAsked): Marks;
/** What to cut and what to stamp at one mark. */
export function dialMark(asked: MarkAsked): Mark;
/** Where the slide stops that draws the lines. */
export function dialStops(asked: StopsAsked): Stops;
/** How the figures stand. */
export function dialFigures(asked: FiguresAsked): Figures;
/** How a vernier is to be cut. */
export function vernier(asked: VernierAsked & { diameter?: LengthGiven }): Vernier;
/** Which mark and which line tell a reading. */
export function vernierReads(asked: VernierAsked & { reading: AngleGiven }): VernierReading;
/** How wide the divisions of a dial come out. */
export function dialWidth(asked: { count: number; diameter: LengthGiven }): DialWidth;
/** How large a dial must be. */
export function dialDiameter(asked: { count: number; width: LengthGiven }): { by_arc: Length; by_chord: Length };
/** Which dials suit a screw. */
export function dialsForScrew(asked: { lead: PitchGiven; step?: LengthGiven }): DialsForScrew;
/** Round steps of the work near a screw and an arm. */
export function fineDialSteps(asked: FineArm): FineStep[];
/** What comes of a fine dial. */
export function fineDial(asked: FineAsked): FineDial;
// --- ratchets, splines, flats, clock wheels, cams --------------------------------------

/** A ratchet wheel; of cutter, depth and land one is left out, or land for none. */
export interface RatchetAsked {
  teeth: number;
  outside: LengthGiven;
  /** By how much the face leans back from the radius; radial when not given. */
  undercut?: AngleGiven;
  /** Angle of the single-angle cutter. */
  cutter?: AngleGiven;
  /** Depth along the face. */
  depth?: LengthGiven;
  /** What a tooth keeps of the outside, along the arc. */
  land?: LengthGiven;
}

/** How a ratchet's gap is cut; angles in degrees. */
export interface RatchetCut {
  parts: number;
  cutter: number;
  offset: Length;
  depth: Length;
  from_top: Length;
  land: Length;
  tooth: number;
  back: number;
  root: Length;
}
export function ratchet(asked: RatchetAsked): RatchetCut;

/** How far the head is raised, in degrees, for teeth on the face of a disk. */
export function faceTeeth(asked: { teeth: number; cutter: AngleGiven }): { parts: number; raised: number };

/** A splined shaft by its own figures, or an inch one by its fit (SAE J499a). */
export type SplinesAsked =
  | { keys: number; major: LengthGiven; minor: LengthGiven; key: LengthGiven; cutter: LengthGiven }
  | { keys: number; major: LengthGiven; fit: 'A' | 'B' | 'C'; cutter: LengthGiven };

export interface SplineCuts {
  parts: number;
  major: Length;
  minor: Length;
  key: Length;
  /** Middle of the cutter from the centre line, and its move across to the other side. */
  offset: Length;
  across: Length;
  depth: Length;
  flank: Length;
  widest: Length | null;
  space: Length;
  floor: Length;
  between: {
    left: 'Ridge' | 'Loose' | 'Floor';
    outside: Length | null;
    foot: Length | null;
    widest: Length | null;
    proud: Length | null;
  };
}
export function splines(asked: SplinesAsked): SplineCuts;

/** A keyway, its depth counted at the side. */
export function keyway(asked: { shaft: LengthGiven; width: LengthGiven; side: LengthGiven }): {
  arc: Length;
  from_top: Length;
  over: Length;
};

/**
 * Flats on round stock. `across` is across flats; for an odd number twice from the centre to a
 * flat, for one flat from it to the round opposite.
 */
export interface FlatsAsked {
  sides: number;
  across: LengthGiven;
  stock?: LengthGiven;
  cutter?: LengthGiven;
}
export interface FlatsFound {
  parts: number;
  to_flat: Length;
  straddle: boolean;
  sharp: { stock: Length; width: Length; depth: Length; to_corner: Length | null } | null;
  cut: {
    depth: Length;
    over_first: Length;
    first_width: Length;
    width: Length;
    /** Arc of the round that stays at each corner; `null` where corners are sharp. */
    round: Length | null;
    passes: number | null;
  } | null;
}
export function flats(asked: FlatsAsked): FlatsFound;

/** A clock wheel and the pinion it drives. */
export interface ClockPairAsked {
  wheel: number;
  leaves: number;
  module: LengthGiven;
  /** Addenda of BS 978, or those of common cutters; the former when not given. */
  rule?: 'standard' | 'common';
}
export interface ClockBlank {
  parts: number;
  pitch: Length;
  outside: Length;
  depth: Length;
  thickness: Length;
}
export interface ClockPair {
  ratio: number;
  centres: Length;
  factor: number;
  wheel: ClockBlank;
  pinion: ClockBlank;
  form: 'Round' | 'Medium' | 'High';
  end_radius: Length;
}
export function clockPair(asked: ClockPairAsked): ClockPair;

/** A cam's lobe cut with the head raised; angles in degrees. */
export interface CamLobeAsked {
  rise: LengthGiven;
  over: AngleGiven;
  /** The table's travel for a turn of the work. */
  geared: LengthGiven;
  face: LengthGiven;
  /** How far the head was raised in fact. */
  raised?: AngleGiven;
}
export function camLobe(asked: CamLobeAsked): {
  lead: Length;
  tilt: number;
  from_upright: number;
  travel: Length;
  flute: Length;
  gives: Length | null;
  off: Length | null;
};

/** A cam's lobe cut by steps. */
export function camSteps(asked: {
  rise: LengthGiven;
  over: AngleGiven;
  steps: number;
  radius: LengthGiven;
  mill: LengthGiven;
}): { turn: number; each: Length; cusp: Length };

// --- wheels ----------------------------------------------------------------------------

/** A number as people type it, or an exact fraction. */
export type NumberGiven = string | number | Fraction;

/** Size of teeth: one of the two. */
export type ToothSize = { module: LengthGiven; diametralPitch?: undefined } | { diametralPitch: NumberGiven; module?: undefined };

/** The rack that teeth are cut to. */
export type ToothAsked = ToothSize & {
  /** 10° to 35°; 20° when not given. */
  pressureAngle?: AngleGiven;
  /** 2.157, 2.25, or 2.2 modules and 0.002 in, or one's own in modules; what is usual when not given. */
  depth?: 'old' | 'coarse' | 'fine' | { addendum: NumberGiven; dedendum: NumberGiven };
};

/** What a wheel has of its own. */
export interface WheelOwn {
  teeth: number;
  /** Profile shift in modules; 0 when not given. */
  shift?: NumberGiven;
  /** By how much each tooth is thinner at its pitch circle, for backlash; 0 when not given. */
  thinned?: LengthGiven;
}

export type WheelAsked = ToothAsked & WheelOwn;
/** A wheel and its blank as found: as drawn when not given. */
export type WheelFound = WheelAsked & { outside?: LengthGiven };

/** A number that is not exact, and how far off it can be. */
export interface About {
  value: number;
  within: number;
}

export interface WheelSizes {
  module: Length;
  diametral_pitch: number;
  depth_rule: 'old' | 'coarse' | 'fine' | 'own';
  outside_diameter: Length;
  pitch_diameter: Length;
  root_diameter: Length;
  base_diameter: Length;
  addendum: Length;
  dedendum: Length;
  whole_depth: Length;
  circular_pitch: Length;
  base_pitch: Length;
  /** Of a tooth along the pitch circle. */
  thickness: Length;
  /** Fewest teeth of this rack and shift without undercut, and whether this wheel has fewer. */
  fewest_teeth: number;
  undercut: boolean;
  /** Profile shift, in modules, from which it has none. */
  clear_shift: About;
  /** Width of a tooth's top, and whether that is under a quarter of the module. */
  top_land: Length;
  thin_top: boolean;
  /** Diameter at which the flanks would meet. */
  pointed_at: Length;
}

/** A cutter of a set, by its number there and in sets numbered the other way. */
export interface Cutter {
  number: number;
  other_number: number;
  /** Fewest teeth, for which its form is true; most teeth it is marked for, `null` for a rack. */
  least: number;
  greatest: number | null;
}

export type CutterAsked = ({ teeth: number; virtualTeeth?: undefined } | { virtualTeeth: NumberGiven; teeth?: undefined }) & {
  /** Sets by diametral pitch count from the rack, sets by module from twelve teeth; by diametral pitch when not given. */
  numbering?: 'diametralPitch' | 'module';
  /** Whether the set has half numbers; it has not when not given. */
  halves?: boolean;
  /** Numbers of the cutters owned, when not the whole set. */
  owned?: NumberGiven[];
};

export interface CutterChoice {
  cutter: Cutter;
  /** Most teeth it cuts in this set; `null` for a rack. */
  until: number | null;
  /** Whether it is marked for as many; if not, the right one is not owned. */
  in_range: boolean;
  /** The neighbour that does nearly as well, for virtual teeth near the end of a range. */
  beside: Cutter | null;
}

export interface WheelBlank {
  /** Outside it should have, and by how much the found one is over. */
  drawn: Length;
  over: Length;
  /** Depth from the found outside, and from the drawn one. */
  depth: Length;
  drawn_depth: Length;
  /** Height of the teeth above the pitch circle; what is left to the mate's roots. */
  addendum: Length;
  clearance: Length;
  height: 'Drawn' | 'Fair' | 'Low' | 'High' | 'Bottoms';
}

export interface WheelTold {
  /** What fits exactly. */
  module: Length;
  diametral_pitch: number;
  /** The usual sizes nearest to it: their blank, and by how much the measured one is over. */
  nearest_module: { module: Length; outside: Length; over: Length };
  nearest_diametral_pitch: { diametral_pitch: number; outside: Length; over: Length };
  is_module: boolean;
}

export interface SwingAsked {
  outside: LengthGiven;
  depth: LengthGiven;
  /** Of the head's centre over the table. */
  centreHeight: LengthGiven;
  /** Diameters of the cutter and of the collars beside it. */
  cutter: LengthGiven;
  collar: LengthGiven;
  /** How far something below the arbor reaches above the work's axis. */
  beside?: LengthGiven;
  /** Room to be left; 0 when not given. */
  clearance?: LengthGiven;
}

/** Room, below nought where something is in the way. */
export interface Swing {
  over_table: Length;
  table_clears: boolean;
  under_collar: Length;
  collar_clears: boolean;
  over_head: Length | null;
  head_clears: boolean;
  /** Height of the arbor over the table: touching, and at full depth. */
  touching: Length;
  at_depth: Length;
  /** Least cutter that clears all with this collar. */
  least_cutter: Length;
}

/** Two wheels of one rack. */
export type PairAsked = ToothAsked & { first: WheelOwn; second: WheelOwn };

export interface Mesh {
  standard: Length;
  /** Turns of the first for one of the second. */
  ratio: number;
  centres: Length;
  /** Centre distance without any backlash. */
  tight: Length;
  /** In degrees. */
  working_angle: About;
  working_diameters: [Length, Length];
  /** Along the working pitch circle, and between the flanks. */
  backlash: Length;
  between_flanks: Length;
  contact_ratio: About;
  /** Whether that is 1.2 or more. */
  runs_smoothly: boolean;
  /** From the outside of each to the root of the other. */
  root_clearance: [Length, Length];
  /** Whether the outside of each reaches deeper than the other's involute. */
  fouls: [boolean, boolean];
}

export interface Caliper {
  thickness: Length;
  height: Length;
  /** Where a rack would touch on both sides. */
  constant: Length;
  constant_height: Length;
}

export interface Span {
  /** Teeth between the anvils; fewest and most that serve. */
  across: number;
  least: number;
  greatest: number;
  reading: Length;
  /** Diameter at which the anvils touch. */
  touches: Length;
  /** Change of the reading for each millimetre of thickness. */
  per_thickness: number;
  /** Arc of a tooth by the reading given. */
  thickness: Length | null;
}

export interface PinsOver {
  reading: Length;
  /** Diameters of the pins' centres and of where they touch. */
  centres: Length;
  touches: Length;
  per_thickness: number;
  thickness: Length | null;
}

export interface Pins {
  least: Length;
  best: Length;
  greatest: Length;
  /** The one given, or the best of those owned; `null` where none serves. */
  pin: Length | null;
  over: PinsOver | null;
}

export type TrialAsked = WheelFound & {
  /** With a cutter of the gap's form, or rolled; a form cutter when not given. */
  cutting?: 'form' | 'generated';
  /** Measured over pins, by a caliper at this height, or else over so many teeth (the best number when not given). */
  pin?: LengthGiven;
  height?: LengthGiven;
  across?: number;
  reading: LengthGiven;
};

export interface Trial {
  reading: Length;
  /** What is to be read in the end. */
  wanted: Length;
  /** How much deeper to go. */
  deeper: Length;
  per_depth: number;
}

/** Blank, depth and tooth of a wheel, and whether its teeth are sound. */
export function wheelSizes(asked: WheelAsked): WheelSizes;
/** Which cutter of a set cuts it. */
export function wheelCutter(asked: CutterAsked): CutterChoice;
/** How deep to go in the blank as found. */
export function wheelBlank(asked: WheelAsked & { outside: LengthGiven }): WheelBlank;
/** What size a wheel's teeth are, by its outside and their number. */
export function whichWheel(measured: { outside: LengthGiven; teeth: number }): WheelTold;
/** How many teeth a blank is for; by how much it is over. */
export function teethOfBlank(measured: ToothSize & { outside: LengthGiven }): { teeth: number; outside: Length; over: Length };
/** The module of a circular pitch, the diameter on which teeth stand a chord apart, or their chord on a diameter. */
export function wheelPitch(
  measured: { circularPitch: LengthGiven } | { chord: LengthGiven; teeth: number } | { diameter: LengthGiven; teeth: number },
): { module: Length | null; diameter: Length | null; chord: Length | null };
/** Whether a wheel swings over the table and under the arbor. */
export function wheelSwing(asked: SwingAsked): Swing;
/** How two wheels run at a centre distance, or at the one that leaves a backlash. */
export function meshWheels(asked: PairAsked & ({ centres: LengthGiven; backlash?: undefined } | { backlash: LengthGiven; centres?: undefined })): Mesh;
/** Where to set two wheels whose backlash was measured. */
export function openCentres(asked: PairAsked & { centres: LengthGiven; measured: LengthGiven; wanted: LengthGiven }): {
  centres: Length;
  opening: Length;
  /** By how much both teeth together are thinner than drawn without play. */
  thinned: Length;
};
/** The teeth of a pair by its centre distance; the first turns `ratio` times for each turn of the second. */
export function teethOfPair(asked: ToothSize & { centres: LengthGiven; ratio: NumberGiven }): {
  sum: number;
  first: number;
  second: number;
  /** Whether they are whole numbers. */
  whole: boolean;
};
/** What a gear-tooth caliper is set to and reads. */
export function toothCaliper(asked: WheelFound): Caliper;
/** The span over teeth, and how thick a tooth is by a reading. */
export function toothSpan(asked: WheelFound & { across?: number; reading?: LengthGiven }): Span;
/** Which pins serve, what they read, and how thick a tooth is by a reading. */
export function toothPins(asked: WheelFound & { pin?: LengthGiven; owned?: LengthGiven[]; reading?: LengthGiven }): Pins;
/** How much deeper to go by what trial gaps read. */
export function trialGaps(asked: TrialAsked): Trial;

// --- slanted teeth, worms, bevels, racks --------------------------------------

/** What a tooth caliper is set to and reads. */
export interface ToothCaliper {
  height: Length;
  thickness: Length;
}

/** A helical wheel, its size that of the section square to the teeth. */
export type HelicalAsked = ToothAsked & {
  teeth: number;
  helix: AngleGiven;
  hand?: 'right' | 'left';
  face: LengthGiven;
};
export interface HelicalSizes {
  parts: number;
  pitch: Length;
  outside: Length;
  root: Length;
  depth: Length;
  lead: Length;
  axial_pitch: Length;
  /** How many straight teeth the cutter is chosen for. */
  virtual_teeth: number;
  caliper: ToothCaliper;
  /** Pitches along the axis that the face takes in. */
  overlap: number;
  /** Which way the table swings by the helix angle, seen from above. */
  table_swings: Sense;
  beyond_swing: boolean;
}
export function helical(asked: HelicalAsked): HelicalSizes;

/** A mill whose table is geared to the head; 40 : 1 when no ratio is given. */
export interface MillGiven {
  /** Lead of the table's screw: `5`, `"4 tpi"`. */
  screw: PitchGiven;
  ratio?: string | number;
  gears: string | number[];
  /** 0 to 2. */
  mostIdlers?: number;
  fourGears?: boolean;
  /** Which hand four gears without an idler cut; `right` when not given. */
  sameWayCuts?: 'right' | 'left';
}
/** A helix by its lead, or by the wheel it belongs to. */
export type HelixGearsAsked = {
  mill: MillGiven;
  /** What the last gear sits on; the worm shaft when not given. */
  geared?: 'worm' | 'spindle';
  six?: boolean;
} & (HelicalAsked | { lead: LengthGiven; diameter: LengthGiven; face: LengthGiven; grooves?: number; hand?: 'right' | 'left' });
export interface HelixTrain {
  /** From the screw, which drives, to worm shaft or spindle. */
  pairs: { driver: number; driven: number }[];
  idlers: number[];
  idlers_in: number;
  /** Just the lead that was given; never so for a wheel's. */
  exact: boolean;
  lead: Length;
  off: Length;
  off_ppm: number;
  off_arcsec: number;
  off_over_face: Length;
  /** By how many teeth a gear on the spindle is moved on from groove to groove. */
  teeth_on: number | null;
}
export function helixGears(asked: HelixGearsAsked): { machine: Length; trains: HelixTrain[] };

/** A worm, by the size of its wheel's teeth or by its pitch, and the wheel where `teeth` are given. */
export type WormAsked = (ToothAsked | (Pick<ToothAsked, 'pressureAngle' | 'depth'> & { pitch: PitchGiven })) & {
  starts?: number;
  diameter: LengthGiven;
  hand?: 'right' | 'left';
} & ({ teeth: number; face: LengthGiven; leave?: LengthGiven } | { teeth?: undefined });
export interface WormSizes {
  lead: Length;
  lead_angle: number;
  axial_pitch: Length;
  normal_pitch: Length;
  outside: Length;
  root: Length;
  depth: Length;
  tool_end: Length;
}
export interface WormWheel {
  parts: number;
  ratio: number;
  centres: Length;
  pitch: Length;
  throat: Length;
  throat_radius: Length;
  outside: Length;
  useful_face: Length;
  gash_angle: number;
  gash_depth: Length;
  depth: Length;
  hob: Length;
  /** Hobbed without gashes: the blank, by how much it may be off, the centre distance then. */
  free: { blank: Length; within: Length; centres: Length };
}
export function wormPair(asked: WormAsked): { worm: WormSizes; wheel: WormWheel | null };

/** A pair of bevel wheels; the size is the small end's at parallel depth, the large end's at tapering depth. */
export type BevelAsked = ToothAsked & {
  teeth: number;
  mate: number;
  /** 90 degrees when not given. */
  shafts?: AngleGiven;
  face: LengthGiven;
  along: 'parallel' | 'tapering';
};
export interface BevelWheel {
  parts: number;
  pitch_angle: number;
  pitch: Length;
  outside: Length;
  apex_to_tips: Length;
  face_angle: number;
  back_angle: number;
  /** How far the head tilts up. */
  cutting_angle: number;
  addendum_angle: number;
  dedendum_angle: number;
  virtual_teeth: number;
  caliper: ToothCaliper;
  /** Parallel depth: a quarter of the pitch, in degrees. */
  roll: number | null;
}
export interface BevelPair {
  cone: Length;
  widest_face: Length;
  too_wide: boolean;
  large_module: Length;
  small_module: Length;
  depth: Length;
  /** Parallel depth: how far the table moves after the work for each flank. */
  offset: Length | null;
  wheels: [BevelWheel, BevelWheel];
}
export function bevelPair(asked: BevelAsked): BevelPair;

/** A rack and the dial of the table it is cut by; readings from gap `from` on, a thousand at most. */
export type RackAsked = ToothAsked & {
  gaps: number;
  division: LengthGiven;
  marks: number;
  from?: number;
};
export interface RackSizes {
  pitch: Length;
  thickness: Length;
  addendum: Length;
  depth: Length;
  length: Length;
  worst: Length;
  adjacent: Length;
  readings: { wanted: Length; turns: number; mark: number; off: Length }[];
}
export function rack(asked: RackAsked): RackSizes;

/** A small sum there is: its name, and what it asks, each with what is taken when it is not given. */
export interface SumKind {
  sum: string;
  group: 'turn' | 'mill' | 'fit' | 'wire';
  name: string;
  about: string;
  asks: { key: string; label: string; usual: string; choices: string[] | null }[];
}
export function sums(): SumKind[];

/** One figure of a small sum: a length, an angle in degrees, a number with how far off it can be, a count or words. */
export type SumFigure =
  | Length
  | { degrees: number; within: number }
  | { value: number; within: number }
  | number
  | string;
export interface SumAnswer {
  sum: string;
  title: string;
  figures: Record<string, SumFigure>;
  tables: Record<string, Record<string, SumFigure>[]>;
  working: string[];
  notes: string[];
  /** What can hurt or spoil: show it beside the answer. */
  care: string;
  source: string;
  /** SVG to scale. */
  drawing: string;
}
/** Fields by the keys of `sums()`, as typed or as numbers; `owned` are lists of the Shop by name. */
export function sum(
  name: string,
  asked?: Record<string, string | number>,
  owned?: Record<string, string>,
): SumAnswer;

/** What a value of a card is; a length where nothing is said. */
export type CardKind = 'length' | 'angle' | 'number';
/** What the drawing says of a value: a text of its kind, a number (mm, degrees), or `=` and a formula: `= bore - 2*0.05`. */
export type CardGiven = string | number | {
  drawing: string | number;
  /** What was measured: it takes the drawing value's place for all that follows. */
  measured?: string | number;
  kind?: CardKind;
};
/** Exact, and the same in decimals. */
export type CardAmount<K extends CardKind = CardKind> = {
  length: { fraction: Millimetres; mm: number; inch: number | null };
  angle: { turns: Turns; degrees: number | null };
  number: { fraction: Fraction; value: number };
}[K];
/** A value by the drawing alone, and with what was measured, here and wherever it depends on. */
export type CardValue = {
  [K in CardKind]: {
    kind: K;
    drawing: CardAmount<K>;
    in_force: CardAmount<K>;
    /** The values whose formulas name it. */
    followed_by: string[];
  };
}[CardKind];
/**
 * Values of a card by their names, up to 32; capitals and small letters are the same. Of values that
 * wait for each other the error says the way round: cause `Cycle`, also `Units` where units do not go together.
 */
export function cardValues<N extends string>(values: Record<N, CardGiven>): Record<N, CardValue>;
