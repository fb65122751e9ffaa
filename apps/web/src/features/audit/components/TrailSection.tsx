import type { AuditEntry, Job } from '@yardfall/contracts';
import { Button } from '../../../components/Button.tsx';
import { Empty } from '../../../components/Empty.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { Table } from '../../../components/Table.tsx';
import { useText, type Text } from '../../../lib/reader.tsx';
import { useTrail } from '../api/audit.ts';
import { sentenceOf } from '../model/sentence.ts';
import { Seals } from './Seals.tsx';

/** Who did what and when on this job. */
export function TrailSection({ job }: { readonly job: Job }) {
  const text = useText();
  const { t } = text;
  const trail = useTrail(job.id);
  if (trail.pending) return <Loading what={t('audit.loading')} />;
  if (trail.problem) return <ProblemNotice problem={trail.problem} action={<Button onClick={trail.again}>{t('ui.tryAgain')}</Button>} />;
  if (trail.items.length === 0) return <Empty what={t('audit.none')} why={t('audit.noneWhy')} />;
  const columns = [
    { key: 'what', head: t('audit.what') },
    { key: 'who', head: t('audit.who') },
    { key: 'at', head: t('audit.at') },
    { key: 'seal', head: t('audit.seal') },
  ];
  return (
    <div className="stack">
      <p className="faint measure">{t('audit.lead')}</p>
      <Table caption={t('audit.trail')} captionUnseen stacks columns={columns} rows={trail.items.map((entry) => ({ key: entry.id, cells: cellsOf(entry, text, job.timeZone) }))} />
      {trail.more ? <div className="row"><Button onClick={trail.more}>{t('ui.more')}</Button></div> : null}
      <Seals />
    </div>
  );
}

function cellsOf(entry: AuditEntry, { t, say, q }: Text, timeZone: string) {
  const { code, params } = sentenceOf(entry, (role) => say(`identity.role.${role}`));
  return {
    what: say(code, params),
    who: entry.actorName ?? t(`audit.actor.${entry.actorKind}`),
    at: <time dateTime={entry.at}>{q('dateTime', entry.at, { timeZone })}</time>,
    seal: <span className="faint">{t(entry.sealed ? 'audit.sealed' : 'audit.unsealed')}</span>,
  };
}
