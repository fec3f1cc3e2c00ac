// Bundles the page's scripts: node bundle.mjs SOURCE OUT, with node_modules in OUT.
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

const [source, out] = process.argv.slice(2);
const require = createRequire(join(out, 'package.json'));
const esbuild = require('esbuild');

const libraries = [
  ['uPlot, charts', 'uplot', 'LICENSE'],
  ['image-compare, the slider', '@cloudfour/image-compare', 'LICENSE'],
  ['three.js, the set in three dimensions', 'three', 'LICENSE'],
];

const common = {
  bundle: true,
  minify: true,
  format: 'iife',
  target: ['chrome100', 'firefox113', 'safari16.4'],
  charset: 'utf8',
  legalComments: 'inline',
  nodePaths: [join(out, 'node_modules')],
  logLevel: 'error',
};
await esbuild.build({ ...common, entryPoints: { report: join(source, 'report.js') }, outdir: out });
await esbuild.build({ ...common, entryPoints: { room: join(source, 'room.js') }, outdir: out });

// A script element ends at the first closing tag, wherever that stands.
for (const name of ['report.js', 'room.js']) {
  const path = join(out, name);
  const text = readFileSync(path, 'utf8').trim();
  if (/<\/script|<!--/i.test(text)) throw new Error(`${name} holds a tag that ends its element`);
  writeFileSync(path, text);
}

// The slider puts a style into the page by itself; the page's policy lets in just that one, by its hash.
const asked = [];
globalThis.HTMLElement = class {};
globalThis.customElements = { define() {} };
globalThis.document = {
  createElement() {
    const element = {};
    asked.push(element);
    return element;
  },
};
await import(pathToFileURL(join(out, 'node_modules/@cloudfour/image-compare/dist/index.js')));
const style = /<style>([\s\S]*?)<\/style>/.exec(asked[0].innerHTML)[1];
writeFileSync(join(out, 'slider.css'), style);

const notices = libraries.map(([what, name, file]) => {
  const folder = join(out, 'node_modules', name);
  const { version } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  return `${what} (${name} ${version})\n\n${readFileSync(join(folder, file), 'utf8').trim()}\n`;
});
writeFileSync(join(out, 'notices.txt'), notices.join('\n\n'));
