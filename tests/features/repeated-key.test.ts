import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { typedSettings } from '@/lib/features/setup/setting-fields';
import { repeatedKey } from '@/lib/features/study/repeated-key';
import { readSettings } from '@/lib/features/study/settings';

describe('a key that stands twice', () => {
  it.each([
    ['{"a": 1,\n "b": 2,\n "a": 3}', 'a', [1, 3]],
    ['{"policy": {"at_failure": "repair", "at_failure": "replace"}}', 'policy.at_failure', [1, 1]],
    [
      '{"budget": [1, 2], "rebates": [{"action": "replace"}, {"action": "resize",\n"action": "replace"}]}',
      'rebates.1.action',
      [1, 2],
    ],
    ['{"a": [[{"b": 1}, 2, {"b": 1, "b": 2}]]}', 'a.0.2.b', [1, 1]],
    // As it is meant, whatever the way of writing it.
    ['{"caf\\u00e9": 1, "café": 2}', 'café', [1, 1]],
    ['{"__proto__": 1, "__proto__": 2}', '__proto__', [1, 1]],
    // Braces, quotes, commas and colons inside of texts are no marks.
    ['{"a": "}, {\\"a\\": [1:2]\\\\", "a": ""}', 'a', [1, 1]],
  ] as const)('is found in %s', (text, path, lines) => {
    expect(() => JSON.parse(text)).not.toThrow();
    expect(repeatedKey(text)).toEqual({ path, lines });
  });

  it('is none in what a program writes, in one line or many', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.integer({ min: 0, max: 2 }), (value, indent) => {
        expect(repeatedKey(JSON.stringify(value, undefined, indent))).toBeUndefined();
      }),
    );
    expect(repeatedKey('{"a": {"x": 1}, "b": {"x": 1}, "c": [{"x": 1}, {"x": 1}], "x": "x"}')).toBeUndefined();
  });

  it('is found wherever it is put into an object', () => {
    const entries = fc.uniqueArray(fc.tuple(fc.string(), fc.jsonValue()), {
      minLength: 1,
      maxLength: 6,
      selector: ([key]) => key,
    });
    fc.assert(
      fc.property(entries, fc.nat(), fc.nat(), (list, from, to) => {
        const again = list[from % list.length]?.[0] ?? '';
        const members = list.map(([key, value]) => `${JSON.stringify(key)}:${JSON.stringify(value)}`);
        members.splice(to % (members.length + 1), 0, `${JSON.stringify(again)}: null`);
        expect(repeatedKey(`{${members.join(',')}}`)?.path).toBe(again);
      }),
    );
  });

  it('ends the reading of settings with its place and lines, and a lone one does not', () => {
    const read = readSettings('\ufeff{\n "discount_rate": 0.08,\n "tax_rate": 0.2,\n "discount_rate": 0.05\n}');
    expect(read).toEqual({
      ok: false,
      problem: {
        code: 'repeated-key',
        key: 'discount_rate',
        text: 'discount_rate stands twice, in lines 2 and 4, and only one can hold.',
        remedy: 'Keep the one that is meant, and remove the other.',
      },
    });
    expect(readSettings('{"discount_rate": 0.08, "tax_rate": 0.2}').ok).toBe(true);
  });

  it('is refused in a field of the setup page that takes JSON', () => {
    const typed = typedSettings(new Map([['rebates', '[{"action": "replace", "per_kw": 5, "per_kw": 50}]']]));
    expect(JSON.stringify(typed)).toContain('0.per_kw stands twice, in line 1, and only one can hold. Keep the one');
  });
});
