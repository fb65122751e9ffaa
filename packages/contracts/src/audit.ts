import { z } from 'zod';
import { Id, Instant, page, PageQuery } from './common.ts';
import { endpoint } from './endpoint.ts';

export const AuditEntry = z
  .object({
    id: Id, at: Instant, actorKind: z.enum(['member', 'customer', 'sender', 'system']), actorId: Id.nullable(), actorName: z.string().nullable(),
    jobId: Id.nullable(), action: z.string(), subjectId: Id.nullable(), params: z.record(z.string(), z.union([z.string(), z.number(), z.boolean(), z.null()])),
    sealed: z.boolean(),
  })
  .meta({ id: 'AuditEntry' });
export type AuditEntry = z.infer<typeof AuditEntry>;

export const TrailState = z
  .object({ sealed: z.number().int(), unsealed: z.number().int(), broken: z.number().int(), firstBroken: Id.nullable() })
  .meta({ id: 'TrailState' });
export type TrailState = z.infer<typeof TrailState>;

export const audit = {
  list: endpoint({
    id: 'audit.list', method: 'GET', path: '/audit', summary: 'The trail, newest first, of the company or of one job', access: { permission: 'audit.read' }, status: 200,
    params: null, query: PageQuery.extend({ jobId: Id.optional() }), body: null, response: page(AuditEntry),
  }),
  verify: endpoint({
    id: 'audit.verify', method: 'GET', path: '/audit/verify', summary: 'Recompute the hash chain of the trail', access: { permission: 'audit.read' }, status: 200,
    params: null, query: null, body: null, response: TrailState,
  }),
};
