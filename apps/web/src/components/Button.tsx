import type { ButtonHTMLAttributes, ReactNode } from 'react';
import './Button.css';

export interface ButtonProps extends Omit<ButtonHTMLAttributes<HTMLButtonElement>, 'className' | 'style'> {
  /** `main` is the one thing to do here; `danger` cannot be undone. */
  readonly kind?: 'main' | 'plain' | 'danger' | 'text';
  /** `crew`: 56 px tall, for one gloved thumb. */
  readonly size?: 'desk' | 'crew';
  readonly wide?: boolean;
  readonly busy?: boolean;
  readonly children: ReactNode;
}

export function Button({ kind = 'plain', size = 'desk', wide = false, busy = false, disabled, children, type = 'button', ...rest }: ButtonProps) {
  const names = ['button', `button-${kind}`, size === 'crew' ? 'button-crew' : '', wide ? 'button-wide' : ''];
  return (
    <button {...rest} type={type} className={names.filter(Boolean).join(' ')} disabled={disabled ?? busy} aria-busy={busy || undefined}>
      {children}
    </button>
  );
}
