import type { TiesOnRecord } from '@yardfall/contracts';
import { useText } from '../lib/reader.tsx';
import { Table } from './Table.tsx';

/** Where each buried part lies: two tapes from fixed points of the house, and its level. */
export function TiesTable({ ties: { from: [one, two], parts } }: { readonly ties: TiesOnRecord }) {
  const { t, q } = useText();
  const length = (value: number | null) => (value === null ? t('portal.ties.none') : q('length', value));
  return (
    <div className="stack">
      <p className="measure">{t('portal.ties.why')}</p>
      <p>{t('portal.ties.from', { one, two })}</p>
      <Table stacks="labelled" caption={t('portal.ties')} captionUnseen
        columns={[{ key: 'part', head: t('portal.ties.part') }, { key: 'one', head: t('portal.ties.one'), figure: true }, { key: 'two', head: t('portal.ties.two'), figure: true }, { key: 'level', head: t('portal.ties.level'), figure: true }]}
        rows={parts.map((part) => ({
          key: part.part,
          cells: {
            part: part.at === 'middle' ? t('portal.ties.middle', { part: part.name }) : part.name, one: length(part.one), two: length(part.two),
            level: part.level === null ? t('portal.ties.none') : q('level', part.level),
          },
        }))} />
    </div>
  );
}
