import { sending, type ErrorCode } from '@yardfall/contracts';
import { useQueryClient } from '@tanstack/react-query';
import { useCallback, useEffect, useRef, useState } from 'react';
import { ApiProblem } from '../../../lib/problem.ts';
import { keyOf } from '../../../lib/query.ts';
import { sendWhole } from '../../../lib/resume.ts';
import { dropFile, keepFile, waitingFiles, waitingFrom, type WaitingFile } from '../model/waiting.ts';

/** The wait after a failure [ms] (ours). */
const again = 4_000;

export interface SendingFiles {
  readonly files: readonly WaitingFile[];
  /** Arrived share of the file that is being sent, from 0 to 1, by its id. */
  readonly shares: ReadonlyMap<string, number>;
  /** Why nothing goes on at the moment: out of reach, or the link is over. */
  readonly problem: ApiProblem | null;
  /** The phone could not keep what was chosen. */
  readonly notKept: boolean;
  readonly add: (chosen: readonly File[], note: string) => Promise<void>;
  readonly drop: (id: string) => void;
}

/** Keeps what was chosen on this phone and sends one file after the other, as long as the page is open; opened again, it goes on. */
export function useSendingFiles(): SendingFiles {
  const queries = useQueryClient();
  const [files, setFiles] = useState<readonly WaitingFile[]>([]);
  const [shares, setShares] = useState<ReadonlyMap<string, number>>(new Map());
  const [problem, setProblem] = useState<ApiProblem | null>(null);
  const [notKept, setNotKept] = useState(false);
  const busy = useRef(false);
  const reload = useCallback(async () => setFiles(await waitingFiles()), []);
  const round = useCallback(async () => {
    if (busy.current) return;
    busy.current = true;
    try {
      await alone(() => sendAll((id, share) => setShares((now) => new Map([...now, [id, share]])), async () => {
        await reload();
        await queries.invalidateQueries({ queryKey: keyOf(sending.read) });
      }));
      setProblem(null);
    } catch (error) {
      setProblem(error instanceof ApiProblem ? error : null);
    } finally {
      busy.current = false;
    }
  }, [queries, reload]);
  useEffect(() => {
    // oxlint-disable-next-line react/set-state-in-effect -- what waits on the phone is read when the page opens
    reload().then(round, () => setNotKept(true));
    const timer = setInterval(() => void round(), again);
    return () => clearInterval(timer);
  }, [reload, round]);
  const add = async (chosen: readonly File[], note: string) => {
    try {
      for (const one of chosen) await keepFile(await waitingFrom(one, note));
      setNotKept(false);
    } catch {
      setNotKept(true);
    }
    await reload();
    void round();
  };
  return { files, shares, problem, notKept, add, drop: (id) => void dropFile(id).then(reload) };
}

/** Two tabs of one phone must not send the same files side by side. */
async function alone(work: () => Promise<void>): Promise<void> {
  if (!('locks' in navigator)) return work();
  await navigator.locks.request('yardfall.sending', { ifAvailable: true }, (lock) => (lock === null ? undefined : work()));
}

async function sendAll(onShare: (id: string, share: number) => void, onChange: () => Promise<void>): Promise<void> {
  for (const one of (await waitingFiles()).filter(({ refused }) => refused === null)) {
    const { meta, file } = one;
    try {
      await sendWhole({ begin: sending.create, params: {} }, file, meta, (bytes) => onShare(meta.id, bytes / file.size));
      await dropFile(meta.id);
    } catch (error) {
      const refused = refusalIn(error);
      if (refused === null) throw error;
      await keepFile({ ...one, refused });
    }
    await onChange();
  }
}

/** What can never be taken; anything else may go through later. */
function refusalIn(error: unknown): ErrorCode | null {
  if (!(error instanceof ApiProblem) || error.passing || error.code === 'offline' || error.code === 'unreadableAnswer' || error.code === 'phone.full') return null;
  return error.status === 401 || error.status === 429 || error.status >= 500 || error.code === 'upload.offset' ? null : error.code;
}

