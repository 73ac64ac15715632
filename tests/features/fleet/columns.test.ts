import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { blankSheet, blankWorkbook, requiredWords } from '@/lib/features/fleet/blank-sheet';
import { COLUMNS, columnByName, RETURNED_COLUMNS, unitOrWords } from '@/lib/features/fleet/columns';
import { parseFleet } from '@/lib/features/fleet/parse';
import { mustParse } from './support/sheet';

describe('the columns of the fleet sheet', () => {
  it('are listed on the nomenclature page with the same unit, meaning and duty', () => {
    const page = readFileSync(new URL('../../../docs/nomenclature.md', import.meta.url), 'utf8');
    const listed = page.split('\n').filter((line) => /^\| `[a-z0-9_]{3,}` \|/.test(line) && line.split('|').length === 6);
    const declared = [...COLUMNS, ...RETURNED_COLUMNS].map(
      (column) => `| \`${column.name}\` | ${unitOrWords(column)} | ${column.meaning} | ${requiredWords(column)} |`,
    );
    expect([...listed].sort()).toEqual(declared.sort());
  });

  it('have unique names in small letters, found whatever the case and spaces of a heading', () => {
    const names = COLUMNS.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    expect(names.filter((name) => !/^[a-z][a-z0-9_]*$/.test(name))).toEqual([]);
    expect(columnByName('  Rated_Power_KW ')?.name).toBe('rated_power_kw');
    expect(columnByName('rated power kw')).toBeUndefined();
  });
});

describe('the blank sheet', () => {
  it.each([
    { delimiter: ',', decimal: '.' },
    { delimiter: ';', decimal: ',' },
  ] as const)('reads without an error or a doubt under $delimiter and $decimal', async (dialect) => {
    const parsed = mustParse(await parseFleet({ name: 'blank.csv', text: blankSheet(dialect) }, { decimal: dialect.decimal }));
    expect(parsed.rejected).toEqual([]);
    expect(parsed.warnings).toEqual([]);
    expect(parsed.header).toEqual(COLUMNS.map(({ name }) => name));
    expect(parsed.rows).toBe(3);
    expect(parsed.motors.every(({ motor }) => motor.tag.startsWith('EXAMPLE') && motor.description?.startsWith('Example'))).toBe(
      true,
    );
  });

  it('comes as a workbook with the same motors', async () => {
    const fromBook = mustParse(await parseFleet({ name: 'blank.xlsx', data: await blankWorkbook() }));
    const fromText = mustParse(await parseFleet({ name: 'blank.csv', text: blankSheet() }));
    expect(fromBook.motors).toEqual(fromText.motors);
    expect(fromBook.warnings).toEqual([]);
  });
});
