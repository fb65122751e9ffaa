// @ts-check
// Two rules that the linter has no words for, read from the syntax tree.
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import ts from 'typescript';
import { root } from '../paths.mjs';

/** @typedef {{ file: string, line: number, text: string }} Breach */

/** Their results are the same bits on every engine; pow, exp, log, sin and their kin are not. imul is for the random numbers of tests. */
const EXACT = new Set(['sqrt', 'abs', 'min', 'max', 'floor', 'imul']);
/** What a person hears or reads although it is an attribute. */
const SPOKEN = new Set(['alt', 'aria-description', 'aria-label', 'aria-roledescription', 'aria-valuetext', 'label', 'placeholder', 'title']);

/** @param {ts.Node} node @returns {string | undefined} what is wrong with it */
export function inexactNumbers(node) {
  if (ts.isBinaryExpression(node) && [ts.SyntaxKind.AsteriskAsteriskToken, ts.SyntaxKind.AsteriskAsteriskEqualsToken].includes(node.operatorToken.kind)) return 'the ** operator differs in its last bits between engines: use the math folder';
  if (ts.isElementAccessExpression(node) && node.expression.getText() === 'Math') return 'Math[...] hides which function is used';
  if (!ts.isPropertyAccessExpression(node) || node.expression.getText() !== 'Math' || EXACT.has(node.name.text) || /^[A-Z]/.test(node.name.text)) return undefined;
  return `Math.${node.name.text} differs in its last bits between engines or is not on the list: use the math folder`;
}

/** Destructuring or passing Math on would get round the rule above. @param {ts.Node} node */
function mathElsewhere(node) {
  if (!ts.isIdentifier(node) || node.text !== 'Math') return undefined;
  const { parent } = node;
  const plain = (ts.isPropertyAccessExpression(parent) || ts.isElementAccessExpression(parent)) && parent.expression === node;
  return plain ? undefined : 'Math is used other than as Math.name(...)';
}

const WORD = /\p{L}{2}/u; // a single letter is a mark, such as the O of outlet O1

/** @param {ts.Node} node @returns {string | undefined} */
export function spokenLiterals(node) {
  if (ts.isJsxText(node) && WORD.test(node.text)) return `"${node.text.trim()}" belongs in the catalogues of the text package`;
  if (!ts.isJsxAttribute(node) || !SPOKEN.has(node.name.getText()) || !node.initializer) return undefined;
  const value = ts.isJsxExpression(node.initializer) ? node.initializer.expression : node.initializer;
  if (!value || !(ts.isStringLiteralLike(value) || ts.isTemplateExpression(value)) || !WORD.test(value.getText().replaceAll(/\$\{[^}]*\}/g, ''))) return undefined;
  return `${node.name.getText()}=${value.getText()} belongs in the catalogues of the text package`;
}

/** @param {string} name @param {string} source @param {((node: ts.Node) => string | undefined)[]} rules @returns {Breach[]} */
export function breaches(name, source, rules) {
  const tree = ts.createSourceFile(name, source, ts.ScriptTarget.ESNext, true);
  /** @type {Breach[]} */
  const found = [];
  /** @param {ts.Node} node */
  const visit = (node) => {
    for (const rule of rules) {
      const text = rule(node);
      if (text) found.push({ file: name, line: tree.getLineAndCharacterOfPosition(node.getStart()).line + 1, text });
    }
    ts.forEachChild(node, visit);
  };
  visit(tree);
  return found;
}

/** @param {string} folder @param {RegExp} named @returns {string[]} */
const filesIn = (folder, named) => readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' }).filter((file) => named.test(file) && !/\.test(-d)?\.tsx?$/.test(file)).map((file) => path.join(folder, file));

/** What tests compare with is computed in another way on purpose, and may be inexact. @returns {Breach[]} */
export function checkSources() {
  const read = (/** @type {string} */ file) => readFileSync(path.join(root, file), 'utf8');
  return [
    ...filesIn('packages/calc/src', /\.ts$/).filter((file) => !file.startsWith(path.join('packages/calc/src/testing'))).flatMap((file) => breaches(file, read(file), [inexactNumbers, mathElsewhere])),
    ...filesIn('apps/web/src', /\.tsx$/).flatMap((file) => breaches(file, read(file), [spokenLiterals])),
  ];
}

if (process.argv[1] === import.meta.filename) {
  const found = checkSources();
  for (const { file, line, text } of found) console.error(`${file}:${line} ${text}`);
  process.exitCode = found.length > 0 ? 1 : 0;
}
