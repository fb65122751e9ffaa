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
import { Limits } from './Limits.tsx';
import { Steps } from './Steps.tsx';

/** Name, zone and the company's own limits: read by everybody, changed by an owner. */
export function CompanyRecord() {
  const text = useText();
  const { t } = text;
  const { may } = useMe();
  const { data, error, isPending, refetch } = useQuery(read(company.read));
  if (isPending) return <Loading what={t('identity.company')} />;
  if (!data) return <ProblemNotice problem={error} action={<Button onClick={() => void refetch()}>{t('ui.tryAgain')}</Button>} />;
  return (
    <>
      <section className="stack" aria-labelledby="company">
        <Heading id="company">{t('identity.settings')}</Heading>
        {may('company.manage') ? <CompanyForm key={data.etag} company={data.data} etag={data.etag} /> : (
          <Table caption={t('identity.settings')} captionUnseen columns={[{ key: 'what', head: t('identity.settings.what') }, { key: 'value', head: t('identity.settings.value'), figure: true }]}
            rows={companyRows(data.data, text)} />
        )}
      </section>
      <Limits company={data.data} etag={data.etag} />
      <Steps company={data.data} etag={data.etag} />
    </>
  );
}
