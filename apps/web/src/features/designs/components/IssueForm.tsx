import type { Revision } from '@yardfall/contracts';
import { Button } from '../../../components/Button.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { useText } from '../../../lib/reader.tsx';
import { useIssue } from '../api/designs.ts';

interface IssueFormProps {
  readonly jobId: string;
  readonly revision: Revision;
  readonly etag: string | null;
  /** Every edit has reached the office. */
  readonly ready: boolean;
}

/** Issuing freezes the revision: the office evaluates the very bytes it stores. */
export function IssueForm({ jobId, revision, etag, ready }: IssueFormProps) {
  const { t } = useText();
  const issue = useIssue(jobId, revision.id);
  return (
    <section className="stack">
      <Heading level={3}>{t('designs.issueTitle')}</Heading>
      <p className="measure">{t('designs.issueWhy')}</p>
      {revision.provisional ? <p className="measure">{t('designs.provisional')}</p> : null}
      <ProblemNotice problem={issue.error} />
      <div className="row"><Button kind="main" busy={issue.isPending} disabled={!ready || etag === null} onClick={() => { if (etag) issue.mutate(etag); }}>{t('designs.issue')}</Button></div>
    </section>
  );
}
