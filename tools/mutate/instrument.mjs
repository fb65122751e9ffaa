// @ts-check
// One text that holds every mutant of a file: `$m(id)` asks whether the mutant of that number is switched on.
import ts from 'typescript';
import { changesOf, isSilent, mayGo } from './operators.mjs';

/** @typedef {{ id: number, file: string, line: number, code: string, operator: string, from: string, to: string }} Mutant */

const oneLine = (/** @type {string} */ text) => text.replace(/\s+/g, ' ').trim();

class Writer {
  /** @type {Mutant[]} */
  mutants = [];

  /** @param {string} file @param {string} text @param {number} firstId @param {boolean} mutate */
  constructor(file, text, firstId, mutate) {
    this.file = file;
    this.text = text;
    this.next = firstId;
    this.mutate = mutate;
    this.lines = text.split('\n');
    this.source = ts.createSourceFile(file, text, ts.ScriptTarget.ES2023, true);
  }

  /** @param {ts.Node} node @param {string} operator @param {string} to */
  add(node, operator, to) {
    const { line } = this.source.getLineAndCharacterOfPosition(node.getStart());
    const id = this.next;
    this.next += 1;
    this.mutants.push({ id, file: this.file, line: line + 1, code: (this.lines[line] ?? '').trim(), operator, from: oneLine(node.getText()), to: oneLine(to) });
    return id;
  }

  /** @param {ts.Node} node @returns {string} its text from where its own text starts, with all that is in it rewritten */
  inside(node) {
    let out = '';
    let at = node.getStart();
    ts.forEachChild(node, (child) => {
      if (isSilent(child) || child.getStart() < at) return;
      out += this.text.slice(at, child.getStart()) + this.write(child);
      at = child.getEnd();
    });
    return out + this.text.slice(at, node.getEnd());
  }

  /** @param {ts.Node} node @returns {string} */
  write(node) {
    if (isSilent(node)) return node.getText();
    const loop = node.parent;
    if (loop !== undefined && ts.isIterationStatement(loop, false) && loop.statement === node) return `{ $g(); ${this.changed(node)} }`;
    return this.changed(node);
  }

  /** @param {ts.Node} node @returns {string} */
  changed(node) {
    if (!this.mutate) return this.inside(node);
    if (mayGo(node)) {
      const id = this.add(node, 'statement', '');
      return `{ if (!$m(${id})) { ${this.inside(node)} } }`;
    }
    const changes = changesOf(node).map(({ operator, text }) => `$m(${this.add(node, operator, text)}) ? (${text}) : `);
    const inner = this.inside(node);
    return changes.length === 0 ? inner : `(${changes.join('')}(${inner}))`;
  }
}

/**
 * @param {string} file @param {string} text @param {number} firstId @param {boolean} mutate without it only the loops are guarded
 * @returns {{ text: string, mutants: Mutant[] }}
 */
export function instrument(file, text, firstId, mutate) {
  const writer = new Writer(file, text, firstId, mutate);
  return { text: writer.inside(writer.source), mutants: writer.mutants };
}
