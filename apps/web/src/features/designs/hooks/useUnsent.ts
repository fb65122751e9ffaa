import type { DraftOperation, Revision } from '@yardfall/contracts';
import { useEffect, useState, type Dispatch, type SetStateAction } from 'react';
import { keepUnsent, keptUnsent } from '../model/unsent.ts';

interface UnsentEdits {
  readonly pending: readonly DraftOperation[];
  readonly setPending: Dispatch<SetStateAction<readonly DraftOperation[]>>;
  /** Version that they were made on: what others changed since is not written over. */
  readonly base: number;
  /** They have arrived: what follows is made on what the office has. */
  readonly settle: () => void;
}

/** Edits that wait on this device; they are there again after the page was closed. */
export function useUnsent(revision: Revision): UnsentEdits {
  const [restored] = useState(() => keptUnsent(revision));
  const [pending, setPending] = useState<readonly DraftOperation[]>(restored?.operations ?? []);
  const [restoredBase, setRestoredBase] = useState(restored?.base ?? null);
  const base = restoredBase ?? revision.version;

  useEffect(() => {
    keepUnsent(revision.id, pending.length === 0 ? null : { base, operations: pending });
  }, [pending, revision.id, base]);

  useEffect(() => {
    if (pending.length === 0) return;
    const warn = (event: BeforeUnloadEvent) => event.preventDefault();
    addEventListener('beforeunload', warn);
    return () => removeEventListener('beforeunload', warn);
  }, [pending.length]);

  return { pending, setPending, base, settle: () => setRestoredBase(null) };
}
