import { useState } from 'react';
import { useText } from '../../../lib/reader.tsx';
import { useChecklistView } from '../api/useChecklistView.ts';
import { useNext } from '../api/useNext.ts';
import { leftCount } from '../model/view.ts';
import { ItemDialog } from './ItemDialog.tsx';
import { NextControl } from './NextControl.tsx';
import { Run } from './Run.tsx';
import './checklists.css';

/** For the crew's home: the next item of one job, worked on right there. Nothing before the job is released to dig. */
export function NextItem({ jobId }: { readonly jobId: string }) {
  const { t } = useText();
  const { view } = useChecklistView(jobId);
  const next = useNext(view);
  const [open, setOpen] = useState<string | null>(null);
  if (!view) return null;
  return (
    <div className="stack next-item">
      <NextControl view={view} onOpen={setOpen} />
      <p className="run-line faint"><Run views={view.items} next={next?.item.key ?? null} />{leftCount(view.items) === 0 ? t('checklists.built') : t('checklists.left', { n: leftCount(view.items) })}</p>
      <ItemDialog view={view} openKey={open} onOpen={setOpen} />
    </div>
  );
}
