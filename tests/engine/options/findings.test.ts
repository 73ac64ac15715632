import { describe, expect, it } from 'vitest';
import { IMPOSSIBLE_DUTY } from '@/lib/engine/decide/limits';
import { checksBefore } from '@/lib/engine/options/checks';
import { OPTIONS } from '@/lib/engine/options/findings';
import { largestInertia } from '@/lib/engine/options/starting';
import type { Finding } from '@/lib/engine/quantity/finding';
import type { DemandCharge, Tariff } from '@/lib/engine/tariff/tariff';
import { PLATE, SETTINGS, study } from '../support/study';
import { POOR, PRICES, type Trial, weigh } from './weighing';

/** Energy at two prices and demand without ratchet. */
const BY_HOUR: Tariff = {
  energy: [
    { name: 'day', when: 'Mo-Fr 07:00-22:00', pricePerKwh: 0.15 },
    { name: 'other hours', pricePerKwh: 0.08 },
  ],
  blocks: [],
  demand: [{ name: 'any time', price: 9.5, unit: 'kW' }],
  fixedPerMonth: 0,
  taxes: [],
};

/** Demand at the highest of the last twelve months. */
const RATCHET: DemandCharge = { name: 'any time', price: 9.5, unit: 'kW', ratchet: { share: 1, months: 11 } };

/** The same torque at every speed: up to rated speed, and with the last point beyond it. */
const FLAT = [
  { speedPct: 0, torquePct: 80 },
  { speedPct: 100, torquePct: 80 },
  { speedPct: 110, torquePct: 80 },
];

/** A 2-pole motor of 50 Hz in a metric frame that its next smaller rating has too. */
const TWO_POLES = {
  ...{ ratedPowerKw: 7.5, ratedVoltageV: 400, ratedCurrentA: 14.6, ratedSpeedRpm: 2900, ratedFrequencyHz: 50 },
  ...{ ratedPowerFactorPct: 86, nominalEfficiencyPct: 86, poles: 2, frame: '132S' },
} as const;

