// Bench as a person meets it: each sum found by its words, typed into, read; keys alone;
// what was typed still there after the page opens again.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { FILE, withBrowser } from './rig.mjs';

const DESK = { width: 1280, height: 800 };
const PHONE = { width: 390, height: 844 };

/** A sum, how it is searched for, what is typed or pressed (`field=value`), what it then says. */
const SUMS = [
  ['tilt', 'feel', ['angle=1 30', 'span=50'], ['1.309 mm', '0.0515 in', 'Clamp the block']],
  ['tilt', 'shim', ['rule=tangent', 'span=40', 'angle=45'], ['40.000 mm', 'Tangent: a leaf lies flat']],
  ['sine', 'sine', ['angle=30', 'bar=5 in'], ['63.500 mm', '2.5000 in', 'No gauge blocks']],
  ['sine', 'slip', ['angle=60', 'wear=2'], ['Left between the wear blocks', '105.985 mm', 'set 30°']],
  ['centred', 'saw', ['work=25', 'cutter=2', 'depth=6'], ['13.550', '2 turns and 71 marks']],
  ['ring', 'bolt', ['holes=6', 'diameter=60'], ['30.000 mm', '55.000 mm', 'Zero both dials']],
  ['centred', 'slit', ['from=side'], ['From the top to the centre', '1 turn and 21 marks']],
  ['ring', 'pcd', ['sense=right', 'holes=400'], ['List all 400']],
  ['keyway', 'seat', ['shaft=10', 'key=6', 'side=2'], ['3.000 mm', '7.000 mm']],
  ['corners', 'hex', ['known=stock', 'size=20'], ['17.321 mm', 'Across flats']],
  ['vee', 'cradle', ['round=30', 'angle=60'], ['Top above', '19.019']],
  ['vee', 'cradle', ['other=31'], ['The other’s top stands higher by', '1.500 mm']],
  ['dovetail', 'gib', ['part=groove'], ['28.144', 'wide −']],
  ['fit', 'h7', ['size=40', 'does=H8/f7'], ['0.025 mm', '0.089 mm', '+39 / 0', '−25 / −50']],
  ['fit', 'interf', ['size=25', 'does=own', 'classes=H7/p6'], ['Least hold', '0.001 mm', '0.035 mm']],
  ['fit', 'bore', ['does=H7/g6', 'part=hole', 'reading=25.03', 'doubt=0.002'], ['Turn the shaft to', '25.006', '25.021', 'outside its own class']],
  ['allowance', 'thou', ['hole=0.75in', 'rule=drive'], ['19.068', '19.075', '0.7 to 1.0 thou']],
  ['shrink', 'heat', ['diameter=50', 'hold=0.05', 'clear=0.03'], ['165', 'above 150 °C', 'Gloves']],
  ['counterbore', 'spot', ['outside=18', 'off=0'], ['3.500 mm', '0.1378 in', '2.200 mm']],
  ['chain', 'stack', ['lengths=10 ±0.1\n-9 ±0.1\n-0.5 ±0.1', 'least=0.3', 'most=0.7'], ['0.200 mm', '0.800 mm', 'in most sets']],
  ['bend', 'flat', ['legs=30 30', 'k=own', 'own-k=0.5'], ['58.356 mm', 'Give or take']],
  ['joggle', 'jog', ['angle='], ['48.1897°']],
  ['joggle', 'step', ['angle=20', 'k=own', 'own-k=0.2'], ['below nought, it grows', '−0.04', 'comes out longer']],
  ['knurl', 'knur', ['by=dp', 'dp=96', 'stock=0.5in'], ['12.700 mm', 'rags and sleeves away']],
  ['knurl', 'serr', ['by=tips', 'tips=0.8', 'stock=20', 'pattern=diamond'], ['Knurled to full teeth, at most']],
  ['countersink', 'csk', ['of=size', 'diameter=10', 'angle=82', 'hole=4'], ['3.451 mm', 'the edge of the hole']],
  ['countersink', 'flush', ['of=screw', 'head=iso10642', 'thread=M8', 'hole=9'], ['4.460 mm', 'Clamp the work.']],
  ['countersink', 'cap', ['of=cap', 'thread=M6'], ['11.000 mm']],
  ['chamfer', 'bevel', ['by=along', 'size=2', 'angle=30'], ['1.155 mm', 'Touch on']],
  ['speed', 'rpm', ['material=own', 'speed=60', 'unit=ft', 'diameter=5in', 'speeds=25 40 70'], ['40 rpm', 'Key out of the chuck']],
  ['point', 'tip', ['diameter=10', 'angle=135', 'depth=12'], ['14.071 mm', 'Clamp the work']],
  ['temper', 'quen', ['for=spring'], ['full blue to dark blue', 'oil can flare']],
  ['former', 'springback', ['section=strip', 'of=own', 'yield=1800', 'modulus=206', 'thick=0.8', 'inside=8.4032'], ['7.200 mm', 'Formers to try', 'Goggles on']],
  ['former', 'circlip', ['of=music', 'thick=20 swg', 'inside=12'], ['Radii run to the neutral line', 'ASTM A228']],
  ['push', 'compression', ['wire=1', 'across=mean', 'size=9', 'by=coils', 'coils=9.5', 'free=30', 'load=20'], ['1.852 N/mm', 'Mandrel to try', 'Hold the tail']],
  ['push', 'solid', ['by=rate', 'rate=2'], ['Coils in all', '1.984 N/mm']],
  ['push', 'wahl', ['free=30'], ['Shear when solid, Wahl', 'Pushed solid, it has more']],
  ['pull', 'hook', ['wire=1', 'across=mean', 'size=8', 'coils=20', 'tension=10', 'load=30'], ['35.000 mm', '0.969 N/mm']],
  ['twist', 'torsion', ['wire=1.5', 'across=mean', 'size=12', 'coils=6', 'leg=0', 'other-leg=0', 'load=400'], ['1302', 'Largest pin']],
  ['rivet', 'snap', ['diameter=3', 'hole=3.1', 'grip=5'], ['8.713 mm', 'By the shop’s rule']],
  ['taper', 'cone', ['kind=one', 'one=20', 'between=200', 'reach=5'], ['1° 25′ 55.5″', '5.000 mm', 'centre holes']],
  ['trial', 'tailstock', ['between=300'], ['Tailstock towards the tool', '0.090 mm', 'in one pass']],
  ['standard', 'morse', ['number=3'], ['1° 26′', '0.9380 in', '0.60235 in']],
  ['disks', 'disc', ['kind=angle', 'large=1.5in', 'small=1in', 'centres=5in'], ['5° 43′ 55']],
  ['square', 'disk', ['disk=2in', 'angle=15 10'], ['216.187 mm', '8.5113 in', 'Clamp the work']],
  ['square', 'combination', ['kind=angle', 'disk=20', 'head=40'], ['36° 52′ 11']],
  ['ball', 'sphere', ['by=scallop', 'scallop=0.1'], ['Left standing at most', 'Turn the stock first to', 'sleeves clear']],
  ['radius', 'fillet', ['kind=fillet', 'cuts=12'], ['Cuts to make', 'back from where the tool touches the shoulder']],
  ['arc', 'sagitta', ['chord=40', 'height=4'], ['52.000 mm', '2.0472 in']],
];

