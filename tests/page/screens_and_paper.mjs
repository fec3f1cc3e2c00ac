// On a phone, in the dark, and on paper.
import assert from 'node:assert/strict';
import { painted, withPage } from './browser.mjs';

const lightnessOf = (colour) => {
  const [r, g, b] = colour.match(/[\d.]+/g).map(Number);
  return (0.2126 * r + 0.7152 * g + 0.0722 * b) / 255;
};
const inks = (page) => page.evaluate(() => {
  const style = getComputedStyle(document.body);
  return [style.backgroundColor, style.color];
});

for (const [colorScheme, width] of [['light', 360], ['dark', 360], ['dark', 1280]])
  await withPage('report.html', async (page) => {
    await painted(page);
    const [screen, content] = await page.evaluate(() => [innerWidth, document.documentElement.scrollWidth]);
    assert.ok(content <= screen, `${content} px of page on ${screen} px of screen`);
    const [paper, ink] = (await inks(page)).map(lightnessOf);
    assert.ok(colorScheme === 'dark' ? paper < 0.15 && ink > 0.8 : paper > 0.9 && ink < 0.2, `${paper} and ${ink}`);
    const small = await page.evaluate(() => [...document.querySelectorAll('button, select, input[type=range]')]
      .filter((each) => each.getBoundingClientRect().width < 24).length);
    assert.equal(small, 0, 'everything is wide enough for a thumb');
  }, { colorScheme, viewport: { width, height: 780 } });

// On paper: stills come back, what only answers to a hand stays away, ink on white, A4, few pages.
await withPage('report.html', async (page) => {
  await painted(page);
  await page.emulateMedia({ media: 'print' });
  const [paper, ink] = (await inks(page)).map(lightnessOf);
  assert.ok(paper > 0.99 && ink < 0.05);
  assert.ok(await page.locator('.slider .still img').first().isVisible());
  assert.ok(await page.locator('.relight .parts img').first().isVisible());
  assert.ok(!(await page.locator('.relight canvas').isVisible()));
  for (const button of await page.locator('button').all()) assert.ok(!(await button.isVisible()));
  const pdf = (await page.pdf({ preferCSSPageSize: true, printBackground: true })).toString('latin1');
  const sizes = [...pdf.matchAll(/\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)/g)].map(([, w, h]) => [Number(w), Number(h)]);
  assert.ok(sizes.length >= 3 && sizes.length <= 16, `${sizes.length} pages`);
  // ISO 216: A4 is 210 x 297 mm, 595.28 x 841.89 points.
  for (const [w, h] of sizes) assert.ok(Math.abs(w - 595.28) < 1 && Math.abs(h - 841.89) < 1, `${w} x ${h}`);
}, { colorScheme: 'dark' });
