import { describe, expect, it } from 'vitest';
import { Spool } from '@/lib/cli/spool';

/** Texts end to end, as a block of results brings them. */
function block(...texts: string[]): readonly [Uint8Array, number[]] {
  const ends: number[] = [];
  let end = 0;
  for (const text of texts) {
    end += Buffer.byteLength(text);
    ends.push(end);
  }
  return [Buffer.from(texts.join('')), ends];
}

const textOf = (spool: Spool, number: number): string => Buffer.from(spool.get(number)).toString('utf8');

describe('the spool', () => {
  it('gives back each text by its number, empty ones and letters of several bytes too', () => {
    const spool = new Spool();
    spool.add(...block('one', '', 'Ω at 40 °C'));
    spool.add(...block());
    spool.add(...block('four'));
    expect([0, 1, 2, 3].map((number) => textOf(spool, number))).toEqual(['one', '', 'Ω at 40 °C', 'four']);
    expect(() => spool.get(4)).toThrow('nothing is spooled under 4');
    spool.close();
  });

  it('keeps in a file what is too much for memory, and gives it back alike', () => {
    const spool = new Spool();
    const megabytes = (letter: string) => letter.repeat(1 << 20);
    for (let at = 0; at < 40; at++) spool.add(...block(megabytes('a'), `between ${at}`, megabytes('z')));
    for (const at of [39, 0, 33, 31, 32]) {
      expect(textOf(spool, 3 * at) === megabytes('a')).toBe(true);
      expect(textOf(spool, 3 * at + 1)).toBe(`between ${at}`);
      expect(textOf(spool, 3 * at + 2) === megabytes('z')).toBe(true);
    }
    spool.close();
  });
});
