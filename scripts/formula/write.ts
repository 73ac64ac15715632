import type { FormulaDeclaration } from '@/lib/engine/formula/declare';
import { cellText, nativeText, parseExpression, partial, texText } from './tree';

/** A sheet: the formulas that one `*.sheet.ts` declares, by name. */
export type Sheet = Readonly<Record<string, FormulaDeclaration>>;

/** The source text of the generated module of one sheet. Pure: the same sheet always gives the same text. */
export function writeModule(sheetName: string, sheet: Sheet): string {
  const blocks = Object.entries(sheet).map(([name, declaration]) => writeFormula(`${sheetName}.${name}`, name, declaration));
  return [
    `// Written by scripts/generate.ts from ${sheetName}.sheet.ts. Do not edit: change the sheet and run "npm run generate".`,
    "import type { Compiled } from '../formula/compiled';",
    '',
    ...blocks,
  ].join('\n');
}

function writeFormula(id: string, name: string, declaration: FormulaDeclaration): string {
  const names = Object.keys(declaration.inputs);
  const tree = parseExpression(id, declaration.expression, names);
  const symbols = Object.fromEntries(names.map((key) => [key, declaration.inputs[key]?.symbol ?? key]));
  const placeholders = Object.fromEntries(names.map((key) => [key, `⟦${key}⟧`]));
  const slopes = names.map((key) => nativeText(partial(tree, key)));
  const args = names.map((key) => `${key}: number`).join(', ');
  const fn = (text: string) => {
    const used = names.map((key, index) => (new RegExp(`\\b${key}\\b`).test(text) ? index : -1)).filter((index) => index >= 0);
    const last = used.length === 0 ? 0 : Math.max(...used) + 1;
    const list = names.slice(0, last).map((key, index) => `${used.includes(index) ? '' : '_'}${key}: number`);
    return `(${list.join(', ')}) => ${text}`;
  };
  const value = nativeText(tree);
  return `export const ${name} = {
  id: ${JSON.stringify(id)},
  title: ${JSON.stringify(declaration.title)},
  unit: ${JSON.stringify(declaration.unit)},
  symbol: ${JSON.stringify(declaration.symbol)},
  inputs: ${JSON.stringify(declaration.inputs)},
  names: ${JSON.stringify(names)},
  f: (${args}) => ${value},
  d: [
${slopes.map((text) => `    ${fn(text)},`).join('\n')}
  ],
  tex: ${JSON.stringify(texText(tree, symbols))},
  template: ${JSON.stringify(texText(tree, placeholders))},
  cell: ${JSON.stringify(cellText(tree))},
  expression: ${JSON.stringify(declaration.expression)},
  valid: ${JSON.stringify(declaration.valid)},
  source: ${JSON.stringify(declaration.source)},
} as const satisfies Compiled;
`;
}
