import { describe, expect, it } from 'vitest';
import { lineOf } from '@/lib/engine/condition/lines/expected';
import type { Line, LineRule, Rotation } from '@/lib/engine/condition/lines/line';
import { lineTable } from '@/lib/engine/condition/lines/line-table';
import { candidatesFor, coincidence, coincidences } from '@/lib/engine/condition/lines/separation';
import { evaluateMotor } from '@/lib/engine/evaluate';
import type { Motor } from '@/lib/engine/motor';
import { exact } from '@/lib/engine/quantity/quantity';
import { motorOf, READING, scopeOf, study } from '../support/study';

const scope = scopeOf();
const { machine } = evaluateMotor(motorOf(), study());

const rotation: Rotation = { poles: 4, supply: exact(60, 'Hz'), shaft: exact(29.5, 'Hz') };

function line(supply: number, shaft: number, changes: Partial<LineRule> = {}): Line {
  const rule: LineRule = {
    id: `${supply}/${shaft}`,
    spectrum: 'current',
    cause: 'rotor-cage',
    meaning: '',
    relation: '',
    source: '',
    status: 'memory',
    supply,
    shaft,
    ...changes,
  };
  return lineOf(scope, rule, rotation);
}

const given = (resolutionHz: number) => ({ machine, rotation, resolutionHz });

describe('two lines', () => {
  // f₁ − 2 s f₁ = 58 Hz at 1770 r/min; the other stands at 58.5 Hz.
  const sideband = line(-1, 4);
  const other = line(0, 58.5 / 29.5, { cause: 'driven-machine' });

  it('are apart at two steps of the spectrum, and not below', () => {
    expect(coincidence([sideband, other], given(0.2499))).toBeUndefined();
    expect(coincidence([sideband, other], given(0.2501))?.apartHz).toBeCloseTo(0.5, 9);
    expect(coincidence([sideband, other], given(1))?.resolutionHz).toBeCloseTo(0.25, 9);
  });

  it('count the doubt of their distance', () => {
    const doubtful = {
      ...other,
      frequency: { ...other.frequency, parts: { at: [900], by: [0.3] } },
    };
    expect(coincidence([sideband, doubtful], given(0.01))?.neededHz).toBeCloseTo(0.02 + 1.959964 * 0.3, 6);
    // No resolution helps while the doubt is larger than the distance.
    expect(coincidence([sideband, doubtful], given(0.01))?.resolutionHz).toBeUndefined();
  });

  it('part at a speed that a straight line gives', () => {
    // At 1 Hz steps 2 Hz are needed: 4 f_r − 60 − 1.98305 f_r = ± 2 Hz gives 30.74 Hz, above synchronous speed, or 28.76 Hz, twice rated slip.
    const found = coincidence([sideband, other], given(1));
    const slope = 4 - 58.5 / 29.5;
    expect(found?.partedAt).toBeUndefined();
    const nearer = coincidence([sideband, other], given(0.4));
    expect(nearer?.partedAt?.speedRpm).toBeCloseTo((60 * (60 - 0.8)) / slope, 6);
    // Load in proportion to slip, against the rated slip that plate and reading agree upon (1765 r/min stamped: 1.944 %).
    expect(machine.plate.ratedSlip.value).toBeCloseTo(35 / 1800, 2);
    expect(nearer?.partedAt?.loadFraction).toBeCloseTo(
      (1 - (nearer?.partedAt?.speedRpm ?? 0) / 1800) / machine.plate.ratedSlip.value,
      9,
    );
  });

  it('that follow supply and shaft alike never part', () => {
    const twin = coincidence([line(1, 44), line(1, 44, { cause: 'eccentricity' })], given(0.1));
    expect(twin).toMatchObject({ together: true, partedAt: undefined, resolutionHz: undefined });
  });

  it('are compared within one spectrum, and only where they speak for different causes', () => {
    const vibration = line(-1, 4, { spectrum: 'vibration', cause: 'driven-machine' });
    expect(coincidences([sideband, vibration], given(1))).toEqual([]);
    expect(coincidences([sideband, { ...other, cause: 'rotor-cage' }], given(1))).toEqual([]);
    expect(coincidences([sideband, other], given(1))).toHaveLength(1);
  });

  it('are both candidates for what was seen between them', () => {
    expect(candidatesFor(58.2, [sideband, other], 0.3).map((found) => found.id)).toEqual([sideband.id, other.id]);
    expect(candidatesFor(58.2, [sideband, other], 0.1)).toEqual([]);
  });

  it('fold back about zero instead of going negative', () => {
    expect(line(1, -44).frequency.value).toBeCloseTo(44 * 29.5 - 60, 9);
  });
});

/** A geared motor whose wheel shaft turns at nearly the pole-pass frequency: 1779.4 r/min is 1.373 Hz of pole pass. Invented. */
const geared = (changes: Partial<Motor['readings'][number]> = {}): Motor =>
  motorOf({
    plate: { coupling: 'gear', rotorBars: 44, rotorBarsSource: 'estimated', statorSlots: 48 },
    reading: { spectrumResolutionHz: 0.1, ...changes },
    motor: { lineGeometry: { gearTeeth: [12, 259] } },
  });

