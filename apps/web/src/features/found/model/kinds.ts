import { FoundKind, type FoundReport } from '@yardfall/contracts';
import type { CautionName } from '../../../components/Cautions.tsx';

export type Kind = FoundReport['kind'];
export const kinds = FoundKind.options;

/** What keeps people safe before anything is written down. */
export const makeSafe: Readonly<Record<Kind, readonly CautionName[]>> = {
  thickerSlab: [], steel: ['slab'], pipeInTheWay: ['utility', 'oldPipe'], water: ['caveIn', 'pit'], soil: ['caveIn'], utility: ['utility', 'gasStrike'], other: [],
};

/** What is measured of it; a level of water and a slab are read in inches. */
export const measured: Readonly<Record<Kind, boolean>> = { thickerSlab: true, steel: true, pipeInTheWay: true, water: true, soil: true, utility: true, other: false };
