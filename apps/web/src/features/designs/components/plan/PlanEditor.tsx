import { measureOf, type DesignDocument, type Position } from '@yardfall/calc';
import type { DraftOperation } from '@yardfall/contracts';
import { planExtent, planTable, zoomed } from '@yardfall/drawing';
import { use, useState, type KeyboardEvent } from 'react';
import { Button } from '../../../../components/Button.tsx';
import { Choices } from '../../../../components/Choices.tsx';
import { Empty } from '../../../../components/Empty.tsx';
import { Notice } from '../../../../components/Notice.tsx';
import { Select } from '../../../../components/Select.tsx';
import { useWidth } from '../../../../hooks/useWidth.ts';
import { useText } from '../../../../lib/reader.tsx';
import { useGround } from '../../hooks/useGround.ts';
import { WaterNow } from '../waterNow.ts';
import { usePen, type Pen } from '../../hooks/usePen.ts';
import { hands, isDrawing, usesOf } from '../../model/plan/hand.ts';
import { changeShape, emptyPlan } from '../../model/plan/operations.ts';
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
  const [frame, width] = useWidth<HTMLDivElement>();
  const size = { width, height: Math.round(Math.min(640, Math.max(340, width * 0.62))) };
  const pen = usePen(document, edit);
  const { plan, hand, path, selected } = pen;
  const [view, setView] = useState<ReturnType<typeof planExtent> | null>(null);
  const [level, setLevel] = useState<number | null>(null);
  // A level that is typed stands still; without one the water is that of the moment of the storm.
  const now = use(WaterNow);
  const answer = useGround(document.site, level ?? now, units === 'us' ? 0.25 * foot : 0.1);
  const extent = view ?? planExtent(document.site, Math.max(size.width, 1), size.height);
  const nearer = (times: number) => setView(zoomed(extent, times, middle(extent)));
  const key = (event: KeyboardEvent) => {
    if (event.key === '+' || event.key === '-') nearer(event.key === '+' ? 1.25 : 0.8);
    else pen.onKey(event);
  };
  return (
    <div className="stack">
      <HandLine pen={pen} />
      <figure className="drawing">
        <div ref={frame} className="drawing-frame">
          {width > 0 ? (
            <PlanCanvas jobId={jobId} document={document} ground={answer?.ok === true ? answer.ground : null} hand={hand} extent={extent} size={size} selected={selected} path={path}
              onExtent={setView} onSelect={pen.choose} onPlace={pen.place} onChange={(shape) => edit(changeShape(document, shape))} onKey={key} />
          ) : null}
        </div>
        <div className="row">
          <Button kind="text" onClick={() => nearer(1.5)}>{t('plan.nearer')}</Button>
          <Button kind="text" onClick={() => nearer(1 / 1.5)}>{t('plan.farther')}</Button>
          <Button kind="text" onClick={() => setView(null)}>{t('plan.whole')}</Button>
        </div>
        <details className="drawing-table"><summary>{t('ui.drawing.asTable')}</summary><DrawingTable table={planTable(document, new Map(plan.shapes.map((shape) => [shape.id, measureOf(shape)])))} /></details>
      </figure>
      <UnderHand document={document} pen={pen} edit={edit} />
      <PlanChecks document={document} edit={edit} onShow={(id) => { pen.take('choose'); pen.choose(id); }} />
      <GroundPanel document={document} answer={answer} level={level} onLevel={setLevel} edit={edit} />
      <PointListPanel document={document} edit={edit} />
      <PicturePanel jobId={jobId} document={document} plan={plan} edit={edit} tying={hand === 'tie'} path={path} onTie={() => pen.take('tie')} onDone={() => { pen.take('choose'); setView(null); }} />
    </div>
  );
}

/** The hands to choose from, and what the chosen one wants. */
function HandLine({ pen: { hand, use, untied, take, setUse } }: { readonly pen: Pen }) {
  const { t } = useText();
  const hint = hand === 'area' || hand === 'line' ? 'draw' : hand === 'spot' ? 'place' : hand;
  return (
    <>
      <div className="row">
        <Choices label={t('plan.tool')} look="quiet" value={hand === 'tie' ? null : hand} onChange={take} disabled={untied} choices={hands.map((value) => ({ value, label: t(`plan.tool.${value}`) }))} />
        {isDrawing(hand) ? <Select label={t('plan.use')} value={use} onChange={setUse} choices={usesOf[hand].map((value) => ({ value, label: t(`plan.use.${value}`) }))} /> : null}
      </div>
      <p className="faint measure">{t(`plan.hint.${hint}`)}</p>
      {untied ? <Notice severity="caution"><p>{t('plan.untied')}</p></Notice> : null}
    </>
  );
}

/** The figures of what the hand is at: the path, a place, or the chosen shape. */
function UnderHand({ document, pen, edit }: { readonly document: DesignDocument; readonly pen: Pen; readonly edit: PlanEditorProps['edit'] }) {
  const { hand, path, selected } = pen;
  const [at] = path;
  if (hand === 'area' || hand === 'line') return <PathPanel key={`${hand} ${String(path.length)}`} kind={hand} path={path} onPath={pen.setPath} onFinish={(points) => pen.finish(points, hand)} />;
  if (hand === 'spot' || hand === 'place') {
    const key = `${hand} ${String(document.site.spotLevels.length)} ${String(at?.x)} ${String(at?.y)}`;
    return <SpotPanel key={key} document={document} spot={hand === 'spot'} at={at ?? null} edit={edit} onPlace={pen.place} onDone={() => pen.setPath([])} />;
  }
  return selected ? <ShapePanel key={selected.id} document={document} shape={selected} edit={edit} onRemoved={() => pen.choose(null)} /> : null;
}

const middle = ({ x0, x1, y0, y1 }: ReturnType<typeof planExtent>): Position => ({ x: (x0 + x1) / 2, y: (y0 + y1) / 2 });
