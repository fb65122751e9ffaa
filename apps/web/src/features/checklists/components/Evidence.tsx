import { asksOwnLines } from '@yardfall/contracts';
import { lazy, Suspense } from 'react';
import { Loading } from '../../../components/Loading.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { useText } from '../../../lib/reader.tsx';
import { useInstrument } from '../api/useInstrument.ts';
import type { ItemRecord } from '../api/useItemRecord.ts';
import { useStepDraft } from '../api/useStepDraft.ts';
import { withLastName } from '../model/lastName.ts';
import { asksPhoto, asksProfile, asksTies, isCheckShot, signersAsked } from '../model/evidence.ts';
import type { ChecklistView, ItemView } from '../model/view.ts';
import { DocumentEvidence } from './DocumentEvidence.tsx';
import { Figures } from './Figures.tsx';
import { Finish } from './Finish.tsx';
import { InstrumentSetUp } from './InstrumentSetUp.tsx';
import { OwnLinesEvidence } from './OwnLinesEvidence.tsx';
import { PhotoEvidence } from './PhotoEvidence.tsx';
import { SignEvidence } from './SignEvidence.tsx';
import { TextEvidence } from './TextEvidence.tsx';
import { TiesEvidence } from './TiesEvidence.tsx';

/** Brings the numbers and the drawing along, so that it is fetched when a pipe is shot. */
const ProfileEvidence = lazy(() => import('./ProfileEvidence.tsx').then((one) => ({ default: one.ProfileEvidence })));

export interface EvidenceProps {
  readonly list: ChecklistView;
  readonly view: ItemView;
  readonly record: ItemRecord;
  /** Items that the same picture shows; none where this item is asked beside another. */
  readonly companions?: readonly ItemView[];
}

/** What the item asks for in the order of the hand: the photo, the figures, what is written, who signs, and one press that records what stands there. */
export function Evidence(props: EvidenceProps) {
  const { may } = useMe();
  const { view } = props;
  if (!may('checklists.record')) return null;
  if (view.state === 'failed' && view.missing.includes('correction')) return asksProfile(view.item.requirement) ? <Shot {...props} /> : null;
  return <Asked {...props} />;
}

/** What was shot of a pipe stays in sight until somebody has said what was put right. */
function Shot({ list, view }: EvidenceProps) {
  const { t } = useText();
  const typing = useStepDraft(list, view);
  const instrument = useInstrument(list, true);
  return <Suspense fallback={<Loading what={t('checklists.profile.title')} />}><ProfileEvidence list={list} view={view} typing={typing} instrument={instrument} /></Suspense>;
}

function Asked(props: EvidenceProps) {
  const { t } = useText();
  const { list, view } = props;
  const { requirement } = view.item;
  const wants = new Set(requirement.evidence);
  const ties = asksTies(requirement);
  const isProfile = wants.has('value') && asksProfile(requirement);
  const hasLevels = wants.has('value') && !ties && requirement.measures.some((measure) => measure.quantity === 'level' || isCheckShot(measure));
  const typing = withLastName(useStepDraft(list, view), view);
  const instrument = useInstrument(list, hasLevels);
  return (
    <>
      {asksPhoto(view) ? <PhotoEvidence {...props} /> : null}
      {hasLevels ? <InstrumentSetUp instrument={instrument} /> : null}
      {isProfile ? <Suspense fallback={<Loading what={t('checklists.profile.title')} />}><ProfileEvidence list={list} view={view} typing={typing} instrument={instrument} /></Suspense> : null}
      {wants.has('value') && !isProfile && !ties && requirement.measures.length > 0 ? <Figures view={view} typing={typing} instrument={instrument} /> : null}
      {ties ? <TiesEvidence {...props} typing={typing} /> : asksOwnLines(requirement) ? <OwnLinesEvidence {...props} /> : wants.has('text') ? (requirement.texts ?? []).map((name) => <TextEvidence key={name} view={view} typing={typing} name={name} />) : null}
      {wants.has('document') ? <DocumentEvidence view={view} typing={typing} /> : null}
      {signersAsked(view.item, view.missing).map((signer) => <SignEvidence key={signer} {...props} signer={signer} />)}
      <Finish {...props} typing={typing} />
    </>
  );
}
