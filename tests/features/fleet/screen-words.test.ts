import { describe, expect, test } from 'vitest';
import { CONDITION } from '@/lib/engine/condition/findings';
import { BENCH_COLUMNS } from '@/lib/features/bench/columns';
import { findingsInLabels, inLabels } from '@/lib/features/fleet/screen-words';

describe('names of columns on a screen', () => {
  test.each([
    ['The column hours_per_year is empty.', 'The column “Hours per year, h” is empty.'],
    // Money has no unit but that of the study.
    ['Enter quoted_price.', 'Enter “Quoted price”.'],
    ['rated_power_hp is −3 hp.', '“Rated power in hp” is −3 hp.'],
    // Not a column: a name that a person chose, and a word of one piece.
    ['The load curve my_curve, and its schedule.', 'The load curve my_curve, and its schedule.'],
    ['input_power_kws', 'input_power_kws'],
  ])('%s', (text, shown) => expect(inLabels(text)).toBe(shown));

  test('a bench sheet has labels of its own', () => {
    expect(inLabels('current_a in row 6 (load) is 23.37', BENCH_COLUMNS)).toBe('“Current, A” in row 6 (load) is 23.37');
  });

  test('a finding keeps its code and evidence', () => {
    const found = CONDITION.make('bars-unknown', {});
    const [shown] = findingsInLabels([found]);
    expect(shown).toEqual({ ...found, cause: 'The column “Rotor bars” is empty.' });
  });
});
