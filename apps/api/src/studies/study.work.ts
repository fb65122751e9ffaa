import {
  CalcProblem, type Choice, type DesignDocument, fitExistingLoss, longRecord, type LongRecordResult, mergeOptions, optionsSlice, type OptionsFront, parseHourly, parseSeries, recordQuality, type RainRecord, seriesMinutes,
} from '@yardfall/calc';
import { type OptionCost, optionCost, type PriceList } from './cost.rules.ts';
import type { Bought } from './options.rules.ts';

/** Work that takes whole seconds of a processor, as plain data. */
export type StudyWork =
  | { readonly kind: 'options'; readonly document: DesignDocument; readonly choices: readonly Choice[]; readonly bought: readonly Bought[]; readonly prices: PriceList }
  | { readonly kind: 'record'; readonly document: DesignDocument; readonly text: string; readonly name: string; readonly reportedPerYear: number | null }
  | { readonly kind: 'span'; readonly text: string; readonly name: string };

export interface RecordSpanned {
  readonly step: number;
  readonly from: string;
  readonly to: string;
  readonly years: number;
  readonly missingHours: number;
}

export type StudyResult =
  | { readonly kind: 'options'; readonly front: OptionsFront; readonly choices: readonly Choice[]; readonly cost: OptionCost }
  | { readonly kind: 'record'; readonly result: LongRecordResult; readonly step: number }
  | ({ readonly kind: 'span' } & RecordSpanned);

/** A station file names its hours in the head; everything else is times and depths. */
export function readRecord(text: string, name: string): { readonly record: RainRecord; readonly step: number } {
  const head = text.slice(0, text.indexOf('\n') < 0 ? text.length : text.indexOf('\n'));
  if (/HR\d{2}VAL/i.test(head)) return { record: parseHourly(text, { name }), step: 3600 };
  const minutes = seriesMinutes(text);
  return { record: parseSeries(text, { name }, minutes), step: minutes * 60 };
}

/** Does the work from beginning to end, telling the share that is done. Throws what the engine throws. */
export function carryOut(work: StudyWork, tell: (share: number) => void): StudyResult {
  if (work.kind === 'span') {
    const { record, step } = readRecord(work.text, work.name);
    const { from, to, observedYears, missingHours } = recordQuality(record);
    return { kind: 'span', step, from: from.slice(0, 10), to: to.slice(0, 10), years: observedYears, missingHours };
  }
  if (work.kind === 'record') {
    const { record, step } = readRecord(work.text, work.name);
    const fitted = work.reportedPerYear === null ? null : fitExistingLoss(work.document, record, work.reportedPerYear);
    return { kind: 'record', step, result: longRecord(work.document, record, { fitted, progress: tell }) };
  }
  const { document, choices } = work;
  if (choices.length === 0) throw new CalcProblem('options.count', 'choices', { count: 0 });
  const cost = optionCost(document, choices, work.bought, work.prices);
  const slice = optionsSlice(document, choices, cost.index, { onProgress: (done, total) => tell(done / total) });
  return { kind: 'options', front: mergeOptions(document, choices, cost.index, [slice]), choices, cost };
}
