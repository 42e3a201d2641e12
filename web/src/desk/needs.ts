import { html, nothing, type TemplateResult } from 'lit';
import { lateBy, say } from '../look/index.ts';
import type { NeedPart, SignPart } from '../generated/wire.ts';
import { nextTimes } from '../hands/clock.ts';
import { onSubmit, textField, timeField, timeIn } from '../hands/forms.ts';
import { personName, roleName } from '../hands/words.ts';
import { learnedPanel } from './learned.ts';
import type { Desk } from './main.ts';
import { type DeskRow, peopleInOrder, signsInOrder, toAsk } from './model.ts';
import { swapsToConfirm } from './swap.ts';

/** The wall's list with hands, the early signs, and the rooms to ask. */
export function needsPanel(at: Desk, rows: DeskRow[]): TemplateResult {
  const signs = signsInOrder(at.list('sign'), at.now);
  const needs = [...at.list('need')].sort((a, b) => a.rank - b.rank);
  const ask = toAsk(rows).filter((r) => !needs.some((n) => n.room === r.room.room));
  return html`<h2>Needs someone</h2>
    ${needs.length === 0 && rows.length > 0 ? html`<p class="dim">nothing that someone could still help</p>` : nothing}
    ${needs.map((n) => card(at, n))} ${swapsToConfirm(at)}
    ${
      signs.length > 0
        ? html`<h2>Early signs</h2>
            ${signs.map((s) => signCard(at, s))}`
        : nothing
    }
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
    }
    ${learnedPanel(at)}`;
}

/** Something that is not as planned and can still be mended: in which rooms, and until when. */
function signCard(at: Desk, sign: SignPart): TemplateResult {
  const form = `take/${sign.key}`;
  const only = sign.rooms.length === 1 ? sign.rooms[0] : undefined;
  return html`<div class="card sign ${sign.takenBy ? 'on-it' : ''}">
    <p>
      <b>${sign.rooms.join(', ')}</b> ${sign.words}
      <small>${actWords(at, sign)}</small>
    </p>
    ${
      only !== undefined && at.form === form
        ? takeForm(at, only, sign.holdup)
        : html`<div class="do">
            ${
              only === undefined
                ? nothing
                : html`<button
                    aria-label="${sign.takenBy ? 'Say more' : 'Take it'}: room ${only}, ${sign.words}"
                    @click=${() => at.toggle(form)}
                  >
                    ${sign.takenBy ? 'Say more' : 'Take it'}
                  </button>`
            }
            ${sign.rooms.map(
              (room) =>
                html`<button
                  aria-label="Open room ${room}: ${sign.words}"
                  @click=${() => at.openRoom(room)}
                >
                  ${only === undefined ? room : 'Open'}
                </button>`,
            )}
          </div>`
    }
  </div>`;
}

function actWords(at: Desk, sign: SignPart): string {
  if (sign.takenBy) {
    const again = sign.lookAgainAt;
    return `${roleName(sign.takenBy)} is on it${again === undefined ? '' : `, look again ${at.hhmm(again)}`}`;
  }
  return at.now <= sign.actBy
    ? `act by ${at.hhmm(sign.actBy)}`
    : `was to be mended by ${at.hhmm(sign.actBy)}`;
}

function card(at: Desk, need: NeedPart): TemplateResult {
  const form = `take/${need.key}`;
  const goes = `goes/${need.key}`;
  return html`<div class="card ${need.takenBy ? 'on-it' : need.kind}">
    <p>
      <b>${need.room}</b>
      ${need.minutes > 0 ? html`<b class="plus">${lateBy(need.minutes, need.orMore)}</b>` : nothing}
      ${need.words}
      ${need.help && need.kind !== 'help' ? html`<small class="asks">${say('asks')}</small>` : nothing}
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
        : at.form === goes
          ? goesForm(at, need.room)
          : html`<div class="do">
              ${
                need.help
                  ? html`<button
                      @click=${() => at.toggle(goes)}
                      aria-label="Someone goes to room ${need.room}"
                    >
                      Someone goes
                    </button>`
                  : nothing
              }
              ${
                need.kind === 'help'
                  ? nothing
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

/** Who goes to a room that asks for someone: of those who are here, who roams first. */
export function goesForm(at: Desk, room: string): TemplateResult {
  const here = peopleInOrder(at.list('person'), at.now)
    .filter((p) => p.arrivedAt !== undefined && p.leftAt === undefined)
    .sort((a, b) => Number(a.ownRoom !== undefined) - Number(b.ownRoom !== undefined));
  if (here.length === 0) {
    return html`<p class="dim">
        Nobody has arrived yet who could go: say under people who is here.
      </p>
      <div class="do"><button @click=${() => at.go('people')}>people</button></div>`;
  }
  return html`<form
    @submit=${onSubmit((fields) => {
      const person = here.find((p) => p.person === fields['by']);
      if (person) {
        at.tell(`${personName(person)} goes to ${room}`, {
          type: 'answer-help',
          room,
          by: person.person,
        });
        at.done();
      }
    })}
  >
    <div class="do">
      <select name="by" aria-label="who goes to room ${room}">
        ${here.map((p) => html`<option value=${p.person}>${personName(p)}</option>`)}
      </select>
      <button class="main">Goes to ${room}</button>
      <button type="button" @click=${() => at.done()}>Close</button>
    </div>
  </form>`;
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
