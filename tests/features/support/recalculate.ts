import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import ExcelJS from 'exceljs';

/** A changed assumption, by its name. */
export type Change = readonly [name: string, value: number];

/**
 * Takes every stored value out of a workbook's formulas, changes assumptions, and has LibreOffice work all of it out anew: once for each
 * set of changes, in one run of the program.
 * @throws Error that names the package when LibreOffice is not there.
 */
export async function recalculated(bytes: Buffer, changes: readonly (readonly Change[])[]): Promise<ExcelJS.Workbook[]> {
  const folder = mkdtempSync(path.join(tmpdir(), 'lossbook-calc-'));
  try {
    const files = await Promise.all(
      changes.map(async (set, index) => {
        const file = path.join(folder, `in-${index}.xlsx`);
        writeFileSync(file, await emptied(bytes, set));
        return file;
      }),
    );
    const out = path.join(folder, 'out');
    const run = spawnSync(
      'soffice',
      [
        '--headless',
        `-env:UserInstallation=${pathToFileURL(path.join(folder, 'profile')).href}`,
        '--convert-to',
        'xlsx:Calc MS Excel 2007 XML',
        '--outdir',
        out,
        ...files,
      ],
      { encoding: 'utf8', timeout: 120_000 },
    );
    if (run.error && 'code' in run.error && run.error.code === 'ENOENT')
      throw new Error(
        'LibreOffice is missing: install the package "libreoffice-calc" (Debian, Ubuntu), so that workbooks can be recalculated.',
      );
    if (run.status !== 0) throw new Error(`LibreOffice ended with ${run.status ?? run.signal}: ${run.stderr}`);
    return await Promise.all(
      changes.map(async (_, index) => {
        const book = new ExcelJS.Workbook();
        await book.xlsx.readFile(path.join(out, `in-${index}.xlsx`));
        return book;
      }),
    );
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function emptied(bytes: Buffer, changes: readonly Change[]): Promise<Buffer> {
  const book = await opened(bytes);
  for (const sheet of book.worksheets)
    sheet.eachRow((row) =>
      row.eachCell((cell) => {
        if (cell.formula) cell.value = { formula: cell.formula };
      }),
    );
  for (const [name, value] of changes) {
    const [range] = book.definedNames.getRanges(name).ranges;
    const found = /^'?([^'!]+)'?!\$?([A-Z]+)\$?(\d+)$/.exec(range ?? '');
    const sheet = book.getWorksheet(found?.[1] ?? '');
    if (!found || !sheet) throw new Error(`the workbook has no name ${name}`);
    sheet.getCell(`${found[2]}${found[3]}`).value = value;
  }
  return Buffer.from(await book.xlsx.writeBuffer());
}

/** A workbook from its bytes. */
export async function opened(bytes: Buffer): Promise<ExcelJS.Workbook> {
  const book = new ExcelJS.Workbook();
  // The library's own type of a buffer is older than Node's.
  await book.xlsx.load(bytes as unknown as Parameters<typeof book.xlsx.load>[0]);
  return book;
}

/** The rows of a sheet below its head, by the names in the head; a formula stands as its value. */
export function rowsOf(book: ExcelJS.Workbook, name: string): Readonly<Record<string, string | number | undefined>>[] {
  const sheet = book.getWorksheet(name);
  if (!sheet) throw new Error(`the workbook has no sheet ${name}`);
  const heads: string[] = [];
  sheet.getRow(1).eachCell((cell, column) => {
    heads[column] = cell.text;
  });
  const rows: Readonly<Record<string, string | number | undefined>>[] = [];
  sheet.eachRow((row, number) => {
    if (number === 1) return;
    const found: Record<string, string | number | undefined> = {};
    row.eachCell((cell, column) => {
      const value = cell.result ?? cell.value;
      found[heads[column] ?? ''] = typeof value === 'number' || typeof value === 'string' ? value : undefined;
    });
    rows.push(found);
  });
  return rows;
}