/** A situation that makes each finding, and one beside it that does not. */
const CASES: Readonly<Record<keyof typeof OPTIONS.kinds, readonly [makes: Trial, not: Trial]>> = {
  'hours-unknown': [{ hours: undefined }, {}],
  // The old motor's code letter stands for more breakdown torque than a premium motor's typical leakage.
  'too-small-for-duty': [
    {
      plate: { codeLetter: 'R' },
      steps: [
        [0.6, 5000],
        [3.2, 20],
      ],
    },
    {},
  ],
  'duty-beyond-breakdown': [{ steps: [[60, 5000]] }, {}],
  'screening-only': [{ screeningOnly: true, measured: false }, {}],
  'failed-at-assumed-load': [
    { screeningOnly: true, measured: false, plate: { status: 'failed' } },
    { plate: { status: 'failed' } },
  ],
  'invented-price': [{}, { prices: PRICES }],
  'no-price': [{ prices: PRICES.filter((line) => line.item !== 'motor') }, { prices: PRICES }],
  'no-repair-price': [{ prices: PRICES.filter((line) => line.item !== 'rewind') }, { prices: PRICES }],
  'price-incomplete': [{ prices: PRICES.filter((line) => line.item !== 'removal-install') }, { prices: PRICES }],
  'price-extrapolated': [{ prices: PRICES, plate: { ratedPowerKw: 200 } }, { prices: PRICES }],
  'schedule-unknown': [
    { settings: { tariffs: { North: BY_HOUR } } },
    { settings: { tariffs: { North: BY_HOUR } }, plate: { schedule: 'Mo-Fr 06:00-22:00' } },
  ],
  'schedule-unreadable': [
    { settings: { tariffs: { North: BY_HOUR } }, plate: { schedule: 'two shifts' } },
    { settings: { tariffs: { South: BY_HOUR } }, plate: { schedule: 'two shifts' } },
  ],
  'hours-beyond-schedule': [
    { settings: { tariffs: { North: BY_HOUR } }, plate: { schedule: 'Mo-Fr 06:00-22:00' }, motor: { hoursPerYear: 6000 } },
    { settings: { tariffs: { North: BY_HOUR } }, plate: { schedule: 'Mo-Fr 06:00-22:00' }, motor: { hoursPerYear: 4000 } },
  ],
  'ratchet-holds-demand': [
    { settings: { tariffs: { North: { ...BY_HOUR, demand: [RATCHET], usage: { energyKwh: 1e5, demandKw: 400 } } } } },
    { settings: { tariffs: { North: BY_HOUR } } },
  ],
  'tax-without-depreciation': [
    { settings: { taxRate: 0.25 } },
    { settings: { taxRate: 0.25, depreciation: { method: 'straight-line', years: 7 } } },
  ],
  'not-in-service': [{ plate: { status: 'spare' } }, {}],
  'failed-must-act': [{ plate: { status: 'failed' } }, {}],
  'nothing-spent': [{}, { plate: { status: 'failed' } }],
  'no-saving': [{ plate: { nominalEfficiencyPct: 96 } }, POOR],
  'never-paid-back': [{ hours: 2000 }, POOR],
  'no-rate-of-return': [
    { ...POOR, plate: { ...POOR.plate, quotedPrice: 1000, quotedRepair: 3000 }, settings: { failureRatePerYear: 0.05 } },
    POOR,
  ],
  'several-rates-of-return': [
    // A small motor saves at once, and is worth far less at the horizon than the dear young one that it replaced.
    {
      ...POOR,
      load: 0.3,
      settings: { failureRatePerYear: 0.01 },
      plate: { ...POOR.plate, yearBuilt: 2025, quotedPrice: 40000, peakLoadKw: 13 },
    },
    POOR,
  ],
  // The policy would buy a motor; to repair spares that at the start and takes more energy from then on.
  'rate-of-a-loan': [
    { ...POOR, plate: { ...POOR.plate, status: 'failed' }, settings: { policy: { ...SETTINGS.policy, atFailure: 'replace' } } },
    POOR,
  ],
  'no-extra-cost': [{ ...POOR, plate: { ...POOR.plate, quotedPrice: 1000, quotedRepair: 3000 } }, POOR],
  'check-before': [{ plate: { mounting: 'vertical' } }, {}],
  'speed-eats-saving': [{}, { plate: { driveFed: true } }],
  'speed-held': [{ plate: { driveFed: true } }, {}],
  'load-curve-unknown': [
    { plate: { loadCurve: 'kiln' }, settings: { loadCurves: { mill: FLAT } } },
    { plate: { loadCurve: 'mill' }, settings: { loadCurves: { mill: FLAT } } },
  ],
  'load-law-twice': [
    { plate: { loadCurve: 'mill', loadTorqueExponent: 0 }, settings: { loadCurves: { mill: FLAT } } },
    { plate: { loadCurve: 'mill' }, settings: { loadCurves: { mill: FLAT } } },
  ],
  'load-curve-left': [
    { plate: { loadCurve: 'mill' }, settings: { loadCurves: { mill: FLAT.slice(0, 2) } } },
    { plate: { loadCurve: 'mill' }, settings: { loadCurves: { mill: FLAT } } },
  ],
  'starter-to-match': [{ load: 0.3 }, {}],
  'frame-to-match': [{ load: 0.3 }, {}],
  'frame-stays': [
    { load: 0.45, plate: TWO_POLES, settings: { standards: 'iec' } },
    { load: 0.45, plate: { ...TWO_POLES, frame: '160M' }, settings: { standards: 'iec' } },
  ],
  'frame-not-listed': [{ load: 0.45, plate: { ratedPowerKw: 400 * 0.7457, frame: '449T' } }, { load: 0.3 }],
  'power-factor-moves': [{ load: 0.3 }, {}],
  // Below half load a smaller motor of like slip gains little; far below it the constant losses weigh.
  'smaller-saves-no-more': [
    { load: 0.45, plate: { flowControl: 'drive' } },
    { load: 0.12, plate: { flowControl: 'drive' } },
  ],
  'peak-load-unknown': [{ load: 0.3 }, { load: 0.3, plate: { peakLoadKw: 13 } }],
  'place-unknown': [{ load: 0.3 }, { load: 0.7 }],
  'class-outside-table': [{ plate: { ratedPowerKw: 600 } }, {}],
  'class-unknown': [{ tables: { usPremium: { ...study().tables.usPremium, rows: [] } } }, {}],
  'stop-cost-unknown': [{ calls: ['rewind'] }, { calls: ['rewind'], plate: { standby: true } }],
  'amount-too-large': [{ plate: { quotedPrice: 1e15 } }, { plate: { quotedPrice: 1e6 } }],
};

