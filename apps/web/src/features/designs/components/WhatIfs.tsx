import type { DesignDocument, Evaluation } from '@yardfall/calc';
import { Heading } from '../../../components/Heading.tsx';
import { Table } from '../../../components/Table.tsx';
import { useText } from '../../../lib/reader.tsx';
import { nameOf } from '../model/editWords.ts';
import { whatIfTables, type WhatIfCell, type WhatIfRow } from '../model/whatIfs.ts';
import { Figure } from './Workings.tsx';

interface WhatIfsProps {
  readonly document: DesignDocument;
  readonly evaluation: Evaluation;
}

/** What happens when something fails, beside the site without a system and the system as designed. */
export function WhatIfs({ document, evaluation }: WhatIfsProps) {
  const { t } = useText();
  const tables = whatIfTables(document, evaluation.results);
  if (tables.length === 0) return null;
  const rowName = (row: WhatIfRow) => row.case === 'system' ? t('studies.whatIf.system')
    : t(`decisions.whatIf.${row.case}`, { name: row.at === null ? '' : nameOf([document], row.at), duration: row.outage ?? 0 });
  return (
    <section className="stack what-ifs">
      <Heading level={3}>{t('studies.whatIf.title')}</Heading>
      {tables.map(({ sill, storms, rows }) => (
        <Table key={sill} stacks="labelled" caption={t('studies.whatIf.table', { sill: nameOf([document], sill) })}
          columns={[{ key: 'case', head: t('studies.whatIf.case') }, ...storms.map((years) => ({ key: String(years), head: t('designs.years', { years }), figure: true }))]}
          rows={rows.map((row) => ({
            key: row.key, strong: row.case === 'system',
            cells: { case: rowName(row), ...Object.fromEntries(storms.map((years, at) => [String(years), <Outcome key={years} cell={row.cells[at] ?? null} />])) },
          }))} />
      ))}
      <p className="faint measure">{t('studies.whatIf.why')}</p>
      <Protected evaluation={evaluation} />
    </section>
  );
}

function Outcome({ cell }: { readonly cell: WhatIfCell | null }) {
  const { t, q } = useText();
  if (cell === null) return null;
  if (cell.freeboard >= 0) return <Figure result={cell.freeboardAt}>{q('height', cell.freeboard)}</Figure>;
  return <span className="comes-in"><Figure result={cell.minutesAt}>{t('studies.whatIf.comesIn', { minutes: cell.minutes })}</Figure></span>;
}

const protectedCases = ['powerOn', 'powerOut', 'gutterOverflowing'] as const;

/** The largest storm of the rain table that is kept out, as built and with one thing gone wrong. */
function Protected({ evaluation }: Pick<WhatIfsProps, 'evaluation'>) {
  const { t } = useText();
  const { protection } = evaluation.results;
  if (protection === null) return null;
  return (
    <dl className="protected">
      {protectedCases.map((name) => {
        const storm = protection[name];
        if (storm === null) return null;
        const sentence = storm.returnPeriod === null ? t('decisions.protected.none', { failsAt: storm.failsAt ?? 0 })
          : storm.wholeTable ? t('decisions.protected.orMore', { returnPeriod: storm.returnPeriod }) : t('decisions.protected.upTo', { returnPeriod: storm.returnPeriod, lower: storm.lower ?? 0 });
        return <div key={name}><dt>{t(`studies.protected.${name}`, { duration: protection.outage })}</dt><dd><Figure result={`/results/protection/${name}/lower`}>{sentence}</Figure></dd></div>;
      })}
    </dl>
  );
}
