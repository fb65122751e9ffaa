import { isLimitId, limits as usual } from '@yardfall/calc';
import { company as api, type Company, type WantedLimit } from '@yardfall/contracts';
import { Button } from '../../../components/Button.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { Table } from '../../../components/Table.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { useWrite } from '../../../hooks/useWrite.ts';
import { useText } from '../../../lib/reader.tsx';
import { LimitForm } from './LimitForm.tsx';
import { limitText } from './limitText.ts';

/** Limits that the company has set apart from the common ones: read by everybody, set by an owner. */
export function Limits({ company, etag }: { readonly company: Company; readonly etag: string | null }) {
  const text = useText();
  const { t } = text;
  const { may } = useMe();
  const { write, busy, problem } = useWrite(api.update, { refreshes: [api.read] });
  const held = company.settings.limits;
  const store = (limits: readonly WantedLimit[]) =>
    write({ body: { limits: limits.map(({ limit, pass, fail, why }) => ({ limit, pass, fail, why })) }, ...(etag === null ? {} : { ifMatch: etag }) });
  const without = (id: string) => held.filter(({ limit }) => limit !== id);
  const rows = held.flatMap((own) => {
    const id = own.limit;
    if (!isLimitId(id)) return [];
    return [{
      key: id,
      cells: {
        limit: `${id}: ${t(`limits.${id}`)}`, usual: limitText(id, usual[id], text), own: limitText(id, own, text),
        who: t('limits.page.stamp', { by: own.by, at: own.at }), why: own.why,
        change: may('company.manage') ? <Button kind="text" busy={busy} onClick={() => store(without(id))}>{t('limits.page.remove')}</Button> : null,
      },
    }];
  });
  return (
    <section className="stack" aria-labelledby="limits">
      <Heading id="limits">{t('limits.page')}</Heading>
      <p>{t('limits.page.lead')}</p>
      {rows.length === 0 ? <p>{t('limits.page.none')}</p> : (
        <Table caption={t('limits.page')} captionUnseen stacks="labelled" rows={rows} columns={[
          { key: 'limit', head: t('identity.settings.limit') }, { key: 'usual', head: t('limits.page.usual') }, { key: 'own', head: t('limits.page.own') },
          { key: 'who', head: t('limits.page.who') }, { key: 'why', head: t('limits.page.why') }, { key: 'change', head: '' },
        ]} />
      )}
      {may('company.manage') ? <LimitForm key={held.length} busy={busy} onSet={(limit) => store([...without(limit.limit), limit])} /> : null}
      <ProblemNotice problem={problem} />
    </section>
  );
}
