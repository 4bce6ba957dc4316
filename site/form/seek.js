// Finding a pick by what people type of it, wherever that stands in its words:
// "grade 8" or "8.8", where the browser's own way knows beginnings alone.

const PAUSE = 1000; // ms, after which typing begins anew

/** @param {string} words */
const plain = (words) => words.toLowerCase().replace(/\s*[×x]\s*(?=\d)/g, 'x').replace(/\s+/g, ' ').trim();

/**
 * Which of the texts is meant; -1 for none, and where one begins so, which the
 * browser finds. Whole words go before beginnings of words, these before parts,
 * and last come the words in any order.
 * @param {string[]} texts
 * @param {string} typed
 */
export function meantBy(texts, typed) {
  const all = texts.map(plain);
  const sought = plain(typed);
  if (sought === '' || texts.some((text) => text.toLowerCase().startsWith(typed.toLowerCase()))) return -1;
  const exact = sought.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
  const ways = [`(^|[^a-z0-9.])${exact}($|[^a-z0-9.])`, `(^|[^a-z0-9.])${exact}`, exact, `^${exact.split(' ').map((word) => `(?=.*${word})`).join('')}`];
  for (const way of ways) {
    const found = all.findIndex((text) => new RegExp(way).test(text));
    if (found >= 0) return found;
  }
  return -1;
}

/** @param {HTMLSelectElement} select */
export function seekable(select) {
  let typed = '';
  let last = 0;
  select.addEventListener('keydown', (event) => {
    if (event.key.length !== 1 || event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.timeStamp - last > PAUSE) typed = '';
    last = event.timeStamp;
    if (event.key === ' ' && typed === '') return; // opens the list
    typed += event.key;
    const options = [...select.options].filter((o) => o.value !== '');
    const texts = options.map((o) => o.text);
    const option = options[meantBy(texts, typed)];
    if (!texts.some((text) => text.toLowerCase().startsWith(typed.toLowerCase()))) event.preventDefault(); // the browser would begin anew with this letter
    if (!option || option.selected) return;
    option.selected = true;
    select.dispatchEvent(new Event('change', { bubbles: true }));
  });
}
