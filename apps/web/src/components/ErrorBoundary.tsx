import { Component, type ReactNode } from 'react';
import { useText } from '../lib/reader.tsx';
import { Button } from './Button.tsx';
import { Notice } from './Notice.tsx';

interface Props {
  readonly children: ReactNode;
}

/** Keeps a failing part from taking the page down, and says so in words; React itself reports the error to the console. */
export class ErrorBoundary extends Component<Props, { readonly failed: boolean }> {
  override state = { failed: false };

  static getDerivedStateFromError() {
    return { failed: true };
  }

  override render() {
    if (!this.state.failed) return this.props.children;
    return <Broken onRetry={() => this.setState({ failed: false })} />;
  }
}

export function Broken({ onRetry }: { readonly onRetry: () => void }) {
  const { t } = useText();
  return (
    <Notice severity="stop" title={t('ui.broken.title')} action={<Button onClick={onRetry}>{t('ui.tryAgain')}</Button>}>
      <p>{t('ui.broken.body')}</p>
    </Notice>
  );
}
