/** A formula with the value that it had when the workbook was written. */
interface FormulaCell {
  readonly formula: string;
  readonly result: number | string;
}

/** What a cell may hold. Text is written as text: a spreadsheet never takes it for a formula. */
export type Cell = string | number | FormulaCell | null;

/** Letters of a column, the first being 1. */
export function columnName(number: number): string {
  let rest = number;
  let name = '';
  while (rest > 0) {
    name = String.fromCharCode(65 + ((rest - 1) % 26)) + name;
    rest = Math.floor((rest - 1) / 26);
  }
  return name;
}

/** A formula of the sheets with its inputs put in. */
export function filled(cell: string, inputs: Readonly<Record<string, string>>): string {
  return cell.replaceAll(/\{(\w+)\}/g, (_, name: string) => {
    const found = inputs[name];
    if (found === undefined) throw new Error(`a spreadsheet formula has no input ${name}`);
    return found;
  });
}
