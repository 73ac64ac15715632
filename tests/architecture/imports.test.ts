import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type ImportCase, realConfiguration, refusals, writeTree } from './import-tree';

/**
 * The rules of imports are themselves under test: an invented tree holds one forbidden import for each rule and the permitted
 * ones beside them, and the tool, with the configuration of the repository, must refuse exactly the forbidden ones.
 */
const FORBIDDEN: readonly ImportCase[] = [
  { from: 'lib/features/fleet/one.ts', to: 'lib/features/fleet/two.ts', rules: ['no-cycles'] },
  { from: 'lib/features/fleet/lost.ts', to: 'lib/missing.ts', rules: ['resolvable'] },
  { from: 'lib/features/fleet/accident.ts', to: 'left-behind', rules: ['declared-packages'] },
  { from: 'lib/features/fleet/random.ts', to: 'fast-check', rules: ['no-development-packages'] },
  { from: 'app/_ui/sample.tsx', to: 'tests/sample.ts', rules: ['nothing-imports-tests'] },
  { from: 'scripts/check.ts', to: 'tests/sample.ts', rules: ['nothing-imports-tests'] },
  { from: 'lib/platform/jobs.ts', to: 'scripts/build.ts', rules: ['nothing-imports-scripts'] },

  { from: 'lib/engine/load/a.ts', to: 'lib/features/fleet/parse.ts', rules: ['engine-alone'] },
  { from: 'lib/engine/load/a.ts', to: 'lib/reference/load.ts', rules: ['engine-alone'] },
  { from: 'lib/engine/load/a.ts', to: 'lib/platform/format.ts', rules: ['engine-alone'] },
  { from: 'lib/engine/load/b.ts', to: 'lib/reference/load.ts', type: true, rules: ['engine-alone'] },
  { from: 'lib/engine/load/a.ts', to: 'app/_ui/table.tsx', rules: ['engine-alone'] },
  { from: 'lib/engine/load/a.ts', to: 'scripts/build.ts', rules: ['engine-alone', 'nothing-imports-scripts'] },
  { from: 'lib/engine/load/c.ts', to: 'zod', rules: ['engine-packages'] },
  { from: 'lib/engine/load/d.ts', to: 'zod', type: true, rules: ['engine-packages'] },
  { from: 'lib/engine/load/c.ts', to: 'react', rules: ['engine-packages'] },
  { from: 'lib/engine/load/c.ts', to: 'next', rules: ['engine-packages'] },
  { from: 'lib/engine/load/c.ts', to: '@prisma/client', rules: ['engine-packages', 'prisma-in-its-files'] },
  { from: 'lib/engine/load/c.ts', to: 'node:fs', rules: ['engine-no-machine'] },
  { from: 'lib/engine/load/c.ts', to: 'mathjs', rules: ['mathjs-in-the-generator'] },
  { from: 'lib/features/fleet/units.ts', to: 'mathjs', rules: ['mathjs-in-the-generator'] },
  { from: 'scripts/backup.ts', to: 'mathjs', rules: ['mathjs-in-the-generator'] },
  { from: 'lib/engine/options/choose.ts', to: 'highs', rules: ['solver-in-plan'] },
  { from: 'lib/features/plan/run.ts', to: 'highs', rules: ['solver-in-plan'] },
  { from: 'lib/engine/load/a.ts', to: 'lib/engine/load/slip.sheet.ts', rules: ['sheets-for-the-generator'] },
  { from: 'lib/features/explain/text.ts', to: 'lib/engine/load/slip.sheet.ts', rules: ['sheets-for-the-generator'] },
  { from: 'lib/features/explain/text.ts', to: 'lib/engine/load/slip.ts', rules: ['engine-by-its-door'] },
  { from: 'lib/features/explain/types.ts', to: 'lib/engine/load/slip.ts', type: true, rules: ['engine-by-its-door'] },
  { from: 'lib/cli/evaluate.ts', to: 'lib/engine/evaluate.ts', rules: ['engine-by-its-door'] },
  { from: 'scripts/backup.ts', to: 'lib/engine/evaluate.ts', rules: ['engine-by-its-door'] },

  { from: 'lib/reference/catalog.ts', to: 'lib/engine/index.ts', rules: ['reference-engine-types'] },
  { from: 'lib/reference/catalog.ts', to: 'lib/platform/env.ts', rules: ['reference-alone'] },
  { from: 'lib/reference/catalog.ts', to: 'lib/features/fleet/parse.ts', type: true, rules: ['reference-alone'] },
  { from: 'lib/platform/jobs.ts', to: 'lib/features/fleet/parse.ts', rules: ['platform-alone'] },
  { from: 'lib/platform/jobs.ts', to: 'lib/reference/load.ts', type: true, rules: ['platform-alone'] },
  { from: 'lib/platform/jobs.ts', to: 'lib/engine/index.ts', type: true, rules: ['platform-engine-types-in-format'] },
  { from: 'lib/platform/format.ts', to: 'lib/engine/index.ts', rules: ['format-engine-types'] },
  { from: 'lib/features/fleet/show.ts', to: 'app/_ui/table.tsx', rules: ['features-below-screens'] },
  { from: 'lib/features/fleet/show.ts', to: 'lib/cli/output.ts', rules: ['cli-below-nothing', 'features-below-screens'] },
  { from: 'lib/features/study/rerun.ts', to: 'lib/features/fleet/actions.ts', rules: ['actions-for-screens'] },
  { from: 'app/page.tsx', to: 'lib/cli/output.ts', rules: ['cli-below-nothing'] },
  { from: 'lib/cli/output.ts', to: 'app/_ui/numbers.ts', rules: ['cli-not-the-app'] },
  { from: 'lib/cli/store.ts', to: '@prisma/client', rules: ['cli-without-database-or-build', 'prisma-in-its-files'] },
  { from: 'lib/cli/page.ts', to: 'next', rules: ['cli-without-database-or-build'] },

  { from: 'app/(study)/fleet/page.tsx', to: 'lib/features/fleet/data.ts', rules: ['app-no-tables-of-its-own'] },
  { from: 'app/(study)/fleet/page.tsx', to: 'lib/features/fleet/mutations.ts', rules: ['app-no-tables-of-its-own'] },
  { from: 'app/(study)/fleet/row.tsx', to: 'lib/features/fleet/data.ts', type: true, rules: ['app-no-tables-of-its-own'] },
  { from: 'app/(study)/motor/page.tsx', to: 'lib/engine/index.ts', rules: ['app-engine-types'] },
  { from: 'app/(study)/motor/page.tsx', to: 'lib/reference/load.ts', rules: ['app-reference-in-two-places'] },
  { from: 'app/(study)/motor/page.tsx', to: 'prisma/seed.ts', rules: ['app-no-scripts-or-schema'] },
  { from: 'app/(study)/motor/page.tsx', to: '@prisma/client', rules: ['prisma-in-its-files'] },
  { from: 'lib/features/fleet/loaders.ts', to: '@prisma/client', rules: ['prisma-in-its-files'] },
  { from: 'lib/platform/jobs.ts', to: 'lib/platform/generated/client.ts', rules: ['prisma-in-its-files'] },
  { from: 'lib/features/fleet/fast.ts', to: 'libsql', rules: ['sqlite-in-platform'] },
];

