export const languages = ['en', 'es'] as const;
export type Language = (typeof languages)[number];

/** Feet, inches and US gallons, or metres and litres. */
export const unitSystems = ['us', 'metric'] as const;
export type Units = (typeof unitSystems)[number];

const locales = { en: 'en-US', es: 'es-US' } as const satisfies Record<Language, string>;

export function localeOf(language: Language): string {
  return locales[language];
}
