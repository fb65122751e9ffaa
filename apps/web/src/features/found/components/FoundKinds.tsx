import { Button } from '../../../components/Button.tsx';
import { useText } from '../../../lib/reader.tsx';
import { kinds, type Kind } from '../model/kinds.ts';

/** What was found, each as one large control. */
export function FoundKinds({ disabled, onPick }: { readonly disabled: boolean; readonly onPick: (kind: Kind) => void }) {
  const { t } = useText();
  return <div className="found-kinds">{kinds.map((kind) => <Button key={kind} size="crew" wide disabled={disabled} onClick={() => onPick(kind)}>{t(`found.kind.${kind}`)}</Button>)}</div>;
}
