import { readFile } from 'node:fs/promises';
import { evaluate } from '@yardfall/calc';
import { canonicalBytes, DocumentParseError, parseDesignDocument } from '@yardfall/contracts';
import { isMessageCode, render, type Language, type Units } from '@yardfall/text';
import { printed } from './text.ts';

export const exitCodes = { ok: 0, stopFinding: 2, badInput: 3 } as const;

export interface Answer {
  readonly code: number;
  readonly out: string;
  readonly error: string;
}

/** json: the canonical bytes. text: summary, findings and explanation in words; the language and units are the reader's. */
export interface Format {
  readonly kind: 'json' | 'text';
  readonly language: Language;
  readonly units: Units;
  readonly level: 'plain' | 'trade';
}

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

function sentence({ code, params }: DocumentFault, { language, units }: Format): string {
  if (isMessageCode(code)) return `${render(language, units, code, params)} (${code})`;
  const details = Object.entries(params).map(([name, value]) => (name === 'message' ? String(value) : `${name} ${String(value)}`));
  return details.length > 0 ? `${details.join(', ')} (${code})` : code;
}

/** Evaluates one document's text; never throws for what the text says. */
export async function evaluateText(text: string, format: Format): Promise<Answer> {
  try {
    const { document, sha256 } = await parseDesignDocument(text);
    const evaluation = evaluate(document);
    const out = format.kind === 'json'
      ? new TextDecoder().decode(canonicalBytes({ ...evaluation, documentSha256: sha256 }))
      : printed(document, evaluation, sha256, format);
    const stops = evaluation.findings.some((finding) => finding.severity === 'stop');
    return { code: stops ? exitCodes.stopFinding : exitCodes.ok, out, error: '' };
  } catch (error) {
    if (error instanceof DocumentParseError || isDocumentFault(error)) return badInput(error.path, sentence(error, format));
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
