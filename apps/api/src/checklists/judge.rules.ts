import { type FieldFact, maySayNot, ownLineAnswer, ownLineOf, type Requirement, type Role, saysWhy, shotsRise, type StoredFact } from '@yardfall/contracts';

export interface Judgement {
  readonly verdict: StoredFact['verdict'];
  /** A mark such as `held:HP-13`; see reasonText in the contracts. */
  readonly reason: string | null;
}

export interface PhotoOnRecord {
  readonly id: string;
  readonly itemKey: string | null;
  readonly takenAt: Date;
  /** It was taken for another item that is seen in the same picture. */
  readonly seenTogether: boolean;
}

/** What is known when a fact is judged; it is on record already, whatever comes out. */
export interface Circumstances {
  readonly deviceCutOff: boolean;
  /** The item as it stands in the build revision; null when it has none of this key. */
  readonly item: { readonly requirement: Requirement; readonly requirementHash: string; readonly holdPoint: string | null } | null;
  readonly roles: readonly Role[];
  readonly photo: PhotoOnRecord | null;
  /** The document that the item asks for is one that the service holds itself, and it is there. */
  readonly proofOnRecord: boolean;
  /** Something that was found had stopped this step when the fact was recorded. */
  readonly stopped: boolean;
  /** When it was recorded [ms], by the office's clock. */
  readonly at: number;
}

const kept: Judgement = { verdict: 'kept', reason: null };
const refused = (reason: string): Judgement => ({ verdict: 'refused', reason });
/** A photo may be noted a minute before the phone writes the fact. */
const photoSlack = 60_000;

/** Whether a stored fact counts, hold points apart (see replay), and if not, why. */
export function judge(fact: FieldFact, circumstances: Circumstances): Judgement {
  const { deviceCutOff, item } = circumstances;
  if (deviceCutOff) return { verdict: 'quarantined', reason: 'deviceCutOff' };
  if (item === null) return { verdict: 'late', reason: 'noSuchItem' };
  if (fact.requirementHash !== item.requirementHash) return { verdict: 'late', reason: 'requirementChanged' };
  return judgeKind(fact, circumstances, item);
}

function judgeKind(fact: FieldFact, { roles, photo, proofOnRecord, stopped, at }: Circumstances, item: NonNullable<Circumstances['item']>): Judgement {
  const { requirement, holdPoint } = item;
  switch (fact.kind) {
    case 'begun': return stopped ? refused('stopped') : kept;
    case 'ticked': return mayTick(requirement, roles) ? judgeTime(requirement, at) : refused('officeOnly');
    case 'photo': return judgePhoto(fact, photo);
    case 'profile': return judgeProfile(fact, requirement);
    case 'measured': return requirement.measures.some(({ name }) => name === fact.name) ? kept : refused('noSuchMeasure');
    case 'written': return (requirement.texts ?? []).includes(fact.name) && (ownLineOf(fact.name) === null || ownLineAnswer(fact) !== null) ? kept : refused('noSuchText');
    // Crew lead and owner may look again at any step that was put right.
    case 'signed': return [...requirement.signers, 'crewLead', 'owner'].includes(fact.signer) ? kept : refused('wrongSigner');
    case 'struck': return saysWhy(fact.reason) ? kept : refused('saysNothing');
    case 'lifted': return requirement.freshFor === null ? refused('noSuchMeasure') : kept;
    case 'rained': return requirement.daily === undefined ? refused('noSuchMeasure') : kept;
    case 'document': return requirement.template !== 'J1' || proofOnRecord ? kept : refused('noSuchProof');
    case 'notApplicable': return judgeNot(fact.reason, requirement, holdPoint, roles);
    case 'waived': return !roles.includes('owner') ? refused('ownerOnly') : requirement.daily === undefined ? kept : refused('evidenceOnly');
    default: return kept;
  }
}

function judgeNot(reason: string, requirement: Requirement, holdPoint: string | null, roles: readonly Role[]): Judgement {
  if (holdPoint !== null) return refused('evidenceOnly');
  if (!maySayNot(requirement, holdPoint, roles)) return refused('officeSaysNot');
  return saysWhy(reason) ? kept : refused('saysNothing');
}

/** Work on a contract that can still be cancelled is not ticked off. */
function judgeTime({ tickFrom }: Requirement, at: number): Judgement {
  return tickFrom !== undefined && at < Date.parse(tickFrom) ? refused('stillCancellable') : kept;
}

function judgeProfile(fact: Extract<FieldFact, { kind: 'profile' }>, { measures }: Requirement): Judgement {
  if (!measures.some(({ name }) => name === 'invertDown')) return refused('noSuchMeasure');
  return shotsRise(fact) ? kept : refused('shotsNotRising');
}

function mayTick({ signers }: Requirement, roles: readonly Role[]): boolean {
  if (!signers.includes('owner') || signers.includes('crewLead')) return true;
  return roles.includes('owner') || roles.includes('estimator');
}

function judgePhoto(fact: Extract<FieldFact, { kind: 'photo' }>, photo: PhotoOnRecord | null): Judgement {
  if (photo === null) return refused('photoUnknown');
  if (photo.itemKey !== null && photo.itemKey !== fact.itemKey && !photo.seenTogether) return refused('photoOfOtherItem');
  return Date.parse(fact.takenAt) > photo.takenAt.getTime() + photoSlack ? refused('photoOlder') : kept;
}
