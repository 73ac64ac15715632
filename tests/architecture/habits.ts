import path from 'node:path';
import ts from 'typescript';
import { importsOf, lineOf, parse, type SourceTree, walk } from './source-tree';

/** A file of this many lines or more is split. */
export const LINE_LIMIT = 400;

/** Files of app, lib, scripts and tests that are too long to be read in one go. */
export function longFiles(tree: SourceTree): string[] {
  return [...tree]
    .filter(([file]) => /^(app|lib|scripts|tests)\//.test(file))
    .map(([file, text]) => ({ file, lines: text.replace(/\n$/, '').split('\n').length }))
    .filter(({ lines }) => lines >= LINE_LIMIT)
    .map(({ file, lines }) => `${file} has ${lines} lines: split it below ${LINE_LIMIT}`);
}

const SUPPRESSIONS = /@ts-(ignore|expect-error|nocheck)|biome-ignore|eslint-disable|depcruise-disable|(v8|c8|istanbul) ignore/;
const REMINDERS = /\b(TODO|FIXME|XXX|HACK)\b/;
const TEST_FUNCTIONS = new Set(['test', 'it', 'describe', 'suite', 'bench']);
const NOT_RUN = new Set(['skip', 'only', 'todo', 'fixme', 'fails', 'fail', 'skipIf', 'runIf']);

/** The leftmost name of `test.describe.skip`. */
function leftmost(node: ts.Expression): string | undefined {
  if (ts.isIdentifier(node)) return node.text;
  return ts.isPropertyAccessExpression(node) || ts.isCallExpression(node) ? leftmost(node.expression) : undefined;
}

function commentsOf(source: ts.SourceFile): { readonly text: string; readonly line: number }[] {
  const { text } = source;
  const found = new Map<number, string>();
  const collect = (ranges: readonly ts.CommentRange[] | undefined): void => {
    for (const range of ranges ?? []) found.set(range.pos, text.slice(range.pos, range.end));
  };
  // Comments hang on tokens, and some tokens (a closing brace) are no nodes: hence getChildren, which gives both.
  const visit = (node: ts.Node): void => {
    if (ts.isJsxText(node)) return;
    collect(ts.getLeadingCommentRanges(text, node.getFullStart()));
    collect(ts.getTrailingCommentRanges(text, node.getEnd()));
    for (const child of node.getChildren(source)) if (!ts.isJSDoc(child)) visit(child);
  };
  visit(source);
  return [...found].map(([start, comment]) => ({ text: comment, line: source.getLineAndCharacterOfPosition(start).line + 1 }));
}

/** Ways round the checks: `any`, `!`, silenced complaints, tests that are not run, reminders in place of work. */
export function waysRound(tree: SourceTree): string[] {
  const problems: string[] = [];
  for (const [file, text] of tree) {
    const source = parse(file, text);
    for (const comment of commentsOf(source)) {
      const mark = SUPPRESSIONS.exec(comment.text)?.[0] ?? REMINDERS.exec(comment.text)?.[0];
      if (mark !== undefined) problems.push(`${file}:${comment.line} ${mark}`);
    }
    walk(source, (node) => {
      const report = (what: string): void => {
        problems.push(`${file}:${lineOf(source, node)} ${what}`);
      };
      if (node.kind === ts.SyntaxKind.AnyKeyword) report('any');
      if (ts.isNonNullExpression(node)) report('a value asserted to be there by "!"');
      if (
        ts.isPropertyAccessExpression(node) &&
        NOT_RUN.has(node.name.text) &&
        TEST_FUNCTIONS.has(leftmost(node.expression) ?? '')
      ) {
        report(`a test that does not always run, by .${node.name.text}`);
      }
    });
  }
  return problems;
}

/** The part of the tree that a file belongs to: imports are relative inside it and start with `@/` across. */
function area(file: string): string {
  return /^lib\/[^/]+/.exec(file)?.[0] ?? file.split('/')[0] ?? '';
}

/** Imports of ours that are spelled in another way than the one agreed. */
export function importSpelling(tree: SourceTree): string[] {
  const problems: string[] = [];
  for (const [file, text] of tree) {
    if (!/^(app|lib|scripts|prisma|tests)\/.*[.]tsx?$/.test(file)) continue;
    for (const { specifier, line } of importsOf(parse(file, text))) {
      const report = (what: string): void => {
        problems.push(`${file}:${line} "${specifier}" ${what}`);
      };
      if (specifier.startsWith('.')) {
        const target = path.posix.join(path.posix.dirname(file), specifier);
        if (area(target) !== area(file)) report('leaves its folder: begin with @/');
      } else if (!specifier.startsWith('@/')) continue;
      if (/[.](ts|tsx|js|mjs)$/.test(specifier)) report('names a file extension: leave it out');
    }
  }
  return problems;
}

const FEATURE_FILES = new Set(['schema.ts', 'data.ts', 'loaders.ts', 'mutations.ts', 'actions.ts']);
/** A part is named for what it does, in words joined by hyphens; these words say nothing. */
const EMPTY_NAMES = new Set([
  'utils',
  'util',
  'helpers',
  'helper',
  'common',
  'misc',
  'types',
  'constants',
  'index',
  'service',
  'services',
  'manager',
  'lib',
]);

/**
 * Files of lib/features outside the closed list: the five files with a fixed task, and parts named for what they do.
 * A file that has one of the five tasks under another name is not caught here but by the direction of imports.
 */
export function featureNames(tree: SourceTree): string[] {
  const problems: string[] = [];
  for (const file of tree.keys()) {
    const match = /^lib\/features\/(.+)$/.exec(file);
    if (!match) continue;
    const [feature, name, ...deeper] = (match[1] ?? '').split('/');
    if (name === undefined) problems.push(`${file}: a feature is a folder`);
    else if (deeper.length > 0)
      problems.push(`${file}: a feature has no folders; make it two features or name the part ${name}-…`);
    else if (!/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/.test(feature ?? ''))
      problems.push(`${file}: name the feature in lower case with hyphens`);
    else if (
      !FEATURE_FILES.has(name) &&
      (!/^[a-z][a-z0-9]*(-[a-z0-9]+)*[.]ts$/.test(name) || EMPTY_NAMES.has(name.replace(/[.]ts$/, '')))
    ) {
      problems.push(`${file}: use ${[...FEATURE_FILES].join(', ')}, or name the part for what it does`);
    }
  }
  return problems;
}
