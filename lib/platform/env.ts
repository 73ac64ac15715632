/**
 * The program's surroundings, read once from the environment and checked. Nothing else reads `process.env`.
 *
 * | variable | meaning | default |
 * | --- | --- | --- |
 * | `LOSSBOOK_DATA` | folder of the database and its backups | `data` in the project folder |
 * | `PORT` | first port to try | 3000 |
 * | `LOSSBOOK_HOST` | address to listen on | 127.0.0.1 |
 * | `LOSSBOOK_HOSTS` | further names under which the program may be addressed, separated by commas | none |
 * | `LOSSBOOK_REFERENCE` | another folder of reference tables | `reference-data` in the project folder |
 */
import path from 'node:path';
import { z } from 'zod';

const empty = (value: unknown): unknown => (value === '' ? undefined : value);

const schema = z.object({
  LOSSBOOK_DATA: z.preprocess(empty, z.string().default('data')),
  PORT: z.preprocess(empty, z.coerce.number().int().min(0).max(65_535).default(3000)),
  LOSSBOOK_HOST: z.preprocess(empty, z.string().default('127.0.0.1')),
  LOSSBOOK_HOSTS: z.preprocess(empty, z.string().default('')),
  LOSSBOOK_REFERENCE: z.preprocess(empty, z.string().optional()),
  NODE_ENV: z.preprocess(empty, z.string().default('development')),
});

export interface Env {
  /** The folder that holds `package.json`, `prisma` and `reference-data`. */
  readonly projectFolder: string;
  readonly dataFolder: string;
  readonly databaseFile: string;
  readonly backupFolder: string;
  readonly migrationsFolder: string;
  /** Absent: the project's own `reference-data`. */
  readonly referenceFolder: string | undefined;
  readonly port: number;
  readonly host: string;
  /** Names besides the loopback ones that a `Host` header may carry. */
  readonly hosts: readonly string[];
  readonly production: boolean;
}

/** Raised at start when a variable cannot be understood; the message names it. */
export class BadEnvironment extends Error {
  override readonly name = 'BadEnvironment';
}

/**
 * Reads the environment. The project folder is the working folder: `npm` and the start script see to that.
 * @throws BadEnvironment naming the variable.
 */
export function readEnv(source: Readonly<Record<string, string | undefined>> = process.env, cwd: string = process.cwd()): Env {
  const parsed = schema.safeParse(source);
  if (!parsed.success) {
    const issue = parsed.error.issues[0];
    throw new BadEnvironment(`The environment variable ${issue?.path.join('.') ?? ''} cannot be used: ${issue?.message ?? ''}.`);
  }
  const values = parsed.data;
  const dataFolder = path.resolve(cwd, values.LOSSBOOK_DATA);
  return {
    projectFolder: cwd,
    dataFolder,
    databaseFile: path.join(dataFolder, 'lossbook.db'),
    backupFolder: path.join(dataFolder, 'backups'),
    migrationsFolder: path.join(cwd, 'prisma', 'migrations'),
    referenceFolder: values.LOSSBOOK_REFERENCE === undefined ? undefined : path.resolve(cwd, values.LOSSBOOK_REFERENCE),
    port: values.PORT,
    host: values.LOSSBOOK_HOST,
    hosts: values.LOSSBOOK_HOSTS.split(',')
      .map((name) => name.trim().toLowerCase())
      .filter((name) => name !== ''),
    production: values.NODE_ENV === 'production',
  };
}
