// Every screen of the page, each reached as a person reaches it.
import { FILE } from './rig.mjs';

export const room = (page, name) => page.locator(`[data-do=room][data-value=${name}]`).click();
const kind = (page, name) => page.locator(`[data-do=kind][data-value=${name}]`).click();

/** Plates and gears of the usual head. */
export async function stock(page) {
  await room(page, 'shop');
  await page.locator('[data-do=shop-start][data-value=plates-15]').click();
  await page.locator('[data-do=shop-start][data-value=gears]').click();
}

/** From a stocked head to 127 parts in Divide. */
export async function divided(page, parts = '127') {
  await stock(page);
  await room(page, 'divide');
  await page.locator('#parts').fill(parts);
  await page.locator('#answer', { hasText: parts }).waitFor();
}

/** Opens the way in `place` (0 is the first) of those listed. */
const open = (page, place) => async () => {
  const row = page.locator('.row').nth(place);
  if (await row.getAttribute('aria-expanded') !== 'true') await row.click();
};

/** A part of the clock's ring. */
async function dial(page, part) {
  await divided(page);
  await kind(page, 'dial');
  await page.locator('[data-do=di-marks]').first().click();
  await page.locator(`[data-do=di-part][data-value=${part}]`).click();
  await page.locator(`#dial-${part}`).waitFor();
}

/** Before the first move of the way in `place`. */
async function offered(page, parts = '64', place = 0) {
  await divided(page, parts);
  await open(page, place)();
  await page.locator('#run-it').click();
  await page.locator('#run-start').waitFor();
}

/** At the machine, at the first position, saved. */
async function running(page, parts = '64', place = 0) {
  await offered(page, parts, place);
  await page.locator('#run-start').click();
  await page.locator('#run-saved[data-state=saved]').waitFor();
}

/** A step of the Thread room. */
async function thread(page, step = 'size', name = 'M6x0.75') {
  await room(page, 'thread');
  await page.locator('#th-name').fill(name);
  await page.locator(`#th-tab-${step}`).click();
  await page.locator(`#th-tab-${step}[aria-selected=true]`).waitFor();
}

/** Passes under way, the first one ticked. */
export async function cutting(page, name) {
  await thread(page, 'cut', name);
  await page.locator('#th-begin').click();
  await page.locator('#th-saved[data-state=saved]').waitFor();
  await page.locator('#th-tick').click();
  await page.locator('#th-saved[data-state=saved][data-count="1"]').waitFor();
}

/** A step of the Gear room. */
async function gear(page, step, teeth = '64') {
  await room(page, 'gear');
  await page.locator('#ge-teeth').fill(teeth);
  await page.locator(`#ge-tab-${step}`).click();
  await page.locator(`#ge-tab-${step}[aria-selected=true]`).waitFor();
}

/** A step of another kind in the Gear room. */
async function shape(page, kind, step) {
  await room(page, 'gear');
  const chip = page.locator(`[data-do=ge-kind][data-value=${kind}]`);
  if (!await chip.isVisible()) await page.locator('#ge-kinds summary').click();
  await chip.click();
  await page.locator(`#ge-tab-${step}`).click();
  await page.locator(`#ge-tab-${step}[aria-selected=true]`).waitFor();
}

/** The plan of the plate that is lacking. */
export async function making(page, parts = '127') {
  await divided(page, parts);
  await page.locator('#way-make').click();
  await page.locator('#panel-make').waitFor();
}

/** A small sum, found by its name in the list. */
async function bench(page, sum) {
  await room(page, 'bench');
  await page.locator(`#be-row-${sum}`).click();
  await page.locator(`#be-row-${sum}[aria-current]`).waitFor({ state: 'attached' });
}

/** The worked card of the clock, once it is saved. */
async function card(page) {
  await room(page, 'card');
  await page.locator('#cd-demo').click();
  await page.locator('#card-state[data-state=saved]').waitFor();
}

