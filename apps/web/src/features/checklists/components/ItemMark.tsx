import type { ItemState } from '@yardfall/contracts';
import { useId } from 'react';

export type Standing = ItemState | 'held' | 'stopped' | 'next';

/** How a step stands, as a length of pipe on the section: solid when built, bold when next, thin when not yet, hatched when held, broken off when stopped; always with its word beside it. */
export function ItemMark({ standing }: { readonly standing: Standing }) {
  const id = useId().replace(/[^\w-]/g, '');
  return (
    <svg className={`item-mark item-mark-${standing}`} viewBox="0 0 28 24" width="28" height="24" aria-hidden="true">
      {standing === 'held' ? <defs><pattern id={id} width="4" height="4" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0v4" stroke="currentColor" strokeWidth="2" /></pattern></defs> : null}
      <path d={pipe} fill={standing === 'held' ? `url(#${id})` : standing === 'proven' ? 'currentColor' : 'none'} stroke="currentColor" strokeWidth={standing === 'next' ? 3 : 1.25} strokeDasharray={standing === 'notApplicable' ? '3 3' : undefined} />
      {inside[standing]}
    </svg>
  );
}

/** A length of pipe with its bell. */
const pipe = 'M2 7h5v2h19v6H7v2H2z';

const inside: Readonly<Partial<Record<Standing, React.ReactElement>>> = {
  started: <path d="M2 7h5v2h7v6H7v2H2z" fill="currentColor" />,
  failed: <path d="M11 4l8 16M19 4l-8 16" stroke="currentColor" strokeWidth="2" />,
  disputed: <path d="M14 3v18" stroke="currentColor" strokeWidth="3" />,
  stopped: <path d="M12 2v20M17 2v20" stroke="currentColor" strokeWidth="2.5" />,
  waived: <path d="M10 20 18 4" stroke="currentColor" strokeWidth="2" />,
};
