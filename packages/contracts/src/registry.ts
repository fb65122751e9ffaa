import { audit } from './audit.ts';
import { checklists } from './checklists.ts';
import { company } from './company.ts';
import { daywork } from './daywork.ts';
import { designs, evaluation } from './designs.ts';
import type { Endpoint } from './endpoint.ts';
import { found } from './found.ts';
import { gasRules } from './gasRules.ts';
import { identity } from './identity.ts';
import { jobs } from './jobs.ts';
import { library } from './library.ts';
import { locateRuleSets } from './locateRules.ts';
import { locates } from './locates.ts';
import { notices } from './notices.ts';
import { offers } from './offers.ts';
import { permits } from './permits.ts';
import { photos } from './photos.ts';
import { portal } from './portal.ts';
import { prices } from './prices.ts';
import { privateLines } from './privateLines.ts';
import { handover, proof } from './proof.ts';
import { rain } from './rain.ts';
import { sending } from './sending.ts';
import { service } from './service.ts';
import { studies } from './studies.ts';
import { surveyFacts } from './surveyFacts.ts';
import { surveys } from './surveys.ts';
import { uploads } from './uploads.ts';

/** Every feature with its endpoints: a new feature is added here, and the OpenAPI document and the tests know it. */
export const features = {
  service, identity, company, audit, notices, evaluation, jobs, surveys, surveyFacts, rain, designs, library, studies, prices, offers, portal, photos, uploads, sending, permits, checklists, locates, locateRuleSets, gasRules, privateLines, found, daywork, proof, handover,
} satisfies Record<string, Record<string, Endpoint>>;

export const allEndpoints: readonly Endpoint[] = Object.values(features).flatMap((feature): Endpoint[] => Object.values(feature));
