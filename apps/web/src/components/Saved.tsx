import { useText } from '../lib/reader.tsx';

export type SavedStateKind = 'changed' | 'saving' | 'device' | 'office' | 'failed';

interface SavedProps {
  readonly state: SavedStateKind;
  /** RFC 3339, for `office`. */
  readonly at?: string;
}

/** Where the last entry is: on this phone, in the office, or nowhere yet. */
export function Saved({ state, at }: SavedProps) {
  const { t } = useText();
  return (
    <p className={state === 'failed' ? 'field-error' : 'faint'} role="status">
      {state === 'office' && at !== undefined ? t('ui.saved.officeAt', { at }) : t(`ui.saved.${state}`)}
    </p>
  );
}
