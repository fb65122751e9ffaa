import { randomUUID } from 'node:crypto';
import type { MemberRole, Photo, UploadState } from '@yardfall/contracts';
import type { Sample } from './samples.ts';
import { beginUpload, newSent, newUpload } from './tus.ts';
import { picture, sendPhoto } from './work.ts';
import type { World } from './world.ts';

const begunUpload = async ({ ours, jobId }: World, role: MemberRole, bytes: Buffer): Promise<{ jobId: string; uploadId: string }> => {
  const { body } = await beginUpload(ours[role].agent, `/jobs/${jobId}/uploads`, newUpload(bytes)).expect(201);
  return { jobId, uploadId: (body as UploadState).id };
};

const begunSending = async ({ agents }: World, bytes: Buffer): Promise<string> => {
  const { body } = await beginUpload(agents.sender, '/sending/uploads', newSent(bytes)).expect(201);
  return (body as UploadState).id;
};

const keptPhoto = (world: World): Promise<string> =>
  world.once('photo to draw on', async () => ((await sendPhoto(world.office, world.jobId, await picture()).expect(201)).body as Photo).id);

/** Calls of what arrives in parts, what is laid over it, and of the link by which a customer sends it. */
export const uploadSamples: Readonly<Record<string, Sample>> = {
  'photos.amend': async (world) => ({ params: { jobId: world.jobId, photoId: await keptPhoto(world) }, body: { id: randomUUID(), at: '2026-11-24T15:00:00Z', marks: [], note: 'the crack', place: { itemKey: null, part: 'P1', point: { station: 3, level: -0.4 } }, hides: [] } }),
  'uploads.create': async ({ jobId }) => ({ params: { jobId }, body: newUpload(await picture()) }),
  'uploads.read': async (world, role) => ({ params: await begunUpload(world, role, await picture()) }),
  'uploads.append': async (world, role) => {
    const bytes = await picture();
    return { params: await begunUpload(world, role, bytes), body: { offset: 0 }, file: { bytes, name: '', mediaType: '' } };
  },
  'uploads.stop': async (world, role) => ({ params: await begunUpload(world, role, await picture()) }),
  'sending.link': async (world) => ({ params: { jobId: (await world.plainJob()).id }, body: {} }),
  'sending.linkState': ({ jobId }) => ({ params: { jobId } }),
  'sending.end': async (world) => ({ params: { jobId: (await world.plainJob()).id }, body: {} }),
  'sending.read': () => ({}),
  'sending.create': async () => ({ body: newSent(await picture()) }),
  'sending.state': async (world) => ({ params: { uploadId: await begunSending(world, await picture()) } }),
  'sending.append': async (world) => {
    const bytes = await picture();
    return { params: { uploadId: await begunSending(world, bytes) }, body: { offset: 0 }, file: { bytes, name: '', mediaType: '' } };
  },
  'sending.stop': async (world) => ({ params: { uploadId: await begunSending(world, await picture()) } }),
};
