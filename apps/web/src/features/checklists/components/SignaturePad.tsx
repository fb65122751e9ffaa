import { useState, type PointerEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { useText } from '../../../lib/reader.tsx';

export const padWidth = 300;
export const padHeight = 100;
const longest = 5900;

/** A field to sign in with a finger; gives the path of the strokes, empty when nothing is drawn. */
export function SignaturePad({ path, onChange }: { readonly path: string; readonly onChange: (path: string) => void }) {
  const { t } = useText();
  const [drawing, setDrawing] = useState(false);
  const at = (event: PointerEvent<SVGSVGElement>): string => {
    const box = event.currentTarget.getBoundingClientRect();
    const within = (share: number, most: number) => String(Math.round(Math.min(Math.max(share, 0), 1) * most));
    return `${within((event.clientX - box.left) / box.width, padWidth)} ${within((event.clientY - box.top) / box.height, padHeight)}`;
  };
  const add = (step: string) => {
    if (path.length + step.length <= longest) onChange(path + step);
  };
  return (
    <div className="stack">
      <svg className="sign-pad" viewBox={`0 0 ${String(padWidth)} ${String(padHeight)}`} role="img" aria-label={t('checklists.draw')}
        onPointerDown={(event) => { event.currentTarget.setPointerCapture(event.pointerId); setDrawing(true); add(`M${at(event)}`); }}
        onPointerMove={(event) => { if (drawing) add(`L${at(event)}`); }}
        onPointerUp={() => setDrawing(false)} onPointerCancel={() => setDrawing(false)}>
        <path d="M12 80L288 80" className="sign-line" />
        <path d={path} className="sign-stroke" />
      </svg>
      <p className="faint">{t('checklists.draw')}</p>
      {path === '' ? null : <Button kind="text" size="crew" onClick={() => onChange('')}>{t('checklists.drawAgain')}</Button>}
    </div>
  );
}

/** A signature that was drawn before. */
export function DrawnSignature({ path, name }: { readonly path: string; readonly name: string }) {
  const { t } = useText();
  return (
    <svg className="sign-drawn" viewBox={`0 0 ${String(padWidth)} ${String(padHeight)}`} role="img" aria-label={t('checklists.drawnBy', { name })}>
      <path d={path} className="sign-stroke" />
    </svg>
  );
}
