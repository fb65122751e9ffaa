import type { DesignDocument } from '../document/document.ts';
import { checkDocument } from '../document/check.ts';
import { evaluate } from '../evaluate/evaluate.ts';
import { EvaluationContext } from '../evaluate/context.ts';
import { peakFlows, gutterResults, channelResults, pipeResults } from '../evaluate/gravityParts.ts';
import { basinResults, outletResults, pumpResults } from '../evaluate/pumpedParts.ts';
import { allFindings } from '../findings/allFindings.ts';
import { gravityFall } from '../levels/gravityFall.ts';
import type { Finding, Results } from '../results/results.ts';
import { baseDocuments, type BaseName, type FindingCase } from './cases/case.ts';

/**
 * Findings of a document whose storms are not routed anew: freeboards and outage are those given, everything else is computed from the document.
 * For checks that look at sizes, levels and answers.
 */
export function staticFindings(document: DesignDocument, routed: Results): readonly Finding[] {
  checkDocument(document);
  const context = new EvaluationContext(document);
  const pumps = pumpResults(context);
  return allFindings(document, {
    ...routed, gravity: document.site.candidateOutlets.map((outlet) => gravityFall(outlet)), peaks: peakFlows(document, context.periods), gutters: gutterResults(document),
    channels: channelResults(document, context.periods), pipes: pipeResults(document), basins: basinResults(context), pumps, outlets: outletResults(document, pumps),
  });
}

const routedOf = new Map<BaseName, Results>();

/** What the routing gives for a base site; its storms are routed once. */
export function routedBase(base: BaseName): Results {
  const results = routedOf.get(base) ?? evaluate(baseDocuments[base], { band: false }).results;
  routedOf.set(base, results);
  return results;
}

/** Findings of a case, or of another document with the routing of that case. */
export const findingsOfCase = (item: FindingCase, document: DesignDocument = item.document): readonly Finding[] => staticFindings(document, item.routed(routedBase(item.base)));
