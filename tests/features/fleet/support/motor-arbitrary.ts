import fc from 'fast-check';
import type { Motor, Plate, Reading } from '@/lib/engine';
import { meanOfThree } from '@/lib/features/fleet/build-reading';
import type { CellValue, Column, LineGeometry } from '@/lib/features/fleet/column';
import { COLUMNS } from '@/lib/features/fleet/columns';
import { kilowattsOf } from '@/lib/features/fleet/rated-power';
import { instantOf, readDate, timeKey } from '@/lib/features/fleet/taken-at';
import type { WritableMotor } from '@/lib/features/fleet/write-csv';

type Values = Record<string, CellValue | undefined>;

/** Text as people type it, dangerous and foreign kinds included; never blank and never with spaces around it. */
const text = fc
  .oneof(
    fc.string({ unit: 'grapheme', minLength: 1, maxLength: 20 }),
    fc.constantFrom(
      '=1+1',
      '+5',
      '-5',
      '@x',
      "'=x",
      "''-",
      '<b>"q"</b>',
      'a,b;c',
      'two\nlines',
      'a\rb',
      'a\r\nb',
      '1,250',
      'NaN',
      'ä€𝄞',
      '＝1',
    ),
  )
  .map((value) => value.replaceAll('\0', '').trim())
  .filter((value) => value !== '');
const real = fc.oneof(
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.double({ min: -1000, max: 1000, noNaN: true }),
  fc.integer({ min: -5000, max: 5000 }),
);
const plain = real.map((value) => (value === 0 ? 0 : value));
const above = fc.double({ min: 1e-6, max: 1e6, noNaN: true });
const time = fc
  .record({
    at: fc.date({ min: new Date('1950-01-01T00:00:00Z'), max: new Date('2150-01-01T00:00:00Z'), noInvalidDate: true }),
    form: fc.constantFrom(10, 16, 19, 24),
  })
  .map(({ at, form }) => at.toISOString().slice(0, form));
const steps = fc
  .array(fc.record({ fraction: fc.double({ min: 0, max: 1.5, noNaN: true }), hoursPerYear: fc.integer({ min: 0, max: 2000 }) }), {
    minLength: 1,
    maxLength: 4,
  })
  .map((list) => list.map(({ fraction, hoursPerYear }) => ({ fraction: fraction === 0 ? 0 : fraction, hoursPerYear })));
const bearing = fc.record({
  balls: fc.integer({ min: 1, max: 40 }),
  ballMm: fc.integer({ min: 1, max: 50 }),
  angleDeg: fc.integer({ min: 0, max: 40 }),
});

/** Values that a column's declaration accepts. */
function arbitraryOf({ kind }: Column): fc.Arbitrary<CellValue> {
  switch (kind.type) {
    case 'text':
    case 'passed-over':
      return text;
    case 'letter':
      return fc.constantFrom('A', 'G', 'V');
    case 'word':
      return fc.constantFrom(...kind.words);
    case 'yes-no':
      return fc.boolean();
    case 'date':
      return time;
    case 'number-list':
      return fc.array(above, { minLength: 1, maxLength: 5 });
    case 'teeth':
      return fc.tuple(fc.integer({ min: 1, max: 200 }), fc.integer({ min: 1, max: 200 }));
    case 'bearing':
      return bearing.map((part) => ({ ...part, pitchMm: part.ballMm * 4.5 }));
    case 'duty':
      return steps;
    case 'number': {
      if (kind.oneOf) return fc.constantFrom(...kind.oneOf);
      if (kind.even) return fc.constantFrom(2, 4, 6, 8, 20);
      if (kind.limits)
        return fc.double({ min: kind.limits[0], max: kind.limits[1], noNaN: true }).map((value) => (value === 0 ? 0 : value));
      if (kind.whole) return fc.integer({ min: 0, max: 3000 });
      if (kind.unit === 'currency') return plain.filter((value) => Math.abs(value) <= 9e12);
      if (kind.rated === 'positive') return above;
      return kind.rated === 'either-sign' ? plain.filter((value) => value !== 0) : plain;
    }
  }
}

/** Some of the columns with a value each, by the key that they fill. */
function someOf(of: 'plate' | 'reading' | 'geometry' | 'motor', except: readonly string[]): fc.Arbitrary<Values> {
  const model: Record<string, fc.Arbitrary<CellValue>> = {};
  for (const column of COLUMNS) {
    const { target } = column;
    if (target.of === of && !except.includes(target.key)) model[target.key] = arbitraryOf(column);
  }
  return fc.record(model, { requiredKeys: [] });
}

