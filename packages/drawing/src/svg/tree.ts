/** A small element tree: React renders it as elements, the server writes it as a string. */
export interface SvgNode {
  readonly tag: string;
  readonly attrs: Readonly<Record<string, string | number>>;
  readonly children: readonly (SvgNode | string)[];
}

export function node(tag: string, attrs: SvgNode['attrs'], children: SvgNode['children'] = []): SvgNode {
  return { tag, attrs, children };
}

const escapes: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

/** Characters that XML 1.0 cannot hold even escaped. */
// oxlint-disable-next-line no-control-regex -- these are exactly the characters to keep out
const forbidden = /[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]/g;

function escapeXml(text: string): string {
  return text.replace(forbidden, '').replace(/[&<>"']/g, (char) => escapes[char] ?? char);
}

export function toSvgString(tree: SvgNode): string {
  const attrs = Object.entries(tree.attrs).map(([name, value]) => ` ${name}="${escapeXml(String(value))}"`).join('');
  if (tree.children.length === 0) return `<${tree.tag}${attrs}/>`;
  const inner = tree.children.map((child) => (typeof child === 'string' ? escapeXml(child) : toSvgString(child))).join('');
  return `<${tree.tag}${attrs}>${inner}</${tree.tag}>`;
}

/** The attributes under the names that React expects. */
export function reactProps(attrs: SvgNode['attrs']): Record<string, string | number> {
  return Object.fromEntries(Object.entries(attrs).map(([name, value]) => [reactName(name), value]));
}

function reactName(name: string): string {
  if (name === 'class') return 'className';
  if (name.startsWith('data-') || name.startsWith('aria-')) return name;
  return name.replace(/-([a-z])/g, (_, letter: string) => letter.toUpperCase());
}
