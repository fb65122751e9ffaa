import { readFile } from 'node:fs/promises';
import { evaluate, type Evaluation } from '@yardfall/calc';
import { canonicalBytes, DocumentParseError, parseDesignDocument } from '@yardfall/contracts';
import { isMessageCode, render } from '@yardfall/text';

export const exitCodes = { ok: 0, stopFinding: 2, badInput: 3 } as const;

export interface Answer {
  readonly code: number;
  readonly out: string;
  readonly error: string;
}

export type Format = 'json' | 'text';

const badInput = (path: string, sentence: string): Answer => ({ code: exitCodes.badInput, out: '', error: `${path || '(document)'}: ${sentence}` });

/** What is wrong with the document itself, from the parser or from the engine: both carry a code, a path and parameters. */
interface DocumentFault {
  readonly code: string;
  readonly path: string;
  readonly params: Readonly<Record<string, string | number>>;
}

function isDocumentFault(error: unknown): error is DocumentFault {
  return error instanceof Error && 'code' in error && 'path' in error && 'params' in error && typeof error.path === 'string' && typeof error.code === 'string';
}

function sentence({ code, params }: DocumentFault): string {
  if (isMessageCode(code)) return `${render('en', 'us', code, params)} (${code})`;
  const details = Object.entries(params).map(([name, value]) => (name === 'message' ? String(value) : `${name} ${String(value)}`));
  return details.length > 0 ? `${details.join(', ')} (${code})` : code;
}

/** Evaluates one document's text; never throws for what the text says. */
export async function evaluateText(text: string, format: Format): Promise<Answer> {
  try {
    const { document, sha256 } = await parseDesignDocument(text);
    const { calcVersion, results, findings, massError } = evaluate(document);
    const answer = { calcVersion, documentSha256: sha256, results, findings, massError };
    const out = format === 'json' ? new TextDecoder().decode(canonicalBytes(answer)) : summary(answer);
    const stops = findings.some((finding) => finding.severity === 'stop');
    return { code: stops ? exitCodes.stopFinding : exitCodes.ok, out, error: '' };
  } catch (error) {
    if (error instanceof DocumentParseError || isDocumentFault(error)) return badInput(error.path, sentence(error));
    throw error;
  }
}

export async function evaluateFile(file: string, format: Format): Promise<Answer> {
  let bytes: Buffer;
  try {
    bytes = await readFile(file);
  } catch (error) {
    return badInput(file, `cannot be read (${error instanceof Error ? error.message : String(error)})`);
  }
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return badInput(file, 'is not UTF-8 text');
  }
  return evaluateText(text, format);
}

type Printed = Pick<Evaluation, 'calcVersion' | 'results' | 'findings' | 'massError'> & { readonly documentSha256: string };

/** The same in SI for reading, one figure a line. */
function summary({ calcVersion, documentSha256, results, findings, massError }: Printed): string {
  const lines = [`calc ${calcVersion}`, `document ${documentSha256}`, `mass error ${massError.toExponential(2)}`];
  walk('', results, lines);
  for (const { severity, code, at, params, source } of findings) {
    lines.push(`${severity.toUpperCase()} ${code}${at === null ? '' : ` at ${at}`} ${JSON.stringify(params)} [${source}]`);
  }
  return lines.join('\n');
}

/** Runs of samples are for graphs: only their length is told. */
function walk(path: string, value: unknown, lines: string[]): void {
  if (Array.isArray(value) && value.length > 12) lines.push(`${path} (${value.length} entries)`);
  else if (typeof value === 'object' && value !== null) {
    for (const [key, item] of Object.entries(value)) walk(path === '' ? key : `${path}.${key}`, item, lines);
  } else lines.push(`${path} ${typeof value === 'number' ? Number(value.toPrecision(6)) : String(value)}`);
}
