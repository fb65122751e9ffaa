import type { DesignDocument } from '@yardfall/calc';
import { type Language, render, type Units } from '@yardfall/text';
import type { CodedText } from './why.rules.ts';

export interface OfferFacts {
  readonly number: number;
  readonly company: string;
  readonly customerName: string;
  readonly address: string;
  readonly message: string;
  readonly designName: string;
  readonly revisionNumber: number;
  readonly documentSha256: string;
  readonly document: DesignDocument;
  readonly why: readonly CodedText[];
  /** Cents. */
  readonly price: number;
  /** YYYY-MM-DD */
  readonly validUntil: string;
}

const text = (code: string, params: CodedText['params'] = {}): CodedText => ({ code: `offers.text.${code}`, params });

/** The whole offer in order, as codes and parameters; what is signed is their rendering. */
export function offerTexts(facts: OfferFacts): CodedText[] {
  return [
    text('title', { number: facts.number, company: facts.company }),
    text('for', { name: facts.customerName, address: facts.address }),
    ...(facts.message === '' ? [] : [text('message', { message: facts.message })]),
    text('partsHeading'),
    ...facts.document.system.parts.map((part) => text('part', { name: part.name })),
    text('design', { design: facts.designName, revision: facts.revisionNumber, sha: facts.documentSha256.slice(0, 16) }),
    text('why'),
    ...facts.why,
    text('price', { price: facts.price }),
    text('validUntil', { date: facts.validUntil }),
    text('notice'), text('records'), text('accept'),
  ];
}

/** The exact bytes that are accepted: one text a line, UTF-8, ending with a line end. */
export function renderOffer(texts: readonly CodedText[], language: Language, units: Units = 'us'): Uint8Array<ArrayBuffer> {
  const lines = texts.map(({ code, params }) => render(language, units, code, params));
  return new TextEncoder().encode(`${lines.join('\n')}\n`);
}

/** The last day counts whole, where the property stands. */
export function isExpired(validUntil: string, today: string): boolean {
  return today > validUntil;
}
