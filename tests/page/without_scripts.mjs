// Without scripts everything is there as pictures and tables, and nothing waits for a hand.
import assert from 'node:assert/strict';
import { withPage } from './browser.mjs';

await withPage('report.html', async (page) => {
  for (const picture of await page.locator('img').all()) assert.ok(await picture.isVisible(), await picture.getAttribute('alt'));
  assert.equal(await page.locator('.slider img').count(), 3);
  assert.ok((await page.locator('.relight .parts img').count()) >= 4);
  assert.equal(await page.locator('.map svg').count(), 9); // falloff, fill and softness of three sets
  for (const map of await page.locator('.map svg').all()) assert.ok(await map.isVisible());
  assert.ok((await page.locator('table').count()) >= 10);
  assert.equal(await page.locator('button, input, canvas').count(), 0);
  await page.locator('summary', { hasText: 'maps as tables' }).click();
  assert.ok(await page.getByText('Falloff, as it is, stops').first().isVisible());
}, { javaScriptEnabled: false });
