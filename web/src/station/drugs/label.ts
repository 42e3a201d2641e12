import { html, nothing, type TemplateResult } from 'lit';
import { classMap } from 'lit/directives/class-map.js';
import { styleMap } from 'lit/directives/style-map.js';
import type { DrugShown } from '../../generated/wire.ts';

/**
 * A drug's label as the standard has it that the list names: colour and stripes of the class, the
 * name with its capitals, and amount, volume and concentration together. The class's colour appears
 * in here and nowhere else.
 */
export function drugLabel(drug: DrugShown, small = ''): TemplateResult {
  return html`<span
    class=${classMap({
      'drug-label': true,
      striped: drug.striped,
      reversed: drug.reversed,
      line: drug.lineBelow,
    })}
    style=${styleMap({ '--label': drug.rgb })}
  >
    <span class="plate"
      ><b>${drug.shown}</b><span>${drug.amount} = ${drug.volume}</span
      ><span>${drug.concentration}</span
      >${small === '' ? nothing : html`<span>${small}</span>`}</span
    >
  </span>`;
}
