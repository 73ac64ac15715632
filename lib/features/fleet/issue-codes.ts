import { type NumberRefusalCode, shown } from './number';

/** A row error or warning: where, what is wrong in one sentence, and what would make it right. */
export interface RowIssue {
  /** Row as a spreadsheet shows it, the first of the file being row 1. */
  readonly row: number;
  /** Column as the sheet names it; empty when the issue is the row's as a whole. */
  readonly column: string;
  readonly code: IssueCode;
  readonly text: string;
  readonly remedy: string;
  /** The cell as written, cut when long. */
  readonly value?: string;
}

/** Why a file as a whole could not be read. */
export interface FileProblem {
  readonly code: FileProblemCode;
  readonly text: string;
  readonly remedy: string;
}

/** What a sentence may need; each code uses what it names. */
interface Details {
  readonly column?: string;
  /** Already quoted text of the cell. */
  readonly value?: string;
  readonly words?: string;
  readonly unit?: string;
  readonly other?: string;
  readonly otherRow?: number;
  readonly count?: number;
  readonly limit?: number;
  readonly name?: string;
}

type Sentence = (d: Required<Details>) => readonly [text: string, remedy: string];

/** What is said of a row, by the code of it: what is wrong, and what would make it right. */
export const ROW_SENTENCES = {
  'missing-required': (d) => [
    d.otherRow === 0
      ? `${d.column} is empty.`
      : `${d.column} is empty, and row ${d.otherRow}, which names the same motor, was rejected.`,
    d.otherRow === 0
      ? `Fill in ${d.column}: nothing can be said of a motor without it.`
      : `Mend row ${d.otherRow}, or fill in ${d.column} here.`,
  ],
  'unknown-word': (d) => [`${d.value} is not a word that ${d.column} knows.`, `Write one of: ${d.words}.`],
  'rated-not-positive': (d) => [`${d.column} is ${d.value}, but a rated value is never ${d.words}.`, 'Write the stamped value.'],
  'not-whole': (d) => [`${d.value} is not a whole number.`, `Write ${d.column} as a whole number.`],
  'not-even': (d) => [`${d.value} is no count of poles: poles come in pairs.`, 'Write 2, 4, 6, 8 or another even number.'],
  'not-allowed': (d) => [`${d.column} is ${d.value}, which the sheet does not take.`, `Write ${d.words}.`],
  'not-a-letter': (d) => [`${d.value} is not one letter.`, `Write ${d.column} as one letter of the alphabet.`],
  'not-yes-no': (d) => [`${d.value} is neither yes nor no.`, 'Write yes or no, or leave the cell empty if it is not known.'],
  'unreadable-date': (d) => [
    `${d.value} is no date such as 2026-03-14 (ISO 8601).`,
    'Write the date as 2026-03-14, or with the time as 2026-03-14T09:30, with an offset such as +02:00 if it is not site time.',
  ],
  'number-for-date': (d) => [
    `${d.value} is a plain number where a date belongs.`,
    'Format the cell as a date in the spreadsheet, or write the date as 2026-03-14.',
  ],
  'date-for-value': (d) => [
    `${d.column} holds the date ${d.value}: the spreadsheet has taken the entry for a date.`,
    'Format the cell as text or number and enter the value again.',
  ],
  'unreadable-list': (d) => [
    `${d.value} is not a list of numbers.`,
    `Write the numbers of ${d.column} joined by semicolons, such as ${d.words}.`,
  ],
  'unreadable-teeth': (d) => [
    `${d.value} does not give two tooth counts.`,
    `Write the teeth of pinion and wheel as n;m, such as ${d.words}.`,
  ],
  'unreadable-bearing': (d) => [
    `${d.value} is not a bearing geometry.`,
    `Write balls/ball_mm/pitch_mm/angle_deg, such as ${d.words}; the pitch diameter is larger than a ball and the angle below 90.`,
  ],
  'unreadable-duty': (d) => [
    `${d.value} is not a duty profile.`,
    `Write steps fraction@hours joined by semicolons, such as ${d.words}; neither may be negative.`,
  ],
  'duty-too-long': (d) => [
    `The steps of the duty profile add up to ${d.count} h, more than the ${d.limit} h of a leap year.`,
    'Correct the hours; hours that are not listed count as stopped.',
  ],
  'hours-out-of-range': (d) => [
    `${d.column} is ${d.value}; a year has 0 to ${d.limit} h.`,
    'Write the hours in operation in one year.',
  ],
  'power-units-contradict': (d) => [
    `rated_power_kw and rated_power_hp differ by ${d.count} % (1 hp = 0.745700 kW).`,
    'Look at the plate again and leave one of the two empty.',
  ],
  'plate-contradiction': (d) => [
    `${d.column} is ${d.value} here but ${d.other} in row ${d.otherRow}, which is the same motor.`,
    `Make rows agree with the plate, leave ${d.column} empty in all rows but one, or correct the tag.`,
  ],
  'curve-and-exponent': (d) => [
    d.otherRow === 0
      ? 'load_curve and load_torque_exponent are both filled in, and each states the torque law of the load.'
      : `${d.column} is filled in, and row ${d.otherRow}, which is the same motor, states the torque law of the load by ${d.other}.`,
    'Leave one of load_curve and load_torque_exponent empty.',
  ],
  'reading-contradiction': (d) =>
    d.otherRow === 0
      ? [
          `A reading of this motor taken at the same time is kept already; ${d.column} is ${d.value} here but ${d.other} there.`,
          'Correct taken_at or the tag; if the kept reading is wrong, exclude it on the page of the motor, then import this row again.',
        ]
      : [
          `Row ${d.otherRow} has other readings of this motor taken at the same time; ${d.column} differs.`,
          'Correct taken_at or the tag, or delete the row that is wrong.',
        ],
  'cell-error': (d) => [
    `The formula in ${d.column} gives the error ${d.value}.`,
    'Repair the formula, or put the value itself into the cell.',
  ],
  'formula-without-value': (d) => [
    `The formula in ${d.column} was saved without its result.`,
    'Open the file in a spreadsheet program, let it compute, and save it again.',
  ],
  'cell-too-long': (d) => [
    `The cell in ${d.column} is ${d.count} characters long; a cell may have ${d.limit}.`,
    'Shorten the text; a missing closing quote can have run cells together.',
  ],
  'too-many-cells': (d) => [
    `The row has ${d.count} cells but the header names ${d.limit}.`,
    'Put cells that contain the delimiter into quotes, also numbers with a decimal comma.',
  ],
  'malformed-quote': () => [
    'A quoted cell goes on after its closing quote; following lines may have been drawn into this row.',
    'Double each quote inside a quoted cell, or remove the quotes.',
  ],
  'missing-history': (d) => [`${d.column} of the indicator history is empty.`, `Fill in ${d.column}, or delete the row.`],
  'unknown-indicator': (d) => [
    `${d.value} is no indicator of the history.`,
    `Write the name of a reading’s column without its unit; ${d.other}${d.words}.`,
  ],
  'unknown-unit': (d) => [`${d.value} is no unit of ${d.other}.`, `Write one of: ${d.words}.`],
  'unknown-motor': (d) => [
    `The indicator history speaks of ${d.value}${d.other === '' ? '' : ` at ${d.other}`}, which is no motor of the sheet.`,
    'Correct site and tag, or add the motor to the fleet sheet.',
  ],
  'history-contradiction': (d) => [
    `The indicator history has ${d.value} for ${d.words}, but the reading of the same time has ${d.other}.`,
    'Correct taken_at or the value in one of the two.',
  ],
  'missing-price': (d) => [`${d.column} is empty.`, `Fill in ${d.column}, or delete the row.`],
  'other-currency': (d) => [`The price is in ${d.value}, but the study is in ${d.other}.`, `Convert the price to ${d.other}.`],

  'rows-above-names': (d) => [
    `The column names are those of row ${d.otherRow}; what stands above them was passed over: ${d.words}.`,
    'Nothing need be done if that is a title or a note on the sheet.',
  ],
  'unknown-column': (d) => [
    `${d.value} is not a column of the fleet sheet; its cells are kept as notes.`,
    d.words === '' ? 'Rename it if it should count.' : `Rename it if it should count; did you mean ${d.words}?`,
  ],
  'unknown-price-column': (d) => [
    `${d.value} is not a column of the price list; its cells are not used.`,
    d.words === '' ? 'Rename it if it should count.' : `Rename it if it should count; did you mean ${d.words}?`,
  ],
  'price-without-class': () => [
    'The motor has no efficiency class, so its price is kept and never used.',
    'Write premium or IE3 (or IE4) in efficiency_class if it is one.',
  ],
  'price-below-premium': (d) => [
    `The motor is of class ${d.value}, and a replacement is premium or better, so its price is kept and never used.`,
    'Correct efficiency_class, or name the price of a premium motor (IE3).',
  ],
  'price-repeated': (d) => [
    `The row prices the same as row ${d.otherRow}, at ${d.words} in place of ${d.other}; the first one holds.`,
    'Keep the price that is asked today and delete the other row.',
  ],
  'price-after-as-of': (d) => [
    `The price is of ${d.value}, after the day of the study, ${d.other}; it is used.`,
    'Correct date, or as_of in the settings.',
  ],
  'price-of-nothing': (d) => [
    `A ${d.words} does not come for nothing: the row is not used.`,
    'Write the price, or delete the row.',
  ],
  'unknown-bench-column': (d) => [
    `${d.value} is not a column of the bench test sheet; its cells are not used.`,
    d.words === '' ? 'Rename it if it should count.' : `Rename it if it should count; did you mean ${d.words}?`,
  ],
  'unnamed-column': (d) => [
    `There are cells under column ${d.count}, which has no name; they are kept as notes.`,
    'Give the column a name, or clear it.',
  ],
  'short-row': (d) => [
    `The row ends after ${d.count} of ${d.limit} cells; the others count as empty.`,
    'Check that no line break has cut the row in two.',
  ],
  'power-units-differ': (d) => [
    `rated_power_kw and rated_power_hp differ by ${d.count} %; kilowatts count (1 hp = 0.745700 kW).`,
    'Nothing need be done if the plate pairs the two ratings so.',
  ],
  'efficiency-as-fraction': (d) => [
    `${d.column} is ${d.value}, which looks like a fraction; ${d.value} % is not used.`,
    'Write the efficiency in per cent, such as 93.6.',
  ],
  'power-factor-as-fraction': (d) => [
    `${d.column} is ${d.value}, which looks like a fraction; ${d.value} % is not used.`,
    'Write the power factor in per cent, such as 86.',
  ],
  'implausible-value': (d) => [
    `${d.column} is ${d.value}${d.unit && ` ${d.unit}`}, which is not possible; the row is kept, and no figure rests on the value.`,
    'Check sign, unit and decimal sign of the entry.',
  ],
  'unusual-value': (d) => [
    `${d.column} is ${d.value} ${d.unit}, outside the ${d.words} that are usual; it counts as it stands.`,
    `See whether it is in ${d.unit} and not in another unit, and whether the decimal sign is right.`,
  ],
  'incomplete-phases': (d) => [
    `Only ${d.words} of the three phases are filled in; they are kept as notes${d.other}.`,
    `Fill in all three, or give the mean alone where there is a column for it.`,
  ],
  'phases-against-mean': (d) => [
    `${d.column} is ${d.value}, but the mean of the three phases is ${d.other}; the phases count.`,
    'Check the entries, or leave the mean empty.',
  ],
  'reading-undated': (d) => [
    `${d.words} without taken_at ${d.words === 'A reading' ? 'counts' : 'count'} as the oldest of the motor.`,
    'Fill in taken_at if the date is known.',
  ],
  'reading-after-as-of': (d) => [
    `The reading was taken on ${d.value}, after the study's date ${d.other}; it is used.`,
    'Check taken_at, or set as_of of the study to a later date.',
  ],
  'text-differs': (d) => [
    `${d.column} is ${d.value} here but ${d.other} in row ${d.otherRow}; the earlier one stays, this one is kept as a note.`,
    `Leave ${d.column} empty in all rows but one.`,
  ],
  'hours-and-duty': () => [
    'The motor has hours per year and a duty profile; the profile replaces the hours.',
    'Leave one of the two empty.',
  ],
} as const satisfies Record<string, Sentence>;

