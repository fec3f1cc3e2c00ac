// Whoever uses keys or a screen reader reaches everything: names, roles, order.
import assert from 'node:assert/strict';
import { painted, withPage } from './browser.mjs';

await withPage('report.html', async (page) => {
  await painted(page);
  assert.equal(await page.locator('html').getAttribute('lang'), 'en');
  assert.equal(await page.getByRole('heading', { level: 1 }).count(), 1);
  for (const name of ['The picture', 'Relight', 'The light', 'Over the table', 'The camera', 'The set', 'The day', 'How it was made'])
    assert.equal(await page.getByRole('region', { name, exact: true }).count(), 1, name);
  assert.equal(await page.getByRole('navigation').count(), 1);
  assert.equal(await page.getByRole('main').count(), 1);
  assert.ok(await page.getByRole('radio', { name: 'no board' }).count());

  // Nothing that acts is without a name, no image without words, no id twice.
  const nameless = await page.evaluate(() => {
    const named = (each) => each.getAttribute('aria-label') || each.labels?.length || each.textContent.trim();
    return [
      ...[...document.querySelectorAll('input, button, select, [tabindex="0"]')].filter((each) => !named(each)).map((each) => each.outerHTML.slice(0, 80)),
      ...[...document.querySelectorAll('img')].filter((each) => !each.alt).map(() => 'img'),
    ];
  });
  assert.deepEqual(nameless, []);
  const twice = await page.evaluate(() => {
    const ids = [...document.querySelectorAll('[id]')].map((each) => each.id);
    return ids.filter((id, at) => ids.indexOf(id) !== at);
  });
  assert.deepEqual(twice, []);

  // The focus goes down the page as the eye does.
  const tops = [];
  for (let i = 0; i < 45; ++i) {
    await page.keyboard.press('Tab');
    const at = await page.evaluate(() => {
      const each = document.activeElement;
      if (each === document.body || each.classList.contains('skip')) return null;
      return { section: [...document.querySelectorAll('section')].indexOf(each.closest('section')) };
    });
    if (at) tops.push(at.section);
  }
  assert.deepEqual(tops, [...tops].sort((a, b) => a - b), 'sections in their order');
  assert.ok(new Set(tops).size > 3);

  // A fader by its keys, with what it says.
  const exposure = page.getByRole('slider', { name: 'Exposure' });
  await exposure.focus();
  await page.keyboard.press('ArrowRight');
  assert.equal(await exposure.getAttribute('aria-valuetext'), '+⅓ stop');
  const canvas = page.getByRole('application', { name: /^The picture/ });
  await canvas.focus();
  await page.keyboard.press('ArrowRight');
  assert.match(await page.locator('.relight .readout').textContent(), /stops from the grey card|no light/);
});
