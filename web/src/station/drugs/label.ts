import { html, nothing, type TemplateResult } from 'lit';
import { classMap } from 'lit/directives/class-map.js';
import { ref } from 'lit/directives/ref.js';
import type { DrugShown } from '../../generated/wire.ts';
import { labelName, nameFit } from './model.ts';

/** By the element's own style: pages may not have style attributes in their text. */
function coloured(element: Element | undefined, rgb: string, fit: number): void {
  if (!(element instanceof HTMLElement)) return;
  element.style.setProperty('--label', rgb);
  element.style.setProperty('--fit', fit.toFixed(3));
}

/** What of a label's 40 mm a name has, in its full size of 3.8 mm; stripes stay to be seen beside it. */
const WHOLE_EM = 38 / 3.8;
const STRIPED_EM = 30 / 3.8;

/**
 * A drug's label as the standard has it that the list names: colour and stripes of the class, the
 * name with its capitals, and amount, volume and concentration together. The class's colour appears
 * in here and nowhere else.
 */
export function drugLabel(drug: DrugShown, small = ''): TemplateResult {
  const name = labelName(drug.shown);
  const fit = nameFit(name, drug.striped ? STRIPED_EM : WHOLE_EM);
  return html`<span
    class=${classMap({
      'drug-label': true,
      striped: drug.striped,
      reversed: drug.reversed,
      line: drug.lineBelow,
    })}
    ${ref((e) => coloured(e, drug.rgb, fit))}
  >
    <span class="plate"
      ><b>${name}</b><span>${drug.amount} = ${drug.volume}</span
      ><span>${drug.concentration}</span
      >${small === '' ? nothing : html`<span>${small}</span>`}</span
    >
  </span>`;
}
