// How the keeping goes, on every view: nothing is said while all is kept.

import { button, byId, h } from '../kit/dom.js';
import { saveBoat } from '../store/files.js';
import { inHand, toSend } from '../store/shelf.js';

const PATIENCE = 1000; // ms until writing is worth a word

/**
 * @param {() => void} show draws the view anew
 */
export function keepingBanner(show) {
  const place = byId('keeping', HTMLElement);
  const state = h('div', {});
  const news = h('div', {});
  const newer = h('div', {});
  place.append(state, news, newer);
  let at = 'kept';
  let wait = 0;
  addEventListener('beforeunload', (event) => {
    const unkept = at === 'writing' ? state.hasChildNodes() : at === 'refused' && Object.keys(inHand().boat).length > 0;
    if (unkept) event.preventDefault();
  });
  return {
    /** @param {import('../store/shelf.js').Keeping} now */
    keeping(now) {
      if (now === at && now !== 'refused') return;
      at = now;
      clearTimeout(wait);
      if (now === 'writing') {
        wait = setTimeout(() => state.replaceChildren(h('p', {}, 'What was typed last is still being kept. Leave the page open.')), PATIENCE);
      } else if (now === 'kept') state.replaceChildren();
      else if (!state.querySelector('.wrong')) {
        state.replaceChildren(
          h('p', { class: 'wrong' }, 'This browser keeps nothing of what is typed: it is lost when the page is closed. Save the boat to a file, and open that next time.'),
          button('Save the boat now', () => saveBoat(toSend(inHand().boat) ?? {})),
        );
      }
    },
    /** The boat that is shown was changed in another tab. */
    changed() {
      const typing = document.activeElement?.matches('main input, main select, main textarea') ?? false;
      if (!typing) return show();
      news.replaceChildren(
        h('p', {}, 'This boat was changed in another tab. What was typed there and here is both kept; what stands here is from before.'),
        button('Show it as it is now', show),
      );
    },
    /** A new version of the page lies ready. @param {() => void} take */
    newVersion(take) {
      newer.replaceChildren(
        h('p', {}, 'A new version lies ready. What you typed stays. Until you take it this page goes on as it is.'),
        button('Use the new version', take),
        button('Later', () => newer.replaceChildren(), { class: 'quiet' }),
      );
    },
    shown() {
      news.replaceChildren();
    },
  };
}
