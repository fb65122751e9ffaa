import type { Design, PriceItem, PriceLine, PriceLineInput, PriceSheet, RevisionRow } from '@yardfall/contracts';

export const labourCode = 'labour.crew';
/** Unit costs are kept in 1/100 cent. */
export const perDollar = 10_000;

export const kinds = ['material', 'labour', 'equipment', 'subcontract', 'permit', 'disposal'] as const satisfies readonly PriceLine['kind'][];
export const units = ['ft', 'ft2', 'ft3', 'yd3', 'each', 'bag', 'hour', 'day', 'lump', 'inchFoot', 'ton'] as const satisfies readonly PriceLine['unit'][];

export interface SheetRates {
  readonly marginBasisPoints: number;
  readonly taxBasisPoints: number;
  readonly contingencyBasisPoints: number;
  readonly labourRate: number;
}

/** A line on the screen: what will be stored, and what it cost when it was stored; null until then. */
export interface EditedLine extends PriceLineInput {
  readonly key: string;
  readonly cost: number | null;
}

export interface EditedSheet {
  readonly rates: SheetRates;
  readonly lines: readonly EditedLine[];
}

export function editedSheet(sheet: PriceSheet): EditedSheet {
  const { marginBasisPoints, taxBasisPoints, contingencyBasisPoints, labourRate } = sheet;
  const lines = sheet.lines.map(({ id, position: _, ...line }) => ({ ...line, key: id }));
  return { rates: { marginBasisPoints, taxBasisPoints, contingencyBasisPoints, labourRate }, lines };
}

export function bodyOf({ rates, lines }: EditedSheet) {
  return { ...rates, lines: lines.map(({ key: _, cost: __, ...line }) => line) };
}

/** Figures that come from the drawing: whoever changes one says why. */
export function departs(before: EditedLine, after: PriceLineInput): boolean {
  return before.origin !== 'allowance' && (before.quantity !== after.quantity || (before.code !== labourCode && before.unitCost !== after.unitCost));
}

export function changedLine(before: EditedLine, after: PriceLineInput): EditedLine {
  const origin = departs(before, after) ? 'override' : before.origin;
  const same = before.quantity === after.quantity && before.unitCost === after.unitCost;
  return { ...after, origin, reason: origin === 'override' ? after.reason : null, key: before.key, cost: same ? before.cost : null };
}

export function withLine(sheet: EditedSheet, line: EditedLine): EditedSheet {
  const there = sheet.lines.some(({ key }) => key === line.key);
  return { ...sheet, lines: there ? sheet.lines.map((other) => (other.key === line.key ? line : other)) : [...sheet.lines, line] };
}

export function withoutLine(sheet: EditedSheet, key: string): EditedSheet {
  return { ...sheet, lines: sheet.lines.filter((line) => line.key !== key) };
}

/** A new rate for labor shows in its line at once; what it then costs is counted when the sheet is stored. */
export function withRates(sheet: EditedSheet, rates: SheetRates): EditedSheet {
  if (rates.labourRate === sheet.rates.labourRate) return { ...sheet, rates };
  const lines = sheet.lines.map((line) => (line.code === labourCode ? { ...line, unitCost: rates.labourRate, cost: null } : line));
  return { rates, lines };
}

export function emptyLine(code: string, name: string, origin: 'allowance' | 'override'): EditedLine {
  return { key: code, code, name, kind: 'material', unit: 'each', quantity: 1, unitCost: 0, taxable: true, origin, reason: null, cost: null };
}

export function lineFromItem(item: PriceItem): EditedLine {
  const { code, name, kind, unit, unitCost, taxable } = item;
  return { key: `${code} added`, code, name, kind, unit, unitCost, taxable, quantity: 1, origin: 'override', reason: null, cost: null };
}

/** A code that no line has yet, for a line that stands in no price list. */
export function freeCode(lines: readonly { readonly code: string }[]): string {
  const taken = new Set(lines.map((line) => line.code));
  for (let n = 1; ; n += 1) if (!taken.has(`own.${String(n)}`)) return `own.${String(n)}`;
}

export function byKind(lines: readonly EditedLine[]): readonly { readonly kind: PriceLine['kind']; readonly lines: readonly EditedLine[] }[] {
  return kinds.map((kind) => ({ kind, lines: lines.filter((line) => line.kind === kind) })).filter((group) => group.lines.length > 0);
}

/** Issued revisions of a job, the newest first. */
export function issuedRevisions(designs: readonly Design[]): readonly RevisionRow[] {
  const issued = designs.flatMap((design) => design.revisions).filter((revision) => revision.status === 'issued');
  return issued.sort((a, b) => (b.issuedAt ?? '').localeCompare(a.issuedAt ?? ''));
}

/** Basis points as a percentage with one decimal. */
export const percentOf = (basisPoints: number): number => Math.round(basisPoints / 10) / 10;

/** Whole basis points of a typed percentage, within what the office takes. */
export function basisPointsOf(percent: number | null, most: number): number {
  return Math.max(0, Math.min(most, Math.round((percent ?? 0) * 100)));
}
