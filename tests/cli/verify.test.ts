import { expect, it } from 'vitest';
import { type Content, eventHash, type SignEvent, versionFile } from '@/lib/features/sign-off/content';
import { canonicalJson, sha256 } from '@/lib/platform/hash';
import { scratch, studyCommand } from './run';

const { file } = scratch();
const CONTENT: Content = {
  study: { name: 'Trial “north”', demo: false },
  version: 3,
  drawn: { by: 'P. Planner', at: '2026-02-01T09:00:00.000Z' },
  engine: '0.1.0',
  tables: [],
  settings: { currency: 'USD', as_of: '2026-01-01', horizon_years: 15 },
  prices: { invented: true },
  instruments: [],
  fleet: 'tag\n',
  motors: [],
  results: [],
  programme: { method: 'by-rank', objective: 'net-present-value', value: 0, years: [], left_out: [] },
};
const text = canonicalJson(CONTENT);
const hash = sha256(text);
const said = (kind: SignEvent['kind'], before?: SignEvent): SignEvent => {
  const words = {
    kind,
    who: 'A. Reviewer',
    verified: false as const,
    comment: 'Read.',
    at: '2026-02-02T09:00:00.000Z',
    hash: '',
  };
  return { ...words, hash: eventHash(hash, before?.hash, words) };
};
const signed = said('signed');

it('ends with 0 for the signed version, also after a later rejection, which it names', () => {
  const good = studyCommand('verify', file('signed.json', versionFile(text, hash, [signed])), '--hash', hash.slice(0, 16));
  expect(good).toMatchObject({ code: 0, err: '' });
  expect(good.out).toContain('is the signed version 3');
  expect(good.out).toContain(hash);
  const later = studyCommand('verify', file('later.json', versionFile(text, hash, [signed, said('rejected', signed)])));
  expect(later.code).toBe(0);
  expect(later.out).toContain('rejected later');
});

it('ends with 4 when it is changed, not signed or another than the printed one, and with 2 when there is no file', () => {
  const whole = versionFile(text, hash, [signed]);
  const changed = studyCommand('verify', file('changed.json', whole.replace('P. Planner', 'Q. Planner')), '--format', 'json');
  expect(changed.code).toBe(4);
  expect(JSON.parse(changed.out)).toMatchObject({ state: 'altered' });
  expect(studyCommand('verify', file('open.json', versionFile(text, hash, []))).code).toBe(4);
  expect(studyCommand('verify', file('other.json', whole), '--hash', 'f'.repeat(12)).code).toBe(4);
  expect(studyCommand('verify', 'nowhere.json').code).toBe(2);
  expect(studyCommand('verify', file('short.json', whole), '--hash', 'abc').code).toBe(2);
});
