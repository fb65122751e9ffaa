import { checkOverrides } from '../findings/overrides.ts';
import { checkRain } from './checkRain.ts';
import { checkSite } from './checkSite.ts';
import { checkSystem } from './checkSystem.ts';
import type { Construction, DesignDocument, Electrical } from './document.ts';
import { DocumentError } from './error.ts';
import { checkEach, checkFields, checkUniqueIds, checkWord, isObject } from './fields.ts';
import { burialRules, constructionRules, electricalRules, limitRules, restorationRules, rootRules, siteRules, slabCutRules, trenchRules } from './rules.ts';
import { documentVersion } from './upgrade.ts';

function checkElectrical(electrical: Electrical, path: string): void {
  checkFields(electrical, electricalRules, path);
  if (electrical.burial === null) return;
  checkFields(electrical.burial, burialRules, `${path}/burial`);
  checkWord(electrical.burial.method, ['direct', 'conduit', 'gfciCable'], `${path}/burial/method`);
}

function checkConstruction(construction: Construction, partIds: ReadonlySet<string>): void {
  checkFields(construction, constructionRules, '/construction');
  checkFields(construction.restoration, restorationRules, '/construction/restoration');
  if (construction.electrical !== null) checkElectrical(construction.electrical, '/construction/electrical');
  const lists = [['slabCuts', construction.slabCuts, slabCutRules], ['trenches', construction.trenches, trenchRules]] as const;
  for (const [name, list, rules] of lists) {
    if (list.length > 500) throw new DocumentError('document.tooMany', `/construction/${name}`, { most: 500 });
    checkEach(list, rules, `/construction/${name}`);
    checkUniqueIds(list, `/construction/${name}`);
    list.forEach((item, index) => {
      if (!partIds.has(item.part)) throw new DocumentError('document.unknownId', `/construction/${name}/${index}/part`, { id: item.part });
    });
  }
}

/**
 * Holds a design document against what can be computed: every number finite and in range, every id known, no loop,
 * every part with a way out, curves and tables that rise or fall as they must.
 * Throws a DocumentError with code, path and parameters at the first thing that is wrong.
 */
export function checkDocument(document: DesignDocument): void {
  checkFields(document, rootRules, '');
  if (document.schema !== 'yardfall.design' || document.version !== documentVersion) {
    throw new DocumentError('document.version', '/version', { found: Number(document.version), known: documentVersion });
  }
  checkFields(document.site, siteRules, '/site');
  checkFields(document.system, { parts: 'list' }, '/system');
  const ids = new Set(document.system.parts.filter(isObject).map((part) => String(part['id'])));
  checkSite(document.site, ids);
  checkRain(document.rain);
  checkSystem(document.system, document.site);
  checkConstruction(document.construction, ids);
  if (document.limits.length > 200) throw new DocumentError('document.tooMany', '/limits', { most: 200 });
  checkEach(document.limits, limitRules, '/limits');
  checkOverrides(document.limits);
}
