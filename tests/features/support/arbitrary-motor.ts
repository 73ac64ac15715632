import fc from 'fast-check';
import type { Motor } from '@/lib/engine/motor';
import type { Column, ColumnKind } from '@/lib/features/fleet/column';
import { COLUMNS } from '@/lib/features/fleet/columns';
import { instantOf } from '@/lib/features/fleet/taken-at';

/** Values of a column's kind, made from the column's own declaration, so that a new column is tested without a line here. */
function valueFor(kind: ColumnKind): fc.Arbitrary<unknown> {
  switch (kind.type) {
    case 'text':
      return fc
        .string({ minLength: 1, maxLength: 20, unit: 'grapheme' })
        .filter((text) => !text.includes('\0') && text.trim() !== '');
    case 'letter':
      return fc.constantFrom('A', 'G', 'Z');
    case 'word':
      return fc.constantFrom(...kind.words);
    case 'yes-no':
      return fc.boolean();
    case 'number':
      if (kind.oneOf) return fc.constantFrom(...kind.oneOf);
      if (kind.unit === 'currency') return fc.integer({ min: 0, max: 1e12 }).map((minor) => Number(`${minor}e-2`));
      if (kind.whole) return fc.integer({ min: 1, max: 40 }).map((whole) => (kind.even ? 2 * whole : whole));
      if (kind.limits) return fc.double({ min: kind.limits[0], max: kind.limits[1], noNaN: true }).map(withoutMinusZero);
      return kind.rated === 'positive'
        ? fc.double({ min: Number.MIN_VALUE, noNaN: true, noDefaultInfinity: true })
        : fc.double({ noNaN: true, noDefaultInfinity: true }).map(withoutMinusZero);
    case 'date':
      return fc.constantFrom('2024-03-14', '2025-01-02T09:30', '2025-01-02T09:30:15.25+02:00', '2023-12-31T23:59Z');
    case 'number-list':
      return fc.array(fc.double({ min: 1e-3, max: 1e4, noNaN: true }), { minLength: 1, maxLength: 4 });
    case 'teeth':
      return fc.tuple(fc.integer({ min: 1, max: 200 }), fc.integer({ min: 1, max: 200 }));
    case 'bearing':
      return fc.record({
        balls: fc.integer({ min: 1, max: 30 }),
        ballMm: fc.double({ min: 0.1, max: 10, noNaN: true }),
        pitchMm: fc.double({ min: 11, max: 100, noNaN: true }),
        angleDeg: fc.double({ min: 0, max: 89, noNaN: true }).map(withoutMinusZero),
      });
    case 'duty':
      return duty;
    case 'passed-over':
      return fc.constant(undefined);
  }
}

const withoutMinusZero = (value: number): number => (value === 0 ? 0 : value);
const duty = fc.array(
  fc.record({
    fraction: fc.double({ min: 0, max: 2, noNaN: true }).map(withoutMinusZero),
    hoursPerYear: fc.double({ min: 0, max: 2000, noNaN: true }).map(withoutMinusZero),
  }),
  { minLength: 1, maxLength: 3 },
);
const triple = fc.tuple(...[0, 1, 2].map(() => fc.double({ min: 1, max: 1000, noNaN: true })));
const sometimes = <T>(value: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> => fc.option(value, { nil: undefined });

function fields(of: Column['target']['of']): Record<string, fc.Arbitrary<unknown>> {
  return Object.fromEntries(
    COLUMNS.flatMap(({ target, kind }) => (target.of === of && 'key' in target ? [[target.key, sometimes(valueFor(kind))]] : [])),
  );
}

const reading = fc.record({
  ...fields('reading'),
  readingsAt: fc.constantFrom('motor', 'starter'),
  readingCondition: fc.constantFrom('coupled', 'uncoupled'),
  voltagesV: sometimes(triple),
  voltageV: sometimes(fc.double({ min: 1, max: 1000, noNaN: true })),
  currentsA: sometimes(triple),
  currentA: sometimes(fc.double({ min: 1, max: 1000, noNaN: true })),
  resistancesOhm: sometimes(triple),
  duty: sometimes(duty),
});

/** Any motor that the sheet can state, with up to three readings at different times and of different content. */
export const arbitraryMotor: fc.Arbitrary<Motor> = fc
  .record({
    own: fc.record(fields('motor')),
    tag: fc.string({ minLength: 1, maxLength: 12 }).filter((text) => text.trim() !== ''),
    site: fc.constantFrom('', 'North works', 'Süd'),
    plate: fc.record({
      ...fields('plate'),
      ratedPowerKw: fc.double({ min: 0.1, max: 5000, noNaN: true }),
      ratedVoltageV: fc.double({ min: 100, max: 15_000, noNaN: true }),
      ratedPowerUnit: fc.constantFrom('kW', 'hp'),
      status: fc.constantFrom('running', 'failed', 'spare', 'retired'),
      machineKind: fc.constantFrom('cage', 'wound-rotor', 'synchronous'),
    }),
    geometry: sometimes(fc.record(fields('geometry'))),
    plateDuty: sometimes(duty),
    readings: fc.uniqueArray(reading, { maxLength: 3, selector: (one) => String(Reflect.get(one, 'takenAt')) }),
    plateRow: fc.integer({ min: 1, max: 8 }),
  })
  .map(({ own, tag, site, plate, geometry, plateDuty, readings, plateRow }) => {
    const numbered = readings.map((one, at) => ({ ...one, row: 2 * at + 2 }));
    const motor: Motor = {
      site: '',
      tag: '',
      plate: { ratedPowerKw: 1, ratedVoltageV: 1, ratedPowerUnit: 'kW', status: 'running', machineKind: 'cage' },
      readings: [],
    };
    const some = geometry !== undefined && Object.values(geometry).some((value) => value !== undefined);
    Object.assign(motor, own, { tag, site, lineGeometry: some ? geometry : undefined, readings: sortedReadings(numbered) });
    Object.assign(motor.plate, plate);
    if (plateDuty !== undefined) Object.assign(motor, { plateDuty: { row: 2 * plateRow + 1, steps: plateDuty } });
    return motor;
  });

function sortedReadings(readings: readonly { readonly row: number }[]): readonly { readonly row: number }[] {
  const at = (one: object): number => {
    const takenAt: unknown = Reflect.get(one, 'takenAt');
    return typeof takenAt === 'string' ? instantOf(takenAt) : Number.NEGATIVE_INFINITY;
  };
  return readings.toSorted((a, b) => (at(a) === at(b) ? a.row - b.row : at(a) - at(b)));
}
