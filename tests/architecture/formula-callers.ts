import path from 'node:path';
import ts from 'typescript';
import { parse, type SourceTree, walk } from './source-tree';

const SHEET = /^lib\/engine\/(?:.*\/)?([^/]+)\.sheet\.ts$/;

/** Names of the formulas that a sheet declares. */
function declared(file: string, text: string): string[] {
  return parse(file, text).statements.flatMap((statement) =>
    ts.isVariableStatement(statement) && statement.modifiers?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword)
      ? statement.declarationList.declarations.map(({ name }) => name.getText())
      : [],
  );
}

/** Formulas that a file uses, as `sheet.name`: through its import of a generated file, or out of the catalogue of all. */
function used(file: string, text: string): string[] {
  const source = parse(file, text);
  const sheetOf = new Map<string, string>();
  const found: string[] = [];
  for (const statement of source.statements) {
    if (!ts.isImportDeclaration(statement) || !ts.isStringLiteral(statement.moduleSpecifier)) continue;
    const { text: specifier } = statement.moduleSpecifier;
    if (!/(^|\/)generated\/[^/]+$/.test(specifier)) continue;
    const sheet = path.posix.basename(specifier);
    const bindings = statement.importClause?.namedBindings;
    if (bindings && ts.isNamespaceImport(bindings)) sheetOf.set(bindings.name.text, sheet);
    else if (bindings)
      found.push(...bindings.elements.map(({ name, propertyName }) => `${sheet}.${(propertyName ?? name).text}`));
  }
  walk(source, (node) => {
    if (!ts.isPropertyAccessExpression(node)) return;
    const { expression, name } = node;
    if (ts.isIdentifier(expression)) {
      const sheet = sheetOf.get(expression.text);
      if (sheet !== undefined) found.push(`${sheet}.${name.text}`);
    } else if (ts.isPropertyAccessExpression(expression) && expression.expression.getText() === 'FORMULAS') {
      found.push(`${expression.name.text}.${name.text}`);
    }
  });
  return found;
}

/** Declared formulas that nothing of the program applies: they would be tested and documented for nobody. */
export function formulasWithoutCaller(tree: SourceTree): string[] {
  const files = [...tree].filter(([file]) => /^(app|lib)\//.test(file) && !SHEET.test(file));
  const called = new Set(files.flatMap(([file, text]) => used(file, text)));
  return [...tree].flatMap(([file, text]) => {
    const sheet = SHEET.exec(file)?.[1];
    if (sheet === undefined) return [];
    return declared(file, text)
      .filter((name) => !called.has(`${sheet}.${name}`))
      .map((name) => `${file}: nothing in app or lib applies ${name}`);
  });
}
