import { useParams, useSearch } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import { Page } from '../../components/Page.tsx';
import { OpenDrain, SetUp, SheetSection, SignIn, Welcome } from '../../features/identity/index.ts';
import { useText } from '../../lib/reader.tsx';

export function SignInPage() {
  const { t } = useText();
  const { from } = useSearch({ from: '/sign-in' });
  return <Entrance><Page narrow title={t('identity.signIn')} lead={t('identity.signIn.lead')}><SignIn from={from} /></Page></Entrance>;
}

export function WelcomePage() {
  const { t } = useText();
  const { token } = useParams({ from: '/welcome/$token' });
  return <Entrance><Page narrow title={t('identity.welcome')} lead={t('identity.welcome.lead')}><Welcome token={token} /></Page></Entrance>;
}

export function SetUpPage() {
  const { t } = useText();
  const { token } = useParams({ from: '/set-up/$token' });
  return <Entrance><Page narrow title={t('identity.setUp.title')} lead={t('identity.setUp.lead')}><SetUp token={token} /></Page></Entrance>;
}

export function OpenDrainPage() {
  const { t } = useText();
  const { token } = useParams({ from: '/drain/$token' });
  return <Page narrow title={t('identity.drain.title')} lead={t('identity.drain.lead')}><OpenDrain token={token} /></Page>;
}

function Entrance({ children }: { readonly children: ReactNode }) {
  return <div className="entrance">{children}<SheetSection /></div>;
}
