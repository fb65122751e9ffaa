import type { ErrorCode } from '@yardfall/contracts';
import { onOutbox, outboxNow } from './outbox.ts';
import { ApiProblem } from './problem.ts';

/** How long somebody looks at a button that works [ms] (ours). */
const patience = 60_000;

/** Waits until photos of this phone are in the office, which knows nothing of what names them before. They are on their way already. */
export async function photosArrived(ids: readonly (string | null | undefined)[], within = patience): Promise<void> {
  const left = () => outboxNow().filter((entry) => entry.kind === 'photo' && ids.includes(entry.id));
  const settled = () => {
    const refused = left().find((entry) => entry.refused !== null)?.refused;
    if (refused !== undefined) throw new ApiProblem(refused as ErrorCode);
    return left().length === 0;
  };
  if (settled()) return;
  await new Promise<void>((resolve, reject) => {
    const end = (work: () => void) => {
      clearTimeout(timer);
      stop();
      work();
    };
    const timer = setTimeout(() => end(() => reject(new ApiProblem('offline'))), within);
    const stop = onOutbox(() => {
      try {
        if (settled()) end(resolve);
      } catch (error) {
        end(() => reject(error as ApiProblem));
      }
    });
  });
}