/** Halves of a refusal that is named elsewhere: the way back of a cycle, and the steps by which a command reaches the database. */
const ACCOMPLICES: readonly ImportCase[] = [
  { from: 'lib/features/fleet/two.ts', to: 'lib/features/fleet/one.ts', rules: [] },
  { from: 'lib/cli/list.ts', to: 'lib/features/archive/data.ts', rules: [] },
  { from: 'lib/features/archive/data.ts', to: '@prisma/client', rules: [] },
];
const DETOUR_REFUSAL = 'cli-without-database-or-build: lib/cli/list.ts -> node_modules/@prisma/client/index.js';

const PERMITTED: readonly ImportCase[] = [
  { from: 'lib/engine/load/good.ts', to: 'lib/engine/quantity/quantity.ts', rules: [] },
  { from: 'lib/engine/load/good.ts', to: 'ml-matrix', rules: [] },
  { from: 'lib/engine/load/good.ts', to: '@stdlib/stats-base-dists-normal-quantile', rules: [] },
  { from: 'lib/engine/plan/solve.ts', to: 'highs', rules: [] },
  { from: 'scripts/generate.ts', to: 'lib/engine/load/slip.sheet.ts', rules: [] },
  { from: 'scripts/generate.ts', to: 'lib/engine/formula/declare.ts', type: true, rules: [] },
  { from: 'scripts/formula/tree.ts', to: 'mathjs', rules: [] },
  { from: 'tests/engine/slip.test.ts', to: 'lib/engine/load/slip.ts', rules: [] },
  { from: 'tests/engine/slip.test.ts', to: 'mathjs', rules: [] },
  { from: 'tests/engine/slip.test.ts', to: 'fast-check', rules: [] },
  { from: 'lib/reference/good.ts', to: 'lib/engine/index.ts', type: true, rules: [] },
  { from: 'lib/reference/good.ts', to: 'node:fs', rules: [] },
  { from: 'lib/platform/format.ts', to: 'lib/engine/index.ts', type: true, rules: [] },
  { from: 'lib/platform/db.ts', to: 'lib/platform/generated/client.ts', rules: [] },
  { from: 'lib/platform/db.ts', to: '@prisma/client', rules: [] },
  { from: 'lib/platform/sqlite.ts', to: 'libsql', rules: [] },
  { from: 'lib/features/fleet/mutations.ts', to: '@prisma/client', rules: [] },
  { from: 'lib/features/fleet/mutations.ts', to: 'lib/platform/db.ts', rules: [] },
  { from: 'lib/features/fleet/loaders.ts', to: 'lib/features/fleet/data.ts', rules: [] },
  { from: 'lib/features/fleet/actions.ts', to: 'lib/features/fleet/mutations.ts', rules: [] },
  { from: 'lib/features/study/evaluate.ts', to: 'lib/engine/index.ts', rules: [] },
  { from: 'lib/features/study/evaluate.ts', to: 'lib/reference/load.ts', rules: [] },
  { from: 'lib/features/study/evaluate.ts', to: 'lib/features/fleet/parse.ts', rules: [] },
  { from: 'lib/features/fleet/parse.ts', to: 'zod', rules: [] },
  { from: 'lib/cli/good.ts', to: 'lib/features/study/evaluate.ts', rules: [] },
  { from: 'lib/cli/good.ts', to: 'lib/engine/index.ts', rules: [] },
  { from: 'app/(study)/fleet/good.tsx', to: 'lib/features/fleet/loaders.ts', rules: [] },
  { from: 'app/(study)/fleet/good.tsx', to: 'lib/features/fleet/actions.ts', rules: [] },
  { from: 'app/(study)/fleet/good.tsx', to: 'lib/engine/index.ts', type: true, rules: [] },
  { from: 'app/(study)/fleet/good.tsx', to: 'lib/engine/client.ts', rules: [] },
  { from: 'app/(study)/fleet/good.tsx', to: 'lib/platform/format.ts', rules: [] },
  { from: 'app/(study)/fleet/good.tsx', to: 'react', rules: [] },
  { from: 'app/api/health/route.ts', to: 'lib/reference/load.ts', rules: [] },
  { from: 'app/(study)/tables/page.tsx', to: 'lib/reference/load.ts', rules: [] },
];

