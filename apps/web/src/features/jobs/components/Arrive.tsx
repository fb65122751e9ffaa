import { jobs, type Job } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { mapLink } from '../../../lib/mapLink.ts';
import { read } from '../../../lib/query.ts';
import { useText } from '../../../lib/reader.tsx';

function useWhole(jobId: string): Job | null {
  return useQuery({ ...read(jobs.read, { params: { jobId } }), retry: false }).data?.data ?? null;
}

/** Who is there, and the code of the gate. */
export function AtTheHouse({ jobId, name }: { readonly jobId: string; readonly name: string }) {
  const { t } = useText();
  const gateCode = useWhole(jobId)?.property.gateCode ?? '';
  return (
    <p className="at-the-house">
      <span>{t('jobs.arrive.atHouse', { name })}</span>
      {gateCode === '' ? null : <strong className="gate-code">{t('jobs.property.gateCodeIs', { code: gateCode })}</strong>}
    </p>
  );
}

/** The way there, the phone, the dogs. */
export function Arrive({ jobId }: { readonly jobId: string }) {
  const { t } = useText();
  const job = useWhole(jobId);
  if (!job) return null;
  const { property, customer } = job;
  return (
    <div className="arrive">
      <a className="button" href={mapLink(property.address, navigator)}>{t('jobs.arrive.map')}</a>
      {customer.phones.slice(0, 1).map((phone) => <a key={phone} className="button" href={`tel:${phone.replace(/[^+\d]/g, '')}`}>{t('jobs.arrive.call', { name: customer.name })}</a>)}
      {property.notes === '' ? null : <p>{property.notes}</p>}
    </div>
  );
}
