// Two of the pictures over each other, with a line between them to draw aside.
import '@cloudfour/image-compare';
import { element, replaceStill } from './page.js';

export function liveSlider(figure) {
  const shots = [...figure.querySelectorAll('.shot')].map((shot) => ({
    image: shot.querySelector('img'),
    name: shot.querySelector('strong').textContent,
    figure: shot.querySelector('span').textContent,
  }));
  if (shots.length < 2) return;
  const chosen = [0, 1];
  const place = element('div'), names = element('div', { className: 'names' });

  const lay = () => {
    const [before, after] = chosen.map((index) => shots[index]);
    const compare = element('image-compare', {
      'label-text': `How much is shown of "${before.name}", at the left, and of "${after.name}", at the right`,
    });
    [before, after].forEach((shot, side) => {
      const image = shot.image.cloneNode();
      image.slot = `image-${side + 1}`;
      compare.append(image);
    });
    place.replaceChildren(compare);
    names.replaceChildren(...[before, after].map((shot, side) => nameOf(shot, side)));
  };

  const nameOf = (shot, side) => {
    const figures = element('span', {}, shot.figure);
    if (shots.length === 2) return element('div', {}, shot.name, figures);
    const choice = element('select', { 'aria-label': side ? 'Picture at the right' : 'Picture at the left' },
      ...shots.map((each, index) => element('option', { value: index, selected: index === chosen[side] }, each.name)));
    choice.onchange = () => {
      chosen[side] = Number(choice.value);
      lay();
      names.children[side].querySelector('select').focus();
    };
    return element('div', {}, choice, figures);
  };

  lay();
  replaceStill(figure, place, names);
}
