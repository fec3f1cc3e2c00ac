// A map that says what it shows under the pointer or under a spot that the arrow keys move.
import { dataOf, element, signed } from './page.js';

export function liveMap(figure) {
  const data = dataOf(figure);
  const svg = figure.querySelector('svg'), spot = svg.querySelector('.spot');
  const [left, right, near, far] = data.edges_cm, [plotX, plotY, plotWidth, plotHeight] = data.plot;
  const readout = element('output', { className: 'readout live-only' }, 'Point at it, or use the arrow keys.');
  readout.setAttribute('aria-live', 'polite');
  figure.append(readout);
  svg.classList.add('live');
  svg.setAttribute('tabindex', '0');
  svg.setAttribute('role', 'application');
  let cell = [data.columns >> 1, data.rows >> 1];

  const value = (number) => (data.in_stops ? signed(number, 2) : number.toPrecision(3)) + (data.unit ? ` ${data.unit}` : '');
  const show = () => {
    const [i, j] = cell, at = j * data.columns + i;
    const across = (i + 0.5) / data.columns, down = (j + 0.5) / data.rows;
    spot.setAttribute('transform', `translate(${plotX + across * plotWidth} ${plotY + down * plotHeight})`);
    svg.classList.add('reading');
    svg.dataset.cell = cell;
    const x = left + across * (right - left), y = far + down * (near - far);
    const where = `${Math.abs(x).toFixed(0)} cm ${x < 0 ? 'left' : 'right'}, ${Math.abs(y).toFixed(0)} cm ${y < 0 ? 'in front' : 'behind'}`;
    const half = data.half_widths[at];
    const none = { null: 'under a thing', false: data.where_none }[data.values[at]];
    const tooFine = data.least > 0 && data.values[at] < data.least && `under ${value(data.least)}`;
    readout.value = none !== undefined || tooFine
      ? `${where}: ${none ?? tooFine}`
      : `${where}: ${value(data.values[at])}${half ? ` ± ${half.toPrecision(2)}` : ''}`;
  };
  const within = (number, count) => Math.min(count - 1, Math.max(0, number));

  svg.addEventListener('pointermove', (event) => {
    const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(svg.getScreenCTM().inverse());
    cell = [
      within(Math.floor(((at.x - plotX) / plotWidth) * data.columns), data.columns),
      within(Math.floor(((at.y - plotY) / plotHeight) * data.rows), data.rows),
    ];
    show();
  });
  svg.addEventListener('keydown', (event) => {
    const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
    if (!way) return;
    event.preventDefault();
    cell = [within(cell[0] + way[0], data.columns), within(cell[1] + way[1], data.rows)];
    show();
  });
}
