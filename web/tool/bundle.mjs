// Puts web/dist together from web/page, web/npm and the two wasm builds:
//   handturn.html   one file that opens from disk and may fetch nothing at all
//   site/           the same page in parts, kept on the device by its service worker
//   npm/            the JavaScript package
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build, transform } from 'esbuild';
import { unpack } from '../page/unpack.mjs';

const web = fileURLToPath(new URL('..', import.meta.url));
const read = (path) => readFileSync(web + path, 'utf8');
const sha256 = (data, form) => createHash('sha256').update(data).digest(form);

/** One script out of `entry` and all it imports; `glue` is what came with that wasm. */
async function script(entry, feature, settings) {
  const { outputFiles } = await build({
    entryPoints: [web + entry], bundle: true, write: false, charset: 'utf8', target: 'es2022',
    alias: { glue: `${web}dist/.${feature}/handturn_web.js` }, ...settings,
  });
  return outputFiles[0].text;
}

/** `text` with `old` replaced; it must stand there exactly once. */
function swap(text, old, by) {
  const parts = text.split(old);
  if (parts.length !== 2) throw new Error(`index.html must hold this once: ${old}`);
  return parts.join(by);
}

const policy = (rules) => `<meta http-equiv="Content-Security-Policy" content="${rules}; base-uri 'none'; form-action 'none'">`;

const style = (await transform(['style', 'run', 'thread', 'plate', 'bench', 'card'].map((name) => read(`page/${name}.css`)).join(''), { loader: 'css', minify: true, charset: 'utf8' })).code.trim();
const app = (await script('page/app.js', 'page', { format: 'esm', minify: true })).trim();
const wasm = readFileSync(`${web}dist/.page/small.wasm`);
const html = swap(read('page/index.html'), '<!-- frame -->', await frame());
if (/<\/script|<!--/i.test(app) || /<\/style/i.test(style)) throw new Error('this text cannot stand inside a page');

/**
 * What stands on the page before its engine is ready: the engine's own first screen as
 * far as the field for parts, so that what is typed there stays when the rest comes.
 */
async function frame() {
  const engine = await script('page/engine.js', 'page', { format: 'esm' });
  const { ready, turn } = await import(`data:text/javascript;base64,${Buffer.from(engine).toString('base64')}`);
  await ready(wasm);
  const effects = turn('', '').split('\u001c').map((effect) => effect.split('\u001d'));
  const screen = effects.find(([verb, id]) => verb === 'put' && id === 'page')[2];
  const parts = screen.split('<div><p class="lab" id="job">');
  const answer = screen.match(/<section class="ans"[^>]*>/);
  if (parts.length !== 2 || !answer) throw new Error('the first screen has no field for parts');
  return `${parts[0]}</div></section>${answer[0]}<p id="ready">Getting ready…</p></section></div></main></div>`;
}

/** `bytes` in the form that page/unpack.mjs reads. */
function pack(bytes) {
  const packed = execFileSync('xz', ['--format=raw', '--lzma1=preset=9e,lc=3,lp=0,pb=0', '--stdout'], { input: bytes });
  if (!bytes.equals(unpack(packed, bytes.length))) throw new Error('what was packed does not come out again');
  return packed;
}

// --- one file -----------------------------------------------------------------
let file = swap(html, '<!-- policy -->', policy(
  `default-src 'none'; script-src 'sha256-${sha256(app, 'base64')}' 'wasm-unsafe-eval'; style-src 'sha256-${sha256(style, 'base64')}'`));
file = swap(file, '<link rel="stylesheet" href="style.css">', `<style>${style}</style>`);
file = swap(file, '<link rel="manifest" href="manifest.webmanifest">\n', '');
file = swap(file, '<link rel="icon" href="icon.svg">\n', '');
file = swap(file, '<link rel="apple-touch-icon" href="icon.png">\n', '');
file = swap(file, '<script src="app.js" type="module"></script>\n', '');
file = swap(file, '</body>', `<script type="application/octet-stream" id="engine" data-size="${wasm.length}">${
  pack(wasm).toString('base64')}</script>\n<script type="module">${app}</script>\n</body>`);
writeFileSync(`${web}dist/handturn.html`, file);

// --- site -----------------------------------------------------------------------
const site = {
  'index.html': swap(html, '<!-- policy -->', policy(
    "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self'; connect-src 'self'; manifest-src 'self'; worker-src 'self'")),
  'style.css': style,
  'app.js': app,
  'handturn.wasm': wasm,
  'manifest.webmanifest': read('page/manifest.webmanifest'),
  'icon.svg': read('page/icon.svg').trim(),
  'icon.png': readFileSync(`${web}page/icon.png`),
};
const version = sha256(Object.values(site).map((part) => sha256(part, 'hex')).join(), 'hex').slice(0, 16);
const kept = ['./', ...Object.keys(site).filter((name) => name !== 'index.html')];
const worker = await transform(read('page/service-worker.js'), { minify: true, charset: 'utf8' });
site['service-worker.js'] = `const VERSION=${JSON.stringify(version)},FILES=${JSON.stringify(kept)};\n${worker.code}`;
rmSync(`${web}dist/site`, { recursive: true, force: true });
mkdirSync(`${web}dist/site`);
for (const [name, part] of Object.entries(site)) writeFileSync(`${web}dist/site/${name}`, part);

// --- package ----------------------------------------------------------------------
const npm = `${web}dist/npm`;
rmSync(npm, { recursive: true, force: true });
mkdirSync(npm);
const manifest = JSON.parse(read('npm/package.json'));
manifest.version = read('../Cargo.toml').match(/^version = "(.+)"$/m)[1];
writeFileSync(`${npm}/package.json`, JSON.stringify(manifest, null, 2) + '\n');
writeFileSync(`${npm}/handturn.js`, await script('npm/handturn.js', 'package', { format: 'esm' }));
cpSync(`${web}dist/.package/small.wasm`, `${npm}/handturn.wasm`);
cpSync(`${web}npm/handturn.d.ts`, `${npm}/handturn.d.ts`);
cpSync(`${web}npm/README.md`, `${npm}/README.md`);
cpSync(`${web}../LICENSE`, `${npm}/LICENSE`);