/** What is said of a file that cannot be read, likewise. */
export const FILE_SENTENCES = {
  'unreadable-file': (d) => [`${d.name} could not be opened: ${d.words}.`, 'Check the path and the right to read it.'],
  'file-too-large': (d) => [`${d.name} is larger than ${d.limit} MB.`, 'Split the sheet into several files.'],
  'empty-file': (d) => [`${d.name} is empty.`, 'The first row must hold the column names; a blank sheet shows them.'],
  'empty-header': (d) => [
    `The first row of ${d.name} is empty.`,
    'Put the column names into the first row and delete rows above it.',
  ],
  'missing-column': (d) => [
    `The header has no column ${d.words}.`,
    `Name the columns as the blank sheet does: tag, rated_voltage_v and rated_power_kw or rated_power_hp must be there${d.other}.`,
  ],
  'missing-bench-column': (d) => [`The bench test sheet has no column ${d.words}.`, `Its columns are: ${d.other}.`],
  'missing-history-column': (d) => [`The indicator history has no column ${d.words}.`, `Its columns are: ${d.other}.`],
  'missing-price-column': (d) => [`The price list has no column ${d.words}.`, `Its columns are: ${d.other}.`],
  'duplicate-column': (d) => [
    `The header names more than once: ${d.words}.`,
    'Rename or delete one of the two; it cannot be told which one counts.',
  ],
  'too-many-columns': (d) => [
    `The header has ${d.count} columns; a sheet may have ${d.limit}.`,
    'Delete columns that are not needed.',
  ],
  'binary-file': (d) => [
    `${d.name} is not a text file: it contains bytes that no text has.`,
    'Save the sheet as CSV in UTF-8, or as XLSX.',
  ],
  'wrong-encoding': (d) => [
    `${d.name} is not written in ${d.words}${d.otherRow > 0 ? ` (near row ${d.otherRow})` : ''}.`,
    'Save it as CSV in UTF-8, or state its encoding, such as windows-1252.',
  ],
  'utf-16-file': (d) => [
    `${d.name} is written in UTF-16.`,
    'Save it as CSV in UTF-8, or state the encoding utf-16le or utf-16be.',
  ],
  'unknown-encoding': (d) => [
    `${d.value} is not the name of an encoding.`,
    'Use a name such as utf-8, windows-1252, iso-8859-2 or utf-16le.',
  ],
  'unclosed-quote': (d) => [
    `A quote opened in row ${d.otherRow} is never closed, so the rest of the file would be one cell.`,
    'Close the quote, or double it if it belongs to the text.',
  ],
  'row-too-long': (d) => [
    `Row ${d.otherRow} is longer than ${d.limit} characters.`,
    'Check for a quote that is not closed, and that the file is a table.',
  ],
  'old-workbook': (d) => [
    `${d.name} could not be opened: it is a workbook of the old binary format (XLS).`,
    'Open it in a spreadsheet program and save it as XLSX, or as CSV in UTF-8.',
  ],
  'locked-workbook': (d) => [
    `${d.name} could not be opened as a workbook: it is protected by a password.`,
    'Open it in a spreadsheet program with the password and save a copy without one, as XLSX or as CSV in UTF-8.',
  ],
  'not-a-workbook': (d) => [
    `${d.name} could not be opened as a workbook: ${d.words}.`,
    'Open it in a spreadsheet program and save it again as XLSX, or as CSV in UTF-8. If it does not open there either, get another copy of the file.',
  ],
  'unpacks-too-large': (d) => [
    `${d.name} unpacks to more than ${d.limit} MB, which no fleet sheet does; it was not read further.`,
    'Save the first sheet alone as XLSX or CSV.',
  ],
  'sheet-too-wide-and-long': (d) => [
    `The first sheet reaches out to ${d.count} rows and ${d.limit} columns.`,
    'Delete stray cells far from the table, or save the sheet as CSV.',
  ],
} as const satisfies Record<string, Sentence>;

