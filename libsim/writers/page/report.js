// Brings the page's figures to life. Each has a kind and, as a rule, its data in a JSON element beside it.
import { liveCopy } from './copy.js';
import { liveCurves } from './curves.js';
import { liveMap } from './map.js';
import { liveRelight } from './relight.js';
import { liveSlider } from './slider.js';

const kinds = { copy: liveCopy, curves: liveCurves, map: liveMap, relight: liveRelight, slider: liveSlider };

for (const figure of document.querySelectorAll('[data-live]')) kinds[figure.dataset.live]?.(figure);