/** Small sums besides the tilt. */
const SUMS = [
  'allowance', 'arc', 'ball', 'bend', 'centred', 'chain', 'chamfer', 'corners', 'counterbore', 'countersink', 'disks', 'dovetail', 'fit', 'former', 'joggle', 'keyway', 'knurl', 'point', 'pull', 'push', 'radius', 'ring', 'rivet', 'shrink', 'sine', 'speed', 'square', 'standard', 'taper', 'temper', 'trial', 'twist', 'vee',
];

/** Opens every part that is folded away. */
const unfold = (page) => page.evaluate(() => document.querySelectorAll('main details').forEach((part) => { part.open = true; }));

/** Each screen: its name and how to get there from a page just opened. */
export const SCREENS = {
  'first start': async () => {},
  'first start, typing plates': async (page) => {
    await page.locator('[data-do=plates][data-value=mine]').click();
    await page.locator('#try-plates').fill('15 16 1x');
  },
  'Divide, exact': (page) => divided(page, '64'),
  'Divide, differential': (page) => divided(page),
  'Divide, second way open': async (page) => { await divided(page); await open(page, 1)(); },
  'Divide, last way open': async (page) => {
    await divided(page);
    await open(page, await page.locator('.row').count() - 1)();
  },
  'Divide, a wrong entry': async (page) => { await divided(page); await page.locator('#parts').fill('127.5'); },
  'Divide, cutting order': async (page) => {
    await divided(page, '12');
    await page.locator('#order summary').click();
    await page.locator('#every').fill('4');
  },
  'Divide, an angle': async (page) => { await divided(page); await kind(page, 'angle'); },
  'Divide, a list': async (page) => { await divided(page); await kind(page, 'list'); },
  'Divide, a dial': async (page) => {
    await divided(page);
    await kind(page, 'dial');
    await page.locator('#lines summary').click();
  },
  'Divide, a dial on a rim': async (page) => {
    await dial(page, 'lines');
    await page.locator('[data-do=di-on][data-value=handwheel]').click();
    await page.locator('#di-edge').fill('1');
  },
  'Divide, a dial’s vernier': (page) => dial(page, 'vernier'),
  'Divide, a dial’s size': (page) => dial(page, 'size'),
  'Divide, a fine dial, a wrong entry': async (page) => { await dial(page, 'fine'); await page.locator('#di-turns').fill('70'); },
  'Divide, make the plate': async (page) => { await making(page); await unfold(page); },
  'Divide, make the plate, refused': async (page) => {
    await making(page, '131');
    await page.locator('#pl-fields summary').click();
    await page.locator('#pl-ring').fill('30');
    await page.locator('#pl-table').click();
  },
  'Divide, hole coordinates': async (page) => { await making(page); await page.locator('#pl-table').click(); },
  'Divide, a template': async (page) => { await making(page); await page.locator('#pl-template').click(); },
  'Divide, error budget': async (page) => {
    await divided(page);
    await page.locator('#way-nearest').click();
    await page.locator('#pl-budget').click();
    await unfold(page);
  },
  'Divide, no head yet': async (page) => {
    await page.locator('#pl-no-head').click();
    await page.locator('#pl-free-tape').click();
  },
  'Bench, every sum': (page) => room(page, 'bench'),
  'Bench, nothing found': async (page) => { await room(page, 'bench'); await page.locator('#bench-find').fill('xyzzy'); },
  'Bench, tilt': (page) => bench(page, 'tilt'),
  'Bench, a wrong entry': async (page) => { await bench(page, 'tilt'); await page.locator('#be-tilt-angle').fill('95'); },
  'Card, none yet': (page) => room(page, 'card'),
  'Card, the worked one': card,
  'Card, a step open, one taken out': async (page) => {
    await card(page);
    await page.locator('[data-do=cd-drop]').first().click();
    await page.locator('[data-do=cd-more]').nth(1).click();
    await page.locator('.grid button').nth(2).click();
    await page.locator('.tk input').first().check();
  },
  'Card, values at fault, an answer that differs': async (page) => {
    await divided(page);
    await page.locator('#card-put').click();
    await room(page, 'shop');
    await page.locator('#head-gears').fill('24 24 28 32 40 44 48 64 72 86 100');
    await room(page, 'card');
    await page.locator('.differs').waitFor();
    await page.locator('#cd-value-add').click();
    await page.locator('#cd-drawing-2').fill('= bor');
    await page.locator('#cd-value-add').click();
    await page.locator('#cd-name-3').fill('1');
  },
  'Card, all cards, one deleted': async (page) => {
    await card(page);
    await page.locator('[data-do=cd-leave]').click();
    await page.locator('#cd-begin').click();
    await page.locator('#card-state[data-state=saved]').waitFor();
    await page.locator('[data-do=cd-delete]').click();
    await page.locator('#cd-undelete').waitFor();
  },
  ...Object.fromEntries(SUMS.map((sum) => [`Bench, ${sum}`, (page) => bench(page, sum)])),
  'Shop, nothing typed': (page) => room(page, 'shop'),
  'Shop, stocked': stock,
  'Shop, lists': async (page) => {
    await room(page, 'shop');
    await page.locator('[data-do=own][data-value=shop-measures-title]').click();
    await page.locator('#own-blocks').fill('1.001-1.009x0.001 q');
  },
  'Shop, dials, errors and an undo': async (page) => {
    await stock(page);
    await page.locator('#head-handwheel').check();
    await page.locator('#head-fine-dial').check();
    await page.locator('[data-do=head-tilted][data-value=yes]').click();
    await page.locator('#head-ratio').fill('0');
    await page.locator('#head-plates').fill('15 15');
    await page.locator('[data-do=shop-copy]').click();
    await page.locator('[data-do=shop-delete]').click();
  },
  'Bench, the device is full': async (page) => {
    await page.evaluate(() => { IDBObjectStore.prototype.put = () => { throw new DOMException('no space', 'QuotaExceededError'); }; });
    await bench(page, 'ring');
    await page.locator('#be-ring-holes').fill('7');
    await page.locator('#notice').waitFor();
  },
  'Thread, size it': (page) => thread(page),
  'Thread, a nut by its own figures': async (page) => {
    await thread(page);
    await page.locator('[data-do=th-how][data-value=own]').click();
    await page.locator('[data-do=th-form][data-value=own]').click();
    await page.locator('[data-do=th-side][data-value=nut]').click();
    await page.locator('#th-pitch').fill('0');
  },
  'Thread, cut it': async (page) => { await thread(page, 'cut'); await unfold(page); },
  'Thread, cut a left-hand nut with two starts': async (page) => {
    await thread(page, 'cut', 'Tr16x8 P4 LH');
    await page.locator('[data-do=th-side][data-value=nut]').click();
    await unfold(page);
    await page.locator('#th-blind').check();
  },
  'Thread, passes under way': async (page) => {
    await cutting(page);
    await page.locator('#th-so-far').fill('5.562');
  },
  'Thread, which is it': async (page) => {
    await thread(page);
    await page.locator('[data-do=th-how][data-value=which]').click();
  },
  'Thread, gear it': (page) => thread(page, 'gear'),
  'Thread, gears for a worm': async (page) => {
    await thread(page, 'gear');
    await page.locator('[data-do=th-lead][data-value=module]').click();
  },
  'Thread, measure it': async (page) => {
    await thread(page, 'measure');
    await page.locator('#th-reading').fill('6.08');
    await page.locator('#th-wire').fill('0.3');
  },
  'Gear, blank': async (page) => { await gear(page, 'blank'); await page.locator('#ge-found').fill('65.6'); await unfold(page); },
  'Gear, a wheel that does not swing, own teeth': async (page) => {
    await gear(page, 'blank', '223');
    await page.locator('[data-do=ge-pressure][data-value=own]').click();
    await unfold(page);
    await page.locator('[data-do=ge-rule][data-value=own]').click();
    await page.locator('#ge-centre').fill('60');
    await page.locator('#ge-dedendum').fill('9');
  },
  'Gear, cutter': (page) => gear(page, 'cutter', '12'),
  'Gear, too few teeth for a cutter': (page) => gear(page, 'cutter', '8'),
  'Gear, depth': async (page) => {
    await gear(page, 'depth', '127');
    await page.locator('#ge-reading').fill('131');
    await unfold(page);
  },
  'Gear, check': async (page) => {
    await gear(page, 'check');
    await page.locator('#ge-pin').fill('1');
    await unfold(page);
  },
  'Gear, a wheel measured, its mate too near': async (page) => {
    await gear(page, 'check', '63');
    await page.locator('[data-do=ge-by][data-value=outside]').click();
    await page.locator('[data-do=ge-apart][data-value=centres]').click();
    await page.locator('#ge-centres').fill('55');
    await page.locator('#ge-felt').fill('x');
  },
  'Gear, slanted teeth': async (page) => { await shape(page, 'slanted', 'blank'); await unfold(page); },
  'Gear, gears for a helix': async (page) => {
    await shape(page, 'slanted', 'depth');
    await page.locator('#ge-gears').fill('24x2 28 32 40 44 48 56 64 72 86 100');
    await unfold(page);
  },
  'Gear, a helix that is too steep': async (page) => { await shape(page, 'slanted', 'cutter'); await page.locator('#ge-helix').fill('90'); },
  'Gear, worm and wheel': async (page) => { await shape(page, 'worm', 'blank'); await unfold(page); },
  'Gear, gashes of a worm wheel': (page) => shape(page, 'worm', 'depth'),
  'Gear, on a cone': async (page) => { await shape(page, 'cone', 'cutter'); await unfold(page); },
  'Gear, along a bar': async (page) => { await shape(page, 'bar', 'depth'); await unfold(page); },
  'Gear, a ratchet': async (page) => { await shape(page, 'ratchet', 'cutter'); await page.locator('#ge-rt-undercut').fill('10'); },
  'Gear, splines': async (page) => { await shape(page, 'spline', 'depth'); await page.locator('#ge-sp-cutter').fill('4.4'); await unfold(page); },
  'Gear, flats': async (page) => { await shape(page, 'flats', 'check'); await page.locator('#ge-fl-across').fill('7'); },
  'Gear, a clock wheel': (page) => shape(page, 'clock', 'blank'),
  'Gear, a cam': (page) => shape(page, 'cam', 'depth'),
  'Gear, a cam by steps': async (page) => {
    await shape(page, 'cam', 'check');
    await page.locator('[data-do=ge-cm-by][data-value=steps]').click();
  },
  'Run, before it starts': offered,
  'Run, at 1 of 64': running,
  'Run, two pins': (page) => running(page, '51', 0),
  'Run, differential': (page) => running(page, '127', 0),
  'Run, went past': async (page) => { await running(page); await page.locator('[data-do=run-past]').click(); },
  'Run, lost my place': async (page) => { await running(page); await page.locator('[data-do=run-lost]').click(); },
  'Run, jump': async (page) => { await running(page); await page.locator('[data-do=run-jump]').click(); },
  'Run, what is saved': async (page) => { await running(page); await page.locator('#run-saved[data-state=saved]').click(); },
  'Divide with a Run open': async (page) => {
    await running(page);
    await page.locator('[data-do=run-leave]').click();
    await page.locator('#run-strip').waitFor();
    await room(page, 'divide');
  },
};

/** A page on the screen called `name`. What earlier screens left in the profile would show: give each a fresh one. */
export async function screen(browser, name) {
  const page = await browser.open(FILE);
  await page.locator('#answer').waitFor();
  await SCREENS[name](page);
  return page;
}
