import { Suspense } from 'react';
import { ErrorBoundary } from '../../components/ErrorBoundary.tsx';
import { Loading } from '../../components/Loading.tsx';
import { useText } from '../../lib/reader.tsx';
import { CustomerHome } from '../jobSections.tsx';

/** The customer's home. */
export function DrainPage() {
  const { t } = useText();
  return (
    <ErrorBoundary>
      <Suspense fallback={<Loading what={t('identity.yourPage')} />}>
        {CustomerHome ? <CustomerHome /> : null}
      </Suspense>
    </ErrorBoundary>
  );
}
