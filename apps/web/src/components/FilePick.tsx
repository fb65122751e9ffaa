import { useId, useState } from 'react';
import { useText } from '../lib/reader.tsx';
import type { FieldWords } from './Field.tsx';
import './FilePick.css';

interface FilePickProps extends FieldWords {
  readonly accept: string;
  /** `environment` opens the camera on a phone. */
  readonly capture?: 'environment';
  readonly words?: string;
  readonly size?: 'desk' | 'crew';
  readonly disabled?: boolean;
  /** The one thing to do here, over the whole width. */
  readonly main?: boolean;
  /** Words without a frame and without a heading in sight. */
  readonly quiet?: boolean;
  /** A frame over the whole width whose own words say what it is: without a heading in sight. */
  readonly bare?: boolean;
  readonly onPick: (file: File) => void;
  /** Several at once; told in place of `onPick`. */
  readonly onPickAll?: ((files: readonly File[]) => void) | undefined;
}

/** A file or a photo; says which one is chosen and how large it is. */
export function FilePick({ label, hint, error, accept, capture, words, size = 'desk', disabled, main = false, quiet = false, bare = false, onPick, onPickAll }: FilePickProps) {
  const id = useId();
  const { t, language } = useText();
  const [chosen, setChosen] = useState<File | null>(null);
  const pick = (files: readonly File[]) => {
    const [file] = files;
    if (!file) return;
    setChosen(onPickAll ? null : file);
    if (onPickAll) onPickAll(files);
    else onPick(file);
  };
  return (
    <div className="field">
      <span className={quiet || bare ? 'unseen' : 'field-legend'} id={`${id}-label`}>{label}</span>
      {hint ? <p className="field-hint" id={`${id}-hint`}>{hint}</p> : null}
      <label className={['file-pick button', size === 'crew' ? 'button-crew' : '', main ? 'button-main button-wide' : '', quiet ? 'button-text' : '', bare ? 'button-wide' : ''].filter(Boolean).join(' ')}>
        <input type="file" accept={accept} capture={capture} multiple={onPickAll !== undefined} disabled={disabled} aria-labelledby={`${id}-label`} aria-describedby={hint ? `${id}-hint` : undefined}
          onChange={(event) => {
            pick([...(event.target.files ?? [])]);
            event.target.value = ''; // so that the same file can be chosen again after a refusal
          }} />
        <span>{words ?? t('ui.file.choose')}</span>
      </label>
      {chosen ? <p className="field-reads">{t('ui.file.chosen', { name: chosen.name, size: sizeText(chosen.size, language) })}</p> : null}
      {error ? <p className="field-error">{error}</p> : null}
    </div>
  );
}

export function sizeText(bytes: number, language: string): string {
  const [value, unit] = bytes < 1e6 ? [bytes / 1e3, 'kilobyte'] : [bytes / 1e6, 'megabyte'];
  return new Intl.NumberFormat(language, { style: 'unit', unit, maximumFractionDigits: value < 10 ? 1 : 0 }).format(value);
}