describe('the table of one motor', () => {
  const table = (motor: Motor) => lineTable(evaluateMotor(motor, study()));

  it('names the sideband and the gear’s wheel as lines that cannot be told apart', () => {
    const { coincide, pole_pass } = table(geared());
    expect(pole_pass?.value).toBeCloseTo(1.3733, 3);
    const pair = coincide.find(({ lines }) => lines.includes('pole-pass-lower') && lines.includes('gear-wheel-lower'));
    expect(pair).toMatchObject({ spectrum: 'current', always: false });
    expect(pair?.parted_at?.load_fraction).toBeGreaterThan(0.02);
  });

  it('parts them at the speed that it names', () => {
    const named = table(geared()).coincide.find(
      ({ lines }) => lines.includes('pole-pass-lower') && lines.includes('gear-wheel-lower'),
    );
    const speed = named?.parted_at?.speed_rpm ?? Number.NaN;
    const slow = Math.min(speed, 1779.4) - 0.2;
    const again = table(geared({ shaftSpeedRpm: speed < 1779.4 ? slow : speed + 0.2 }));
    expect(again.coincide.some(({ lines }) => lines.includes('pole-pass-lower') && lines.includes('gear-wheel-lower'))).toBe(
      false,
    );
  });

  it('says which other counts of bars fit, and which of them only counting can exclude', () => {
    const [observed] = table(geared({ observedLinesHz: [44 * (1779.4 / 60) + 60] })).bar_counts;
    expect(observed?.fits[0]).toMatchObject({ bars: 44, stated: true, off_hz: expect.closeTo(0, 6) });
    const others = observed?.fits.slice(1) ?? [];
    expect(others.filter((fit) => fit.always).map((fit) => fit.bars)).toEqual(expect.arrayContaining([43, 45]));
    // 40 bars on the third order of the field lie the pole-pass frequency away, 1.37 Hz: far enough at this slip.
    expect(others.some((fit) => fit.bars === 40 && fit.relation === 'R f_r + 3 f₁')).toBe(false);
  });

  it('finds a count with another order of the field at low slip, and the load at which they part', () => {
    const light = geared({
      shaftSpeedRpm: 1798,
      inputPowerKw: 4,
      currentA: undefined,
      spectrumResolutionHz: 0.2,
      observedLinesHz: [44 * (1798 / 60) + 60],
    });
    const fits = table(light).bar_counts[0]?.fits ?? [];
    const other = fits.find((fit) => fit.bars === 40 && fit.relation === 'R f_r + 3 f₁');
    expect(other?.always).toBe(false);
    // They lie the pole-pass frequency apart, 0.13 Hz here; it must grow to twice 0.2 Hz and the doubt, which takes more slip.
    expect(other?.parted_at?.speed_rpm).toBeLessThan(1798);
    expect(other?.parted_at?.load_fraction).toBeGreaterThan(0.1);
  });

  it('judges the resolution by the sidebands', () => {
    expect(table(geared()).sidebands_need?.resolution_hz).toBeCloseTo(1.37333 / 5, 5);
    expect(table(geared({ spectrumResolutionHz: 0.5 })).findings.map((found) => found.code)).toContain('lines-resolution-coarse');
    expect(table(geared({ spectrumResolutionHz: undefined })).resolution?.known).toBe('assumed');
  });

  it('falls back on the estimated speed and says so; without any it is empty and names the column', () => {
    const estimated = table(geared({ shaftSpeedRpm: undefined }));
    expect(estimated.findings.map((found) => found.code)).toContain('lines-speed-estimated');
    expect(estimated.speed?.u ?? 0).toBeGreaterThan(table(geared()).speed?.u ?? 1);
    const none = table(motorOf({ readings: [] }));
    expect(none.lines).toEqual([]);
    expect(none.missing[0]).toEqual({ column: 'shaft_speed_rpm', adds: 'every line' });
  });

  it('wants the output frequency of a drive', () => {
    const fed = motorOf({ plate: { driveFed: true }, reading: { readingsAt: 'drive-output' } });
    expect(table(fed).missing[0]?.column).toBe('frequency_hz');
    const read = table(
      // Volts and kilowatts as a drive gives them at two thirds of the frequency, so that the reading is one that a motor can have.
      motorOf({
        plate: { driveFed: true },
        reading: { readingsAt: 'drive-output', frequencyHz: 40, shaftSpeedRpm: 1180, voltageV: 308, inputPowerKw: 16.3 },
      }),
    );
    expect(read.supply_frequency?.value).toBeCloseTo(40, 9);
    expect(read.pole_pass?.value).toBeCloseTo(80 - (4 * 1180) / 60, 6);
  });

  it('takes the reading with the spectrum rather than a later one without', () => {
    const readings = [
      { ...READING, spectrumResolutionHz: 0.1 },
      { ...READING, row: 3, takenAt: '2025-09-01' },
    ];
    expect(table(motorOf({ readings })).row).toBe(2);
  });

  it('has no pole-pass lines for a synchronous machine, no slot lines without bars', () => {
    const ids = table(motorOf({ plate: { machineKind: 'synchronous' }, reading: { shaftSpeedRpm: 1800 } })).lines.map(
      (found) => found.id,
    );
    expect(ids.some((id) => id.startsWith('pole-pass'))).toBe(false);
    expect(table(motorOf()).lines.some((found) => found.id.startsWith('slot-'))).toBe(false);
  });
});
