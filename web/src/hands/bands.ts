import { html, nothing, type TemplateResult } from 'lit';
import type { BoardPage } from './page.ts';
import { count } from './words.ts';
import { type Said } from './said.ts';

/** The loud band over the whole width; nothing while the picture is alive. */
export function staleBand(page: BoardPage): TemplateResult | typeof nothing {
  const { everSeen, stale, readOnly, full } = page.live.state;
  if (full) {
    return band(
      'Too much is waiting to be sent. Nothing more is taken here: use paper, tell the desk.',
    );
  }
  if (!everSeen) {
    return band('Looking for the board.');
  }
  if (stale) {
    const at = page.live.lastLiveAt;
    const since = at === null ? '' : ` since ${page.hhmmss(at)}`;
    return band(
      `This is old: no word from the board${since}. What you touch is kept and sent later.`,
    );
  }
  if (readOnly) {
    return band(
      'The board can keep nothing just now. What you touch waits here and is sent later.',
    );
  }
  return nothing;
}

function band(words: string): TemplateResult {
  return html`<div class="band" role="alert">${words}</div>`;
}

/** "Everything is sent" or "3 not sent", never more than is known. */
export function sentWords(page: BoardPage): string {
  const unsent = page.live.unsent;
  const kept = page.live.state.durable ? '' : ' · not kept over a reload';
  return (unsent === 0 ? 'Everything is sent' : `${unsent} not sent`) + kept;
}

/** How far a touch has come, in words. */
export function saidWords(said: Said): string {
  switch (said.state) {
    case 'waiting':
      return 'not sent yet';
    case 'answered':
      return 'kept, not yet on the board';
    case 'on-board':
      return 'on the board';
    case 'refused':
      return 'not taken';
  }
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
          <span><b>Not taken: ${said.label}.</b> ${said.words}</span>
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
