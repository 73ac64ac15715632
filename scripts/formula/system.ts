import type { MathNode } from 'mathjs';
import { CONSTANTS } from '@/lib/engine/formula/constants';
import type { SystemDeclaration } from '@/lib/engine/formula/system';
import { nativeText, parseExpression, partial, texText } from './tree';

interface Line {
  readonly name: string;
  readonly tree: MathNode;
  readonly text: string;
  /** Earlier names that the expression holds, with the partial derivative by each. */
  readonly slopes: readonly { readonly of: string; readonly text: string }[];
}

/** The source text of the generated module of one system. Pure: the same system always gives the same text. */
export function writeSystem(id: string, declaration: SystemDeclaration): string {
  const state = Object.keys(declaration.state);
  const inputs = Object.keys(declaration.inputs);
  const places = [...state, ...inputs, ...Object.keys(declaration.given)];
  const lines = linesOf(id, declaration, places);
  const rows = [...declaration.search, ...declaration.results];
  for (const name of rows) if (!(name in declaration.steps)) throw new Error(`${id}: ${name} is not a step`);
  const columns = [...state, ...inputs];
  return `// Written by scripts/generate.ts from ${id}.system.ts. Do not edit: change the system and run "npm run generate".
import type { Equation } from '../formula/system';

/** Place of each value in the vector \`x\`; derivatives are taken by the first ${columns.length}. */
export const PLACE = ${object(places)} as const;

/** Number of places, and of those by which derivatives are taken. */
export const PLACES = ${places.length};
export const COLUMNS = ${columns.length};

/** Place of each step in \`values\` and its row in \`slopes\`. */
export const ROW = ${object(rows)} as const;
export const ROWS = ${rows.length};

/** What a search needs: values of its steps, and their slopes by the state (row by row). */
export function search(x: Float64Array, values: Float64Array, slopes: Float64Array): void {
${body(lines, places, declaration.search, state, 'search')}
}

/** Values of all steps that are asked for. */
export function results(x: Float64Array, values: Float64Array): void {
${body(lines, places, rows, [], 'results')}
}

/** Derivatives of all steps that are asked for by the first ${columns.length} places (row by row). */
export function derivatives(x: Float64Array, slopes: Float64Array): void {
${body(lines, places, rows, columns, 'derivatives')}
}

export const EQUATIONS: readonly Equation[] = [
${equations(declaration, lines).join('\n')}
];
`;
}

function linesOf(id: string, declaration: SystemDeclaration, places: readonly string[]): Line[] {
  const known = [...places];
  return Object.entries(declaration.steps).map(([name, [, expression]]) => {
    const tree = parseExpression(`${id}.${name}`, expression, known);
    if (known.includes(name)) throw new Error(`${id}: ${name} is stated twice`);
    const text = nativeText(tree);
    const slopes = known
      .filter((other) => mentions(text, other))
      // What the step has worked out already is not worked out again for its slope.
      .map((of) => ({
        of,
        text: tree.type === 'FunctionNode' ? nativeText(partial(tree, of)).replaceAll(text, name) : nativeText(partial(tree, of)),
      }));
    known.push(name);
    return { name, tree, text, slopes };
  });
}

function mentions(text: string, name: string): boolean {
  return new RegExp(`(?<![\\w.])${name}\\b`).test(text);
}

