// The set is drawn when asked for, turns by hand and by key, and then only.
import assert from 'node:assert/strict';
import { withPage } from './browser.mjs';

await withPage('report.html', async (page) => {
  const room = page.locator('figure.room');
  assert.ok(await room.locator('.still img').isVisible());
  await room.getByRole('button', { name: 'Turn it' }).click();
  const stage = room.getByRole('application');
  await page.waitForSelector('.room .stage[data-drawn]');
  assert.ok(!(await room.locator('.still img').isVisible()), 'the still makes room');
  assert.ok(await stage.evaluate((each) => each === document.activeElement), 'the keys go to it at once');
  const drawings = () => stage.evaluate((each) => Number(each.dataset.drawn));
  const look = () => stage.screenshot();
  const names = await stage.locator('.tag').allTextContents();
  for (const name of ['window', 'tart', 'fill', 'camera']) assert.ok(names.includes(name), name);

  await page.waitForTimeout(300);
  const first = await look(), still = await drawings();
  await page.waitForTimeout(300);
  assert.equal(await drawings(), still, 'nothing is drawn while nothing moves');
  await page.keyboard.press('ArrowLeft');
  await page.waitForTimeout(200);
  const second = await look();
  assert.ok(!first.equals(second), 'a key turns it');
  const box = await stage.boundingBox();
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width / 2 + 90, box.y + box.height / 2 + 10, { steps: 4 });
  await page.mouse.up();
  await page.waitForTimeout(200);
  assert.ok(!second.equals(await look()), 'the pointer turns it');
});
