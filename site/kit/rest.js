// What is done once nobody has touched the page for a while.

const REST = 800; // ms

/** @param {() => void} act once */
export function whenAtRest(act) {
  let timer = 0;
  const signs = ['keydown', 'pointerdown', 'scroll'];
  const wait = () => {
    clearTimeout(timer);
    timer = setTimeout(() => {
      for (const sign of signs) removeEventListener(sign, wait, true);
      act();
    }, REST);
  };
  for (const sign of signs) addEventListener(sign, wait, { capture: true, passive: true });
  wait();
}
