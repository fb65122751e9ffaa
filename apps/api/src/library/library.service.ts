import { Injectable } from '@nestjs/common';
import { type BodyOf, canonicalBytes, type LibraryEntry, type LibraryInput, type library as api, sha256Hex } from '@yardfall/contracts';
import { render } from '@yardfall/text';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { requireVersion } from '../common/etag.ts';
import { emit } from '../common/events.ts';
import { newId } from '../common/ids.ts';
import { entryParts, presentEntry } from './library.presenter.ts';
import { contentProblem } from './library.rules.ts';

/** An entry with its content as the bytes that are stored and hashed. */
interface Ready extends LibraryInput {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly sha256: string;
}

/** Pumps and parts that the company keeps. Designs hold copies: nothing here changes a design. */
@Injectable()
export class LibraryService {
  private readonly database: Database;

  constructor(database: Database) {
    this.database = database;
  }

  list(actor: Actor): Promise<{ items: LibraryEntry[] }> {
    return this.database.read(actor, async (tx) => ({ items: await this.all(tx, actor) }));
  }

  /** For whoever builds on the library, inside their transaction. */
  async all(tx: Tx, actor: Actor): Promise<LibraryEntry[]> {
    const rows = await tx.libraryEntry.findMany({ where: { companyId: actor.companyId }, include: entryParts, orderBy: [{ kind: 'asc' }, { name: 'asc' }] });
    return rows.map(presentEntry);
  }

  async add(actor: Actor, body: LibraryInput): Promise<LibraryEntry> {
    const ready = await this.ready(actor, body, 'body.content');
    return this.database.write(actor, async (tx) => {
      const id = await this.insert(tx, actor, ready);
      await emit(tx, actor, 'library', null, id);
      return this.describe(tx, actor, id);
    });
  }

  async change(actor: Actor, entryId: string, { active, ...body }: BodyOf<typeof api.change>): Promise<LibraryEntry> {
    const ready = await this.ready(actor, body, 'body.content');
    return this.database.write(actor, async (tx) => {
      await tx.$queryRaw`SELECT 1 FROM library_entry WHERE company_id = ${actor.companyId}::uuid AND id = ${entryId}::uuid FOR UPDATE`;
      const row = found(await tx.libraryEntry.findUnique({ where: keyOf(actor, entryId) }));
      requireVersion(actor.request, row.version);
      await this.update(tx, actor, row.id, ready, active);
      await emit(tx, actor, 'library', null, entryId);
      return this.describe(tx, actor, entryId);
    });
  }

  async import(actor: Actor, entries: readonly LibraryInput[]): Promise<{ added: number; changed: number; same: number }> {
    const all = await Promise.all(entries.map((entry, index) => this.ready(actor, entry, `body.entries.${String(index)}.content`)));
    return this.database.write(actor, async (tx) => {
      const counts = { added: 0, changed: 0, same: 0 };
      for (const ready of all) {
        const where = { companyId_kind_name: { companyId: actor.companyId, kind: ready.content.kind, name: ready.name } };
        const row = await tx.libraryEntry.findUnique({ where });
        if (row === null) {
          await this.insert(tx, actor, ready);
          counts.added += 1;
        } else if (row.sha256 === ready.sha256 && row.source === ready.source && row.priceCode === ready.priceCode && row.active) {
          counts.same += 1;
        } else {
          await this.update(tx, actor, row.id, ready, true);
          counts.changed += 1;
        }
      }
      await emit(tx, actor, 'library', null);
      return counts;
    });
  }

  private async ready(actor: Actor, body: LibraryInput, path: string): Promise<Ready> {
    const wrong = contentProblem(body.content);
    if (wrong !== null) {
      const issue = { path: `${path}.${wrong.path}`, message: render(actor.language, actor.units, wrong.code, wrong.params) };
      throw new DomainError('request.invalid', {}, [issue]);
    }
    const bytes = canonicalBytes(body.content);
    return { ...body, bytes, sha256: await sha256Hex(bytes) };
  }

  private async insert(tx: Tx, actor: Actor, ready: Ready): Promise<string> {
    const id = newId();
    await tx.libraryEntry.create({ data: { id, companyId: actor.companyId, kind: ready.content.kind, ...columnsOf(actor, ready) } });
    await audit(tx, actor, 'library.added', { id }, { name: ready.name, content: ready.sha256 });
    return id;
  }

  private async update(tx: Tx, actor: Actor, id: string, ready: Ready, active: boolean): Promise<void> {
    await tx.libraryEntry.update({ where: keyOf(actor, id), data: { kind: ready.content.kind, ...columnsOf(actor, ready), active, version: { increment: 1 } } });
    await audit(tx, actor, 'library.changed', { id }, { name: ready.name, content: ready.sha256, active });
  }

  private async describe(tx: Tx, actor: Actor, id: string): Promise<LibraryEntry> {
    return presentEntry(found(await tx.libraryEntry.findUnique({ where: keyOf(actor, id), include: entryParts })));
  }
}

const keyOf = (actor: Actor, id: string) => ({ companyId_id: { companyId: actor.companyId, id } });

const columnsOf = (actor: Actor, { name, source, priceCode, bytes, sha256 }: Ready) => ({ name, source, priceCode, content: bytes, sha256, updatedById: actor.id, updatedAt: actor.request.at });

