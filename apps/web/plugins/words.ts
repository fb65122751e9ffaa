import type { Plugin } from 'vite';
import { messages } from '../../../packages/text/src/messages.ts';
import { languages } from '../../../packages/text/src/languages.ts';

/** Catalogues of the pages that a crew and a customer open first, and of the page of a photo link; `rest` has what the crew's file has not. */
const shared = ['ui', 'errors', 'identity', 'drawing', 'photos'];
const crew = new Set([...shared, 'jobs', 'checklists', 'found', 'locates', 'outbox', 'daywork']);
const customer = new Set([...shared, 'portal']);
const send = new Set(['ui', 'errors', 'sending']);
/** What is said only once something is opened, drawn or refused; a list needs the names of its steps alone. */
const later = [
  /^checklists\.(needs|ready|burst|checkPoint|readAs|backsight|instrumentAt|rodOf|levelIs|lookingAt|cautionMore|cautionAll|whys|keepPart|keepOff|isDone)(\.|$)/, /^photos\.keepDoubtful$/,
  /^daywork\.(unit|designed|less|more|another)(\.|$)/,
  /^checklists\.[A-J]\d+\w*\.(acceptance|photo|whyCrew|whyHome)$/, /^checklists\.(profile|printed|fact|judge|limits|reason|draw|drawAgain|signByName|drawnBy|alsoShows|whyHome|stepsOfPart|dispute|ties)(\.|$)/,
  /^locates\.(?!reason\.|throughDay$)/, /^checklists\.private/, /^jobs\.held\./, /^identity\.phones/, /^jobs\.(referral|letter|complaint|new|move|search)(\.|$)/, /^drawing\.(sheet|front|table)\./, /^identity\.(cutOff|settings|invite|setUp|member)(\.|$)/, /^errors\.(offer|permit|locate)/, /^errors\.checklist\.rule/, /^checklists\.own\./, /^jobs\.standing\./, /^daywork\.(field|kind|hours|task|who|from|until|running|time|total|doubtful|materials|amount|keep|strike\w*|none|title|what)(\.|$)/,
  /^photos\.(marks?|markWords\w*|markBack|markThis|doubt|toMark|chosen|keepAll|keptHere|film|fromFilm|lastTaken|none|noneWhy|title|add|addNote|note|count|loading|store|keep|site|taken|alt|altVideo|unshown|showAll|isForCustomer|forCustomer|fromCustomer|camera|takenHere|openVideo|videoWaits|videoGoes|videoSendNow|drop|fromCustomerTitle|one|number|before|next|ofSeveral|drawOn|keepMarks|customerSees|place|keepPlace|section|onSection|touchSection|pointIs|placedAt|noPoint|step|noStep|addedHere|sets|drawnBy|drawnHere|setHidden|hideSet|original|notSeen)(\.|$)/, /^ui\.(pick|gasRule)\./, /^ui\.waits\.(kind|entry|disputes|noDispute|takeThis|struck|room\w*|mayBeCleared|none\w*)(\.|$)/, /^errors\.(upload|sending|video|design|draft|study|library)\./,
  /^checklists\.(measure|plate|side)\./,
];
const isLater = (code: string) => later.some((pattern) => pattern.test(code));
const areaOf = (code: string) => code.split('.')[0] ?? '';
const isCrew = (code: string) => crew.has(areaOf(code)) && !isLater(code);
const areas = { crew: isCrew, send: (code: string) => send.has(areaOf(code)), customer: (code: string) => customer.has(areaOf(code)) && !isLater(code), rest: (code: string) => !isCrew(code) };

/** Recognized in whichever language they were written. */
const inBoth = /^locates\.usual\./;

function wordsOf(language: (typeof languages)[number], isIn: (code: string) => boolean): Record<string, string> {
  return Object.fromEntries(Object.entries(messages).filter(([code]) => isIn(code)).map(([code, message]) => [code, message[language]]));
}

/**
 * Gives a page the words of one language and of what it shows, in place of every sentence in both.
 * `words:<language>/<area>` is such a file; src/lib/words.ts fills the catalogue with it.
 */
export function words(): Plugin {
  const files = new Map<string, () => Record<string, string>>(languages.flatMap((language) => Object.entries(areas).map(([area, isIn]) => [`words:${language}/${area}`, () => wordsOf(language, isIn)] as const)));
  return {
    name: 'words',
    enforce: 'pre',
    resolveId: (id) => (files.has(id) ? `\0${id}` : null),
    load(id) {
      const file = files.get(id.slice(1));
      if (file) return `export default ${JSON.stringify(file())};`;
      if (!id.endsWith('/packages/text/src/messages.ts')) return null;
      return `export const messages = ${JSON.stringify(Object.fromEntries(Object.entries(messages).filter(([code]) => inBoth.test(code))))};`;
    },
  };
}
