import { readEnv } from '@/lib/platform/env';
import { checkHealth } from '@/lib/platform/health';
import { checkTables } from '@/lib/reference/load';

export const dynamic = 'force-dynamic';

/** 200 only if database, migrations and reference tables are sound; else 503 with the part that is not. */
export function GET(): Response {
  const env = readEnv();
  const health = checkHealth({
    databaseFile: env.databaseFile,
    migrationsFolder: env.migrationsFolder,
    checkTables: () => {
      const tables = checkTables(env.referenceFolder);
      return tables.ok ? undefined : tables.problem;
    },
  });
  return Response.json(health, { status: health.status === 'ok' ? 200 : 503, headers: { 'cache-control': 'no-store' } });
}
