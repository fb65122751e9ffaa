// @ts-check
// What may go wrong in a formula: each rule gives the texts that could stand in the place of a node.
import ts from 'typescript';

/** @typedef {{ operator: string, text: string }} Change a change of an expression, as source text */

const K = ts.SyntaxKind;

/** @type {ReadonlyMap<ts.SyntaxKind, readonly string[]>} */
const BINARY = new Map([
  [K.PlusToken, ['-']], [K.MinusToken, ['+']], [K.AsteriskToken, ['/']], [K.SlashToken, ['*']], [K.PercentToken, ['*']],
  [K.LessThanToken, ['<=', '>=']], [K.LessThanEqualsToken, ['<', '>']], [K.GreaterThanToken, ['>=', '<=']], [K.GreaterThanEqualsToken, ['>', '<']],
  [K.EqualsEqualsEqualsToken, ['!==']], [K.ExclamationEqualsEqualsToken, ['===']],
  [K.AmpersandAmpersandToken, ['||']], [K.BarBarToken, ['&&']], [K.QuestionQuestionToken, ['&&']],
  [K.PlusEqualsToken, ['-=']], [K.MinusEqualsToken, ['+=']], [K.AsteriskEqualsToken, ['/=']], [K.SlashEqualsToken, ['*=']],
]);
const ASSIGNMENTS = new Set(['-=', '+=', '/=', '*=']);

/** Literals below this are tolerances of a search, which no result shows. */
const TOLERANCE = 1e-5;

/** @param {ts.Node} node */
const isText = (node) => ts.isStringLiteralLike(node) || ts.isTemplateExpression(node);

/** @param {ts.Node} node */
function isCondition(node) {
  const { parent } = node;
  if (ts.isIfStatement(parent)) return parent.expression === node;
  return ts.isConditionalExpression(parent) && parent.condition === node;
}

/** @param {ts.BinaryExpression} node @returns {Change[]} */
function binary(node) {
  const { left, right, operatorToken } = node;
  if (operatorToken.kind === K.PlusToken && (isText(left) || isText(right))) return [];
  return (BINARY.get(operatorToken.kind) ?? []).map((sign) => ({
    operator: ASSIGNMENTS.has(sign) ? 'assignment' : 'operator',
    text: ASSIGNMENTS.has(sign) ? `${left.getText()} ${sign} ${right.getText()}` : `(${left.getText()}) ${sign} (${right.getText()})`,
  }));
}

/** @param {ts.NumericLiteral} node @returns {Change[]} */
function literal(node) {
  const value = Number(node.text);
  const { parent } = node;
  if ((ts.isPropertyAssignment(parent) || ts.isEnumMember(parent)) && parent.name === node) return [];
  if (value !== 0 && value < TOLERANCE) return [];
  return [{ operator: 'constant', text: Number.isInteger(value) ? String(value + 1) : String(value * 1.1) }];
}

/** @param {ts.PrefixUnaryExpression | ts.PostfixUnaryExpression} node @returns {Change[]} */
function unary(node) {
  if (node.operator === K.ExclamationToken || node.operator === K.MinusToken) return [{ operator: 'sign', text: node.operand.getText() }];
  const other = node.operator === K.PlusPlusToken ? '--' : node.operator === K.MinusMinusToken ? '++' : null;
  if (other === null) return [];
  return [{ operator: 'assignment', text: ts.isPrefixUnaryExpression(node) ? `${other}${node.operand.getText()}` : `${node.operand.getText()}${other}` }];
}

/** @type {Readonly<Record<string, string>>} */
const SWAPPED = { min: 'max', max: 'min', floor: 'ceil', some: 'every', every: 'some' };
const DROPPED = new Set(['filter', 'slice', 'reverse', 'toReversed', 'sort', 'toSorted']);

/** @param {ts.CallExpression} node @returns {Change[]} */
function call(node) {
  if (!ts.isPropertyAccessExpression(node.expression) || (node.flags & ts.NodeFlags.OptionalChain) !== 0) return [];
  const owner = node.expression.expression.getText();
  const name = node.expression.name.text;
  const args = node.arguments.map((argument) => argument.getText()).join(', ');
  const other = SWAPPED[name];
  if (other !== undefined) return [{ operator: 'call', text: `${owner}.${other}(${args})` }];
  if (owner === 'Math' && name === 'abs') return [{ operator: 'call', text: args }];
  return DROPPED.has(name) ? [{ operator: 'call', text: owner }] : [];
}

/** @param {ts.Expression} node @returns {Change[]} */
function returned(node) {
  if (!ts.isReturnStatement(node.parent)) return [];
  if (ts.isArrayLiteralExpression(node)) return node.elements.length > 0 ? [{ operator: 'returned', text: '[]' }] : [];
  const worth = ts.isBinaryExpression(node) || ts.isCallExpression(node) || ts.isIdentifier(node) || ts.isPropertyAccessExpression(node);
  return worth && node.getText() !== 'undefined' ? [{ operator: 'returned', text: '0' }] : [];
}

/** @param {ts.Node} node @returns {Change[]} what could stand in the place of an expression */
export function changesOf(node) {
  /** @type {Change[]} */
  const changes = [];
  if (ts.isBinaryExpression(node)) changes.push(...binary(node));
  else if (ts.isNumericLiteral(node)) changes.push(...literal(node));
  else if (ts.isPrefixUnaryExpression(node) || ts.isPostfixUnaryExpression(node)) changes.push(...unary(node));
  else if (ts.isCallExpression(node)) changes.push(...call(node));
  else if (node.kind === K.TrueKeyword) changes.push({ operator: 'constant', text: 'false' });
  else if (node.kind === K.FalseKeyword) changes.push({ operator: 'constant', text: 'true' });
  if (ts.isExpression(node)) {
    if (isCondition(node)) changes.push({ operator: 'condition', text: 'true' }, { operator: 'condition', text: 'false' });
    changes.push(...returned(node));
  }
  return changes;
}

/** @param {ts.Node} node a statement that could be missing */
export function mayGo(node) {
  if (ts.isContinueStatement(node)) return true;
  if (ts.isBreakStatement(node)) return !ts.isCaseOrDefaultClause(node.parent);
  if (!ts.isExpressionStatement(node)) return false;
  return !(ts.isCallExpression(node.expression) && node.expression.expression.kind === K.SuperKeyword);
}

/** @param {ts.Node} node places that hold no computation */
export const isSilent = (node) => ts.isTypeNode(node) || ts.isImportDeclaration(node) || ts.isExportDeclaration(node) || ts.isInterfaceDeclaration(node)
  || ts.isTypeAliasDeclaration(node) || ts.isThrowStatement(node);
