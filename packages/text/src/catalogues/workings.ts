import { catalogue } from '../catalogue.ts';
import { workingMeanings } from './workings/meanings.ts';
import { workingTitles } from './workings/titles.ts';

/** Titles of workings and meanings of their symbols. */
export const workings = catalogue({ ...workingTitles, ...workingMeanings });
