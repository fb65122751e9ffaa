import { z } from 'zod';
import { Id, text } from './common.ts';
import { endpoint } from './endpoint.ts';

/** What an open page hears: read again what you show of this. */
export const Notice = z
  .object({ id: Id, topic: z.string(), jobId: Id.nullable(), subjectId: Id.nullable(), cursor: z.string() })
  .meta({ id: 'Notice' });
export type Notice = z.infer<typeof Notice>;

export const notices = {
  stream: endpoint({
    id: 'notices.stream', method: 'GET', path: '/events', summary: 'Live notices as server-sent events; one stream a browser, resumed by Last-Event-ID or `after`',
    access: { permission: 'events.read' }, status: 200, params: null, query: z.strictObject({ after: text(80).optional() }), body: null, response: null,
    produces: 'text/event-stream', errors: ['busy'],
  }),
};
