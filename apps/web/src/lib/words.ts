import { messages, type Language } from '@yardfall/text';

/** The words of a customer's page, of the page of a photo link, of the pages that a crew opens first, and all the others. */
export type WordArea = 'customer' | 'send' | 'crew' | 'rest';

const files = {
  en: { customer: () => import('words:en/customer'), send: () => import('words:en/send'), crew: () => import('words:en/crew'), rest: () => import('words:en/rest') },
  es: { customer: () => import('words:es/customer'), send: () => import('words:es/send'), crew: () => import('words:es/crew'), rest: () => import('words:es/rest') },
} satisfies Record<Language, Record<WordArea, () => Promise<{ readonly default: Readonly<Record<string, string>> }>>>;

/** The page's build leaves the catalogue nearly empty; what it lacks comes from the files. */
const catalogue = messages as unknown as Record<string, Partial<Record<Language, string>>>;
const coming = new Map<string, Promise<void>>();
const here = new Set<string>();
const areas = new Set<WordArea>();

/** Where a sentence may be that the first pages have not. */
const others = ['crew', 'rest'] as const;

/** Fetches the words of an area; once is enough. A failed one is asked again next time. */
export function learn(language: Language, area: WordArea): Promise<void> {
  areas.add(area);
  const key = `${language}/${area}`;
  const known = coming.get(key);
  if (known) return known;
  const asked = files[language][area]().then(({ default: words }) => {
    for (const [code, text] of Object.entries(words)) catalogue[code] = { ...catalogue[code], [language]: text };
    here.add(key);
  });
  coming.set(key, asked);
  asked.catch(() => coming.delete(key));
  return asked;
}

/** Another language, in every area that this page has used. */
export async function learnLanguage(language: Language): Promise<void> {
  await Promise.all([...areas].map((area) => learn(language, area)));
}

/** Whether a sentence is here in this language. */
export const isHere = (code: string, language: Language): boolean => catalogue[code]?.[language] !== undefined;

/** What a page waits for when a sentence is not here yet; null when there is nothing more to come. */
export function arrivalOf(language: Language): Promise<void> | null {
  if (others.every((area) => here.has(`${language}/${area}`))) return null;
  return Promise.all(others.map((area) => learn(language, area))).then(() => undefined);
}
