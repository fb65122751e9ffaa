import { type Sheet, type SvgNode, unitPoints } from '@yardfall/drawing';
import PDFDocument from 'pdfkit';
import { fontFile, fontNames, runsOf } from './letters.ts';
import { circleSteps, operators, type Step, stepsOf } from './paths.ts';

type Doc = InstanceType<typeof PDFDocument>;
type Hatching = ReturnType<Doc['pattern']>;
type Attrs = SvgNode['attrs'];

export interface PdfInfo {
  readonly title: string;
  readonly author: string;
  readonly language: string;
  /** When what is printed was issued or last edited; never the clock, so that a print repeated is the same file. */
  readonly at: Date;
}

/** Sheets as one file: outlines as outlines, words as words in the bundled letters. The same sheets give the same bytes. */
export async function writePdf(sheets: readonly Sheet[], { title, author, language, at }: PdfInfo): Promise<Buffer> {
  const doc = new PDFDocument({ autoFirstPage: false, lang: language, displayTitle: true, info: { Title: title, Author: author, Creator: 'Yardfall', Producer: 'Yardfall', CreationDate: at, ModDate: at } });
  for (const name of fontNames) doc.registerFont(name, fontFile(name));
  const done = collect(doc);
  for (const sheet of sheets) {
    doc.addPage({ size: [sheet.paper.width * unitPoints, sheet.paper.height * unitPoints], margin: 0 });
    doc.scale(unitPoints);
    new Press(doc, sheet.tree).print();
  }
  doc.end();
  return done;
}

function collect(doc: Doc): Promise<Buffer> {
  return new Promise((resolve, reject) => {
    const chunks: Buffer[] = [];
    doc.on('data', (chunk: Buffer) => chunks.push(chunk));
    doc.on('end', () => resolve(Buffer.concat(chunks)));
    doc.on('error', reject);
  });
}

const number = (attrs: Attrs, name: string, otherwise = 0): number => Number(attrs[name] ?? otherwise);
const paintOf = (attrs: Attrs, name: 'fill' | 'stroke'): string | null => {
  const value = attrs[name];
  return typeof value !== 'string' || value === 'none' ? null : value;
};

/** Puts one tree on the page. */
class Press {
  readonly #doc: Doc;
  readonly #tree: SvgNode;
  readonly #tiles = new Map<string, SvgNode>();
  readonly #hatchings = new Map<string, Hatching>();

  constructor(doc: Doc, tree: SvgNode) {
    this.#doc = doc;
    this.#tree = tree;
  }

  print(): void {
    this.#gather(this.#tree);
    this.#put(this.#tree);
  }