/** A sheet states the torque law of a load once: by a curve or by an exponent. */
function oneLaw({ loadCurve, ...values }: Values): Values {
  return loadCurve === undefined || values.loadTorqueExponent !== undefined ? values : { ...values, loadCurve };
}

const triple = fc.tuple(above, above, above);
const reading = fc
  .record({
    values: someOf('reading', ['readingsAt', 'readingCondition', 'takenAt']),
    takenAt: fc.option(time, { nil: undefined }),
    readingsAt: fc.constantFrom('motor', 'starter', 'drive-input', 'drive-output'),
    readingCondition: fc.constantFrom('coupled', 'uncoupled'),
    voltages: fc.option(triple, { nil: undefined }),
    current: fc.option(above, { nil: undefined }),
    resistances: fc.option(triple, { nil: undefined }),
    duty: fc.option(steps, { nil: undefined }),
  })
  .map(({ values, takenAt, readingsAt, readingCondition, voltages, current, resistances, duty }) => ({
    ...values,
    readingsAt,
    readingCondition,
    ...(takenAt === undefined ? {} : { takenAt: readDate(takenAt) ?? '' }),
    ...(voltages === undefined ? {} : { voltagesV: voltages, voltageV: meanOfThree(voltages) }),
    ...(current === undefined ? {} : { currentA: current }),
    ...(resistances === undefined ? {} : { resistancesOhm: resistances }),
    ...(duty === undefined ? {} : { duty }),
  }));

const power = fc.oneof(
  above.map((ratedPowerKw) => ({ ratedPowerKw, ratedPowerUnit: 'kW' as const })),
  fc
    .integer({ min: 1, max: 50_000 })
    .map((tenths) => ({ ratedPowerKw: kilowattsOf(tenths / 10), ratedPowerUnit: 'hp' as const })),
);

/** Rows of readings in the sheet's order; readings of the same time or content would be one, so they are left out. */
function inOrder(readings: readonly Record<string, unknown>[]): Reading[] {
  const seen = new Set<string>();
  const rows: Reading[] = [];
  for (const [row, fields] of readings.entries()) {
    const { takenAt } = fields;
    const key = typeof takenAt === 'string' ? timeKey(takenAt) : JSON.stringify(Object.entries(fields).sort());
    if (seen.has(key)) continue;
    seen.add(key);
    rows.push({ row, readingsAt: 'motor', readingCondition: 'coupled', ...fields });
  }
  const instant = (one: Reading): number => (one.takenAt === undefined ? Number.NEGATIVE_INFINITY : instantOf(one.takenAt));
  return rows.sort((a, b) => (instant(a) === instant(b) ? a.row - b.row : instant(a) - instant(b)));
}

/** Any motor that a fleet sheet can carry, with notes under columns of its own. */
export const motorArbitrary: fc.Arbitrary<WritableMotor> = fc
  .record({
    tag: text,
    own: someOf('motor', ['tag']),
    plate: someOf('plate', ['ratedVoltageV', 'status', 'machineKind']).map(oneLaw),
    fixed: fc.record({
      ratedVoltageV: above,
      status: fc.constantFrom('running', 'failed'),
      machineKind: fc.constantFrom('cage', 'synchronous'),
    }),
    power,
    geometry: someOf('geometry', []),
    readings: fc.array(reading, { maxLength: 4 }),
    plateDuty: fc.option(fc.record({ row: fc.integer({ min: -1, max: 5 }), steps }), { nil: undefined }),
    notes: fc.dictionary(fc.constantFrom('Paint', 'Serial no', '=odd', '__proto__', 'constructor'), text, { maxKeys: 2 }),
  })
  .map(({ tag, own, plate, fixed, power: rating, geometry, readings, plateDuty, notes }) => {
    const wholePlate: Plate = Object.assign({ ...rating, ...fixed } as Plate, plate);
    const lineGeometry: LineGeometry = geometry;
    const motor: Motor = { site: '', ...own, tag, plate: wholePlate, readings: inOrder(readings) };
    return {
      motor: {
        ...motor,
        ...(Object.keys(geometry).length === 0 ? {} : { lineGeometry }),
        // Half a row above the readings' numbers, so that its place among them is never in doubt.
        ...(plateDuty === undefined ? {} : { plateDuty: { row: plateDuty.row + 0.5, steps: plateDuty.steps } }),
      },
      notes,
    };
  });
