import Papa, { type ParseResult } from 'papaparse';
import { columnByName } from './columns';
import { HEAD_ROWS } from './head-row';
import { FileFault } from './issue-codes';
import { type Delimiter, LIMITS, type TableBlocks, type TableRow } from './table';

export interface CsvOptions {
  /** Told when known; otherwise found out from the header line. */
  readonly delimiter?: Delimiter;
  /** Name of the encoding as browsers know it; UTF-8 when absent. */
  readonly encoding?: string;
}

const RECORD_CHARACTERS_MAX = 2 * LIMITS.columns * (LIMITS.cellCharacters + 3);

/** Text of a file, decoded strictly: bytes that do not belong to the encoding are refused, never replaced. */
export async function* decodeText(
  chunks: AsyncIterable<Uint8Array>,
  name: string,
  encoding: string | undefined,
  rowsSoFar: () => number,
): AsyncGenerator<string> {
  const decoder = strictDecoder(encoding);
  const wrong = (): FileFault =>
    new FileFault('wrong-encoding', { name, words: decoder.encoding.toUpperCase(), otherRow: rowsSoFar() });
  let first = true;
  for await (const chunk of chunks) {
    if (first && encoding === undefined && isUtf16(chunk)) throw new FileFault('utf-16-file', { name });
    first = false;
    if (!decoder.encoding.startsWith('utf-16') && chunk.includes(0)) throw new FileFault('binary-file', { name });
    yield guardText(
      attempt(() => decoder.decode(chunk, { stream: true }), wrong),
      name,
    );
  }
  yield guardText(
    attempt(() => decoder.decode(), wrong),
    name,
  );
}

function strictDecoder(encoding: string | undefined): TextDecoder {
  return attempt(
    () => new TextDecoder(encoding ?? 'utf-8', { fatal: true }),
    () => new FileFault('unknown-encoding', { value: encoding ?? '' }),
  );
}

function attempt<T>(run: () => T, fault: () => FileFault): T {
  try {
    return run();
  } catch {
    throw fault();
  }
}

function guardText(text: string, name: string): string {
  if (text.includes('\0')) throw new FileFault('binary-file', { name });
  return text;
}

/** A byte order mark of UTF-16, or ASCII text with a zero byte at every other place. */
function isUtf16(bytes: Uint8Array): boolean {
  const [a, b] = bytes;
  if ((a === 0xff && b === 0xfe) || (a === 0xfe && b === 0xff)) return true;
  const head = bytes.subarray(0, 64);
  const zeros = (from: number): number => head.filter((byte, at) => at % 2 === from && byte === 0).length;
  const half = Math.floor(head.length / 2);
  return half >= 2 && ((zeros(1) >= half - 1 && zeros(0) === 0) || (zeros(0) >= half - 1 && zeros(1) === 0));
}

/**
 * Reads delimited text into rows, block by block. Blank lines count as rows and come out as rows without cells.
 * A row whose quotes do not close properly is marked; a quote that never closes is a fault of the file.
 */
export async function* readCsv(
  texts: AsyncIterable<string>,
  name: string,
  options: CsvOptions,
  onDelimiter: (delimiter: Delimiter) => void,
): TableBlocks {
  let pending = '';
  let tooShort = 0;
  let row = 1;
  let parser: RecordParser | undefined;
  for await (const text of texts) {
    pending += text;
    // A record that is still open is parsed again only after as much text again has come: linear cost.
    if (pending.length < tooShort) continue;
    if (parser === undefined) {
      const header = headerLine(pending);
      if (header === undefined) {
        if (pending.length > RECORD_CHARACTERS_MAX)
          throw new FileFault('row-too-long', { otherRow: 1, limit: RECORD_CHARACTERS_MAX });
        tooShort = pending.length * 2;
        continue;
      }
      parser = startParser(pending, header, options, onDelimiter);
    }
    const { rows, rest } = parser(pending, row, false);
    pending = rest;
    tooShort = rest.length * 2;
    row += rows.length;
    if (rest.length > RECORD_CHARACTERS_MAX) throw new FileFault('row-too-long', { otherRow: row, limit: RECORD_CHARACTERS_MAX });
    if (rows.length > 0) yield rows;
  }
  if (pending.trim() === '' && row === 1) throw new FileFault('empty-file', { name });
  if (pending === '') return;
  parser ??= startParser(pending, pending, options, onDelimiter);
  yield parser(pending, row, true).rows;
}

type RecordParser = (text: string, row: number, last: boolean) => { readonly rows: TableRow[]; readonly rest: string };

function startParser(
  text: string,
  header: string,
  options: CsvOptions,
  onDelimiter: (delimiter: Delimiter) => void,
): RecordParser {
  const delimiter = options.delimiter ?? detectDelimiter(header, text);
  onDelimiter(delimiter);
  // Line ends are \n with or without \r; a file with \r alone is one of the old kind.
  const newline = !text.includes('\n') && text.includes('\r') ? '\r' : '\n';
  const papa = new Papa.Parser({ delimiter, newline, quoteChar: '"' });
  return (part, row, last) => {
    const result: ParseResult<string[]> = papa.parse(part, 0, !last);
    const malformed = new Set<number>();
    for (const error of result.errors) {
      if (error.row === undefined || error.row >= result.data.length) continue;
      if (error.code === 'MissingQuotes') throw new FileFault('unclosed-quote', { otherRow: row + error.row });
      malformed.add(error.row);
    }
    const rows = result.data.map((cells, at) => tableRow(row + at, cells, malformed.has(at)));
    return { rows, rest: last ? '' : part.slice(result.meta.cursor) };
  };
}

function tableRow(row: number, cells: string[], malformed: boolean): TableRow {
  const final = cells.at(-1);
  if (final?.endsWith('\r')) cells[cells.length - 1] = final.slice(0, -1);
  if (malformed) return { row, cells, malformed };
  return { row, cells };
}

/** The first line, once it is complete. */
function headerLine(text: string): string | undefined {
  let quoted = false;
  for (let at = 0; at < text.length; at++) {
    const char = text[at];
    if (char === '"') quoted = !quoted;
    else if (!quoted && (char === '\n' || (char === '\r' && at + 1 < text.length))) return text.slice(0, at);
  }
  return undefined;
}

/** The lines in which the column names may stand: the first one, or one below a title. */
export function headLines(text: string): string[] {
  return text.split(/\r\n|\n|\r/, HEAD_ROWS);
}

/** Comma or semicolon, whichever makes more known column names of a line among the first; failing that, more cells of the first. */
export function detectDelimiter(header: string, text = header): Delimiter {
  const known = (cells: readonly string[]): number => cells.filter((cell) => columnByName(cell) !== undefined).length;
  const score = (delimiter: Delimiter): number => {
    const most = Math.max(...[header, ...headLines(text)].map((line) => known(cellsOf(line, delimiter))));
    return most * LIMITS.columns + cellsOf(header, delimiter).length;
  };
  return score(';') > score(',') ? ';' : ',';
}

function cellsOf(line: string, delimiter: Delimiter): string[] {
  return line.split(delimiter).map((cell) => cell.replaceAll('"', ''));
}
