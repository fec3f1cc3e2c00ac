// The page needs nothing but itself: no request, no complaint, and a policy that would refuse both. It is light.
import assert from 'node:assert/strict';
import { statSync } from 'node:fs';
import { fileOf, painted, withPage } from './browser.mjs';

await withPage('report.html', async (page) => {
  await painted(page);
  assert.match(await page.title(), /A tart <for> the "page" & its tests/);
  // Everything alive at once.
  await page.getByRole('button', { name: 'Turn it' }).click();
  await page.waitForSelector('.room .stage[data-drawn]');
  for (const kind of ['relight', 'slider', 'map', 'curves', 'room']) assert.ok(await page.locator(`.${kind}`).count(), kind);
  assert.ok(await page.locator('.curves canvas').count(), 'the day has its chart');
  const refused = await page.evaluate(() => {
    const script = document.createElement('script');
    script.textContent = 'window.intruder = true';
    document.body.append(script);
    return window.intruder === undefined;
  }).catch(() => false);
  assert.ok(refused, 'a script that the build did not make does not run');
}).catch((error) => {
  // The intruder's refusal is itself a complaint, and the only one allowed.
  if (!/Executing inline script violates|Refused to execute inline script/.test(JSON.stringify(error.actual ?? ''))) throw error;
  assert.equal(error.actual.length, 1);
});
assert.ok(statSync(fileOf('report.html')).size < 6e6);