function codesOf(trial: Trial): Set<string> {
  const { options, findings } = weigh(trial);
  return new Set([...findings, ...options.flatMap((option) => option.findings())].map((found) => found.code));
}

describe('findings of the options step', () => {
  it('are all covered below', () => {
    expect(Object.keys(CASES).sort()).toEqual(Object.keys(OPTIONS.kinds).sort());
  });
  it.each(Object.entries(CASES))('%s is made where it should be, and not where it should not', (code, [makes, not]) => {
    expect(codesOf(makes)).toContain(code);
    expect(codesOf(not)).not.toContain(code);
  });
  it('say what, why and what to do, without NaN or undefined', () => {
    for (const [makes] of Object.values(CASES)) {
      const { options, findings } = weigh(makes);
      for (const found of [...findings, ...options.flatMap((option) => option.findings())])
        for (const words of [found.text, found.cause, found.next]) {
          expect(words.length).toBeGreaterThan(20);
          expect(words).not.toMatch(/NaN|undefined|Infinity/);
          expect(words).toMatch(/[.]$/);
        }
    }
  });
  it('say of each case what is so: nothing saved or more taken, nothing spent or the value left, what the speed takes', () => {
    const textOf = (trial: Trial, code: string, id = '') =>
      weigh(trial)
        .options.filter((option) => option.id.includes(id))
        .flatMap((option) => option.findings())
        .find((found) => found.code === code);
    expect(textOf({ plate: { nominalEfficiencyPct: 96 } }, 'no-saving')?.text).toMatch(
      /a year takes [\d,]+ kWh more and [\d,]+ USD more/,
    );
    const bearings = textOf({ calls: ['bearing-job'] }, 'no-saving', 'repair');
    expect(bearings?.text).toBe('The option saves nothing in a year, so it has no payback.');
    expect(`${bearings?.cause} ${bearings?.next}`).not.toContain('speed');
    // A motor for 100 more than the repair is worth more than that at the horizon, three quarters of its price being written off.
    const near = { ...POOR, plate: { ...POOR.plate, quotedPrice: 3100, quotedRepair: 3000 } };
    expect(textOf(near, 'no-extra-cost')?.text).toContain('no more than what is left of it at the horizon');
    const less = { ...POOR, plate: { ...POOR.plate, quotedPrice: 2900, quotedRepair: 3000 } };
    expect(textOf(less, 'no-extra-cost')?.text).toContain('costs no more than what would be done anyway');
    expect(textOf(less, 'no-rate-of-return', 'at-failure')?.text).toContain('In no year is more spent than comes in');
    // Torque by the square of the speed, a slow old motor: the faster shaft takes more than the efficiency gives.
    const slow = { plate: { ratedSpeedRpm: 1755, nominalEfficiencyPct: 93.6, loadTorqueExponent: 2 }, hours: 6000 } as const;
    expect(textOf(slow, 'speed-eats-saving')?.text).toMatch(
      /that takes all [\d,]+ kWh a year that the efficiency saves, and [\d,]+ kWh more\./,
    );
  });
  it('name the stamped current, by which a relay is set, where it is the motor’s (within 10 %: NEMA MG 1 12.47, from memory)', () => {
    const from = (ratedCurrentA: number) =>
      weigh({ load: 0.3, plate: { ratedCurrentA } })
        .options.flatMap((option) => option.findings())
        .find((found) => found.code === 'starter-to-match')?.evidence.from_a;
    expect(from(58)).toBe(58);
    expect(from(63.5)).toBe(63.5);
    expect(from(120)).not.toBe(120);
  });
  it('name the invented price list once for a motor', () => {
    expect(weigh({ load: 0.3 }).findings.filter((found) => found.code === 'invented-price')).toHaveLength(1);
  });
  it('bar an option, or call its duty impossible, in its screening alone, with which they begin', () => {
    const bars = ({ severity, code }: Finding) => severity === 'disqualifies' || code === IMPOSSIBLE_DUTY;
    const barring = Object.values(CASES).flatMap((trials) =>
      trials.flatMap((trial) =>
        weigh(trial).options.flatMap((option) => {
          const all = option.findings();
          expect(all.slice(0, option.screening.length)).toEqual(option.screening);
          expect(all.slice(option.screening.length).filter(bars)).toEqual([]);
          return option.screening.filter(bars).map(({ code }) => code);
        }),
      ),
    );
    expect(new Set(barring)).toEqual(new Set([IMPOSSIBLE_DUTY, 'screening-only']));
  });
  it('screening disqualifies options of a running motor, never those of a failed one', () => {
    const severe = (trial: Trial) =>
      weigh(trial)
        .options.flatMap((option) => option.findings())
        .some((found) => found.severity === 'disqualifies');
    expect(severe({ screeningOnly: true, measured: false })).toBe(true);
    expect(severe({ screeningOnly: true, measured: false, plate: { status: 'failed' } })).toBe(false);
  });
});

