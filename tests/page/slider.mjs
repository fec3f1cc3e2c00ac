// The line between two pictures goes where the slider goes, by hand and by key, and shows what it should.
import assert from 'node:assert/strict';
import { withPage } from './browser.mjs';

/** Mean colour of a strip of what is on the screen, a tenth of the figure wide. */
async function meanAt(page, share) {
  const box = await page.locator('image-compare').boundingBox();
  const png = await page.screenshot({ clip: { x: box.x + share * box.width, y: box.y + 0.1 * box.height, width: 0.06 * box.width, height: 0.2 * box.height } });
  return page.evaluate(async (text) => {
    const image = new Image();
    image.src = `data:image/png;base64,${text}`;
    await image.decode();
    const canvas = Object.assign(document.createElement('canvas'), { width: image.width, height: image.height });
    const context = canvas.getContext('2d');
    context.drawImage(image, 0, 0);
    const { data } = context.getImageData(0, 0, image.width, image.height);
    let sum = 0;
    for (let i = 0; i < data.length; i += 4) sum += data[i] + data[i + 1] + data[i + 2];
    return (sum / data.length) * (4 / 3);
  }, png.toString('base64'));
}

await withPage('report.html', async (page) => {
  const slider = page.getByRole('slider', { name: /How much is shown of "as it is"/ });
  await slider.scrollIntoViewIfNeeded();
  await page.getByRole('combobox', { name: 'Picture at the right' }).selectOption({ label: 'black' });
  const right = page.getByRole('slider', { name: /of "black", at the right/ });
  await right.focus();
  const reaches = (value) => page.waitForFunction((wanted) => {
    const shown = getComputedStyle(document.querySelector('image-compare')).getPropertyValue('--exposure');
    return shown.trim() === wanted;
  }, value);
  const exposure = () => page.locator('image-compare').evaluate((each) => getComputedStyle(each).getPropertyValue('--exposure'));
  for (let i = 0; i < 50; ++i) await page.keyboard.press('ArrowRight');
  await reaches('100%');
  const first = await meanAt(page, 0.7);
  await page.keyboard.press('Home');
  await reaches('0%');
  const second = await meanAt(page, 0.7);
  assert.ok(Math.abs(first - second) > 1, `another picture: ${first} and ${second}`);
  const box = await page.locator('image-compare').boundingBox();
  await page.mouse.click(box.x + 0.25 * box.width, box.y + 0.5 * box.height);
  await page.waitForFunction(() => Number(document.querySelector('image-compare').shadowRoot.querySelector('input').value) > 0);
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
  assert.ok(Math.abs(parseFloat(await exposure()) - 25) <= 4);
});
