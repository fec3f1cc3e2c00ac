// The picture, lit anew: every source and every way of its light has a fader.
import { dataOf, element, replaceStill, signed, thirds, unpacked } from './page.js';
import { develop, drawZebra, lightOf, mixed, toneOf } from './tone.js';

const STEP = 1 / 3;
let faders = 0;

// A range's own arithmetic leaves thirds a hair off.
const near = (value) => Math.round(3e6 * value) / 3e6;

/** A slider in thirds of a stop with its value beside it, and a switch where there is something to put out. */
function fader(name, { least, most, step = STEP, value = 0, text, canBeOff = false, changed }) {
  const id = `fader-${++faders}`;
  const range = element('input', { type: 'range', id, min: least, max: most, step, value });
  const shown = element('output', { htmlFor: id });
  const on = canBeOff && element('input', { type: 'checkbox', checked: true, 'aria-label': `${name} on` });
  const label = element('label', { htmlFor: id }, name);
  const row = element('div', { className: 'fader' }, on ? element('span', {}, on, ' ', label) : label, shown, range);
  const tell = () => {
    const off = on && !on.checked;
    row.classList.toggle('off', off);
    range.disabled = off;
    shown.value = off ? 'off' : text(Number(range.value));
    range.setAttribute('aria-valuetext', shown.value);
  };
  for (const input of [range, on])
    input && input.addEventListener('input', () => (tell(), changed()));
  tell();
  return {
    row,
    value: () => near(Number(range.value)),
    gain: () => (on && !on.checked ? 0 : 2 ** near(Number(range.value))),
    reset() {
      range.value = value;
      if (on) on.checked = true;
      tell();
    },
  };
}

const inStops = (value) => `${thirds(value)} ${Math.abs(value) < 0.01 || Math.abs(value) > 1.01 ? 'stops' : 'stop'}`;

class Desk {
  constructor(figure) {
    this.data = dataOf(figure);
    this.shots = this.data.shots.map((shot) => ({ ...shot, ready: null }));
    this.canvas = element('canvas', {
      width: this.data.columns,
      height: this.data.rows,
      tabIndex: 0,
      role: 'application',
      'aria-label': 'The picture. Arrow keys move the spot that is read.',
    });
    this.readout = element('output', { className: 'readout' }, 'Point at the picture to read it in stops.');
    this.readout.setAttribute('aria-live', 'polite');
    this.spot = [this.data.columns >> 1, this.data.rows >> 1];
    this.controls = element('div', { className: 'controls' });
    replaceStill(figure, element('div', { className: 'relight-desk' }, element('div', {}, this.canvas, this.readout), this.controls));
    this.listenToSpot();
    this.choose(0);
  }

  /** Parts that sets have in common are there once. */
  lightOf(index) {
    this.lights ??= [];
    this.lights[index] ??= unpacked(this.data.lights[index]).then((bytes) => lightOf(bytes, this.data.columns, this.data.rows));
    return this.lights[index];
  }

  async choose(index) {
    this.index = index;
    const shot = this.shots[index];
    shot.ready ??= Promise.all(
      shot.parts.map(async (part) => ({
        ...part,
        light: await this.lightOf(part.light),
      })),
    );
    const parts = await shot.ready;
    if (this.index !== index) return;
    this.parts = parts;
    this.limits = { full: shot.full, grey: shot.grey };
    this.layOut(shot);
    this.paint();
  }

