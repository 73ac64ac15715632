import type { Cell } from './cells';

/** What a cell comes to. */
type Value = number | string | undefined;

/** Cells by column letters, row by row. */
type Rows = readonly (readonly Cell[])[];

type Node =
  | { readonly kind: 'value'; readonly value: number | string }
  | { readonly kind: 'name'; readonly name: string }
  | { readonly kind: 'cell'; readonly sheet: string; readonly column: string; readonly row: number }
  | { readonly kind: 'range'; readonly from: Node; readonly to: Node }
  | { readonly kind: 'negative'; readonly of: Node }
  | { readonly kind: 'operation'; readonly sign: string; readonly left: Node; readonly right: Node }
  | { readonly kind: 'call'; readonly name: string; readonly inputs: readonly Node[] };

/** Number, text, cell with or without its sheet, function or name, operator. */
const TOKEN =
  /\s*(?:(\d+(?:\.\d+)?(?:[eE][-+]?\d+)?)|"([^"]*)"|(?:(?:'([^']+)'|([A-Za-z]\w*))!)?\$?([A-Z]{1,3})\$?(\d+)(?![\w(])|([A-Za-z_]\w*)|(<=|>=|<>|[-+*/^(),:<>=]))/y;

/** How strongly operators bind, as spreadsheets have it; a sign before a number binds more strongly than all of them. */
const STRENGTH: Readonly<Record<string, number>> = {
  '=': 1,
  '<>': 1,
  '<': 1,
  '>': 1,
  '<=': 1,
  '>=': 1,
  '+': 2,
  '-': 2,
  '*': 3,
  '/': 3,
  '^': 4,
};

/** Reads one formula, as the sheets of the workbook write them. @throws Error on what they never write. */
class Parser {
  readonly #text: string;
  readonly #sheet: string;
  #at = 0;
  #token: RegExpExecArray | undefined;

  constructor(text: string, sheet: string) {
    this.#text = text;
    this.#sheet = sheet;
    this.#next();
  }

  whole(): Node {
    const node = this.#expression(1);
    if (this.#token) throw new Error(`the formula ${this.#text} goes on where it should end`);
    return node;
  }

  #next(): void {
    TOKEN.lastIndex = this.#at;
    const found = this.#at < this.#text.trimEnd().length ? TOKEN.exec(this.#text) : undefined;
    if (found === null) throw new Error(`the formula ${this.#text} cannot be read at place ${this.#at}`);
    this.#token = found;
    if (found) this.#at = TOKEN.lastIndex;
  }

