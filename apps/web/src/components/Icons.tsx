import './Icons.css';

/** Strokes in the manner of the section drawing; each always stands beside its word. */
const strokes = {
  drain: 'M2 8h20M4 8v8h16V8M8 5v6M12 5v6M16 5v6',
  pipe: 'M2 8l20 3M2 14l20 3M2 8v6M22 11v6',
  basin: 'M5 3v18h14V3M3 3h4M17 3h4M5 14h14',
  pump: 'M6 21v-7a6 6 0 1 1 6 6H6M12 8V2h6',
  outlet: 'M2 17h9a4 4 0 0 0 4-4V9M11 9h8M10 6h10M3 9h5M22 9h-1',
  sill: 'M2 20h8v-8h12M10 12V3M14 12V3M10 3h4',
  peg: 'M8 3h8v3H8zM9 6l3 15 3-15M2 12h5M17 12h5',
} as const;

export type IconName = keyof typeof strokes;

export function Icon({ name }: { readonly name: IconName }) {
  return (
    <svg className="icon" viewBox="0 0 24 24" width="24" height="24" aria-hidden="true">
      <path d={strokes[name]} />
    </svg>
  );
}
