import type { Pump } from '@yardfall/calc';
import { Notice } from '../../../components/Notice.tsx';
import { madeAt } from '../../../lib/madeAt.ts';
import type { OutboxEntry } from '../../../lib/outbox.ts';
import { useText } from '../../../lib/reader.tsx';

interface HereProps {
  readonly tests: readonly OutboxEntry[];
  readonly pumps: readonly Pump[];
  readonly timeZone: string;
}

/** Pump-downs that the office does not have yet, with what each run moved. */
export function Here({ tests, pumps, timeZone }: HereProps) {
  const { t, q } = useText();
  if (tests.length === 0) return null;
  return (
    <Notice>
      <p>{t('proof.here', { n: tests.length })}</p>
      <ul>
        {tests.flatMap((entry) => (entry.kind !== 'proof' ? [] : [
          <li key={entry.id}>
            {t('proof.hereIs', {
              pump: pumps.find(({ id }) => id === entry.test.pump)?.name ?? entry.test.pump, at: madeAt(entry.id), flows: entry.test.runs.map(({ volume, seconds }) => q('fineFlow', volume / seconds)).join(', '),
            }, { timeZone })}
          </li>,
        ]))}
      </ul>
    </Notice>
  );
}
