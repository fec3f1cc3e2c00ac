// A map tells the value under the pointer and under the keys' spot: that of its own data.
import assert from 'node:assert/strict';
import { withPage } from './browser.mjs';

await withPage('report.html', async (page) => {
  const figure = page.locator('figure.map').first(), svg = figure.locator('svg'), readout = figure.locator('output');
  const data = JSON.parse(await figure.locator('script').textContent());
  const at = (i, j) => data.values[j * data.columns + i];
  const told = async () => (await readout.textContent()).replace('\u2212', '-');

  await svg.focus();
  await page.keyboard.press('ArrowLeft');
  const i = (data.columns >> 1) - 1, j = data.rows >> 1;
  assert.match(await told(), at(i, j) === null ? /under a thing/ : new RegExp(`: \\+?${at(i, j).toFixed(2)} stops ±`));
  for (let k = 0; k < data.columns; ++k) await page.keyboard.press('ArrowLeft');
  assert.ok((await told()).includes(`${at(0, j).toFixed(2)} stops`), await told());
  assert.match(await told(), /\d+ cm left, \d+ cm (in front|behind)/);

  await svg.scrollIntoViewIfNeeded();
  const [x, y, width, height] = data.plot;
  const spot = await svg.evaluate((each, [px, py]) => {
    const point = new DOMPoint(px, py).matrixTransform(each.getScreenCTM());
    return [point.x, point.y];
  }, [x + ((2 + 0.5) / data.columns) * width, y + ((1 + 0.5) / data.rows) * height]);
  await page.mouse.move(...spot);
  assert.ok((await told()).includes(`${at(2, 1).toFixed(2)} stops`), await told());
  assert.equal(await svg.getAttribute('role'), 'application');

  // Where no edge runs it says so; a thing is told from that; what is finer than the cells is not told finer.
  const softness = page.locator('#edges figure.map').first(), edges = JSON.parse(await softness.locator('script').textContent());
  const tell = async (cell) => {
    await softness.locator('svg').focus();
    const from = await softness.evaluate((each) => each.querySelector('svg').dataset.cell?.split(',').map(Number));
    const [i, j] = from ?? [edges.columns >> 1, edges.rows >> 1], toI = cell % edges.columns, toJ = Math.floor(cell / edges.columns);
    for (let k = 0; k < Math.abs(toI - i); ++k) await page.keyboard.press(toI > i ? 'ArrowRight' : 'ArrowLeft');
    for (let k = 0; k < Math.abs(toJ - j); ++k) await page.keyboard.press(toJ > j ? 'ArrowDown' : 'ArrowUp');
    return softness.locator('output').textContent();
  };
  const open = edges.values.indexOf(false), covered = edges.values.indexOf(null), edge = edges.values.findIndex((value) => value > 0);
  assert.ok(open >= 0 && covered >= 0 && edge >= 0);
  assert.match(await tell(open), /: no edge that can be followed/);
  assert.match(await tell(covered), /: under a thing/);
  assert.match(await tell(edge), edges.values[edge] < edges.least ? /: under [\d.]+ mm$/ : /: [\d.]+ mm ±/);
  assert.match(await svg.getAttribute('aria-label'), /^Falloff/);
});
