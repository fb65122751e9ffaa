/** Sentences that stand in sight; the rest is one press away. */
const firstOnes = /^portal\.why\.(now|roofAway|pumpRest|pump|byItself|tooHigh|storm|tenYears|freeboard|band|over|powerOut|gutter|noDry|promise)/;

export interface CodedText {
  readonly code: string;
  readonly params: Readonly<Record<string, string | number>>;
}

/** The why, in the order of the office, in two parts. */
export function splitWhy(texts: readonly CodedText[]): { readonly first: readonly CodedText[]; readonly more: readonly CodedText[] } {
  return { first: texts.filter(({ code }) => firstOnes.test(code)), more: texts.filter(({ code }) => !firstOnes.test(code)) };
}
