import type { ItemState } from '@yardfall/contracts';
import { useId } from 'react';

export type Standing = ItemState | 'held';

/** How an item stands, drawn as the section draws its parts: thin, half, solid, hatched; always with its word beside it. */
export function ItemMark({ standing }: { readonly standing: Standing }) {
  const id = useId().replace(/[^\w-]/g, '');
  return (
    <svg className={`item-mark item-mark-${standing}`} viewBox="0 0 24 24" width="24" height="24" aria-hidden="true">
      {standing === 'held' ? (
        <>
          <defs><pattern id={id} width="4" height="4" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0v4" stroke="currentColor" strokeWidth="2" /></pattern></defs>
          <circle cx="12" cy="12" r="9" fill={`url(#${id})`} />
        </>
      ) : null}
      {standing === 'proven' ? <circle cx="12" cy="12" r="9" fill="currentColor" /> : <circle cx="12" cy="12" r="9" fill="none" stroke="currentColor" strokeWidth="1.5" />}
      {inside[standing]}
    </svg>
  );
}

const inside: Readonly<Partial<Record<Standing, React.ReactElement>>> = {
  started: <path d="M12 3a9 9 0 0 0 0 18z" fill="currentColor" />,
  proven: <path className="item-mark-tick" d="M7.5 12.5l3 3 6-7" fill="none" strokeWidth="2" />,
  failed: <path d="M8 8l8 8M16 8l-8 8" stroke="currentColor" strokeWidth="2" />,
  disputed: <path d="M12 3v18M7 12h2M15 12h2" stroke="currentColor" strokeWidth="2" />,
  notApplicable: <path d="M7 12h10" stroke="currentColor" strokeWidth="2" />,
  waived: <path d="M6 18 18 6" stroke="currentColor" strokeWidth="2" />,
};
