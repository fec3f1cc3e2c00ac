// What the page's scripts have in common.

/** An element with properties and children; names with a dash or starting with "role" are attributes. */
export function element(name, properties = {}, ...children) {
  const made = document.createElement(name);
  for (const [key, value] of Object.entries(properties)) {
    if (key in made && !key.includes('-')) made[key] = value;
    else made.setAttribute(key, value);
  }
  made.append(...children);
  return made;
}

/** The figure's data. */
export function dataOf(figure) {
  return JSON.parse(figure.querySelector('script[type="application/json"]').textContent);
}

/** The bytes of a zlib stream in base64. */
export async function unpacked(text) {
  const packed = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
  const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream('deflate'));
  return new Uint8Array(await new Response(stream).arrayBuffer());
}

/** Puts the living thing in the place of the still, which stays for paper. */
export function replaceStill(figure, ...living) {
  const place = element('div', { className: 'live-only' }, ...living);
  figure.querySelector('.still').after(place);
  figure.classList.add('live-on');
  return place;
}

/** "+1.3", with a true minus. */
export function signed(value, decimals = 1) {
  const text = Math.abs(value).toFixed(decimals);
  if (Number(text) === 0) return text;
  return (value < 0 ? '\u2212' : '+') + text;
}

/** "+1⅓ stops". */
export function thirds(value) {
  const all = Math.round(3 * Math.abs(value));
  const whole = Math.floor(all / 3), part = ['', '⅓', '⅔'][all % 3];
  if (all === 0) return '0';
  return (value < 0 ? '\u2212' : '+') + (whole || !part ? whole : '') + part;
}
