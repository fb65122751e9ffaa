import { z } from 'zod';
import { finite, Id, Language, text, TimeZone } from './common.ts';
import { CompanyChecklist, WantedChecklist } from './checklist/ownRules.ts';
import { endpoint } from './endpoint.ts';
import { StateCode } from './identity.ts';

/** A limit of the checks that the company sets apart from the built-in one, in SI; whoever loosens one says why. */
export const CompanyLimit = z
  .strictObject({ limit: text(40, 1), pass: finite(-1e7, 1e7), fail: finite(-1e7, 1e7), by: text(120), at: z.iso.datetime({ offset: true }), why: text(500) })
  .meta({ id: 'CompanyLimit' });
export type CompanyLimit = z.infer<typeof CompanyLimit>;
/** As it is asked for: who and when are the office's to say. */
export const WantedLimit = CompanyLimit.omit({ by: true, at: true }).meta({ id: 'WantedLimit' });
export type WantedLimit = z.infer<typeof WantedLimit>;

export const CompanySettings = z
  .strictObject({
    /** Hand-dig strip each side of a mark [m]. */
    handDigTolerance: finite(0, 3),
    invitationDays: z.number().int().min(1).max(60),
    customerLinkDays: z.number().int().min(1).max(730),
    warrantyMonths: z.number().int().min(0).max(240),
    limits: z.array(CompanyLimit).max(100),
    /** How the company does the steps of the work; in force for what is released from then on. */
    checklist: CompanyChecklist,
  })
  .meta({ id: 'CompanySettings' });
export type CompanySettings = z.infer<typeof CompanySettings>;

/** Ours, each a setting: 24 in hand-dig strip, two years of warranty. */
export const defaultSettings: CompanySettings = {
  handDigTolerance: 0.6096, invitationDays: 7, customerLinkDays: 365, warrantyMonths: 24, limits: [], checklist: { changes: [], own: [] },
};

export const Company = z
  .object({
    id: Id, name: z.string(), language: Language, timeZone: z.string(), state: StateCode, responsibleName: z.string(),
    /** The number that customers call; empty while nobody typed one. */
    phone: z.string(), settings: CompanySettings, version: z.number().int(),
  })
  .meta({ id: 'Company' });
export type Company = z.infer<typeof Company>;

export const company = {
  read: endpoint({
    id: 'company.read', method: 'GET', path: '/company', summary: 'The company and its settings', access: { permission: 'company.read' }, status: 200,
    params: null, query: null, body: null, response: Company, concurrency: 'etag',
  }),
  update: endpoint({
    id: 'company.update', method: 'PATCH', path: '/company', summary: 'Change name, phone, zone, language, who is responsible, or settings', access: { permission: 'company.manage' }, status: 200,
    params: null, query: null,
    body: z.strictObject({
      name: text(120, 1).optional(), language: Language.optional(), timeZone: TimeZone.optional(), state: StateCode.optional(),
      responsibleName: text(120).optional(), phone: text(40).optional(), settings: CompanySettings.omit({ limits: true, checklist: true }).optional(),
      /** The whole list; one that is as it was keeps who set it and when. */
      limits: z.array(WantedLimit).max(100).optional(),
      /** All rules of the checklist; a change that is as it was keeps who made it and when. */
      checklist: WantedChecklist.optional(),
    }),
    response: Company, concurrency: 'ifMatch', errors: ['conflict.stale', 'conflict.preconditionRequired', 'document.invalid', 'checklist.rule'],
  }),
};
