import { evaluateFile, exitCodes, type Format } from './evaluate.ts';

const usage = 'usage: npm run evaluate -- FILE [--json | --text]';

function formatOf(options: readonly string[]): Format | undefined {
  if (options.some((option) => option !== '--json' && option !== '--text')) return undefined;
  return options.includes('--text') ? 'text' : 'json';
}

const [command, ...words] = process.argv.slice(2);
const files = words.filter((word) => !word.startsWith('--'));
const format = formatOf(words.filter((word) => word.startsWith('--')));
const [file] = files;

if (command !== 'evaluate' || file === undefined || files.length > 1 || format === undefined) {
  process.stderr.write(`${usage}\n`);
  process.exitCode = exitCodes.badInput;
} else {
  const { code, out, error } = await evaluateFile(file, format);
  if (out !== '') process.stdout.write(`${out}\n`);
  if (error !== '') process.stderr.write(`${error}\n`);
  process.exitCode = code;
}
