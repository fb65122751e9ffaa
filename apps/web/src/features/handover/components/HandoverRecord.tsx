import type { DesignDocument } from '@yardfall/calc';
import type { Handover } from '@yardfall/contracts';
import { Table } from '../../../components/Table.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { TiesTable } from '../../../components/TiesTable.tsx';
import { isMessageCode } from '@yardfall/text';
import { useText } from '../../../lib/reader.tsx';
import { differenceShown } from '../model/levels.ts';
import './handover.css';

interface HandoverRecordProps {
  readonly handover: Handover;
  readonly timeZone: string;
  readonly document: DesignDocument | null;
}

export function HandoverRecord({ handover, timeZone, document }: HandoverRecordProps) {
  const { t, q, say, units } = useText();
  const nameOf = (part: string) => document?.system.parts.find(({ id }) => id === part)?.name ?? part;
  const fieldOf = (field: string) => (isMessageCode(`handover.field.${field}`) ? say(`handover.field.${field}`) : field);
  const facts = [['serial', handover.pumpSerial], ['breaker', handover.breaker], ['customer', handover.customerName], ['deviations', handover.deviations]] as const;
  return (
    <div className="stack">
      <p className="handover-done"><span aria-hidden="true">{'✓'}</span>{t('handover.doneBy', { at: handover.handedOverAt, by: handover.by }, { timeZone })}</p>
      <p>{t('handover.warranty', { from: handover.warrantyFrom, until: handover.warrantyUntil })}</p>
      <dl className="handover-facts">{facts.map(([name, value]) => (value === '' ? null : <div key={name}><dt>{t(`handover.${name}`)}</dt><dd>{value}</dd></div>))}</dl>
      {handover.asBuilt.length > 0 ? (
        <Table stacks="labelled" caption={t('handover.levels')}
          columns={[{ key: 'what', head: t('handover.level') }, { key: 'built', head: t('handover.asBuilt'), figure: true }, { key: 'designed', head: t('handover.designed'), figure: true }, { key: 'difference', head: t('handover.difference'), figure: true }]}
          rows={handover.asBuilt.map((level) => ({
            key: `${level.part} ${level.field}`,
            cells: { what: t('handover.levelIs', { part: nameOf(level.part), field: fieldOf(level.field) }), built: q('level', level.level), designed: q('level', level.designed), difference: q('relative', differenceShown(level.level, level.designed, units)) },
          }))} />
      ) : null}
      {handover.ties === null ? null : <><Heading level={3}>{t('portal.ties')}</Heading><TiesTable ties={handover.ties} /></>}
      <p className="faint figure handover-hash">{t('handover.hash', { hash: handover.sha256.slice(0, 16) })}</p>
    </div>
  );
}
