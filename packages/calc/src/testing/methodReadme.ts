import { casesOf, HELPERS, METHOD_FOLDERS, methodFiles, methodsOf, type DocumentedMethod } from './methodTable.ts';

const HEAD = `# What calc computes

Pure TypeScript: SI inside, conversion at the edges, no clock, no I/O, the same bits on every engine.
One method stands in one file of \`src/<topic>\`, with its equation, arguments, limits, source and checks in the block above it.
This page is made from those blocks and from \`fixtures/index.json\`; a test fails when it is stale. Write it again with

\`\`\`
node -C development --import @oxc-node/core/register packages/calc/bench/writeReadme.ts
\`\`\`

A case is a row of \`fixtures/reference-rows.json\` (published values; every row has a case or a reason in the index) or a case of our own.
A tolerance is in the unit of the printed value, or a share where the index says relative; its reason stands in the index.
`;

const cell = (text: string): string => text.replaceAll('|', '\\|');

function rowOf(method: DocumentedMethod): string {
  const cases = casesOf(method.checked);
  const named = cases.length > 0 ? cases.map(({ row }) => row).join(', ') : `none published: ${method.checked === '' ? 'see the tests of its folder' : method.checked}`;
  const tolerance = cases.map(({ row, tolerance: value }) => `${row}: ${value}`).join(', ');
  return `| \`${method.name}\` ${cell(method.what)} | ${method.file} | ${cell(method.source)} | ${cell(method.range)} | ${cell(named)} | ${cell(tolerance)} |`;
}

/** The page as it has to stand in the repository. */
export function methodReadme(): string {
  const files = methodFiles();
  const topics = METHOD_FOLDERS.map((folder) => {
    const own = files.filter((file) => file.startsWith(`${folder}/`));
    const rows = own.flatMap((file) => methodsOf(file)).map(rowOf);
    const helpers = own.filter((file) => file in HELPERS).map((file) => `- \`${file}\`: ${HELPERS[file] ?? ''}`);
    return [`## ${folder}`, '', '| method | file | source | valid range | published cases | tolerance |', '| --- | --- | --- | --- | --- | --- |', ...rows, ...(helpers.length > 0 ? ['', ...helpers] : []), ''].join('\n');
  });
  return `${HEAD}\n${topics.join('\n')}`;
}