export type FileProblemCode = keyof typeof FILE_SENTENCES;
export type IssueCode = keyof typeof ROW_SENTENCES | NumberRefusalCode;

/** Problems of a file that no other delimiter, encoding or place of a column mends. */
export const BEYOND_READING: ReadonlySet<FileProblemCode> = new Set([
  'empty-file',
  'file-too-large',
  'old-workbook',
  'locked-workbook',
  'not-a-workbook',
  'unpacks-too-large',
  'sheet-too-wide-and-long',
]);

const NOTHING: Required<Details> = {
  column: '',
  value: '',
  words: '',
  unit: '',
  other: '',
  otherRow: 0,
  count: 0,
  limit: 0,
  name: '',
};
const VALUE_LENGTH = 200;

/** Makes an issue of the catalogue; `value` is the raw cell and is quoted here. */
export function issue(code: keyof typeof ROW_SENTENCES, row: number, column: string, details: Details = {}): RowIssue {
  const quoted = details.value === undefined ? '' : shown(details.value);
  const sentence: Sentence = ROW_SENTENCES[code];
  const [text, remedy] = sentence({ ...NOTHING, column, ...details, value: quoted });
  return withValue({ row, column, code, text, remedy }, details.value);
}

/** Adds the cell as written, cut when long. */
export function withValue(issue: RowIssue, value: string | undefined): RowIssue {
  if (value === undefined) return issue;
  return { ...issue, value: value.length > VALUE_LENGTH ? `${value.slice(0, VALUE_LENGTH)}…` : value };
}

export function fileProblem(code: FileProblemCode, details: Details = {}): FileProblem {
  const sentence: Sentence = FILE_SENTENCES[code];
  const [text, remedy] = sentence({ ...NOTHING, ...details, value: details.value === undefined ? '' : shown(details.value) });
  return { code, text, remedy };
}

/** Carries a file problem out of the readers to the door, which hands it on as a value. */
export class FileFault extends Error {
  readonly problem: FileProblem;
  constructor(code: FileProblemCode, details: Details = {}) {
    const problem = fileProblem(code, details);
    super(problem.text);
    this.problem = problem;
  }
}