  layOut(shot) {
    const changed = () => this.later();
    const bank = (legend, names, canBeOff) => {
      const made = names.map((name) => fader(name, { least: -4, most: 3, text: inStops, canBeOff, changed }));
      return [made, element('fieldset', {}, element('legend', {}, legend), ...made.map((each) => each.row))];
    };
    const { whites } = this.data;
    const zero = whites.findIndex((white) => white.mired === 0);
    // Exposure, white and zebra stay as they are when another set is chosen.
    this.exposure ??= fader('Exposure', { least: -4, most: 4, text: inStops, changed });
    this.white ??= fader('White', {
      least: 0, most: whites.length - 1, step: 1, value: zero, changed,
      text: (i) => `${Math.round(whites[i].kelvin / 50) * 50} K` + (i > zero ? ', warmer' : i < zero ? ', cooler' : ''),
    });
    this.zebra ??= element('input', { type: 'checkbox' });
    this.zebra.oninput = changed;
    const [sources, sourceBank] = bank('Sources', shot.sources, true);
    const [ways, wayBank] = bank('Ways of the light', shot.ways, true);
    this.sources = sources, this.ways = ways;
    const zebraRow = element('label', { className: 'choice' }, this.zebra, ' Zebra: what clips, what is lost in black');
    const reset = element('button', { type: 'button' }, 'As it was');
    reset.onclick = () => {
      for (const each of [this.exposure, this.white, ...sources, ...ways]) each.reset();
      this.zebra.checked = false;
      changed();
    };
    this.controls.replaceChildren(
      ...this.setChoice(),
      element('fieldset', {}, element('legend', {}, 'Camera'), this.exposure.row, this.white.row, zebraRow),
      sourceBank, wayBank, element('div', { className: 'buttons' }, reset));
  }

  setChoice() {
    if (this.shots.length < 2) return [];
    this.setBank ??= element('fieldset', {}, element('legend', {}, 'Set'), ...this.shots.map((shot, index) => {
      const radio = element('input', { type: 'radio', name: 'relit-set', checked: index === 0 });
      radio.onchange = () => this.choose(index);
      return element('label', { className: 'choice' }, radio, ' ' + shot.name);
    }));
    return [this.setBank];
  }

  later() {
    this.waiting ??= requestAnimationFrame(() => {
      this.waiting = null;
      this.paint();
    });
  }

  paint() {
    const brighter = 2 ** this.exposure.value();
    this.light = mixed(this.parts, (part) => this.sources[part.source].gain() * this.ways[part.way].gain());
    const context = this.canvas.getContext('2d', { willReadFrequently: true }); // made by the processor
    const picture = context.createImageData(this.data.columns, this.data.rows);
    develop(this.light, picture.data, {
      balance: this.data.whites[this.white.value()].balance, brighter, clipAt: this.data.clip_at,
    });
    this.limits = { ...this.limits, brighter, buriedUnder: this.data.buried_under_stops };
    if (this.zebra.checked) drawZebra(this.light, picture.data, this.data.columns, this.limits);
    context.putImageData(picture, 0, 0);
    this.canvas.dataset.painted = Number(this.canvas.dataset.painted ?? 0) + 1;
    if (this.reading) this.read();
  }

  read() {
    this.reading = true;
    const [x, y] = this.spot;
    const { stops, tone } = toneOf(this.light, 3 * (y * this.data.columns + x), this.limits);
    const word = { clipped: ', clips', buried: ', lost in black', drawn: '' }[tone];
    this.readout.value = Number.isFinite(stops)
      ? `${signed(stops)} stops from the grey card${word}`
      : 'no light';
    this.canvas.dataset.spot = `${x} ${y}`;
  }

  listenToSpot() {
    const { columns, rows } = this.data;
    this.canvas.addEventListener('pointermove', (event) => {
      const box = this.canvas.getBoundingClientRect();
      this.spot = [
        Math.min(columns - 1, Math.max(0, Math.floor(((event.clientX - box.left) / box.width) * columns))),
        Math.min(rows - 1, Math.max(0, Math.floor(((event.clientY - box.top) / box.height) * rows))),
      ];
      if (this.light) this.read();
    });
    this.canvas.addEventListener('keydown', (event) => {
      const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
      if (!way || !this.light) return;
      event.preventDefault();
      const far = event.shiftKey ? 10 : 1;
      this.spot = [
        Math.min(columns - 1, Math.max(0, this.spot[0] + far * way[0])),
        Math.min(rows - 1, Math.max(0, this.spot[1] + far * way[1])),
      ];
      this.read();
    });
  }
}

export function liveRelight(figure) {
  new Desk(figure);
}
