import { identity, jobs, type Job, type MemberRole } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { CheckField } from '../../../components/Field.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { useWrite } from '../../../hooks/useWrite.ts';
import { read } from '../../../lib/query.ts';
import { useText } from '../../../lib/reader.tsx';

interface Assigned {
  readonly memberId: string;
  readonly role: MemberRole;
}

const assignable: readonly MemberRole[] = ['estimator', 'crew'];
const same = (a: Assigned, b: Assigned) => a.memberId === b.memberId && a.role === b.role;

export function People({ job }: { readonly job: Job }) {
  const { t } = useText();
  const { data, error, isPending } = useQuery(read(identity.members));
  const stored: readonly Assigned[] = job.assignments.map(({ memberId, role }) => ({ memberId, role }));
  const [chosen, setChosen] = useState(stored);
  const { write, busy, problem } = useWrite(jobs.assign, { refreshes: [jobs.read, jobs.list] });
  if (isPending) return <Loading what={t('identity.members.what')} />;
  if (!data) return <ProblemNotice problem={error} />;
  const offers = data.data.items
    .filter((member) => member.active)
    .flatMap((member) => assignable.filter((role) => member.roles.includes(role)).map((role) => ({ memberId: member.id, role, name: member.name })));
  const toggle = (one: Assigned, on: boolean) => setChosen(on ? [...chosen, one] : chosen.filter((c) => !same(c, one)));
  const changed = chosen.length !== stored.length || chosen.some((c) => !stored.some((s) => same(s, c)));
  return (
    <div className="stack">
      <Heading level={3}>{t('jobs.people')}</Heading>
      <p className="faint">{t('jobs.people.why')}</p>
      <fieldset>
        <legend className="unseen">{t('jobs.people')}</legend>
        {offers.map(({ memberId, role, name }) => (
          <CheckField key={memberId + role} label={t('jobs.people.as', { name, role: t(`identity.role.${role}`) })} checked={chosen.some((c) => same(c, { memberId, role }))}
            onChange={(event) => toggle({ memberId, role }, event.target.checked)} />
        ))}
      </fieldset>
      <ProblemNotice problem={problem} />
      <div>
        <Button busy={busy} disabled={busy || !changed} onClick={() => write({ params: { jobId: job.id }, body: { assignments: [...chosen] } })}>{t('jobs.people.store')}</Button>
      </div>
    </div>
  );
}
