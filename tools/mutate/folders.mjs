// @ts-check
/** Folders of packages/calc whose numbers decide what is built: each has a score of its examples. */
export const FOLDERS = [
  'levels', 'rain', 'record', 'runoff', 'gutter', 'inlet', 'channel', 'pipe', 'outlet', 'basin', 'pump', 'proof', 'surface', 'swale', 'underdrain', 'quantity', 'routing', 'asBuilt',
];
