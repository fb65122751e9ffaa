import { Injectable, type OnModuleInit } from '@nestjs/common';
import { Clock } from '../common/clock.ts';
import { Owner } from '../common/owner.ts';
import { Worker } from '../common/worker.ts';
import { PartStore } from './partStore.ts';
import { uploadDays } from './uploads.service.ts';

const day = 86_400_000;

/** Once an hour: uploads that nobody went on with, and parts that a crash left without an upload. */
@Injectable()
export class UploadSweep implements OnModuleInit {
  private readonly worker: Worker;
  private readonly owner: Owner;
  private readonly clock: Clock;
  private readonly parts: PartStore;

  constructor(worker: Worker, owner: Owner, clock: Clock, parts: PartStore) {
    this.worker = worker;
    this.owner = owner;
    this.clock = clock;
    this.parts = parts;
  }

  onModuleInit(): void {
    this.worker.routine('photos.sweepUploads', '41 * * * *', () => this.run());
  }

  async run(): Promise<void> {
    const now = this.clock.now();
    const { rows } = await this.owner.pool.query<{ id: string; company_id: string }>('DELETE FROM photo_upload WHERE expires_at < $1 RETURNING id, company_id', [now]);
    for (const { id, company_id } of rows) await this.parts.remove(company_id, id);
    await this.parts.sweep(new Date(now.getTime() - (uploadDays + 1) * day));
  }
}
