// Faders moved by hand give the picture that the library mixes and develops, to one code value; and the picture
// that is taken afresh with such lights, to two. Held against the library's mix of the light before it was packed,
// it is one code value too, but for exposures brighter than metered: there a saturated colour that the display
// cannot show is drawn toward grey, which hands the error of its brightest channel on to its darkest. One value in
// a hundred may be off by up to four then.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { fileOf, painted, paintings, relitPixels, withPage } from './browser.mjs';

const expected = JSON.parse(readFileSync(fileOf('expected.json'), 'utf8'));

async function setRange(page, name, value) {
  const range = page.getByRole('slider', { name, exact: true });
  await range.evaluate((input, number) => {
    input.value = number;
    input.dispatchEvent(new Event('input', { bubbles: true }));
  }, value);
}

async function set(page, mix) {
  const before = await paintings(page);
  await page.getByRole('button', { name: 'As it was' }).click();
  await painted(page, before + 1);
  const then = await paintings(page);
  await setRange(page, 'Exposure', mix.exposure);
  await setRange(page, 'White', expected.own_white + mix.white);
  for (const [name, stops] of Object.entries(mix.stops)) await setRange(page, name, stops);
  for (const name of mix.off) await page.getByRole('checkbox', { name: `${name} on` }).uncheck();
  if (mix.zebra) await page.getByRole('checkbox', { name: /^Zebra/ }).check();
  await painted(page, then + 1);
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
}

await withPage('relight.html', async (page) => {
  await painted(page);
  let last = null;
  for (const mix of expected.mixes) {
    await set(page, mix);
    const shown = await relitPixels(page), wanted = Buffer.from(mix.rgb, 'base64');
    assert.equal(shown.length, wanted.length);
    const off = shown.map((value, i) => Math.abs(value - wanted[i]));
    const widest = off.reduce((a, b) => Math.max(a, b)), over = off.filter((each) => each > (mix.within > 2 ? 1 : mix.within)).length;
    console.log(`${mix.name}: ${widest}/255 at most, ${over} of ${off.length} values over the limit`);
    assert.ok(widest <= mix.within, `${mix.name}: ${widest} code values off`);
    if (mix.within > 2) assert.ok(over < 0.01 * off.length);
    if (last && last.name !== mix.name) assert.notDeepEqual(shown, last.shown, `${mix.name}: nothing moved`);
    last = { name: mix.name, shown };
  }
});
