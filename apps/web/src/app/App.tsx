import { QueryClientProvider } from '@tanstack/react-query';
import { RouterProvider } from '@tanstack/react-router';
import { ErrorBoundary } from '../components/ErrorBoundary.tsx';
import { makeQueryClient } from '../lib/queryClient.ts';
import { ReaderProvider } from '../lib/reader.tsx';
import { router } from './router.tsx';

const queries = makeQueryClient();

export function App() {
  return (
    <QueryClientProvider client={queries}>
      <ReaderProvider>
        <ErrorBoundary>
          <RouterProvider router={router} />
        </ErrorBoundary>
      </ReaderProvider>
    </QueryClientProvider>
  );
}
