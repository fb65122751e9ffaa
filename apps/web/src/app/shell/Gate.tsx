import { identity } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { Navigate, Outlet, useLocation } from '@tanstack/react-router';
import { Suspense } from 'react';
import { Button } from '../../components/Button.tsx';
import { Loading } from '../../components/Loading.tsx';
import { ProblemNotice } from '../../components/Notice.tsx';
import { ApiProblem } from '../../lib/problem.ts';
import { read } from '../../lib/query.ts';
import { useText } from '../../lib/reader.tsx';

/** Lets the right kind of person through; the office decides for itself what they may see. */
export function Gate({ kind }: { readonly kind: 'member' | 'customer' }) {
  const { t } = useText();
  const at = useLocation();
  const { data, error, isPending, refetch } = useQuery({ ...read(identity.me), retry: false, staleTime: 60_000 });
  if (isPending) return <Loading what={t('ui.you')} />;
  if (error instanceof ApiProblem && error.code === 'auth.required') {
    return kind === 'member' ? <Navigate to="/sign-in" search={at.pathname === '/' ? {} : { from: at.href }} replace /> : <ProblemNotice problem={new ApiProblem('auth.linkInvalid')} />;
  }
  if (!data) return <ProblemNotice problem={error} action={<Button onClick={() => void refetch()}>{t('ui.tryAgain')}</Button>} />;
  if (data.data.kind !== kind) return <Navigate to={data.data.kind === 'customer' ? '/drain' : '/'} replace />;
  return <Suspense fallback={<Loading what={t('ui.page')} />}><Outlet /></Suspense>;
}
