import { useEffect, useId, useRef, type ReactNode } from 'react';
import { useText } from '../lib/reader.tsx';
import { Button } from './Button.tsx';
import './Dialog.css';

interface DialogProps {
  readonly open: boolean;
  readonly title: string;
  readonly onClose: () => void;
  /** `crew` for one gloved thumb. */
  readonly size?: 'desk' | 'crew';
  readonly children: ReactNode;
}

/** The browser's own modal dialog: focus stays inside, Escape closes it, focus returns. */
export function Dialog({ open, title, onClose, size = 'desk', children }: DialogProps) {
  const ref = useRef<HTMLDialogElement>(null);
  const id = useId();
  const { t } = useText();
  useEffect(() => {
    const dialog = ref.current;
    if (!dialog || dialog.open === open) return;
    if (open) dialog.showModal();
    else dialog.close();
  }, [open]);
  // A dialog that stands in this one closes by itself.
  return (
    <dialog ref={ref} className="dialog" aria-labelledby={id} onClose={(event) => (event.target === event.currentTarget ? onClose() : undefined)}>
      {open ? (
        <div className="stack">
          <div className="dialog-head">
            <h2 id={id}>{title}</h2>
            <Button kind="text" size={size} onClick={onClose}>{t('ui.close')}</Button>
          </div>
          {children}
        </div>
      ) : null}
    </dialog>
  );
}
