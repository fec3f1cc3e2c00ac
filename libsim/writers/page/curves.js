// Curves with a line under the pointer that reads them.
import uPlot from 'uplot';
import 'uplot/dist/uPlot.min.css';
import { dataOf, replaceStill } from './page.js';

const clock = (minute) => `${Math.floor(minute / 60)}:${String(Math.round(minute % 60)).padStart(2, '0')}`;
const DASHES = [[], [6, 4], [2, 3], [10, 3, 2, 3]];

export function liveCurves(figure) {
  const data = dataOf(figure);
  const place = replaceStill(figure);
  const draw = () => {
    const style = getComputedStyle(document.documentElement);
    const ink = style.getPropertyValue('--ink'), quiet = style.getPropertyValue('--quiet'), line = style.getPropertyValue('--line');
    const axis = { stroke: quiet, grid: { stroke: line, width: 1 }, ticks: { stroke: line, width: 1 } };
    const hours = data.x_is_clock ? { values: (_, splits) => splits.map(clock), incrs: [60, 120, 180, 240] } : {};
    place.replaceChildren();
    return new uPlot({
      width: Math.max(280, place.clientWidth), height: 300,
      scales: { x: { time: false } },
      axes: [{ ...axis, ...hours, label: data.x_title }, { ...axis, label: data.y_title }],
      series: [
        { label: data.x_title, value: (_, x) => (x == null ? '–' : data.x_is_clock ? clock(x) : x) },
        ...data.curves.map((curve, index) => ({
          label: curve.name, stroke: ink, width: 1.6, dash: DASHES[index % DASHES.length], points: { show: false },
        })),
      ],
    }, [data.x, ...data.curves.map((curve) => curve.y)], place);
  };
  let plot = draw();
  const again = () => {
    plot.destroy();
    plot = draw();
  };
  matchMedia('(prefers-color-scheme: dark)').addEventListener('change', again);
  new ResizeObserver(() => plot.width !== Math.max(280, place.clientWidth) && again()).observe(place);
}
