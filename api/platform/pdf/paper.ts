import PDFDocument from 'pdfkit';
import { fontFile, runsOf, type Face, type Run } from './paper-fonts.ts';

/** Lengths in points, 1/72 inch. */
const MARGIN = 48;
const FOOT = 36;
const INK = '#1d1a16';
const QUIET = '#5d564c';
const HAIR = '#c9c1b4';

/** How a text is set. */
interface Style {
  readonly face: Face;
  readonly size: number;
  readonly colour?: string;
}

const styles = {
  title: { face: 'heading', size: 24 },
  heading: { face: 'heading', size: 15 },
  group: { face: 'heading', size: 11.5, colour: QUIET },
  text: { face: 'text', size: 10 },
  small: { face: 'text', size: 8.5, colour: QUIET },
  cell: { face: 'text', size: 8.5 },
  fine: { face: 'text', size: 7 },
} as const satisfies Record<string, Style>;

type Line = readonly Run[];
type Element = PDFKit.PDFStructureElement;
/** What its types leave out: a heading of a table says whether it is one of a column or of a row. */
type ElementOptions = Parameters<PDFKit.PDFDocument['struct']>[1] & { readonly scope?: 'Column' | 'Row' };

/** A column of a table. */
export interface Column {
  readonly head: string;
  /** Part of the width of the page; all together 1. */
  readonly width: number;
  readonly isNumber?: boolean;
}

/** What a drawing is made with: lengths in points from its upper left corner. */
export interface Drawing {
  /** Its width. */
  readonly width: number;
  /** One line of small text, cut where it would be wider than `width`. */
  text(text: string, x: number, y: number, width: number): void;
  /** A line through these points. */
  line(points: readonly (readonly [x: number, y: number])[]): void;
  /** A filled outline, as SVG writes it, so many times as large. */
  shape(outline: string, x: number, y: number, times: number): void;
}

/** Papers that a document is written for. */
export const paperSizes = ['a4', 'letter'] as const;
export type PaperSize = (typeof paperSizes)[number];

/**
 * A document that is written from top to bottom, tagged for screen readers: headings, paragraphs, lists and tables have their
 * meaning, and what only repeats or decorates has none. Fonts are embedded.
 */
export class Paper {
  readonly #document: PDFKit.PDFDocument;
  readonly #whole: Element;
  readonly #chunks: Buffer[] = [];
  readonly #done: Promise<void>;
  /** Between the margins. */
  readonly #width: number;
  #y = MARGIN;

