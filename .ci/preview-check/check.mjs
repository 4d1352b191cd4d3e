// Opens previews in a real browser and uses them as people do.
//
//   node check.mjs [--shots FOLDER] PAGE.html...
//
// Each page is opened from file:// in Chromium, without a network. It must raise no
// fault on the console, ask for no address but its own, move by keyboard alone with the
// words and the picture following, and break no rule of axe-core that is serious. Exit 1
// at the first page that fails. CHROMIUM names the browser, /usr/bin/chromium else.

import {createHash} from 'node:crypto';
import {mkdtempSync, readFileSync, rmSync} from 'node:fs';
import {createRequire} from 'node:module';
import {tmpdir} from 'node:os';
import {basename, join, resolve} from 'node:path';
import {pathToFileURL} from 'node:url';
import {chromium} from 'playwright-core';

const args = process.argv.slice(2);
let shots = null;
if (args[0] === '--shots') { shots = args[1]; args.splice(0, 2); }
if (args.length === 0) { console.error('usage: check.mjs [--shots FOLDER] PAGE.html...'); process.exit(2); }
// Put in from outside the page, whose policy admits no script but its own.
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

function must(good, text) {
  if (!good) throw new Error(text);
}

// look is what a person sees and hears: picture, readings, mark in the chart.
async function look(page) {
  const [drawn, ...words] = await page.evaluate(() => {
    const chart = document.getElementById('step') ? document.getElementById('step').value : '0';
    return [document.getElementById('picture').toDataURL(), document.getElementById('reading').textContent,
      document.getElementById('picture-text').textContent, document.getElementById('marker-' + chart).getAttribute('d'),
      document.getElementById('travel').getAttribute('aria-valuetext')];
  });
  return {picture: createHash('sha256').update(drawn).digest('hex'), reading: words[0], view: words[1], mark: words[2], value: words[3]};
}

// settle waits until the picture is drawn finely and the words are said.
const settle = (page) => page.waitForSelector('#picture[aria-busy=false]', {timeout: 60000});

async function tabTo(page, id) {
  for (let i = 0; i < 60; i++) {
    await page.keyboard.press('Tab');
    const there = await page.evaluate(() => {
      const e = document.activeElement;
      return {id: e.id, ring: getComputedStyle(e).outlineStyle !== 'none' && parseFloat(getComputedStyle(e).outlineWidth) > 0};
    });
    must(there.ring || there.id === '', `focus is not seen on ${there.id || 'something'}`);
    if (there.id === id) return;
  }
  throw new Error(`Tab does not reach ${id}`);
}

async function judge(context, file) {
  const page = await context.newPage(), own = pathToFileURL(resolve(file)).href, faults = [], asked = [];
  page.on('console', (m) => { if (['error', 'warning'].includes(m.type())) faults.push(m.text()); });
  page.on('pageerror', (e) => faults.push(String(e)));
  page.on('dialog', (d) => { faults.push('dialog: ' + d.message()); d.dismiss(); });
  page.on('request', (r) => { if (r.url() !== own) asked.push(r.url()); });
  await page.goto(own, {waitUntil: 'load'});
  await settle(page);
  const shoot = async (what) => {
    if (shots) await (what === 'whole' ? page : page.locator('#picture')).screenshot({path: join(shots, basename(file, '.html') + '-' + what + '.png'), fullPage: what === 'whole' || undefined});
  };
  await shoot('whole');
  const clean = () => {
    must(faults.length === 0, 'console: ' + faults.join('\n'));
    must(asked.length === 0, 'asked for: ' + asked.join(' '));
  };
  clean();
  const first = await look(page);
  must(/lift .* nominal force /.test(first.reading), `reading: ${first.reading}`);
  must(await page.evaluate(() => {
    const c = document.getElementById('picture'), d = c.getContext('2d').getImageData(0, 0, c.width, c.height).data, seen = new Set();
    for (let i = 0; i < d.length; i += 4) seen.add(d[i] << 16 | d[i + 1] << 8 | d[i + 2]);
    return seen.size > 20;
  }), 'the picture is empty');

  // Nothing moves by itself.
  await page.waitForTimeout(400);
  must((await look(page)).picture === first.picture, 'the picture moves by itself');

  await tabTo(page, 'picture');
  await page.keyboard.press('ArrowRight');
  await settle(page);
  const turned = await look(page);
  must(turned.picture !== first.picture && turned.view !== first.view, 'an arrow key does not turn the picture, or the words stay');
  await page.keyboard.press('Home');
  await settle(page);
  must((await look(page)).picture === first.picture, 'Home does not give the usual view');

  await tabTo(page, 'travel');
  for (let i = 0; i < 40; i++) await page.keyboard.press('ArrowRight');
  await settle(page);
  const moved = await look(page);
  for (const key of ['picture', 'reading', 'mark', 'value']) must(moved[key] !== first[key], `the slider changes no ${key}`);
  await page.keyboard.press('End');
  await settle(page);
  const seated = await look(page);
  must(/lift 0 /.test(seated.reading), `at the end of the slider: ${seated.reading}`);
  await shoot('seated');

  await tabTo(page, 'cut');
  await page.keyboard.press('Space');
  await settle(page);
  const cut = await look(page);
  must(cut.picture !== seated.picture && /cut/.test(cut.view), 'the cut changes nothing');
  await shoot('cut');
  await page.keyboard.press('Space');
  await tabTo(page, 'apart');
  await page.keyboard.press('Space');
  await settle(page);
  must((await look(page)).picture !== seated.picture, 'taking apart changes nothing');
  await shoot('apart');

  if (await page.$('#step')) {
    await page.focus('#step');
    const before = await page.textContent('#bodies');
    await page.keyboard.press('ArrowDown');
    await settle(page);
    must(await page.textContent('#bodies') !== before, 'another press step shows the same bodies');
    await shoot('step');
  }

  await page.evaluate(axe);
  const found = await page.evaluate(async () => (await window.axe.run(document, {resultTypes: ['violations']})).violations.map((v) => ({id: v.id, impact: v.impact, help: v.help, where: v.nodes.slice(0, 3).map((n) => n.html)})));
  const grave = found.filter((v) => ['serious', 'critical'].includes(v.impact));
  must(grave.length === 0, 'accessibility: ' + JSON.stringify(grave, null, 1));
  clean();
  await page.close();
  return {file: basename(file), minor: found.map((v) => v.id)};
}

const profile = mkdtempSync(join(tmpdir(), 'preview-check-'));
const context = await chromium.launchPersistentContext(profile, {
  executablePath: process.env.CHROMIUM || '/usr/bin/chromium', headless: true, offline: true, bypassCSP: false,
  viewport: {width: 1100, height: 900}, reducedMotion: 'reduce',
  args: ['--headless', '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'],
});
let failed = 0;
try {
  for (const file of args) {
    try {
      const r = await judge(context, file);
      console.log(`${r.file}: works${r.minor.length ? '; minor: ' + r.minor.join(', ') : ''}`);
    } catch (e) {
      failed++;
      console.log(`FAILED: ${file}: ${e.message}`);
    }
  }
} finally {
  await context.close();
  rmSync(profile, {recursive: true, force: true});
}
process.exit(failed ? 1 : 0);
