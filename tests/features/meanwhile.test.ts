import { describe, expect, it } from 'vitest';
import { asWhole, changedMeanwhile, joinCells, OPENED_ON, openedOn } from '@/lib/features/study/meanwhile';

const map = (cells: Readonly<Record<string, string>>) => new Map(Object.entries(cells));

describe('a form that was open while somebody else saved', () => {
  it('changes only what was touched in it, and keeps what the other saved', () => {
    const { cells, clashes } = joinCells(
      map({ price: '0.2', rate: '0.08' }),
      map({ price: '0.1', rate: '0.08' }),
      map({ price: '0.1', rate: '0.05' }),
    );
    expect(Object.fromEntries(cells)).toEqual({ price: '0.2', rate: '0.05' });
    expect(clashes.size).toBe(0);
  });

  it('says where both changed the same, each to another value', () => {
    const { clashes } = joinCells(map({ price: '0.2' }), map({ price: '0.1' }), map({ price: '0.3' }));
    expect(Object.fromEntries(clashes)).toEqual({ price: '0.3' });
  });

  it('has nothing to say where both came to the same value, or blanks alone differ', () => {
    expect(joinCells(map({ price: '0.3 ' }), map({ price: '0.1' }), map({ price: '0.3' })).clashes.size).toBe(0);
    expect(joinCells(map({ price: ' 0.1' }), map({ price: '0.1' }), map({ price: '0.3' })).cells.get('price')).toBe('0.3');
  });

  it('an emptied cell is a change, and so is one filled for the first time', () => {
    const joined = joinCells(map({ price: '', rate: '0.1' }), map({ price: '0.1', rate: '' }), map({ price: '0.1' }));
    expect(Object.fromEntries(joined.cells)).toEqual({ price: '', rate: '0.1' });
  });

  it('takes a form that does not say on what it was opened at its word', () => {
    const { cells, clashes } = joinCells(map({ price: '0.2' }), undefined, map({ price: '0.3' }));
    expect(cells.get('price')).toBe('0.2');
    expect(clashes.size).toBe(0);
    expect(changedMeanwhile(undefined, map({ price: '0.3' }))).toBe(false);
  });
});

describe('what a form was opened on', () => {
  const sent = (text: string) => {
    const form = new FormData();
    form.set(OPENED_ON, text);
    return openedOn(form);
  };

  it('comes back as it was sent; nonsense counts as nothing said', () => {
    expect(sent(JSON.stringify({ price: '0.1', odd: 1 }))).toEqual(map({ price: '0.1' }));
    for (const text of ['', 'x', 'null', '3']) expect(sent(text)).toBeUndefined();
    expect(openedOn(new FormData())).toBeUndefined();
  });

  it('is compared as a whole, both ways, and an empty one is something seen', () => {
    expect(changedMeanwhile(map(asWhole([1, 'a'])), map(asWhole([1, 'a'])))).toBe(false);
    expect(changedMeanwhile(map(asWhole([1, 'a'])), map(asWhole([1, 'b'])))).toBe(true);
    expect(changedMeanwhile(map({}), map({ price: '0.1' }))).toBe(true);
    expect(changedMeanwhile(map({ price: '0.1' }), map({}))).toBe(true);
    expect(changedMeanwhile(map({}), map({}))).toBe(false);
  });
});
