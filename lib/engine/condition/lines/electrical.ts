import type { LineRule } from './line';

const SLOT_SOURCE = 'Cameron, Thomson and Dow 1986 (from memory)';
const SIDEBAND_SOURCE = 'Pole-pass frequency 2 s f₁ (read in a trade text on electrical frequencies)';

/** Orders of the supply's own harmonics that six-pulse loads make. */
const HARMONICS = [5, 7, 11, 13, 17, 19, 23, 25] as const;
/** Orders of the stator's field that carry slot lines: enough for the strong ones. */
const FIELD_ORDERS = [1, 3] as const;

const SIDES = [
  { name: 'lower', sign: -1, mark: '−' },
  { name: 'upper', sign: 1, mark: '+' },
] as const;

/** The supply and its harmonics: present in every motor, and able to hide what falls on them. */
export function supplyLines(): LineRule[] {
  const base = {
    spectrum: 'current',
    cause: 'always',
    shaft: 0,
    source: 'Six-pulse loads: orders 6 k ± 1',
    status: 'memory',
  } as const;
  return [
    { ...base, id: 'supply-line', meaning: 'supply frequency', relation: 'f₁', source: 'Definition', supply: 1 },
    ...HARMONICS.map((order) => ({
      ...base,
      id: `supply-harmonic-${order}`,
      meaning: `harmonic ${order} of the supply`,
      relation: `${order} f₁`,
      supply: order,
    })),
    {
      spectrum: 'vibration',
      cause: 'supply',
      id: 'twice-supply',
      meaning: 'pull of the air gap: unbalanced supply, static eccentricity or a loose core',
      relation: '2 f₁',
      source: 'US DOE Motor Systems Tip Sheet 7',
      status: 'read',
      supply: 2,
      shaft: 0,
    },
  ];
}

/** Pole-pass sidebands of the cage, about the supply line in the current and about shaft speed in the vibration. */
export function polePassLines(poles: number): LineRule[] {
  const rules: LineRule[] = [];
  for (const order of [1, 2])
    for (const side of SIDES)
      rules.push({
        id: `pole-pass-${order === 1 ? '' : `${order}-`}${side.name}`,
        spectrum: 'current',
        cause: 'rotor-cage',
        meaning: order === 1 ? `${side.name} pole-pass sideband` : `${side.name} sideband at twice pole pass`,
        relation: `f₁ ${side.mark} ${2 * order} s f₁`,
        source: SIDEBAND_SOURCE,
        status: 'read',
        supply: 1 + side.sign * 2 * order,
        shaft: -side.sign * order * poles,
      });
  for (const side of SIDES)
    rules.push({
      id: `shaft-pole-pass-${side.name}`,
      spectrum: 'vibration',
      cause: 'rotor-cage',
      meaning: `${side.name} pole-pass sideband of shaft speed`,
      relation: `f_r ${side.mark} 2 s f₁`,
      source: 'Pole-pass sidebands about running speed: textbooks of vibration (from memory)',
      status: 'memory',
      supply: side.sign * 2,
      shaft: 1 - side.sign * poles,
    });
  return rules;
}

/** A line of the rotor's slots in the current: `turn` 0 for static, ±1 for dynamic eccentricity; `order` of the stator's field, with its sign. */
export function slotLine(bars: number, turn: -1 | 0 | 1, order: number): LineRule {
  const side = order < 0 ? 'lower' : 'upper';
  const kind = turn === 0 ? 'static' : turn < 0 ? 'dynamic-below' : 'dynamic-above';
  const count = turn === 0 ? 'R' : `(R ${turn < 0 ? '−' : '+'} 1)`;
  return {
    id: `slot-${kind}-${Math.abs(order)}-${side}`,
    spectrum: 'current',
    cause: 'eccentricity',
    meaning:
      turn === 0
        ? 'rotor-slot line: raised by static eccentricity'
        : 'line one turn beside a rotor-slot line: dynamic eccentricity',
    relation: `${count} f_r ${order < 0 ? '−' : '+'} ${Math.abs(order) === 1 ? '' : `${Math.abs(order)} `}f₁`,
    source: SLOT_SOURCE,
    status: 'memory',
    supply: order,
    shaft: bars + turn,
  };
}

/** Lines that follow from the numbers of bars and slots. */
export function slotLines(bars: number | undefined, slots: number | undefined): LineRule[] {
  const rules: LineRule[] = [];
  if (bars !== undefined) {
    for (const order of FIELD_ORDERS)
      for (const sign of [-1, 1]) for (const turn of [0, -1, 1] as const) rules.push(slotLine(bars, turn, sign * order));
    const pass = {
      spectrum: 'vibration',
      cause: 'eccentricity',
      source: 'Textbooks of vibration (from memory)',
      status: 'memory',
      shaft: bars,
    } as const;
    rules.push({ ...pass, id: 'bar-pass', meaning: 'passing of the rotor bars', relation: 'R f_r', supply: 0 });
    for (const side of SIDES)
      rules.push({
        ...pass,
        id: `bar-pass-${side.name}`,
        meaning: 'passing of the rotor bars, with the pull at twice supply',
        relation: `R f_r ${side.mark} 2 f₁`,
        supply: side.sign * 2,
      });
  }
  if (slots !== undefined)
    rules.push({
      id: 'slot-pass',
      spectrum: 'vibration',
      cause: 'eccentricity',
      meaning: 'passing of the stator slots: loose stator coils, eccentricity',
      relation: 'S f_r',
      source: 'Textbooks of vibration (from memory)',
      status: 'memory',
      supply: 0,
      shaft: slots,
    });
  return rules;
}
