// A button that takes the text beside it along.
import { element } from './page.js';

export function liveCopy(figure) {
  const text = figure.querySelector('pre');
  const button = element('button', { type: 'button' }, 'Copy');
  button.onclick = async () => {
    try {
      await navigator.clipboard.writeText(text.textContent);
      button.textContent = 'Copied';
    } catch {
      getSelection().selectAllChildren(text); // the browser does not let us: one key is left to press
      button.textContent = 'Selected: copy it with the keyboard';
    }
    setTimeout(() => (button.textContent = 'Copy'), 3000);
  };
  text.before(element('div', { className: 'buttons live-only' }, button));
}
