import type { PhotoMark } from '@yardfall/contracts';
import { headOf, type Spot } from './marks.ts';
import './photo.css';

interface MarksOverProps {
  readonly marks: readonly PhotoMark[];
  /** Of the upright picture [pixels]; only its shape matters. */
  readonly width: number;
  readonly height: number;
  /** Over a picture that fills its frame and is cut off at two sides. */
  readonly cut?: boolean;
}

/** Marks over a picture, which itself stays as it came. */
export function MarksOver({ marks, width, height, cut = false }: MarksOverProps) {
  const unit = Math.max(width, height) / 100;
  const at = ({ x, y }: Spot) => ({ x: x * width, y: y * height });
  return (
    <svg className="marks" viewBox={`0 0 ${String(width)} ${String(height)}`} preserveAspectRatio={cut ? 'xMidYMid slice' : 'xMidYMid meet'} aria-hidden="true">
      {marks.map(({ kind, from, to, words }, index) => {
        const [a, b] = [at(from), at(to)];
        if (kind === 'text') return <text key={index} x={a.x} y={a.y} fontSize={5 * unit}>{words}</text>;
        return <g key={index}><line x1={a.x} y1={a.y} x2={b.x} y2={b.y} />{kind === 'arrow' ? <polyline points={headOf(a, b, 4 * unit)} /> : null}</g>;
      })}
    </svg>
  );
}
