import type { DesignDocument, LongRecordResult } from '@yardfall/calc';
import type { ResponseOf, studies as api } from '@yardfall/contracts';
import { Table } from '../../../../components/Table.tsx';
import { useText } from '../../../../lib/reader.tsx';
import { nameOf } from '../../model/editWords.ts';
import { countRows, notesApart } from '../../model/longRecord.ts';

/** How often water would have come in, in the engine's own words, with what the record is worth beside it. */
export function RecordResult({ detail }: { readonly detail: ResponseOf<typeof api.read> }) {
  const { t, q, say } = useText();
  const { result, step } = detail.result as unknown as { readonly result: LongRecordResult; readonly step: number };
  const { document } = detail.request as unknown as { readonly document: DesignDocument };
  const { answers, about } = notesApart(result.notes);
  const rows = countRows(result);
  return (
    <div className="stack">
      {answers.map(({ code, params }) => <p key={`${code} ${JSON.stringify(params)}`} className="measure record-answer">{say(code, params)}</p>)}
      <Table stacks="labelled" caption={t('studies.record.years')}
        columns={[{ key: 'year', head: t('studies.record.year') }, { key: 'sill', head: t('designs.sill') }, { key: 'with', head: t('designs.withSystem'), figure: true }, { key: 'without', head: t('designs.withoutSystem'), figure: true }, { key: 'there', head: t('studies.record.readings'), figure: true }]}
        rows={rows.map(({ year, sill, withSystem, withoutSystem, valid }) => ({ key: `${String(year)} ${sill}`, cells: { year: String(year), sill: nameOf([document], sill), with: withSystem, without: withoutSystem, there: q('percent', valid) } }))} />
      <ul className="record-notes">
        {about.map(({ code, params }) => <li key={`${code} ${JSON.stringify(params)}`}>{say(code, params)}</li>)}
        {step === 900 ? <li>{t('studies.record.quarters')}</li> : null}
      </ul>
      {result.quality.gaps.length > 0 ? (
        <details className="fold">
          <summary>{t('studies.record.gaps', { count: result.quality.gaps.length })}</summary>
          <ul className="record-notes">
            {result.quality.gaps.slice(0, mostGaps).map((gap) => <li key={gap.from}>{t('studies.record.gap', { from: gap.from.slice(0, 10), to: gap.to.slice(0, 10), hours: gap.hours })}</li>)}
            {result.quality.gaps.length > mostGaps ? <li>{t('studies.record.moreGaps', { count: result.quality.gaps.length - mostGaps })}</li> : null}
          </ul>
        </details>
      ) : null}
    </div>
  );
}

const mostGaps = 12;
