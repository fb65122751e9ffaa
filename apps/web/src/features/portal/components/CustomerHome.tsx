import { Button } from '../../../components/Button.tsx';
import { lazy, Suspense } from 'react';
import { Loading } from '../../../components/Loading.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { Page } from '../../../components/Page.tsx';
import { useText } from '../../../lib/reader.tsx';
import { usePortal } from '../api/portal.ts';
import { CallUs } from './CallUs.tsx';
import { Handover } from './Handover.tsx';
import { Next } from './Next.tsx';
import { OfferBlock } from './OfferBlock.tsx';
import { Photos } from './Photos.tsx';
import { ProofWords } from './ProofWords.tsx';
import { WaterAtTheDoor } from './WaterAtTheDoor.tsx';
import { Why } from './Why.tsx';
import './portal.css';

/** Seldom there, and brings the steps of the whole list along. */
const LetPass = lazy(() => import('./LetPass.tsx').then((one) => ({ default: one.LetPass })));

/** The customer's home: what happens next, where the water goes, why, and what we need from them. */
export function CustomerHome() {
  const { t } = useText();
  const { data, error, isPending, refetch } = usePortal();
  if (isPending) return <Loading what={t('portal.loading')} />;
  if (data === undefined) return <ProblemNotice problem={error} action={<Button onClick={() => void refetch()}>{t('ui.tryAgain')}</Button>} />;
  const page = data.data;
  return (
    <Page title={t('portal.title')} lead={t('portal.for', { name: page.customerName, address: page.address })}>
      <div className="your-drain">
        <Next page={page} />
        {page.handover ? <Handover handover={page.handover} phone={page.company.phone} /> : null}
        {page.drawing ? <WaterAtTheDoor drawing={page.drawing} /> : null}
        <Why texts={page.why} />
        {page.offer ? <OfferBlock key={page.offer.id} offer={page.offer} pumped={page.drawing?.document.system.parts.some((part) => part.kind === 'pump') ?? false} /> : null}
        {page.proof ? <ProofWords proof={page.proof} /> : null}
        <Photos photos={page.photos} />
        {page.waivers.length + page.weaker.length > 0 ? <Suspense fallback={null}><LetPass waivers={page.waivers} weaker={page.weaker} /></Suspense> : null}
        <div>
          <p className="faint">{t('portal.by', { company: page.company.name })}</p>
          <CallUs phone={page.company.phone} />
        </div>
      </div>
    </Page>
  );
}
