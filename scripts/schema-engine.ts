/**
 * The schema engine as WebAssembly from its npm package: compares `prisma/schema.prisma` with a database, needs no native
 * program and no network. Used to write migrations and to test that they add up to the schema.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { PrismaLibSql } from '@prisma/adapter-libsql';
import { bindMigrationAwareSqlAdapterFactory, type SqlMigrationAwareDriverAdapterFactory } from '@prisma/driver-adapter-utils';
import * as engineModule from '@prisma/schema-engine-wasm/schema_engine_bg';

interface WasmDoor {
  __wbg_set_wasm(exports: WebAssembly.Exports): void;
}

let ready = false;

function hasDoor(module: object): module is WasmDoor {
  return '__wbg_set_wasm' in module && typeof module.__wbg_set_wasm === 'function';
}

function initialise(): void {
  if (ready) return;
  const door: object = engineModule;
  if (!hasDoor(door)) throw new Error('The schema engine package has another shape than expected.');
  const require = createRequire(import.meta.url);
  const folder = path.dirname(require.resolve('@prisma/schema-engine-wasm/schema_engine_bg'));
  const binary = new WebAssembly.Module(readFileSync(path.join(folder, 'schema_engine_bg.wasm')));
  const imports: WebAssembly.ModuleImports = {};
  for (const [name, value] of Object.entries(engineModule)) if (typeof value === 'function') imports[name] = value;
  const instance = new WebAssembly.Instance(binary, { './schema_engine_bg.js': imports });
  door.__wbg_set_wasm(instance.exports);
  const start = instance.exports.__wbindgen_start;
  if (typeof start === 'function') start();
  ready = true;
}

/**
 * The SQL that turns the tables of a database file into those of a schema file; empty when they agree.
 * @param databaseFile an existing database; its migration record is left out of the comparison.
 */
export async function diffToSchema(databaseFile: string, schemaFile: string): Promise<string> {
  initialise();
  const adapters: { dispose(): Promise<void> }[] = [];
  const factory = new PrismaLibSql({ url: `file:${databaseFile}` });
  const kept = <A extends { dispose(): Promise<void> }>(adapter: A): A => {
    adapters.push(adapter);
    return adapter;
  };
  const tracked: SqlMigrationAwareDriverAdapterFactory = {
    provider: factory.provider,
    adapterName: factory.adapterName,
    connect: async () => kept(await factory.connect()),
    connectToShadowDb: async () => kept(await factory.connectToShadowDb()),
  };
  const schema = { path: schemaFile, content: readFileSync(schemaFile, 'utf8') };
  const lines: string[] = [];
  const engine = await engineModule.SchemaEngine.new(
    { datamodels: [[schema.path, schema.content]] },
    (line: string) => lines.push(line),
    bindMigrationAwareSqlAdapterFactory(tracked),
  );
  try {
    const result = await engine.diff({
      from: { tag: 'schemaDatasource', files: [schema], configDir: path.dirname(schemaFile) },
      to: { tag: 'schemaDatamodel', files: [schema] },
      script: true,
      exitCode: true,
      filters: { externalTables: [], externalEnums: [] },
    });
    if (result.exitCode === 0) return '';
    return result.stdout ?? '';
  } finally {
    engine.free();
    // free() does not close the connections, and the file would stay locked.
    for (const adapter of adapters) await adapter.dispose();
  }
}
