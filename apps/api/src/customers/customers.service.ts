import { Inject, Injectable } from '@nestjs/common';
import type { CustomerInput, Language, PropertyInput } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import type { Tx } from '../common/database.ts';
import { newId } from '../common/ids.ts';
import { ENV, type Env } from '../env.ts';
import type { Customer, CustomerKey, Property } from '../generated/prisma/client.ts';
import { readMasterKey } from './master-key.ts';
import { makeDataKey, open, openJson, seal, sealJson } from './sealing.rules.ts';

type Person = Pick<CustomerInput, 'name' | 'email' | 'phones'>;
type Place = Pick<PropertyInput, 'address' | 'gateCode' | 'notes'>;
export type CustomerWithKey = Customer & { customerKey_customer: CustomerKey | null };

const placeOf = (kind: 'key' | 'customer' | 'property', id: string) => `${kind}:${id}`;

/** Names, phones, e-mails and addresses: sealed with a key per customer. Whoever destroys the key erases the person. */
@Injectable()
export class CustomersService {
  private readonly master: Uint8Array<ArrayBuffer>;

  constructor(@Inject(ENV) env: Env) {
    this.master = readMasterKey(env.SECRET_KEY, env.DATA_DIR);
  }

  async create(tx: Tx, actor: Actor, customer: CustomerInput, property: PropertyInput): Promise<{ customerId: string; propertyId: string }> {
    const [customerId, propertyId] = [newId(), newId()];
    const { companyId } = actor;
    const key = makeDataKey();
    await tx.customer.create({ data: { id: customerId, companyId, sealed: sealPerson(key, customerId, customer), language: customer.language, createdAt: actor.request.at } });
    await tx.customerKey.create({ data: { id: newId(), companyId, customerId, wrappedKey: seal(this.master, placeOf('key', customerId), key) } });
    await tx.property.create({
      data: { id: propertyId, companyId, customerId, sealed: sealPlace(key, propertyId, property), state: property.state, timeZone: property.timeZone, createdAt: actor.request.at },
    });
    return { customerId, propertyId };
  }

  async updateCustomer(tx: Tx, row: CustomerWithKey, input: CustomerInput): Promise<void> {
    const sealed = sealPerson(this.keyFor(row), row.id, input);
    await tx.customer.update({ where: { companyId_id: { companyId: row.companyId, id: row.id } }, data: { sealed, language: input.language, version: { increment: 1 } } });
  }

  async updateProperty(tx: Tx, owner: CustomerWithKey, row: Property, input: PropertyInput): Promise<void> {
    const sealed = sealPlace(this.keyFor(owner), row.id, input);
    await tx.property.update({ where: { companyId_id: { companyId: row.companyId, id: row.id } }, data: { sealed, state: input.state, timeZone: input.timeZone } });
  }

  /** Null for an erased customer. */
  person(row: CustomerWithKey): CustomerInput | null {
    const key = this.keyOf(row);
    return key === null ? null : { ...(openJson(key, placeOf('customer', row.id), row.sealed) as Person), language: row.language as Language };
  }

  place(owner: CustomerWithKey, row: Property): PropertyInput | null {
    const key = this.keyOf(owner);
    return key === null ? null : { ...(openJson(key, placeOf('property', row.id), row.sealed) as Place), state: row.state, timeZone: row.timeZone };
  }

  /** Bytes that name the customer and must go with them: an offer, a signature. `place` says what they are and of which row. */
  sealBytes(owner: CustomerWithKey, place: string, bytes: Uint8Array): Uint8Array<ArrayBuffer> {
    return seal(this.keyFor(owner), place, bytes);
  }

  /** Null for an erased customer. */
  openBytes(owner: CustomerWithKey, place: string, sealed: Uint8Array): Uint8Array<ArrayBuffer> | null {
    const key = this.keyOf(owner);
    return key === null ? null : open(key, place, sealed);
  }

  /** The same for a short text that stands in a text column: base64. */
  sealText(owner: CustomerWithKey, place: string, text: string): string {
    return Buffer.from(this.sealBytes(owner, place, Buffer.from(text, 'utf8'))).toString('base64');
  }

  openText(owner: CustomerWithKey, place: string, sealed: string): string | null {
    const bytes = this.openBytes(owner, place, Buffer.from(sealed, 'base64'));
    return bytes === null ? null : Buffer.from(bytes).toString('utf8');
  }

  /** Destroys the key: name, phones and address can never be read again, the trail of the job stays. */
  async erase(tx: Tx, actor: Actor, customerId: string): Promise<void> {
    await tx.customerKey.deleteMany({ where: { companyId: actor.companyId, customerId } });
    await audit(tx, actor, 'customer.erased', { id: customerId });
  }

  private keyFor(row: CustomerWithKey): Uint8Array {
    const key = this.keyOf(row);
    if (key === null) throw new Error('an erased customer cannot be written again');
    return key;
  }

  private keyOf(row: CustomerWithKey): Uint8Array | null {
    const wrapped = row.customerKey_customer?.wrappedKey;
    return wrapped === undefined ? null : open(this.master, placeOf('key', row.id), wrapped);
  }
}

function sealPerson(key: Uint8Array, id: string, { name, email, phones }: Person) {
  return sealJson(key, placeOf('customer', id), { name, email, phones });
}

function sealPlace(key: Uint8Array, id: string, { address, gateCode, notes }: Place) {
  return sealJson(key, placeOf('property', id), { address, gateCode, notes });
}
