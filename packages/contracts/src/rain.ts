import { z } from 'zod';
import { finite, Id, Instant, JobParams, Sha256, text } from './common.ts';
import { RainTableSchema } from './document/schema.ts';
import { endpoint } from './endpoint.ts';

export const RainTableRow = z
  .object({ id: Id, jobId: Id, name: z.string(), table: RainTableSchema, sha256: Sha256, originalName: z.string().nullable(), createdAt: Instant, by: z.string() })
  .meta({ id: 'RainTableRow' });
export type RainTableRow = z.infer<typeof RainTableRow>;

export const rain = {
  list: endpoint({
    id: 'rain.list', method: 'GET', path: '/jobs/:jobId/rain-tables', summary: 'Rain tables of a job, newest first',
    access: { permission: 'rain.read' }, status: 200, params: JobParams, query: null, body: null, response: z.object({ items: z.array(RainTableRow) }), errors: ['notFound'],
  }),
  upload: endpoint({
    id: 'rain.upload', method: 'POST', path: '/jobs/:jobId/rain-tables/noaa', summary: 'Upload the CSV that the NOAA Atlas 14 server gives; a broken file is refused with line and column',
    access: { permission: 'rain.edit' }, status: 201, params: JobParams, query: null, body: z.strictObject({ name: text(80, 1) }), response: RainTableRow,
    upload: { maxBytes: 262_144, types: ['text/csv', 'text/plain', 'application/vnd.ms-excel', 'application/octet-stream'] },
    errors: ['notFound', 'rain.unreadable', 'request.tooLarge'],
  }),
  type: endpoint({
    id: 'rain.type', method: 'POST', path: '/jobs/:jobId/rain-tables', summary: 'Type a table: depths in millimetres by duration [s] and return period [years]',
    access: { permission: 'rain.edit' }, status: 201, params: JobParams, query: null, body: z.strictObject({ name: text(80, 1), table: RainTableSchema }), response: RainTableRow,
    errors: ['notFound', 'rain.unreadable'],
  }),
  storm: endpoint({
    id: 'rain.storm', method: 'GET', path: '/jobs/:jobId/rain-tables/:tableId/storm', summary: 'The storm by alternating block for one return period',
    access: { permission: 'rain.read' }, status: 200, params: z.strictObject({ jobId: Id, tableId: Id }),
    query: z.strictObject({ returnPeriod: z.coerce.number().pipe(finite(1, 1000)) }), body: null,
    response: z.object({ returnPeriod: z.number(), block: z.number(), depths: z.array(z.number()), total: z.number() }), errors: ['notFound'],
  }),
};
