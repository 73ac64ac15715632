/**
 * The direction of imports, stated once. `npm run check:imports` applies it to the tree; tests/architecture/imports.test.ts feeds
 * it forbidden imports and sees each rule refuse them. Each comment says where the code belongs instead.
 *
 *   app            ->  lib/features, lib/platform, engine types
 *   lib/cli        ->  lib/features, lib/engine, lib/reference, lib/platform
 *   lib/features   ->  lib/engine, lib/reference, lib/platform, other features (no cycles)
 *   lib/reference  ->  engine types
 *   lib/platform   ->  nothing of ours (format.ts: engine types)
 *   lib/engine     ->  small numeric libraries
 */

const GENERATOR = '^(scripts/(generate|formula/)|lib/engine/formula/generate)';
const DATABASE_FILES = '^(lib/features/[^/]+/(data|mutations)|lib/platform/(db|one-connection|audit|session))[.]ts$';
const PACKAGES = '(^|/)node_modules/';
const NUMERIC_PACKAGES = '(^|/)node_modules/(ml-[^/]+|is-any-array|@stdlib/[^/]+)/';
const PRISMA = '(^|/)node_modules/(@prisma/|prisma/|[.]prisma/)|^lib/platform/generated/';
const DATABASE = `${PRISMA}|(^|/)node_modules/libsql/`;
const WEB = '(^|/)node_modules/(next|react|react-dom|@mantine)/';
/** A value import; a type import leaves nothing behind in the running program. */
const VALUES_ONLY = { dependencyTypesNot: ['type-only'] };

