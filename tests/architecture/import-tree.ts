import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { cruise, type ICruiseOptions, type ICruiseResult, type IForbiddenRuleType } from 'dependency-cruiser';
import extractTSConfig from 'dependency-cruiser/config-utl/extract-ts-config';

/** One import in an invented source tree. */
export interface ImportCase {
  readonly from: string;
  /** A path in the tree (without `@/`), a package name or a `node:` name. */
  readonly to: string;
  /** `import type` instead of a value import. */
  readonly type?: boolean;
  /** Names of the rules that must refuse it; empty when it is permitted. */
  readonly rules: readonly string[];
}

interface Configuration {
  readonly forbidden: readonly IForbiddenRuleType[];
  readonly options: ICruiseOptions;
}

const CONFIGURATION_FILE = fileURLToPath(new URL('../../.dependency-cruiser.cjs', import.meta.url));

/** The configuration as `npm run check:imports` reads it. */
export function realConfiguration(): Configuration {
  return createRequire(import.meta.url)(CONFIGURATION_FILE) as Configuration;
}

const PRESENT_PACKAGES = [
  'zod',
  'react',
  'next',
  'mathjs',
  'highs',
  'ml-matrix',
  '@stdlib/stats-base-dists-normal-quantile',
  '@prisma/client',
  'libsql',
  'papaparse',
];
const DEVELOPMENT_PACKAGES = ['fast-check'];
const UNDECLARED_PACKAGES = ['left-behind'];

/** Writes the files of the cases, with stand-ins for packages, into a new folder; `remove` deletes it. */
export function writeTree(cases: readonly ImportCase[]): { readonly folder: string; readonly remove: () => void } {
  const folder = realpathSync(mkdtempSync(path.join(tmpdir(), 'imports-')));
  const write = (file: string, text: string): void => {
    mkdirSync(path.dirname(path.join(folder, file)), { recursive: true });
    writeFileSync(path.join(folder, file), text);
  };
  const lines = new Map<string, string[]>();
  const linesOf = (file: string): string[] => {
    const known = lines.get(file) ?? [];
    lines.set(file, known);
    return known;
  };
  cases.forEach(({ from, to, type }, index) => {
    const inTree = to.includes('.ts');
    if (inTree && to !== 'lib/missing.ts') linesOf(to);
    const specifier = inTree ? `@/${to.replace(/[.]tsx?$/, '')}` : to;
    linesOf(from).push(
      type
        ? `import type { Shape as Shape${index} } from '${specifier}';`
        : `import { value as value${index} } from '${specifier}';`,
    );
  });
  for (const [file, imports] of lines)
    write(file, `${imports.join('\n')}\nexport const value = 1;\nexport type Shape = number;\n`);

  const declared = (names: readonly string[]): Record<string, string> => Object.fromEntries(names.map((name) => [name, '1.0.0']));
  write(
    'package.json',
    JSON.stringify({ type: 'module', dependencies: declared(PRESENT_PACKAGES), devDependencies: declared(DEVELOPMENT_PACKAGES) }),
  );
  // With a base address, `@/` means this tree and not the folder in which the tests run.
  write(
    'tsconfig.json',
    JSON.stringify({
      compilerOptions: { module: 'esnext', moduleResolution: 'bundler', baseUrl: '.', paths: { '@/*': ['./*'] } },
    }),
  );
  for (const name of [...PRESENT_PACKAGES, ...DEVELOPMENT_PACKAGES, ...UNDECLARED_PACKAGES]) {
    write(`node_modules/${name}/package.json`, JSON.stringify({ name, version: '1.0.0', main: 'index.js' }));
    write(`node_modules/${name}/index.js`, 'exports.value = 1;\n');
  }
  return { folder, remove: () => rmSync(folder, { recursive: true, force: true }) };
}

/** What the tool refuses in a tree, each as `rule: from -> to`. Resolution is cached by the tool: one tree per process. */
export async function refusals(folder: string, parts: readonly string[]): Promise<string[]> {
  const { forbidden, options } = realConfiguration();
  const fileName = path.join(folder, 'tsconfig.json');
  const report = await cruise(
    [...parts],
    { ...options, ruleSet: { forbidden: [...forbidden] }, validate: true, baseDir: folder, tsConfig: { fileName } },
    undefined,
    { tsConfig: extractTSConfig(fileName) },
  );
  const result = report.output as ICruiseResult;
  return result.summary.violations.map(({ rule, from, to }) => `${rule.name}: ${from} -> ${to}`);
}
