import { measureOf, type DesignDocument, type PlanShape, type PlanUse, type Position } from '@yardfall/calc';
import type { DraftOperation } from '@yardfall/contracts';
import { planExtent, planTable, shownScale, toPicture, zoomed } from '@yardfall/drawing';
import { useState } from 'react';
import { Button } from '../../../../components/Button.tsx';
import { Choices } from '../../../../components/Choices.tsx';
import { Empty } from '../../../../components/Empty.tsx';
import { Notice } from '../../../../components/Notice.tsx';
import { Select } from '../../../../components/Select.tsx';
import { useWidth } from '../../../../hooks/useWidth.ts';
import { useText } from '../../../../lib/reader.tsx';
import { useGround } from '../../hooks/useGround.ts';
import { hands, isDrawing, usesOf, type Hand } from '../../model/plan/hand.ts';
import { addShape, changeShape, emptyPlan, freeId } from '../../model/plan/operations.ts';
import { DrawingTable } from '../DrawingTable.tsx';
import { GroundPanel } from './GroundPanel.tsx';
import { PathPanel } from './PathPanel.tsx';
import { PicturePanel } from './PicturePanel.tsx';
import { PlanCanvas } from './PlanCanvas.tsx';
import { PlanChecks } from './PlanChecks.tsx';
import { PointListPanel } from './PointListPanel.tsx';
import { ShapePanel } from './ShapePanel.tsx';
import { SpotPanel } from './SpotPanel.tsx';
import './plan.css';

interface PlanEditorProps {
  readonly jobId: string;
  readonly document: DesignDocument;
  readonly edit: (operations: readonly DraftOperation[]) => void;
}

const foot = 0.3048;

/** The plan of the site, drawn by hand or by figures; what is drawn measures the surfaces and parts of the design. */
export function PlanEditor({ jobId, document, edit }: PlanEditorProps) {
  const { t } = useText();
  if (document.site.plan === null) {
    return <Empty what={t('plan.none')} why={t('plan.noneWhy')} step={<Button onClick={() => edit([{ kind: 'replace', path: ['site', 'plan'], value: emptyPlan as never }])}>{t('plan.start')}</Button>} />;
  }
  return <Sheet jobId={jobId} document={document} edit={edit} />;
}

