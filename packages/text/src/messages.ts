import { ui } from './catalogues/ui.ts';
import { jobs } from './catalogues/jobs.ts';
import { surveys } from './catalogues/surveys.ts';
import { rain } from './catalogues/rain.ts';
import { designs } from './catalogues/designs.ts';
import { prices } from './catalogues/prices.ts';
import { offers } from './catalogues/offers.ts';
import { locates } from './catalogues/locates.ts';
import { checklists } from './catalogues/checklists.ts';
import { photos } from './catalogues/photos.ts';
import { proof } from './catalogues/proof.ts';
import { portal } from './catalogues/portal.ts';
import { handover } from './catalogues/handover.ts';
import { findings } from './catalogues/findings.ts';
import { workings } from './catalogues/workings.ts';
import { drawing } from './catalogues/drawing.ts';
import { errors } from './catalogues/errors.ts';
import { problems } from './catalogues/problems.ts';
import { identity } from './catalogues/identity.ts';

/** Every catalogue file by its name; the keys of each start with that name. */
export const catalogues = {
  ui,
  jobs,
  surveys,
  rain,
  designs,
  prices,
  offers,
  locates,
  checklists,
  photos,
  proof,
  portal,
  handover,
  findings,
  workings,
  drawing,
  errors,
  problems,
  identity,
};

export const messages = {
  ...ui,
  ...jobs,
  ...surveys,
  ...rain,
  ...designs,
  ...prices,
  ...offers,
  ...locates,
  ...checklists,
  ...photos,
  ...proof,
  ...portal,
  ...handover,
  ...findings,
  ...workings,
  ...drawing,
  ...errors,
  ...problems,
  ...identity,
};
