// A page in the browser, watched: whatever it asks for and complains of is kept.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

const [made, libraries, chromiumPath] = process.argv.slice(2);
const { chromium } = createRequire(join(libraries, 'package.json'))('playwright-core');

export const fileOf = (name) => join(made, name);

/** Opens the page, runs the test, closes; then nothing may have been asked for or complained of. */
export async function withPage(name, test, options = {}) {
  if (!/<script>/.test(readFileSync(fileOf(name), 'utf8'))) process.exit(77);
  const browser = await chromium.launch({
    executablePath: chromiumPath,
    args: ['--no-sandbox', '--disable-background-networking', '--use-angle=swiftshader', '--enable-unsafe-swiftshader'],
  });
  try {
    const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, ...options });
    const page = await context.newPage();
    const asked = [], complaints = [];
    page.on('request', (request) => {
      if (!/^(file|data|blob):/.test(request.url())) asked.push(request.url());
    });
    // The drawing of 3D by the processor reports its own slowness; that is no word of the page's.
    page.on('console', (message) => {
      if (['error', 'warning'].includes(message.type()) && !/GPU stall due to ReadPixels/.test(message.text())) complaints.push(message.text());
    });
    page.on('pageerror', (error) => complaints.push(error.message));
    await page.goto(pathToFileURL(fileOf(name)).href);
    await test(page);
    assert.deepEqual(asked, [], 'the page asks for nothing');
    assert.deepEqual(complaints, [], 'the page complains of nothing');
  } finally {
    await browser.close();
  }
}

/** Waits until the picture to relight has been painted `times` times or more. */
export async function painted(page, times = 1) {
  await page.waitForFunction((n) => Number(document.querySelector('.relight canvas')?.dataset.painted ?? 0) >= n, times);
}

export const paintings = (page) => page.evaluate(() => Number(document.querySelector('.relight canvas').dataset.painted));

/** RGB of the relit picture. */
export function relitPixels(page) {
  return page.evaluate(() => {
    const canvas = document.querySelector('.relight canvas');
    const { data } = canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height);
    return Array.from(data).filter((_, i) => i % 4 !== 3);
  });
}
