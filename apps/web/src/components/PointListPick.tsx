import { parsePointList, usualPointOrder, type ListedPoint, type PointColumn, type PointList, type PointUnit } from '@yardfall/calc';
import { useState } from 'react';
import { Button } from './Button.tsx';
import { FilePick } from './FilePick.tsx';
import { Notice } from './Notice.tsx';
import { Select } from './Select.tsx';
import { Table } from './Table.tsx';
import { useText } from '../lib/reader.tsx';
import './PointListPick.css';

const columns: readonly PointColumn[] = ['point', 'northing', 'easting', 'elevation', 'description', 'leaveOut'];
const unitChoices: readonly PointUnit[] = ['foot', 'usSurveyFoot', 'metre'];
const shownLines = 4;

interface PointListPickProps {
  /** What becomes of the points, and the words of the button that does it. */
  readonly note: string;
  readonly words: string;
  readonly onTake: (points: readonly ListedPoint[]) => void;
}

/** A surveyor's point list: which column holds what, how the first lines are read, and then all of it at once. */
export function PointListPick({ note, words, onTake }: PointListPickProps) {
  const { t, q, say, units } = useText();
  const [text, setText] = useState<string | null>(null);
  const [order, setOrder] = useState(usualPointOrder);
  const [unit, setUnit] = useState<PointUnit>(units === 'us' ? 'foot' : 'metre');
  const read = text === null ? null : reading(text, order, unit);
  return (
    <details className="fold point-list">
      <summary>{t('plan.list')}</summary>
      <div className="stack">
        <FilePick label={t('plan.list')} hint={t('plan.listHint')} accept=".csv,.txt,.xyz,text/plain,text/csv" onPick={(file) => void file.text().then(setText)} />
        {text === null ? null : (
          <div className="point-list-columns">
            {order.map((column, at) => (
              <Select key={at} label={t('plan.listColumn', { number: at + 1 })} value={column} onChange={(next) => setOrder(order.map((now, i) => (i === at ? next : now)))}
                choices={columns.map((value) => ({ value, label: t(`plan.column.${value}`) }))} />
            ))}
            <Select label={t('plan.listUnit')} value={unit} onChange={setUnit} choices={unitChoices.map((value) => ({ value, label: t(`plan.unit.${value}`) }))} />
          </div>
        )}
        {read?.ok === false ? <Notice severity="caution"><p>{say(read.code, read.params)}</p></Notice> : null}
        {read?.ok === true ? (
          <>
            <p>{t('plan.listCount', { count: read.list.points.length, low: Math.min(...read.list.points.map(({ level }) => level)), high: Math.max(...read.list.points.map(({ level }) => level)) })}</p>
            <Table stacks="labelled" caption={t('plan.list')}
              columns={[{ key: 'point', head: t('plan.column.point') }, { key: 'x', head: t('plan.across'), figure: true }, { key: 'y', head: t('plan.up'), figure: true }, { key: 'level', head: t('plan.column.elevation'), figure: true }, { key: 'words', head: t('plan.column.description') }]}
              rows={read.list.points.slice(0, shownLines).map((point, at) => ({ key: String(at), cells: { point: point.point, x: q('length', point.x), y: q('length', point.y), level: q('level', point.level), words: point.description } }))} />
            <p className="faint">{note}</p>
            <div className="row"><Button kind="main" onClick={() => { onTake(read.list.points); setText(null); }}>{words}</Button></div>
          </>
        ) : null}
      </div>
    </details>
  );
}

type Reading = { readonly ok: true; readonly list: PointList } | { readonly ok: false; readonly code: string; readonly params: Readonly<Record<string, string | number>> };

function reading(text: string, order: readonly PointColumn[], unit: PointUnit): Reading {
  try {
    return { ok: true, list: parsePointList(text, order, unit) };
  } catch (error) {
    const known = error as { readonly code?: unknown; readonly params?: Readonly<Record<string, string | number>> };
    if (typeof known.code !== 'string') throw error;
    return { ok: false, code: known.code, params: known.params ?? {} };
  }
}