/** @type {import('dependency-cruiser').IConfiguration} */
module.exports = {
  forbidden: [
    {
      name: 'no-cycles',
      severity: 'error',
      comment:
        'Two files that need each other are one file, or lack a third: move what both use into a file that imports neither.',
      from: {},
      to: { circular: true },
    },
    {
      name: 'resolvable',
      severity: 'error',
      comment:
        'The import leads nowhere. Mend the path or add the package; the database client is made by `node scripts/prepare-client.mjs`.',
      from: {},
      to: { couldNotResolve: true },
    },
    {
      name: 'declared-packages',
      severity: 'error',
      comment:
        'The package is in node_modules by accident of another one. Declare it in package.json, or use one that is declared.',
      from: {},
      to: { dependencyTypes: ['npm-no-pkg', 'npm-unknown'] },
    },
    {
      name: 'no-development-packages',
      severity: 'error',
      comment:
        'app and lib run where only "dependencies" may be installed. Move the package there, or the code to scripts or tests.',
      from: { path: '^(app|lib)/' },
      to: { dependencyTypes: ['npm-dev'], ...VALUES_ONLY, pathNot: '(^|/)node_modules/@types/' },
    },
    {
      name: 'nothing-imports-tests',
      severity: 'error',
      comment: 'Nothing depends on a test. Move what both need into lib and import it from the test.',
      from: { pathNot: '^(tests/|(vitest|playwright)[.]config[.]ts$)' },
      to: { path: '^tests/' },
    },
    {
      name: 'nothing-imports-scripts',
      severity: 'error',
      comment: 'Scripts use the program, not the other way round. Move the function into lib and call it from the script.',
      from: { path: '^(app|lib)/', pathNot: '^lib/engine/formula/generate' },
      to: { path: '^scripts/' },
    },

    {
      name: 'engine-alone',
      severity: 'error',
      comment: 'The engine knows nothing of ours outside itself. Pass what it needs as an argument (tables, settings, a date).',
      from: { path: '^lib/engine/' },
      to: { path: '^(app|lib|prisma|scripts|tests|reference-data)/|^[^/]+[.](ts|mts|mjs|json)$', pathNot: '^lib/engine/' },
    },
    {
      name: 'engine-packages',
      severity: 'error',
      comment:
        'The engine uses linear algebra and statistical functions only. Parsing and storing belong in lib/features, showing in app.',
      from: { path: '^lib/engine/', pathNot: GENERATOR },
      to: { path: PACKAGES, pathNot: `${NUMERIC_PACKAGES}|(^|/)node_modules/(highs|mathjs)/` },
    },
    {
      name: 'engine-no-machine',
      severity: 'error',
      comment:
        'The engine reads no file, clock, network or process. Read it at the edge (lib/reference, lib/features) and pass the value.',
      from: { path: '^lib/engine/', pathNot: GENERATOR },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'mathjs-in-the-generator',
      severity: 'error',
      comment:
        'mathjs writes the formulas down (scripts/generate.ts) and checks them in tests. Declare a formula sheet and use lib/engine/generated.',
      from: { pathNot: `${GENERATOR}|^tests/` },
      to: { path: '(^|/)node_modules/mathjs/' },
    },
    {
      name: 'solver-in-plan',
      severity: 'error',
      comment: 'The solver of whole-number programs serves the plan alone. Call the function of lib/engine/plan instead.',
      from: { pathNot: '^(lib/engine/plan/|tests/)' },
      to: { path: '(^|/)node_modules/highs/' },
    },
    {
      name: 'sheets-for-the-generator',
      severity: 'error',
      comment: 'A formula sheet is read by the generator only. Import the function that it writes into lib/engine/generated.',
      from: { pathNot: `${GENERATOR}|^tests/` },
      to: { path: '[.]sheet[.]ts$' },
    },
    {
      name: 'engine-by-its-door',
      severity: 'error',
      comment:
        'Values and types of the engine are imported from lib/engine/index.ts (client components: lib/engine/client.ts). Export what is missing there.',
      from: { pathNot: `${GENERATOR}|^(lib/engine|tests)/` },
      to: { path: '^lib/engine/', pathNot: '^lib/engine/(index|client)[.]ts$|[.]sheet[.]ts$' },
    },

    {
      name: 'reference-engine-types',
      severity: 'error',
      comment:
        'Tables are handed to the engine, never computed with it: use `import type`. What computes belongs in lib/features.',
      from: { path: '^lib/reference/' },
      to: { path: '^lib/engine/', ...VALUES_ONLY },
    },
    {
      name: 'reference-alone',
      severity: 'error',
      comment:
        'lib/reference reads reference-data into engine tables and needs nothing else of ours. Put what combines them into lib/features.',
      from: { path: '^lib/reference/' },
      to: { path: '^(app|prisma|lib/(features|platform|cli))/' },
    },
    {
      name: 'platform-alone',
      severity: 'error',
      comment:
        'lib/platform serves every feature and knows none. Pass the value in, or move the code into the feature that needs it.',
      from: { path: '^lib/platform/' },
      to: { path: '^(app|prisma|lib/(engine|reference|features|cli))/', pathNot: '^lib/engine/index[.]ts$' },
    },
    {
      name: 'platform-engine-types-in-format',
      severity: 'error',
      comment: 'Only lib/platform/format.ts may know the shape of a figure, and by `import type` alone.',
      from: { path: '^lib/platform/', pathNot: '^lib/platform/format[.]ts$' },
      to: { path: '^lib/engine/index[.]ts$' },
    },
    {
      name: 'format-engine-types',
      severity: 'error',
      comment: 'format.ts goes to the browser: it takes the shape of a figure by `import type` and no value of the engine.',
      from: { path: '^lib/platform/format[.]ts$' },
      to: { path: '^lib/engine/', ...VALUES_ONLY },
    },
    {
      name: 'features-below-screens',
      severity: 'error',
      comment: 'A feature is used by screens and commands and knows neither. Return data; let app or lib/cli show it.',
      from: { path: '^lib/features/' },
      to: { path: '^(app|lib/cli)/' },
    },
    {
      name: 'actions-for-screens',
      severity: 'error',
      comment: 'A server action belongs to a request. Call the mutation that it wraps.',
      from: { path: '^lib/', pathNot: '^lib/features/[^/]+/actions[.]ts$' },
      to: { path: '^lib/features/[^/]+/actions[.]ts$' },
    },
    {
      name: 'cli-below-nothing',
      severity: 'error',
      comment: 'The command line is an end: nothing is built on it. Move the shared part into lib/features.',
      from: { path: '^(app|lib)/', pathNot: '^lib/cli/' },
      to: { path: '^lib/cli/' },
    },
    {
      name: 'cli-not-the-app',
      severity: 'error',
      comment: 'The command line shows text, not screens. Move the shared part into lib/features.',
      from: { path: '^lib/cli/' },
      to: { path: '^app/' },
    },
    {
      name: 'cli-without-database-or-build',
      severity: 'error',
      comment:
        '`study` works after `npm ci` alone. Somewhere along this path a file needs the database or the web server: keep those in files that the command does not reach.',
      from: { path: '^lib/cli/' },
      to: { path: `${DATABASE}|${WEB}`, reachable: true },
    },

    {
      name: 'app-no-tables-of-its-own',
      severity: 'error',
      comment:
        'Screens read through loaders.ts, which knows the user, and write through actions.ts. data.ts and mutations.ts are for those two.',
      from: { path: '^app/' },
      to: { path: '^lib/features/[^/]+/(data|mutations)[.]ts$' },
    },
    {
      name: 'app-engine-types',
      severity: 'error',
      comment:
        'Screens compute nothing: use `import type`, and let a feature call the engine. Client components may use lib/engine/client.ts.',
      from: { path: '^app/' },
      to: { path: '^lib/engine/', pathNot: '^lib/engine/client[.]ts$', ...VALUES_ONLY },
    },
    {
      name: 'app-reference-in-two-places',
      severity: 'error',
      comment: 'Only the health route and the screen of tables read lib/reference. Elsewhere ask a loader.',
      from: { path: '^app/', pathNot: '^app/(api/health|[(]study[)]/(tables|reference))/' },
      to: { path: '^lib/reference/', ...VALUES_ONLY },
    },
    {
      name: 'app-no-scripts-or-schema',
      severity: 'error',
      comment: 'Screens know neither the schema folder nor its seed. Ask a loader.',
      from: { path: '^app/' },
      to: { path: '^prisma/' },
    },
    {
      name: 'prisma-in-its-files',
      severity: 'error',
      comment:
        'Prisma is used in data.ts, mutations.ts and lib/platform/{db,one-connection,audit,session}.ts. Add a function there and call it.',
      from: { path: '^(app|lib)/', pathNot: `${DATABASE_FILES}|^lib/platform/generated/` },
      to: { path: PRISMA },
    },
    {
      name: 'sqlite-in-platform',
      severity: 'error',
      comment:
        'The file of the database is opened in lib/platform alone (backups, migrations). Read and write rows through Prisma.',
      from: { path: '^(app|lib)/', pathNot: '^lib/platform/' },
      to: { path: '(^|/)node_modules/libsql/' },
    },
  ],
  options: {
    doNotFollow: { path: `${PACKAGES}|^lib/platform/generated/` },
    exclude: { path: '^([.]next|coverage|data|test-results|playwright-report)/|[.]next/' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    combinedDependencies: false,
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'require', 'node', 'default', 'types'] },
    reporterOptions: { text: { highlightFocused: true } },
  },
};
