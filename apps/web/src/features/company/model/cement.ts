import type { WantedChange } from '@yardfall/contracts';

/** What is typed of a cement's label; null where nothing is. */
export interface Cement {
  readonly product: string;
  readonly warm: number | null;
  readonly cool: number | null;
  readonly cold: number | null;
}

export const noCement: Cement = { product: '', warm: null, cool: null, cold: null };

/** The cure once the label is typed whole; the built-in table until then. */
export function cureOf({ product, warm, cool, cold }: Cement): NonNullable<WantedChange['cure']> | null {
  return product.trim().length < 2 || warm === null || cool === null || cold === null ? null : { product: product.trim(), warm, cool, cold };
}
