import ts from 'typescript';
import { lineOf, parse, type SourceTree, walk } from './source-tree';

/** Names of the surroundings that the engine must not see: the same numbers in must give the same numbers out, anywhere. */
const SURROUNDINGS = new Set([
  'process',
  'globalThis',
  'window',
  'document',
  'console',
  'fetch',
  'performance',
  'crypto',
  'localStorage',
  'navigator',
  'require',
  'setTimeout',
  'setInterval',
  'setImmediate',
  'queueMicrotask',
  'eval',
  'Function',
]);
/** The two functions of the calendar that read no clock. */
const CLOCKLESS = new Set(['UTC', 'parse']);

/** True when the identifier names a thing, not a member, a property, a declaration or a type. */
function isFreeValue(node: ts.Identifier): boolean {
  const { parent } = node;
  if (ts.isPropertyAccessExpression(parent)) return parent.expression === node;
  if (
    ts.isQualifiedName(parent) ||
    ts.isTypeReferenceNode(parent) ||
    ts.isImportSpecifier(parent) ||
    ts.isExportSpecifier(parent)
  )
    return false;
  if (ts.isPropertyAssignment(parent)) return parent.initializer === node;
  if (ts.isParameter(parent) || ts.isVariableDeclaration(parent) || ts.isBindingElement(parent))
    return parent.initializer === node;
  return !(
    ts.isPropertySignature(parent) ||
    ts.isPropertyDeclaration(parent) ||
    ts.isMethodSignature(parent) ||
    ts.isMethodDeclaration(parent) ||
    ts.isFunctionDeclaration(parent) ||
    ts.isTypeAliasDeclaration(parent) ||
    ts.isInterfaceDeclaration(parent) ||
    ts.isTypeParameterDeclaration(parent) ||
    ts.isExpressionWithTypeArguments(parent) ||
    ts.isNamedTupleMember(parent) ||
    ts.isLiteralTypeNode(parent)
  );
}

/** Where engine code looks at a clock, at chance, or at its surroundings. */
export function impurities(tree: SourceTree): string[] {
  const problems: string[] = [];
  for (const [file, text] of tree) {
    if (!file.startsWith('lib/engine/') || file.startsWith('lib/engine/generated/')) continue;
    const source = parse(file, text);
    walk(source, (node) => {
      if (!ts.isIdentifier(node) || !isFreeValue(node)) return;
      const report = (what: string): void => {
        problems.push(`${file}:${lineOf(source, node)} ${what}`);
      };
      const member = ts.isPropertyAccessExpression(node.parent) ? node.parent.name.text : undefined;
      if (SURROUNDINGS.has(node.text)) report(node.text);
      else if (node.text === 'Math' && member === 'random') report('Math.random: take a seeded generator as an argument');
      else if (node.text === 'Date' && !CLOCKLESS.has(member ?? ''))
        report(`Date${member ? `.${member}` : ''}: take the date as an argument`);
    });
  }
  return problems;
}