function Sheet({ jobId, document, edit }: PlanEditorProps) {
  const { t, units } = useText();
  const plan = document.site.plan ?? emptyPlan;
  const [frame, width] = useWidth<HTMLDivElement>();
  const size = { width, height: Math.round(Math.min(640, Math.max(340, width * 0.62))) };
  const [hand, setHand] = useState<Hand>('choose');
  const [use, setUse] = useState<PlanUse>('house');
  const [path, setPath] = useState<readonly Position[]>([]);
  const [chosen, setChosen] = useState<string | null>(null);
  const [view, setView] = useState<ReturnType<typeof planExtent> | null>(null);
  const [level, setLevel] = useState<number | null>(null);
  const answer = useGround(document.site, level, units === 'us' ? 0.25 * foot : 0.1);
  const extent = view ?? planExtent(document.site, Math.max(size.width, 1), size.height);
  const selected = plan.shapes.find(({ id }) => id === chosen) ?? null;
  const untied = plan.picture !== null && plan.picture.tie === null;

  const take = (next: Hand) => {
    setHand(next);
    setPath([]);
    if (isDrawing(next) && !usesOf[next].includes(use)) setUse(usesOf[next][0] ?? use);
    if (next !== 'choose') setChosen(null);
  };
  const finish = (points: readonly Position[], kind: PlanShape['kind']) => {
    const least = kind === 'area' ? 3 : kind === 'line' ? 2 : 1;
    if (points.length < least) return;
    const id = freeId(plan.shapes, 'Z');
    const name = t('plan.numbered', { use: t(`plan.use.${use}`), number: plan.shapes.filter((shape) => shape.use === use).length + 1 });
    edit(addShape(document, { id, name, kind, use, points, of: null }));
    setPath([]);
    setChosen(id);
    setHand('choose');
  };
  const place = (at: Position) => {
    const [first] = path;
    if (hand === 'place') finish([at], 'place');
    else if (hand === 'area' && first && path.length > 2 && Math.hypot(first.x - at.x, first.y - at.y) < 1e-9) finish(path, 'area');
    else if (hand === 'tie') setPath([...path.slice(-1), at]);
    else if (hand === 'spot') setPath([at]);
    else setPath([...path, at]);
  };
  const key = (event: { readonly key: string; readonly preventDefault: () => void }) => {
    if (event.key === 'Enter' && isDrawing(hand) && path.length > 0) {
      event.preventDefault();
      finish(path, hand);
    } else if (event.key === 'Escape') setPath(path.slice(0, -1));
    else if (event.key === '+' || event.key === '-') setView(zoomed(extent, event.key === '+' ? 1.25 : 0.8, middle(extent)));
  };
  const { picture } = plan;
  const tiePlaces = picture && hand === 'tie' ? path.map((at) => toPicture(picture, shownScale(picture), at)) : [];

  return (
    <div className="stack">
      <div className="row">
        <Choices label={t('plan.tool')} look="quiet" value={hand === 'tie' ? null : hand} onChange={take} disabled={untied} choices={hands.map((value) => ({ value, label: t(`plan.tool.${value}`) }))} />
        {isDrawing(hand) ? <Select label={t('plan.use')} value={use} onChange={setUse} choices={usesOf[hand].map((value) => ({ value, label: t(`plan.use.${value}`) }))} /> : null}
      </div>
      <p className="faint measure">{t(hand === 'tie' ? 'plan.hint.tie' : hand === 'choose' ? 'plan.hint.choose' : hand === 'area' || hand === 'line' ? 'plan.hint.draw' : 'plan.hint.place')}</p>
      {untied ? <Notice severity="caution"><p>{t('plan.untied')}</p></Notice> : null}
      <figure className="drawing">
        <div ref={frame} className="drawing-frame">
          {width > 0 ? (
            <PlanCanvas jobId={jobId} document={document} ground={answer?.ok === true ? answer.ground : null} hand={hand} extent={extent} size={size} selected={selected} path={path}
              onExtent={setView} onSelect={setChosen} onPlace={place} onChange={(shape) => edit(changeShape(document, shape))} onKey={key} />
          ) : null}
        </div>
        <div className="row">
          <Button kind="text" onClick={() => setView(zoomed(extent, 1.5, middle(extent)))}>{t('plan.nearer')}</Button>
          <Button kind="text" onClick={() => setView(zoomed(extent, 1 / 1.5, middle(extent)))}>{t('plan.farther')}</Button>
          <Button kind="text" onClick={() => setView(null)}>{t('plan.whole')}</Button>
        </div>
        <details className="drawing-table"><summary>{t('ui.drawing.asTable')}</summary><DrawingTable table={planTable(document, new Map(plan.shapes.map((shape) => [shape.id, measureOf(shape)])))} /></details>
      </figure>
      {hand === 'area' || hand === 'line' ? <PathPanel key={`${hand} ${String(path.length)}`} kind={hand} path={path} onPath={setPath} onFinish={(points) => finish(points, hand)} /> : null}
      {hand === 'spot' || hand === 'place' ? <SpotPanel key={`${hand} ${String(document.site.spotLevels.length)} ${String(path[0]?.x)} ${String(path[0]?.y)}`} document={document} spot={hand === 'spot'} at={path[0] ?? null} edit={edit} onPlace={place} onDone={() => setPath([])} /> : null}
      {selected && hand === 'choose' ? <ShapePanel key={selected.id} document={document} shape={selected} edit={edit} onRemoved={() => setChosen(null)} /> : null}
      <PlanChecks document={document} edit={edit} onShow={(id) => { take('choose'); setChosen(id); }} />
      <GroundPanel document={document} answer={answer} level={level} onLevel={setLevel} edit={edit} />
      <PointListPanel document={document} edit={edit} />
      <PicturePanel jobId={jobId} document={document} plan={plan} edit={edit} tying={hand === 'tie'} places={tiePlaces} onTie={() => take('tie')} onDone={() => { take('choose'); setView(null); }} />
    </div>
  );
}

const middle = ({ x0, x1, y0, y1 }: ReturnType<typeof planExtent>): Position => ({ x: (x0 + x1) / 2, y: (y0 + y1) / 2 });
