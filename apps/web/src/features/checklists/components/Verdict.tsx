import { FindingMark } from '../../../components/FindingMark.tsx';
import { useText } from '../../../lib/reader.tsx';
import { differenceAs, judge, writtenAs, type Measure } from '../model/judge.ts';

/** "Good" or what puts it right, as a sentence with its shape. */
export function Verdict({ measure, value }: { readonly measure: Measure; readonly value: number }) {
  const { t, q } = useText();
  const { good, way, by } = judge(measure, value);
  if (measure.quantity === 'check') return good ? <p className="verdict verdict-good"><span aria-hidden="true">{'✓'}</span>{t('checklists.check.yes')}</p> : <p className="verdict verdict-off"><FindingMark severity="stop" wordUnseen />{t('checklists.check.no')}</p>;
  const written = q(writtenAs[measure.quantity], value);
  const free = measure.min === null && measure.max === null;
  if (good || way === null) return <p className="verdict verdict-good"><span aria-hidden="true">{'✓'}</span>{t(free ? 'checklists.judge.noted' : 'checklists.judge.good', { value: written })}</p>;
  return <p className="verdict verdict-off"><FindingMark severity="stop" wordUnseen />{t(`checklists.judge.${way}`, { value: written, by: q(differenceAs(measure.quantity), by) })}</p>;
}

/** What the figure has to lie between, from the design. */
export function Limits({ measure }: { readonly measure: Measure }) {
  const { t, q } = useText();
  const as = (value: number) => q(writtenAs[measure.quantity], value);
  const { min, max, target } = measure;
  if (min !== null && max !== null) return t(measure.quantity === 'level' ? 'checklists.limits.target' : 'checklists.limits.between', { min: as(min), max: as(max), target: as(target) });
  if (min !== null) return t('checklists.limits.atLeast', { min: as(min) });
  if (max !== null) return t('checklists.limits.atMost', { max: as(max) });
  return t('checklists.limits.none');
}
