import { planFigures, type DesignDocument, type Position } from '@yardfall/calc';
import { plan, planExtent, projection, toSvg, zoomed } from '@yardfall/drawing';
import { useId, useState, type PointerEvent } from 'react';
import { Button } from '../../../../components/Button.tsx';
import { elementOf } from '../../../../components/Drawing.tsx';
import { PlanBackdrop } from '../../../../components/PlanBackdrop.tsx';
import { useWidth } from '../../../../hooks/useWidth.ts';
import { useText } from '../../../../lib/reader.tsx';

interface PinPlanProps {
  readonly jobId: string;
  /** The plan with the other pins on it. */
  readonly document: DesignDocument;
  readonly here: Position | null;
  readonly onTap: (at: Position) => void;
}

/** The plan of the job under the thumb: a tap says where the shot stands. */
export function PinPlan({ jobId, document, here, onTap }: PinPlanProps) {
  const { t, say, units } = useText();
  const id = useId().replace(/[^\w-]/g, '');
  const [frame, width] = useWidth<HTMLDivElement>();
  const [view, setView] = useState<ReturnType<typeof planExtent> | null>(null);
  const size = { width, height: Math.round(Math.max(width, 1)) };
  const extent = view ?? planExtent(document.site, Math.max(width, 1), size.height);
  const shown = projection(extent, Math.max(width, 1), size.height);
  const picture = document.site.plan?.picture ?? null;
  const tree = width > 0 ? toSvg(plan(document, { ...size, extent, figures: planFigures(document), scaleUnit: units === 'us' ? 'foot' : 'metre', over: picture !== null }), { ...size, label: (code, params) => say(code, params), title: null, idPrefix: `pin-${id}`, hits: false }) : null;
  const tap = (event: PointerEvent<SVGSVGElement>) => {
    const box = event.currentTarget.getBoundingClientRect();
    const [x, y] = shown.toDrawing([((event.clientX - box.left) / box.width) * size.width, ((event.clientY - box.top) / box.height) * size.height]);
    onTap({ x, y });
  };
  const about = here ?? { x: (extent.x0 + extent.x1) / 2, y: (extent.y0 + extent.y1) / 2 };
  const mark = here === null ? null : shown.toPixels([here.x, here.y]);
  return (
    <div className="stack">
      <div ref={frame} className="drawing-frame pin-plan">
        {tree ? (
          <svg viewBox={`0 0 ${String(size.width)} ${String(size.height)}`} width={size.width} height={size.height} onPointerUp={tap} aria-hidden="true">
            {picture ? <PlanBackdrop key={picture.photo} jobId={jobId} picture={picture} view={shown} /> : null}
            {elementOf(tree, 0, { onSelect: undefined, partName: undefined, selected: null })}
            {mark ? <circle className="pin-here" cx={mark[0]} cy={mark[1]} r="8" /> : null}
          </svg>
        ) : null}
      </div>
      <div className="row">
        <Button kind="text" size="crew" onClick={() => setView(zoomed(extent, 1.6, about))}>{t('plan.nearer')}</Button>
        <Button kind="text" size="crew" onClick={() => setView(zoomed(extent, 1 / 1.6, about))}>{t('plan.farther')}</Button>
        <Button kind="text" size="crew" onClick={() => setView(null)}>{t('plan.whole')}</Button>
      </div>
    </div>
  );
}
