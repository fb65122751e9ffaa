import { QueryClientProvider } from '@tanstack/react-query';
import { RouterProvider } from '@tanstack/react-router';
import { ErrorBoundary } from '../components/ErrorBoundary.tsx';
import type { Known } from '../lib/firstKept.ts';
import { makeQueryClient } from '../lib/queryClient.ts';
import { ReaderProvider } from '../lib/reader.tsx';
import { router } from './router.tsx';

const queries = makeQueryClient();

/** What this device knew last stands on the page at once; everything of it counts as old, and is asked for again. */
export function showKept(kept: readonly Known[]): void {
  for (const { queryKey, data } of kept) queries.setQueryData(queryKey, data, { updatedAt: 0 });
}

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
