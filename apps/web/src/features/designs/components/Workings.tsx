import type { DesignDocument, Evaluation, Working } from '@yardfall/calc';
import { createContext, use, useMemo, useState, type ReactNode } from 'react';
import { Dialog } from '../../../components/Dialog.tsx';
import { useText } from '../../../lib/reader.tsx';
import { nameOf } from '../model/editWords.ts';
import { back, into, workingOf, type Trail } from '../model/workings.ts';
import { WorkingSheet } from './WorkingSheet.tsx';
import './workings.css';

interface Opener {
  readonly workings: readonly Working[];
  readonly open: (result: string) => void;
}

const OpenerContext = createContext<Opener>({ workings: [], open: () => undefined });

interface WorkingsProps {
  readonly document: DesignDocument;
  readonly evaluation: Evaluation | null;
  readonly children: ReactNode;
}

/** Lets every figure inside open how it came about, in a sheet over the page. */
export function Workings({ document, evaluation, children }: WorkingsProps) {
  const { say, t } = useText();
  const [trail, setTrail] = useState<Trail>([]);
  const workings = useMemo(() => evaluation?.workings ?? [], [evaluation]);
  const opener = useMemo<Opener>(() => ({ workings, open: (result) => setTrail([result]) }), [workings]);
  const result = trail.at(-1);
  const working = result === undefined ? null : workingOf(workings, result);
  const title = working === null ? '' : say(`workings.${working.code}`);
  return (
    <OpenerContext value={opener}>
      {children}
      <Dialog open={working !== null} title={working?.at ? t('studies.working.at', { name: nameOf([document], working.at), what: title }) : title} onClose={() => setTrail([])}>
        {working === null ? null : <WorkingSheet key={working.result} document={document} workings={workings} working={working} onOpen={(next) => setTrail(into(trail, next))} {...(trail.length > 1 ? { onBack: () => setTrail(back(trail)) } : {})} />}
      </Dialog>
    </OpenerContext>
  );
}

/** A number that opens its working; plain text while the numbers are still quick ones without. */
export function Figure({ result, children }: { readonly result: string; readonly children: string }) {
  const { t } = useText();
  const { workings, open } = use(OpenerContext);
  if (workingOf(workings, result) === null) return children;
  return <button type="button" className="figure-open" aria-haspopup="dialog" title={t('studies.working.open')} onClick={() => open(result)}>{children}</button>;
}
