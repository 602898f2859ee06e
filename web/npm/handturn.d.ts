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
  limits: { least: number; greatest: number } | { most: number } | null;
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
