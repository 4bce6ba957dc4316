// Where each calculation stands in the list. One that is not named here
// stands at the end, so that a new calculation is never hidden.

/** @type {{ title: string, about: string, ids: string[] }[]} */
export const groups = [
  {
    title: 'Something is wrong',
    about: 'It knocks, runs hot, leaks or vibrates: find the part first.',
    ids: ['fault-finding', 'vibration-source'],
  },
  {
    title: 'Shaft',
    about: 'From the gearbox output flange to the propeller.',
    ids: ['shaft-torque', 'shaft-strength', 'shaft-whirl', 'shaft-droop', 'key-strength', 'shaft-withdrawal'],
  },
  {
    title: 'Coupling and bolts',
    about: 'What holds the flanges, and how well they are aligned.',
    ids: ['bolt-preload', 'bolt-fit', 'coupling-grip', 'coupling-alignment'],
  },
  { title: 'Mounts', about: 'What the engine stands on.', ids: ['mount-moves', 'mount-load'] },
  {
    title: 'Gland and bearings',
    about: 'Where the shaft turns and where the sea is kept out.',
    ids: ['gland-heat', 'gland-packing', 'gland-drip', 'bearing-clearance', 'bearing-life'],
  },
  {
    title: 'Wear and fluid',
    about: 'What wear debris and the dipstick show.',
    ids: ['wear-debris', 'fluid-settling', 'fluid-cleanliness', 'fluid-flush'],
  },
  {
    title: 'Deciding',
    about: 'Repair or replace, which job, which day, how long it lasts.',
    ids: ['repair-or-replace', 'work-plan', 'reading-trend'],
  },
];
