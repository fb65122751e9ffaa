import { evaluateFile, exitCodes, type Format } from './evaluate.ts';

const usage = 'usage: npm run evaluate -- FILE [--json | --text [--es] [--metric] [--trade]]';
const known: readonly string[] = ['--json', '--text', '--es', '--metric', '--trade'];

function formatOf(options: readonly string[]): Format | undefined {
  if (options.some((option) => !known.includes(option)) || (options.includes('--json') && options.length > 1)) return undefined;
  const asks = (option: string): boolean => options.includes(option);
  const kind = options.length > 0 && !asks('--json') ? 'text' : 'json';
  return { kind, language: asks('--es') ? 'es' : 'en', units: asks('--metric') ? 'metric' : 'us', level: asks('--trade') ? 'trade' : 'plain' };
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
