import { formatAsStated } from '@/lib/platform/format';
import type { TariffFile } from '../study/tariff-schema';
import { TARIFF_FIELDS, TARIFF_ROWS, type TariffCell, tariffCells } from './tariff-cells';

/** Units that are one, and no hint of how a cell is written. */
const UNIT = /^(?:per|k[WV]|%|a )/;

/** A tariff of the settings file as a person reads it, a line for each price, block, tax and kind of use, in the words of the form. */
export function tariffLines(file: TariffFile): readonly string[] {
  const cells = tariffCells(file);
  const rows = TARIFF_ROWS.flatMap(({ part, title, cells: columns }) =>
    (file[part] ?? []).map((_, index) => {
      const of = (name: string) => cells[`${part}.${index}.${name}`];
      const unit = of('unit') ?? '';
      const said = columns
        .filter(({ name }) => name !== 'unit')
        .flatMap((cell) => phrase({ ...cell, unit: cell.unit.replace(/\bunit\b|kW or kVA/, unit) }, of(cell.name)));
      return `${title}: ${said.join(', ')}`;
    }),
  );
  const single = (fields: readonly TariffCell[]) => fields.flatMap((cell) => phrase(cell, cells[cell.name]));
  const other = single(TARIFF_FIELDS.other);
  const use = single(TARIFF_FIELDS.usage);
  return [
    ...(file.name === undefined ? [] : [file.name]),
    ...rows,
    ...(other.length > 0 ? [`Other charges: ${other.join(', ')}`] : []),
    ...use.map((words) => words.charAt(0).toUpperCase() + words.slice(1)),
  ];
}

function phrase({ name, label, unit, kind, words }: TariffCell, value: string | undefined): string[] {
  if (value === undefined || value === '') return [];
  const said = words?.find((word) => word.value === value)?.label ?? (kind === 'number' ? formatAsStated(Number(value)) : value);
  if (name === 'name') return [said];
  const behind = UNIT.test(unit) ? ` ${unit}` : '';
  if (kind === 'use') return [`${label.toLowerCase()},${behind}: ${said.replaceAll('\n', ' | ')}`];
  return [`${label.toLowerCase()} ${said}${behind}`];
}
