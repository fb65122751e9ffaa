import { catalogue } from '../catalogue.ts';

export const photos = catalogue({});
