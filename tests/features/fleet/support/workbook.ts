import ExcelJS from 'exceljs';
import { zipOf } from './zip';

/** A workbook with these rows on its first sheet, and a second sheet that must not be read. */
export async function workbook(rows: readonly (readonly ExcelJS.CellValue[])[], date1904 = false): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook();
  book.properties.date1904 = date1904;
  const sheet = book.addWorksheet('Fleet');
  for (const row of rows) sheet.addRow([...row]);
  book.addWorksheet('Other').addRow(['tag', 'not', 'this']);
  return new Uint8Array(await book.xlsx.writeBuffer());
}

const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>';
const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const RELATIONS = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';

/** A workbook whose first sheet is written by hand, for what no library writes. */
export function rawWorkbook(sheetData: string, extra: Parameters<typeof zipOf>[0] = []): Uint8Array {
  const part = (path: string, xml: string) => ({ path, data: Buffer.from(`${HEAD}${xml}`) });
  return zipOf([
    part(
      '[Content_Types].xml',
      '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="xml" ContentType="application/xml"/></Types>',
    ),
    part(
      'xl/workbook.xml',
      `<workbook xmlns="${MAIN}" xmlns:r="${RELATIONS}"><sheets><sheet name="A" sheetId="1" r:id="rId7"/></sheets></workbook>`,
    ),
    part(
      'xl/_rels/workbook.xml.rels',
      `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId7" Type="${RELATIONS}/worksheet" Target="worksheets/first.xml"/></Relationships>`,
    ),
    part('xl/worksheets/first.xml', `<worksheet xmlns="${MAIN}"><sheetData>${sheetData}</sheetData></worksheet>`),
    ...extra,
  ]);
}

/** The beginning of a compound file, and in its directory the stream that [MS-OFFCRYPTO] 2.3.4.4 names. */
export function lockedWorkbook(): Buffer {
  const header = Buffer.alloc(512);
  Buffer.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]).copy(header);
  return Buffer.concat([
    header,
    Buffer.from('Root Entry', 'utf16le'),
    Buffer.alloc(100),
    Buffer.from('EncryptedPackage', 'utf16le'),
  ]);
}
