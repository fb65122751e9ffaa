export { section } from './section.ts';
