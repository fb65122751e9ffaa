import type { DesignDocument, Evaluation } from '@yardfall/calc';
import type { Job } from '@yardfall/contracts';
import type { SectionOptions } from '@yardfall/drawing';
import { Loading } from '../../../components/Loading.tsx';
import { withRest } from '../../../lib/partStates.ts';
import { useText } from '../../../lib/reader.tsx';
import { useDesigns, useRevision } from '../api/designs.ts';
import { latestRevision } from '../model/latest.ts';
import { SectionDrawing } from './SectionDrawing.tsx';

interface JobDrawingProps {
  readonly job: Job;
  /** How the parts stand for who builds them; null for every other reader. */
  readonly states?: SectionOptions['states'] | null;
  readonly onSelect?: (part: string) => void;
}

/** The section that stands on top of the job page: of the build revision, or of what is designed so far. */
export function JobDrawing({ job: { id: jobId }, states = null, onSelect }: JobDrawingProps) {
  const { t } = useText();
  const list = useDesigns(jobId);
  const revision = useRevision(jobId, latestRevision(list.data?.data.items ?? [])?.id ?? null);
  if (list.isPending || revision.isLoading) return <Loading what={t('designs.loading')} />;
  if (!revision.data) return <p className="faint">{t('designs.noDrawing')}</p>;
  const { evaluation } = revision.data.data;
  const document = revision.data.data.document as DesignDocument;
  const press = onSelect ? { onSelect: (part: string | null) => { if (part !== null) onSelect(part); } } : {};
  return <SectionDrawing jobId={jobId} document={document} evaluation={evaluation as Evaluation | null} moment={null} states={states === null ? {} : withRest(document.system.parts, states)} {...press} />;
}
