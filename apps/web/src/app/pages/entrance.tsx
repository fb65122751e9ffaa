import { useLocation, useSearch } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import { ProblemNotice } from '../../components/Notice.tsx';
import { Page } from '../../components/Page.tsx';
import { SetUp, SheetSection, SignIn, Welcome } from '../../features/identity/index.ts';
import { tokenOf } from '../../lib/linkToken.ts';
import { ApiProblem } from '../../lib/problem.ts';
import { useText } from '../../lib/reader.tsx';

export function SignInPage() {
  const { t } = useText();
  const { from } = useSearch({ from: '/sign-in' });
  return <Entrance><Page narrow title={t('identity.signIn')} lead={t('identity.signIn.lead')}><SignIn from={from} /></Page></Entrance>;
}

export function JoinPage() {
  const { t } = useText();
  const token = useToken();
  return (
    <Entrance>
      <Page narrow title={t('identity.welcome')} lead={t('identity.welcome.lead')}>{token ? <Welcome token={token} /> : <BadLink />}</Page>
    </Entrance>
  );
}

export function SetUpPage() {
  const { t } = useText();
  const token = useToken();
  return (
    <Entrance>
      <Page narrow title={t('identity.setUp.title')} lead={t('identity.setUp.lead')}>{token ? <SetUp token={token} /> : <BadLink />}</Page>
    </Entrance>
  );
}

function useToken(): string | null {
  const { hash } = useLocation();
  return tokenOf(hash);
}

function BadLink() {
  return <ProblemNotice problem={new ApiProblem('auth.linkInvalid')} />;
}

function Entrance({ children }: { readonly children: ReactNode }) {
  return <div className="entrance">{children}<SheetSection /></div>;
}
