import type { DesignDocument } from '@yardfall/calc';
import { designs } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { keep, kept } from '../../../lib/keep.ts';
import { read } from '../../../lib/query.ts';
import type { ChecklistView } from '../model/view.ts';

/** How levels are read off: as levels, or as a rod below an instrument whose height the bench mark gave. */
export interface Instrument {
  readonly isRod: boolean;
  /** Height of the line of sight above the job's datum [m]; null until the bench mark was shot today. */
  readonly height: number | null;
  /** The bench mark as it is called and its level [m]; null while the design is not here. */
  readonly benchMark: { readonly name: string; readonly level: number } | null;
  /** Points of the survey that can be shot again, with their levels [m]. */
  readonly points: readonly { readonly id: string; readonly name: string; readonly level: number }[];
  /** Rod on the bench mark [m]. */
  readonly backsight: number | null;
  readonly setRod: (isRod: boolean) => void;
  readonly setBacksight: (rod: number | null) => void;
}

interface Kept {
  readonly isRod: boolean;
  readonly backsight: number | null;
  /** Day on which the instrument was set up: tomorrow it stands elsewhere. */
  readonly day: string;
}

const today = (): string => new Date().toDateString();

function keptOf(name: string): Kept {
  const found = kept(name) as Partial<Kept> | null;
  const isToday = found?.day === today();
  return { isRod: found?.isRod === true, backsight: isToday && typeof found.backsight === 'number' ? found.backsight : null, day: today() };
}

/** Kept on the phone for the day, because the instrument stands over many steps. */
export function useInstrument({ jobId, revisionId }: Pick<ChecklistView, 'jobId' | 'revisionId'>, asked: boolean): Instrument {
  const name = `instrument.${jobId}`;
  const [state, setState] = useState(() => keptOf(name));
  const revision = useQuery({ ...read(designs.read, { params: { jobId, revisionId } }), enabled: asked, staleTime: 600_000 });
  const site = (revision.data?.data.document as DesignDocument | undefined)?.site;
  const datum = site?.datum;
  const set = (part: Partial<Kept>) => {
    const next = { ...state, ...part, day: today() };
    setState(next);
    keep(name, next);
  };
  const benchMark = datum === undefined ? null : { name: datum.benchMark, level: datum.level };
  return {
    isRod: state.isRod, backsight: state.backsight, benchMark, points: site === undefined ? [] : [...site.sills, ...site.spotLevels].map(({ id, name, level }) => ({ id, name, level })), height: benchMark === null || state.backsight === null ? null : benchMark.level + state.backsight,
    setRod: (isRod) => set({ isRod }), setBacksight: (backsight) => set({ backsight }),
  };
}
