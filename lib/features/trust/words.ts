import type { LoadWanted, Wanted } from './schema';

/** Readings of a round in words. */
export const WANTED_WORDS: Readonly<Record<Wanted, string>> = {
  plate: 'the plate',
  'insulation-class': 'insulation class, rise class and year of winding',
  foundation: 'whether the foundation is rigid or flexible',
  ambient: 'ambient temperature',
  'bearing-temperature': 'bearing temperature',
  vibration: 'vibration',
  voltages: 'three voltages',
  currents: 'three currents',
  power: 'input power',
  'power-factor': 'power factor',
  frequency: 'frequency',
  harmonics: 'single harmonics of the voltage',
  'drive-output': 'the drive’s output frequency and power',
  'winding-temperature': 'winding temperature',
  speed: 'shaft speed',
  'driven-speed': 'speed of the driven shaft',
  spectrum: 'spectrum of the current',
  resistance: 'winding resistance',
  insulation: 'insulation resistance with its temperature',
  polarization: 'polarization index',
  'no-load': 'uncoupled run',
};

/** The load at which readings are wanted, in words. */
export const LOAD_WORDS: Readonly<Record<LoadWanted, string>> = {
  any: 'at any load',
  usual: 'at the usual load',
  half: 'at 50 % load or more',
  'three-quarters': 'at 75 % load or more',
  stopped: 'stopped and locked out',
};
