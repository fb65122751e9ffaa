import { itemText } from '@yardfall/contracts';
import { lazy, Suspense } from 'react';
import { Dialog } from '../../../components/Dialog.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { useText } from '../../../lib/reader.tsx';
import type { ChecklistView } from '../model/view.ts';

// The crew's home shows the next item; the ways to prove it come when it is opened, from the phone's own store.
const ItemScreen = lazy(() => import('./ItemScreen.tsx').then((screen) => ({ default: screen.ItemScreen })));

interface ItemDialogProps {
  readonly view: ChecklistView;
  readonly openKey: string | null;
  readonly onOpen: (key: string | null) => void;
}

/** One item on one screen. */
export function ItemDialog({ view, openKey, onOpen }: ItemDialogProps) {
  const { say, t } = useText();
  const shown = view.items.find(({ item }) => item.key === openKey) ?? null;
  const title = shown === null ? '' : say(itemText(shown.item.requirement, 'what'), shown.item.requirement.params);
  return (
    <Dialog open={shown !== null} title={title} onClose={() => onOpen(null)} size="crew">
      {shown === null ? null : <Suspense fallback={<Loading what={t('ui.part')} />}><ItemScreen key={shown.item.key} list={view} view={shown} onOpen={onOpen} /></Suspense>}
    </Dialog>
  );
}
