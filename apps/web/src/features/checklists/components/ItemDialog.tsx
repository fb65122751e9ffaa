import { itemText } from '@yardfall/contracts';
import { Dialog } from '../../../components/Dialog.tsx';
import { useText } from '../../../lib/reader.tsx';
import type { ChecklistView } from '../model/view.ts';
import { ItemScreen } from './ItemScreen.tsx';

interface ItemDialogProps {
  readonly view: ChecklistView;
  readonly openKey: string | null;
  readonly onOpen: (key: string | null) => void;
}

/** One item on one screen. */
export function ItemDialog({ view, openKey, onOpen }: ItemDialogProps) {
  const { say } = useText();
  const shown = view.items.find(({ item }) => item.key === openKey) ?? null;
  const title = shown === null ? '' : say(itemText(shown.item.requirement, 'what'), shown.item.requirement.params);
  return (
    <Dialog open={shown !== null} title={title} onClose={() => onOpen(null)}>
      {shown === null ? null : <ItemScreen key={shown.item.key} list={view} view={shown} onOpen={onOpen} />}
    </Dialog>
  );
}
