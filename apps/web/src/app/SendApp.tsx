import { sending } from '@yardfall/contracts';
import { QueryClientProvider, useQuery, useQueryClient } from '@tanstack/react-query';
import { useEffect, useRef, useState } from 'react';
import { Button } from '../components/Button.tsx';
import { ErrorBoundary } from '../components/ErrorBoundary.tsx';
import { Loading } from '../components/Loading.tsx';
import { Notice, ProblemNotice } from '../components/Notice.tsx';
import { Page } from '../components/Page.tsx';
import { SendRain } from '../features/sending/components/SendRain.tsx';
import { call } from '../lib/api.ts';
import { tokenOf } from '../lib/linkToken.ts';
import { ApiProblem } from '../lib/problem.ts';
import { read } from '../lib/query.ts';
import { makeQueryClient } from '../lib/queryClient.ts';
import { ReaderProvider, useText } from '../lib/reader.tsx';
import { Sheet } from './shell/Sheet.tsx';
import { TitleFrame } from './shell/TitleFrame.tsx';

const queries = makeQueryClient();

/** The page of a link that takes photos and videos of the rain: nobody signs in, and nothing of the job is shown. */
export function SendApp() {
  return (
    <QueryClientProvider client={queries}>
      <ReaderProvider>
        <ErrorBoundary><Sheet title={<TitleFrame home={(mark) => <span className="title-mark">{mark}</span>} />}><Entrance /></Sheet></ErrorBoundary>
      </ReaderProvider>
    </QueryClientProvider>
  );
}

/** The token is exchanged first; after that the address is clean, and the link's cookie opens the page again. */
function Entrance() {
  const client = useQueryClient();
  const { t } = useText();
  const [token, setToken] = useState(() => tokenOf(location.hash));
  const [problem, setProblem] = useState<unknown>(null);
  const asked = useRef('');
  useEffect(() => {
    if (token === null || asked.current === token) return;
    asked.current = token;
    call(sending.open, { body: { token } }).then((answer) => {
      client.setQueryData(read(sending.read).queryKey, answer);
      history.replaceState(null, '', '/send');
      setToken(null);
    }, setProblem);
  }, [token, client]);
  if (problem !== null) return <Closed problem={problem} onAgain={() => location.reload()} />;
  return token === null ? <Send /> : <Loading what={t('sending.loading')} />;
}

function Send() {
  const { t } = useText();
  const { data, error, isPending, refetch } = useQuery({ ...read(sending.read), retry: false });
  if (isPending) return <Loading what={t('sending.loading')} />;
  if (data === undefined) return <Closed problem={error} onAgain={() => void refetch()} />;
  const { company } = data.data;
  return (
    <Page narrow title={t('sending.title')} lead={t('sending.lead', { company: company.name })}>
      <SendRain page={data.data} />
      <Notice severity="caution"><p>{t('sending.safe')}</p></Notice>
      {company.phone === '' ? null : <p><a href={`tel:${company.phone.replace(/[^+\d]/g, '')}`}>{t('sending.call', { phone: company.phone })}</a></p>}
    </Page>
  );
}

function Closed({ problem, onAgain }: { readonly problem: unknown; readonly onAgain: () => void }) {
  const { t } = useText();
  const isOver = problem instanceof ApiProblem && (problem.code === 'auth.required' || problem.code === 'auth.linkInvalid' || problem.code === 'auth.forbidden');
  if (isOver) return <Page narrow title={t('sending.title')}><Notice severity="stop"><p>{t('sending.over')}</p></Notice></Page>;
  return <ProblemNotice problem={problem} action={<Button onClick={onAgain}>{t('ui.tryAgain')}</Button>} />;
}
