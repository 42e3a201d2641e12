import { html, nothing, type TemplateResult } from 'lit';
import { classMap } from 'lit/directives/class-map.js';
import { ref } from 'lit/directives/ref.js';
import type { DrugShown } from '../../generated/wire.ts';
import { labelName } from './model.ts';

/** By the element's own style: pages may not have style attributes in their text. */
function coloured(element: Element | undefined, rgb: string): void {
  if (element instanceof HTMLElement) element.style.setProperty('--label', rgb);
}

/**
 * A drug's label as the standard has it that the list names: colour and stripes of the class, the
 * name with its capitals, and amount, volume and concentration together. The class's colour appears
 * in here and nowhere else.
 */
export function drugLabel(drug: DrugShown, small = ''): TemplateResult {
  const name = labelName(drug.shown);
  return html`<span
    class=${classMap({
      'drug-label': true,
      striped: drug.striped,
      reversed: drug.reversed,
      line: drug.lineBelow,
    })}
    ${ref((e) => coloured(e, drug.rgb))}
  >
    <span class="plate"
      ><b>${name}</b><span>${drug.amount} = ${drug.volume}</span
      ><span>${drug.concentration}</span
      >${small === '' ? nothing : html`<span>${small}</span>`}</span
    >
  </span>`;
}
