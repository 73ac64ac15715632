import type { Finding } from '@/lib/engine';
import type { Ask, LoadWanted, Wanted } from './schema';

/** What carries a load: read within one minute of one another. */
const LOAD_SET: readonly Wanted[] = ['voltages', 'currents', 'power', 'frequency', 'speed'];
const SIGNATURE: readonly Wanted[] = ['spectrum', ...LOAD_SET];

const ask = (load: LoadWanted, ...readings: readonly Wanted[]): Ask => ({ readings, load });
const DESK = ask('any');
const PLATE = ask('any', 'plate');
const INSULATION_CLASS = ask('any', 'insulation-class');

/**
 * What each finding asks for, by its code. `undefined`: nothing that a round could bring; the finding stands on the motor's page.
 * A test holds this list against the catalogues of the engine.
 */
export const ASKS: Readonly<Record<string, Ask | undefined>> = {
  // Load and readings
  'power-negative': ask('usual', ...LOAD_SET),
  'power-impossible': ask('usual', 'plate', ...LOAD_SET),
  'power-above-apparent': ask('usual', ...LOAD_SET),
  'power-below-no-load': ask('usual', 'plate', ...LOAD_SET),
  'power-factor-contradicts': ask('usual', ...LOAD_SET, 'power-factor'),
  'power-factor-typed-as-fraction': DESK,
  'reading-value-impossible': DESK,
  'frequency-not-the-mains': ask('usual', 'frequency'),
  'voltage-phase-for-line': ask('usual', 'voltages'),
  'voltage-far-from-plate': ask('usual', 'plate', 'voltages'),
  'voltage-assumed': ask('usual', 'voltages'),
  'speed-above-synchronous': ask('usual', 'speed', 'frequency'),
  'speed-not-the-motors': ask('usual', 'speed', 'frequency'),
  'current-below-magnetising': ask('usual', 'power', 'currents', 'voltages'),
  'current-low-load': ask('usual', 'power', 'voltages', 'currents'),
  'load-not-told-from-none': ask('usual', ...LOAD_SET),
  'load-impossible': ask('usual', 'plate', ...LOAD_SET),
  'estimates-disagree': ask('usual', 'plate', ...LOAD_SET),
  'not-linear': ask('usual', 'power', 'voltages', 'currents'),
  'drive-without-frequency': ask('usual', 'drive-output'),
  'drive-fed-losses': undefined,
  'uncoupled-reading': ask('usual', ...LOAD_SET),
  'reading-without-load': ask('usual', ...LOAD_SET),
  // Suspected mistakes
  'power-sensor-reversed': ask('usual', ...LOAD_SET),
  'power-sensor-missing': ask('usual', ...LOAD_SET),
  'power-in-horsepower': DESK,
  'power-in-watts': DESK,
  'voltage-not-the-motors': ask('usual', 'plate', 'voltages'),
  'current-of-a-winding': ask('usual', 'currents', 'power', 'voltages'),
  'current-of-half-the-conductors': ask('usual', 'currents', 'power', 'voltages'),
  'stamped-current-not-the-motors': PLATE,
  'speed-digits-swapped': ask('usual', 'speed', 'frequency'),
  'speed-of-another-shaft': ask('usual', 'speed', 'frequency'),
  'poles-not-the-motors': PLATE,
  'read-uncoupled': ask('usual', ...LOAD_SET),
  'plate-of-another-motor': PLATE,
  'power-not-confirmed': ask('usual', ...LOAD_SET),
  'one-of-two-mistakes': ask('usual', 'plate', ...LOAD_SET),
  // Trust
  'no-usable-reading': ask('usual', ...LOAD_SET),
  'not-in-service': DESK,
  'latest-reading-unusable': ask('usual', ...LOAD_SET),
  'reading-stale': ask('usual', ...LOAD_SET),
  'reading-undated': DESK,
  'reading-after-study': DESK,
  'one-way-to-load': ask('usual', ...LOAD_SET),
  'second-way-weak': ask('usual', ...LOAD_SET),
  overloaded: undefined,
  // Plate
  'efficiency-as-fraction': DESK,
  'efficiency-impossible': PLATE,
  'class-contradicts-efficiency': PLATE,
  'efficiency-unknown': PLATE,
  'power-factor-as-fraction': DESK,
  'power-factor-impossible': PLATE,
  'poles-contradict-speed': PLATE,
  'poles-assumed': PLATE,
  'rated-speed-impossible': PLATE,
  'slip-contradicts-efficiency': PLATE,
  'current-of-other-voltage': PLATE,
  'current-contradicts-plate': PLATE,
  'resistance-contradicts-plate': ask('stopped', 'resistance', 'winding-temperature'),
  'no-load-contradicts-plate': ask('stopped', 'no-load'),
  'plate-fits-no-machine': PLATE,
  'plate-value-impossible': DESK,
  'efficiency-by-test': undefined,
  'efficiency-by-old-method': PLATE,
  'test-contradicts-plate': PLATE,
  'synchronous-limited': undefined,
  'wound-rotor-rings': undefined,
  'rewound-before': undefined,
  // Condition readings
  'limit-straddled': undefined,
  'voltage-unbalance-high': undefined,
  'voltage-unbalance-derates': undefined,
  'supply-behind-drive': ask('usual', 'drive-output'),
  'distortion-bounds-hvf': ask('usual', 'harmonics'),
  'belt-slip-impossible': ask('usual', 'speed', 'driven-speed'),
  'starts-outside-table': undefined,
  'sideband-not-unique': ask('three-quarters', ...SIGNATURE),
  'current-unbalance-unexplained': undefined,
  'current-unbalance-without-voltage': ask('half', ...LOAD_SET),
  'current-unbalance-low-load': ask('half', ...LOAD_SET),
  'resistance-at-starter': undefined,
  'resistance-place-unknown': DESK,
  'insulation-without-temperature': ask('stopped', 'insulation'),
  'insulation-system-unknown': INSULATION_CLASS,
  'insulation-outside-range': ask('stopped', 'insulation'),
  'insulation-below-minimum': undefined,
  'polarization-random-wound': undefined,
  'polarization-not-meaningful': undefined,
  'polarization-class-unknown': INSULATION_CLASS,
  'vibration-foundation-unknown': ask('any', 'foundation'),
  'vibration-outside-standard': undefined,
  'vibration-zone-c': undefined,
  'signature-under-loaded': ask('three-quarters', ...SIGNATURE),
  'signature-load-unknown': ask('three-quarters', ...SIGNATURE),
  'signature-half-weight': ask('three-quarters', ...SIGNATURE),
  'sideband-one-side': ask('three-quarters', ...SIGNATURE),
  'bars-unknown': undefined,
  'bars-estimated': undefined,
  'eccentricity-trend-only': undefined,
  'temperature-surface': ask('usual', 'winding-temperature', 'ambient'),
  'temperature-class-unknown': INSULATION_CLASS,
};

/** What one finding asks for. An unbalance of currents is no spectrum: a load of half is enough for it. */
export function askOf({ code, evidence }: Pick<Finding, 'code' | 'evidence'>): Ask | undefined {
  if (code === 'signature-load-unknown' && evidence.reading === 'current unbalance') return ask('half', ...LOAD_SET);
  return ASKS[code];
}
