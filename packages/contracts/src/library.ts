import { z } from 'zod';
import { finite, Id, Instant, Sha256, text } from './common.ts';
import { endpoint } from './endpoint.ts';

const Size = finite(0.001, 20);
const Share = finite(0, 1);

/** What the engine needs of a part as it is bought, in SI; levels and lengths belong to the yard and stand in the document. */
export const LibraryContent = z
  .discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('pump'), curve: z.array(z.strictObject({ flow: finite(0, 10), head: finite(0, 500) })).min(2).max(100), solids: finite(0, 1), minSubmergence: finite(0, 5),
    }),
    z.strictObject({ kind: z.literal('channel'), width: Size, depth: Size, outletDiameter: Size.nullable(), surround: finite(0, 2), roughness: finite(0.001, 1) }),
    z.strictObject({
      kind: z.literal('pipe'), diameter: Size, roughness: finite(0.001, 1), material: z.enum(['smoothSolid', 'corrugatedSolid', 'perforated']), joints: z.enum(['glued', 'gasketed', 'pushFit']),
    }),
    z.strictObject({ kind: z.literal('basin'), diameter: Size, height: Size, emptyMass: finite(0, 1e5), wall: z.enum(['solid', 'perforated']), lidFixed: z.boolean() }),
    /** A grate over a channel. */
    z.strictObject({ kind: z.literal('channelGrate'), openAreaRatio: Share, slotWidth: finite(0, 1), locked: z.boolean(), loadClass: z.enum(['foot', 'car', 'truck']) }),
    /** A grate over a catch basin. */
    z.strictObject({ kind: z.literal('basinGrate'), gratePerimeter: Size, grateOpenArea: finite(0, 20) }),
  ])
  .meta({ id: 'LibraryContent' });
export type LibraryContent = z.infer<typeof LibraryContent>;
export type LibraryKind = LibraryContent['kind'];
export const libraryKinds = ['pump', 'channel', 'pipe', 'basin', 'channelGrate', 'basinGrate'] as const satisfies readonly LibraryKind[];

const input = {
  name: text(120, 1),
  /** Where the figures are from: a datasheet with its number or date. */
  source: text(300),
  /** Line of the price list that buys one of it; null while nobody has priced it. */
  priceCode: text(60, 1).nullable(),
  content: LibraryContent,
};
export const LibraryInput = z.strictObject(input).meta({ id: 'LibraryInput' });
export type LibraryInput = z.infer<typeof LibraryInput>;

export const LibraryEntry = z
  .object({ id: Id, ...input, sha256: Sha256, active: z.boolean(), version: z.number().int(), updatedAt: Instant, by: z.string() })
  .meta({ id: 'LibraryEntry' });
export type LibraryEntry = z.infer<typeof LibraryEntry>;

export const library = {
  list: endpoint({
    id: 'library.list', method: 'GET', path: '/library', summary: 'Pumps and parts that the company keeps, by kind and name',
    access: { permission: 'library.read' }, status: 200, params: null, query: null, body: null, response: z.object({ items: z.array(LibraryEntry) }),
  }),
  add: endpoint({
    id: 'library.add', method: 'POST', path: '/library', summary: 'Add a pump or part; a pump curve must begin at no flow and fall',
    access: { permission: 'library.edit' }, status: 201, params: null, query: null, body: LibraryInput, response: LibraryEntry, errors: ['conflict.duplicate'],
  }),
  change: endpoint({
    id: 'library.change', method: 'PUT', path: '/library/:entryId', summary: 'Change a pump or part, or take it out of use; designs keep what they took',
    access: { permission: 'library.edit' }, status: 200, params: z.strictObject({ entryId: Id }), query: null, body: LibraryInput.extend({ active: z.boolean() }), response: LibraryEntry,
    concurrency: 'ifMatch', errors: ['notFound', 'conflict.duplicate', 'conflict.stale', 'conflict.preconditionRequired'],
  }),
  import: endpoint({
    id: 'library.import', method: 'POST', path: '/library/import', summary: 'Add many at once; an entry of the same kind and name is changed. All or nothing',
    access: { permission: 'library.edit' }, status: 200, params: null, query: null, body: z.strictObject({ entries: z.array(LibraryInput).min(1).max(300) }),
    response: z.object({ added: z.number().int(), changed: z.number().int(), same: z.number().int() }),
  }),
};
