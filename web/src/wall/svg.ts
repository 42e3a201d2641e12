const NS = 'http://www.w3.org/2000/svg';

export type Attributes = Readonly<Record<string, string | number>>;

/** An SVG element that remembers its attributes, so that only what changed touches the document. */
export class Shape {
  readonly element: SVGElement;
  private readonly last = new Map<string, string>();

  constructor(parent: Element, name: string, attributes: Attributes = {}) {
    this.element = document.createElementNS(NS, name) as SVGElement;
    this.set(attributes);
    parent.append(this.element);
  }

  /** Sets attributes; numbers are cut to a tenth of a unit, which nobody can see. */
  set(attributes: Attributes): void {
    for (const name in attributes) {
      const value = attributes[name]!;
      const text = typeof value === 'number' ? String(Math.round(value * 10) / 10) : value;
      if (this.last.get(name) === text) continue;
      this.last.set(name, text);
      this.element.setAttribute(name, text);
    }
  }

  text(text: string): void {
    if (this.last.get('#text') === text) return;
    this.last.set('#text', text);
    this.element.textContent = text;
  }

  remove(): void {
    this.element.remove();
  }
}
