import { useState } from 'react';
import { Dialog } from '../../../components/Dialog.tsx';
import { useText } from '../../../lib/reader.tsx';
import { useChecklistView } from '../api/useChecklistView.ts';
import { useNext } from '../api/useNext.ts';
import { ItemDialog } from './ItemDialog.tsx';
import { ItemRow } from './ItemRow.tsx';
import './checklists.css';

interface PartStepsProps {
  readonly jobId: string;
  /** The part that was pressed on a drawing; null for none. */
  readonly part: string | null;
  readonly onClose: () => void;
}

/** The steps of one part, opened from its drawing. */
export function PartSteps({ jobId, part, onClose }: PartStepsProps) {
  const { t } = useText();
  const { view } = useChecklistView(jobId);
  const next = useNext(view)?.item.key ?? null;
  const [open, setOpen] = useState<string | null>(null);
  if (view === null) return null;
  const steps = part === null ? [] : view.items.filter(({ item }) => item.part === part);
  const [first] = steps;
  return (
    <>
      <Dialog open={first !== undefined && open === null} title={first?.item.partName ?? ''} onClose={() => { if (open === null) onClose(); }} size="crew">
        <p className="faint">{t('checklists.stepsOfPart')}</p>
        <ul className="item-list">{steps.map((one) => <ItemRow key={one.item.key} view={one} next={next} onOpen={setOpen} />)}</ul>
      </Dialog>
      <ItemDialog view={view} openKey={open} onOpen={setOpen} />
    </>
  );
}
