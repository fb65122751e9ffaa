// What the first page needs of the packages, in a file of its own: it is made while the rest of the page is on its way.
export { checklists, designs, found, jobs } from '@yardfall/contracts';
