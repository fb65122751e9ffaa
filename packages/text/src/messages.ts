import { ui as frame } from './catalogues/ui.ts';
import { cautionPages } from './catalogues/pages/cautions.ts';
import { phonePages } from './catalogues/pages/phone.ts';
import { waitsPages } from './catalogues/pages/waits.ts';
import { jobs as jobPages } from './catalogues/jobs.ts';
import { jobHolds } from './catalogues/jobs/holds.ts';
import { jobPeople } from './catalogues/jobs/people.ts';
import { jobReferral } from './catalogues/jobs/referral.ts';
import { levels } from './catalogues/levels.ts';
import { surveys as surveyWords } from './catalogues/surveys.ts';
import { causeWords } from './catalogues/surveys/causes.ts';
import { diagnosisWords } from './catalogues/surveys/diagnosis.ts';
import { yardWords } from './catalogues/surveys/yard.ts';
import { rain as rainPages } from './catalogues/rain.ts';
import { rainProblems } from './catalogues/rain/problems.ts';
import { record } from './catalogues/record.ts';
import { designs as designPages } from './catalogues/designs.ts';
import { designParts } from './catalogues/designs/parts.ts';
import { designWords } from './catalogues/designs/words.ts';
import { prices as pricePages } from './catalogues/prices.ts';
import { priceLines } from './catalogues/prices/lines.ts';
import { priceQuantities } from './catalogues/prices/quantities.ts';
import { offers as offerPages } from './catalogues/offers.ts';
import { offerText } from './catalogues/offers/text.ts';
import { locates as locateWords } from './catalogues/locates.ts';
import { locateRulePages } from './catalogues/pages/locateRules.ts';
import { locatePages } from './catalogues/pages/locates.ts';
import { permits as permitWords } from './catalogues/permits.ts';
import { permitPages } from './catalogues/pages/permits.ts';
import { checklists } from './catalogues/checklists.ts';
import { sending } from './catalogues/sending.ts';
import { safety } from './catalogues/safety.ts';
import { photos as photoWords } from './catalogues/photos.ts';
import { photoPages } from './catalogues/pages/photos.ts';
import { found as foundWords } from './catalogues/found.ts';
import { foundPages } from './catalogues/pages/found.ts';
import { proof as proofWords } from './catalogues/proof.ts';
import { proofPages } from './catalogues/pages/proof.ts';
import { portal as portalPages } from './catalogues/portal.ts';
import { portalCare } from './catalogues/portal/care.ts';
import { portalWhy } from './catalogues/portal/why.ts';
import { handover as handoverWords } from './catalogues/handover.ts';
import { handoverPages } from './catalogues/pages/handover.ts';
import { findings } from './catalogues/findings.ts';
import { workings } from './catalogues/workings.ts';
import { explain } from './catalogues/explain.ts';
import { drawing } from './catalogues/drawing.ts';
import { plan } from './catalogues/plan.ts';
import { surface } from './catalogues/surface.ts';
import { errors } from './catalogues/errors.ts';
import { problems } from './catalogues/problems.ts';
import { identity } from './catalogues/identity.ts';
import { document } from './catalogues/document.ts';
import { audit } from './catalogues/audit.ts';
import { decisions } from './catalogues/decisions.ts';
import { daywork } from './catalogues/daywork.ts';
import { limits } from './catalogues/limits.ts';
import { steps } from './catalogues/steps.ts';
import { studies } from './catalogues/studies.ts';
import { library } from './catalogues/library.ts';

// What the service renders stands in files of its own, apart from the words of the pages.
const surveys = { ...surveyWords, ...yardWords, ...diagnosisWords, ...causeWords };
const ui = { ...frame, ...phonePages, ...waitsPages, ...cautionPages };
const designs = { ...designPages, ...designParts, ...designWords };
const jobs = { ...jobPages, ...jobHolds, ...jobPeople, ...jobReferral };
const locates = { ...locateWords, ...locatePages, ...locateRulePages };
const permits = { ...permitWords, ...permitPages };
const photos = { ...photoWords, ...photoPages };
const found = { ...foundWords, ...foundPages };
const proof = { ...proofWords, ...proofPages };
const handover = { ...handoverWords, ...handoverPages };
const rain = { ...rainPages, ...rainProblems };
const prices = { ...pricePages, ...priceLines, ...priceQuantities };
const offers = { ...offerPages, ...offerText };
const portal = { ...portalPages, ...portalCare, ...portalWhy };

/** Every catalogue file by its name; the keys of each start with that name. */
export const catalogues = {
  ui,
  jobs,
  levels,
  surveys,
  rain,
  record,
  designs,
  prices,
  offers,
  locates,
  permits,
  checklists,
  photos,
  found,
  safety,
  proof,
  portal,
  sending,
  handover,
  findings,
  workings,
  explain,
  drawing,
  plan,
  surface,
  errors,
  problems,
  identity,
  document,
  audit,
  decisions,
  limits,
  daywork,
  steps,
  studies,
  library,
};

export const messages = {
  ...ui,
  ...jobs,
  ...levels,
  ...surveys,
  ...rain,
  ...record,
  ...designs,
  ...prices,
  ...offers,
  ...locates,
  ...permits,
  ...checklists,
  ...photos,
  ...found,
  ...safety,
  ...proof,
  ...portal,
  ...sending,
  ...handover,
  ...findings,
  ...workings,
  ...explain,
  ...drawing,
  ...plan,
  ...surface,
  ...errors,
  ...problems,
  ...identity,
  ...document,
  ...audit,
  ...decisions,
  ...limits,
  ...daywork,
  ...steps,
  ...studies,
  ...library,
};
