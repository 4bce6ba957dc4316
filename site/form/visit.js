// The way to a control, wherever it stands.

/** Opens the fold, if any, in which a control stands, and goes there. @param {HTMLElement} control */
export function visit(control) {
  const list = control.closest('.row')?.closest('fieldset');
  const face = list?.querySelector('.face'); // read on the face, not in the list below it
  if (face?.checkVisibility() && list) {
    const row = [...list.querySelectorAll('.row')].findIndex((r) => r.contains(control));
    if (!face.dispatchEvent(new CustomEvent('row', { cancelable: true, detail: { row, name: control.id.split('-').at(-1) } }))) return; // it went there
  }
  for (let up = control.parentElement; up; up = up.parentElement) {
    if (up instanceof HTMLDetailsElement) up.open = true;
  }
  control.focus();
}
