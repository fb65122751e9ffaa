import { standingOf } from '../model/standing.ts';
import type { ItemView } from '../model/view.ts';

/** The steps as one run of pipe, laid from the left: solid, bold, thin and hatched lengths. Its words stand beside it. */
export function Run({ views, next }: { readonly views: readonly ItemView[]; readonly next: string | null }) {
  return <span className="run" aria-hidden="true">{views.map((view) => <span key={view.item.key} className={`run-piece run-${standingOf(view, next)}`} />)}</span>;
}
