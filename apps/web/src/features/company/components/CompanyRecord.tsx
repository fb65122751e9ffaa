import { company } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { Button } from '../../../components/Button.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { Table } from '../../../components/Table.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { read } from '../../../lib/query.ts';
import { useText } from '../../../lib/reader.tsx';
import { CompanyForm } from './CompanyForm.tsx';
import { companyRows } from './companyRows.ts';

/** Name, zone and the company's own limits: read by everybody, changed by an owner. */
export function CompanyRecord() {
  const text = useText();
  const { t } = text;
  const { may } = useMe();
  const { data, error, isPending, refetch } = useQuery(read(company.read));
  if (isPending) return <Loading what={t('identity.company')} />;
  if (!data) return <ProblemNotice problem={error} action={<Button onClick={() => void refetch()}>{t('ui.tryAgain')}</Button>} />;
  const { settings } = data.data;
  return (
    <section className="stack" aria-labelledby="company">
      <Heading id="company">{t('identity.settings')}</Heading>
      {may('company.manage') ? <CompanyForm key={data.etag} company={data.data} etag={data.etag} /> : (
        <Table caption={t('identity.settings')} captionUnseen columns={[{ key: 'what', head: t('identity.settings.what') }, { key: 'value', head: t('identity.settings.value'), figure: true }]}
          rows={companyRows(data.data, text)} />
      )}
      {settings.limits.length > 0 ? (
        <Table caption={t('identity.settings.limits')} columns={[
          { key: 'code', head: t('identity.settings.limit') },
          { key: 'value', head: t('identity.settings.value'), figure: true },
          { key: 'reason', head: t('identity.settings.reason') },
        ]} rows={settings.limits.map(({ code, value, reason }) => ({ key: code, cells: { code, value: text.q('number', value), reason } }))} />
      ) : null}
    </section>
  );
}
