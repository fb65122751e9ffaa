// The import rules of the house. Each has its reason; `npm run check` fails on any breach.
const api = '^apps/api/src/';
const web = '^apps/web/src/';
const features = 'identity|company|customers|jobs|surveys|designs|prices|offers|locates|schedule|checklists|photos|findings|proof|portal|rain|notices|audit|board|evaluate';

/** @type {import('dependency-cruiser').IConfiguration} */
export default {
  forbidden: [
    {
      name: 'no-cycles', severity: 'error',
      comment: 'Two files that need each other are one file, or hide a third that both need.',
      from: {}, to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
    },
    {
      name: 'not-to-unresolvable', severity: 'error',
      comment: 'An import that leads nowhere fails only when it is run.',
      from: {}, to: { couldNotResolve: true, pathNot: '^words:' }, // those files are made by the build of the page
    },
    {
      name: 'calc-imports-nothing', severity: 'error',
      comment: 'The numbers must be the same in the browser, on the server and on the command line, and readable without knowing any of them.',
      from: { path: '^packages/calc/src/', pathNot: '\\.test\\.ts$|^packages/calc/src/testing/|^packages/calc/src/surface/' }, to: { pathNot: '^packages/calc/src/(?!testing/)' },
    },
    {
      name: 'surface-imports-predicates', severity: 'error',
      comment: 'The triangles need signs that are exact; that library uses + - * and Math.abs only and is the one thing that calc takes from outside.',
      from: { path: '^packages/calc/src/surface/', pathNot: '\\.test\\.ts$' }, to: { pathNot: '^packages/calc/src/(?!testing/)|^node_modules/robust-predicates/' },
    },
    {
      name: 'calc-tests-stay-at-home', severity: 'error',
      comment: 'The tests of the numbers read only the package and its fixtures, so that they can be trusted on their own.',
      from: { path: '^packages/calc/src/.*\\.test\\.ts$' }, to: { path: '^(apps|tests|tools|packages/(?!calc/))' },
    },
    {
      name: 'contracts-know-only-calc', severity: 'error',
      comment: 'A contract is read by API, web and tests: whatever it imports, all of them load. zod, luxon, canonicalize and the types of calc are enough.',
      from: { path: '^packages/contracts/src/', pathNot: '\\.test(-d)?\\.ts$' },
      to: { pathNot: '^(packages/(contracts|calc)/src/|node_modules/(@types/)?(zod|luxon|canonicalize)/)' },
    },
    {
      name: 'contracts-take-types-from-calc', severity: 'error',
      comment: 'Reading a contract must not load the engine; the upgrade of older documents is a leaf of its own.',
      from: { path: '^packages/contracts/src/', pathNot: '\\.test(-d)?\\.ts$' },
      to: { path: '^packages/calc/', pathNot: '^packages/calc/(src|dist)/document/upgrade', dependencyTypesNot: ['type-only'] },
    },
    {
      name: 'drawing-and-text-know-only-types-of-calc', severity: 'error',
      comment: 'They draw and say what was computed; if they could compute, there would be a second set of numbers.',
      from: { path: '^packages/(drawing|text)/src/', pathNot: '\\.test\\.ts$' },
      to: { path: '^(apps|packages/(?!$1/))', dependencyTypesNot: ['type-only'] },
    },
    {
      name: 'packages-know-no-app', severity: 'error',
      comment: 'Packages are below the apps; upwards there is no way.',
      from: { path: '^packages/' }, to: { path: '^apps/' },
    },
    {
      name: 'nothing-imports-tests', severity: 'error',
      comment: 'What ships must not depend on what proves it.',
      from: { pathNot: '^tests/|\\.test(-d)?\\.tsx?$|^playwright\\.config\\.ts$|^tools/screens' },
      to: { path: '^tests/|\\.test(-d)?\\.tsx?$' },
    },
    {
      name: 'only-the-api-touches-the-database', severity: 'error',
      comment: 'Row security, audit and events hang on the one way to the tables; a second way would go round them.',
      from: { pathNot: '^(apps/api/|tests/|tools/|prisma)' },
      to: { path: '^node_modules/(@prisma/|pg/|graphile-worker/)|^apps/api/src/generated/' },
    },
    {
      name: 'web-and-api-meet-in-the-contracts', severity: 'error',
      comment: 'The client knows the service by its contracts, or a change on one side breaks the other unseen.',
      from: { path: web }, to: { path: '^apps/(api|cli)/' },
    },
    {
      name: 'api-knows-no-client', severity: 'error',
      comment: 'The service serves any client.',
      from: { path: '^apps/(api|cli)/' }, to: { path: '^apps/web/' },
    },
    {
      name: 'rules-and-presenters-are-pure', severity: 'error',
      comment: 'A rule that knows neither the framework nor the database can be read and tested as a sentence.',
      from: { path: `${api}.*\\.(rules|presenter)\\.ts$` },
      to: { path: '^node_modules/(@nestjs|@prisma|pg|express)/|^apps/api/src/common/database\\.ts$', dependencyTypesNot: ['type-only'] },
    },
    {
      name: 'controllers-go-through-services', severity: 'error',
      comment: 'A controller binds a route and delegates; who may see what, and in which transaction, is the service\'s business.',
      from: { path: `${api}.*\\.controller\\.ts$` },
      to: { path: `${api}.*\\.(access|lock|queries)\\.ts$|^node_modules/(@prisma|pg)/` },
    },
    {
      name: 'nothing-but-modules-imports-controllers', severity: 'error',
      comment: 'controller -> service -> access, rules, lock, queries, common: never upwards.',
      from: { path: api, pathNot: '\\.(module|test)\\.ts$|/routes?\\.check\\.ts$' }, to: { path: `${api}.*\\.controller\\.ts$` },
    },
    {
      name: 'common-knows-no-feature', severity: 'error',
      comment: 'What all features stand on cannot stand on one of them.',
      from: { path: `${api}common/` }, to: { path: `${api}(${features})/` },
    },
    {
      name: 'nothing-imports-the-board', severity: 'error',
      comment: 'Features form no cycle: the board is at the top and reads what each of them wrote.',
      from: { path: `${api}(?!board/|app\\.)` }, to: { path: `${api}board/` },
    },
    {
      name: 'web-shared-knows-no-feature', severity: 'error',
      comment: 'app -> features -> shared: what every feature uses knows none of them.',
      from: { path: `${web}(components|hooks|lib)/` }, to: { path: `${web}(app|features)/` },
    },
    {
      name: 'web-features-keep-apart', severity: 'error',
      comment: 'A feature that imports another cannot be changed alone; what both need is shared, what joins them is in app.',
      from: { path: `${web}features/([^/]+)/` }, to: { path: `${web}(app/|features/(?!$1/))` },
    },
    {
      name: 'web-models-know-no-react', severity: 'error',
      comment: 'Edits of a drawing or a form are plain functions, tested without a page.',
      from: { path: `${web}features/[^/]+/model/`, pathNot: '\\.test\\.tsx?$' }, to: { path: '^node_modules/(react|react-dom|@tanstack)/' },
    },
    {
      name: 'no-undeclared-packages', severity: 'error',
      comment: 'A package that only another package asked for goes away when that one changes.',
      from: { path: '^(apps|packages)/', pathNot: '\\.test(-d)?\\.tsx?$|/testing/' }, to: { dependencyTypes: ['npm-no-pkg', 'npm-unknown'] },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: ['/dist[^/]*/'] },
    tsPreCompilationDeps: true,
    combinedDependencies: false,
    tsConfig: { fileName: 'tsconfig.base.json' },
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['development', 'types', 'import', 'node', 'default'], extensions: ['.ts', '.tsx', '.mjs', '.js', '.json', '.d.ts'] },
  },
};