  #sign(): string | undefined {
    return this.#token?.[8];
  }

  #take(sign: string): void {
    if (this.#sign() !== sign) throw new Error(`the formula ${this.#text} lacks ${sign}`);
    this.#next();
  }

  #expression(least: number): Node {
    let left = this.#signed();
    for (let sign = this.#sign(); sign !== undefined && (STRENGTH[sign] ?? 0) >= least; sign = this.#sign()) {
      this.#next();
      left = { kind: 'operation', sign, left, right: this.#expression((STRENGTH[sign] ?? 0) + 1) };
    }
    return left;
  }

  #signed(): Node {
    if (this.#sign() === '-') {
      this.#next();
      return { kind: 'negative', of: this.#signed() };
    }
    const first = this.#plain();
    if (this.#sign() !== ':') return first;
    this.#next();
    return { kind: 'range', from: first, to: this.#plain() };
  }

  #plain(): Node {
    const token = this.#token;
    if (!token) throw new Error(`the formula ${this.#text} ends too early`);
    const [, number, text, quoted, sheet, column, row, name] = token;
    if (this.#sign() === '(') {
      this.#next();
      const inside = this.#expression(1);
      this.#take(')');
      return inside;
    }
    this.#next();
    if (number !== undefined) return { kind: 'value', value: Number(number) };
    if (text !== undefined) return { kind: 'value', value: text };
    if (column !== undefined) return { kind: 'cell', sheet: quoted ?? sheet ?? this.#sheet, column, row: Number(row) };
    if (name === undefined) throw new Error(`the formula ${this.#text} cannot be read`);
    if (this.#sign() !== '(') return { kind: 'name', name };
    this.#next();
    const inputs: Node[] = [];
    while (this.#sign() !== ')') {
      inputs.push(this.#expression(1));
      if (this.#sign() === ',') this.#next();
    }
    this.#take(')');
    return { kind: 'call', name, inputs };
  }
}

/** A cell whose formula comes to no number, as a spreadsheet shows an error. */
class CellError extends Error {}

/**
 * Works cells out from their formulas alone, as a spreadsheet does: the values that were written beside the formulas are not looked at. Knows what
 * the workbook's sheets use but for the search for a rate of return.
 */
export class Calculation {
  readonly #sheets: ReadonlyMap<string, Rows>;
  readonly #names: ReadonlyMap<string, number>;
  readonly #columns = new Map<string, number>();
  readonly #done = new Map<string, Value>();

  constructor(sheets: ReadonlyMap<string, Rows>, names: ReadonlyMap<string, number>) {
    this.#sheets = sheets;
    this.#names = names;
  }

  /** What a cell comes to; the first row and column are 1. @throws Error where a formula names what is not there, or comes to no number. */
  valueAt(sheet: string, row: number, column: number): Value {
    const key = `${sheet}!${column},${row}`;
    if (this.#done.has(key)) return this.#done.get(key);
    const cell = this.#sheets.get(sheet)?.[row - 1]?.[column - 1];
    let value: Value;
    if (typeof cell === 'object' && cell !== null) value = this.#of(new Parser(cell.formula, sheet).whole());
    else value = cell ?? undefined;
    this.#done.set(key, value);
    return value;
  }

  #of(node: Node): Value {
    switch (node.kind) {
      case 'value':
        return node.value;
      case 'name': {
        const value = this.#names.get(node.name);
        if (value === undefined) throw new Error(`nothing is named ${node.name}`);
        return value;
      }
      case 'cell':
        return this.valueAt(node.sheet, node.row, this.#column(node.column));
      case 'negative':
        return -this.#number(node.of);
      case 'operation':
        return this.#operation(node.sign, node.left, node.right);
      case 'call':
        return this.#call(node.name, node.inputs);
      case 'range':
        throw new Error('a range stands where one value is wanted');
    }
  }

  /** A blank counts as nothing, as in a spreadsheet. */
  #number(node: Node): number {
    const value = this.#of(node);
    if (value === undefined) return 0;
    if (typeof value !== 'number' || !Number.isFinite(value)) throw new CellError('a text stands where a number is wanted');
    return value;
  }

  #operation(sign: string, one: Node, other: Node): number {
    const [left, right] = [this.#number(one), this.#number(other)];
    switch (sign) {
      case '+':
        return left + right;
      case '-':
        return left - right;
      case '*':
        return left * right;
      case '/':
        if (right === 0) throw new CellError('division by nothing');
        return left / right;
      case '^':
        return left ** right;
      case '<=':
        return Number(left <= right);
      case '>=':
        return Number(left >= right);
      case '<':
        return Number(left < right);
      case '>':
        return Number(left > right);
      case '<>':
        return Number(left !== right);
      default:
        return Number(left === right);
    }
  }

  #call(name: string, inputs: readonly Node[]): Value {
    const [first, second, third] = inputs;
    if (!first) throw new Error(`${name} has no input`);
    switch (name) {
      case 'SUM':
        return this.#range(first).reduce((sum, value) => sum + value, 0);
      case 'SUMPRODUCT': {
        const factors = second ? this.#range(second) : [];
        return this.#range(first).reduce((sum, value, at) => sum + value * (factors[at] ?? 0), 0);
      }
      case 'ROUND': {
        const scale = 10 ** (second ? this.#number(second) : 0);
        const value = this.#number(first);
        return (Math.sign(value) * Math.round(Math.abs(value) * scale)) / scale;
      }
      case 'IF':
        return this.#number(first) === 0 ? third && this.#of(third) : second && this.#of(second);
      case 'IFERROR':
        try {
          return this.#of(first);
        } catch (error) {
          if (error instanceof CellError) return second && this.#of(second);
          throw error;
        }
      case 'LN':
        return Math.log(this.#number(first));
      case 'EXP':
        return Math.exp(this.#number(first));
      case 'SQRT':
        return Math.sqrt(this.#number(first));
      case 'ABS':
        return Math.abs(this.#number(first));
      default:
        throw new Error(`the function ${name} is not known here`);
    }
  }

  #range(node: Node): number[] {
    if (node.kind !== 'range') return [this.#number(node)];
    const { from, to } = node;
    if (from.kind !== 'cell' || to.kind !== 'cell') throw new Error('a range does not run from cell to cell');
    const values: number[] = [];
    for (let row = from.row; row <= to.row; row++)
      for (let column = this.#column(from.column); column <= this.#column(to.column); column++) {
        const value = this.valueAt(from.sheet, row, column);
        values.push(typeof value === 'number' ? value : 0);
      }
    return values;
  }

  #column(letters: string): number {
    const known = this.#columns.get(letters);
    if (known !== undefined) return known;
    let number = 0;
    for (const letter of letters) number = 26 * number + letter.charCodeAt(0) - 64;
    this.#columns.set(letters, number);
    return number;
  }
}
