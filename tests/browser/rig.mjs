// Drives the built page in a real Chromium: from disk, from the site, through a
// killed browser; and watches what the page asks of the network.
import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';
import { serve } from '../../web/tool/serve.mjs';

const dist = fileURLToPath(new URL('../../web/dist/', import.meta.url));
const program = process.env.CHROMIUM ?? '/usr/bin/chromium';

/** Where the one-file page and the site's folder lie. */
export const FILE = pathToFileURL(join(dist, 'handturn.html')).href;
export const SITE = join(dist, 'site');

const FLAGS = [
  '--headless', '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking',
  '--disable-component-update', '--disable-sync', '--remote-debugging-port=0',
];

/** A fresh folder for a browser's user data; a browser opened on it again finds what was stored. */
export const newProfile = () => mkdtempSync(join(tmpdir(), 'handturn-profile-'));
export const dropProfile = (profile) => rmSync(profile, { recursive: true, force: true, maxRetries: 10, retryDelay: 100 });

/**
 * Opens Chromium on `profile`. `open(url)` gives a watched page, `kill()` ends every
 * process of this browser without warning (SIGKILL), `close()` ends it properly.
 */
export async function openBrowser(profile) {
  // Its own process group, so that a kill reaches every process of this browser and no other.
  const running = spawn(program, [...FLAGS, `--user-data-dir=${profile}`, 'about:blank'], {
    detached: true, stdio: ['ignore', 'ignore', 'pipe'],
  });
  const ended = new Promise((resolve) => running.once('exit', resolve));
  const endpoint = await new Promise((resolve, reject) => {
    let text = '';
    running.once('error', reject);
    running.stderr.on('data', (chunk) => {
      text += chunk;
      const found = text.match(/DevTools listening on (ws:\S+)/);
      if (found) resolve(found[1]);
    });
    ended.then((code) => reject(new Error(`${program} ended (${code}):\n${text}`)));
  });
  const browser = await chromium.connectOverCDP(endpoint);
  const context = browser.contexts()[0];
  const kill = async () => {
    try {
      process.kill(-running.pid, 'SIGKILL');
    } catch (gone) {
      if (gone.code !== 'ESRCH') throw gone;
    }
    await ended;
  };
  return {
    context,
    open: (url, settings) => openPage(context, url, settings),
    kill,
    close: async () => {
      const session = await browser.newBrowserCDPSession();
      await session.send('Browser.close').catch(() => {});
      let timer;
      await Promise.race([ended, new Promise((resolve) => { timer = setTimeout(resolve, 5000); })]);
      clearTimeout(timer);
      await kill();
    },
  };
}

/**
 * A page on `url` whose `seen` collects requests, policy violations, console errors and
 * uncaught errors. `before` runs in the page before its own script.
 */
async function openPage(context, url, { width = 390, height = 844, before } = {}) {
  const page = await context.newPage();
  await page.setViewportSize({ width, height });
  const seen = { requests: [], violations: [], errors: [] };
  page.seen = seen;
  /** What was asked for besides the page itself. */
  page.strangers = () => seen.requests.filter((asked) => asked.split('#')[0] !== url.split('#')[0]);
  page.on('request', (request) => seen.requests.push(request.url()));
  page.on('pageerror', (error) => seen.errors.push(String(error)));
  page.on('console', (message) => {
    const text = message.text();
    if (text.startsWith('violation ')) seen.violations.push(text.slice(10));
    else if (message.type() === 'error') seen.errors.push(text);
  });
  await page.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', (event) =>
      console.log(`violation ${event.effectiveDirective} ${event.blockedURI}`));
  });
  if (before) await page.addInitScript(before);
  await page.goto(url);
  return page;
}

/** Serves web/dist/site (or another folder) on the loopback address; `heard` is all that it was asked, headers and all. */
export async function openSite(folder = SITE) {
  const server = await serve(folder, 0);
  const heard = [];
  server.on('request', ({ url, headers }) => heard.push(`${url} ${JSON.stringify(headers)}`));
  return {
    heard,
    origin: `http://127.0.0.1:${server.address().port}/`,
    close: () => new Promise((resolve) => {
      server.close(resolve);
      server.closeAllConnections();
    }),
  };
}

/** Saves a picture as tests/browser/pictures/NAME.png, which the repository does not keep. */
export async function picture(page, name) {
  const folder = fileURLToPath(new URL('pictures/', import.meta.url));
  mkdirSync(folder, { recursive: true });
  await page.screenshot({ path: join(folder, `${name}.png`) });
}

/** Runs `use(browser, profile)` on a fresh profile and leaves nothing behind. */
export async function withBrowser(use) {
  const profile = newProfile();
  const browser = await openBrowser(profile);
  try {
    return await use(browser, profile);
  } finally {
    await browser.close();
    dropProfile(profile);
  }
}