describe('checks before a change', () => {
  const base = {
    tables: study().tables,
    plate: { ...PLATE, drivenMachine: 'pump' as const },
    poles: 4,
    synchronousSpeedRpm: 1800,
    newRatedPowerKw: 25 * 0.7457,
    highestLoadKw: 15,
    exponent: 2,
  };
  const checks = (findings: readonly Finding[]) => findings.map((found) => found.evidence.check);
  const of = (plate: Partial<typeof PLATE>, more: Partial<typeof base> = {}) =>
    checks(checksBefore({ ...base, ...more, plate: { ...base.plate, ...plate } }));

  it('finds nothing to check for a foot-mounted pump motor', () => {
    expect(of({})).toEqual([]);
  });
  it.each([
    ['mounting', { mounting: 'flange' }],
    ['hazardous-location', { hazardousLocation: true }],
    ['machine-kind', { machineKind: 'wound-rotor' }],
    ['starting-torque', { designLetter: 'D' }],
  ] as const)('%s is checked for the same rating as well', (check, plate) => {
    expect(of(plate)).toEqual([check]);
    expect(of(plate, { newRatedPowerKw: PLATE.ratedPowerKw })).toEqual([check]);
  });
  it.each([
    ['driven-machine', { drivenMachine: undefined }],
    ['driven-machine', { drivenMachine: 'other' }],
    ['starting-duty', { drivenMachine: 'compressor' }],
    ['inertia', { drivenMachine: 'fan' }],
    ['inertia', { drivenMachine: 'mixer' }],
    ['inertia', { drivenMachine: 'fan', loadInertiaKgm2: 50 }],
  ] as const)('%s is checked for a smaller rating alone', (check, plate) => {
    expect(of(plate)).toEqual([check]);
    expect(of(plate, { newRatedPowerKw: PLATE.ratedPowerKw })).toEqual([]);
  });
  it('the starting torque of a constant-torque load against the table of locked-rotor torques', () => {
    // 25 hp, 4 poles: 150 % (NEMA MG 1 table 12-2, from memory), 121.5 % at 90 % voltage; needed 1.5 times the running torque.
    const at = (highestLoadKw: number) => of({ drivenMachine: 'machine-tool' }, { exponent: 0, highestLoadKw });
    const told = checksBefore({
      ...base,
      plate: { ...base.plate, drivenMachine: 'machine-tool' },
      exponent: 0,
      highestLoadKw: 17,
    });
    expect(told[0]?.evidence.detail).toMatch(/must give only 12[12] % at 90 % voltage/);
    expect(at((0.999 * 25 * 0.7457 * 1.215) / 1.5)).toEqual([]);
    expect(at((1.001 * 25 * 0.7457 * 1.215) / 1.5)).toEqual(['starting-torque']);
  });
  it('a pump whose torque does not go with the square of speed may start against pressure', () => {
    expect(of({}, { exponent: 0, highestLoadKw: 5 })).toEqual(['starting-duty']);
  });
  it('no start across the line behind a drive: neither torque nor inertia, but still a load that may stick', () => {
    expect(of({ drivenMachine: 'fan' })).toEqual(['inertia']);
    expect(of({ drivenMachine: 'fan', driveFed: true })).toEqual([]);
    expect(of({ drivenMachine: 'conveyor', driveFed: true })).toEqual(['starting-duty']);
  });
  it('between listed ratings the lesser torque holds; past the end of the table the start counts as not checked', () => {
    // 6.2 hp lies between 5 hp with 185 % and 7.5 hp with 175 % locked-rotor torque, 4 poles (NEMA MG 1 table 12-2, from memory).
    const rating = 6.2 * 0.7457;
    const at = (highestLoadKw: number) =>
      of({ drivenMachine: 'machine-tool' }, { newRatedPowerKw: rating, exponent: 0, highestLoadKw });
    expect(at((0.999 * rating * 1.75 * 0.81) / 1.5)).toEqual([]);
    expect(at((1.001 * rating * 1.75 * 0.81) / 1.5)).toEqual(['starting-torque']);
    // Above 75 hp no pull-up torque is listed: 65 %, the lowest of any rating, against 0.8² of the running torque of a pump.
    const pump = (load: number) => of({ ratedPowerKw: 400 }, { newRatedPowerKw: 132, highestLoadKw: load * 132 });
    expect(pump((0.999 * 0.65 * 0.81) / 0.64)).toEqual([]);
    expect(pump((1.001 * 0.65 * 0.81) / 0.64)).toEqual(['starting-torque']);
    expect(of({ ratedPowerKw: 900 }, { newRatedPowerKw: 700, highestLoadKw: 300 })).toEqual(['starting-torque']);
  });
  it('the load inertia against that of NEMA MG 1 table 12-7 (from memory): 5.8, 232 and 441 lb·ft² at 1, 50 and 100 hp, 1800 r/min', () => {
    for (const [hp, poundFeet] of [
      [1, 5.8],
      [50, 232],
      [100, 441],
    ] as const)
      expect(largestInertia(hp * 0.7457, 1800) / 0.04214011).toBeCloseTo(poundFeet, hp === 1 ? 1 : 0);
    // At 3600 r/min the column begins with 27 in place of 24: 26, 49 and 92 lb·ft² at 25, 50 and 100 hp.
    for (const [hp, poundFeet] of [
      [25, 26],
      [50, 49],
      [100, 92],
    ] as const)
      expect(Math.round(largestInertia(hp * 0.7457, 3600) / 0.04214011)).toBe(poundFeet);
    expect(of({ drivenMachine: 'fan', loadInertiaKgm2: 0.99 * largestInertia(base.newRatedPowerKw, 1800) })).not.toContain(
      'inertia',
    );
  });
});
