import { z } from 'zod';
import { memberRoles } from './access.ts';
import { Email, Id, Instant, JobParams, Language, text, TimeZone, UnitSystem } from './common.ts';
import { endpoint } from './endpoint.ts';

export const MemberRoleSchema = z.enum(memberRoles).meta({ id: 'MemberRole' });
export const Theme = z.enum(['auto', 'light', 'dark']).meta({ id: 'Theme' });
const Password = text(200, 12);
const Token = z.string().regex(/^[A-Za-z0-9_-]{43}$/);

export const Me = z
  .object({
    kind: z.enum(['member', 'customer']),
    id: Id,
    name: z.string(),
    company: z.object({ id: Id, name: z.string(), language: Language, state: z.string(), timeZone: z.string() }),
    roles: z.array(z.enum([...memberRoles, 'customer'])),
    jobId: Id.nullable(),
    language: Language,
    units: UnitSystem,
    theme: Theme,
  })
  .meta({ id: 'Me' });
export type Me = z.infer<typeof Me>;

export const Member = z
  .object({ id: Id, name: z.string(), email: z.string(), roles: z.array(MemberRoleSchema), active: z.boolean(), invited: z.boolean() })
  .meta({ id: 'Member' });
export type Member = z.infer<typeof Member>;

export const StateCode = z.string().regex(/^[A-Z]{2}$/).meta({ id: 'StateCode', description: 'US state, two letters' });

/** One phone or browser that somebody is signed in on. */
export const SignedIn = z
  .object({
    id: Id, memberId: Id, name: z.string(), userAgent: z.string(), createdAt: Instant, cutOffAt: Instant.nullable(),
    /** The one that asks. */
    own: z.boolean(),
  })
  .meta({ id: 'SignedIn' });
export type SignedIn = z.infer<typeof SignedIn>;

export const identity = {
  signIn: endpoint({
    id: 'identity.signIn', method: 'POST', path: '/session', summary: 'Sign in with e-mail and password',
    access: { public: 'whoever signs in has no session yet' }, status: 201, idempotency: 'none',
    params: null, query: null, body: z.strictObject({ email: Email, password: text(200, 1) }), response: Me,
    errors: ['auth.wrongCredentials', 'auth.tooManyAttempts'],
  }),
  me: endpoint({
    id: 'identity.me', method: 'GET', path: '/session', summary: 'Who is signed in',
    access: { session: true }, status: 200, params: null, query: null, body: null, response: Me,
  }),
  signOut: endpoint({
    id: 'identity.signOut', method: 'DELETE', path: '/session', summary: 'Sign out',
    access: { session: true }, status: 204, idempotency: 'none', params: null, query: null, body: null, response: null,
  }),
  updatePreferences: endpoint({
    id: 'identity.updatePreferences', method: 'PATCH', path: '/session/preferences', summary: 'Language, units and theme of the reader',
    access: { session: true }, status: 200, params: null, query: null,
    body: z.strictObject({ language: Language.optional(), units: UnitSystem.optional(), theme: Theme.optional() }), response: Me,
  }),
  setUp: endpoint({
    id: 'identity.setUp', method: 'POST', path: '/set-up', summary: 'Make the first company and its owner with the one-time link of an empty installation',
    access: { public: 'there is no account yet; the token in the body is checked' }, status: 201, idempotency: 'none',
    params: null, query: null,
    body: z.strictObject({ token: Token, companyName: text(120, 1), phone: text(40).optional(), state: StateCode, timeZone: TimeZone, ownerName: text(120, 1), email: Email, password: Password }),
    response: Me, errors: ['auth.linkInvalid'],
  }),
  members: endpoint({
    id: 'identity.members', method: 'GET', path: '/members', summary: 'Members of the company',
    access: { permission: 'members.read' }, status: 200, params: null, query: null, body: null, response: z.object({ items: z.array(Member) }),
  }),
  invite: endpoint({
    id: 'identity.invite', method: 'POST', path: '/members', summary: 'Invite a member; the answer holds the link to hand over, once',
    access: { permission: 'members.manage' }, status: 201, params: null, query: null,
    body: z.strictObject({ name: text(120, 1), email: Email, roles: z.array(MemberRoleSchema).min(1).max(3) }),
    response: z.object({ member: Member, link: z.string(), expiresAt: Instant }), errors: ['conflict.duplicate'],
  }),
  updateMember: endpoint({
    id: 'identity.updateMember', method: 'PATCH', path: '/members/:memberId', summary: 'Change the roles of a member, or close the account',
    access: { permission: 'members.manage' }, status: 200, params: z.strictObject({ memberId: Id }), query: null,
    body: z.strictObject({ roles: z.array(MemberRoleSchema).min(1).max(3).optional(), active: z.boolean().optional() }), response: Member,
    errors: ['notFound', 'auth.lastOwner'],
  }),
  redeemInvitation: endpoint({
    id: 'identity.redeemInvitation', method: 'POST', path: '/invitations/redeem', summary: 'Take up an invitation by its link and set a password',
    access: { public: 'the invited person has no password yet; the token in the body is checked' }, status: 201, idempotency: 'none',
    params: null, query: null, body: z.strictObject({ token: Token, password: Password }), response: Me, errors: ['auth.linkInvalid'],
  }),
  customerLink: endpoint({
    id: 'identity.customerLink', method: 'POST', path: '/jobs/:jobId/customer-link', summary: 'Mint a link for the customer of a job; an earlier one stops working',
    access: { permission: 'offers.send' }, status: 201, params: JobParams, query: null, body: z.strictObject({}),
    response: z.object({ link: z.string(), expiresAt: Instant }), errors: ['notFound'],
  }),
  openCustomerLink: endpoint({
    id: 'identity.openCustomerLink', method: 'POST', path: '/customer-session', summary: 'Exchange the token of a customer link for a session',
    access: { public: 'customers have no account; the token in the body is checked' }, status: 201, idempotency: 'none',
    params: null, query: null, body: z.strictObject({ token: Token }), response: Me, errors: ['auth.linkInvalid'],
  }),
  registerDevice: endpoint({
    id: 'identity.registerDevice', method: 'POST', path: '/devices', summary: 'Register the phone that records field facts',
    access: { permission: 'checklists.record' }, fromCutOff: true, status: 201, params: null, query: null,
    body: z.strictObject({ id: Id, name: text(120, 1) }), response: z.object({ id: Id, name: z.string(), cutOffAt: Instant.nullable() }),
  }),
  phones: endpoint({
    id: 'identity.phones', method: 'GET', path: '/sessions', summary: 'Who is signed in, and on what', access: { permission: 'devices.manage' }, status: 200,
    params: null, query: null, body: null, response: z.object({ items: z.array(SignedIn) }),
  }),
  cutOffPhone: endpoint({
    id: 'identity.cutOffPhone', method: 'POST', path: '/sessions/:sessionId/cut-off', summary: 'Cut off a lost phone: it reads nothing any more; what it recorded may still arrive, in quarantine',
    access: { permission: 'devices.manage' }, status: 200, params: z.strictObject({ sessionId: Id }), query: null, body: z.strictObject({}), response: SignedIn, errors: ['notFound', 'conflict.state'],
  }),
  cutOffDevice: endpoint({
    id: 'identity.cutOffDevice', method: 'POST', path: '/devices/:deviceId/cut-off', summary: 'Cut off a lost phone',
    access: { permission: 'devices.manage' }, status: 200, params: z.strictObject({ deviceId: Id }), query: null, body: z.strictObject({}),
    response: z.object({ id: Id, name: z.string(), cutOffAt: Instant.nullable() }), errors: ['notFound'],
  }),
};
