import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

/** Source files by path from the root of the repository, with `/` between folders. */
export type SourceTree = ReadonlyMap<string, string>;

/** An import or re-export in a file. */
export interface ImportLine {
  readonly specifier: string;
  /** True when nothing of it is left in the running program. */
  readonly typeOnly: boolean;
  readonly line: number;
}

export const ROOT = fileURLToPath(new URL('../..', import.meta.url));

const NOT_OURS = new Set(['node_modules', '.git', '.next', 'coverage', 'test-results', 'playwright-report']);
const NOT_WRITTEN_BY_HAND = ['data/', 'tests/perf/out/', 'lib/engine/generated/', 'lib/platform/generated/'];

/** Every file of the repository that people write and whose name ends in one of the given ways. */
export function readTree(endings: readonly string[], root = ROOT): SourceTree {
  const tree = new Map<string, string>();
  const visit = (folder: string): void => {
    for (const entry of readdirSync(path.join(root, folder), { withFileTypes: true })) {
      const file = folder === '' ? entry.name : `${folder}/${entry.name}`;
      if (NOT_OURS.has(entry.name) || NOT_WRITTEN_BY_HAND.some((part) => `${file}/`.startsWith(part))) continue;
      if (entry.isDirectory()) visit(file);
      else if (entry.isFile() && endings.some((ending) => entry.name.endsWith(ending))) {
        tree.set(file, readFileSync(path.join(root, file), 'utf8'));
      }
    }
  };
  visit('');
  return tree;
}

export const CODE_ENDINGS = ['.ts', '.tsx', '.mts', '.mjs', '.cjs', '.js'] as const;

/** The syntax tree of a file. */
export function parse(file: string, text: string): ts.SourceFile {
  return ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
}

/** Calls `see` with every node of a file, from the top. */
export function walk(node: ts.Node, see: (node: ts.Node) => void): void {
  see(node);
  node.forEachChild((child) => walk(child, see));
}

export function lineOf(source: ts.SourceFile, node: ts.Node): number {
  return source.getLineAndCharacterOfPosition(node.getStart(source)).line + 1;
}

function isTypeOnly(node: ts.ImportDeclaration | ts.ExportDeclaration): boolean {
  if (ts.isExportDeclaration(node)) return node.isTypeOnly;
  return node.importClause?.phaseModifier === ts.SyntaxKind.TypeKeyword;
}

/** Imports, re-exports and dynamic imports of a file. */
export function importsOf(source: ts.SourceFile): ImportLine[] {
  const found: ImportLine[] = [];
  walk(source, (node) => {
    if (
      (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) &&
      node.moduleSpecifier &&
      ts.isStringLiteral(node.moduleSpecifier)
    ) {
      found.push({ specifier: node.moduleSpecifier.text, typeOnly: isTypeOnly(node), line: lineOf(source, node) });
    }
    if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) {
      const target = node.arguments[0];
      if (target && ts.isStringLiteralLike(target))
        found.push({ specifier: target.text, typeOnly: false, line: lineOf(source, node) });
    }
  });
  return found;
}

/** The file of the tree that an import of ours leads to; undefined for packages and for what is not in the tree. */
export function resolveOurs(tree: SourceTree, from: string, specifier: string): string | undefined {
  const base = specifier.startsWith('@/')
    ? specifier.slice(2)
    : specifier.startsWith('.')
      ? path.posix.join(path.posix.dirname(from), specifier)
      : undefined;
  if (base === undefined) return undefined;
  return [base, `${base}.ts`, `${base}.tsx`, `${base}/index.ts`, `${base}/index.tsx`].find((file) => tree.has(file));
}

/** The directives at the top of a file, such as `use client`. */
export function directivesOf(source: ts.SourceFile): string[] {
  const found: string[] = [];
  for (const statement of source.statements) {
    if (!ts.isExpressionStatement(statement) || !ts.isStringLiteral(statement.expression)) break;
    found.push(statement.expression.text);
  }
  return found;
}
