import { identity, type Me } from '@yardfall/contracts';
import { QueryClientProvider, useQuery, useQueryClient } from '@tanstack/react-query';
import { lazy, Suspense, useEffect, useState } from 'react';
import { Button } from '../components/Button.tsx';
import { ErrorBoundary } from '../components/ErrorBoundary.tsx';
import { Loading } from '../components/Loading.tsx';
import { ProblemNotice } from '../components/Notice.tsx';
import { Page } from '../components/Page.tsx';
import { OpenDrain } from '../features/identity/components/OpenDrain.tsx';
import { tokenOf } from '../lib/linkToken.ts';
import { ApiProblem } from '../lib/problem.ts';
import { read } from '../lib/query.ts';
import { makeQueryClient } from '../lib/queryClient.ts';
import { ReaderProvider, useText } from '../lib/reader.tsx';
import { Sheet } from './shell/Sheet.tsx';
import { TitleBlock } from './shell/TitleBlock.tsx';

const queries = makeQueryClient();
const CustomerHome = lazy(() => import('../features/portal/index.ts').then((f) => ({ default: f.CustomerHome })));

/** The customer's one page. It carries nothing of what members need: a phone in the rain opens it once. */
export function CustomerApp() {
  return (
    <QueryClientProvider client={queries}>
      <ReaderProvider>
        <ErrorBoundary>
          <Sheet title={<TitleBlock home={(mark) => <a href="/drain" className="title-mark">{mark}</a>} />}><Entrance /></Sheet>
        </ErrorBoundary>
      </ReaderProvider>
    </QueryClientProvider>
  );
}

/** The link is exchanged first; after that the address is clean and the session opens the page. */
function Entrance() {
  const { t } = useText();
  const client = useQueryClient();
  const [token, setToken] = useState(() => tokenOf(location.hash));
  useEffect(() => {
    const again = () => setToken(tokenOf(location.hash));
    addEventListener('hashchange', again);
    return () => removeEventListener('hashchange', again);
  }, []);
  if (token === null) return <Drain />;
  const entered = async (me: Me) => {
    // The page asked who is there before anybody was: that answer may come after this one, and would say that the link is over.
    await client.cancelQueries({ queryKey: read(identity.me).queryKey });
    client.removeQueries({ predicate: ({ queryKey }) => queryKey[0] !== identity.me.id });
    client.setQueryData(read(identity.me).queryKey, { data: me, etag: null });
    history.replaceState(null, '', '/drain');
    setToken(null);
  };
  return <Page narrow title={t('identity.drain.title')} lead={t('identity.drain.lead')}><OpenDrain key={token} token={token} onEntered={(me) => void entered(me)} /></Page>;
}

function Drain() {
  const { t } = useText();
  const { data, error, isPending, refetch } = useQuery({ ...read(identity.me), retry: false, staleTime: 60_000 });
  const isMember = data?.data.kind === 'member';
  useEffect(() => {
    if (isMember) location.replace('/');
  }, [isMember]);
  if (isPending || isMember) return <Loading what={t('ui.you')} />;
  if (error instanceof ApiProblem && error.code === 'auth.required') return <ProblemNotice problem={new ApiProblem('auth.linkInvalid')} />;
  if (!data) return <ProblemNotice problem={error} action={<Button onClick={() => void refetch()}>{t('ui.tryAgain')}</Button>} />;
  return <Suspense fallback={<Loading what={t('identity.yourPage')} />}><CustomerHome /></Suspense>;
}
