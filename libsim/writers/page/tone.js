// The light of a picture put together anew and shown as the library shows it (libsim/view/developed.cpp): the
// page's tests hold the two against each other.

const STEPS = 320, POWER = 2.4, MOST = 32767;

/** Linear light of each step; 1 is a white card in the metered light. */
const lightOfStep = new Float32Array(MOST + 1).map((_, step) => (step / STEPS) ** POWER);

/** The reverse of packed_light.cpp: red, green, blue of every pixel. */
export function lightOf(bytes, columns, rows) {
  const pixels = columns * rows;
  const [green, red, blue] = [0, 1, 2].map(() => new Int32Array(pixels));
  const neighbours = (plane, i) => (i % columns ? plane[i - 1] : 0) + (i >= columns ? plane[i - columns] : 0);
  const unfolded = (k, i) => {
    const folded = bytes[k * pixels + i] | (bytes[(k + 3) * pixels + i] << 8);
    return folded % 2 ? -((folded + 1) >> 1) : folded >> 1;
  };
  const light = new Float32Array(3 * pixels);
  for (let i = 0; i < pixels; ++i) {
    const sum = neighbours(green, i), count = (i % columns ? 1 : 0) + (i >= columns ? 1 : 0);
    green[i] = (count ? Math.floor(sum / count) : 0) + unfolded(0, i);
    const like = (plane) => (sum === 0 ? green[i] : Math.min(MOST, Math.floor((green[i] * neighbours(plane, i)) / sum)));
    red[i] = like(red) + unfolded(1, i);
    blue[i] = like(blue) + unfolded(2, i);
    light[3 * i] = lightOfStep[red[i]];
    light[3 * i + 1] = lightOfStep[green[i]];
    light[3 * i + 2] = lightOfStep[blue[i]];
  }
  return light;
}

/** The sum of the parts, each as many times as strong as `gain(part)` says. */
export function mixed(parts, gain) {
  const sum = new Float32Array(parts[0].light.length);
  for (const part of parts) {
    const times = gain(part), light = part.light;
    if (times === 0) continue;
    for (let i = 0; i < sum.length; ++i) sum[i] += times * light[i];
  }
  return sum;
}

const luminance = (r, g, b) => 0.2126 * r + 0.7152 * g + 0.0722 * b;

/** Code values of linear light, in steps much finer than theirs; IEC 61966-2-1. */
const CODES = 1 << 16;
const codeOf = new Uint8Array(CODES + 1).map((_, i) => {
  const x = i / CODES;
  return Math.round(255 * (x <= 0.0031308 ? 12.92 * x : 1.055 * x ** (1 / 2.4) - 0.055));
});

/** soft_shoulder of developed.cpp. */
export function shoulder(clipAt) {
  const grey = 0.18, k = (1 - grey / (clipAt * clipAt)) / (1 - grey), w = k * clipAt;
  return (light) => {
    const x = k * light;
    return (x * (1 + x / (w * w))) / (1 + x);
  };
}

/** Writes the picture of that light, `brighter` times exposed, into RGBA pixels. */
export function develop(light, rgba, { balance, brighter, clipAt }) {
  const curve = shoulder(clipAt);
  const [br, bg, bb] = balance.map((gain) => gain * brighter);
  for (let i = 0, k = 0; i < light.length; i += 3, k += 4) {
    let r = light[i] * br, g = light[i + 1] * bg, b = light[i + 2] * bb;
    const before = luminance(r, g, b);
    if (before > 0) {
      const after = Math.min(curve(before), 1), times = after / before;
      r *= times, g *= times, b *= times;
      const brightest = Math.max(r, g, b);
      if (brightest > 1) {
        const part = (1 - after) / (brightest - after);
        r = after + (r - after) * part, g = after + (g - after) * part, b = after + (b - after) * part;
      }
    }
    rgba[k] = codeOf[Math.round(CODES * Math.min(Math.max(r, 0), 1))];
    rgba[k + 1] = codeOf[Math.round(CODES * Math.min(Math.max(g, 0), 1))];
    rgba[k + 2] = codeOf[Math.round(CODES * Math.min(Math.max(b, 0), 1))];
    rgba[k + 3] = 255;
  }
}

/** Stops from an 18 % grey card in the metered light, and whether it clips or is buried (view/tones.h). */
export function toneOf(light, i, { full, grey, brighter, buriedUnder }) {
  const r = light[i] * brighter, g = light[i + 1] * brighter, b = light[i + 2] * brighter;
  const stops = Math.log2(luminance(r, g, b) / grey);
  const tone = Math.max(r, g, b) >= full ? 'clipped' : stops < buriedUnder ? 'buried' : 'drawn';
  return { stops, tone };
}

/** The stripes of draw_zebra in tones.cpp. */
export function drawZebra(light, rgba, columns, limits) {
  const dark = { clipped: codeOf[0], buried: codeOf[0] };
  const bright = { clipped: codeOf[CODES], buried: codeOf[Math.round(0.1 * CODES)] };
  for (let i = 0, k = 0; i < light.length; i += 3, k += 4) {
    const { tone } = toneOf(light, i, limits);
    if (tone === 'drawn') continue;
    const x = (i / 3) % columns, y = Math.floor(i / 3 / columns);
    const stripe = Math.floor((tone === 'clipped' ? x - y : x + y) / 3);
    rgba[k] = rgba[k + 1] = rgba[k + 2] = stripe % 2 === 0 ? dark[tone] : bright[tone];
  }
}
