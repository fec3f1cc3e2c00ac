// Faders moved by hand give the picture that the library mixes and develops, to one code value; and the picture
// that is taken afresh with such lights, to two.
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
    let widest = 0;
    for (let i = 0; i < wanted.length; ++i) widest = Math.max(widest, Math.abs(shown[i] - wanted[i]));
    console.log(`${mix.name}: ${widest}/255`);
    assert.ok(widest <= mix.within, `${mix.name}: ${widest} code values off`);
    if (mix.name !== 'as it is' && last) assert.notDeepEqual(shown, last, `${mix.name}: nothing moved`);
    last = shown;
  }
});
