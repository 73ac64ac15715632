import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { leastSquares } from '@/lib/engine/estimate/least-squares';
import { chanceOf } from '@/lib/engine/load/joint';
import { correctingKvar } from '@/lib/engine/options/measures/power-factor';
import { rmsLoad } from '@/lib/engine/options/resize-notes';
import { checkCases, given, type PublishedCase } from './cases/published';

const segments = (c: PublishedCase) => c.inputs.segments?.value as [number, number | 'reversal'][];
const list = (c: PublishedCase, name: string): number[] => c.inputs[name]?.value as number[];

/** The mean of several readings of one thing, by the search that fits the machine to its evidence. */
function weightedMean(x: readonly number[], u: readonly number[]) {
  const fit = leastSquares({
    start: Float64Array.of(0),
    observed: Float64Array.from(x),
    u: Float64Array.from(u),
    predict: (unknowns, out) => {
      out.fill(unknowns[0] as number);
      return true;
    },
    differentiate: (_, jacobian) => {
      jacobian.fill(1);
      return true;
    },
  });
  if (!fit) throw new Error('no fit');
  return {
    mean: fit.unknowns[0] as number,
    u: Math.hypot(...u.map((each, i) => each * (fit.gain[i] as number))),
    chiSquared: fit.chiSquared,
  };
}

checkCases('./further.json', {
  'F-MEH-6.4': (c) => {
    const kvar = correctingKvar(given(c, 'p_in'), given(c, 'pf1'), given(c, 'pf2'));
    return { kvar, kvar_per_phase: kvar / 3 };
  },
  'J-DUB-4.2': (c) => {
    const omega = (given(c, 'speed') * Math.PI) / 30;
    const steps = segments(c).map(([seconds, torque]) => ({
      hours: { value: seconds },
      point: { loadFraction: { value: torque === 'reversal' ? (given(c, 'inertia') * 2 * omega) / seconds : torque } },
    }));
    const torque = rmsLoad(steps as unknown as Parameters<typeof rmsLoad>[0]);
    return { t_rms: torque, p_rating: (torque * omega) / 1000 };
  },
  'H-DAG-CHI2': (c) =>
    Object.fromEntries(list(c, 'dof').map((degrees) => [`p${degrees}`, chanceOf(given(c, 'chi2_per_dof') * degrees, degrees)])),
  'H-DOR-WM': (c) => {
    const { mean, u, chiSquared } = weightedMean(list(c, 'x'), list(c, 'u'));
    const birge = Math.sqrt(chiSquared / (list(c, 'x').length - 1));
    return { mean, u_mean: u, chi2: chiSquared, birge, u_scaled: u * birge };
  },
});

describe('cases left out', () => {
  const folder = fileURLToPath(new URL('./cases/', import.meta.url));
  const read = (file: string): unknown => JSON.parse(readFileSync(`${folder}${file}`, 'utf8'));
  const left = read('later.json') as Readonly<Record<string, string>>;

  it('have a reason each', () => {
    for (const [id, reason] of Object.entries(left)) expect(reason, id).toMatch(/^\S+( \S+){4}/);
  });

  it('stand in no file of cases that are checked', () => {
    const checked = readdirSync(folder)
      .filter((file) => file.endsWith('.json') && file !== 'later.json')
      .map(read)
      .filter((content) => Array.isArray(content))
      .flat()
      .map((published: { readonly id: string }) => published.id);
    expect(checked.length).toBeGreaterThan(50);
    expect(checked.filter((id) => id in left)).toEqual([]);
  });
});