/** The form in which the tool names the end of an import. */
function resolved(to: string): string {
  if (to === 'lib/missing.ts') return '@/lib/missing';
  if (to.includes('.ts')) return to;
  return to.startsWith('node:') ? to.slice('node:'.length) : `node_modules/${to}/index.js`;
}

describe('direction of imports', () => {
  const cases = [...FORBIDDEN, ...ACCOMPLICES, ...PERMITTED];
  let found: readonly string[] = [];
  let remove = (): void => {};

  beforeAll(async () => {
    const tree = writeTree(cases);
    remove = tree.remove;
    found = await refusals(tree.folder, ['app', 'lib', 'scripts', 'prisma', 'tests']);
  });
  afterAll(() => remove());

  test.each(FORBIDDEN)('$rules refuses $from -> $to', ({ from, to, rules }) => {
    const refusedBy = found.filter((line) => line.endsWith(`: ${from} -> ${resolved(to)}`)).map((line) => line.split(':')[0]);
    expect(refusedBy.sort()).toEqual([...rules].sort());
  });

  test('a command is refused the database by a detour as well', () => {
    expect(found).toContain(DETOUR_REFUSAL);
  });

  test('nothing else is refused, so every permitted import passes', () => {
    const expected = FORBIDDEN.flatMap(({ from, to, rules }) => rules.map((rule) => `${rule}: ${from} -> ${resolved(to)}`));
    expect([...found].sort()).toEqual([...expected, DETOUR_REFUSAL].sort());
  });

  test('every rule has a case that it refuses, is an error, and says where the code belongs', () => {
    const rules = realConfiguration().forbidden;
    const exercised = new Set(FORBIDDEN.flatMap((one) => one.rules));
    expect(rules.map((rule) => rule.name).filter((name) => !exercised.has(name ?? ''))).toEqual([]);
    expect(rules.filter((rule) => rule.severity !== 'error').map((rule) => rule.name)).toEqual([]);
    expect(rules.filter((rule) => (rule.comment ?? '').split(' ').length < 8).map((rule) => rule.name)).toEqual([]);
  });
});
