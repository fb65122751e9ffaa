import { measureOf, planChecks, planFigures, type DesignDocument } from '@yardfall/calc';
import { plan, planExtent, planTable, projection, toSvg, zoomed } from '@yardfall/drawing';
import { use, useId, useState } from 'react';
import { Button } from '../../../../components/Button.tsx';
import { elementOf } from '../../../../components/Drawing.tsx';
import { PlanBackdrop } from '../../../../components/PlanBackdrop.tsx';
import { useWidth } from '../../../../hooks/useWidth.ts';
import { useText } from '../../../../lib/reader.tsx';
import { useGround } from '../../hooks/useGround.ts';
import { DrawingTable } from '../DrawingTable.tsx';
import { WaterNow } from '../waterNow.ts';
import './plan.css';

const foot = 0.3048;

/** The plan of a revision that is frozen: to look at, nearer or farther, and nothing under a hand. */
export function PlanView({ jobId, document }: { readonly jobId: string; readonly document: DesignDocument }) {
  const { t, say, units } = useText();
  const id = useId().replace(/[^\w-]/g, '');
  const [frame, width] = useWidth<HTMLDivElement>();
  const [nearness, setNearness] = useState(1);
  const ground = useGround(document.site, use(WaterNow), units === 'us' ? 0.25 * foot : 0.1);
  const size = { width, height: Math.round(Math.min(640, Math.max(340, width * 0.62))) };
  const whole = planExtent(document.site, Math.max(size.width, 1), size.height);
  const extent = nearness === 1 ? whole : zoomed(whole, nearness, { x: (whole.x0 + whole.x1) / 2, y: (whole.y0 + whole.y1) / 2 });
  const picture = document.site.plan?.picture ?? null;
  const shapes = document.site.plan?.shapes ?? [];
  const display = plan(document, { ...size, extent, ground: ground?.ok === true ? ground.ground : null, figures: planFigures(document), checks: planChecks(document), scaleUnit: units === 'us' ? 'foot' : 'metre', over: picture !== null, key: true });
  const tree = width > 0 ? toSvg(display, { ...size, label: (code, params) => say(code, params), title: null, idPrefix: `plan-${id}`, hits: false }) : null;
  const tall = Number(tree?.attrs['height'] ?? 0);
  return (
    <figure className="drawing">
      <div ref={frame} className="drawing-frame">
        {tree ? (
          <svg viewBox={`0 0 ${String(width)} ${String(tall)}`} width={width} height={tall} role="img" aria-label={t('plan.picture')}>
            {picture ? <PlanBackdrop key={picture.photo} jobId={jobId} picture={picture} view={projection(extent, size.width, size.height)} /> : null}
            {elementOf(tree, 0, { onSelect: undefined, partName: undefined, selected: null })}
          </svg>
        ) : null}
      </div>
      <div className="row">
        <Button kind="text" onClick={() => setNearness((now) => Math.min(now * 1.5, 12))}>{t('plan.nearer')}</Button>
        <Button kind="text" onClick={() => setNearness((now) => Math.max(now / 1.5, 1 / 4))}>{t('plan.farther')}</Button>
        <Button kind="text" onClick={() => setNearness(1)}>{t('plan.whole')}</Button>
      </div>
      <details className="drawing-table"><summary>{t('ui.drawing.asTable')}</summary><DrawingTable table={planTable(document, new Map(shapes.map((shape) => [shape.id, measureOf(shape)])))} /></details>
    </figure>
  );
}
