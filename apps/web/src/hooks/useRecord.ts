import { sha256Hex, type BodyInput, type DayworkEntry, type found, type NewPhotoAddition, type PhotoMark, type PhotoPlace, type SurveyDraft, type SurveyFact } from '@yardfall/contracts';
import { useMutation } from '@tanstack/react-query';
import { v7 as uuidv7 } from 'uuid';
import { keepDaywork, keepFacts, keepFoundMore, keepPhoto, keepPhotoMore, keepSurveyFact, type NewFact } from '../lib/outbox.ts';
import { askToStay, roomOnPhone } from '../lib/room.ts';
import { pictureType } from '../lib/pictureType.ts';
import { ApiProblem } from '../lib/problem.ts';
import { largestFilm, videoType } from '../lib/videos.ts';
import { useMe } from './useMe.ts';

const largestPhoto = 25_000_000;

export interface NewPhoto {
  readonly file: File;
  readonly itemKey: string | null;
  readonly part: string | null;
  readonly note: string;
  readonly forCustomer: boolean;
  /** Lie over the picture, which stays as it came. */
  readonly marks?: readonly PhotoMark[];
  /** Where it belongs, when more is known than the step and the part. */
  readonly place?: PhotoPlace | null;
  /** What the photo proves; kept together with it. */
  readonly shows?: (photo: KeptPhoto) => readonly NewFact[];
}

export interface KeptPhoto {
  readonly id: string;
  readonly takenAt: string;
}

function useMemberId(): string {
  return useMe().me?.id ?? '';
}

/** A picture or a video as it is kept, with its SHA-256; refused where it is none, or where no room is left. */
async function photoOf(file: File) {
  const video = videoType(file);
  const type = pictureType(file) ?? video;
  const largest = video === null ? largestPhoto : largestFilm;
  if (type === null) throw new ApiProblem('photo.notAnImage');
  if (file.size > largest) throw new ApiProblem(video === null ? 'photo.tooLarge' : 'video.tooLarge', { params: { max: largest } });
  await askToStay();
  if ((await (video === null ? roomOnPhone() : roomOnPhone(file.size))).isFull) throw new ApiProblem('phone.full');
  // A copy, because the file of the camera may be gone by the time it is sent.
  const bytes = await file.arrayBuffer();
  const id = uuidv7();
  // Of a picture that was chosen from the phone's own store, when it was made and not when it was chosen.
  const takenAt = new Date(Math.min(file.lastModified, Date.now())).toISOString();
  const sha256 = await sha256Hex(new Uint8Array(bytes));
  return { id, meta: { id, sha256, takenAt }, file: new Blob([bytes], { type }) };
}

/** Keeps a photo on this phone with its SHA-256; it is sent from there. Answers with the id that facts and reports name. */
export function useKeepPhoto(jobId: string) {
  const memberId = useMemberId();
  return useMutation<KeptPhoto, Error, NewPhoto>({
    networkMode: 'always',
    mutationFn: async ({ file, marks = [], place = null, shows, ...about }) => {
      const { id, meta, file: kept } = await photoOf(file);
      const taken = { id, takenAt: meta.takenAt };
      const placed = place === null ? null : { ...additionOf({ place }), memberId, jobId, photoId: id };
      await keepPhoto({ id, memberId, jobId, meta: { ...meta, marks: [...marks], ...about }, file: kept }, shows?.(taken), placed);
      return taken;
    },
  });
}

export type NewPhotoMore = Partial<Pick<NewPhotoAddition, 'note' | 'place'>> & { readonly marks?: readonly PhotoMark[]; readonly hides?: readonly string[] };

function additionOf({ marks = [], hides = [], ...more }: NewPhotoMore): { readonly id: string; readonly more: NewPhotoAddition } {
  const id = uuidv7();
  return { id, more: { note: '', place: null, ...more, id, at: new Date().toISOString(), marks: [...marks], hides: [...hides] } };
}

/** Lays marks and words over a photo that is kept already, or places it: on this phone at once. */
export function useKeepPhotoMore(jobId: string, photoId: string) {
  const memberId = useMemberId();
  return useMutation<void, Error, NewPhotoMore>({ networkMode: 'always', mutationFn: (more) => keepPhotoMore({ ...additionOf(more), memberId, jobId, photoId }) });
}

/** Facts that one press records. */
export function useKeepFacts(jobId: string) {
  const memberId = useMemberId();
  return useMutation<void, Error, readonly NewFact[]>({ networkMode: 'always', mutationFn: (facts) => keepFacts(memberId, jobId, facts) });
}

/** Keeps one fact about an entry of a survey on this phone; it is on the disk when the promise is kept. */
export function useKeepSurveyFact(jobId: string, surveyId: string) {
  const memberId = useMemberId();
  return useMutation<SurveyFact, Error, SurveyDraft>({ networkMode: 'always', mutationFn: (draft) => keepSurveyFact(memberId, jobId, surveyId, draft) });
}

export type NewFoundMore = Partial<Pick<BodyInput<typeof found.amend>, 'kind' | 'part' | 'measure' | 'note' | 'hit'>> & { readonly file?: File };

/** Something more of a report of this person, on this phone at once. */
export function useKeepFoundMore(jobId: string, reportId: string) {
  const memberId = useMemberId();
  return useMutation<void, Error, NewFoundMore>({
    networkMode: 'always',
    mutationFn: async ({ file, ...told }) => {
      const photo = file === undefined ? null : await photoOf(file);
      const id = uuidv7();
      const more = { kind: null, part: null, measure: null, note: '', hit: null, ...told, id, at: new Date().toISOString(), photoIds: photo === null ? [] : [photo.id] };
      const kept = photo === null ? null : { id: photo.id, memberId, jobId, meta: { ...photo.meta, marks: [], itemKey: null, part: null, note: '', forCustomer: false }, file: photo.file };
      await keepFoundMore({ id, memberId, jobId, reportId, more }, kept);
    },
  });
}

type Undated<E> = E extends DayworkEntry ? Omit<E, 'id' | 'at'> : never;
export type NewDaywork = Undated<DayworkEntry>;

/** Notes time or material on this phone, at this moment. */
export function useKeepDaywork(jobId: string) {
  const memberId = useMemberId();
  return useMutation<void, Error, NewDaywork>({
    networkMode: 'always',
    mutationFn: (noted) => {
      const entry: DayworkEntry = { ...noted, id: uuidv7(), at: new Date().toISOString() };
      return keepDaywork({ id: entry.id, memberId, jobId, entry });
    },
  });
}