  constructor(title: string, made: Date, size: PaperSize = 'a4') {
    this.#document = new PDFDocument({
      size: size === 'a4' ? 'A4' : 'LETTER',
      margin: 0,
      tagged: true,
      lang: 'en',
      displayTitle: true,
      pdfVersion: '1.7',
      bufferPages: true,
      info: { Title: title, Creator: 'Linekeeper', Producer: 'Linekeeper', CreationDate: made },
    });
    this.#width = this.#document.page.width - 2 * MARGIN;
    this.#document.on('data', (chunk: Buffer) => this.#chunks.push(chunk));
    this.#done = new Promise((resolve) => this.#document.on('end', resolve));
    this.#whole = this.#document.struct('Document');
    this.#document.addStructure(this.#whole);
  }

  title(text: string): void {
    this.#block('H1', text, styles.title, 4);
  }

  /** A heading; it stays with what follows. */
  heading(text: string): void {
    this.#y += 14;
    this.#room(70);
    this.#block('H2', text, styles.heading, 4);
  }

  text(text: string): void {
    this.#block('P', text, styles.text, 5);
  }

  /** What must be kept in mind, or is said by the way. */
  remark(text: string): void {
    this.#block('P', text, styles.small, 4);
  }

  list(items: readonly string[]): void {
    const list = this.#add(this.#whole, 'L');
    for (const item of items) {
      const entry = this.#add(list, 'LI');
      const lines = this.#wrapped(item, styles.text, this.#width - 14);
      this.#room(heightOf(lines, styles.text));
      const y = this.#y;
      this.#write(this.#add(entry, 'Lbl'), this.#wrapped('·', styles.text, 14), styles.text, MARGIN, y);
      this.#y = this.#write(this.#add(entry, 'LBody'), lines, styles.text, MARGIN + 14, y) + 3;
      entry.end();
    }
    list.end();
    this.#y += 4;
  }

  /** A table; its head is there again on every page. A row that is a text is a heading of the rows after it. */
  table(columns: readonly Column[], rows: readonly (readonly string[] | string)[]): void {
    const table = this.#add(this.#whole, 'Table');
    this.#head(columns, table);
    for (const row of rows) {
      const cells = typeof row === 'string' ? null : this.#cells(columns, row);
      const height = cells ? rowHeight(cells) : 24;
      if (this.#room(height + (cells ? 0 : 30))) this.#head(columns, null);
      const element = this.#add(table, 'TR');
      if (typeof row === 'string') {
        const lines = this.#wrapped(row, styles.group, this.#width);
        this.#write(this.#add(element, 'TH', { scope: 'Row' }), lines, styles.group, MARGIN, this.#y + 6);
      } else this.#row(columns, cells ?? [], element);
      element.end();
      this.#y += height;
      this.#rule(HAIR);
    }
    table.end();
    this.#y += 8;
  }

  /** A drawing that is not torn over two pages; screen readers are told `instead`. */
  figure(height: number, instead: string, draw: (drawing: Drawing) => void): void {
    this.#room(height);
    const top = this.#y;
    const document = this.#document;
    const element = this.#add(this.#whole, 'Figure', { alt: instead });
    element.add(() =>
      draw({
        width: this.#width,
        text: (text, x, y, width) =>
          this.#draw(this.#shortened(text, styles.fine, width), styles.fine, MARGIN + x, top + y),
        line: ([first = [0, 0], ...others]) => {
          document.moveTo(MARGIN + first[0], top + first[1]);
          for (const [x, y] of others) document.lineTo(MARGIN + x, top + y);
          document.lineWidth(0.5).stroke(QUIET);
        },
        shape: (outline, x, y, times) => {
          document
            .save()
            .translate(MARGIN + x, top + y)
            .scale(times)
            .path(outline)
            .fill(INK)
            .restore();
        },
      }),
    );
    element.end();
    this.#y = top + height;
  }

  /** Ends the document; every page gets its number, and says at its foot what it belongs to. */
  async finish(foot: string): Promise<Buffer> {
    this.#whole.end();
    const { count } = this.#document.bufferedPageRange();
    for (let page = 0; page < count; page++) {
      this.#document.switchToPage(page);
      this.#decoration('Pagination', () => {
        const y = this.#document.page.height - FOOT;
        const number = this.#wrapped(`Page ${page + 1} of ${count}`, styles.small, this.#width);
        this.#draw(this.#shortened(foot, styles.small, this.#width - 90), styles.small, MARGIN, y);
        const line = number[0] ?? [];
        this.#draw(line, styles.small, MARGIN + this.#width - this.#widthOf(line, styles.small), y);
      });
    }
    this.#document.end();
    await this.#done;
    return Buffer.concat(this.#chunks);
  }

  #block(kind: string, text: string, style: Style, after: number): void {
    const element = this.#add(this.#whole, kind);
    for (const line of this.#wrapped(text, style, this.#width)) {
      this.#room(lineHeight(style));
      this.#y = this.#write(element, [line], style, MARGIN, this.#y);
    }
    element.end();
    this.#y += after;
  }

  /** The head of a table; where it is only there again, it is told to no screen reader. */
  #head(columns: readonly Column[], table: Element | null): void {
    const cells = this.#cells(
      columns,
      columns.map(({ head }) => head),
      styles.small,
    );
    const height = rowHeight(cells);
    this.#room(height + 30);
    if (table) {
      const row = this.#add(table, 'TR');
      this.#row(columns, cells, row, styles.small);
      row.end();
    } else this.#decoration('Layout', () => this.#drawRow(columns, cells, styles.small));
    this.#y += height;
    this.#rule(INK);
  }

  #cells(columns: readonly Column[], row: readonly string[], style: Style = styles.cell): Line[][] {
    return columns.map(({ width }, at) => this.#wrapped(row[at] ?? '', style, width * this.#width - 8));
  }

  #row(columns: readonly Column[], cells: readonly Line[][], row: Element, style: Style = styles.cell): void {
    const isHead = style === styles.small;
    let x = MARGIN;
    columns.forEach((column, at) => {
      const lines = cells[at] ?? [];
      const cell = isHead
        ? this.#add(row, 'TH', { scope: 'Column' })
        : this.#add(row, at === 0 ? 'TH' : 'TD', at === 0 ? { scope: 'Row' } : {});
      this.#write(cell, lines, style, x, this.#y + 4, column.isNumber ? column.width * this.#width - 8 : undefined);
      x += column.width * this.#width;
    });
  }

  #drawRow(columns: readonly Column[], cells: readonly Line[][], style: Style): void {
    let x = MARGIN;
    columns.forEach(({ width, isNumber }, at) => {
      (cells[at] ?? []).forEach((line, place) =>
        this.#draw(
          line,
          style,
          isNumber ? x + width * this.#width - 8 - this.#widthOf(line, style) : x,
          this.#y + 4 + place * lineHeight(style),
        ),
      );
      x += width * this.#width;
    });
  }

  /** Writes lines as the content of an element and ends it; returns where the next thing may stand. */
  #write(element: Element, lines: readonly Line[], style: Style, x: number, y: number, right?: number): number {
    lines.forEach((line, at) =>
      element.add(() =>
        this.#draw(
          line,
          style,
          right === undefined ? x : x + right - this.#widthOf(line, style),
          y + at * lineHeight(style),
        ),
      ),
    );
    return y + heightOf(lines, style);
  }

  #draw(line: Line, style: Style, x: number, y: number): void {
    let at = x;
    for (const { font, text } of line) {
      this.#use(font, style.size);
      const height = this.#document.currentLineHeight();
      this.#document
        .fillColor(style.colour ?? INK)
        .text(text, at, y + (lineHeight(style) - height) / 2, { lineBreak: false });
      at += this.#document.widthOfString(text);
    }
  }

  #rule(colour: string): void {
    this.#decoration('Layout', () =>
      this.#document
        .moveTo(MARGIN, this.#y)
        .lineTo(MARGIN + this.#width, this.#y)
        .lineWidth(0.5)
        .stroke(colour),
    );
  }

  #decoration(type: 'Layout' | 'Pagination', draw: () => void): void {
    this.#document.markContent('Artifact', { type });
    draw();
    this.#document.endMarkedContent();
  }

  #add(parent: Element, kind: string, options: ElementOptions = {}): Element {
    const element = this.#document.struct(kind, options);
    parent.add(element);
    return element;
  }

  /** Begins a new page where less room is left; says whether it did. */
  #room(height: number): boolean {
    if (this.#y + height <= this.#document.page.height - FOOT - 14) return false;
    this.#document.addPage();
    this.#y = MARGIN;
    return true;
  }

  #use(font: string, size: number): void {
    if (!this.#fonts.has(font)) this.#document.registerFont(font, fontFile(font));
    this.#fonts.add(font);
    this.#document.font(font).fontSize(size);
  }
  readonly #fonts = new Set<string>();

  #widthOf(line: Line, { size }: Style): number {
    return line.reduce((sum, { font, text }) => {
      this.#use(font, size);
      return sum + this.#document.widthOfString(text);
    }, 0);
  }

  /** Text in lines that fit a width: broken between words, within one only where it is wider by itself. */
  #wrapped(text: string, style: Style, width: number): Line[] {
    const lines: string[] = [];
    let line = '';
    const fits = (some: string): boolean => this.#widthOf(runsOf(some, style.face), style) <= width;
    for (const word of text.replace(/(\d) %/g, '$1\u00a0%').split(/[ \n\r\t]+/)) {
      const longer = line === '' ? word : `${line} ${word}`;
      if (fits(longer)) line = longer;
      else {
        if (line !== '') lines.push(line);
        line = word;
        while (!fits(line) && line.length > 1) {
          let length = line.length - 1;
          while (length > 1 && !fits(line.slice(0, length))) length--;
          lines.push(line.slice(0, length));
          line = line.slice(length);
        }
      }
    }
    lines.push(line);
    return lines.map((one) => runsOf(one, style.face));
  }

  #shortened(text: string, style: Style, width: number): Line {
    const [first = [], ...others] = this.#wrapped(text, style, width);
    return others.length === 0 ? first : [...first, ...runsOf(' …', style.face)];
  }
}

const lineHeight = ({ size }: Style): number => size * 1.35;
const heightOf = (lines: readonly Line[], style: Style): number => lines.length * lineHeight(style);
const rowHeight = (cells: readonly Line[][]): number =>
  8 + Math.max(1, ...cells.map(({ length }) => length)) * lineHeight(styles.cell);
