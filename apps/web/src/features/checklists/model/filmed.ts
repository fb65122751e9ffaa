/** Steps whose proof may be a film as well as a photo: the pump under load, the hose test, the slug test (TRADE 5, group J). */
const filmed: ReadonlySet<string> = new Set(['J2', 'J4', 'J5']);

export const mayBeFilmed = (template: string): boolean => filmed.has(template);
