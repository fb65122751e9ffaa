import { randomUUID } from 'node:crypto';
import type { SignedIn } from '@yardfall/contracts';
import supertest from 'supertest';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SetUpService } from '../../apps/api/src/identity/setUp.service.ts';
import { key, makeCompany, makePerson, password, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';

const session = '/api/v1/session';

describe('signing in', () => {
  let test: TestApp;
  let ours: TestCompany;
  beforeAll(async () => {
    test = await startApp();
    ours = await makeCompany(test);
  });
  afterAll(() => test.close());

  it('lasts a season for a crew, a month for the office', async () => {
    const daysOf = async (who: 'crew' | 'owner') => {
      const answer = await tryWith(ours[who].email, password).expect(201);
      const maxAge = /max-age=(\d+)/i.exec(String(answer.headers['set-cookie']))?.[1];
      return Number(maxAge) / 86_400;
    };
    expect([await daysOf('crew'), await daysOf('owner')]).toEqual([120, 30]);
  });

  const tryWith = (email: string, word: string) => supertest(test.server).post(session).send({ email, password: word });

  it('gives an HttpOnly, SameSite cookie whose token is nowhere stored', async () => {
    const answer = await tryWith(ours.owner.email.toUpperCase(), password).expect(201);
    expect(answer.body).toMatchObject({ kind: 'member', id: ours.owner.id, roles: ['owner'], company: { id: ours.id } });
    const cookie = String(answer.headers['set-cookie']);
    expect(cookie).toMatch(/^yardfall_session=[A-Za-z0-9_-]{43}; Max-Age=2592000; .*HttpOnly; SameSite=Lax/);
    const token = /=([A-Za-z0-9_-]{43});/.exec(cookie)?.[1] ?? '';
    const { rows } = await test.owner.query<{ stored: string }>(`SELECT string_agg(to_jsonb(s)::text, '') AS stored FROM session s`);
    expect(rows[0]?.stored).not.toContain(token);
    const { rows: members } = await test.owner.query<{ password_hash: string }>('SELECT password_hash FROM member WHERE id = $1', [ours.owner.id]);
    expect(members[0]?.password_hash).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
  });

  it('answers a wrong password and an unknown e-mail alike', async () => {
    const wrong = await tryWith(ours.crew.email, 'not the password').expect(401);
    const unknown = await tryWith('nobody@example.test', 'not the password').expect(401);
    expect(wrong.body.code).toBe('auth.wrongCredentials');
    expect({ ...wrong.body, requestId: '' }).toEqual({ ...unknown.body, requestId: '' });
  });

  it('stops after ten wrong passwords, says how long, and stores no e-mail for it', async () => {
    const person = await makePerson(test, ours.id, ['crew']);
    for (let attempt = 0; attempt < 10; attempt += 1) await tryWith(person.email, `wrong ${attempt}`).expect(401);
    const stopped = await tryWith(person.email, password).expect(429);
    expect(stopped.body.code).toBe('auth.tooManyAttempts');
    expect(Number(stopped.headers['retry-after'])).toBeGreaterThan(0);
    await tryWith(ours.owner.email, password).expect(201);
    const { rows } = await test.owner.query<{ key: string }>('SELECT key FROM rate_limit');
    expect(rows.length).toBeGreaterThan(0);
    expect(rows.filter((row) => row.key.includes('@'))).toEqual([]);
  });

  it('ends with the session: signed out, run out, or the account closed', async () => {
    const leaving = await makePerson(test, ours.id, ['crew']);
    await leaving.agent.get(session).expect(200);
    await leaving.agent.delete(session).expect(204);
    await leaving.agent.get(session).expect(401);
    const closed = await makePerson(test, ours.id, ['crew']);
    await ours.owner.agent.patch(`/api/v1/members/${closed.id}`).send({ active: false }).expect(200);
    await closed.agent.get(session).expect(401);
    await tryWith(closed.email, password).expect(401);
    const stale = await makePerson(test, ours.id, ['estimator']);
    test.clock.forward(31 * 86_400);
    await stale.agent.get(session).expect(401);
    test.clock.forward(-31 * 86_400);
    expect((await stale.agent.get(session).expect(200)).body.id).toBe(stale.id);
  });

  it('refuses a write that another site sends', async () => {
    const from = (headers: Record<string, string>) => supertest(test.server).post(session).set(headers).send({ email: ours.owner.email, password });
    const foreign: Record<string, string>[] = [{ Origin: 'https://elsewhere.example' }, { 'Sec-Fetch-Site': 'cross-site' }, { 'Sec-Fetch-Site': 'same-site' }, { Origin: 'null' }];
    for (const headers of foreign) {
      const { body } = await from(headers).expect(403);
      expect(body.code).toBe('auth.badOrigin');
    }
    const { host } = new URL(`http://127.0.0.1:${(test.server.address() as { port: number }).port}`);
    await from({ Origin: `http://${host}`, 'Sec-Fetch-Site': 'same-origin' }).set('Host', host).expect(201);
  });

  it('keeps language, units and theme', async () => {
    const { body } = await ours.crew.agent.patch(`${session}/preferences`).send({ language: 'es', units: 'metric', theme: 'dark' }).expect(200);
    expect(body).toMatchObject({ language: 'es', units: 'metric', theme: 'dark' });
    expect((await ours.crew.agent.get(session).expect(200)).body).toEqual(body);
    const problem = await ours.crew.agent.get('/api/v1/audit').expect(403);
    expect(problem.body.detail).toMatch(/[áéíóúñ]|no /i);
  });
});

describe('members', () => {
  let test: TestApp;
  let ours: TestCompany;
  beforeAll(async () => {
    test = await startApp();
    ours = await makeCompany(test);
  });
  afterAll(() => test.close());

  const invite = (email: string) => ours.owner.agent.post('/api/v1/members').set(key()).send({ name: 'New Person', email, roles: ['crew', 'estimator'] });
  const redeem = (token: string) => supertest.agent(test.server).post('/api/v1/invitations/redeem').send({ token, password: 'another long password' });
  const tokenOf = (link: string) => new URL(link).hash.slice(1);

  it('join by a link that works once', async () => {
    const { body } = await invite('new.person@example.test').expect(201);
    expect(body.member).toMatchObject({ invited: true, active: true, roles: ['crew', 'estimator'] });
    const token = tokenOf(body.link as string);
    expect((await redeem(token).expect(201)).body).toMatchObject({ kind: 'member', roles: ['crew', 'estimator'] });
    expect((await redeem(token).expect(410)).body.code).toBe('auth.linkInvalid');
    await supertest(test.server).post(session).send({ email: 'new.person@example.test', password: 'another long password' }).expect(201);
  });

  it('cannot join late, nor with an e-mail that is taken', async () => {
    const { body } = await invite('late@example.test').expect(201);
    test.clock.forward(7 * 86_400);
    await redeem(tokenOf(body.link as string)).expect(410);
    test.clock.forward(-7 * 86_400);
    await redeem(tokenOf(body.link as string)).expect(201);
    expect((await invite('late@example.test').expect(409)).body.code).toBe('conflict.duplicate');
  });

  it('always leave one owner', async () => {
    const { body } = await ours.owner.agent.patch(`/api/v1/members/${ours.owner.id}`).send({ roles: ['estimator'] }).expect(409);
    expect(body.code).toBe('auth.lastOwner');
    expect((await ours.owner.agent.get(session).expect(200)).body.roles).toEqual(['owner']);
  });

  it('register a phone; a cut-off one says so', async () => {
    const id = randomUUID();
    await ours.crew.agent.post('/api/v1/devices').set(key()).send({ id, name: 'Truck phone' }).expect(201, { id, name: 'Truck phone', cutOffAt: null });
    await ours.estimator.agent.post('/api/v1/devices').set(key()).send({ id, name: 'Mine' }).expect(409);
    await ours.crew.agent.post(`/api/v1/devices/${id}/cut-off`).set(key()).send({}).expect(403);
    const { body } = await ours.owner.agent.post(`/api/v1/devices/${id}/cut-off`).set(key()).send({}).expect(200);
    expect(body.cutOffAt).toBe(test.clock.now().toISOString());
  });

  it('cut off a lost phone: it reads nothing, is told so, and what it recorded still arrives', async () => {
    const lost = await makePerson(test, ours.id, ['crew']);
    const phones = async () => (await ours.owner.agent.get('/api/v1/sessions').expect(200)).body.items as SignedIn[];
    const its = (await phones()).find(({ memberId }) => memberId === lost.id);
    expect(its).toMatchObject({ cutOffAt: null, own: false });
    await ours.estimator.agent.get('/api/v1/sessions').expect(403);
    await ours.owner.agent.post(`/api/v1/sessions/${its?.id ?? ''}/cut-off`).set(key()).send({}).expect(200);
    for (const path of ['/session', '/jobs', '/company', '/members']) expect((await lost.agent.get(`/api/v1${path}`).expect(403)).body.code, path).toBe('auth.phoneCutOff');
    // It may say which phone it is, and that phone is cut off too.
    const id = randomUUID();
    expect((await lost.agent.post('/api/v1/devices').set(key()).send({ id, name: 'Lost' }).expect(201)).body.cutOffAt).not.toBeNull();
    expect((await phones()).find(({ memberId }) => memberId === lost.id)?.cutOffAt).toBe(test.clock.now().toISOString());
    const own = (await phones()).find((one) => one.own);
    await ours.owner.agent.post(`/api/v1/sessions/${own?.id ?? ''}/cut-off`).set(key()).send({}).expect(409);
    // Whoever sits elsewhere reads on; the crew's phone of the test before does not.
    await ours.estimator.agent.get('/api/v1/session').expect(200);
    await ours.crew.agent.get('/api/v1/session').expect(403);
  });
});

describe('an empty installation', () => {
  let test: TestApp;
  beforeAll(async () => {
    test = await startApp();
  });
  afterAll(() => test.close());

  it('is set up once, by the newest link, within its hour', async () => {
    const setUps = test.app.get(SetUpService);
    const older = await setUps.offerLink();
    const newer = await setUps.offerLink();
    const setUp = (link: string | null) => supertest.agent(test.server).post('/api/v1/set-up').send({
      token: new URL(link ?? '', 'http://yard.test').hash.slice(1), companyName: 'First Yards', state: 'NC', timeZone: 'America/New_York', ownerName: 'First Owner', email: 'owner@first.test', password: 'a very first password',
    });
    await setUp(older).expect(410);
    test.clock.forward(3601);
    await setUp(newer).expect(410);
    test.clock.forward(-3601);
    const { body } = await setUp(newer).expect(201);
    expect(body).toMatchObject({ roles: ['owner'], company: { name: 'First Yards' } });
    await setUp(newer).expect(410);
    expect(await setUps.offerLink()).toBeNull();
  });
});
