// What the first page of a phone shows of this feature; the rest of it would come along through the index.
export { NextItem } from './components/NextItem.tsx';
