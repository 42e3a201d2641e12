import { html, nothing, type TemplateResult } from 'lit';
import { lateBy } from '../look/index.ts';
import type { NeedPart } from '../generated/wire.ts';
import { nextTimes } from '../hands/clock.ts';
import { onSubmit, textField, timeField, timeIn } from '../hands/forms.ts';
import { roleName } from '../hands/words.ts';
import type { Desk } from './main.ts';
import { type DeskRow, toAsk } from './model.ts';

/** The wall's list with hands, and the rooms to ask. */
export function needsPanel(at: Desk, rows: DeskRow[]): TemplateResult {
  const needs = [...at.list('need')].sort((a, b) => a.rank - b.rank);
  const ask = toAsk(rows).filter((r) => !needs.some((n) => n.room === r.room.room));
  return html`<h2>Needs someone</h2>
    ${needs.length === 0 ? html`<p class="dim">nothing that someone could still help</p>` : nothing}
    ${needs.map((n) => card(at, n))}
    ${
      ask.length > 0
        ? html`<h2>No word yet</h2>
            ${ask.map(
              (r) =>
                html`<div class="card">
                  <p>
                    <b>${r.room.room}</b> ask the
                    room${
                      r.room.lastWordAt === undefined
                        ? ''
                        : `, last word ${at.hhmm(r.room.lastWordAt)}`
                    }
                  </p>
                  <div class="do">
                    <button @click=${() => at.openRoom(r.room.room)}>
                      Open room ${r.room.room}
                    </button>
                  </div>
                </div>`,
            )}`
        : nothing
    }`;
}

function card(at: Desk, need: NeedPart): TemplateResult {
  const form = `take/${need.key}`;
  return html`<div class="card ${need.takenBy ? 'on-it' : need.kind}">
    <p>
      <b>${need.room}</b>
      ${need.minutes > 0 ? html`<b class="plus">${lateBy(need.minutes, need.orMore)}</b>` : nothing}
      ${need.words}
      <small
        >${
          need.takenBy
            ? `${roleName(need.takenBy)} is on it${need.lookAgainAt === undefined ? '' : `, look again ${at.hhmm(need.lookAgainAt)}`}`
            : 'nobody is on it'
        }${need.saveable > 0 ? ` · about ${need.saveable} min can be saved` : ''}</small
      >
    </p>
    ${
      at.form === form
        ? takeForm(at, need.room, need.holdup)
        : html`<div class="do">
            ${
              need.kind === 'help'
                ? html`<button
                    @click=${() =>
                      at.tell(`someone goes to ${need.room}`, {
                        type: 'answer-help',
                        room: need.room,
                      })}
                  >
                    Someone goes
                  </button>`
                : html`<button
                    aria-label="${need.takenBy ? 'Say more' : 'Take it'}: room ${need.room}, ${need.words}"
                    @click=${() => at.toggle(form)}
                  >
                    ${need.takenBy ? 'Say more' : 'Take it'}
                  </button>`
            }
            <button aria-label="Open room ${need.room}" @click=${() => at.openRoom(need.room)}>
              Open
            </button>
          </div>`
    }
  </div>`;
}

/** Who is on it is the desk; what was said, and when to look again. */
export function takeForm(at: Desk, room: string, holdup: string): TemplateResult {
  const take = (said: string, lookAgainAt: number | undefined) => {
    at.tell(`room ${room}: the desk is on it`, {
      type: 'take-holdup',
      room,
      holdup,
      ...(said ? { said } : {}),
      ...(lookAgainAt === undefined ? {} : { lookAgainAt }),
    });
    at.done();
  };
  return html`<form
    @submit=${onSubmit((fields, form) => {
      const typed = fields['again'] ?? '';
      const time = typed === '' ? undefined : timeIn(at, form, 'again');
      if (typed === '' || time !== undefined) {
        take(fields['said'] ?? '', time);
      }
    })}
  >
    ${textField('said', 'what was said, no names')}
    <div class="do">
      ${nextTimes(at.now, 3).map(
        (time) =>
          html`<button
            type="button"
            @click=${(e: Event) => {
              const form = (e.target as HTMLElement).closest('form')!;
              take((form.elements.namedItem('said') as HTMLInputElement).value.trim(), time);
            }}
          >
            look again ${at.hhmm(time)}
          </button>`,
      )}
    </div>
    <div class="do">
      ${timeField('again', 'look again at')}
      <button class="main">Take it</button>
      <button type="button" @click=${() => at.done()}>Close</button>
    </div>
  </form>`;
}
