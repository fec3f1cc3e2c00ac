// The top of a report page as a picture:
//   node tools/page_top.mjs PAGE.html PICTURE.png FOLDER CHROMIUM    FOLDER has node_modules with playwright-core
import { createRequire } from 'node:module';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';

const [file, picture, libraries, executablePath] = process.argv.slice(2);
const { chromium } = createRequire(join(resolve(libraries), 'package.json'))('playwright-core');
const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-background-networking'] });
try {
  const page = await browser.newPage({ viewport: { width: 900, height: 1342 } });
  await page.goto(pathToFileURL(resolve(file)).href);
  await page.waitForFunction(() => document.querySelector('.relight canvas')?.dataset.painted);
  await page.screenshot({ path: picture });
} finally {
  await browser.close();
}
