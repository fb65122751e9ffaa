import type { DesignDocument } from '@yardfall/calc';
import { designs, type Revision } from '@yardfall/contracts';
import { overlay, overlayTable } from '@yardfall/drawing';
import { Drawing } from '../../../components/Drawing.tsx';
import { urlOf } from '../../../lib/api.ts';
import { useText } from '../../../lib/reader.tsx';
import { DrawingTable } from './DrawingTable.tsx';

/** Both sections in one frame, whichever was chosen first: the earlier thin and dashed, the later bold where it differs. */
export function CompareDrawing({ one, other }: { readonly one: Revision; readonly other: Revision }) {
  const { t, units, language } = useText();
  const [earlier, later] = one.createdAt <= other.createdAt ? [one, other] : [other, one];
  const compared = { before: earlier.document as DesignDocument, after: later.document as DesignDocument };
  const query = { sheet: 'compare', against: earlier.id, paper: units === 'us' ? 'letter' : 'a4', language, units } as const;
  return (
    <div className="stack">
      <Drawing title={t('designs.comparePicture')} height={(width) => Math.min(460, Math.max(320, width * 0.36))} display={(size) => overlay(compared, { ...size, scale: null })} table={<DrawingTable table={overlayTable(compared)} />} />
      <div className="row">
        <a className="button button-plain" target="_blank" rel="noreferrer" href={urlOf(designs.print, { params: { jobId: later.jobId, revisionId: later.id }, query })}>{t('designs.print.compare')}</a>
      </div>
    </div>
  );
}
