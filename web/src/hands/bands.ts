import { html, nothing, type TemplateResult } from 'lit';
import type { BoardPage } from './page.ts';
import { count } from './words.ts';
import { type Said } from './said.ts';

/** "Everything is sent" or "3 not sent", never more than is known. */
export function sentWords(page: BoardPage): string {
  const unsent = page.live.unsent;
  const kept = page.live.state.durable ? '' : ' · not kept over a reload';
  return (unsent === 0 ? 'Everything is sent' : `${unsent} not sent`) + kept;
}

/** The board's clock; once it is not live, when it was last. */
export function boardWords(page: BoardPage): string {
  const last = page.live.lastLiveAt;
  if (page.live.state.stale) {
    return last === null ? 'board not seen yet' : `board last ${page.hhmmss(last)}`;
  }
  return `board ${page.hhmmss(page.now)}`;
}

/** The large clock; it does not go on by itself once the board is not heard any more. */
export function clockWords(page: BoardPage): string {
  return page.live.state.stale ? '--:--' : page.hhmm(page.now);
}

/** How far a touch has come, in words. */
export function saidWords(said: Said): string {
  switch (said.state) {
    case 'keeping':
      return 'touched, being kept here';
    case 'waiting':
      return 'touched, not sent yet';
    case 'answered':
      return 'kept, not yet on the board';
    case 'on-board':
      return 'on the board';
    case 'refused':
      return 'not taken';
  }
}

/** How far what was touched about this key has come; empty if nothing is on its way. */
export function goingWords(page: BoardPage, key: string): string {
  const going = page.said.pending(key);
  return going ? saidWords(going) : '';
}

/** Refusals in the server's words, until somebody has read them; and what waits behind them. */
export function refusals(page: BoardPage): TemplateResult | typeof nothing {
  const list = page.said.refused();
  const held = page.live.held;
  if (list.length === 0 && held.length === 0) {
    return nothing;
  }
  return html`<div class="refused" role="alert">
    ${list.map(
      (said) =>
        html`<p>
          <span><b>Not taken: ${said.label}${touched(page, said)}.</b> ${said.words}</span>
          <button @click=${() => page.said.putAway(said)}>I have read it</button>
        </p>`,
    )}
    ${
      held.length === 0
        ? nothing
        : html`<p>
            <span
              ><b>${count(held.length, 'touch', 'touches')} held back</b> behind what was not taken.
              Look again, then decide.</span
            >
            <button @click=${() => page.live.releaseHeld(held.map((h) => h.id))}>
              Send all the same
            </button>
            <button @click=${() => page.live.discardHeld(held.map((h) => h.id))}>Drop</button>
          </p>`
    }
  </div>`;
}

/** When it was touched, if that was before the page was opened again. */
function touched(page: BoardPage, said: Said): string {
  return said.earlier ? `, touched ${page.hhmm(said.at)}` : '';
}
