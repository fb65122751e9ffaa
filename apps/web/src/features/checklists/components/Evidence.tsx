import { lazy, Suspense } from 'react';
import { Loading } from '../../../components/Loading.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { useText } from '../../../lib/reader.tsx';
import { asksPhoto, asksProfile, mayTick, signersAsked } from '../model/evidence.ts';
import type { ItemRecord } from '../api/useItemRecord.ts';
import type { ChecklistView, ItemView } from '../model/view.ts';
import { DocumentEvidence } from './DocumentEvidence.tsx';
import { PhotoEvidence } from './PhotoEvidence.tsx';
import { SignEvidence } from './SignEvidence.tsx';
import { TextEvidence } from './TextEvidence.tsx';
import { TickEvidence } from './TickEvidence.tsx';
import { ValueEvidence } from './ValueEvidence.tsx';

/** Brings the numbers and the drawing along, so that it is fetched when a pipe is shot. */
const ProfileEvidence = lazy(() => import('./ProfileEvidence.tsx').then((one) => ({ default: one.ProfileEvidence })));

export interface EvidenceProps {
  readonly list: ChecklistView;
  readonly view: ItemView;
  readonly record: ItemRecord;
  /** Items that the same picture shows; none where this item is asked beside another. */
  readonly companions?: readonly ItemView[];
}

/** The controls of what the item asks for, the photo first. */
export function Evidence(props: EvidenceProps) {
  const { me, may } = useMe();
  const { t } = useText();
  const { view } = props;
  const wants = new Set(view.item.requirement.evidence);
  if (!may('checklists.record') || view.state === 'failed' && view.missing.includes('correction')) return null;
  return (
    <>
      {asksPhoto(view) ? <PhotoEvidence {...props} /> : null}
      {wants.has('value') && asksProfile(view.item.requirement) ? <Suspense fallback={<Loading what={t('checklists.profile.title')} />}><ProfileEvidence {...props} /></Suspense> : wants.has('value') ? view.item.requirement.measures.map((measure) => <ValueEvidence key={measure.name} {...props} measure={measure} />) : null}
      {wants.has('text') ? (view.item.requirement.texts ?? []).map((name) => <TextEvidence key={name} {...props} name={name} />) : null}
      {wants.has('document') ? <DocumentEvidence {...props} /> : null}
      {signersAsked(view.item, view.missing).map((signer) => <SignEvidence key={signer} {...props} signer={signer} />)}
      {wants.has('tick') ? <TickEvidence {...props} allowed={mayTick(view.item.requirement, me?.roles ?? [])} /> : null}
    </>
  );
}