/** What is refused: a sum, what is typed, the sentence tied to the last field typed into. */
const REFUSED = [
  ['tilt', ['angle=95'], 'Angle must be between 0 and 80 degrees.'],
  ['sine', ['angle=1', 'bar=100', 'wear=2'], 'The thickness must be from 0.001 to 0.872 mm.'],
  ['vee', ['round=90'], 'The blank must be from 0.001 to 42.426 mm.'],
  ['dovetail', ['roller=20'], 'A pin must be from 0.001 to 13.333 mm.'],
  ['keyway', ['key=30'], 'leave no space'],
  ['tilt', ['span=abc'], 'Length must be a number.'],
  ['fit', ['does=own', 'classes=H7/q6'], 'A fit is a hole in capitals and a shaft in small letters, like H7/g6.'],
  ['fit', ['does=own', 'size=20', 'classes=t6'], 'The standard has no such class at this size.'],
  ['chain', ['lengths=8 0.1'], 'A length must be a number.'],
  ['joggle', ['angle=60', 'offset=0.1'], 'The two bends alone don’t make this step.'],
  ['countersink', ['of=size', 'diameter=10', 'angle=5'], 'Angle must be between 10 and 170 degrees.'],
  ['chamfer', ['by=radius', 'diameter=20', 'size=12'], 'These diameters don’t go together.'],
  ['push', ['wire=9'], 'A wire must be from 0.102 to 6.35 mm.'],
  ['twist', ['coils=0'], 'The number of coils must be from 1 to 1,000.'],
  ['taper', ['small=25'], 'The large end must be the larger, and the taper at most 20 times its length.'],
  ['taper', ['kind=one', 'one=2', 'length=41'], 'Length must be from 0.001 to 40 mm.'],
  ['square', ['angle=91'], 'Angle must be between 0 and 90 degrees.'],
  ['ball', ['neck=18'], 'The neck must be smaller than the ball and the stock.'],
];

