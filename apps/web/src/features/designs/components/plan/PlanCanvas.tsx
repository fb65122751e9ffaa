import { planChecks, planFigures, type DesignDocument, type Position } from '@yardfall/calc';
import { plan, projection, toSvg, type PlanGround, type Point } from '@yardfall/drawing';
import { useId, type KeyboardEvent } from 'react';
import { elementOf } from '../../../../components/Drawing.tsx';
import { PlanBackdrop } from '../../../../components/PlanBackdrop.tsx';
import { useText } from '../../../../lib/reader.tsx';
import { usePlanHand, type Sheet } from '../../hooks/usePlanHand.ts';
import { withShape } from '../../model/plan/operations.ts';

interface PlanCanvasProps extends Sheet {
  readonly jobId: string;
  readonly document: DesignDocument;
  readonly ground: PlanGround | null;
  readonly onKey: (event: KeyboardEvent) => void;
}

/** The sheet itself: picture below, drawing, and what is under the hand on top. */
export function PlanCanvas({ jobId, document, ground, onKey, ...sheet }: PlanCanvasProps) {
  const { t, say, units } = useText();
  const id = useId().replace(/[^\w-]/g, '');
  const { extent, size, hand, selected, path } = sheet;
  const { live, hover, on } = usePlanHand(document.site.plan?.shapes ?? [], sheet, onKey);
  const view = projection(extent, size.width, size.height);
  const picture = document.site.plan?.picture ?? null;
  const shown = live === null ? document : withShape(document, live);
  const display = plan(shown, { ...size, extent, ground, figures: planFigures(shown), checks: planChecks(shown), scaleUnit: units === 'us' ? 'foot' : 'metre', over: picture !== null });
  const tree = toSvg(display, { ...size, label: (code, params) => say(code, params), title: null, idPrefix: `plan-${id}`, selected: selected?.id ?? null, hits: hand === 'choose' });
  const held = hand === 'choose' ? (live ?? selected) : null;
  return (
    // The drawing is a group whose shapes are buttons; the frame takes the pointer for moving and drawing.
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-element-interactions
    <div className={`plan-canvas plan-hand-${hand}`} role="application" aria-label={t('plan.picture')} tabIndex={0} {...on}>
      <svg viewBox={`0 0 ${String(size.width)} ${String(size.height)}`} width={size.width} height={size.height} aria-hidden="true">
        {picture ? <PlanBackdrop key={picture.photo} jobId={jobId} picture={picture} view={view} /> : null}
        {elementOf(tree, 0, { onSelect: undefined, partName: undefined, selected: selected?.id ?? null })}
        {held?.points.map((point, at) => <Corner key={at} at={view.toPixels([point.x, point.y])} />)}
        {path.length > 0 || hover ? <Path path={path} hover={hover} toPixels={(at) => view.toPixels(at)} /> : null}
      </svg>
    </div>
  );
}

function Corner({ at: [x, y] }: { readonly at: Point }) {
  return <rect x={x - 5} y={y - 5} width={10} height={10} className="plan-corner" />;
}

function Path({ path, hover, toPixels }: { readonly path: readonly Position[]; readonly hover: Position | null; readonly toPixels: (point: Point) => Point }) {
  const places = [...path, ...(hover ? [hover] : [])].map(({ x, y }) => toPixels([x, y]));
  return (
    <g>
      <polyline className="plan-path" points={places.map(([x, y]) => `${x},${y}`).join(' ')} />
      {places.map((at, index) => <Corner key={index} at={at} />)}
    </g>
  );
}
