import type { DesignDocument, Evaluation } from '@yardfall/calc';
import { designs, type PrintedSheet, type Revision } from '@yardfall/contracts';
import { useState } from 'react';
import { Choices } from '../../../components/Choices.tsx';
import { useText } from '../../../lib/reader.tsx';
import { urlOf } from '../../../lib/api.ts';

/** The drawings of a revision to scale, one file each; only those for which the design has something. */
export function PrintLinks({ revision }: { readonly revision: Revision }) {
  const { t, units, language } = useText();
  const [paper, setPaper] = useState<'letter' | 'a4'>(units === 'us' ? 'letter' : 'a4');
  const sheets = sheetsOf(revision.document as DesignDocument, revision.evaluation as Evaluation | null);
  return (
    <details className="fold">
      <summary>{t('designs.print')}</summary>
      <div className="stack">
        <div className="row">
          <Choices label={t('designs.paper')} look="quiet" value={paper} onChange={setPaper} choices={[{ value: 'letter', label: t('designs.paper.letter') }, { value: 'a4', label: t('designs.paper.a4') }]} />
        </div>
        <div className="row">
          {sheets.map((sheet) => (
            <a key={sheet} className="button button-plain" target="_blank" rel="noreferrer" href={urlOf(designs.print, { params: { jobId: revision.jobId, revisionId: revision.id }, query: { sheet, paper, language, units } })}>
              {t(`designs.print.${sheet}`)}
            </a>
          ))}
        </div>
        {revision.status === 'draft' ? <p className="faint">{t('designs.printDraft')}</p> : null}
      </div>
    </details>
  );
}

function sheetsOf({ site }: DesignDocument, evaluation: Evaluation | null): Exclude<PrintedSheet, 'compare'>[] {
  const placed = site.plan !== null || site.spotLevels.some(({ position }) => position !== null);
  return [
    'section', ...(placed ? (['plan'] as const) : []), ...(evaluation?.results.storm ? (['storm'] as const) : []), ...((evaluation?.results.pumps.length ?? 0) > 0 ? (['pump'] as const) : []),
  ];
}
