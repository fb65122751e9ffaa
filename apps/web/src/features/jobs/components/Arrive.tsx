import { jobs } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { read } from '../../../lib/query.ts';
import { useText } from '../../../lib/reader.tsx';

/** What is needed at the gate: the way there, the code, the dogs, the phone. */
export function Arrive({ jobId }: { readonly jobId: string }) {
  const { t } = useText();
  const { data } = useQuery({ ...read(jobs.read, { params: { jobId } }), retry: false });
  if (!data) return null;
  const { property, customer } = data.data;
  return (
    <div className="arrive">
      <a className="button" href={`geo:0,0?q=${encodeURIComponent(property.address)}`}>{t('jobs.arrive.map')}</a>
      {customer.phones.slice(0, 1).map((phone) => <a key={phone} className="button" href={`tel:${phone.replace(/[^+\d]/g, '')}`}>{t('jobs.arrive.call', { name: customer.name })}</a>)}
      {property.gateCode === '' ? null : <p>{t('jobs.property.gateCodeIs', { code: property.gateCode })}</p>}
      {property.notes === '' ? null : <p>{property.notes}</p>}
    </div>
  );
}
