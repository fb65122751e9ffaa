import type { DesignDocument, Evaluation } from '@yardfall/calc';
import type { Job } from '@yardfall/contracts';
import { Loading } from '../../../components/Loading.tsx';
import { useText } from '../../../lib/reader.tsx';
import { useDesigns, useRevision } from '../api/designs.ts';
import { latestRevision } from '../model/latest.ts';
import { SectionDrawing } from './SectionDrawing.tsx';

/** The section that stands on top of the job page: of the build revision, or of what is designed so far. */
export function JobDrawing({ job: { id: jobId } }: { readonly job: Job }) {
  const { t } = useText();
  const list = useDesigns(jobId);
  const revision = useRevision(jobId, latestRevision(list.data?.data.items ?? [])?.id ?? null);
  if (list.isPending || revision.isLoading) return <Loading what={t('designs.loading')} />;
  if (!revision.data) return <p className="faint">{t('designs.noDrawing')}</p>;
  const { document, evaluation } = revision.data.data;
  return <SectionDrawing document={document as DesignDocument} evaluation={evaluation as Evaluation | null} moment={null} />;
}
