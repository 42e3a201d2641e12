import { html, nothing, type TemplateResult } from 'lit';
import type { Change } from './changes.ts';
import type { Desk } from './main.ts';

/** What changed since this desk was looked at, with a way to each room. */
export function sincePanel(at: Desk): TemplateResult {
  const since = at.looked.since(performance.now());
  const list = at.changes;
  return html`<h2>Changed since ${since === undefined ? 'you looked' : at.hhmm(since.at)}</h2>
    <p class="dim">
      Since the last touch here before nobody touched this screen for 2 minutes, or since your mark.
    </p>
    <div class="do">
      <button class="main" @click=${() => at.markSeen()}>Seen: mark from now</button>
    </div>
    ${list.length === 0 ? html`<p class="dim">nothing that matters has changed</p>` : nothing}
    ${list.map((c) => line(at, c))}`;
}

const KINDS: Record<Change['kind'], string> = {
  help: 'help',
  room: 'start',
  holdup: 'holdup',
  move: 'move',
  case: 'case list',
};

function line(at: Desk, change: Change): TemplateResult {
  const { room } = change;
  return html`<div class="line">
    <span class="grow"
      >${room === undefined ? nothing : html`<b>${room}</b> `}${change.words}<small
        >${KINDS[change.kind]}</small
      ></span
    >
    ${
      room === undefined
        ? nothing
        : html`<button
            aria-label="Open room ${room}: ${change.words}"
            @click=${() => at.openRoom(room)}
          >
            Open
          </button>`
    }
  </div>`;
}