async function bench(browser, size = DESK) {
  const page = await browser.open(FILE, size);
  await page.locator('[data-do=room][data-value=bench]').click();
  await page.locator('#bench-find').waitFor();
  return page;
}

async function enter(page, sum, entries) {
  for (const entry of entries) {
    const [name, value] = [entry.slice(0, entry.indexOf('=')), entry.slice(entry.indexOf('=') + 1)];
    const id = `be-${sum}-${name}`;
    const field = page.locator(`#${id}`);
    if (await field.count() > 0) await field.fill(value);
    else await page.locator(`[data-do="${id}"][data-value="${value}"]`).click();
  }
}

test('every sum is found by a word, takes what is typed and says its answer', () => withBrowser(async (browser) => {
  const page = await bench(browser);
  for (const [sum, word, entries, said] of SUMS) {
    await page.locator('#bench-find').fill(word);
    await page.locator(`#be-row-${sum}`).click();
    await page.locator(`#be-row-${sum}[aria-current]`).waitFor();
    await enter(page, sum, entries);
    for (const text of said) await page.locator('.sum').getByText(text).first().waitFor();
    assert.equal(await page.locator('.sum figure svg').count(), 1, `${sum} is drawn`);
  }
}));

test('what cannot be read is said at its field, and the last good answer stays', () => withBrowser(async (browser) => {
  const page = await bench(browser);
  for (const [sum, entries, sentence] of REFUSED) {
    await page.locator(`#be-row-${sum}`).click();
    await enter(page, sum, entries);
    const id = `be-${sum}-${entries.at(-1).split('=')[0]}`;
    await page.locator(`#${id}-error`, { hasText: sentence }).waitFor();
    assert.equal(await page.locator(`#${id}`).getAttribute('aria-describedby'), `${id}-error`);
    await page.locator('#answer', { hasText: 'Last good answer' }).waitFor();
  }
}));

test('every sum there is has a row here', () => withBrowser(async (browser) => {
  const page = await bench(browser);
  const keys = await page.locator('.bench-row').evaluateAll((rows) => rows.map((row) => row.dataset.value));
  assert.deepEqual(keys.filter((key) => !SUMS.some(([sum]) => sum === key)), []);
}));

test('by keys alone, on a phone: two letters, Enter, type, Escape, and it is there again', () => withBrowser(async (browser) => {
  const page = await bench(browser, PHONE);
  assert.equal(await page.locator('.sum').isVisible(), false);
  await page.locator('#bench-find').focus();
  await page.keyboard.type('ti');
  await page.locator('#be-row-tilt').waitFor();
  await page.keyboard.press('Enter');
  await page.locator('#sum-title:focus', { hasText: 'Tilt by feeler' }).waitFor();
  assert.equal(await page.locator('#be-list').isVisible(), false);
  await page.keyboard.press('Tab');
  assert.equal(await page.evaluate(() => document.activeElement.id), 'be-tilt-angle');
  await page.keyboard.press('Control+A');
  await page.keyboard.type('2');
  await page.locator('#answer', { hasText: '1.396' }).waitFor();
  await page.keyboard.press('Escape');
  await page.locator('#be-row-tilt:focus', { hasText: '2° under 40 mm: 1.396 mm' }).waitFor();
  await page.reload();
  await page.locator('[data-do=room][data-value=bench]').click();
  await page.locator('#be-row-tilt', { hasText: '2° under 40 mm: 1.396 mm' }).waitFor();
}));
