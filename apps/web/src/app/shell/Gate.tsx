import { identity } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { Outlet, useNavigate } from '@tanstack/react-router';
import { lazy, Suspense, useEffect } from 'react';
import { Button } from '../../components/Button.tsx';
import { Loading } from '../../components/Loading.tsx';
import { ProblemNotice } from '../../components/Notice.tsx';
import { ApiProblem } from '../../lib/problem.ts';
import { read } from '../../lib/query.ts';
import { useText } from '../../lib/reader.tsx';

/** Seldom there, and brings what sends along. */
const CutOff = lazy(() => import('./CutOff.tsx').then((one) => ({ default: one.CutOff })));

/** Lets members through; the office decides for itself what they may see. */
export function Gate() {
  const { t } = useText();
  const { data, error, isPending, refetch } = useQuery({ ...read(identity.me), retry: false, staleTime: 60_000 });
  if (isPending) return <Loading what={t('ui.you')} />;
  if (error instanceof ApiProblem && error.code === 'auth.required') {
    return <SignInFirst />;
  }
  if (error instanceof ApiProblem && error.code === 'auth.phoneCutOff') return <Suspense fallback={<Loading what={t('ui.page')} />}><CutOff /></Suspense>;
  if (!data) return <ProblemNotice problem={error} action={<Button onClick={() => void refetch()}>{t('ui.tryAgain')}</Button>} />;
  if (data.data.kind === 'customer') return <CustomersPage />;
  return <Suspense fallback={<Loading what={t('ui.page')} />}><Outlet /></Suspense>;
}

/**
 * Moves on once. The router's own <Navigate> does so at every render, and this page is rendered again while it is being
 * left, with the new address as the one to come back to.
 */
function SignInFirst() {
  const navigate = useNavigate();
  useEffect(() => {
    const { pathname, search, hash } = location;
    if (pathname === '/sign-in') return;
    void navigate({ to: '/sign-in', ...(pathname === '/' ? {} : { search: { from: pathname + search + hash } }), replace: true });
  }, [navigate]);
  return null;
}

/** A customer's page is loaded by itself, without the members' part. */
function CustomersPage() {
  useEffect(() => location.replace('/drain'), []);
  return null;
}
