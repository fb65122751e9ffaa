import { a } from './checklists/a.ts';
import { b } from './checklists/b.ts';
import { c } from './checklists/c.ts';
import { d } from './checklists/groupD.ts';
import { e } from './checklists/e.ts';
import { f } from './checklists/f.ts';
import { g } from './checklists/g.ts';
import { h } from './checklists/h.ts';
import { i } from './checklists/i.ts';
import { j } from './checklists/j.ts';
import { measures } from './checklists/measures.ts';
import { words } from './checklists/words.ts';
import { checklistPages } from './pages/checklists.ts';

/** The items of the install sequence, `checklists.<item>.<what | acceptance | photo | whyCrew | whyHome>`, and the words around them. */
export const checklists = { ...checklistPages, ...words, ...measures, ...a, ...b, ...c, ...d, ...e, ...f, ...g, ...h, ...i, ...j };
