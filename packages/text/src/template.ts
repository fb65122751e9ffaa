export interface Figure {
  readonly name: string;
  /** A quantity, or `term`: the value is itself a message code. */
  readonly kind: string;
}

export interface Plural {
  readonly name: string;
  readonly forms: readonly [one: string, other: string];
}

export type Piece = string | Figure | Plural;

const placeholder = /\{([a-zA-Z][\w.]*):([a-zA-Z]+)((?:\|[^{}|]*)*)\}/y;
const parsed = new Map<string, readonly Piece[]>();

export function parseTemplate(template: string): readonly Piece[] {
  const known = parsed.get(template);
  if (known) return known;
  const pieces = read(template);
  parsed.set(template, pieces);
  return pieces;
}

function read(template: string): Piece[] {
  const pieces: Piece[] = [];
  let at = 0;
  while (at < template.length) {
    const open = template.indexOf('{', at);
    const plain = template.slice(at, open < 0 ? template.length : open);
    if (plain.includes('}')) throw new SyntaxError(`stray } in "${template}"`);
    if (plain) pieces.push(plain);
    if (open < 0) break;
    placeholder.lastIndex = open;
    const match = placeholder.exec(template);
    if (!match) throw new SyntaxError(`unreadable placeholder in "${template}"`);
    pieces.push(piece(match[1] ?? '', match[2] ?? '', match[3] ?? '', template));
    at = placeholder.lastIndex;
  }
  return pieces;
}

function piece(name: string, kind: string, tail: string, template: string): Piece {
  const forms = tail === '' ? [] : tail.slice(1).split('|');
  if (kind !== 'plural') {
    if (forms.length > 0) throw new SyntaxError(`${kind} takes no forms in "${template}"`);
    return { name, kind };
  }
  const [one, other] = forms;
  if (one === undefined || other === undefined || forms.length !== 2) throw new SyntaxError(`a plural takes two forms in "${template}"`);
  return { name, forms: [one, other] };
}
