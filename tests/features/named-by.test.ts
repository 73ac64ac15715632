import { expect, test } from 'vitest';
import { namedBy } from '@/lib/features/plan/words';

test('motors go by their tags where all stand at one site, and by site and tag where two sites may have the same tag', () => {
  const one = { site: 'North', tag: 'A-1' };
  const same = { site: 'North', tag: 'A-2' };
  const other = { site: 'South', tag: 'A-1' };
  expect([one, same].map(namedBy([one, same]))).toEqual(['A-1', 'A-2']);
  expect([one, other].map(namedBy([one, other]))).toEqual(['North / A-1', 'South / A-1']);
  expect(namedBy([])(one)).toBe('A-1');
});