/** Statements of one function: the steps that the rows need, and slopes by the columns carried forward with them. */
function body(
  lines: readonly Line[],
  places: readonly string[],
  rows: readonly string[],
  columns: readonly string[],
  kind: 'search' | 'results' | 'derivatives',
): string {
  const needed = neededBy(lines, rows);
  const active = new Map<string, ReadonlyMap<string, string>>(columns.map((name) => [name, new Map([[name, '1']])]));
  const said: string[] = [];
  for (const line of lines) {
    if (!needed.has(line.name)) continue;
    said.push(`  const ${line.name} = ${line.text};`);
    const moving = line.slopes.filter(({ of }) => active.has(of));
    if (moving.length === 0) continue;
    // A plain number or name needs no line of its own.
    const partials = new Map(
      moving.map(({ of, text }) => {
        if (/^-?[\w.]+$/.test(text)) return [of, text] as const;
        const name = `${line.name}_by_${of}`;
        said.push(`  const ${name} = ${text};`);
        return [of, name] as const;
      }),
    );
    const gradient = new Map<string, string>();
    for (const column of columns) {
      const terms = moving.flatMap(({ of }) => {
        const inner = active.get(of)?.get(column);
        return inner === undefined ? [] : [product(partials.get(of) ?? '0', inner)];
      });
      if (terms.length === 0) continue;
      const [only] = terms;
      if (terms.length === 1 && only !== undefined && /^-?[\w.]+$/.test(only)) {
        gradient.set(column, only);
        continue;
      }
      const name = `${line.name}__${column}`;
      said.push(`  const ${name} = ${sum(terms)};`);
      gradient.set(column, name);
    }
    active.set(line.name, gradient);
  }
  const out: string[] = [];
  rows.forEach((row, r) => {
    if (kind !== 'derivatives') out.push(`  values[${r}] = ${row};`);
    columns.forEach((column, c) => {
      out.push(`  slopes[${r * columns.length + c}] = ${active.get(row)?.get(column) ?? '0'};`);
    });
  });
  const text = unusedOut(said, out);
  const read = places.flatMap((name, place) => (mentions(text, name) ? [`  const ${name} = x[${place}] as number;`] : []));
  return [...read, text].join('\n');
}

/** Drops steps that nothing after them mentions. */
function unusedOut(said: readonly string[], out: readonly string[]): string {
  const kept: string[] = [];
  const used = new Set(
    out.flatMap(
      (line) =>
        line
          .split('=')
          .slice(1)
          .join('=')
          .match(/[A-Za-z_]\w*/g) ?? [],
    ),
  );
  for (const line of [...said].reverse()) {
    const [, name = '', text = ''] = /^ {2}const (\w+) = (.*);$/s.exec(line) ?? [];
    if (!used.has(name)) continue;
    for (const mentioned of text.match(/[A-Za-z_]\w*/g) ?? []) used.add(mentioned);
    kept.push(line);
  }
  return [...kept.reverse(), ...out].join('\n');
}

function product(partialText: string, inner: string): string {
  if (partialText === '1') return inner;
  if (inner === '1') return partialText;
  if (partialText === '-1') return inner.startsWith('-') ? inner.slice(1) : `-${inner}`;
  return `${partialText} * ${inner}`;
}

function sum(terms: readonly string[]): string {
  return terms.reduce(
    (whole, term) => (whole === '' ? term : term.startsWith('-') ? `${whole} - ${term.slice(1)}` : `${whole} + ${term}`),
    '',
  );
}

function neededBy(lines: readonly Line[], rows: readonly string[]): ReadonlySet<string> {
  const needed = new Set(rows);
  for (const line of [...lines].reverse()) if (needed.has(line.name)) for (const { of } of line.slopes) needed.add(of);
  return needed;
}

function equations(declaration: SystemDeclaration, lines: readonly Line[]): string[] {
  const symbols: Record<string, string> = { ...declaration.state, ...declaration.inputs, ...declaration.given };
  return lines.map(({ name, tree }) => {
    const symbol = declaration.steps[name]?.[0] ?? name;
    const tex = texText(tree, symbols);
    symbols[name] = symbol;
    return `  { name: ${JSON.stringify(name)}, symbol: ${JSON.stringify(symbol)}, tex: ${JSON.stringify(tex)} },`;
  });
}

function object(names: readonly string[]): string {
  for (const name of names) if (name in CONSTANTS) throw new Error(`${name} is a constant`);
  return `{ ${names.map((name, index) => `${name}: ${index}`).join(', ')} }`;
}
