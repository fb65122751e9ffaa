import { catalogue } from '../catalogue.ts';
import { collectFindings } from './findings/collect.ts';
import { outletFindings } from './findings/outlets.ts';
import { pipeFindings } from './findings/pipes.ts';
import { pumpingFindings } from './findings/pumping.ts';
import { remedies } from './findings/remedies.ts';
import { siteFindings } from './findings/site.ts';

/** One sentence for every finding code (`findings.` + code) and every remedy (`findings.` + remedy code). */
export const findings = catalogue({
  ...siteFindings, ...collectFindings, ...pipeFindings, ...pumpingFindings, ...outletFindings, ...remedies,
});
