import { useId, type InputHTMLAttributes, type ReactNode, type TextareaHTMLAttributes } from 'react';
import { useText } from '../lib/reader.tsx';
import './Field.css';

export interface FieldWords {
  readonly label: string;
  /** What to write here, where to find it. */
  readonly hint?: ReactNode;
  readonly error?: ReactNode;
  readonly optional?: boolean;
}

export interface ControlIds {
  readonly id: string;
  readonly describedBy: string | undefined;
  readonly invalid: true | undefined;
}

interface FieldProps extends FieldWords {
  /** After the control: the value as read, a unit, a button. */
  readonly after?: ReactNode;
  readonly children: (ids: ControlIds) => ReactNode;
}

/** Label, control, hint and error, tied together for every reader. */
export function Field({ label, hint, error, optional = false, after, children }: FieldProps) {
  const id = useId();
  const { t } = useText();
  const described = [hint ? `${id}-hint` : '', error ? `${id}-error` : ''].filter(Boolean).join(' ');
  return (
    <div className="field">
      <label htmlFor={id}>
        {label}
        {optional ? <span className="field-optional"> {t('ui.optional')}</span> : null}
      </label>
      {hint ? <p id={`${id}-hint`} className="field-hint">{hint}</p> : null}
      {children({ id, describedBy: described || undefined, invalid: error ? true : undefined })}
      {after}
      {error ? <p id={`${id}-error`} className="field-error">{error}</p> : null}
    </div>
  );
}

type TextProps = FieldWords & Omit<InputHTMLAttributes<HTMLInputElement>, 'id' | 'className' | 'style'>;

export function TextField({ label, hint, error, optional, ...input }: TextProps) {
  return (
    <Field {...{ label, hint, error, optional }}>
      {({ id, describedBy, invalid }) => <input {...input} id={id} className="control" aria-describedby={describedBy} aria-invalid={invalid} />}
    </Field>
  );
}

type AreaProps = FieldWords & Omit<TextareaHTMLAttributes<HTMLTextAreaElement>, 'id' | 'className' | 'style'>;

export function TextArea({ label, hint, error, optional, rows = 4, ...area }: AreaProps) {
  return (
    <Field {...{ label, hint, error, optional }}>
      {({ id, describedBy, invalid }) => <textarea {...area} rows={rows} id={id} className="control" aria-describedby={describedBy} aria-invalid={invalid} />}
    </Field>
  );
}

interface CheckProps extends Omit<InputHTMLAttributes<HTMLInputElement>, 'id' | 'className' | 'style' | 'type'> {
  readonly label: ReactNode;
}

export function CheckField({ label, ...input }: CheckProps) {
  return (
    <label className="check">
      <input {...input} type="checkbox" />
      <span>{label}</span>
    </label>
  );
}
