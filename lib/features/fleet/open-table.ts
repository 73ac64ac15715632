import { createReadStream } from 'node:fs';
import { open, readFile } from 'node:fs/promises';
import { FileFault, type FileProblemCode } from './issue-codes';
import { type Delimiter, LIMITS, MEGABYTE, type SheetSource, type TableBlocks } from './table';
import { type CsvOptions, decodeText, readCsv } from './table-csv';

interface OpenTable {
  readonly kind: 'csv' | 'xlsx';
  /** Name for messages: the file's own, without its folder. */
  readonly name: string;
  readonly blocks: TableBlocks;
  /** Known once the first block has come. */
  readonly delimiter: () => Delimiter;
}

const FILE_BYTES_MAX = LIMITS.fileMegabytes * MEGABYTE;
const PIECE = 1 << 18;
const WORKBOOK_NAME = /\.(?:xls[xmb]?|ods)$/i;
/** Name of the stream that holds a workbook locked by a password ([MS-OFFCRYPTO], 2.3.4.4), as the directory of the file writes it. */
const LOCKED = Buffer.from('EncryptedPackage', 'utf16le');
const MARKUP = 0x3c;
const NO_TEXT: ReadonlySet<FileProblemCode> = new Set(['binary-file', 'wrong-encoding', 'utf-16-file']);

/** The name by which messages call a source. */
export function sourceName(source: SheetSource): string {
  return 'path' in source ? (source.name ?? source.path.split(/[\\/]/).at(-1) ?? source.path) : source.name;
}

/** Opens a sheet of either kind; which one it is, its first bytes tell, not its name. */
export async function openTable(source: SheetSource, options: CsvOptions): Promise<OpenTable> {
  const name = sourceName(source);
  if ('text' in source) return csvTable(name, (rows) => pieces(source.text, name, rows), options);
  const head = 'path' in source ? await headOf(source.path, name) : source.data.subarray(0, 8);
  const whole = async (): Promise<Buffer> => ('path' in source ? wholeFile(source.path, name) : Buffer.from(source.data));
  if (startsWith(head, [0xd0, 0xcf, 0x11, 0xe0])) {
    throw new FileFault((await whole()).includes(LOCKED) ? 'locked-workbook' : 'old-workbook', { name });
  }
  if (startsWith(head, [0x50, 0x4b, 0x03, 0x04]) || startsWith(head, [0x50, 0x4b, 0x05, 0x06])) {
    const bytes = await whole();
    if (bytes.byteLength > FILE_BYTES_MAX) throw new FileFault('file-too-large', { name, limit: LIMITS.fileMegabytes });
    // Loaded when there is a workbook: most sheets are text.
    const { readXlsx } = await import('./table-xlsx');
    return { kind: 'xlsx', name, blocks: readXlsx(bytes, name), delimiter: () => ',' };
  }
  const chunks = (): AsyncIterable<Uint8Array> =>
    'path' in source ? createReadStream(source.path, { highWaterMark: PIECE }) : inPieces(source.data);
  const table = csvTable(name, (rows) => decodeText(limited(chunks(), name), name, options.encoding, rows), options);
  if (!WORKBOOK_NAME.test(name)) return table;
  if (head[0] === MARKUP) throw new FileFault('not-a-workbook', { name, words: 'it is a web page or other marked-up text' });
  return { ...table, blocks: namedWorkbook(table.blocks, name) };
}

/** Text under the name of a workbook is read as text. Bytes that are no text are a workbook without its beginning, not a bad CSV file. */
async function* namedWorkbook(blocks: TableBlocks, name: string): TableBlocks {
  try {
    yield* blocks;
  } catch (error) {
    const noText = error instanceof FileFault && NO_TEXT.has(error.problem.code);
    throw noText ? new FileFault('not-a-workbook', { name, words: 'it does not begin as a workbook does' }) : error;
  }
}

function csvTable(name: string, texts: (rowsSoFar: () => number) => AsyncIterable<string>, options: CsvOptions): OpenTable {
  let delimiter: Delimiter = ',';
  let rows = 0;
  const blocks = readCsv(
    texts(() => rows),
    name,
    options,
    (found) => {
      delimiter = found;
    },
  );
  return { kind: 'csv', name, blocks: counted(blocks, (count) => (rows += count)), delimiter: () => delimiter };
}

async function* counted(blocks: TableBlocks, add: (count: number) => void): TableBlocks {
  for await (const block of blocks) {
    add(block.length);
    yield block;
  }
}

function startsWith(bytes: Uint8Array, signature: readonly number[]): boolean {
  return signature.every((byte, at) => bytes[at] === byte);
}

async function headOf(path: string, name: string): Promise<Uint8Array> {
  try {
    const file = await open(path, 'r');
    try {
      const stat = await file.stat();
      if (stat.isDirectory()) throw new FileFault('unreadable-file', { name, words: 'it is a folder' });
      if (stat.size > FILE_BYTES_MAX) throw new FileFault('file-too-large', { name, limit: LIMITS.fileMegabytes });
      const { buffer, bytesRead } = await file.read({ buffer: new Uint8Array(8), position: 0 });
      return buffer.subarray(0, bytesRead);
    } finally {
      await file.close();
    }
  } catch (error) {
    throw asFault(error, name);
  }
}

async function wholeFile(path: string, name: string): Promise<Buffer> {
  try {
    return await readFile(path);
  } catch (error) {
    throw asFault(error, name);
  }
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EACCES: 'it may not be read',
  EPERM: 'it may not be read',
  EISDIR: 'it is a folder',
  ESPIPE: 'it is no ordinary file',
};

/** A failure of the operating system in words; anything else is passed on as it is. */
export function asFault(error: unknown, name: string): unknown {
  if (error instanceof FileFault || !(error instanceof Error) || !('code' in error)) return error;
  return new FileFault('unreadable-file', { name, words: REASONS[String(error.code)] ?? `the system says ${error.code}` });
}

async function* limited(chunks: AsyncIterable<Uint8Array>, name: string): AsyncGenerator<Uint8Array> {
  let bytes = 0;
  for await (const chunk of chunks) {
    bytes += chunk.byteLength;
    if (bytes > FILE_BYTES_MAX) throw new FileFault('file-too-large', { name, limit: LIMITS.fileMegabytes });
    yield chunk;
  }
}

async function* inPieces(data: Uint8Array): AsyncGenerator<Uint8Array> {
  for (let at = 0; at < data.byteLength; at += PIECE) yield data.subarray(at, at + PIECE);
}

/** Pasted text, without a byte order mark. */
async function* pieces(text: string, name: string, _rowsSoFar: () => number): AsyncGenerator<string> {
  if (text.length > FILE_BYTES_MAX) throw new FileFault('file-too-large', { name, limit: LIMITS.fileMegabytes });
  if (text.includes('\0')) throw new FileFault('binary-file', { name });
  const from = text.startsWith('\ufeff') ? 1 : 0;
  for (let at = from; at < text.length; at += PIECE) yield text.slice(at, at + PIECE);
}
