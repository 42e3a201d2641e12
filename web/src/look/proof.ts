import { html, nothing, type TemplateResult } from 'lit';
import type { Live } from '../live/index.ts';
import './mark.ts';
import { say } from './words.ts';

/** "demo at 20 times speed": what nobody may take for a real morning at its own pace, or empty. */
export function paceWords(demo: boolean, rate: number): string {
  const times = Math.round(rate);
  if (times > 1) return say(demo ? 'pace.demo-fast' : 'pace.fast', { rate: times });
  return demo ? say('pace.demo') : '';
}

/** The badge of a demo or a fast clock, for a page's header. */
export function badge(live: Live): TemplateResult | typeof nothing {
  const words = paceWords(live.list('suite')[0]?.demo ?? false, live.rate);
  return words === '' ? nothing : html`<span class="demo">${words}</span>`;
}

/** The badge and the moving mark. */
export function proof(live: Live): TemplateResult {
  return html`${badge(live)}<sunup-mark .live=${live}></sunup-mark>`;
}
