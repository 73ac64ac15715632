import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { FormulaDeclaration } from '@/lib/engine/formula/declare';
import type { SystemDeclaration } from '@/lib/engine/formula/system';
import { writeSystem } from './formula/system';
import { type Sheet, writeModule } from './formula/write';

const ENGINE = fileURLToPath(new URL('../lib/engine', import.meta.url));
const GENERATED = path.join(ENGINE, 'generated');

/** Every sheet of the engine by name, in alphabetical order. */
export async function readSheets(): Promise<ReadonlyMap<string, Sheet>> {
  const sheets = new Map<string, Sheet>();
  for (const [name, loaded] of await readDeclarations<FormulaDeclaration>('.sheet.ts')) {
    const entries = Object.entries(loaded).sort(([a], [b]) => (a < b ? -1 : 1));
    sheets.set(name, Object.fromEntries(entries));
  }
  return sheets;
}

/** Every system of equations of the engine by name, in alphabetical order. */
export async function readSystems(): Promise<ReadonlyMap<string, SystemDeclaration>> {
  const systems = new Map<string, SystemDeclaration>();
  for (const [name, loaded] of await readDeclarations<SystemDeclaration>('.system.ts')) {
    const [declaration, ...others] = Object.values(loaded);
    if (!declaration || others.length > 0) throw new Error(`${name}.system.ts must state one system`);
    systems.set(name, declaration);
  }
  return systems;
}

async function readDeclarations<D>(ending: string): Promise<[string, Record<string, D>][]> {
  const files = readdirSync(ENGINE, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith(ending));
  const sorted = files.sort((a, b) => path.basename(a).localeCompare(path.basename(b), 'en'));
  return await Promise.all(
    sorted.map(
      async (file): Promise<[string, Record<string, D>]> => [
        path.basename(file, ending),
        (await import(pathToFileURL(path.join(ENGINE, file)).href)) as Record<string, D>,
      ],
    ),
  );
}

/** The text of every generated file, by file name. */
export async function generateAll(): Promise<ReadonlyMap<string, string>> {
  const sheets = await readSheets();
  const files = new Map([...sheets].map(([name, sheet]) => [`${name}.ts`, writeModule(name, sheet)] as const));
  for (const [name, system] of await readSystems()) files.set(`${name}.ts`, writeSystem(name, system));
  files.set(
    'catalog.ts',
    [
      '// Written by scripts/generate.ts. Do not edit.',
      "import type { Compiled } from '../formula/compiled';",
      ...[...sheets.keys()].map((name) => `import * as ${name.replaceAll('-', '_')} from './${name}';`),
      '',
      '/** Every formula of the engine, by sheet. */',
      'export const FORMULAS: Readonly<Record<string, Readonly<Record<string, Compiled>>>> = {',
      ...[...sheets.keys()].map((name) => `  ${JSON.stringify(name)}: ${name.replaceAll('-', '_')},`),
      '};',
      '',
    ].join('\n'),
  );
  return files;
}

async function main(): Promise<void> {
  const files = await generateAll();
  mkdirSync(GENERATED, { recursive: true });
  for (const file of readdirSync(GENERATED)) if (!files.has(file)) rmSync(path.join(GENERATED, file));
  let written = 0;
  for (const [file, text] of files) {
    const target = path.join(GENERATED, file);
    const old = readdirSync(GENERATED).includes(file) ? readFileSync(target, 'utf8') : undefined;
    if (old === text) continue;
    writeFileSync(target, text);
    written += 1;
  }
  console.error(`${files.size} generated files, ${written} changed`);
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) await main();
