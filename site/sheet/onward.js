// Which sheet one opens after which, as the work goes.

/** @type {{ [calculation: string]: string[] }} */
const ONWARD = {
  'shaft-torque': ['shaft-strength', 'key-strength'],
  'shaft-strength': ['shaft-whirl'],
  'shaft-whirl': ['vibration-source'],
  'key-strength': ['propeller-taper'],
  'propeller-taper': ['shaft-withdrawal'],
  'shaft-withdrawal': ['work-plan'],
  'bolt-preload': ['bolt-fit', 'coupling-grip'],
  'coupling-grip': ['bolt-preload'],
  'bolt-fit': ['bolt-preload'],
  'thread-engagement': ['bolt-preload'],
  'coupling-bore': ['coupling-key'],
  'coupling-key': ['coupling-bore'],
  'output-flange': ['flange-run-out'],
  'flange-run-out': ['coupling-alignment'],
  backlash: ['output-flange'],
  'line-joints': ['backlash'], // a joint's own sheet opens by its row
  'shaft-droop': ['coupling-alignment'],
  'coupling-alignment': ['mount-moves'],
  'mount-moves': ['coupling-alignment'],
  'dial-alignment': ['mount-moves', 'alignment-change'],
  'alignment-change': ['mount-moves'],
  'mount-load': ['mount-moves'],
  'gland-heat': ['gland-packing', 'gland-drip'],
  'gland-packing': ['gland-heat'],
  'gland-drip': ['gland-heat'],
  'bearing-clearance': ['shaft-withdrawal'],
  'bearing-life': ['vibration-source'],
  'wear-debris': ['fluid-flush', 'repair-or-replace'],
  'fluid-settling': ['fluid-cleanliness'],
  'fluid-cleanliness': ['wear-debris'],
  'fluid-flush': ['fluid-settling'],
  'vibration-source': ['fault-finding'],
  'fault-finding': ['repair-or-replace', 'work-plan'],
  'repair-or-replace': ['work-plan'],
  'reading-trend': ['fault-finding'],
  'sea-trial': ['reading-trend'],
  'service-schedule': ['work-plan'],
};

/**
 * The sheets to open after this one, with their titles.
 * @param {import('../app.js').App} app
 * @param {string} calculation
 */
export function onward(app, calculation) {
  return (ONWARD[calculation] ?? []).flatMap((id) => app.contents.calculations.filter((c) => c.id === id));
}
