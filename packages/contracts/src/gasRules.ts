import { z } from 'zod';
import { CalendarDate, Id, Instant, text } from './common.ts';
import { endpoint } from './endpoint.ts';

/** What a gas company told this contractor to do when its line is hit, a running engine above all; empty when it was taken back. */
const entered = { gasCompany: text(120, 2), rule: text(1000), source: text(500, 5), readOn: CalendarDate };

const GasRule = z.object({ id: Id, gasCompany: z.string(), rule: z.string(), source: z.string(), readOn: CalendarDate, by: z.string(), at: Instant, inForce: z.boolean() }).meta({ id: 'GasRule' });
export type GasRule = z.infer<typeof GasRule>;

export const gasRules = {
  list: endpoint({
    id: 'gasRules.list', method: 'GET', path: '/gas-rules', summary: 'What the gas companies told to do when their line is hit, the newest first; it is shown beside the built-in words',
    access: { permission: 'locates.read' }, status: 200, params: null, query: null, body: null, response: z.object({ items: z.array(GasRule) }),
  }),
  enter: endpoint({
    id: 'gasRules.enter', method: 'POST', path: '/gas-rules', summary: "Enter a gas company's own rule with its source; it replaces the one before of that company, and an empty one takes it back",
    access: { permission: 'company.manage' }, status: 201, params: null, query: null, body: z.strictObject(entered), response: GasRule,
  }),
};
