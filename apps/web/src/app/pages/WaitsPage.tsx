import { jobs } from '@yardfall/contracts';
import { Page } from '../../components/Page.tsx';
import { Disputes, RoomMeter, WaitingEntries } from '../../features/waits/index.ts';
import { usePages } from '../../hooks/usePages.ts';
import { openJobs } from '../../lib/openJobs.ts';
import { useText } from '../../lib/reader.tsx';

/** What is on this phone and not in the office, what phones disagree on, and the room that is left. */
export function WaitsPage() {
  const { t } = useText();
  const { items } = usePages(jobs.list, { query: openJobs });
  return (
    <Page title={t('ui.waits.title')} lead={t('ui.waits.lead')} narrow>
      <WaitingEntries jobs={items} />
      <section><h2>{t('ui.waits.disputes')}</h2><Disputes jobs={items} /></section>
      <section><h2>{t('ui.waits.roomTitle')}</h2><RoomMeter /></section>
    </Page>
  );
}
