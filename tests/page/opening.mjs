// No test: how long a page takes to open and to show its relit picture, here and now.
//   node tests/page/opening.mjs FOLDER build/libsim/page /usr/bin/chromium PAGE.html     (PAGE lies in FOLDER)
import { painted, withPage } from './browser.mjs';

const times = [];
for (let i = 0; i < 5; ++i)
  await withPage(process.argv[5], async (page) => {
    await painted(page);
    times.push(await page.evaluate(() => [
      performance.getEntriesByType('navigation')[0].loadEventEnd,
      performance.getEntriesByName('relit').at(-1)?.startTime ?? NaN,
    ]));
  });
const middle = (k) => times.map((each) => each[k]).sort((a, b) => a - b)[2];
console.log(`opened after ${(middle(0) / 1000).toFixed(2)} s, picture relit after ${(middle(1) / 1000).toFixed(2)} s (median of 5)`);