  #gather(node: SvgNode): void {
    for (const child of node.children) {
      if (typeof child === 'string') continue;
      if (child.tag === 'pattern') {
        this.#tiles.set(String(child.attrs['id']), child);
        // Hatches lie on the sheet and not on a drawing of it, so they are made before anything is moved.
        this.#hatchings.set(String(child.attrs['id']), this.#hatching(child));
      } else this.#gather(child);
    }
  }

  #put(node: SvgNode): void {
    switch (node.tag) {
      case 'defs':
        return;
      case 'path':
        return this.#outline(stepsOf(String(node.attrs['d'])), node.attrs);
      case 'circle':
        return this.#outline(circleSteps(number(node.attrs, 'cx'), number(node.attrs, 'cy'), number(node.attrs, 'r')), node.attrs);
      case 'text':
        return this.#write(node);
      default:
        return this.#group(node);
    }
  }

  #group(node: SvgNode): void {
    const shift = /^translate\((\S+) (\S+)\)$/.exec(String(node.attrs['transform'] ?? ''));
    if (shift) this.#doc.save().translate(Number(shift[1]), Number(shift[2]));
    for (const child of node.children) if (typeof child !== 'string') this.#put(child);
    if (shift) this.#doc.restore();
  }

  #outline(steps: readonly Step[], attrs: Attrs): void {
    const fill = paintOf(attrs, 'fill');
    const stroke = paintOf(attrs, 'stroke');
    if (fill !== null) {
      this.#trace(steps);
      this.#fill(fill, number(attrs, 'fill-opacity', 1));
    }
    if (stroke === null) return;
    const doc = this.#doc;
    this.#trace(steps);
    doc.lineWidth(number(attrs, 'stroke-width', 1)).lineJoin(attrs['stroke-linejoin'] === 'round' ? 'round' : 'miter').lineCap(attrs['stroke-linecap'] === 'round' ? 'round' : 'butt');
    const dash = attrs['stroke-dasharray'];
    // The library takes a whole pattern; its types know only one length.
    if (typeof dash === 'string') doc.dash(dash.split(' ').map(Number) as unknown as number, {});
    else doc.undash();
    doc.strokeColor(stroke, number(attrs, 'stroke-opacity', 1)).stroke();
  }

  #trace(steps: readonly Step[]): void {
    for (const step of steps) {
      if (step.op === 'M') this.#doc.moveTo(...step.at);
      else if (step.op === 'L') this.#doc.lineTo(...step.at);
      else if (step.op === 'C') this.#doc.bezierCurveTo(...step.by);
      else this.#doc.closePath();
    }
  }

  #fill(fill: string, opacity: number): void {
    const name = /^url\(#(.+)\)$/.exec(fill)?.[1];
    if (name === undefined) {
      this.#doc.fillColor(fill, opacity).fill();
      return;
    }
    const hatching = this.#hatchings.get(name);
    if (hatching === undefined) throw new RangeError(`no hatch has the name ${name}`);
    this.#doc.fillColor([hatching, inkOf(this.#tiles.get(name))], 1).fill();
  }

  /** A hatch in one ink: its tile as it stands in the tree. */
  #hatching({ attrs, children }: SvgNode): Hatching {
    const [width, height] = [number(attrs, 'width'), number(attrs, 'height')];
    const stream = children.flatMap((child) => (typeof child === 'string' ? [] : [tileOf(child)])).join('\n');
    return this.#doc.pattern([0, 0, width, height], width, height, stream);
  }

  #write({ attrs, children }: SvgNode): void {
    const doc = this.#doc;
    const size = number(attrs, 'font-size');
    const [x, y] = [number(attrs, 'x'), number(attrs, 'y')];
    const runs = runsOf(children.filter((child) => typeof child === 'string').join(''), attrs['font-weight'] === 700);
    const widths = runs.map(({ font, text }) => doc.font(font, size).widthOfString(text));
    const width = widths.reduce((sum, value) => sum + value, 0);
    // Words on a drawing stand on paper: what runs behind them stops short of them.
    if (attrs['stroke'] !== undefined) doc.rect(x - 1, y - size * 0.76, width + 2, size).fillColor('#fff', 1).fill();
    let at = x;
    runs.forEach(({ font, text }, index) => {
      doc.font(font, size).fillColor(paintOf(attrs, 'fill') ?? '#000', 1).text(text, at, y, { lineBreak: false, baseline: 'alphabetic' });
      at += widths[index] ?? 0;
    });
  }
}

function inkOf(tile: SvgNode | undefined): string {
  const [first] = tile?.children ?? [];
  if (first === undefined || typeof first === 'string') return '#000';
  return paintOf(first.attrs, 'stroke') ?? paintOf(first.attrs, 'fill') ?? '#000';
}

function tileOf({ tag, attrs }: SvgNode): string {
  const steps = tag === 'circle' ? circleSteps(number(attrs, 'cx'), number(attrs, 'cy'), number(attrs, 'r')) : stepsOf(String(attrs['d']));
  const stroked = paintOf(attrs, 'stroke') !== null;
  return `${stroked ? `${String(number(attrs, 'stroke-width', 1))} w ` : ''}${operators(steps)} ${stroked ? 'S' : 'f'}`;
}
