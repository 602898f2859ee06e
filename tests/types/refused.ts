// Each line that follows an "expected" must be refused by the types, and none else;
// the test counts them. So the check of uses.ts can fail.
import {
  divide, ways, place, step, budget, makePlate, plateRing, nearest, readAngle, threadSizes, pass, passes, overWires,
  infeed, gearsFor, whichThread, dialMarks, vernier, fineDial, ratchet, splines, wheelSizes, wheelCutter, toothPins, cardValues,
} from 'handturn';
import type { Head, Request, Rated, Lathe } from 'handturn';

// expected: parts is a number
divide({ parts: '127' });
// expected: a question asks for something
divide({ head: {} });
// expected: no such order
ways({ parts: 64 }, 'fastest');
// expected: no such value of a head
const mine: Head = { plate: '15 16' };
// expected: a choice by its name
const fixed: Head = { plateStop: 'Fixed' };
// expected: exact values are pairs
const worst: number = ways({ parts: 64 })[0]!.errors.worst;
// expected: a way out of an answer
place({ parts: 64 }, { Plain: { holes: 10 } }, 0);
// expected: an index
step({ parts: 64 }, ways({ parts: 64 })[0]!.way);
// expected: no text in place of a number
nearest('355', 113, 100);
// expected: a pin may be missing
place({ parts: 64 }, ways({ parts: 64 })[0]!.way, 0).pin.number;
// expected: no number in place of a text
readAngle(17.5);
// expected: no such field of an answer
divide({ parts: 64 }).ways;
// expected: a way out of an answer
budget({ parts: 64 });
// expected: no such source of error
makePlate({ parts: 127, sources: { luck: 1 } });
// expected: a share may be text, a gain is a number
const gained: string = makePlate({ parts: 127 }).generations[0]!.gain;
// expected: holes are a number
plateRing({ holes: '127' });
// expected: a thread is asked for
threadSizes({ class: '6g' });
// expected: no such form
threadSizes({ thread: { form: 'round', major: 6, pitch: 1 } });
// expected: a limit may not be set
threadSizes({ thread: 'M6' }).limits[0]!.minor.min.mm;
// expected: the number of a pass
pass({ thread: 'M6' });
// expected: passes are a number
passes({ thread: 'M6', spring: '1' });
// expected: a wire is given
overWires({ thread: 'M6' });
// expected: a nose is flat or round
infeed({ thread: 'M6', nose: 0.1 });
// expected: a lathe has a lead screw
const lathe: Lathe = { gears: [20, 30] };
// expected: a lead is asked for
gearsFor({ lathe, six: 'never' });
// expected: a length is no number
const off: number = whichThread({ diameter: 6, pitch: 1 })[0]!.off_pitch;
// expected: a dial has lines
dialMarks({ count: 365 });
// expected: a vernier by one pair or the other
vernier({ count: 365, least: '5′' });
// expected: an error that will do
fineDial({ lead: 1, radius: 60, marks: 86, step: '1″', turns: 2 });
// expected: teeth are a number
ratchet({ teeth: '48', outside: 40 });
// expected: no such fit
splines({ keys: 4, major: 25, fit: 'D', cutter: 3 });
// expected: a wheel has teeth
wheelSizes({ module: 1 });
// expected: a module or a diametral pitch, not both
wheelSizes({ teeth: 64, module: 1, diametralPitch: 24 });
// expected: teeth or virtual teeth
wheelCutter({ numbering: 'module' });
// expected: pins may not serve
toothPins({ teeth: 64, module: 1 }).over.reading.mm;
// expected: a value is a length, an angle or a number
cardValues({ bore: { drawing: 6, kind: 'mass' } });
// expected: no such value
cardValues({ bore: 6 }).plug;

export const used: [Head, Head, number, number, string, Request | Rated | undefined] = [mine, fixed, worst, off, gained, undefined];
