import type { DesignDocument, Evaluation, Finding, Severity } from '@yardfall/calc';
import { explain, render, type Language, type Units } from '@yardfall/text';

export interface Reading {
  readonly language: Language;
  readonly units: Units;
  readonly level: 'plain' | 'trade';
}

const severities: readonly Severity[] = ['refer', 'stop', 'caution', 'note'];
const count = (findings: readonly Finding[], severity: Severity): number => findings.filter((finding) => finding.severity === severity).length;

/** A calculation for reading: what it is, every finding in words with its source, and the explanation; the notice ends it. */
export function printed(document: DesignDocument, evaluation: Evaluation, sha256: string, reading: Reading): string {
  const { language, units } = reading;
  const { findings } = evaluation;
  const say = (code: string, params: Readonly<Record<string, number | string>> = {}): string => render(language, units, code, params);
  const counts = Object.fromEntries(severities.map((severity) => [severity, count(findings, severity)]));
  const told = findings.map(({ severity, check, code, params, source }) =>
    `${say(`explain.severity.${severity}`)} ${check}: ${say(`findings.${code}`, params)} [${source}]`);
  return [
    say('explain.heading.summary'), '', document.title, say('explain.summary.version', { version: evaluation.calcVersion, sha256 }), say('explain.summary.counts', counts), '',
    say('explain.heading.findings'), '', ...told, '',
    say('explain.heading.words'), '', explain(document, evaluation, reading).map(({ text }) => text).join('\n\n'),
  ].join('\n');
}
